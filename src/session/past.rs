//! What the book knows besides the job in hand: the next job's number, and the last job on this serial.

use super::{Fault, Session};
use crate::bench::state::State;
use crate::book::{JobLine, Query};

impl Session {
    /// Brings `past` up to date, where what it rests on has changed.
    pub(super) fn look_back(&mut self) -> Result<(), Fault> {
        if !self.state.progress.open {
            self.past.next_number = self.book.next_job_number()?;
        }
        let serial = self.serial();
        if serial != self.looked_for {
            self.past.last = match &serial {
                Some(serial) => self.last_on(serial)?,
                None => None,
            };
            self.looked_for = serial;
        }
        Ok(())
    }

    /// The serial of the unit in hand, once it is recorded.
    fn serial(&self) -> Option<String> {
        let here = self.state.progress.current.clone()?;
        self.state.record.texts.get(&(here, "serial".to_owned())).cloned()
    }

    /// The last finished job that had this serial on the bench, and the place that held it.
    fn last_on(&self, serial: &str) -> Result<Option<(State, String)>, Fault> {
        let found = self.book.find(&Query::LastFinished(serial.to_owned()))?;
        let Some(line) = found.into_iter().next() else { return Ok(None) };
        let Some(place) = place_of(&line, serial) else { return Ok(None) };
        let events = self.book.since(&line.job, 0)?;
        Ok(Some((State::of(&events), place)))
    }
}

fn place_of(line: &JobLine, serial: &str) -> Option<String> {
    let wanted = bare(serial);
    line.places
        .iter()
        .find(|(_, place)| place.serial.as_deref().is_some_and(|held| bare(held) == wanted))
        .map(|(id, _)| id.clone())
}

/// A serial as it is compared: letters and digits alone, in capitals.
fn bare(serial: &str) -> String {
    serial.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_uppercase).collect()
}
