//! Calibration not told.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::quantity::Dimension;
use crate::rulebase::Tool;
use crate::source::Level;
use chrono::NaiveDate;

/// A tool that torque, gas or a limit is read from has no day of calibration, or none on which it runs out.
pub static FINDING: Finding = Finding {
    name: "calibration not told",
    level: Level::Doubtful,
    milder: false,
    what: "A tool that torque, gas or a limit is read from has no day of calibration, or none on which it runs out.",
    why: "The bench cannot say that a wrench is out of calibration.",
    example: "a torque wrench with no calibrated: and no due:",
    mend: "add `calibrated:` and `due:` as days (`\"2026-04-21\"`)",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    for tool in on
        .pack
        .tools
        .iter()
        .filter(|tool| is_measuring(tool) || tool.calibrated.is_some() || tool.due.is_some())
    {
        let name = tool.called.first().map_or(tool.id.as_str(), String::as_str);
        let days = [("calibrated", &tool.calibrated), ("due", &tool.due)];
        for (field, day) in &days {
            match day.as_deref().map(|day| day.parse::<NaiveDate>()) {
                None => sink.raise_for(
                    tool.at.clone(),
                    format!("the {name} has no `{field}`"),
                    "a day such as `\"2026-04-21\"`",
                ),
                Some(Err(_)) => {
                    let place = sink.field(&tool.at, &format!("{}/{field}", tool.id));
                    sink.raise_for(
                        place,
                        format!("`{field}` of the {name} is no day"),
                        "a day such as `\"2026-04-21\"`",
                    );
                }
                Some(Ok(_)) => {}
            }
        }
        if let (Some(from), Some(to)) = (&tool.calibrated, &tool.due)
            && from >= to
        {
            let place = sink.field(&tool.at, &format!("{}/due", tool.id));
            sink.raise(place, format!("the calibration of the {name} runs out before it begins"));
        }
    }
}

/// What has to be calibrated: whatever reads torque, pressure or temperature, and gauges. A rule keeps its length.
fn is_measuring(tool: &Tool) -> bool {
    let reads = tool.range.map(|range| range.unit.dimension());
    tool.kind.contains("gauge")
        || tool.kind.contains("torque wrench")
        || matches!(reads, Some(Dimension::Torque | Dimension::Pressure | Dimension::Temperature))
}
