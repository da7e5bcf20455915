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
mod rulebase_pack;
mod rulebase_scripts;
mod source_problems;
mod source_yaml;
mod workings_adjusters;
