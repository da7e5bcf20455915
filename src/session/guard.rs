//! A fault of our own within a line is caught here: nothing of the line is kept, and the bench goes on.

use std::cell::RefCell;
use std::panic::{AssertUnwindSafe, PanicHookInfo, catch_unwind};

thread_local! {
    /// Where the last fault of this thread was.
    static LAST: RefCell<Option<String>> = const { RefCell::new(None) };
}

/// Keeps the standard report of a fault off standard error: what catches it says it in its own words.
pub fn quiet() {
    std::panic::set_hook(Box::new(remember));
}

fn remember(info: &PanicHookInfo<'_>) {
    let place = info.location().map_or_else(String::new, |at| format!(" at {}:{}", at.file(), at.line()));
    let text = format!("{}{place}", info.payload_as_str().unwrap_or("no reason given"));
    LAST.with(|last| *last.borrow_mut() = Some(text));
}

/// Runs `work`; a fault within it comes back as what it said and where.
///
/// # Errors
/// The fault's own words.
pub fn guarded<T>(work: impl FnOnce() -> T) -> Result<T, String> {
    // Whatever `work` was building is dropped with the fault: nothing half made is looked at afterwards.
    catch_unwind(AssertUnwindSafe(work)).map_err(|payload| {
        let said = LAST.with(|last| last.borrow_mut().take());
        said.unwrap_or_else(|| spoken(payload.as_ref()))
    })
}

fn spoken(payload: &(dyn std::any::Any + Send)) -> String {
    let text = payload.downcast_ref::<&str>().map(|text| (*text).to_owned());
    text.or_else(|| payload.downcast_ref::<String>().cloned()).unwrap_or_else(|| "no reason given".to_owned())
}
