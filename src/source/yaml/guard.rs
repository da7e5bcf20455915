//! What a pack's YAML may not hold, in our words.

use super::{MOST_BYTES, MOST_DEEP, MOST_NODES};
use crate::source::{Place, Problem};

/// A file above the cap: nothing of it is read.
pub(super) fn too_big(place: Place, bytes: usize) -> Problem {
    Problem::wrong(place, format!("this file has {bytes} bytes"))
        .expected(format!("at most {MOST_BYTES} bytes"))
        .mend("split it into several files")
}

/// Nesting beyond the cap.
pub(super) fn too_deep(place: Place) -> Problem {
    Problem::wrong(place, "the nesting is too deep")
        .expected(format!("at most {MOST_DEEP} levels"))
        .mend("take levels out; a pack never needs so many")
}

/// More values than the cap.
pub(super) fn too_many(place: Place) -> Problem {
    Problem::wrong(place, "this file has too many values")
        .expected(format!("at most {MOST_NODES}"))
        .mend("split it into several files")
}

/// A key that stands twice.
pub(super) fn doubled(place: Place, key: &str, first: u32) -> Problem {
    Problem::wrong(place, format!("`{}` stands twice", super::node::short(key)))
        .expected(format!("each key once; the first is on line {first}"))
        .mend("take one of the two out, or give it its own name")
}

/// An anchor or an alias.
pub(super) fn anchor(place: Place) -> Problem {
    Problem::wrong(place, "an anchor or an alias (`&name`, `*name`)")
        .expected("plain values")
        .mend("write the value out; put the text in quotes if it begins with `&` or `*`")
}

/// A tag.
pub(super) fn tag(place: Place) -> Problem {
    Problem::wrong(place, "a tag (`!name`)")
        .expected("plain values")
        .mend("take the tag out; put the text in quotes if it begins with `!`")
}

/// A second document.
pub(super) fn second_document(place: Place) -> Problem {
    Problem::wrong(place, "a second document begins here (`---`)")
        .expected("one document in a file")
        .mend("put it into a file of its own")
}

/// A key that is no text.
pub(super) fn odd_key(place: Place) -> Problem {
    Problem::wrong(place, "a list or a map where a key is wanted")
        .expected("a word before the colon")
        .mend("put texts that hold `[`, `{` or `?` in quotes")
}

/// `.nan` and `.inf`.
pub(super) fn no_number(place: Place, text: &str) -> Problem {
    Problem::wrong(place, format!("`{text}` is no number a bench can use"))
        .expected("a finite number with its unit")
        .mend("write the number, or leave the field out")
}

/// Not YAML at all.
pub(super) fn not_yaml(place: Place, why: &str) -> Problem {
    Problem::wrong(place, format!("this is not YAML: {why}"))
        .mend("look at the indent, the colons and the quotes of this line and the one before it")
}

/// Whether a plain text is YAML's way of writing a number that is none.
pub(super) fn is_no_number(text: &str) -> bool {
    let bare = text.trim_start_matches(['+', '-']).to_ascii_lowercase();
    bare == ".nan" || bare == ".inf"
}
