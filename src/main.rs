//! The doorway.
fn main() {}
