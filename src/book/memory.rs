//! A book in memory: for tests, measurements and a demo that is to leave nothing behind.

use super::body;
use super::mark::{Mark, plain};
use super::order::{self, Head};
use super::{Book, BookError, Customer, Files, JobLine, Query, Survey};
use crate::event::{Envelope, JobId};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// A record that lasts as long as the program.
#[derive(Debug, Clone, Default)]
pub struct MemoryBook {
    bench: String,
    jobs: BTreeMap<JobId, Vec<Envelope>>,
    ids: BTreeSet<String>,
    numbers: BTreeSet<u32>,
    packs: BTreeMap<String, Files>,
    customers: BTreeMap<String, Customer>,
}

/// What messages call it.
const NAME: &str = "in memory";

impl MemoryBook {
    /// An empty book of this bench.
    pub fn new(bench: impl Into<String>) -> Self {
        Self { bench: bench.into(), ..Self::default() }
    }

    fn lines(&self) -> Vec<JobLine> {
        let mut lines: Vec<JobLine> = self.jobs.values().filter_map(|events| line(events)).collect();
        lines.sort_by(|a, b| (a.number, a.opened, &a.job).cmp(&(b.number, b.opened, &b.job)));
        lines
    }

    /// Ids and job numbers are never used twice, in the book or within the events.
    fn check_new(&self, events: &[Envelope]) -> Result<(), BookError> {
        let clash = |what: String| Err(BookError::Clash { book: NAME.into(), what });
        let (mut ids, mut numbers) = (BTreeSet::new(), BTreeSet::new());
        for event in events {
            if self.ids.contains(&event.id) || !ids.insert(&event.id) {
                return clash(format!("event id {} is used already", event.id));
            }
            if let Some(Mark::Opened(number)) = Mark::of(event)
                && (self.numbers.contains(&number) || !numbers.insert(number))
            {
                return clash(format!("job number {number} is used already"));
            }
        }
        Ok(())
    }
}

fn line(events: &[Envelope]) -> Option<JobLine> {
    Some(JobLine::fold(events.first()?, events, events.last()?))
}

fn head(events: &[Envelope]) -> Option<Head> {
    events.last().map(|e| Head { sequence: e.sequence, utterance: e.utterance.id.clone() })
}

impl Book for MemoryBook {
    fn bench(&self) -> &str {
        &self.bench
    }

    fn append(&mut self, events: &[Envelope]) -> Result<(), BookError> {
        order::check(Path::new(NAME), events, |job| Ok(self.jobs.get(job).and_then(|e| head(e))))?;
        self.check_new(events)?;
        events.iter().try_for_each(|e| body::of(Path::new(NAME), e).map(|_| ()))?;
        for event in events {
            self.ids.insert(event.id.clone());
            if let Some(Mark::Opened(number)) = Mark::of(event) {
                self.numbers.insert(number);
            }
            self.jobs.entry(event.job.clone()).or_default().push(event.clone());
        }
        Ok(())
    }

    fn since(&self, job: &str, sequence: u64) -> Result<Vec<Envelope>, BookError> {
        let events = self.jobs.get(job).map(Vec::as_slice).unwrap_or_default();
        Ok(events.iter().filter(|e| e.sequence > sequence).cloned().collect())
    }

    fn find(&self, query: &Query) -> Result<Vec<JobLine>, BookError> {
        let mut lines = self.lines();
        match query {
            Query::All => {}
            Query::Job(job) => lines.retain(|l| l.job == *job),
            Query::Number(number) => lines.retain(|l| l.number == *number),
            Query::OpenAt(bench) => lines.retain(|l| l.bench == *bench && l.closed.is_none()),
            Query::Serial(serial) => lines.retain(|l| l.has(&plain(serial))),
            Query::LastFinished(serial) => {
                lines.retain(|l| l.has(&plain(serial)));
                lines = JobLine::last_closed(lines);
            }
        }
        Ok(lines)
    }

    fn next_job_number(&self) -> Result<u32, BookError> {
        Ok(self.numbers.last().map_or(1, |n| n.saturating_add(1)))
    }

    fn keep_pack(&mut self, hash: &str, files: &Files) -> Result<(), BookError> {
        self.packs.entry(hash.to_owned()).or_insert_with(|| files.clone());
        Ok(())
    }

    fn pack(&self, hash: &str) -> Result<Option<Files>, BookError> {
        Ok(self.packs.get(hash).cloned())
    }

    fn put_customer(&mut self, customer: &Customer) -> Result<(), BookError> {
        self.customers.insert(customer.id.clone(), customer.clone());
        Ok(())
    }

    fn customer(&self, id: &str) -> Result<Option<Customer>, BookError> {
        Ok(self.customers.get(id).cloned())
    }

    fn customers(&self) -> Result<Vec<Customer>, BookError> {
        Ok(self.customers.values().cloned().collect())
    }

    fn forget_customer(&mut self, id: &str) -> Result<bool, BookError> {
        Ok(self.customers.remove(id).is_some())
    }

    fn verify(&self) -> Result<Survey, BookError> {
        let events = self.jobs.values().map(Vec::len).sum();
        Ok(Survey { jobs: self.jobs.len(), events, packs: self.packs.len() })
    }
}
