//! The engine that runs scripts, with everything taken out that a script does not need.
//!
//! `LanguageCorePackage` stays out: its `sleep` passes through every limit. There are no callbacks, no modules, no
//! `eval`, no printing. Operations are counted over the whole run here, because the engine's own count begins anew in
//! every callback.

use rhai::packages::{
    ArithmeticPackage, BasicIteratorPackage, BasicMathPackage, BasicStringPackage, LogicPackage, Package,
};
use rhai::{Dynamic, Engine, ImmutableString};
use std::cell::Cell;
use std::sync::{Arc, OnceLock};
use std::time::Duration;

/// The most operations of one run: a guard takes some tens.
pub(super) const MOST_OPERATIONS: u64 = 50_000;
/// The deepest that functions may call each other; a debug build needs about 30 KiB of stack for each.
const MOST_CALLS: usize = 16;
/// The deepest that an expression may be nested.
const MOST_NESTED: usize = 32;
/// The longest run.
const LONGEST: Duration = Duration::from_millis(50);
/// How often the clock is looked at, in operations.
const EVERY: u64 = 64;

/// Time since any fixed moment; handed in by whoever has a clock.
pub type Clock = Arc<dyn Fn() -> Duration + Send + Sync>;

thread_local! {
    static BEGUN: Cell<Option<Duration>> = const { Cell::new(None) };
    static USED: Cell<u64> = const { Cell::new(0) };
}

/// Starts the count of one run.
pub(super) fn begin(clock: Option<&Clock>) {
    BEGUN.set(clock.map(|clock| clock()));
    USED.set(0);
}

/// Operations counted since the run began.
pub(super) fn used() -> u64 {
    USED.get()
}

/// A new engine, with the functions of the program in it.
pub(super) fn engine(clock: Arc<OnceLock<Clock>>) -> Engine {
    let mut engine = Engine::new_raw();
    ArithmeticPackage::new().register_into_engine(&mut engine);
    LogicPackage::new().register_into_engine(&mut engine);
    BasicMathPackage::new().register_into_engine(&mut engine);
    BasicStringPackage::new().register_into_engine(&mut engine);
    BasicIteratorPackage::new().register_into_engine(&mut engine);
    limit(&mut engine, clock);
    refuse_odd_comparisons(&mut engine);
    super::functions::register(&mut engine);
    engine
}

fn limit(engine: &mut Engine, clock: Arc<OnceLock<Clock>>) {
    engine.set_strict_variables(true);
    engine.set_fail_on_invalid_map_property(true);
    engine.set_allow_anonymous_fn(false);
    // The engine's own comparisons of two kinds would pass by ours.
    engine.set_fast_operators(false);
    for word in ["eval", "print", "debug", "Fn", "call", "curry", "import", "export", "try", "catch"] {
        engine.disable_symbol(word);
    }
    engine.set_max_operations(MOST_OPERATIONS);
    engine.set_max_call_levels(MOST_CALLS);
    engine.set_max_expr_depths(MOST_NESTED, MOST_NESTED);
    engine.set_max_variables(64);
    engine.set_max_functions(4096);
    engine.set_max_string_size(4096);
    engine.set_max_array_size(256);
    engine.set_max_map_size(64);
    engine.on_progress(move |_| {
        let used = USED.get() + 1;
        USED.set(used);
        let late = || Some(clock.get()?().saturating_sub(BEGUN.get()?) > LONGEST);
        let stop = used > MOST_OPERATIONS || (used.is_multiple_of(EVERY) && late() == Some(true));
        stop.then(|| Dynamic::from("stopped"))
    });
}

/// `3 > "4"` is silently false in Rhai; here it is a fault, found by the dry run.
fn refuse_odd_comparisons(engine: &mut Engine) {
    macro_rules! refuse {
        ($($left:ty, $right:ty);*) => {$(
            for sign in ["==", "!=", "<", "<=", ">", ">="] {
                engine.register_fn(sign, |_: $left, _: $right| Err::<bool, _>(odd()));
                engine.register_fn(sign, |_: $right, _: $left| Err::<bool, _>(odd()));
            }
        )*};
    }
    refuse!(i64, ImmutableString; f64, ImmutableString; bool, ImmutableString; i64, bool; f64, bool);
}

fn odd() -> Box<rhai::EvalAltResult> {
    "values of two kinds are compared, which is never true".into()
}
