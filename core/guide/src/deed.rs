//! What comes back from a screen.

use telling::words::Marks;

/// Something that the user did on a screen. Keys are those of the screen's blocks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Deed {
    /// Pressed something, touched a row, a part or a mark; for a block that asks twice, after the yes.
    Press {
        /// What was pressed.
        key: String,
    },
    /// Chose: all that is chosen now, not only what changed.
    Pick {
        /// The choice.
        key: String,
        /// The keys of the chosen options.
        picked: Vec<String>,
    },
    /// Wrote, or is writing: the whole text as it stands. What is half written is kept.
    Write {
        /// The place to write in.
        key: String,
        /// The text.
        words: String,
    },
    /// The device recognised print in a photo, and offers it. Nothing counts of it before somebody takes it.
    Print {
        /// The photo slot's key for print.
        key: String,
        /// What it reads, line by line.
        words: String,
    },
    /// Typed a number, or is typing it.
    Measure {
        /// The number's block.
        key: String,
        /// As typed.
        typed: String,
        /// The key of the unit.
        unit: String,
    },
    /// Touched a place in a photo, of which a part is chosen so: in ten-thousandths of its width and of its height the right way
    /// up, from its upper left corner. What lies beyond the photo counts as its edge.
    Touch {
        /// The block that shows the photo.
        key: String,
        /// How far across.
        across: u32,
        /// How far down.
        down: u32,
    },
    /// Took or chose a photo.
    Photo {
        /// The photo slot.
        key: String,
        /// The picture's file. It is read, cleaned and copied; the file itself is the caller's to remove.
        file: String,
    },
    /// Chose a file that somebody sent, or the place for one that is to be written.
    File {
        /// The press that asked for it.
        key: String,
        /// The file.
        file: String,
    },
    /// Went back.
    Back,
}

impl Deed {
    /// The same deed with a number as it would be typed in English: from here on, a number means the same in every
    /// language.
    pub(crate) fn plainly(&self, marks: Marks) -> Self {
        match self {
            Self::Measure { key, typed, unit } => {
                Self::Measure { key: key.clone(), typed: marks.plainly(typed), unit: unit.clone() }
            }
            other => other.clone(),
        }
    }

    /// The key that it answers; none for going back.
    pub fn key(&self) -> Option<&str> {
        match self {
            Self::Press { key }
            | Self::Pick { key, .. }
            | Self::Write { key, .. }
            | Self::Print { key, .. }
            | Self::Measure { key, .. }
            | Self::Touch { key, .. }
            | Self::Photo { key, .. }
            | Self::File { key, .. } => Some(key),
            Self::Back => None,
        }
    }
}
