//! One question, answered without a record: on the open job as it stands, or on a unit as if it lay on the bench.

use super::{Fault, Ids, Line, Moment, Rules, SeededIds};
use crate::act::{Heard, Outcome, Waiting};
use crate::bench::state::State;
use crate::bench::{self, Answer, Fact, Input, Part, Past, Question};
use crate::event::{Envelope, Event, Utterance, VERSION};
use crate::hearing;
use crate::reply::{Reply, reply};
use crate::rulebase::Pack;
use crate::workings::registry::Worked;

/// What a question rests on.
pub struct Asked<'a> {
    /// The rules.
    pub rules: &'a Rules,
    /// The open job, when it is to be answered from it.
    pub state: State,
    /// The time.
    pub now: Moment,
}

/// The answer to a question.
pub struct Told {
    /// What hearing made of it.
    pub heard: Heard,
    /// What is said and shown.
    pub reply: Reply,
    /// Whether it was answered; refused, incomplete or not understood otherwise.
    pub answered: bool,
    /// The calculations that the answer rests on, exact.
    pub worked: Vec<Worked>,
    /// The input that a calculation lacks, and the question for it.
    pub missing: Option<(String, String)>,
}

/// What an answer holds beyond its words.
fn held(parts: &[Part]) -> (Vec<Worked>, Option<(String, String)>) {
    let worked = parts.iter().filter_map(|part| match part {
        Part::Fact(Fact::Worked { worked, .. }) => Some(worked.clone()),
        _ => None,
    });
    let missing = parts.iter().find_map(|part| match part {
        Part::Question(Question::Work { missing, ask }) => Some((missing.clone(), ask.clone())),
        _ => None,
    });
    (worked.flatten().collect(), missing)
}

impl Asked<'_> {
    /// Answers a question; nothing is kept of it, and whatever is no question is not acted on.
    ///
    /// # Errors
    /// Our own fault.
    pub fn answer(&self, words: &str) -> Result<Told, Fault> {
        super::guarded(|| self.told(words)).map_err(Fault::Ours)
    }

    fn told(&self, words: &str) -> Told {
        let line = Line::new(words);
        let waiting =
            Waiting { ear: false, ..bench::waiting(self.rules.pack(), &self.state, self.now, false) };
        let unit = self.state.place().map(|place| place.unit.as_str());
        let heard = self.rules.ear().hear(&hearing::Line { said: &line.words(), unit, waiting: &waiting });
        let heard = bench::calculation(&self.rules.pack().talk.works, None, &line.words(), &heard, true)
            .unwrap_or(heard);
        let mut heard = heard;
        if heard.acts.iter().any(|act| act.act.is_question()) {
            // Whatever else the line reports is not acted on.
            heard.acts.retain(|act| act.act.is_question());
        }
        if heard.acts.iter().any(|act| !act.act.is_question()) || heard.outcome == Outcome::Decline {
            let text = "That is not a question I can answer. Open the bench to work on a job.";
            let answer = Answer::of(Part::Sentence(text.to_owned()));
            return Told {
                heard,
                reply: reply(&answer, &Waiting::default()),
                answered: false,
                worked: Vec::new(),
                missing: None,
            };
        }
        let utterance = Utterance {
            id: "question".to_owned(),
            heard: Some(line.words()),
            understood: heard.acts.clone(),
            ear: false,
        };
        let input = Input::Heard { utterance, heard: heard.clone() };
        let decision = bench::decide(self.rules.pack(), &Past::default(), &self.state, &input, self.now);
        let parts = &decision.answer.parts;
        let answered = heard.outcome == Outcome::Take
            && !parts.is_empty()
            && !parts
                .iter()
                .any(|part| matches!(part, Part::Unknown { .. } | Part::Refused(_) | Part::Question(_)));
        let (worked, missing) = held(parts);
        Told { heard, reply: reply(&decision.answer, &Waiting::default()), answered, worked, missing }
    }
}

/// A state in which a unit lies on the bench, for a question about it; none when the pack has no such unit. One that no
/// procedure is for lies there without one.
pub fn as_if_on_bench(pack: &Pack, unit: &str, now: Moment) -> Option<State> {
    pack.unit(unit)?;
    let procedure = pack.procedures.values().find(|procedure| procedure.unit == unit);
    let place = unit.to_owned();
    let opened = Event::PlaceOpened {
        place: place.clone(),
        unit: unit.to_owned(),
        procedure: procedure.map(|procedure| procedure.id.clone()).unwrap_or_default(),
        corner: None,
    };
    let mut ids = SeededIds::new(0);
    let mut envelope = |sequence: u64, event: Event| Envelope {
        id: ids.next(now),
        bench: String::new(),
        job: String::new(),
        sequence,
        utterance: Utterance { id: "opened".to_owned(), heard: None, understood: Vec::new(), ear: false },
        version: VERSION,
        at: now,
        by: None,
        place: Some(place.clone()),
        step: None,
        pack: String::new(),
        event,
    };
    Some(State::of(&[envelope(1, Event::JobOpened { number: 0 }), envelope(2, opened)]))
}
