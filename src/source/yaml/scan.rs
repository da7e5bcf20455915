//! YAML text to the tree. The only file that knows `saphyr-parser`.

use super::guard;
use super::{Key, Kind, MOST_BYTES, MOST_DEEP, MOST_NODES, Node, Span, Style};
use crate::source::{Place, Problem};
use saphyr_parser::{Event, Marker, Parser, ScalarStyle, ScanError, StrInput};
use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;

/// Reads a file's text. A byte-order mark is passed over.
///
/// # Errors
/// Every problem found, in the order of the file; where the text stops being YAML, the problems up to there.
pub fn parse(file: &Arc<str>, text: &str) -> Result<Node, Vec<Problem>> {
    if text.len() > MOST_BYTES {
        return Err(vec![guard::too_big(Place::file(Arc::clone(file)), text.len())]);
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let whole = Place::file(Arc::clone(file));
    // The parser asserts in a few places: a text that trips one is a broken text, not a reason to fall over.
    catch_unwind(AssertUnwindSafe(|| Scan::new(file, text).run()))
        .unwrap_or_else(|_| Err(vec![guard::not_yaml(whole, "the reader gave up on it")]))
}

/// A list or map that is being filled.
struct Open {
    kind: Kind,
    span: Span,
    key: Option<Key>,
    seen: BTreeMap<String, u32>,
}

struct Scan<'a> {
    file: &'a Arc<str>,
    parser: Parser<'a, StrInput<'a>>,
    open: Vec<Open>,
    root: Option<Node>,
    nodes: usize,
    problems: Vec<Problem>,
}

/// Whether to go on reading.
type Flow = std::ops::ControlFlow<()>;
const STOP: Flow = Flow::Break(());
const ON: Flow = Flow::Continue(());

impl<'a> Scan<'a> {
    fn new(file: &'a Arc<str>, text: &'a str) -> Self {
        let parser = Parser::new_from_str(text);
        Self { file, parser, open: Vec::new(), root: None, nodes: 0, problems: Vec::new() }
    }

    fn run(mut self) -> Result<Node, Vec<Problem>> {
        while let Some(next) = self.parser.next_event() {
            let flow = match next {
                Ok((event, span)) => self.take(event, Span { start: spot(span.start), end: spot(span.end) }),
                Err(error) => self.broken(&error),
            };
            if flow.is_break() {
                break;
            }
        }
        if self.problems.is_empty() {
            let empty = Node { kind: Kind::Empty, span: Span { start: (1, 1), end: (1, 1) } };
            Ok(self.root.unwrap_or(empty))
        } else {
            Err(self.problems)
        }
    }

    fn take(&mut self, event: Event<'a>, span: Span) -> Flow {
        match event {
            Event::Scalar(text, style, anchor, tag) => {
                self.refuse(anchor, tag.is_some(), span);
                self.text(&text, style, span)
            }
            Event::SequenceStart(anchor, tag) => {
                self.refuse(anchor, tag.is_some(), span);
                self.open(Kind::List(Vec::new()), span)
            }
            Event::MappingStart(anchor, tag) => {
                self.refuse(anchor, tag.is_some(), span);
                self.open(Kind::Map(Vec::new()), span)
            }
            Event::SequenceEnd | Event::MappingEnd => self.close(),
            Event::Alias(_) => {
                self.problems.push(guard::anchor(span.place(self.file)));
                self.put(Node { kind: Kind::Empty, span })
            }
            Event::DocumentStart(_) if self.root.is_some() => {
                self.problems.push(guard::second_document(span.place(self.file)));
                STOP
            }
            _ => ON,
        }
    }

    fn refuse(&mut self, anchor: usize, tagged: bool, span: Span) {
        if anchor != 0 {
            self.problems.push(guard::anchor(span.place(self.file)));
        }
        if tagged {
            self.problems.push(guard::tag(span.place(self.file)));
        }
    }

    fn text(&mut self, text: &str, style: ScalarStyle, span: Span) -> Flow {
        let plain = style == ScalarStyle::Plain;
        if plain && guard::is_no_number(text) {
            self.problems.push(guard::no_number(span.place(self.file), text));
        }
        let kind = if plain && (text.is_empty() || text == "~") {
            Kind::Empty
        } else {
            Kind::Text(text.to_owned(), style_of(style))
        };
        self.put(Node { kind, span })
    }

    fn open(&mut self, kind: Kind, span: Span) -> Flow {
        if self.open.len() >= MOST_DEEP {
            self.problems.push(guard::too_deep(span.place(self.file)));
            return STOP;
        }
        // What holds others has no end of its own: its beginning is what a message points at.
        let span = Span { start: span.start, end: span.start };
        self.open.push(Open { kind, span, key: None, seen: BTreeMap::new() });
        ON
    }

    fn close(&mut self) -> Flow {
        match self.open.pop() {
            Some(open) => self.put(Node { kind: open.kind, span: open.span }),
            None => STOP,
        }
    }

    /// Hangs a value where it belongs: as the next key or value of the open map, an item of the open list, or the root.
    fn put(&mut self, node: Node) -> Flow {
        self.nodes += 1;
        if self.nodes > MOST_NODES {
            self.problems.push(guard::too_many(node.span.place(self.file)));
            return STOP;
        }
        let Some(open) = self.open.last_mut() else {
            self.root = Some(node);
            return ON;
        };
        match (&mut open.kind, open.key.take()) {
            (Kind::List(items), _) => items.push(node),
            (Kind::Map(entries), Some(key)) => entries.push((key, node)),
            (Kind::Map(_), None) => match node.kind {
                Kind::Text(text, _) => {
                    let line = node.span.start.0;
                    if let Some(first) = open.seen.insert(text.clone(), line) {
                        self.problems.push(guard::doubled(node.span.place(self.file), &text, first));
                    }
                    open.key = Some(Key { text, span: node.span });
                }
                _ => {
                    self.problems.push(guard::odd_key(node.span.place(self.file)));
                    return STOP;
                }
            },
            _ => {}
        }
        ON
    }

    fn broken(&mut self, error: &ScanError) -> Flow {
        let (line, column) = spot(*error.marker());
        let place = Place::new(Arc::clone(self.file), line, column);
        let problem = match error.info() {
            "recursion limit exceeded" => guard::too_deep(place),
            info if info.contains("unknown anchor") => guard::anchor(place),
            info => guard::not_yaml(place, info),
        };
        self.problems.push(problem);
        STOP
    }
}

fn style_of(style: ScalarStyle) -> Style {
    match style {
        ScalarStyle::Plain => Style::Plain,
        ScalarStyle::SingleQuoted | ScalarStyle::DoubleQuoted => Style::Quoted,
        ScalarStyle::Literal => Style::Literal,
        ScalarStyle::Folded => Style::Folded,
    }
}

/// The parser's lines count from 1 and its columns from 0.
fn spot(at: Marker) -> (u32, u32) {
    let narrow = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    (narrow(at.line()), narrow(at.col() + 1))
}
