//! The one integration test binary: it links once; each topic is a module.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing, clippy::panic)]
mod architecture;
mod bench_entries;
mod bench_walk;
mod book;
mod book_damage;
mod book_export;
mod book_kit;
mod book_open;
mod book_properties;
mod book_samples;
mod quantity;
mod quantity_figures;
mod reply;
mod reply_figures;
mod reply_speakable;
mod reply_support;
mod rulebase;
mod workings_adjusters;
mod harness;
mod hostile;
mod cli;
mod pipe;
mod transcripts;
mod checker;
mod technician;
mod simulate;
