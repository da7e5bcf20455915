//! An adjuster of a unit card.

use super::fields::Fields;
use super::form::{Form, Shape, may, must};
use super::part::{self, MARK};
use super::values;
use crate::quantity::{Dimension, Limit, Quantity};
use crate::rulebase::{Adjuster, AdjusterKind};
use crate::source::yaml::{Key, Kind, Node, Style};
use crate::workings::adjusters::Way;

/// The fields of an adjuster.
pub static ADJUSTER: Form = Form {
    name: "an adjuster",
    takes_deed: false,
    fields: &[
        must("called", Shape::Texts, "spoken names, the first being the one the bench says"),
        may("clicker", Shape::Quantity(Dimension::Clicks), "all of its clicks"),
        may("closes", Shape::Way, "the way that closes a clicker"),
        may("ring", Shape::Figure("0 to 4"), "the lowest and the highest position of a ring"),
        may("only", Shape::Way, "the only way a ring may turn, where it has one"),
        may("rises", Shape::Way, "the way that counts a ring up"),
        may("goes round", Shape::Flag, "whether a ring goes on from the highest position to the lowest"),
        may("screw", Shape::Figure("1.5 mm a turn"), "the length that one turn of a screw moves"),
        may("turns", Shape::Quantity(Dimension::Angle), "all of a screw's turns"),
        may("adds", Shape::Way, "the way that adds preload"),
        may("datum", Shape::Text, "what a screw is measured from and to"),
        may("charge", Shape::Limit(Dimension::Pressure), "the gauge pressure and its band"),
        may("at", Shape::Quantity(Dimension::Temperature), "the temperature that the charge is given at"),
        may("end", Shape::Text, "which end of the unit it sits at"),
        may("seen from", Shape::Text, "from where its directions are seen, when not the end's"),
        may(
            "through",
            Shape::Texts,
            "parts that carry its position: removing one makes the position unknown",
        ),
        may("by hand", Shape::Text, "how it is turned by hand"),
        may("tool", Shape::Text, "the tool that turns it, as named in the crib"),
        may("hold", Shape::Text, "how the other side is held"),
        may("mark", Shape::Entry(&MARK), "its mark"),
        may("stuck", Shape::Texts, "what to do when it will not move, mildest first, stopping before damage"),
        may("never", Shape::Text, "a limit that must not be passed"),
        may("accept", Shape::Text, "what an inspection looks for"),
        may("handling", Shape::Named(&part::HANDLING), "how it is handled for one deed"),
        may(
            "force per click",
            Shape::Quantity(Dimension::Force),
            "damping force of one click, where the maker gives it",
        ),
        may("why", Shape::Text, "why it is as it is"),
        may("source", Shape::Text, "where the figures come from"),
    ],
};

/// Reads an adjuster.
pub(super) fn read(key: &Key, fields: &Fields<'_>) -> Option<Adjuster> {
    Some(Adjuster {
        id: key.text.clone(),
        called: fields.texts("called"),
        kind: kind(key, fields)?,
        end: fields.text("end"),
        seen_from: fields.text("seen from"),
        through: fields.texts("through"),
        by_hand: fields.text("by hand"),
        tool: fields.text("tool"),
        hold: fields.text("hold"),
        mark: fields.entry("mark").and_then(|mark| part::mark(&mark)),
        stuck: fields.texts("stuck"),
        never: fields.text("never"),
        accept: fields.text("accept"),
        handling: part::handling(fields),
        force_per_click: fields.quantity("force per click"),
        source: fields.text("source"),
        why: fields.text("why"),
        at: fields.report.place(key.span),
    })
}

const KINDS: [&str; 4] = ["clicker", "ring", "screw", "charge"];

fn kind(key: &Key, fields: &Fields<'_>) -> Option<AdjusterKind> {
    let given: Vec<&str> = KINDS.into_iter().filter(|kind| fields.node(kind).is_some()).collect();
    match given.as_slice() {
        ["clicker"] => clicker(fields),
        ["ring"] => ring(fields),
        ["screw"] => screw(fields),
        ["charge"] => charge(fields),
        _ => {
            let found = match given.as_slice() {
                [] => format!("`{}` has no kind", key.text),
                more => format!("`{}` is {} at once", key.text, more.join(" and ")),
            };
            let expected = "one of `clicker`, `ring`, `screw`, `charge`";
            fields.report.wrong(
                key.span,
                found,
                expected,
                "write its kind with its figure, such as `clicker: 24 clicks`",
            );
            None
        }
    }
}

fn clicker(fields: &Fields<'_>) -> Option<AdjusterKind> {
    let clicks = fields.quantity("clicker");
    let closes = needed_way(fields, "clicker", "closes");
    let clicks = clicks?.value;
    if !(1.0..=999.0).contains(&clicks) || clicks.fract() != 0.0 {
        let found = format!("`{clicks}` clicks");
        fields.report.wrong(
            fields.span_of("clicker"),
            found,
            "a whole number of clicks",
            "write one such as `24 clicks`",
        );
        return None;
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "whole and from 1 to 999, checked above"
    )]
    let clicks = clicks as u32;
    Some(AdjusterKind::Clicker { clicks, closes: closes? })
}

fn ring(fields: &Fields<'_>) -> Option<AdjusterKind> {
    let node = fields.node("ring")?;
    let read = node.text().and_then(|text| {
        let (first, last) = text.split_once(" to ")?;
        let (first, last) = (first.trim().parse::<u32>().ok()?, last.trim().parse::<u32>().ok()?);
        (first < last && last < 1000).then_some((first, last))
    });
    let only = fields.way("only");
    let rises = match fields.node("rises") {
        Some(_) => fields.way("rises"),
        None => only.or_else(|| needed_way(fields, "ring", "rises")),
    };
    let Some((first, last)) = read else {
        let found = format!("{} is no range of positions", node.words());
        fields.report.wrong(node.span, found, "the lowest and the highest position", "write it as `0 to 4`");
        return None;
    };
    Some(AdjusterKind::Ring { first, last, only, rises: rises?, wraps: fields.flag("goes round") })
}

fn screw(fields: &Fields<'_>) -> Option<AdjusterKind> {
    let node = fields.node("screw")?;
    let adds = needed_way(fields, "screw", "adds");
    // "1.5 mm a turn": the words after the length are for the reader.
    let text = node.text().unwrap_or_default();
    let bare =
        text.strip_suffix("a turn").or_else(|| text.strip_suffix("per turn")).unwrap_or(text).trim_end();
    let pitch = Node { kind: Kind::Text(bare.to_owned(), Style::Plain), span: node.span };
    let pitch = values::quantity(&pitch, Some(Dimension::Length), fields.report)?;
    let turns = fields.quantity("turns").and_then(|turns| turns.in_unit(crate::quantity::Unit::Turn).ok());
    Some(AdjusterKind::Screw { pitch, turns, adds: adds?, datum: fields.text("datum") })
}

fn charge(fields: &Fields<'_>) -> Option<AdjusterKind> {
    let limit: Option<Limit> = fields.limit("charge");
    let at: Option<Quantity> = fields.quantity("at");
    if at.is_none() && fields.node("at").is_none() {
        let expected = "the temperature that the pressure is given at";
        fields.report.wrong(fields.span, "a charge has no `at`", expected, "add `at: 20 degC`");
    }
    Some(AdjusterKind::Charge { limit: limit?, at: at? })
}

fn needed_way(fields: &Fields<'_>, kind: &str, name: &str) -> Option<Way> {
    if fields.node(name).is_none() {
        let expected = "`clockwise` or `anticlockwise`";
        fields.report.wrong(
            fields.span,
            format!("a {kind} has no `{name}`"),
            expected,
            format!("add `{name}:`"),
        );
        return None;
    }
    fields.way(name)
}
