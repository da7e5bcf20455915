//! Events into their envelopes and into the book: job, number, place and step, and the pack they rest on.

use super::{Cause, Fault, Moment, Session};
use crate::bench::state::State;
use crate::event::{Envelope, Event, Utterance, VERSION};

impl Session {
    /// A new utterance: its words come with hearing.
    pub(super) fn utterance(&mut self, now: Moment) -> Utterance {
        Utterance { id: self.ids.next(now), heard: None, understood: Vec::new(), ear: self.ear }
    }

    /// Wraps the events of an utterance. A closed job takes questions only: whatever begins something begins another.
    pub(super) fn wrap(&mut self, utterance: &Utterance, events: Vec<Event>, now: Moment) -> Vec<Envelope> {
        if events.is_empty() {
            return Vec::new();
        }
        let anew = self.state.progress.closed && events.iter().any(begins);
        let job = self.job.clone().filter(|_| !anew).unwrap_or_else(|| self.ids.next(now));
        let empty = State::default();
        let before = if anew { &empty } else { &self.state };
        let mut at = Standing::of(before);
        let first = before.events.last().map_or(1, |last| last.sequence + 1);
        let carried = self.carried(before, &events);
        let mut envelopes = Vec::new();
        for (sequence, event) in (first..).zip(carried.into_iter().chain(events)) {
            at.before(before, &event);
            envelopes.push(Envelope {
                id: self.ids.next(now),
                bench: self.book.bench().to_owned(),
                job: job.clone(),
                sequence,
                utterance: utterance.clone(),
                version: VERSION,
                at: now,
                by: at.person.clone(),
                place: at.place.clone(),
                step: at.step.clone(),
                pack: self.rules.hash().to_owned(),
                event: event.clone(),
            });
            at.after(&event);
        }
        envelopes
    }

    /// A name that holds from one job to the next, or came with the call, is kept in each job's own record.
    fn carried(&self, before: &State, events: &[Event]) -> Option<Event> {
        let said = events.iter().any(|event| matches!(event, Event::By { .. }));
        let known = !before.progress.person.is_empty();
        if events.contains(&Event::TakenUp) && self.by.is_none() && known && !said {
            // Another may have taken the job up: nobody is named until somebody says so.
            return Some(Event::By { who: String::new() });
        }
        let held = Some(&self.state.progress.person).filter(|person| !person.is_empty());
        let who = self.by.as_ref().or(held).filter(|who| **who != before.progress.person && !said)?;
        Some(Event::By { who: who.clone() })
    }

    /// Makes the events durable, and with them the pack that they rest on.
    pub(super) fn append(&mut self, envelopes: &[Envelope]) -> Result<(), Fault> {
        let Some(first) = envelopes.first() else { return Ok(()) };
        if !self.rules.kept() {
            self.book.keep_pack(&first.pack, self.rules.pack().files())?;
            self.rules.set_kept();
        }
        self.book.append(envelopes)?;
        if self.job.as_ref() != Some(&first.job) {
            self.job = Some(first.job.clone());
            self.state = State::default();
        }
        Ok(())
    }

    /// What follows once events stand: after a closing the newest pack is in force for what comes next, and the name
    /// of the call has had its say.
    pub(super) fn after(&mut self, envelopes: &[Envelope]) {
        if envelopes.iter().any(|envelope| matches!(envelope.event, Event::JobClosed { .. })) {
            self.rules.take_newest();
        }
        if envelopes.iter().any(|envelope| matches!(envelope.event, Event::By { .. })) {
            self.by = None;
        }
    }

    /// After a fault of our own nothing is trusted but the book.
    pub(super) fn stand_by_the_book(&mut self) {
        let Some(job) = self.job.clone() else {
            self.state = State::default();
            return;
        };
        // A book that cannot be read now will say so at the next line.
        if let Ok(events) = self.book.since(&job, 0) {
            self.state = State::of(&events);
        }
    }

    /// Hears a line and notes its words. Those of a declined line reach the bench with it, and are kept only where they
    /// told it something: an utterance without events leaves nothing.
    pub(super) fn hear(&self, cause: Cause<'_>, utterance: &mut Utterance) -> Option<crate::act::Heard> {
        let Cause::Line(line) = cause else { return None };
        let heard = self.listen(line);
        let heard = crate::bench::whole(&self.rules.pack().talk.words, &line.words()).unwrap_or(heard);
        let heard = crate::bench::calculation(
            &self.rules.pack().talk.works,
            self.state.progress.pending.as_ref(),
            &line.words(),
            &heard,
            false,
        )
        .unwrap_or(heard);
        utterance.heard = Some(line.words());
        if heard.outcome != crate::act::Outcome::Decline {
            utterance.understood.clone_from(&heard.acts);
        }
        Some(heard)
    }
}

/// Whether an event begins something that cannot belong to a closed job.
fn begins(event: &Event) -> bool {
    matches!(
        event,
        Event::JobOpened { .. } | Event::PlaceOpened { .. } | Event::Opened { .. } | Event::By { .. }
    )
}

/// Where the job stands as the events of one utterance pass.
struct Standing {
    place: Option<String>,
    step: Option<String>,
    person: Option<String>,
}

impl Standing {
    fn of(state: &State) -> Self {
        let person = Some(state.progress.person.clone()).filter(|person| !person.is_empty());
        Self {
            place: state.progress.current.clone(),
            step: state.place().and_then(|place| place.cursor.clone()),
            person,
        }
    }

    /// What an event changes of its own envelope: the place it opens or turns to, the person it names.
    fn before(&mut self, state: &State, event: &Event) {
        match event {
            Event::PlaceOpened { place, .. } | Event::Switched { place } => {
                self.step = state.progress.places.get(place).and_then(|held| held.cursor.clone());
                self.place = Some(place.clone());
            }
            Event::By { who } => self.person = Some(who.clone()).filter(|who| !who.is_empty()),
            _ => {}
        }
    }

    fn after(&mut self, event: &Event) {
        if let Event::Shown { step, .. } = event {
            self.step = Some(step.clone());
        }
    }
}
