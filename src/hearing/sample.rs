//! Lines that a grammar rule allows, a few of each, for fitting.

use crate::rulebase::talk::{Expr, Talk, TalkRule};
use std::collections::BTreeMap;

/// Draws lines from rules; the same seed draws the same lines.
pub struct Sampler<'a> {
    rules: BTreeMap<&'a str, &'a TalkRule>,
    seed: u64,
}

impl<'a> Sampler<'a> {
    /// A sampler over a pack's talk.
    #[must_use]
    pub fn new(talk: &'a Talk) -> Self {
        Self { rules: talk.by_name(), seed: 0x2545_f491_4f6c_dd1d }
    }

    fn draw(&mut self, below: usize) -> usize {
        self.seed = self.seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.seed >> 33) as usize % below.max(1)
    }

    /// Lines of a rule: some for each of its alternatives at the top.
    pub fn lines(&mut self, rule: &TalkRule, each: usize) -> Vec<Vec<String>> {
        let tops: Vec<&Expr> = match &rule.body {
            Expr::Alt(parts) => parts.iter().collect(),
            body => vec![body],
        };
        let mut out = Vec::new();
        for top in tops {
            let wanted = each.min(ways(top, &self.rules, 0));
            for _ in 0..wanted {
                let mut line = Vec::new();
                self.one(top, &mut line);
                out.push(line);
            }
        }
        out.sort();
        out.dedup();
        out
    }

    fn one(&mut self, body: &Expr, line: &mut Vec<String>) {
        match body {
            Expr::Word(word) => line.push(word.clone()),
            Expr::Name(name) if name == "NULL" || name == "VOID" => {}
            Expr::Name(name) => match self.rules.get(name.as_str()).copied() {
                Some(rule) => self.one(&rule.body, line),
                None => line.push(format!("<{name}>")),
            },
            Expr::Seq(parts) => {
                for part in parts {
                    self.one(part, line);
                }
            }
            Expr::Alt(parts) => {
                let at = self.draw(parts.len());
                if let Some(part) = parts.get(at) {
                    self.one(part, line);
                }
            }
            Expr::Opt(part) => {
                if self.draw(2) == 0 {
                    self.one(part, line);
                }
            }
            Expr::Repeat(part, once) => {
                let times = usize::from(*once) + self.draw(2);
                for _ in 0..times {
                    self.one(part, line);
                }
            }
        }
    }
}

/// About how many lines an expansion allows, up to a thousand.
fn ways(body: &Expr, rules: &BTreeMap<&str, &TalkRule>, depth: usize) -> usize {
    if depth > 12 {
        return 1000;
    }
    let count = match body {
        Expr::Word(_) => 1,
        Expr::Name(name) => rules.get(name.as_str()).map_or(1, |rule| ways(&rule.body, rules, depth + 1)),
        Expr::Seq(parts) => parts.iter().fold(1, |all, part| (all * ways(part, rules, depth)).min(1000)),
        Expr::Alt(parts) => parts.iter().map(|part| ways(part, rules, depth)).sum(),
        Expr::Opt(part) => 1 + ways(part, rules, depth),
        Expr::Repeat(part, _) => 2 * ways(part, rules, depth),
    };
    count.min(1000)
}
