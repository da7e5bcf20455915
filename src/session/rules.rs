//! The pack in force with its ear: a job keeps the pack it began with, and a newer one waits for the next job.

use crate::hearing::Ear;
use crate::rulebase::Pack;
use std::sync::{Arc, OnceLock};
use std::thread;

/// The newest pack, and the one in force. Clones share packs and ears.
#[derive(Clone)]
pub struct Rules {
    newest: Arc<Ready>,
    force: Arc<Ready>,
    kept: bool,
}

/// A pack ready for use: its hash known, its ear fitted when it is first needed.
struct Ready {
    pack: Arc<Pack>,
    ear: OnceLock<Ear>,
    hash: String,
}

impl Ready {
    fn new(pack: Arc<Pack>) -> Arc<Self> {
        Arc::new(Self { ear: OnceLock::new(), hash: pack.hash(), pack })
    }

    fn ear(&self) -> &Ear {
        self.ear.get_or_init(|| Ear::new(&self.pack))
    }
}

impl Rules {
    /// Rules of one pack.
    pub fn new(pack: Arc<Pack>) -> Self {
        let ready = Ready::new(pack);
        Self { newest: Arc::clone(&ready), force: ready, kept: false }
    }

    /// Fits the ear of the pack in force while nobody has spoken yet.
    pub fn warm(&self) {
        let ready = Arc::clone(&self.force);
        thread::spawn(move || {
            ready.ear();
        });
    }

    /// The pack in force.
    pub fn pack(&self) -> &Pack {
        &self.force.pack
    }

    /// Its ear.
    pub fn ear(&self) -> &Ear {
        self.force.ear()
    }

    /// Its hash.
    pub fn hash(&self) -> &str {
        &self.force.hash
    }

    /// Puts the pack in force that a job is pinned to.
    pub fn pin(&mut self, pack: Pack) {
        self.force = Ready::new(Arc::new(pack));
        self.kept = false;
    }

    /// Puts the newest pack in force.
    pub fn take_newest(&mut self) {
        if !self.newest_in_force() {
            self.force = Arc::clone(&self.newest);
            self.kept = false;
        }
    }

    /// Whether the newest pack is the one in force.
    pub fn newest_in_force(&self) -> bool {
        self.is_newest(&self.force.hash)
    }

    /// Whether a pack of this hash is the newest.
    pub fn is_newest(&self, hash: &str) -> bool {
        self.newest.hash == hash
    }

    /// Whether the pack in force is known to be in the book.
    pub fn kept(&self) -> bool {
        self.kept
    }

    /// The pack in force is in the book now.
    pub fn set_kept(&mut self) {
        self.kept = true;
    }
}
