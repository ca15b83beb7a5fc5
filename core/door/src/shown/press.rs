//! Blocks that are pressed.

use guide::screen::{Aloud, ConfirmBlock, HowFarBlock, Need, PressBlock, PressWeight};

/// How much a press stands out.
#[uniffi::remote(Enum)]
pub enum PressWeight {
    /// The way on.
    Main,
    /// Another way.
    Other,
    /// A way out: later, not now.
    Quiet,
}

/// Something to press.
#[uniffi::remote(Record)]
pub struct PressBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// Its key.
    pub key: String,
    /// What it says.
    pub words: String,
    /// How much it stands out.
    pub weight: PressWeight,
    /// What it needs before it can be done; `None` if nothing.
    pub need: Option<Need>,
    /// Whether it can be pressed now.
    pub enabled: bool,
}

/// Something to press that is asked about once more before it is done.
#[uniffi::remote(Record)]
pub struct ConfirmBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// Its key; pressed only after the second question was answered with yes.
    pub key: String,
    /// What it says.
    pub words: String,
    /// The second question, with what follows from a yes.
    pub question: String,
    /// What the yes says.
    pub yes: String,
    /// What the no says.
    pub no: String,
    /// Whether something that was there is gone, or counts no more, after a yes.
    pub destructive: bool,
    /// Whether it can be pressed now.
    pub enabled: bool,
}

/// How far something has come that takes a while.
#[uniffi::remote(Record)]
pub struct HowFarBlock {
    /// Its id on the screen.
    pub id: String,
    /// What a screen reader says of it.
    pub aloud: Aloud,
    /// What is being done.
    pub name: String,
    /// Thousandths done; `None` while that cannot be told.
    pub thousandths: Option<u32>,
    /// What stops it.
    pub stop: Option<PressBlock>,
}
