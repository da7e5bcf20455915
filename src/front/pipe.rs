//! `pipe`: lines heard in, lines to be spoken out, timers told unasked.

use super::cli::ClockFrom;
use super::feed::{self, Fed};
use super::out::{Out, aside};
use super::wire::{self, Answered};
use super::{Cli, PipeArgs, open};
use crate::session::{Clock, Fault, LinesClock, Session, SystemClock, Turn};
use std::sync::mpsc::RecvTimeoutError;
use std::time::Duration;

/// Runs until the input ends.
///
/// # Errors
/// What keeps the bench from opening; nobody reading any more.
pub fn run(cli: &Cli, args: &PipeArgs) -> Result<u8, Fault> {
    let clock: Box<dyn Clock> = match args.clock {
        ClockFrom::System => Box::new(SystemClock),
        ClockFrom::Lines => Box::new(LinesClock::unset()),
    };
    let (session, opened) = open::bench(cli, Box::new(open::book(cli)?), clock, !args.typed, false)?;
    let mut pipe = Pipe { session, out: Out::new(), json: cli.place.json, worst: 0 };
    pipe.print(None, &opened)?;
    pipe.run(args.clock == ClockFrom::System)?;
    Ok(pipe.worst)
}

struct Pipe {
    session: Session,
    out: Out,
    json: bool,
    worst: u8,
}

impl Pipe {
    fn run(&mut self, clock_runs: bool) -> Result<(), Fault> {
        let lines = feed::stdin();
        loop {
            let wait = if clock_runs { wait(&self.session) } else { NO_TIMER };
            match lines.recv_timeout(wait) {
                Ok(Fed::Line(text)) => self.line(&text)?,
                Ok(Fed::TooLong) => self.refuse(&wire::too_long())?,
                Ok(Fed::Failed(error)) => {
                    return Err(Fault::call(
                        format!("the input cannot be read: {error}"),
                        "look at where it comes from",
                    ));
                }
                Err(RecvTimeoutError::Timeout) => self.tick()?,
                Err(RecvTimeoutError::Disconnected) => return Ok(()),
            }
        }
    }

    fn line(&mut self, text: &str) -> Result<(), Fault> {
        let line = match wire::read(text) {
            Ok(line) => line,
            Err(fault) => return self.refuse(&fault),
        };
        for turn in self.session.line(&line) {
            self.print(Some(&line.said), &turn)?;
        }
        Ok(())
    }

    fn tick(&mut self) -> Result<(), Fault> {
        match self.session.tick() {
            Some(turn) => self.print(None, &turn),
            None => Ok(()),
        }
    }

    /// A line that is none: said so, and the others go on.
    fn refuse(&mut self, fault: &Fault) -> Result<(), Fault> {
        self.worst = self.worst.max(fault.exit_code());
        aside(&fault.to_string());
        let turn = self.session.unheard(fault);
        self.print(Some(""), &turn)
    }

    fn print(&mut self, line: Option<&str>, turn: &Turn) -> Result<(), Fault> {
        if let Some(fault) = &turn.fault {
            self.worst = self.worst.max(fault.exit_code());
            aside(&fault.to_string());
        }
        if self.json {
            self.out.json(&Answered::of(line, turn))
        } else {
            self.out.text(&one_line(&turn.reply.say))
        }
    }
}

/// How long to wait for a line when no timer runs: the time makes no difference.
const NO_TIMER: Duration = Duration::from_secs(3600);

/// How long to wait for a line before the next timer is due.
pub(super) fn wait(session: &Session) -> Duration {
    let until = session.next_due().map(|due| due - session.now());
    // A moment late rather than early: an early tick would find nothing due.
    until.map_or(NO_TIMER, |left| left.to_std().unwrap_or_default().min(NO_TIMER) + Duration::from_millis(1))
}

/// What is spoken is one line.
fn one_line(say: &str) -> String {
    say.split_whitespace().collect::<Vec<_>>().join(" ")
}
