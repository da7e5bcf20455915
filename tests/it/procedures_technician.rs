//! Simulated technicians, spoken and typed, work the procedures of the Birch 60 and the Lark 43 from a line to a line;
//! every figure of every log is recomputed from the lines that went in.

use super::simulate::{job, manner};

fn thirty(begin: &str) {
    let failed: Vec<String> = (0..30).filter_map(|seed| job(begin, seed, manner(seed)).err()).collect();
    assert!(failed.is_empty(), "{} of 30 failed; the first:\n{}", failed.len(), failed[0]);
}

#[test]
fn thirty_technicians_re_spring_a_birch_60() {
    thirty("start a re-spring on the birch 60, rear left");
}

#[test]
fn thirty_technicians_service_a_birch_60() {
    thirty("start a full service on the birch 60, rear right");
}

#[test]
fn thirty_technicians_re_spring_a_lark_43() {
    thirty("start a re-spring on the lark 43, front left");
}
