//! One screen.

use guide::screen::{Ability, Block, HowFar, NoticeShown, Screen, WayTaken};

/// How far the guide has come.
#[uniffi::remote(Record)]
pub struct HowFar {
    /// Questions answered.
    pub done: u32,
    /// Questions there are, as far as can be told now; at least `done`.
    pub of: u32,
    /// The same in words.
    pub words: String,
}

/// One screen.
#[uniffi::remote(Record)]
pub struct Screen {
    /// A stable name of this kind of screen, the same in every language and for every house: for tests.
    pub name: String,
    /// The id of the place: the same whenever it is drawn anew, another one for every other place. Where somebody has
    /// scrolled to, and what has the focus, holds as long as this stays the same.
    pub place: String,
    /// How one came here from the screen before.
    pub way: WayTaken,
    /// What the screen is about; read first by a screen reader.
    pub title: String,
    /// Where we are, from the whole to the part: the survey, the stage.
    pub trail: Vec<String>,
    /// How far the guide has come; `None` where that means nothing.
    pub how_far: Option<HowFar>,
    /// What is said about the last deed; it stands above everything else.
    pub notices: Vec<NoticeShown>,
    /// What it shows, from top to bottom. Never more than `MOST_ROWS` rows in all.
    pub blocks: Vec<Block>,
    /// What the screen would like the device to do.
    pub abilities: Vec<Ability>,
    /// Whether there is a way back.
    pub back: bool,
    /// Whether its words are read from right to left; a shell then draws it mirrored. Drawings stay as they are.
    pub right_to_left: bool,
}

/// How one came to the screen from the one before it: a shell may show it by the way in which it turns the page.
#[uniffi::remote(Enum)]
pub enum WayTaken {
    /// On: to something new, or deeper in.
    On,
    /// Back to where one was, or out.
    Back,
    /// Nowhere: it is the same place, drawn anew.
    Same,
}

/// Something that a device may be able to do.
#[uniffi::remote(Enum)]
pub enum Ability {
    /// A button for the torch.
    Torch,
    /// The screen stays awake.
    StayAwake,
    /// The camera.
    Camera,
    /// Text recognised in a photo.
    ReadPrint,
    /// Handing a file to another program.
    Share,
    /// Choosing a file that somebody sent.
    ChooseFile,
}
