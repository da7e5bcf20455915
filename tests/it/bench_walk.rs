//! The bench walked act by act, without hearing: whole jobs on the built-in pack.

use super::harness::PACK;
use chrono::{DateTime, Duration, FixedOffset};
use sparehand::act::{Act, ActName, Corner, Heard, Slots, WaitingFor};
use sparehand::bench::state::{State, apply};
use sparehand::bench::{Decision, Input, Part, Past, decide};
use sparehand::event::{Envelope, Utterance, VERSION};
use sparehand::quantity::Unit;
use sparehand::rulebase::{Deed, Pack, Step};
use std::sync::Arc;

/// A job driven by acts, on a pinned clock that gains half a minute a line.
#[derive(Clone)]
pub struct Walk {
    pub pack: Arc<Pack>,
    pub state: State,
    pub now: DateTime<FixedOffset>,
    pub last: Decision,
    pub ear: bool,
    lines: u32,
    /// The pack's hash, worked out once: it goes over every file.
    hash: String,
}

impl Walk {
    pub fn new() -> Self {
        let pack = Arc::clone(&PACK);
        let now = DateTime::parse_from_rfc3339("2026-11-25T09:00:00+00:00").unwrap();
        Self {
            pack,
            state: State::default(),
            now,
            last: Decision::default(),
            ear: false,
            lines: 0,
            hash: PACK.hash(),
        }
    }

    pub fn hear(&mut self, heard: Heard) -> &Decision {
        self.lines += 1;
        let id = format!("line-{}", self.lines);
        let utterance = Utterance { id, heard: None, understood: heard.acts.clone(), ear: self.ear };
        self.now += Duration::seconds(30);
        let past = Past { next_number: 1, last: None };
        let input = Input::Heard { utterance: utterance.clone(), heard };
        let decision = decide(&self.pack, &past, &self.state, &input, self.now);
        for (index, event) in decision.events.iter().enumerate() {
            let envelope = Envelope {
                id: format!("{}-{index}", utterance.id),
                bench: "bench".into(),
                job: "job".into(),
                sequence: 1,
                utterance: utterance.clone(),
                version: VERSION,
                at: self.now,
                by: None,
                place: self.state.progress.current.clone(),
                step: self.state.place().and_then(|place| place.cursor.clone()),
                pack: self.hash.clone(),
                event: event.clone(),
            };
            apply(&mut self.state, &envelope);
        }
        self.last = decision;
        if std::env::var_os("WALK").is_some() {
            let reply = sparehand::reply::reply(&self.last.answer, &self.last.waiting);
            println!("SAY  {}\nSHOW\n{}\n", reply.say, reply.show);
        }
        &self.last
    }

    pub fn act(&mut self, act: ActName, slots: Slots) -> &Decision {
        self.hear(Heard::take(vec![Act { act, slots }], 1.0))
    }

    pub fn confirm(&mut self) -> &Decision {
        self.act(ActName::Confirm, Slots::default())
    }

    pub fn value(&mut self, value: f64) -> &Decision {
        self.act(ActName::Reading, Slots { value: Some(value), ..Slots::default() })
    }

    pub fn note(&mut self, text: &str) -> &Decision {
        self.act(ActName::Note, Slots { text: Some(text.into()), ..Slots::default() })
    }

    pub fn start(&mut self) -> &Decision {
        self.start_with("re-spring", "birch-44", Corner::FrontLeft)
    }

    /// Starts that procedure on that unit.
    pub fn start_with(&mut self, procedure: &str, unit: &str, corner: Corner) -> &Decision {
        let slots = Slots {
            procedure: Some(procedure.into()),
            unit: Some(unit.into()),
            corner: Some(corner),
            ..Slots::default()
        };
        self.act(ActName::Start, slots)
    }

    /// The step in hand, as its procedure has it.
    pub fn current(&self) -> Option<Step> {
        let place = self.state.place()?;
        self.pack.procedure(&place.procedure, &place.unit)?.step(place.cursor.as_deref()?).cloned()
    }

    pub fn step(&self) -> String {
        self.state.place().and_then(|place| place.cursor.clone()).unwrap_or_default()
    }

    /// Answers whatever is waited for, rightly; false when the job is over. A wait is waited out first.
    pub fn answer_rightly(&mut self) -> bool {
        let waiting = self.last.waiting.clone();
        match waiting.kind {
            WaitingFor::Done | WaitingFor::YesOrNo | WaitingFor::Tool => {
                self.wait_out();
                self.confirm()
            }
            WaitingFor::Text if waiting.asked.iter().any(|act| act.act == ActName::Want) => {
                self.note("same turns")
            }
            WaitingFor::Text => self.note("four one seven"),
            WaitingFor::Nothing => self.confirm(),
            _ => {
                let value = self.right_value();
                self.value(value)
            }
        };
        self.state.progress.open
    }

    fn wait_out(&mut self) {
        if let Some(step) = self.current().filter(|step| step.deed == Deed::Wait)
            && let Some(timer) = &step.timer
        {
            self.now += Duration::seconds(timer.lasts.in_unit(Unit::Second).unwrap() as i64);
        }
    }

    /// A value that the step accepts: what it wants, or what this made-up unit measures there.
    pub fn right_value(&self) -> f64 {
        let waiting = &self.last.waiting;
        let step = self.step();
        let place = self.state.place().unwrap();
        let unit = self.pack.unit(&place.unit).unwrap();
        let about = waiting.about.as_deref().unwrap_or_default();
        let wanted = waiting.want.as_ref().map(|want| want.value);
        let rate = || unit.part("spring").unwrap().springs[0].rate.value;
        let kept = |role: &str| place.readings.get(&(about.to_owned(), role.to_owned())).copied();
        match (about, step.as_str()) {
            ("slow-rebound", step) if step.contains("found") && !place.adjusters.contains_key(about) => 14.0,
            ("spring", _) if waiting.kind == WaitingFor::Rate => rate(),
            ("reservoir-charge", step) if step.contains("found") => 13.8,
            ("preload", "found/count-preload-found") => 2.0,
            ("preload", step) if step.contains("datum-left") => {
                self.perch_length(kept("datum").unwrap_or(195.0))
            }
            // The length of the springs on their seats: 200 mm free, or 335 mm with tender and spacer.
            ("preload", step) if step.contains("datum") => {
                if place.unit == "birch-60" {
                    330.0
                } else {
                    195.0
                }
            }
            ("shim-stack", step) if step.contains("again") => kept("stack").unwrap_or(6.4),
            _ => wanted.unwrap_or(2.0),
        }
    }

    /// What the perch measures where it is wanted: nearer by a pitch for each turn more than were found.
    fn perch_length(&self, datum: f64) -> f64 {
        let place = self.state.place().unwrap();
        let known = place.adjusters.get("preload").cloned().unwrap_or_default();
        datum + (known.found.unwrap_or_default() - known.target().unwrap_or_default()) * 1.5
    }
}

#[test]
fn a_whole_job_answered_rightly_ends_closed() {
    let mut walk = Walk::new();
    walk.start();
    let mut seen = Vec::new();
    for _ in 0..400 {
        seen.push(walk.step());
        if !walk.answer_rightly() {
            break;
        }
    }
    assert!(
        walk.state.progress.closed,
        "stuck at {:?} waiting {:?}: {:#?}",
        walk.step(),
        walk.last.waiting,
        walk.last.answer
    );
    println!("{} lines", seen.len());
}

#[test]
fn done_alone_never_closes_a_critical_torque() {
    let mut walk = Walk::new();
    walk.start();
    for _ in 0..400 {
        if walk.last.waiting.kind == WaitingFor::Torque
            && walk.last.waiting.about.as_deref() == Some("foot-nut")
        {
            break;
        }
        walk.answer_rightly();
    }
    let step = walk.step();
    assert_eq!(step, "rebuild/tighten-foot-nut");
    walk.confirm();
    assert_eq!(walk.step(), step);
    assert!(!walk.state.place().unwrap().closed.contains_key(&step));
    walk.value(36.0);
    assert!(!walk.state.place().unwrap().closed.contains_key(&step), "36 is over 34");
    walk.value(34.0);
    assert!(walk.state.place().unwrap().closed.contains_key(&step), "limits are inclusive");
    assert!(walk.last.answer.parts.iter().any(|part| matches!(part, Part::Step(_))));
}
