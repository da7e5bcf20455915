//! The log as JSON, for other programs: everything that the page tells, with the figures exact.

use super::{Job, line, page, table, times};
use crate::event::{Envelope, Event};
use serde_json::{Map, Value, json};

/// The log of a job.
pub fn log_json(job: &Job<'_>) -> Value {
    let record = &job.state.record;
    json!({
        "number": job.line.number,
        "job": job.line.job,
        "pack": job.line.pack,
        "opened": job.line.opened,
        "closed": job.line.closed,
        "minutes": times::minutes(job.line.last - job.line.opened),
        "places": places(job),
        "lines": job.state.events.iter().map(|event| entry(job, event)).collect::<Vec<_>>(),
        "readings": record.kept.iter().map(|kept| {
            let mut value = json!(kept.kept);
            add(&mut value, json!({
                "place": kept.place, "at": kept.at, "event": kept.event, "corrected": kept.corrected,
            }));
            value
        }).collect::<Vec<_>>(),
        "questions": questions(job),
        "deviations": record.reasons.iter().map(|(place, step, reason)| json!({
            "place": place, "step": step, "reason": reason,
        })).collect::<Vec<_>>(),
        "findings": record.findings.iter().map(|(place, about, text)| json!({
            "place": place, "about": about, "text": text,
        })).chain(page::troubles(job).map(|(place, about, text)| json!({
            "place": place, "about": about, "text": text,
        }))).collect::<Vec<_>>(),
        "notes": record.notes.iter().map(|(place, text)| json!({"place": place, "text": text})).collect::<Vec<_>>(),
        "fitted": record.fitted.iter().map(|(place, about, text)| json!({
            "place": place, "about": about, "text": text,
        })).collect::<Vec<_>>(),
        "steps": times::steps(job.state).iter().map(|step| json!({
            "place": step.place, "step": step.step, "shown": step.shown, "closed": step.closed,
            "minutes": step.minutes(),
        })).collect::<Vec<_>>(),
    })
}

fn places(job: &Job<'_>) -> Value {
    let places: Map<String, Value> = job.state.progress.places.iter().map(|(id, place)| {
        let settings: Vec<Value> = table::rows(job, id).into_iter().map(|row| json!({
            "adjuster": row.adjuster, "unit": row.unit, "found": row.state.found, "wanted": row.state.target(),
            "left": row.state.left, "travel": row.state.travel, "travel_again": row.state.travel_again,
            "words": row.words,
        })).collect();
        let serial = job.state.record.texts.get(&(id.clone(), "serial".to_owned()));
        (id.clone(), json!({
            "unit": place.unit, "procedure": place.procedure, "corner": place.corner, "serial": serial,
            "settings": settings,
        }))
    }).collect();
    Value::Object(places)
}

/// An event with its envelope, its words in the log, and whether it was taken back.
fn entry(job: &Job<'_>, event: &Envelope) -> Value {
    let mut value = json!(event.event);
    add(
        &mut value,
        json!({
            "id": event.id, "sequence": event.sequence, "at": event.at, "by": event.by, "in_place": event.place,
            "at_step": event.step, "utterance": event.utterance.id, "heard": event.utterance.heard,
            "ear": event.utterance.ear, "text": line::told(job, event), "struck": page::struck(job, event),
        }),
    );
    value
}

fn questions(job: &Job<'_>) -> Vec<Value> {
    job.state
        .events
        .iter()
        .filter_map(|event| match &event.event {
            Event::Answered { act, said } => Some(json!({
                "at": event.at, "step": event.step, "asked": event.utterance.heard, "act": act, "said": said,
            })),
            _ => None,
        })
        .collect()
}

fn add(value: &mut Value, more: Value) {
    if let (Some(fields), Value::Object(more)) = (value.as_object_mut(), more) {
        fields.extend(more);
    }
}
