//! What a path has done that the job itself does not keep: what came apart, what was worn, what was wetted.

use crate::bench::state::{Fitting, Place};
use crate::event::{Change, Moved};
use crate::rulebase::{AdjusterKind, Deed, Part, Step, UnitCard};
use std::collections::{BTreeMap, BTreeSet};

/// What a path has done.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Trail {
    /// Adjusters that are apart.
    pub apart: BTreeSet<String>,
    /// Adjusters that were put back and whose mark was not looked at since.
    pub unlooked: BTreeSet<String>,
    /// Adjusters with a travel that were apart or zeroed and not counted since.
    pub uncounted: BTreeSet<String>,
    /// Adjusters whose travel was counted again and that were not apart since.
    pub recounted: BTreeSet<String>,
    /// Parts that came off, or undone, and were not renewed since.
    pub worn: BTreeSet<String>,
    /// Parts that are off.
    pub off: BTreeSet<String>,
    /// Single-use parts that nothing covers any more, and that were not renewed since.
    pub bared: BTreeSet<String>,
    /// Parts whose threadlocker was broken by taking them off, and not put on again.
    pub dry: BTreeSet<String>,
    /// Adjusters that were set, or lost, since the settings as left were said back.
    pub unsaid: BTreeSet<String>,
    /// Minutes of waits since the threadlocker of a part was put on.
    pub waited: BTreeMap<String, u32>,
    /// The step that last did something to a part or an adjuster.
    pub last: BTreeMap<String, String>,
    /// What was drained and was not bled after it was filled again.
    pub unbled: BTreeSet<String>,
    /// Springs that were compressed, and neither proved to be held nor let off since.
    pub pressed: BTreeSet<String>,
    /// Whether something was undone, in a phase that makes safe, since the last proof.
    pub unproved: bool,
    /// Parts of which somebody was told after the last thing that was done to them.
    pub told: BTreeSet<String>,
    /// Settings said back as found, as left.
    pub said_back: BTreeSet<String>,
}

impl Trail {
    /// Follows a step that was closed with these changes.
    pub fn closed(&mut self, card: &UnitCard, step: &Step, makes_safe: bool, moved: &[Moved]) {
        match step.deed {
            Deed::Prove => self.unproved = false,
            Deed::Loosen | Deed::Remove | Deed::Release => self.unproved |= makes_safe,
            _ => {}
        }
        if let Some(about) = &step.about {
            self.of_adjuster(card, about, step);
            self.of_energy(about, step.deed);
            if step.deed == Deed::Record {
                self.told.insert(about.clone());
            }
        }
        if let Some(timer) = &step.timer {
            let minutes = timer.lasts.in_unit(crate::quantity::Unit::Minute).unwrap_or_default();
            self.waited.values_mut().for_each(|waited| *waited += minutes.ceil() as u32);
        }
        for change in moved {
            self.of_change(card, change, step);
        }
    }

    fn of_adjuster(&mut self, card: &UnitCard, about: &str, step: &Step) {
        let Some(adjuster) = card.adjuster(about) else { return };
        let clicker = has_travel(&adjuster.kind);
        match step.deed {
            Deed::Rock | Deed::Remove => {
                self.apart.insert(about.to_owned());
                self.unlooked.remove(about);
            }
            Deed::Press | Deed::Refit => {
                self.apart.remove(about);
                if step.question.is_none() {
                    self.unlooked.insert(about.to_owned());
                }
            }
            Deed::Look | Deed::Align => {
                self.unlooked.remove(about);
            }
            Deed::Zero if clicker && !self.recounted.contains(about) => {
                self.uncounted.insert(about.to_owned());
            }
            Deed::Count if step.read.as_ref().is_some_and(|read| read.role.as_str() == "travel-again") => {
                self.uncounted.remove(about);
                self.recounted.insert(about.to_owned());
            }
            _ => {}
        }
        if matches!(step.deed, Deed::Set | Deed::Charge) {
            self.unsaid.insert(about.to_owned());
        }
    }

    fn of_energy(&mut self, about: &str, deed: Deed) {
        match deed {
            Deed::Compress => _ = self.pressed.insert(about.to_owned()),
            Deed::Prove | Deed::Release | Deed::Remove => _ = self.pressed.remove(about),
            Deed::Drain => _ = self.unbled.insert(about.to_owned()),
            Deed::Bleed => _ = self.unbled.remove(about),
            _ => {}
        }
    }

    /// What lay under the part that came off, and under nothing else that is still on, lies bare.
    fn bare(&mut self, card: &UnitCard, came_off: &str) {
        let lies_under = |cover: &Part, id: &str| cover.over.iter().any(|under| under == id);
        let Some(cover) = card.part(came_off) else { return };
        for part in card.parts.iter().filter(|part| part.single_use && lies_under(cover, &part.id)) {
            let mut covers = card.parts.iter().filter(|cover| lies_under(cover, &part.id));
            if covers.all(|cover| self.off.contains(&cover.id)) {
                self.bared.insert(part.id.clone());
            }
        }
    }

    fn of_change(&mut self, card: &UnitCard, moved: &Moved, step: &Step) {
        let about = &moved.about;
        match &moved.change {
            Change::Lost if card.adjuster(about).is_some_and(|one| has_travel(&one.kind)) => {
                self.uncounted.insert(about.clone());
                self.recounted.remove(about);
            }
            Change::Off => {
                self.worn.insert(about.clone());
                self.off.insert(about.clone());
                self.bare(card, about);
                self.dry.insert(about.clone());
                self.waited.remove(about);
            }
            Change::Loose => {
                self.worn.insert(about.clone());
            }
            Change::New => {
                self.worn.remove(about);
                self.bared.remove(about);
            }
            Change::On => {
                self.off.remove(about);
            }
            Change::Locked { .. } => {
                self.dry.remove(about);
                self.waited.insert(about.clone(), 0);
            }
            Change::Tight { .. } => {
                self.off.remove(about);
                self.waited.remove(about);
            }
            _ => {}
        }
        if !matches!(moved.change, Change::Clean | Change::Passed | Change::MarkSeen | Change::Marked) {
            self.told.remove(about);
            self.last.insert(about.clone(), step.id.clone());
        }
    }
}

/// Whether an adjuster goes from stop to stop, so that its travel can be counted.
fn has_travel(kind: &AdjusterKind) -> bool {
    matches!(kind, AdjusterKind::Clicker { .. } | AdjusterKind::Screw { turns: Some(_), .. })
}

/// How a part stands.
pub fn fitting(place: &Place, part: &str) -> Fitting {
    place.parts.get(part).map(|known| known.fitting).unwrap_or_default()
}
