//! A step as a line of a bench card: `- loosen: foot-nut`, with what the card does not say.

use super::derive;
use super::fields::Fields;
use super::form::{Form, Shape, may, must};
use super::slug;
use super::world::World;
use crate::quantity::Dimension;
use crate::rulebase::script::Kind;
use crate::rulebase::{Deed, ReadBack, Step, Timer};
use crate::source::nearest;
use crate::source::yaml::Span;

/// The fields of a step, beside the one word that says what it does.
pub static STEP: Form = Form {
    name: "a step",
    takes_deed: true,
    fields: &[
        may("id", Shape::Text, "its id, where two steps of a phase would have the same"),
        may("of", Shape::Text, "the adjuster or part in hand, where the words after the deed are no id"),
        may("say", Shape::Text, "the sentence: one instruction, imperative, 20 words or fewer"),
        may("brief", Shape::Text, "the short form, where the part does not make it"),
        may("before", Shape::Texts, "the cautions that guard it"),
        may("when", Shape::Script, "whether it applies (Rhai)"),
        may("question", Shape::Text, "the question whose yes closes it"),
        may("accept", Shape::Script, "whether the reading `value` is acceptable (Rhai)"),
        may("else", Shape::Entries(&STEP), "steps worked when the answer is no or the reading out of limits"),
        may(
            "tries",
            Shape::Whole,
            "how many times it may fail before the bench says to stop; 3 when not said",
        ),
        may("stop", Shape::Text, "what is said when it has failed that often"),
        may("as", Shape::Text, "the name its reading is kept under"),
        may("in", Shape::Text, "the unit a bare number takes, where the card does not say"),
        may("limit", Shape::Figure("2 to 6 mm"), "the accepted band, where the card does not say"),
        may("reads back", Shape::Text, "`found`, `wanted` or `left`: all settings of the unit are read back"),
        may("tool", Shape::Text, "a tool other than the part's"),
        may("hold", Shape::Text, "a way of holding other than the part's"),
        may("way", Shape::Way, "a way of turning other than the part's"),
        may("amount", Shape::Text, "how much"),
        may("timer", Shape::Entry(&TIMER), "a timer started when it is done"),
        may("note", Shape::Text, "what is told with it"),
        may("why", Shape::Text, "why it is done"),
        may("source", Shape::Text, "where it comes from"),
    ],
};

/// The fields of a timer.
pub static TIMER: Form = Form {
    name: "a timer",
    takes_deed: false,
    fields: &[
        must("lasts", Shape::Quantity(Dimension::Time), "how long"),
        must("for", Shape::Text, "what it is for"),
    ],
};

/// How many times a step may fail when it does not say.
const TRIES: u32 = 3;

/// Reads a step and the steps under its `else`. `under` is the phase, or the id of the step above.
pub(super) fn read(fields: &Fields<'_>, under: &str, world: &World<'_>) -> Option<Step> {
    let (deed, object, span) = deed(fields)?;
    let about = about(fields, deed, &object, span, world);
    let role = fields.text("as");
    let own = fields.text("id").map(|id| slug(&id));
    let id = own.unwrap_or_else(|| slug(&[deed.as_str(), &object, role.as_deref().unwrap_or("")].join(" ")));
    let id = format!("{under}/{id}");
    let fails = fields.list("else").iter().filter_map(|one| read(one, &id, world)).collect();
    let mut step = Step {
        id,
        deed,
        object: (about.as_deref() != Some(object.as_str())).then_some(object),
        about,
        text: fields.text("say"),
        brief: fields.text("brief"),
        before: cautions(fields, world),
        when: fields.script("when", Kind::Guard),
        read: None,
        question: fields.text("question"),
        accept: fields.script("accept", Kind::Accept),
        fails,
        tries: fields.whole("tries").unwrap_or(TRIES),
        stop: fields.text("stop"),
        reads_back: reads_back(fields),
        tool: fields.text("tool"),
        hold: fields.text("hold").filter(|_| deed != Deed::Hold),
        way: fields.way("way"),
        amount: fields.text("amount"),
        timer: fields.entry("timer").and_then(|timer| self::timer(&timer)),
        note: fields.text("note"),
        why: fields.text("why"),
        source: fields.text("source"),
        at: fields.report.place(span),
    };
    if let Some(tool) = &step.tool {
        world.check_tool(tool, fields.span_of("tool"), fields.report);
    }
    derive::waits_for(&mut step, role.as_deref(), fields, span, world);
    Some(step)
}

/// The one word that says what the step does, with what stands after it.
fn deed(fields: &Fields<'_>) -> Option<(Deed, String, Span)> {
    let deeds =
        || fields.entries().iter().filter_map(|(key, node)| Some((Deed::parse(&key.text)?, key, node)));
    // `hold` is what a step does and also how it is held: beside another deed it is the latter.
    let held = deeds().any(|(deed, ..)| deed != Deed::Hold);
    let mut found = deeds().filter(|(deed, ..)| !held || *deed != Deed::Hold);
    let Some((deed, key, node)) = found.next() else {
        // A deed that is misspelt was reported as an unknown field already.
        if fields.entries().iter().any(|(key, _)| STEP.field(&key.text).is_none()) {
            return None;
        }
        let mend = "begin it with what it does to which part, such as `- loosen: foot-nut`";
        fields.report.wrong(
            fields.span,
            "a step that does nothing",
            "one word such as `loosen`, `tighten`, `look`",
            mend,
        );
        return None;
    };
    if let Some((_, second, _)) = found.next() {
        let found = format!("a step that does two things, `{}` and `{}`", key.text, second.text);
        fields.report.wrong(second.span, found, "one thing a step", "make two steps of it");
    }
    let Some(object) = node.text() else {
        let mend = format!("write `{}: ` and the part's id", deed.as_str());
        fields.report.wrong(
            key.span,
            format!("`{}` with {} after it", deed.as_str(), node.words()),
            "an adjuster or a part",
            mend,
        );
        return None;
    };
    Some((deed, object.trim().to_owned(), node.span))
}

/// The adjuster or part in hand. Deeds that need one take nothing else; the others may have words.
fn about(fields: &Fields<'_>, deed: Deed, object: &str, span: Span, world: &World<'_>) -> Option<String> {
    if let Some(of) = fields.text("of") {
        return world.check_about(&of, fields.span_of("of"), fields.report).then_some(of);
    }
    if world.card.is_none_or(|card| card.has(object)) {
        return Some(object.to_owned());
    }
    match deed {
        Deed::Record => {}
        _ if !deed.takes_words() => _ = world.check_about(object, span, fields.report),
        _ if !object.contains(' ') => world.check_about_or_words(object, span, fields.report),
        _ => {}
    }
    None
}

fn cautions(fields: &Fields<'_>, world: &World<'_>) -> Vec<String> {
    let named = fields.placed_texts("before");
    named.iter().filter_map(|(name, span)| world.caution(name, *span, fields.report)).collect()
}

fn reads_back(fields: &Fields<'_>) -> Option<ReadBack> {
    let word = fields.text("reads back")?;
    let found = match word.as_str() {
        "found" => Some(ReadBack::Found),
        "wanted" => Some(ReadBack::Wanted),
        "left" => Some(ReadBack::Left),
        _ => None,
    };
    if found.is_none() {
        let near = nearest(&word, ["found", "wanted", "left"]).unwrap_or("found");
        let expected = "`found`, `wanted` or `left`";
        fields.report.wrong(
            fields.span_of("reads back"),
            format!("`{word}` settings"),
            expected,
            format!("write `{near}`"),
        );
    }
    found
}

fn timer(fields: &Fields<'_>) -> Option<Timer> {
    Some(Timer { lasts: fields.quantity("lasts")?, what: fields.text("for")? })
}
