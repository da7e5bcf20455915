//! The pack in force with its ear: a job keeps the pack it began with, and a newer one waits for the next job.

use crate::hearing::Ear;
use crate::rulebase::Pack;
use std::sync::{Arc, OnceLock};

/// The newest pack, and the one in force.
pub struct Rules {
    newest: Arc<Ready>,
    force: Arc<Ready>,
    kept: bool,
}

/// A pack ready for use, its hash known. Its ear is built aside, so that the bench opens at once; the first line waits
/// for what is left of it.
struct Ready {
    pack: Arc<Pack>,
    ear: Arc<OnceLock<Ear>>,
    hash: String,
}

impl Ready {
    fn new(pack: Arc<Pack>) -> Arc<Self> {
        let ear = Arc::new(OnceLock::new());
        let (for_ear, of_pack) = (Arc::clone(&ear), Arc::clone(&pack));
        std::thread::spawn(move || {
            for_ear.get_or_init(|| Ear::new(&of_pack));
        });
        Arc::new(Self { ear, hash: pack.hash(), pack })
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
        // The same pack has its ear already.
        self.force =
            if pack.hash() == self.newest.hash { Arc::clone(&self.newest) } else { Ready::new(Arc::new(pack)) };
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
