//! The one integration test binary: it links once; each topic is a module.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing, clippy::panic)]
mod quantity;
mod quantity_figures;
mod workings_adjusters;
mod workings_properties;
mod workings_published;
mod workings_reference;
mod workings_registry;
mod workings_tables;
mod workings_trace;
