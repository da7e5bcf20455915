//! Numbers as spoken: in words, digit by digit, and which others they may be heard as.

const ONES: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 10] =
    ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// A number in British words: "twenty two point five", "one hundred and ten", "minus three".
/// Figures past the sixth decimal are noise and not spoken. Numbers of 10^15 and more, and what is not finite, are
/// spoken digit by digit of their shortest form.
#[must_use]
pub fn words(value: f64) -> String {
    let text = plain(value);
    let (sign, size) = signed(&text);
    let (whole, part) = size.split_once('.').unwrap_or((size, ""));
    let mut said = match whole.parse::<u64>() {
        Ok(whole) if whole < 1_000_000_000_000_000 => cardinal(whole),
        _ => each_digit(whole),
    };
    if !part.is_empty() {
        said = format!("{said} point {}", each_digit(part));
    }
    format!("{sign}{said}")
}

/// A number digit by digit: "one five", "two two point five".
#[must_use]
pub fn digits(value: f64) -> String {
    let text = plain(value);
    let (sign, size) = signed(&text);
    let said = match size.split_once('.') {
        Some((whole, part)) => format!("{} point {}", each_digit(whole), each_digit(part)),
        None => each_digit(size),
    };
    format!("{sign}{said}")
}

/// Whether the number may be heard as another one: a teen and its ten (13/30 to 19/90), alone or at the end of a
/// larger number ("a hundred and fifteen"), whatever its decimals.
#[must_use]
pub fn needs_digits(value: f64) -> bool {
    !sounds_like(value).is_empty()
}

/// The numbers that this one may be heard as. 15 gives 50, 150 gives 115, 15,000 gives 50,000, 5 gives none.
#[must_use]
pub fn sounds_like(value: f64) -> Vec<f64> {
    if !value.is_finite() || value.abs() >= 1e9 {
        return Vec::new();
    }
    let (sign, size) = (value.signum(), value.abs());
    let whole = size.trunc() as u64;
    let part = size - size.trunc();
    let mut heard = Vec::new();
    for (scale, below) in [(1, 1.0), (1000, 1000.0)] {
        let group = whole / scale % 1000;
        if let Some(other) = teen_or_ten(group % 100) {
            let swapped = whole - group % 100 * scale + other * scale;
            heard.push(sign * (swapped as f64 + part));
        }
        if (whole as f64) < below * 1000.0 {
            break;
        }
    }
    heard
}

/// 13 to 19 give 30 to 90, and back.
fn teen_or_ten(below_hundred: u64) -> Option<u64> {
    match below_hundred {
        teen @ 13..=19 => Some((teen - 10) * 10),
        ten @ (30 | 40 | 50 | 60 | 70 | 80 | 90) => Some(ten / 10 + 10),
        _ => None,
    }
}

/// The shortest plain decimal text, noise past six decimals gone (more are kept for values below a thousandth).
fn plain(value: f64) -> String {
    if !value.is_finite() {
        return "0".to_owned();
    }
    let decimals = if value.abs() < 1e-3 { 9 } else { 6 };
    let text = format!("{value:.decimals$}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn signed(text: &str) -> (&'static str, &str) {
    match text.strip_prefix('-') {
        Some(size) => ("minus ", size),
        None => ("", text),
    }
}

fn each_digit(text: &str) -> String {
    let named: Vec<&str> = text.chars().filter_map(|c| ONES.get(c.to_digit(10)? as usize).copied()).collect();
    named.join(" ")
}

fn cardinal(n: u64) -> String {
    if n < 1000 {
        return below_thousand(n);
    }
    let scales = [
        (1_000_000_000_000, "trillion"),
        (1_000_000_000, "billion"),
        (1_000_000, "million"),
        (1000, "thousand"),
    ];
    let mut groups = Vec::new();
    let mut left = n;
    for (scale, name) in scales {
        if left >= scale {
            groups.push(format!("{} {name}", below_thousand(left / scale)));
            left %= scale;
        }
    }
    let head = groups.join(", ");
    match left {
        0 => head,
        1..=99 => format!("{head} and {}", below_thousand(left)),
        _ => format!("{head}, {}", below_thousand(left)),
    }
}

fn below_thousand(n: u64) -> String {
    let (hundreds, rest) = (n / 100, n % 100);
    match (hundreds, rest) {
        (0, rest) => below_hundred(rest),
        (hundreds, 0) => format!("{} hundred", below_hundred(hundreds)),
        (hundreds, rest) => format!("{} hundred and {}", below_hundred(hundreds), below_hundred(rest)),
    }
}

fn below_hundred(n: u64) -> String {
    let name = |table: &[&'static str], at: u64| table.get(at as usize).copied().unwrap_or_default();
    match (n / 10, n % 10) {
        _ if n < 20 => name(&ONES, n).to_owned(),
        (tens, 0) => name(&TENS, tens).to_owned(),
        (tens, ones) => format!("{} {}", name(&TENS, tens), name(&ONES, ones)),
    }
}
