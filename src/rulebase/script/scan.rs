//! Names in a script's text that can be checked without running it: functions that are called, and the adjusters, parts,
//! steps and readings named in a call's quotes. A dry run passes over what stands behind `&&`; this does not.

/// A function that is called, with the texts in quotes among its arguments.
#[derive(Debug, PartialEq, Eq)]
pub struct Call {
    /// The function.
    pub name: String,
    /// Whether it is called on something (`x.name()`).
    pub method: bool,
    /// Its arguments: the text of one in quotes, none for any other.
    pub takes: Vec<Option<String>>,
    /// Line of the name, from 1.
    pub line: usize,
    /// Column of the name in characters, from 1.
    pub column: usize,
}

/// Every call in a script.
pub fn calls(text: &str) -> Vec<Call> {
    let mut scan = Scan { letters: text.chars().collect(), at: 0 };
    let mut found = Vec::new();
    let mut last = ' ';
    while let Some(letter) = scan.here() {
        if scan.skip() {
            continue;
        }
        if letter.is_alphabetic() || letter == '_' {
            let begin = scan.at;
            let name = scan.word();
            scan.blank();
            if name == "fn" {
                scan.word();
                scan.blank();
            } else if scan.here() == Some('(') && !KEYWORDS.contains(&name.as_str()) {
                let (line, column) = scan.spot(begin);
                let rest = scan.at;
                found.push(Call { takes: scan.arguments(), method: last == '.', name, line, column });
                scan.at = rest + 1;
            }
            last = ' ';
            continue;
        }
        if !letter.is_whitespace() {
            last = letter;
        }
        scan.at += 1;
    }
    found
}

/// Words that a bracket may follow without a call.
const KEYWORDS: [&str; 13] =
    ["if", "while", "switch", "return", "for", "in", "else", "let", "const", "loop", "do", "until", "throw"];

/// Line and column of the first thing that stands outside a function.
pub fn outside(text: &str) -> Option<(usize, usize)> {
    let mut scan = Scan { letters: text.chars().collect(), at: 0 };
    while let Some(letter) = scan.here() {
        let begin = scan.at;
        let comment = letter == '/' && scan.skip();
        if comment || letter.is_whitespace() || letter == ';' {
            scan.at = scan.at.max(begin + 1);
            continue;
        }
        match scan.word().as_str() {
            "private" => {}
            "fn" => scan.body(),
            _ => return Some(scan.spot(begin)),
        }
    }
    None
}

struct Scan {
    letters: Vec<char>,
    at: usize,
}

impl Scan {
    fn here(&self) -> Option<char> {
        self.letters.get(self.at).copied()
    }

    fn next(&self) -> Option<char> {
        self.letters.get(self.at + 1).copied()
    }

    /// Passes over a comment or a text in quotes; false when neither begins here.
    fn skip(&mut self) -> bool {
        match (self.here(), self.next()) {
            (Some('/'), Some('/')) => self.past(|scan| scan.here() == Some('\n')),
            (Some('/'), Some('*')) => self.past(|scan| scan.here() == Some('*') && scan.next() == Some('/')),
            (Some('"' | '`' | '\''), _) => {
                self.quoted();
            }
            _ => return false,
        }
        true
    }

    fn past(&mut self, end: impl Fn(&Self) -> bool) {
        while self.at < self.letters.len() && !end(self) {
            self.at += 1;
        }
        self.at += 1;
    }

    fn quoted(&mut self) -> String {
        let quote = self.here();
        self.at += 1;
        let mut text = String::new();
        while let Some(letter) = self.here() {
            self.at += 1;
            match letter {
                letter if Some(letter) == quote => break,
                '\\' => self.at += 1,
                letter => text.push(letter),
            }
        }
        text
    }

    fn word(&mut self) -> String {
        let mut word = String::new();
        while let Some(letter) = self.here().filter(|letter| letter.is_alphanumeric() || *letter == '_') {
            word.push(letter);
            self.at += 1;
        }
        word
    }

    fn blank(&mut self) {
        while self.here().is_some_and(char::is_whitespace) {
            self.at += 1;
        }
    }

    /// The arguments between brackets, read from the opening one.
    fn arguments(&mut self) -> Vec<Option<String>> {
        self.at += 1;
        let mut takes = Vec::new();
        let (mut deep, mut text, mut other) = (0_u32, None, false);
        while let Some(letter) = self.here() {
            match letter {
                '"' if deep == 0 && text.is_none() && !other => {
                    text = Some(self.quoted());
                    continue;
                }
                ')' if deep == 0 => break,
                ',' if deep == 0 => {
                    takes.push(text.take().filter(|_| !other));
                    other = false;
                }
                '(' | '[' | '{' => (deep, other) = (deep + 1, true),
                ')' | ']' | '}' => deep = deep.saturating_sub(1),
                letter if letter.is_whitespace() => {}
                _ => other = true,
            }
            self.at += 1;
        }
        if text.is_some() || other {
            takes.push(text.filter(|_| !other));
        }
        takes
    }

    /// Passes over a function from its name to the end of its body.
    fn body(&mut self) {
        let mut deep = 0_u32;
        while let Some(letter) = self.here() {
            if self.skip() {
                continue;
            }
            self.at += 1;
            match letter {
                '{' => deep += 1,
                '}' if deep <= 1 => return,
                '}' => deep -= 1,
                _ => {}
            }
        }
    }

    fn spot(&self, at: usize) -> (usize, usize) {
        let before = self.letters.iter().take(at);
        let line = before.clone().filter(|letter| **letter == '\n').count() + 1;
        let column = before.rev().take_while(|letter| **letter != '\n').count() + 1;
        (line, column)
    }
}

/// The engine's own functions that scripts may call.
pub const BUILT_IN: &[&str] = &[
    "abs",
    "acos",
    "asin",
    "atan",
    "ceiling",
    "contains",
    "cos",
    "crop",
    "degrees",
    "ends_with",
    "exp",
    "floor",
    "fraction",
    "hypot",
    "index_of",
    "int",
    "is_even",
    "is_infinite",
    "is_nan",
    "is_odd",
    "is_zero",
    "len",
    "ln",
    "log",
    "make_lower",
    "make_upper",
    "max",
    "min",
    "parse_float",
    "parse_int",
    "radians",
    "range",
    "round",
    "sign",
    "sin",
    "sqrt",
    "starts_with",
    "tan",
    "to_degrees",
    "to_float",
    "to_int",
    "to_lower",
    "to_radians",
    "to_string",
    "to_upper",
    "trim",
];
