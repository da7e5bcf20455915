//! The expressions and functions of a pack, compiled once and run against a view.

use super::engine::{self, Clock};
use super::fault::{FaultKind, ScriptFault, parse_words, words};
use super::place::Expression;
use super::{Kind, View};
use crate::source::{Place, Problem};
use rhai::{AST, CallFnOptions, Dynamic, Engine, EvalAltResult, ParseError, Position, Scope};
use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Arc, OnceLock};

/// The longest script file, in bytes: compiling has no limit of its own.
const MOST_BYTES: usize = 16 << 10;
/// The longest expression, in bytes.
const MOST_IN_ONE: usize = 2 << 10;

/// Everything that a pack's scripts are, compiled.
pub struct Scripts {
    engine: Engine,
    ast: AST,
    /// Expressions by kind and text; the number names the function each became.
    expressions: BTreeMap<(Kind, String), Expression>,
    names: BTreeMap<(Kind, String), String>,
    /// The file of each function of `scripts/`.
    files: BTreeMap<String, Arc<str>>,
    clock: Arc<OnceLock<Clock>>,
}

impl std::fmt::Debug for Scripts {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Scripts")
            .field("expressions", &self.names)
            .field("functions", &self.files)
            .finish_non_exhaustive()
    }
}

impl Scripts {
    /// Compiles the files under `scripts/` and the expressions of the procedures; what does not compile is left out and
    /// reported.
    pub(in crate::rulebase) fn compile(
        texts: &BTreeMap<String, String>,
        expressions: &[Expression],
    ) -> (Self, Vec<Problem>) {
        let clock = Arc::new(OnceLock::new());
        let engine = engine::engine(Arc::clone(&clock));
        let mut scripts = Self {
            engine,
            ast: AST::empty(),
            expressions: BTreeMap::new(),
            names: BTreeMap::new(),
            files: BTreeMap::new(),
            clock,
        };
        let mut problems = Vec::new();
        for (path, text) in texts.iter().filter(|(path, _)| path.ends_with(".rhai")) {
            problems.extend(scripts.file(path, text));
        }
        for expression in expressions {
            problems.extend(scripts.expression(expression));
        }
        (scripts, problems)
    }

    /// Hands in a clock, so that a script that takes too long is stopped; the first one given stays.
    pub fn watch(&self, clock: Clock) {
        let _ = self.clock.set(clock);
    }

    /// Whether a guard holds.
    ///
    /// # Errors
    /// [`ScriptFault`] with the file and line where it failed.
    pub fn guard(&self, expression: &str, view: &View) -> Result<bool, ScriptFault> {
        self.judge(Kind::Guard, expression, 0.0, view)
    }

    /// Whether a value, in its step's unit, is acceptable.
    ///
    /// # Errors
    /// [`ScriptFault`] with the file and line where it failed.
    pub fn accept(&self, expression: &str, value: f64, view: &View) -> Result<bool, ScriptFault> {
        self.judge(Kind::Accept, expression, value, view)
    }

    /// What a function of `scripts/` gives for numbers.
    ///
    /// # Errors
    /// [`ScriptFault`], also when there is no such function or it gives no finite number.
    pub fn compute(&self, function: &str, numbers: &[f64], view: &View) -> Result<f64, ScriptFault> {
        let file = self.files.get(function).cloned();
        let whole = Place::file(file.unwrap_or_else(|| "scripts".into()));
        let arguments: Vec<Dynamic> = numbers.iter().copied().map(Dynamic::from).collect();
        let given = self.run(function, arguments, view, |_| whole.clone())?;
        let number = given.as_float().or_else(|_| given.as_int().map(|whole| whole as f64));
        match number {
            Ok(number) if number.is_finite() => Ok(number),
            _ => Err(ScriptFault {
                kind: FaultKind::Broken,
                place: whole,
                found: format!("`{function}` gives {given}, which is no finite number"),
                mend: "see that it always gives a number".to_owned(),
            }),
        }
    }

    /// The names of the functions of `scripts/`, with their files.
    pub fn functions(&self) -> &BTreeMap<String, Arc<str>> {
        &self.files
    }

    /// Every expression, once for each text and use.
    pub fn expressions(&self) -> impl Iterator<Item = &Expression> {
        self.expressions.values()
    }

    /// Operations of the last run on this thread, and the most that a run may take.
    pub fn worked(&self) -> (u64, u64) {
        (engine::used(), engine::MOST_OPERATIONS)
    }

    fn judge(&self, kind: Kind, text: &str, value: f64, view: &View) -> Result<bool, ScriptFault> {
        let key = (kind, text.trim().to_owned());
        let (Some(expression), Some(name)) = (self.expressions.get(&key), self.names.get(&key)) else {
            let found = format!("`{text}` is no expression of this pack");
            let mend = "reload the pack".to_owned();
            return Err(ScriptFault { kind: FaultKind::Missing, place: Place::default(), found, mend });
        };
        let given = self.run(name, vec![value.into()], view, |at| expression.place_at(up(at)))?;
        given.as_bool().map_err(|kind| ScriptFault {
            kind: FaultKind::Broken,
            place: expression.place(),
            found: format!("this gives {} where yes or no is wanted", kind_words(kind)),
            mend: "compare it with something".to_owned(),
        })
    }

    /// Calls a compiled function. `own` is the place of a position in the expression it was made from.
    fn run(
        &self,
        name: &str,
        arguments: Vec<Dynamic>,
        view: &View,
        own: impl Fn(Position) -> Place,
    ) -> Result<Dynamic, ScriptFault> {
        engine::begin(self.clock.get());
        let call = || {
            let options = CallFnOptions::new().eval_ast(false).with_tag(Arc::new(view.clone()));
            self.engine.call_fn_with_options::<Dynamic>(
                options,
                &mut Scope::new(),
                &self.ast,
                name,
                arguments,
            )
        };
        match catch_unwind(AssertUnwindSafe(call)) {
            Ok(Ok(given)) => Ok(given),
            Ok(Err(error)) => Err(self.fault(&error, own)),
            Err(_) => Err(ScriptFault {
                kind: FaultKind::Overran,
                place: own(Position::NONE),
                found: "this script brought its engine down".to_owned(),
                mend: "make it simpler".to_owned(),
            }),
        }
    }

    /// A failure in our words, at the innermost place that is a pack's own.
    fn fault(&self, error: &EvalAltResult, own: impl Fn(Position) -> Place) -> ScriptFault {
        let (mut inner, mut file) = (error, None);
        while let EvalAltResult::ErrorInFunctionCall(name, _, next, _) = inner {
            file = self.files.get(name).or(file);
            inner = next;
        }
        let at = inner.position();
        let place = match file {
            Some(file) => lib_place(file, at),
            None => own(at),
        };
        let (kind, found, mend) = words(inner);
        ScriptFault { kind, place, found, mend }
    }

    /// Compiles a file: functions only.
    fn file(&mut self, path: &str, text: &str) -> Vec<Problem> {
        let file: Arc<str> = path.into();
        if text.len() > MOST_BYTES {
            let problem = Problem::wrong(Place::file(file), format!("this script has {} bytes", text.len()))
                .expected(format!("at most {MOST_BYTES}"))
                .mend("split it into several files");
            return vec![problem];
        }
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        match self.quietly(|engine| engine.compile(text)) {
            Ok(ast) => {
                let mut problems = outside(&file, text);
                problems.extend(self.take(&file, &ast));
                problems
            }
            Err(problem) => vec![problem(&|at| lib_place(&file, at)).mend("mend the function there")],
        }
    }

    fn take(&mut self, file: &Arc<str>, ast: &AST) -> Vec<Problem> {
        let mut problems = Vec::new();
        for function in ast.iter_functions() {
            if let Some(other) = self.files.insert(function.name.to_owned(), Arc::clone(file))
                && other != *file
            {
                let found = format!("the function `{}` stands in `{other}` too", function.name);
                let problem = Problem::wrong(Place::file(Arc::clone(file)), found)
                    .expected("each name once")
                    .mend("give it a name of its own");
                problems.push(problem);
            }
        }
        self.ast.combine(ast.clone_functions_only());
        problems
    }

    /// Compiles an expression, first as what it must be (one expression), then as a function that can be called.
    fn expression(&mut self, expression: &Expression) -> Vec<Problem> {
        let key = (expression.kind, expression.text.clone());
        if self.names.contains_key(&key) {
            return Vec::new();
        }
        if expression.text.len() > MOST_IN_ONE {
            let found = format!("an expression of {} bytes", expression.text.len());
            let problem = Problem::wrong(expression.place(), found)
                .expected(format!("at most {MOST_IN_ONE}"))
                .mend("make a function of it in a file under `scripts/`");
            return vec![problem];
        }
        let name = format!("expression_{}", self.names.len());
        // The line break keeps columns as they are: only lines shift, by one.
        let (takes, scope) = match expression.kind {
            Kind::Guard => ("_value", Scope::new()),
            Kind::Accept => {
                let mut scope = Scope::new();
                scope.push("value", 0.0_f64);
                ("value", scope)
            }
        };
        let whole = format!("fn {name}({takes}) {{\n{}\n}}", expression.text);
        let compiled = self
            .quietly(|engine| engine.compile_expression_with_scope(&scope, &expression.text))
            .and_then(|_| self.quietly(|engine| engine.compile(&whole)));
        match compiled {
            Ok(ast) => {
                self.ast.combine(ast.clone_functions_only());
                self.names.insert(key.clone(), name);
                self.expressions.insert(key, expression.clone());
                Vec::new()
            }
            Err(problem) => vec![problem(&|at| expression.place_at(at))],
        }
    }

    /// Compiles something; a parse error or a panic becomes a problem that still wants its place.
    fn quietly(&self, compile: impl FnOnce(&Engine) -> Result<AST, ParseError>) -> Result<AST, Unplaced> {
        match catch_unwind(AssertUnwindSafe(|| compile(&self.engine))) {
            Ok(Ok(ast)) => Ok(ast),
            Ok(Err(error)) => Err(Box::new(move |place| {
                let (_, found, mend) = parse_words(error.err_type());
                Problem::wrong(place(error.position()), found).mend(mend)
            })),
            Err(_) => Err(Box::new(|place| {
                Problem::wrong(place(Position::NONE), "this script brought its engine down")
                    .mend("make it simpler")
            })),
        }
    }
}

/// Reports what stands outside a function: it would never run.
fn outside(file: &Arc<str>, text: &str) -> Vec<Problem> {
    let narrow = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let place = super::scan::outside(text)
        .map(|(line, column)| Place::new(Arc::clone(file), narrow(line), narrow(column)));
    let problem = |place| {
        Problem::wrong(place, "something stands outside a function")
            .expected("functions only")
            .mend("put it into a function, or take it out")
    };
    place.map(problem).into_iter().collect()
}

/// A problem that wants to know where a position stands.
type Unplaced = Box<dyn FnOnce(&dyn Fn(Position) -> Place) -> Problem>;

fn lib_place(file: &Arc<str>, at: Position) -> Place {
    let number = |n: Option<usize>| n.and_then(|n| u32::try_from(n).ok());
    match (number(at.line()), number(at.position())) {
        (Some(line), Some(column)) => Place::new(Arc::clone(file), line, column),
        _ => Place::file(Arc::clone(file)),
    }
}

/// The same position one line up: the function round an expression has its head on a line of its own.
fn up(at: Position) -> Position {
    match (at.line(), at.position()) {
        (Some(line), Some(column)) if line > 1 => {
            let narrow = |n: usize| u16::try_from(n).unwrap_or(u16::MAX);
            Position::new(narrow(line - 1), narrow(column))
        }
        _ => Position::NONE,
    }
}

fn kind_words(kind: &str) -> &'static str {
    match kind {
        "i64" | "f64" => "a number",
        "()" => "nothing",
        _ => "a text",
    }
}
