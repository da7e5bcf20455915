//! The console: a prompt on a terminal, a conversation that shows both sides when it is fed from a pipe.

use super::feed::{self, Fed};
use super::helper::{Offer, Prompt};
use super::out::Out;
use super::talk::Talk;
use super::{Cli, open, pipe, wire};
use crate::session::{Fault, Line, SystemClock, plain};
use rustyline::ExternalPrinter;
use std::io::{IsTerminal, stdin, stdout};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::thread;

/// Runs until the input ends.
///
/// # Errors
/// What keeps the bench from opening; nobody reading any more.
pub fn run(cli: &Cli) -> Result<u8, Fault> {
    let (session, opened) = open::bench(cli, Box::new(open::book(cli)?), Box::new(SystemClock), false, true)?;
    let mut talk = Talk { session, out: Out::new(), worst: 0 };
    talk.print(&opened)?;
    if stdin().is_terminal() && stdout().is_terminal() {
        on_terminal(&mut talk)?
    } else {
        fed(&mut talk)?
    }
    Ok(talk.worst)
}

/// Lines from a pipe or a file: each is echoed, so that the output reads as the conversation it was.
fn fed(talk: &mut Talk) -> Result<(), Fault> {
    let lines = feed::stdin();
    loop {
        match lines.recv_timeout(pipe::wait(&talk.session)) {
            Ok(Fed::Line(text)) => said(talk, &text)?,
            Ok(Fed::TooLong) => {
                talk.worst = 2;
                let turn = talk.session.unheard(&wire::too_long());
                talk.print(&turn)?;
            }
            Ok(Fed::Failed(error)) => {
                return Err(Fault::call(
                    format!("the input cannot be read: {error}"),
                    "look at where it comes from",
                ));
            }
            Err(RecvTimeoutError::Timeout) => tick(talk)?,
            Err(RecvTimeoutError::Disconnected) => return Ok(()),
        }
    }
}

fn said(talk: &mut Talk, text: &str) -> Result<(), Fault> {
    let words = plain(text);
    if words.is_empty() {
        return Ok(());
    }
    talk.out.line(&format!("> {words}"))?;
    answer(talk, &words)
}

fn answer(talk: &mut Talk, words: &str) -> Result<(), Fault> {
    for turn in talk.session.line(&Line::new(words)) {
        talk.print(&turn)?;
    }
    Ok(())
}

fn tick(talk: &mut Talk) -> Result<(), Fault> {
    match talk.session.tick() {
        Some(turn) => talk.print(&turn),
        None => Ok(()),
    }
}

/// What the prompt sends.
enum Typed {
    Line(String),
    Interrupted,
    End,
    Failed(String),
}

/// A prompt with history, completion and a hint; it reads in a thread of its own, so that a timer can be told while
/// a line is half typed.
fn on_terminal(talk: &mut Talk) -> Result<(), Fault> {
    let offer = Offer::default();
    let (mut prompt, mut printer) = Prompt::new(offer.clone())?;
    let (ready, asked) = channel::<()>();
    let (to, typed) = channel();
    let reader = thread::spawn(move || {
        read(&mut prompt, &asked, &to);
    });
    let ended = converse(talk, &offer, &ready, &typed, &mut printer);
    drop(ready);
    // Its history is written when it ends.
    let _ = reader.join();
    ended
}

fn read(prompt: &mut Prompt, asked: &Receiver<()>, to: &Sender<Typed>) {
    use rustyline::error::ReadlineError;
    while asked.recv().is_ok() {
        let typed = match prompt.read() {
            Ok(text) => Typed::Line(text),
            Err(ReadlineError::Interrupted) => Typed::Interrupted,
            Err(ReadlineError::Eof) => Typed::End,
            Err(error) => Typed::Failed(error.to_string()),
        };
        if to.send(typed).is_err() {
            break;
        }
    }
    prompt.keep_history();
}

fn converse(
    talk: &mut Talk,
    offer: &Offer,
    ready: &Sender<()>,
    typed: &Receiver<Typed>,
    printer: &mut impl ExternalPrinter,
) -> Result<(), Fault> {
    offer.renew(&talk.session);
    let _ = ready.send(());
    loop {
        match typed.recv_timeout(pipe::wait(&talk.session)) {
            Ok(Typed::Line(text)) => pasted(talk, &text)?,
            Ok(Typed::Interrupted) => {
                talk.out.line("Nothing is lost. Ctrl-D leaves the bench; the job stays open.")?
            }
            Ok(Typed::End) | Err(RecvTimeoutError::Disconnected) => return leave(talk),
            Ok(Typed::Failed(what)) => {
                return Err(Fault::call(format!("the terminal cannot be read: {what}"), "open it anew"));
            }
            Err(RecvTimeoutError::Timeout) => {
                notice(talk, printer)?;
                continue;
            }
        }
        offer.renew(&talk.session);
        let _ = ready.send(());
    }
}

/// A timer's end, told above the line that is being typed.
fn notice(talk: &mut Talk, printer: &mut impl ExternalPrinter) -> Result<(), Fault> {
    let Some(turn) = talk.session.tick() else { return Ok(()) };
    if turn.fault.is_some()
        || printer.print(format!("{}\n", talk.out.fitted(turn.reply.show.trim_end()))).is_err()
    {
        talk.print(&turn)?;
    }
    Ok(())
}

/// What was pasted may be several lines: each is answered in its turn.
fn pasted(talk: &mut Talk, text: &str) -> Result<(), Fault> {
    let lines: Vec<String> = text.lines().map(plain).filter(|line| !line.is_empty()).collect();
    for line in &lines {
        if lines.len() > 1 {
            talk.out.line(&format!("> {line}"))?;
        }
        answer(talk, line)?;
    }
    Ok(())
}

fn leave(talk: &mut Talk) -> Result<(), Fault> {
    let progress = &talk.session.state().progress;
    if progress.open {
        talk.out.line(&format!("Job {} stays open.", progress.number))?;
    }
    Ok(())
}
