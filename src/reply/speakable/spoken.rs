//! The spoken set: ASCII letters, commas, full stops, question marks, apostrophes and single spaces.

/// The text in the spoken set. Brackets, dashes between words and colons become pauses; what cannot be said is left out.
pub(super) fn spoken(text: &str) -> String {
    let text = text.replace(" - ", ", ").replace(" – ", ", ").replace(" — ", ", ");
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        out.push_str(&sound(c));
    }
    tidy(&out)
}

/// One character in the spoken set.
fn sound(c: char) -> String {
    match c {
        'a'..='z' | 'A'..='Z' | ',' | '.' | '?' | '\'' => c.to_string(),
        '0'..='9' => {
            format!(" {} ", crate::quantity::figures::digits(f64::from(c.to_digit(10).unwrap_or_default())))
        }
        '!' => ".".to_owned(),
        '’' | '‘' => "'".to_owned(),
        '(' | ')' | '[' | ']' | ':' | ';' => ", ".to_owned(),
        '/' => " or ".to_owned(),
        '+' => " plus ".to_owned(),
        '=' => " is ".to_owned(),
        '<' => " under ".to_owned(),
        '>' => " over ".to_owned(),
        '~' => " about ".to_owned(),
        '%' => " per cent ".to_owned(),
        '°' => " degrees ".to_owned(),
        '"' | '“' | '”' | '`' => String::new(),
        other => unaccented(other),
    }
}

/// A Latin letter without its accent; a space for anything else.
fn unaccented(c: char) -> String {
    let plain = match c {
        'à'..='å' | 'ā' | 'ą' => "a",
        'À'..='Å' | 'Ā' | 'Ą' => "A",
        'ç' | 'ć' | 'č' => "c",
        'Ç' | 'Ć' | 'Č' => "C",
        'è'..='ë' | 'ē' | 'ę' | 'ě' => "e",
        'È'..='Ë' | 'Ē' | 'Ę' | 'Ě' => "E",
        'ì'..='ï' | 'ī' => "i",
        'Ì'..='Ï' | 'Ī' => "I",
        'ñ' | 'ń' | 'ň' => "n",
        'Ñ' | 'Ń' | 'Ň' => "N",
        'ò'..='ö' | 'ø' | 'ō' | 'ő' => "o",
        'Ò'..='Ö' | 'Ø' | 'Ō' | 'Ő' => "O",
        'ù'..='ü' | 'ū' | 'ů' | 'ű' => "u",
        'Ù'..='Ü' | 'Ū' | 'Ů' | 'Ű' => "U",
        'ý' | 'ÿ' => "y",
        'Ý' => "Y",
        'ł' => "l",
        'Ł' => "L",
        'ś' | 'š' => "s",
        'Ś' | 'Š' => "S",
        'ž' | 'ź' | 'ż' => "z",
        'Ž' | 'Ź' | 'Ż' => "Z",
        'ř' => "r",
        'Ř' => "R",
        'ß' => "ss",
        'æ' => "ae",
        'Æ' => "Ae",
        'œ' => "oe",
        _ => " ",
    };
    plain.to_owned()
}

/// Single spaces, none before a mark, one mark at a time (a full stop or question mark before a comma), a space after.
fn tidy(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            ' ' => space(&mut out),
            ',' | '.' | '?' => mark(&mut out, c),
            c => {
                if out.ends_with([',', '.', '?']) {
                    out.push(' ');
                }
                out.push(opening(&out, c));
            }
        }
    }
    out.trim_end_matches([' ', ',']).trim_start().to_owned()
}

/// A capital after a full stop or question mark.
fn opening(before: &str, c: char) -> char {
    if before.trim_end().ends_with(['.', '?']) { c.to_ascii_uppercase() } else { c }
}

fn space(out: &mut String) {
    if !out.is_empty() && !out.ends_with(' ') {
        out.push(' ');
    }
}

fn mark(out: &mut String, mark: char) {
    while out.ends_with(' ') {
        out.pop();
    }
    match out.chars().last() {
        None => {}
        Some(',') => {
            out.pop();
            out.push(mark);
        }
        Some('.' | '?') => {}
        Some(_) => out.push(mark),
    }
}
