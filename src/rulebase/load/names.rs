//! Names within one unit card: ends, parts that others rest on, tools; no id twice.

use super::report::Report;
use super::world::{World, dangling};
use crate::rulebase::UnitCard;
use crate::source::yaml::{Node, Span};

/// Reports every name of the card that stands for nothing.
pub(super) fn check(card: &UnitCard, root: &Node, report: &Report, world: &World<'_>) {
    let names = Names { card, root, report };
    for adjuster in &card.adjusters {
        let path = format!("adjusters/{}", adjuster.id);
        names.end(adjuster.end.as_deref(), &path);
        names.parts(&adjuster.through, &format!("{path}/through"));
        names.tools(adjuster.tool.as_deref(), adjuster.handling.values(), &path, world);
        if card.part(&adjuster.id).is_some() {
            let span = names.span(&format!("parts/{}", adjuster.id));
            let found = format!("`{}` is an adjuster and a part", adjuster.id);
            report.wrong(span, found, "each id once on a card", "give the part an id of its own");
        }
    }
    for part in &card.parts {
        let path = format!("parts/{}", part.id);
        names.end(part.end.as_deref(), &path);
        names.parts(&part.over, &format!("{path}/over"));
        names.tools(part.tool.as_deref(), part.handling.values(), &path, world);
    }
}

struct Names<'a> {
    card: &'a UnitCard,
    root: &'a Node,
    report: &'a Report,
}

impl Names<'_> {
    fn span(&self, path: &str) -> Span {
        self.root.span_at(path)
    }

    fn end(&self, end: Option<&str>, path: &str) {
        let Some(end) = end.filter(|end| !self.card.ends.contains_key(*end)) else { return };
        let known = self.card.ends.keys().map(String::as_str);
        dangling(self.span(&format!("{path}/end")), end, "an end of this unit", known, self.report);
    }

    fn parts(&self, ids: &[String], path: &str) {
        for (at, id) in ids.iter().enumerate().filter(|(_, id)| !self.card.has(id)) {
            dangling(
                self.span(&format!("{path}/{at}")),
                id,
                "an adjuster or part of this card",
                self.card.ids(),
                self.report,
            );
        }
    }

    fn tools<'h>(
        &self,
        own: Option<&str>,
        handling: impl Iterator<Item = &'h crate::rulebase::Handling>,
        path: &str,
        world: &World<'_>,
    ) {
        if let Some(tool) = own {
            world.check_tool(tool, self.span(&format!("{path}/tool")), self.report);
        }
        for tool in handling.filter_map(|one| one.tool.as_deref()) {
            world.check_tool(tool, self.span(&format!("{path}/handling")), self.report);
        }
    }
}
