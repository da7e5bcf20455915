//! A part, fastener or fluid of a unit card.

use super::fields::Fields;
use super::form::{Form, Shape, may, must};
use crate::quantity::{Dimension, Limit};
use crate::rulebase::{Deed, Handling, Locker, Mark, Part, Spring};
use crate::source::nearest;
use crate::source::yaml::Key;
use crate::workings::adjusters::Way;
use std::collections::BTreeMap;

/// The fields of a part.
pub static PART: Form = Form {
    name: "a part",
    takes_deed: false,
    fields: &[
        must("called", Shape::Texts, "spoken names, the first being the one the bench says"),
        may("what", Shape::Text, "what it is, where the name does not say it"),
        may("thread", Shape::Thread, "its thread"),
        may("across", Shape::Quantity(Dimension::Length), "width across flats of an outer hexagon"),
        may("key", Shape::Quantity(Dimension::Length), "size of the hexagon key"),
        may("tool", Shape::Text, "a tool that is neither, as named in the crib"),
        may(
            "bore",
            Shape::Quantity(Dimension::Length),
            "the hole through it, or through what it is screwed to",
        ),
        may("hold", Shape::Text, "how the other side is held"),
        may("goes", Shape::Text, "which way round it goes, as said after its name"),
        may("opens", Shape::Way, "the way that undoes it, when the thread does not say"),
        may("end", Shape::Text, "which end of the unit it sits at"),
        may("seen from", Shape::Text, "from where its directions are seen, when not the end's"),
        may("torque", Shape::Limit(Dimension::Torque), "torque and its band"),
        may("nip", Shape::Text, "how it is nipped, where it has no torque"),
        may("critical", Shape::Text, "why its torque is critical"),
        may("too tight", Shape::Text, "what is done when its torque went past its band"),
        may("locker", Shape::Entry(&LOCKER), "threadlocker"),
        may("mark", Shape::Entry(&MARK), "witness mark"),
        may("stuck", Shape::Texts, "what to do when it will not move, mildest first, stopping before damage"),
        may(
            "springs",
            Shape::Entries(&SPRING),
            "spring figures: the one fitted, then the others on the shelf",
        ),
        may("limits", Shape::Limits, "limits by name"),
        may("sizes", Shape::Sizes, "sizes by name"),
        may("accept", Shape::Text, "what an inspection looks for"),
        may("single use", Shape::Flag, "whether it is new each time"),
        may("never", Shape::Text, "a limit that must not be passed"),
        may("handling", Shape::Named(&HANDLING), "how it is handled for one deed"),
        may("over", Shape::Texts, "what must be fitted before it"),
        may("why", Shape::Text, "why a value is as it is"),
        may("source", Shape::Text, "where the figures come from"),
    ],
};

/// The fields of a threadlocker.
pub static LOCKER: Form = Form {
    name: "a threadlocker",
    takes_deed: false,
    fields: &[
        must("grade", Shape::Text, "`low`, `medium` or `high` strength"),
        must("put", Shape::Text, "how little and where"),
        may("never", Shape::Text, "where never, and why"),
        must("open", Shape::Quantity(Dimension::Time), "how long it may stand before the joint is tight"),
        may("handle", Shape::Quantity(Dimension::Time), "how long until it may be handled"),
        may("cure", Shape::Quantity(Dimension::Time), "how long until it may be used"),
    ],
};

/// The fields of a witness mark.
pub static MARK: Form = Form {
    name: "a mark",
    takes_deed: false,
    fields: &[
        must("lines up", Shape::Text, "what lines up with what"),
        may("made", Shape::Text, "how it is made"),
    ],
};

/// The fields of a spring's figures.
pub static SPRING: Form = Form {
    name: "a spring",
    takes_deed: false,
    fields: &[
        must("rate", Shape::Quantity(Dimension::Rate), "its rate"),
        must("free", Shape::Quantity(Dimension::Length), "its free length"),
        may("block", Shape::Quantity(Dimension::Length), "its length with the coils closed"),
        may("bore", Shape::Quantity(Dimension::Length), "its inside diameter"),
    ],
};

/// The fields of a handling.
pub static HANDLING: Form = Form {
    name: "a handling",
    takes_deed: false,
    fields: &[
        may("tool", Shape::Text, "the tool, as named in the crib"),
        may("how", Shape::Text, "what is done, beyond the step's own sentence"),
        may("way", Shape::Way, "a way of turning other than the usual one"),
    ],
};

/// Reads a part.
pub(super) fn read(key: &Key, fields: &Fields<'_>) -> Part {
    let thread = fields.thread("thread");
    let usual = match &thread {
        Some(thread) if thread.left_hand => Way::Clockwise,
        _ => Way::Anticlockwise,
    };
    Part {
        id: key.text.clone(),
        called: fields.texts("called"),
        what: fields.text("what"),
        thread,
        across: fields.quantity("across"),
        key: fields.quantity("key"),
        tool: fields.text("tool"),
        bore: fields.quantity("bore"),
        hold: fields.text("hold"),
        goes: fields.text("goes"),
        opens: fields.way("opens").unwrap_or(usual),
        end: fields.text("end"),
        seen_from: fields.text("seen from"),
        torque: fields.limit("torque").map(Limit::or_torque_band),
        nip: fields.text("nip"),
        critical: fields.text("critical"),
        too_tight: fields.text("too tight"),
        locker: fields.entry("locker").and_then(|locker| self::locker(&locker)),
        mark: fields.entry("mark").and_then(|mark| self::mark(&mark)),
        stuck: fields.texts("stuck"),
        springs: fields.list("springs").iter().filter_map(spring).collect(),
        limits: fields.limits("limits"),
        sizes: fields.sizes("sizes"),
        accept: fields.text("accept"),
        single_use: fields.flag("single use"),
        never: fields.text("never"),
        handling: handling(fields),
        over: fields.texts("over"),
        why: fields.text("why"),
        source: fields.text("source"),
        at: fields.report.place(key.span),
    }
}

fn locker(fields: &Fields<'_>) -> Option<Locker> {
    let grade = fields.text("grade");
    if let Some(grade) = grade.as_ref().filter(|grade| !matches!(grade.as_str(), "low" | "medium" | "high")) {
        let found = format!("`{grade}` is no grade");
        fields.report.wrong(
            fields.span_of("grade"),
            found,
            "`low`, `medium` or `high`",
            "write its strength",
        );
    }
    Some(Locker {
        grade: grade?,
        put: fields.text("put")?,
        never: fields.text("never"),
        open: fields.quantity("open")?,
        handle: fields.quantity("handle"),
        cure: fields.quantity("cure"),
    })
}

/// Reads a witness mark.
pub(super) fn mark(fields: &Fields<'_>) -> Option<Mark> {
    Some(Mark { lines_up: fields.text("lines up")?, made: fields.text("made") })
}

fn spring(fields: &Fields<'_>) -> Option<Spring> {
    Some(Spring {
        rate: fields.quantity("rate")?,
        free: fields.quantity("free")?,
        block: fields.quantity("block"),
        bore: fields.quantity("bore"),
    })
}

/// Reads the handlings of a part or adjuster, by deed.
pub(super) fn handling(fields: &Fields<'_>) -> BTreeMap<String, Handling> {
    let mut out = BTreeMap::new();
    for (key, one) in fields.named("handling") {
        if Deed::parse(&key.text).is_none() {
            let near = nearest(&key.text, Deed::ALL.iter().map(|deed| deed.as_str()));
            let mend = near
                .map_or_else(|| "write one such as `loosen`".to_owned(), |near| format!("write `{near}`"));
            one.report.wrong(
                key.span,
                format!("`{}` is nothing a step does", key.text),
                "a word such as `loosen`",
                mend,
            );
        }
        let handling = Handling { tool: one.text("tool"), how: one.text("how"), way: one.way("way") };
        out.insert(key.text.clone(), handling);
    }
    out
}
