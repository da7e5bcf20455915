//! Runs every finding over a pack: cards and procedures are shared out to two workers.

use super::finding::{Finding, Look};
use super::findings::FINDINGS;
use super::report::{Found, Report, Walked};
use super::sink::Sink;
use super::subject::{OnCard, OnPack, OnProcedure};
use super::walk;
use crate::hearing::Ear;
use crate::rulebase::{Pack, Procedure, UnitCard};
use std::sync::atomic::{AtomicUsize, Ordering};

/// Workers that share out cards and procedures. More than the cores of a bench's machine would gain nothing.
const WORKERS: usize = 2;

/// Decisions of the bench for each step of a procedure: no walk that was measured needs more than 30.
const EACH: f64 = 60.0;
/// Decisions for a pack as a whole: a large one is walked less widely, so that it is checked in tens of seconds.
const IN_ALL: f64 = 400_000.0;
/// Decisions for each step that even the largest pack gets: the main path, and no to most questions.
const EVEN_THEN: f64 = 1.6;

/// The finding of that name, in words or joined by `-`.
pub fn finding(name: &str) -> Option<&'static Finding> {
    FINDINGS.iter().copied().find(|finding| finding.name == name || finding.slug() == name)
}

/// Checks a pack.
pub fn check(pack: &Pack) -> Report {
    let steps: usize = pack.procedures.values().map(|procedure| procedure.all_steps().len()).sum();
    check_within(pack, (IN_ALL / steps.max(1) as f64).clamp(EVEN_THEN, EACH))
}

/// The same, with at most so many decisions of the bench for each step that is walked.
pub fn check_within(pack: &Pack, each: f64) -> Report {
    let mut report = in_parallel(pack, each);
    report.found.sort_by(|a, b| a.key().cmp(&b.key()));
    report.found.dedup_by(|a, b| a.key() == b.key());
    report
}

/// One piece of work.
enum Piece<'a> {
    Pack,
    Card(&'a UnitCard),
    Procedure(&'a Procedure, &'a UnitCard),
}

fn in_parallel(pack: &Pack, bound: f64) -> Report {
    let cards = pack.units.values().map(|card| Piece::Card(card));
    let procedures =
        pack.procedures.values().filter_map(|one| Some(Piece::Procedure(one, pack.units.get(&one.unit)?)));
    let pieces: Vec<Piece<'_>> = std::iter::once(Piece::Pack).chain(cards).chain(procedures).collect();
    let next = AtomicUsize::new(0);
    let worker = || {
        let mut own = Report::default();
        while let Some(piece) = pieces.get(next.fetch_add(1, Ordering::Relaxed)) {
            let (found, walked) = work(pack, piece, bound);
            own.found.extend(found);
            own.walked += walked;
        }
        own
    };
    std::thread::scope(|scope| {
        let hired: Vec<_> = (1..WORKERS).map(|_| scope.spawn(worker)).collect();
        let mut report = worker();
        for done in hired.into_iter().filter_map(|one| one.join().ok()) {
            report.found.extend(done.found);
            report.walked += done.walked;
        }
        report
    })
}

fn work(pack: &Pack, piece: &Piece<'_>, bound: f64) -> (Vec<Found>, Walked) {
    let Some(first) = FINDINGS.first() else { return Default::default() };
    let mut sink = Sink::new(pack, first);
    let walked = match piece {
        Piece::Pack => {
            on_pack(pack, &mut sink);
            Walked::default()
        }
        Piece::Card(card) => {
            let subject = OnCard { pack, card };
            each(&mut sink, |look, sink| {
                if let Look::Card(look) = look {
                    look(&subject, sink)
                }
            });
            Walked::default()
        }
        Piece::Procedure(procedure, card) => {
            let steps = procedure.all_steps();
            let subject = OnProcedure { pack, card, procedure, steps: &steps };
            each(&mut sink, |look, sink| {
                if let Look::Procedure(look) = look {
                    look(&subject, sink)
                }
            });
            walk::walk(&subject, bound, &mut sink)
        }
    };
    (sink.into_found(), walked)
}

fn on_pack(pack: &Pack, sink: &mut Sink<'_>) {
    // Talk that is lent was proved with the pack that it is from.
    let ear = (!pack.talk.rules.is_empty() && !pack.talk_is_lent).then(|| ear(pack));
    let subject = OnPack { pack, ear: ear.as_ref() };
    each(sink, |look, sink| {
        if let Look::Pack(look) = look {
            look(&subject, sink)
        }
    });
}

/// Units whose names the ear of a check knows: its example lines use no others, and each costs it memory.
const UNITS_HEARD: usize = 12;

fn ear(pack: &Pack) -> Ear {
    if pack.units.len() <= UNITS_HEARD {
        return Ear::new(pack);
    }
    let mut few = pack.clone();
    few.units = pack.units.iter().take(UNITS_HEARD).map(|(id, card)| (id.clone(), card.clone())).collect();
    few.procedures.retain(|(_, unit), _| few.units.contains_key(unit));
    Ear::new(&few)
}

/// Goes through all findings, the sink taking each in turn.
pub(super) fn each(sink: &mut Sink<'_>, mut look: impl FnMut(&Look, &mut Sink<'_>)) {
    for finding in FINDINGS.iter().copied() {
        sink.takes(finding);
        look(&finding.look, sink);
    }
}
