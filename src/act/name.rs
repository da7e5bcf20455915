//! The fixed names of the acts.

use serde::{Deserialize, Serialize};

/// The name of an act.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the design's table of acts gives each name's meaning; `meaning` repeats it")]
pub enum ActName {
    Confirm,
    Deny,
    Reading,
    Correct,
    Undo,
    Back,
    Again,
    Skip,
    Pause,
    Resume,
    Note,
    Trouble,
    Wait,
    Start,
    Switch,
    Finish,
    Want,
    Fitted,
    By,
    AskNow,
    AskNext,
    AskTool,
    AskSwap,
    AskTorque,
    AskTurn,
    AskLocker,
    AskBack,
    AskSetting,
    AskRange,
    AskMark,
    AskCaution,
    AskWhy,
    AskSource,
    AskStuck,
    AskPart,
    AskLeft,
    AskTime,
    AskLog,
    AskWork,
    Help,
}

impl ActName {
    /// Every act, in the order of the design's table.
    pub const ALL: [Self; 40] = [
        Self::Confirm,
        Self::Deny,
        Self::Reading,
        Self::Correct,
        Self::Undo,
        Self::Back,
        Self::Again,
        Self::Skip,
        Self::Pause,
        Self::Resume,
        Self::Note,
        Self::Trouble,
        Self::Wait,
        Self::Start,
        Self::Switch,
        Self::Finish,
        Self::Want,
        Self::Fitted,
        Self::By,
        Self::AskNow,
        Self::AskNext,
        Self::AskTool,
        Self::AskSwap,
        Self::AskTorque,
        Self::AskTurn,
        Self::AskLocker,
        Self::AskBack,
        Self::AskSetting,
        Self::AskRange,
        Self::AskMark,
        Self::AskCaution,
        Self::AskWhy,
        Self::AskSource,
        Self::AskStuck,
        Self::AskPart,
        Self::AskLeft,
        Self::AskTime,
        Self::AskLog,
        Self::AskWork,
        Self::Help,
    ];

    /// The name as written in talk tags and JSON.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Confirm => "confirm",
            Self::Deny => "deny",
            Self::Reading => "reading",
            Self::Correct => "correct",
            Self::Undo => "undo",
            Self::Back => "back",
            Self::Again => "again",
            Self::Skip => "skip",
            Self::Pause => "pause",
            Self::Resume => "resume",
            Self::Note => "note",
            Self::Trouble => "trouble",
            Self::Wait => "wait",
            Self::Start => "start",
            Self::Switch => "switch",
            Self::Finish => "finish",
            Self::Want => "want",
            Self::Fitted => "fitted",
            Self::By => "by",
            Self::AskNow => "ask_now",
            Self::AskNext => "ask_next",
            Self::AskTool => "ask_tool",
            Self::AskSwap => "ask_swap",
            Self::AskTorque => "ask_torque",
            Self::AskTurn => "ask_turn",
            Self::AskLocker => "ask_locker",
            Self::AskBack => "ask_back",
            Self::AskSetting => "ask_setting",
            Self::AskRange => "ask_range",
            Self::AskMark => "ask_mark",
            Self::AskCaution => "ask_caution",
            Self::AskWhy => "ask_why",
            Self::AskSource => "ask_source",
            Self::AskStuck => "ask_stuck",
            Self::AskPart => "ask_part",
            Self::AskLeft => "ask_left",
            Self::AskTime => "ask_time",
            Self::AskLog => "ask_log",
            Self::AskWork => "ask_work",
            Self::Help => "help",
        }
    }

    /// The act of that name.
    pub fn parse(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|act| act.as_str() == name)
    }

    /// Whether the act asks something and so never moves the job.
    pub fn is_question(self) -> bool {
        matches!(self, Self::Help | Self::Again) || self.as_str().starts_with("ask_")
    }
}
