//! Tokens of the grammar format (JSpeech Grammar Format, W3C Note of 5 June 2000).

use super::TalkError;

/// A token with its line.
#[derive(Debug, Clone, PartialEq)]
pub struct Token {
    /// What it is.
    pub kind: Kind,
    /// Its line, from 1.
    pub line: usize,
    /// Its column, from 1.
    pub column: usize,
}

/// The kinds of token.
#[derive(Debug, Clone, PartialEq)]
pub enum Kind {
    /// A word of speech, in lower case; or a keyword of the format.
    Word(String),
    /// `<name>`.
    Name(String),
    /// `{tag}`.
    Tag(String),
    /// The `@example` lines of one documentation comment.
    Examples(Vec<(usize, String)>),
    /// `= | ( ) [ ] * + ;`
    Sign(char),
}

/// Splits a file into tokens; its header line is checked by the parser.
pub fn tokens(file: &str, text: &str) -> Result<Vec<Token>, TalkError> {
    let mut lexer = Lexer { file, chars: text.chars().collect(), at: 0, line: 1, column: 1, out: Vec::new() };
    lexer.run()?;
    Ok(lexer.out)
}

struct Lexer<'a> {
    file: &'a str,
    chars: Vec<char>,
    at: usize,
    line: usize,
    column: usize,
    out: Vec<Token>,
}

impl Lexer<'_> {
    fn peek(&self, ahead: usize) -> Option<char> {
        self.chars.get(self.at + ahead).copied()
    }

    fn next(&mut self) -> Option<char> {
        let c = self.peek(0)?;
        self.at += 1;
        if c == '\n' {
            self.line += 1;
            self.column = 1;
        } else {
            self.column += 1;
        }
        Some(c)
    }

    fn fail<T>(&self, message: &str, mend: &str) -> Result<T, TalkError> {
        Err(TalkError::new(self.file, self.line, self.column, message, mend))
    }

    fn run(&mut self) -> Result<(), TalkError> {
        while let Some(c) = self.peek(0) {
            let (line, column) = (self.line, self.column);
            let kind = match c {
                c if c.is_whitespace() => {
                    self.next();
                    continue;
                }
                '/' if self.peek(1) == Some('/') => {
                    self.take_while(|c| c != '\n');
                    continue;
                }
                '/' if self.peek(1) == Some('*') => match self.comment()? {
                    Some(examples) => Kind::Examples(examples),
                    None => continue,
                },
                '/' => {
                    // A weight: read and passed over, the matcher weighs words itself.
                    self.next();
                    self.until('/', "a weight")?;
                    continue;
                }
                '<' => {
                    self.next();
                    Kind::Name(self.until('>', "a rule name")?)
                }
                '{' => {
                    self.next();
                    Kind::Tag(self.until('}', "a tag")?)
                }
                '"' => {
                    self.next();
                    Kind::Word(self.until('"', "a quoted word")?.to_lowercase())
                }
                '=' | '|' | '(' | ')' | '[' | ']' | '*' | '+' | ';' => {
                    self.next();
                    Kind::Sign(c)
                }
                _ => Kind::Word(
                    self.take_while(|c| !c.is_whitespace() && !"<>{}=|()[]*+;/\"".contains(c)).to_lowercase(),
                ),
            };
            if kind == Kind::Word(String::new()) {
                return self.fail(&format!("`{c}` does not belong here"), "quote it or leave it out");
            }
            self.out.push(Token { kind, line, column });
        }
        Ok(())
    }

    fn take_while(&mut self, keep: impl Fn(char) -> bool) -> String {
        let mut text = String::new();
        while let Some(c) = self.peek(0).filter(|c| keep(*c)) {
            text.push(c);
            self.next();
        }
        text
    }

    fn until(&mut self, end: char, what: &str) -> Result<String, TalkError> {
        let text = self.take_while(|c| c != end && c != '\n');
        if self.next() == Some(end) {
            Ok(text.trim().to_owned())
        } else {
            self.fail(&format!("{what} does not end"), &format!("end it with `{end}` on the same line"))
        }
    }

    /// A comment; the examples of a documentation comment.
    fn comment(&mut self) -> Result<Option<Vec<(usize, String)>>, TalkError> {
        let first = self.line;
        let documents = self.peek(2) == Some('*');
        let mut text = String::new();
        loop {
            match self.next() {
                Some('/') if text.len() > 2 && text.ends_with('*') => break,
                Some(c) => text.push(c),
                None => return self.fail("a comment does not end", "end it with `*/`"),
            }
        }
        if !documents {
            return Ok(None);
        }
        let examples = text.lines().enumerate().filter_map(|(row, line)| {
            let line = line.trim().trim_start_matches('*').trim_end_matches('*').trim();
            line.strip_prefix("@example").map(|said| (first + row, said.trim().to_owned()))
        });
        Ok(Some(examples.collect()))
    }
}
