//! The pack in force with its ear: a job keeps the pack it began with, and a newer one waits for the next job.

use crate::hearing::Ear;
use crate::rulebase::Pack;
use std::sync::Arc;

/// The newest pack, and the one in force.
pub struct Rules {
    newest: (Arc<Pack>, Arc<Ear>),
    force: (Arc<Pack>, Arc<Ear>),
    kept: Option<String>,
}

impl Rules {
    /// Rules of one pack.
    pub fn new(pack: Arc<Pack>) -> Self {
        let ear = Arc::new(Ear::new(&pack));
        Self { newest: (Arc::clone(&pack), Arc::clone(&ear)), force: (pack, ear), kept: None }
    }

    /// The pack in force.
    pub fn pack(&self) -> &Pack {
        &self.force.0
    }

    /// Its ear.
    pub fn ear(&self) -> &Ear {
        &self.force.1
    }

    /// Puts the pack in force that a job is pinned to.
    pub fn pin(&mut self, pack: Pack) {
        let ear = Arc::new(Ear::new(&pack));
        self.force = (Arc::new(pack), ear);
        self.kept = None;
    }

    /// Puts the newest pack in force.
    pub fn take_newest(&mut self) {
        self.force = (Arc::clone(&self.newest.0), Arc::clone(&self.newest.1));
        self.kept = None;
    }

    /// Whether the newest pack is the one in force.
    pub fn newest_in_force(&self) -> bool {
        self.newest.0.hash() == self.force.0.hash()
    }

    /// Whether a pack of this hash is the newest.
    pub fn is_newest(&self, hash: &str) -> bool {
        self.newest.0.hash() == hash
    }

    /// The hash of the pack that is known to be in the book.
    pub fn kept_in_book(&self) -> Option<&str> {
        self.kept.as_deref()
    }

    /// The pack in force is in the book now.
    pub fn set_kept(&mut self) {
        self.kept = Some(self.force.0.hash().to_owned());
    }
}
