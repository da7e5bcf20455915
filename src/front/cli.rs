//! The command line.

use clap::{Args, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;
use std::path::PathBuf;

/// A bench assistant for the technician who services suspension dampers.
///
/// Say or type what you do, and it tells the next step, its tool, its way and its limit, takes your readings, and
/// keeps the record. Without a command it opens the bench: it goes on with the open job, or waits for you to start one.
#[derive(Debug, Parser)]
#[command(name = "sparehand", version, after_long_help = EXAMPLES)]
pub struct Cli {
    /// What to do; the bench itself when left out.
    #[command(subcommand)]
    pub command: Option<Command>,
    /// Where things are, common to all commands.
    #[command(flatten)]
    pub place: Place,
}

const EXAMPLES: &str = "\
Examples:
  sparehand                                    open the bench
  sparehand --by Ann                           the same, and Ann is working
  sparehand pipe < lines.txt                   lines heard in, lines to be spoken out
  sparehand ask \"how tight is the foot nut on the Birch 44\"
  sparehand jobs                               what jobs there are
  sparehand log 3                              what was done in job 3

Exit codes: 0 fine; 1 it does not hold; 2 the call, the input or the pack is wrong; 3 the book or the disk; 4 a fault
of the program.";

/// Where things are.
#[derive(Debug, Clone, Args)]
pub struct Place {
    /// The book to keep the record in [default: sparehand/book.sqlite in the user's data folder].
    #[arg(long, global = true, value_name = "FILE")]
    pub book: Option<PathBuf>,
    /// The rules to work by [default: those built in].
    #[arg(long, global = true, value_name = "FOLDER")]
    pub rules: Option<PathBuf>,
    /// Print JSON for other programs.
    #[arg(long, global = true)]
    pub json: bool,
    /// Who is working.
    #[arg(long, global = true, value_name = "NAME")]
    pub by: Option<String>,
    /// The job to go on with, by its number.
    #[arg(long, global = true, value_name = "N")]
    pub job: Option<u32>,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Read lines heard and print lines to be spoken
    Pipe(PipeArgs),
    /// Read JSON lines heard and print what each was taken for; nothing is recorded
    Hear(HearArgs),
    /// Answer one question
    Ask(AskArgs),
    /// List the jobs in the book
    Jobs,
    /// Show what was done in a job
    Log(LogArgs),
    /// Run a transcript and compare its answers
    Replay(ReplayArgs),
    /// Prove a pack of rules before anyone trusts it
    Check(CheckArgs),
    /// Work with packs of rules
    Pack {
        /// What to do with a pack.
        #[command(subcommand)]
        command: PackCommand,
    },
    /// Print completions for a shell
    Completions {
        /// The shell.
        shell: Shell,
    },
}

/// `pipe`.
#[derive(Debug, Clone, Args)]
#[command(long_about = "Read lines heard, one utterance a line, and print lines to be spoken.\n\n\
A line that begins with `{` is JSON from an ear that knows how sure it is:\n\
{\"said\": \"thirty two\", \"sure\": 0.93, \"or\": [\"thirty to\"], \"at\": \"2026-03-02T08:15:00+00:00\"}\n\
Timers are told unasked. With --json each answer is one JSON object:\n\
in, heard, outcome, acts, say, show, waiting_for, about, place, step, events.\n\
The end of the input leaves the job open.")]
#[command(
    after_long_help = "Examples:\n  sparehand pipe < lines.txt\n  sparehand pipe --typed --json --book job.sqlite\n  \
ear | sparehand pipe --json | mouth"
)]
pub struct PipeArgs {
    /// Lines are typed, not heard: values are not said back.
    #[arg(long)]
    pub typed: bool,
    /// Where the time comes from.
    #[arg(long, value_enum, default_value_t)]
    pub clock: ClockFrom,
}

/// Where the time comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, ValueEnum)]
pub enum ClockFrom {
    /// The system's clock.
    #[default]
    System,
    /// The `at` of the lines.
    Lines,
}

/// `hear`.
#[derive(Debug, Clone, Args)]
#[command(
    long_about = "Read JSON lines {\"said\", \"unit\", \"waiting_for\", \"about\"} and print what each was taken for:\n\
{\"said\", \"outcome\", \"acts\": [{\"act\", \"slots\"}], \"between\": [...], \"sure\"}, one a line. Nothing is recorded.\n\
Optional: `want` {value, unit, from}, `asked` [acts of the open question], `ear`.\n\
A bad line is answered with {\"error\"}; the rest go on, and the exit code is 2 at the end."
)]
#[command(
    after_long_help = "Example:\n  echo '{\"said\": \"how tight\", \"unit\": \"birch-44\", \"waiting_for\": \"torque\", \"about\": \"foot-nut\"}' | sparehand hear --why"
)]
pub struct HearArgs {
    /// Show what was normalised, which rule or example spoke, the scores and what decided.
    #[arg(long)]
    pub why: bool,
}

/// `ask`.
#[derive(Debug, Clone, Args)]
#[command(
    long_about = "Answer one question about a unit, a tool or a setting, or call one calculation by name.\n\n\
Nothing is recorded. A question about a setting is answered from the open job, where there is one."
)]
#[command(
    after_long_help = "Examples:\n  sparehand ask \"which way does the low speed rebound close on the Birch 44\"\n  \
sparehand ask --unit birch-44 \"how tight is the foot nut\"\n  sparehand ask --work list\n  \
sparehand ask --work convert --given value=32N.m --given to=lbf.ft --json"
)]
pub struct AskArgs {
    /// The question, in plain words.
    #[arg(value_name = "QUESTION", required_unless_present = "work", conflicts_with = "work")]
    pub question: Vec<String>,
    /// The unit it is about, by its card's id.
    #[arg(long, value_name = "UNIT")]
    pub unit: Option<String>,
    /// The calculation to call; `list` lists them.
    #[arg(long, value_name = "NAME")]
    pub work: Option<String>,
    /// A figure given to the calculation, such as d=10.8mm.
    #[arg(long, value_name = "KEY=VALUE", requires = "work")]
    pub given: Vec<String>,
}

/// `log`.
#[derive(Debug, Clone, Args)]
#[command(after_long_help = "Examples:\n  sparehand log 3\n  sparehand log 3 --json")]
pub struct LogArgs {
    /// The job's number.
    pub number: u32,
}

/// `replay`.
#[derive(Debug, Clone, Args)]
#[command(
    long_about = "Run a transcript on a book of its own and compare the answers with those written in it.\n\n\
With --update the answers are rewritten; `must:` lines never are, and fail on their own."
)]
#[command(
    after_long_help = "Examples:\n  sparehand replay transcripts-demo/whole-job.txt\n  sparehand replay my.txt --update"
)]
pub struct ReplayArgs {
    /// The transcript.
    pub file: PathBuf,
    /// Write the answers of this run into it.
    #[arg(long)]
    pub update: bool,
}

/// `check`.
#[derive(Debug, Clone, Args)]
#[command(
    long_about = "Prove a pack of rules: every path of every procedure is walked on the bench itself, and cards, words,\n\
talk and scripts are looked over. Each finding has a place, an excerpt and a way to mend it.\n\n\
Exit code 1 when something is wrong, 2 when the pack does not load; what is only doubtful or style is told and is 0."
)]
#[command(
    after_long_help = "Examples:\n  sparehand check my-rules\n  sparehand check my-rules --json\n  sparehand check --explain\n  \
sparehand check --explain \"left off\""
)]
pub struct CheckArgs {
    /// The folder of the pack; the rules of the call when left out.
    pub folder: Option<PathBuf>,
    /// List what is looked for; with a name, all that is known of that finding.
    #[arg(long, value_name = "NAME", num_args = 0..=1, default_missing_value = "")]
    pub explain: Option<String>,
}

/// `pack`.
#[derive(Debug, Clone, Subcommand)]
pub enum PackCommand {
    /// Write the rules out to a folder, for editing
    Copy {
        /// The folder; it must not hold anything yet.
        folder: PathBuf,
    },
    /// Print the form of a pack's files as JSON Schema, for an editor
    Schema {
        /// `pack`, `unit`, `procedure`, `cautions` or `tools`; all when left out.
        file: Option<String>,
    },
    /// Print every key of a pack's files, every word for what a step does and every function of scripts, as a page
    Keys,
    /// Print how a pack is written, from the first card to a clean check
    Guide,
    /// Begin a unit card or a procedure in the folder of `--rules`, or in this one
    New {
        /// What to begin.
        #[command(subcommand)]
        what: NewCommand,
    },
    /// Print a unit card or a procedure as a page in Markdown
    Show {
        /// The unit, or the procedure, by id; a procedure's unit after it.
        #[arg(required = true)]
        name: Vec<String>,
    },
}

/// `pack new`.
#[derive(Debug, Clone, Subcommand)]
pub enum NewCommand {
    /// Begin a unit card
    Unit {
        /// Its id, such as `birch-44`.
        name: String,
    },
    /// Begin a procedure for a unit of the pack
    Procedure {
        /// Its id, such as `re-spring`.
        name: String,
        /// The unit it is for; the pack's only one when left out.
        #[arg(long)]
        unit: Option<String>,
    },
}
