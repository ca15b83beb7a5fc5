//! Blocks about one thing of the house: a photo, a label, a reading, a part.

use super::block::said_at_all;

/// A photo that is there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhotoShown {
    /// Its id: the door gives its file and its small picture by it.
    pub photo: String,
    /// What it is, for those who do not see it.
    pub name: String,
    /// Its key if a touch leads on.
    pub key: Option<String>,
}

/// A place for photos.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhotoSlotBlock {
    /// The key by which a new photo is given.
    pub key: String,
    /// What is to be photographed.
    pub name: String,
    /// The photos that are there.
    pub photos: Vec<PhotoShown>,
    /// Whether one photo follows another until somebody says that it is enough.
    pub burst: bool,
}

/// One figure read off a label, or recognised in its photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LabelFigure {
    /// The key by which it is corrected or, where it waits for that, taken.
    pub key: Option<String>,
    /// What it is: "loss to each leg".
    pub name: String,
    /// What it says, with its unit.
    pub says: String,
    /// Whether it counts already; recognised figures wait for a touch.
    pub taken: bool,
    /// What is doubtful about it; may be empty.
    pub doubt: String,
}

/// A label's photo beside its text and the figures in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LabelBlock {
    /// What it is.
    pub name: String,
    /// The id of the label's photo, if there is one.
    pub photo: Option<String>,
    /// The text as it stands.
    pub text: String,
    /// The figures in it, number by number.
    pub figures: Vec<LabelFigure>,
    /// What is doubtful about the whole; may be empty.
    pub doubts: Vec<String>,
}

/// Something measured.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadingBlock {
    /// What was measured, and where.
    pub name: String,
    /// What it said, with its unit.
    pub says: String,
    /// How, when and by whom; may be empty.
    pub remark: String,
}

/// One part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartBlock {
    /// Its key if a touch leads on.
    pub key: Option<String>,
    /// Its tag; may be empty.
    pub tag: String,
    /// What it is.
    pub name: String,
    /// What is known of it, a line each.
    pub lines: Vec<String>,
    /// The id of a photo of it, if there is one.
    pub photo: Option<String>,
}

impl PhotoSlotBlock {
    pub(super) fn spoken(&self) -> Vec<&str> {
        let photos = self.photos.iter().map(|photo| photo.name.as_str());
        std::iter::once(self.name.as_str()).chain(photos).filter(said_at_all).collect()
    }
}

impl LabelBlock {
    pub(super) fn spoken(&self) -> Vec<&str> {
        let figures = self.figures.iter().flat_map(|figure| [&figure.name, &figure.says, &figure.doubt]);
        let whole = [&self.name, &self.text].into_iter().chain(figures).chain(&self.doubts);
        whole.map(String::as_str).filter(said_at_all).collect()
    }
}

impl ReadingBlock {
    pub(super) fn spoken(&self) -> Vec<&str> {
        [self.name.as_str(), &self.says, &self.remark].into_iter().filter(said_at_all).collect()
    }
}

impl PartBlock {
    pub(super) fn spoken(&self) -> Vec<&str> {
        let head = [&self.tag, &self.name].into_iter();
        head.chain(&self.lines).map(String::as_str).filter(said_at_all).collect()
    }
}
