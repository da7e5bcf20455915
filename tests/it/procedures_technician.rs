//! Simulated technicians, spoken and typed, work the procedures of the Birch 60 and the Lark 43 from a line to a line;
//! every figure of every log is recomputed from the lines that went in.

use super::simulate::{job, manner};

fn hundred(begin: &str) {
    let failed: Vec<String> = (0..100).filter_map(|seed| job(begin, seed, manner(seed)).err()).collect();
    assert!(failed.is_empty(), "{} of 100 failed; the first:\n{}", failed.len(), failed[0]);
}

#[test]
fn a_hundred_technicians_re_spring_a_birch_60() {
    hundred("start a re-spring on the birch 60, rear left");
}

#[test]
fn a_hundred_technicians_service_a_birch_60() {
    hundred("start a full service on the birch 60, rear right");
}

#[test]
fn a_hundred_technicians_re_spring_a_lark_43() {
    hundred("start a re-spring on the lark 43, front left");
}
