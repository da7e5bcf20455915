//! The one renderer of problems: excerpt and caret, for YAML, JSGF and Rhai alike.

use super::{Level, Problem};
use annotate_snippets::{
    Annotation, AnnotationKind, Level as Shown, Origin, Renderer, Snippet, normalize_untrusted_str,
};

/// Characters of a line that are shown; a longer one is cut round the place.
const WIDTH: usize = 200;

/// Draws a problem. `text` is the file's text, where it is at hand; `colour` adds a terminal's colours.
pub fn render(problem: &Problem, text: Option<&str>, colour: bool) -> String {
    let expected = problem.expected.as_ref().map(|it| normalize_untrusted_str(&format!("expected {it}")));
    let excerpt = text.and_then(|text| Excerpt::of(text, problem));
    let title = level(problem.level).primary_title(normalize_untrusted_str(&problem.found));
    let mut group = match &excerpt {
        Some(excerpt) => title.element(excerpt.snippet(&problem.place.file, expected.as_deref())),
        None => title.element(Origin::path(problem.place.to_string())),
    };
    if let (None, Some(expected)) = (&excerpt, &expected) {
        group = group.element(Shown::NOTE.no_name().message(expected));
    }
    if let Some(mend) = &problem.mend {
        group = group.element(Shown::HELP.with_name("mend").message(normalize_untrusted_str(mend)));
    }
    let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
    renderer.render(&[group])
}

fn level(level: Level) -> Shown<'static> {
    let shown = match level {
        Level::Wrong => Shown::ERROR,
        Level::Doubtful => Shown::WARNING,
        Level::Style => Shown::INFO,
    };
    shown.with_name(level.word())
}

/// The line of the place, with the span in bytes.
struct Excerpt {
    line: String,
    number: usize,
    span: std::ops::Range<usize>,
}

impl Excerpt {
    fn of(text: &str, problem: &Problem) -> Option<Self> {
        let place = &problem.place;
        let number = usize::try_from(place.line).ok()?;
        let line = text.lines().nth(number.checked_sub(1)?)?;
        let line = if number == 1 { line.trim_start_matches('\u{feff}') } else { line };
        let column = usize::try_from(place.column.max(1) - 1).ok()?;
        let long = line.chars().count();
        let end = match place.end {
            Some((line, column)) if line == place.line => usize::try_from(column).ok()?.saturating_sub(1),
            Some(_) => long,
            None => column + 1,
        };
        // A line of a hostile file may be a megabyte: only what stands about the place is drawn.
        let cut = column.saturating_sub(WIDTH / 2);
        let line: String = line.chars().skip(cut).take(WIDTH).collect();
        let from = byte(&line, column - cut);
        let to = byte(&line, end.saturating_sub(cut)).max(from);
        Some(Self { number, span: from..to, line })
    }

    fn snippet<'a>(&'a self, path: &'a str, label: Option<&'a str>) -> Snippet<'a, Annotation<'a>> {
        let mark = AnnotationKind::Primary.span(self.span.clone()).label(label);
        Snippet::source(self.line.as_str()).line_start(self.number).path(path).annotation(mark)
    }
}

fn byte(line: &str, column: usize) -> usize {
    line.char_indices().nth(column).map_or(line.len(), |(at, _)| at)
}
