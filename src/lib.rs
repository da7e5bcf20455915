//! Sparehand: a voice-ready bench assistant over a local rules engine.
