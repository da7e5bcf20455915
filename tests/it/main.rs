//! The one integration test binary: it links once; each topic is a module.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::string_slice
)]
#![allow(clippy::disallowed_methods, reason = "a test may look at the clock and the environment")]
mod answers_fit;
mod architecture;
mod bench_entries;
mod bench_lines;
mod bench_walk;
mod book;
mod book_damage;
mod book_export;
mod book_kit;
mod book_open;
mod book_properties;
mod book_samples;
mod check_findings;
mod check_mutants;
mod check_pack;
mod check_walk;
mod checker;
mod cli;
mod console;
mod harness;
mod hearing;
mod hostile;
mod obey;
mod pipe;
mod procedures;
mod procedures_bench;
mod procedures_random;
mod procedures_technician;
mod procedures_units;
mod quantity;
mod quantity_figures;
mod readme;
mod reply;
mod reply_figures;
mod reply_speakable;
mod reply_support;
mod rulebase;
mod rulebase_pack;
mod rulebase_scripts;
mod session;
mod simulate;
mod source_problems;
mod source_yaml;
mod talk;
mod technician;
mod transcripts;
mod tutorial;
mod workings_adjusters;
mod workings_asked;
mod workings_properties;
mod workings_published;
mod workings_reference;
mod workings_registry;
mod workings_tables;
mod workings_trace;
