//! `units/*.yaml`: a unit card.

use super::adjuster::{self, ADJUSTER};
use super::fields::Fields;
use super::form::{Form, Shape, may, must};
use super::part::{self, PART};
use super::report::Report;
use crate::rulebase::UnitCard;
use crate::source::yaml::Node;

/// The fields of a unit card.
pub static CARD: Form = Form {
    name: "a unit card",
    takes_deed: false,
    fields: &[
        must("unit", Shape::Text, "the unit's id, such as `birch-44`"),
        must("called", Shape::Texts, "spoken names, the first being the one the bench says"),
        must("what", Shape::Text, "what it is, in one line"),
        may(
            "axle",
            Shape::Text,
            "`front` or `rear`, where a bare \"left\" is a corner of that axle; `none` where the unit sits at no corner, which is then not asked for",
        ),
        may("ends", Shape::Words, "for each end of the unit, from where directions are seen"),
        may("sizes", Shape::Sizes, "sizes of the whole unit, by name"),
        may("adjusters", Shape::Named(&ADJUSTER), "its adjusters, in the order they are dealt with"),
        must("parts", Shape::Named(&PART), "its parts, fasteners and fluids"),
        may("source", Shape::Text, "where the figures come from when an entry does not say"),
    ],
};

/// Reads a card. Something is returned whenever the card names its unit, so that what uses it is checked too.
pub(super) fn read(root: &Node, report: &Report) -> Option<UnitCard> {
    let fields = Fields::of(&CARD, root, root.span, report)?;
    let card = UnitCard {
        id: fields.text("unit")?,
        called: fields.texts("called"),
        what: fields.text("what").unwrap_or_default(),
        axle: axle(&fields),
        ends: fields.words("ends"),
        sizes: fields.sizes("sizes"),
        adjusters: fields
            .named("adjusters")
            .iter()
            .filter_map(|(key, one)| adjuster::read(key, one))
            .collect(),
        parts: fields.named("parts").iter().map(|(key, one)| part::read(key, one)).collect(),
        source: fields.text("source"),
        at: report.place(fields.span_of("unit")),
    };
    Some(card)
}

fn axle(fields: &Fields<'_>) -> Option<String> {
    let axle = fields.text("axle")?;
    if matches!(axle.as_str(), "front" | "rear" | "none") {
        return Some(axle);
    }
    let found = format!("`{axle}` is no axle");
    fields.report.wrong(
        fields.span_of("axle"),
        found,
        "`front`, `rear` or `none`",
        "write one of the three, or take it out",
    );
    None
}
