//! The talk rules as one automaton: pieces (rules that are not public) are found first and become symbols of the rest.

use super::stem::stem;
use super::token::tokens;
use crate::rulebase::talk::{Expr, Talk, TalkRule};
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// A symbol of the automaton: a word, a slot or a piece.
pub type Symbol = u32;
type State = usize;

/// One node: where its symbols lead, and what ends here.
#[derive(Debug, Clone, Default)]
struct Node {
    arcs: Vec<(Symbol, State)>,
    any: Vec<State>,
    /// Where its little words lead: a rule can do without them.
    small: Vec<State>,
    free: Vec<State>,
    ends: Option<usize>,
}

/// A net of rules; the end of each is its number.
#[derive(Debug, Clone, Default)]
pub struct Net {
    nodes: Vec<Node>,
}

/// A stretch of tokens that counts as a symbol.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Edge {
    /// The symbol.
    pub symbol: Symbol,
    /// One past its last token.
    pub end: usize,
}

/// Names of symbols.
#[derive(Debug, Clone, Default)]
pub struct Symbols {
    ids: HashMap<String, Symbol>,
    stems: HashMap<String, BTreeSet<Symbol>>,
    names: Vec<String>,
}

impl Symbols {
    /// The symbol of a name, made if there is none.
    pub fn add(&mut self, name: &str) -> Symbol {
        if let Some(id) = self.ids.get(name) {
            return *id;
        }
        let id = self.names.len() as Symbol;
        self.names.push(name.to_owned());
        self.ids.insert(name.to_owned(), id);
        if !name.starts_with('<') {
            self.stems.entry(stem(name)).or_default().insert(id);
        }
        id
    }

    /// The symbol of a name.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<Symbol> {
        self.ids.get(name).copied()
    }

    /// The symbols that a word may stand for: itself, or when the rules do not know it, those of its stem.
    #[must_use]
    pub fn of_word(&self, word: &str) -> Vec<Symbol> {
        match self.get(word) {
            Some(id) => vec![id],
            None => self.stems.get(&stem(word)).into_iter().flatten().copied().collect(),
        }
    }

    /// The name of a symbol.
    #[must_use]
    pub fn name(&self, symbol: Symbol) -> &str {
        self.names.get(symbol as usize).map_or("", String::as_str)
    }
}

/// Builds nets out of rules.
pub struct Builder<'a> {
    symbols: &'a mut Symbols,
    rules: BTreeMap<&'a str, &'a TalkRule>,
    inline: bool,
    net: Net,
}

impl<'a> Builder<'a> {
    /// A builder over a pack's talk; with `inline`, pieces are written out where they are named.
    pub fn new(talk: &'a Talk, symbols: &'a mut Symbols, inline: bool) -> Self {
        Self { symbols, rules: talk.by_name(), inline, net: Net { nodes: vec![Node::default()] } }
    }

    /// The symbol of a word, if a rule has it.
    pub fn symbol(&self, word: &str) -> Option<Symbol> {
        self.symbols.get(word)
    }

    /// Adds a rule that ends with that number.
    pub fn add(&mut self, body: &Expr, number: usize) {
        let end = self.node();
        if let Some(node) = self.net.nodes.get_mut(end) {
            node.ends = Some(number);
        }
        self.expand(body, 0, end);
    }

    /// The net, its free moves worked out, and what it may leave out.
    pub fn finish(mut self, small: &BTreeSet<Symbol>) -> Net {
        self.net.close();
        for node in &mut self.net.nodes {
            node.small = node
                .arcs
                .iter()
                .filter(|(symbol, _)| small.contains(symbol))
                .map(|(_, next)| *next)
                .collect();
        }
        self.net
    }

    fn node(&mut self) -> State {
        self.net.nodes.push(Node::default());
        self.net.nodes.len() - 1
    }

    fn free(&mut self, from: State, to: State) {
        if let Some(node) = self.net.nodes.get_mut(from) {
            node.free.push(to);
        }
    }

    fn arc(&mut self, from: State, symbol: Symbol, to: State) {
        if let Some(node) = self.net.nodes.get_mut(from) {
            node.arcs.push((symbol, to));
        }
    }

    fn expand(&mut self, body: &Expr, from: State, to: State) {
        match body {
            Expr::Word(word) => {
                let parts: Vec<Expr> = tokens(word).into_iter().map(|token| Expr::Word(token.text)).collect();
                match parts.as_slice() {
                    [Expr::Word(one)] => {
                        let symbol = self.symbols.add(one);
                        self.arc(from, symbol, to);
                    }
                    _ => self.expand(&Expr::Seq(parts), from, to),
                }
            }
            Expr::Name(name) => self.name(name, from, to),
            Expr::Seq(parts) => {
                let mut at = from;
                for (n, part) in parts.iter().enumerate() {
                    let next = if n + 1 == parts.len() { to } else { self.node() };
                    self.expand(part, at, next);
                    at = next;
                }
                if parts.is_empty() {
                    self.free(from, to);
                }
            }
            Expr::Alt(parts) => {
                for part in parts {
                    self.expand(part, from, to);
                }
            }
            Expr::Opt(part) => {
                self.expand(part, from, to);
                self.free(from, to);
            }
            Expr::Repeat(part, once) => {
                let inner = self.node();
                let after = self.node();
                self.free(from, inner);
                self.expand(part, inner, after);
                self.free(after, inner);
                self.free(after, to);
                if !once {
                    self.free(from, to);
                }
            }
        }
    }

    fn name(&mut self, name: &str, from: State, to: State) {
        match (name, self.rules.get(name).copied()) {
            ("text", _) => {
                let inner = self.node();
                for (start, end) in [(from, inner), (inner, inner)] {
                    if let Some(node) = self.net.nodes.get_mut(start) {
                        node.any.push(end);
                    }
                }
                self.free(inner, to);
            }
            ("NULL", _) => self.free(from, to),
            ("VOID", _) => {}
            (_, Some(rule)) if self.inline => {
                let body = &rule.body;
                self.expand(body, from, to);
            }
            _ => {
                let symbol = self.symbols.add(&format!("<{name}>"));
                self.arc(from, symbol, to);
            }
        }
    }
}

/// What it costs to leave words of the line, or little words of the rule, out.
pub struct Costs<'a> {
    /// For each token, what leaving it out costs.
    pub skip: &'a [f32],
    /// What a word taken as free text costs.
    pub any: f32,
    /// What a missing little word costs.
    pub missing: f32,
    /// Paths that cost more are given up.
    pub budget: f32,
}

impl Net {
    fn close(&mut self) {
        let closures: Vec<BTreeSet<State>> = (0..self.nodes.len()).map(|state| self.closure(state)).collect();
        let mut closed = Vec::with_capacity(self.nodes.len());
        for closure in closures {
            let mut node = Node::default();
            for state in closure {
                let Some(one) = self.nodes.get(state) else { continue };
                node.arcs.extend(&one.arcs);
                node.any.extend(&one.any);
                node.ends = node.ends.or(one.ends);
            }
            node.arcs.sort_unstable();
            node.arcs.dedup();
            closed.push(node);
        }
        self.nodes = closed;
    }

    fn closure(&self, state: State) -> BTreeSet<State> {
        let mut seen = BTreeSet::from([state]);
        let mut todo = vec![state];
        while let Some(at) = todo.pop() {
            for next in self.nodes.get(at).into_iter().flat_map(|node| &node.free) {
                if seen.insert(*next) {
                    todo.push(*next);
                }
            }
        }
        seen
    }

    /// The rules that fit from `from` on: for each place up to `to`, each rule that may end there with its cheapest cost.
    #[must_use]
    pub fn parse(
        &self,
        edges: &[Vec<Edge>],
        from: usize,
        to: usize,
        costs: &Costs<'_>,
    ) -> Vec<BTreeMap<usize, f32>> {
        let mut live: Vec<Vec<(State, f32)>> = vec![Vec::new(); to.saturating_sub(from) + 1];
        if let Some(first) = live.first_mut() {
            first.push((0, 0.0));
        }
        let mut found = Vec::with_capacity(live.len());
        for at in from..=to {
            let mut states = live.get_mut(at - from).map(std::mem::take).unwrap_or_default();
            self.without_small(&mut states, costs);
            cheapest(&mut states);
            found.push(self.ends(&states));
            if at == to {
                break;
            }
            for (state, cost) in states {
                self.step(state, cost, at, to, edges, costs, |end, next, cost| {
                    if let Some(list) = live.get_mut(end - from) {
                        list.push((next, cost));
                    }
                });
            }
        }
        found
    }

    fn ends(&self, states: &[(State, f32)]) -> BTreeMap<usize, f32> {
        let mut found: BTreeMap<usize, f32> = BTreeMap::new();
        for (state, cost) in states {
            if let Some(end) = self.nodes.get(*state).and_then(|node| node.ends) {
                let best = found.entry(end).or_insert(*cost);
                *best = best.min(*cost);
            }
        }
        found
    }

    /// Adds the states that a missing little word leads to.
    fn without_small(&self, states: &mut Vec<(State, f32)>, costs: &Costs<'_>) {
        for at in 0..states.len() {
            let Some((state, cost)) = states.get(at).copied() else { continue };
            if state == 0 || cost + costs.missing > costs.budget {
                continue;
            }
            let Some(node) = self.nodes.get(state) else { continue };
            states.extend(node.small.iter().map(|next| (*next, cost + costs.missing)));
        }
    }

    #[expect(clippy::too_many_arguments, reason = "one step of the walk needs the whole place")]
    fn step(
        &self,
        state: State,
        cost: f32,
        at: usize,
        to: usize,
        edges: &[Vec<Edge>],
        costs: &Costs<'_>,
        mut go: impl FnMut(usize, State, f32),
    ) {
        let Some(node) = self.nodes.get(state) else { return };
        for edge in edges.get(at).into_iter().flatten().filter(|edge| edge.end <= to) {
            let first = node.arcs.partition_point(|(symbol, _)| *symbol < edge.symbol);
            for (_, next) in node.arcs.iter().skip(first).take_while(|(symbol, _)| *symbol == edge.symbol) {
                go(edge.end, *next, cost);
            }
        }
        let skip = cost + costs.skip.get(at).copied().unwrap_or(1.0);
        if skip <= costs.budget {
            go(at + 1, state, skip);
        }
        let any = cost + costs.any;
        if any <= costs.budget {
            for next in &node.any {
                go(at + 1, *next, any);
            }
        }
    }

    /// Every rule that begins at `at`, with where it ends: pieces, without any tolerance.
    pub fn pieces(&self, edges: &[Vec<Edge>], at: usize, mut found: impl FnMut(usize, usize)) {
        let mut live: BTreeSet<(usize, State)> = BTreeSet::from([(at, 0)]);
        while let Some((place, state)) = live.pop_first() {
            let Some(node) = self.nodes.get(state) else { continue };
            if place > at
                && let Some(end) = node.ends
            {
                found(end, place);
            }
            for edge in edges.get(place).into_iter().flatten() {
                let first = node.arcs.partition_point(|(symbol, _)| *symbol < edge.symbol);
                for (_, next) in node.arcs.iter().skip(first).take_while(|(symbol, _)| *symbol == edge.symbol)
                {
                    live.insert((edge.end, *next));
                }
            }
        }
    }
}

/// Keeps the cheapest way to each state.
fn cheapest(states: &mut Vec<(State, f32)>) {
    states.sort_unstable_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    states.dedup_by_key(|(state, _)| *state);
}
