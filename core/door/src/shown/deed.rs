//! What comes back from a screen.

use guide::Deed;

/// Something that the user did on a screen. Keys are those of the screen's blocks.
#[uniffi::remote(Enum)]
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
