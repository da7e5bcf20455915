//! Reads one grammar file into rules.

use super::lexer::{Kind, Token, tokens};
use super::{Expr, TalkError, TalkRule};

/// The rules of a grammar file.
///
/// # Errors
/// The first problem, with its place.
pub fn parse_grammar(file: &str, text: &str) -> Result<Vec<TalkRule>, TalkError> {
    let text = text.trim_start_matches('\u{feff}');
    if !text.trim_start().starts_with("#JSGF V1.0") {
        return Err(TalkError::new(file, 1, 1, "no header", "begin the file with `#JSGF V1.0;`"));
    }
    let mut parser = Parser { file, tokens: tokens(file, text)?, at: 0 };
    parser.skip_statement();
    let mut rules = Vec::new();
    let mut examples = Vec::new();
    while let Some(token) = parser.next() {
        match token.kind {
            Kind::Examples(lines) => examples = lines,
            Kind::Word(word) if word == "grammar" || word == "import" => parser.skip_statement(),
            Kind::Word(word) if word == "public" => {
                let Some(Token { kind: Kind::Name(name), line, .. }) = parser.next() else {
                    return Err(parser.wrong("a rule name after `public`"));
                };
                rules.push(parser.rule(name, line, true, std::mem::take(&mut examples))?);
            }
            Kind::Name(name) => {
                rules.push(parser.rule(name, token.line, false, std::mem::take(&mut examples))?);
            }
            _ => return Err(parser.wrong("a rule (`<name> = ...;`)")),
        }
    }
    Ok(rules)
}

struct Parser<'a> {
    file: &'a str,
    tokens: Vec<Token>,
    at: usize,
}

impl Parser<'_> {
    fn peek(&self) -> Option<&Kind> {
        self.tokens.get(self.at).map(|token| &token.kind)
    }

    fn next(&mut self) -> Option<Token> {
        let token = self.tokens.get(self.at).cloned();
        self.at += 1;
        token
    }

    fn eat(&mut self, sign: char) -> bool {
        let found = self.peek() == Some(&Kind::Sign(sign));
        self.at += usize::from(found);
        found
    }

    fn wrong(&self, wanted: &str) -> TalkError {
        let place = self.tokens.get(self.at.saturating_sub(1)).or(self.tokens.last());
        let (line, column) = place.map_or((1, 1), |token| (token.line, token.column));
        TalkError::new(self.file, line, column, format!("{wanted} is wanted here"), "see the format's rules")
    }

    fn skip_statement(&mut self) {
        while let Some(token) = self.next() {
            if token.kind == Kind::Sign(';') {
                break;
            }
        }
    }

    fn rule(
        &mut self,
        name: String,
        line: usize,
        public: bool,
        examples: Vec<(usize, String)>,
    ) -> Result<TalkRule, TalkError> {
        if !self.eat('=') {
            return Err(self.wrong("`=` after the rule name"));
        }
        let mut tags = Vec::new();
        let body = self.alternatives(&mut tags)?;
        if !self.eat(';') {
            self.at += 1;
            return Err(self.wrong("`;` at the end of the rule"));
        }
        tags.dedup();
        if tags.len() > 1 {
            let message = format!("`<{name}>` has several tags: {}", tags.join(", "));
            return Err(TalkError::new(self.file, line, 1, message, "write one rule for each tag"));
        }
        Ok(TalkRule { file: self.file.to_owned(), line, name, public, body, tag: tags.pop(), examples })
    }

    fn alternatives(&mut self, tags: &mut Vec<String>) -> Result<Expr, TalkError> {
        let mut all = vec![self.sequence(tags)?];
        while self.eat('|') {
            all.push(self.sequence(tags)?);
        }
        Ok(if all.len() == 1 { all.remove(0) } else { Expr::Alt(all) })
    }

    fn sequence(&mut self, tags: &mut Vec<String>) -> Result<Expr, TalkError> {
        let mut parts = Vec::new();
        loop {
            let part = match self.peek() {
                Some(Kind::Word(_) | Kind::Name(_)) => self.word(),
                Some(Kind::Sign('(')) => {
                    self.at += 1;
                    self.inner(')', tags)?
                }
                Some(Kind::Sign('[')) => {
                    self.at += 1;
                    Expr::Opt(Box::new(self.inner(']', tags)?))
                }
                Some(Kind::Tag(tag)) => {
                    tags.push(tag.clone());
                    self.at += 1;
                    continue;
                }
                _ => break,
            };
            parts.push(self.repeated(part));
        }
        if parts.is_empty() {
            self.at += 1;
            return Err(self.wrong("something to say"));
        }
        Ok(if parts.len() == 1 { parts.remove(0) } else { Expr::Seq(parts) })
    }

    fn word(&mut self) -> Expr {
        match self.next().map(|token| token.kind) {
            Some(Kind::Name(name)) => Expr::Name(name.rsplit('.').next().unwrap_or_default().to_owned()),
            Some(Kind::Word(word)) => Expr::Word(word),
            _ => Expr::Seq(Vec::new()),
        }
    }

    fn inner(&mut self, end: char, tags: &mut Vec<String>) -> Result<Expr, TalkError> {
        let inner = self.alternatives(tags)?;
        if self.eat(end) {
            return Ok(inner);
        }
        self.at += 1;
        Err(self.wrong(&format!("`{end}`")))
    }

    fn repeated(&mut self, part: Expr) -> Expr {
        if self.eat('*') {
            Expr::Repeat(Box::new(part), false)
        } else if self.eat('+') {
            Expr::Repeat(Box::new(part), true)
        } else {
            part
        }
    }
}
