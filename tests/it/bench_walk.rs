//! The bench walked act by act, without hearing: whole jobs on the built-in pack.

use chrono::{DateTime, Duration, FixedOffset};
use sparehand::act::{Act, ActName, Corner, Heard, Slots, WaitingFor};
use sparehand::bench::state::{State, apply};
use sparehand::bench::{Decision, Input, Part, Past, decide};
use sparehand::event::{Envelope, Utterance, VERSION};
use sparehand::rulebase::Pack;

/// A job driven by acts, on a pinned clock that gains half a minute a line.
pub struct Walk {
    pub pack: Pack,
    pub state: State,
    pub now: DateTime<FixedOffset>,
    pub last: Decision,
    pub ear: bool,
    lines: u32,
}

impl Walk {
    pub fn new() -> Self {
        let pack = Pack::built_in().expect("the built-in pack loads");
        let now = DateTime::parse_from_rfc3339("2026-11-25T09:00:00+00:00").unwrap();
        Self { pack, state: State::default(), now, last: Decision::default(), ear: false, lines: 0 }
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
                pack: self.pack.hash(),
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
        let slots = Slots {
            procedure: Some("re-spring".into()),
            unit: Some("birch-44".into()),
            corner: Some(Corner::FrontLeft),
            ..Slots::default()
        };
        self.act(ActName::Start, slots)
    }

    pub fn step(&self) -> String {
        self.state.place().and_then(|place| place.cursor.clone()).unwrap_or_default()
    }

    /// Answers whatever is waited for, rightly; false when the job is over.
    pub fn answer_rightly(&mut self) -> bool {
        let waiting = self.last.waiting.clone();
        let known = |walk: &Self, id: &str| {
            walk.state.place().and_then(|place| place.adjusters.get(id)).cloned().unwrap_or_default()
        };
        let about = waiting.about.clone().unwrap_or_default();
        match waiting.kind {
            WaitingFor::Done | WaitingFor::YesOrNo | WaitingFor::Tool => self.confirm(),
            WaitingFor::Text => self.note("four one seven"),
            WaitingFor::Nothing => return false,
            _ => {
                let wanted = waiting.want.as_ref().map(|want| want.value);
                let step = self.step();
                let value = match (about.as_str(), step.as_str()) {
                    ("slow-rebound", step)
                        if step.contains("found") && known(self, "slow-rebound").found.is_none() =>
                    {
                        14.0
                    }
                    // Free length 200 mm less two turns of 1.5 mm.
                    ("preload", step) if step.contains("datum") => 197.0,
                    ("preload", step) if step.contains("found") => 2.0,
                    ("spring", _) => 70.0,
                    _ => wanted.unwrap_or(2.0),
                };
                self.value(value)
            }
        };
        self.state.progress.open
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
