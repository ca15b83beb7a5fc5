//! The label reader: text printed on a splitter, tap, amplifier, filter, ground block, pad, terminator, wall
//! plate or cable, to what it states.
//!
//! Labels are short, worn, written in many ways and often copied by a machine that reads letters for digits. So
//! the rule is: a number is read only with a reason (a unit, a word, a clear pattern), never one that the text
//! does not hold; what is read in spite of a doubt says so; what would be a guess is left out and that is said
//! too. Part and serial numbers, voltages, shielding figures and the like are passed over.
//!
//! The order of a label's members and what parts them never change a reading silently: `tests/all/any_order.rs` holds it.
//!
//! The stages, a file each: `normalise` (characters); `number`, `unit`, `vocabulary` (what there is to find);
//! `word` and `token` (the text cut into words, numbers and signs); `item` with `band`, `bare`, `figure`, `count` and
//! `power` (what these make together); `context`, `alignment` and `pairing` (which word belongs to which figure); `assemble` with `part`,
//! `rated_band` and `losses` (what the label states and what is doubtful, held against what is `usual`).
//!
//! Not done here: what a rating means for the home network, sentences, and reading pictures.

mod alignment;
mod assemble;
mod band;
mod bare;
mod context;
mod count;
mod doubt;
mod figure;
mod item;
mod kind;
mod losses;
mod normalise;
mod number;
mod pairing;
mod part;
mod power;
mod rated_band;
mod reading;
pub mod seen;
mod token;
mod unit;
mod usual;
mod vocabulary;
mod word;

pub use doubt::{Doubt, Quantity};
pub use kind::{CableSeries, PartKind, PowerPass};
pub use normalise::LONGEST_TEXT;
pub use reading::LabelReading;

/// Reads a label. Any text is accepted; of one longer than [`LONGEST_TEXT`] the beginning is read.
///
/// ```
/// use coax::{Decibels, Megahertz};
///
/// let reading = label::read("2 WAY SPLITTER 5-1oo0MHz -3.5dB");
/// assert_eq!(reading.high, Some(Megahertz(1000.0)));
/// assert_eq!(reading.leg_losses, [Decibels(3.5), Decibels(3.5)]);
/// assert_eq!(reading.doubts.len(), 1); // Letters stand where digits belong.
/// ```
pub fn read(text: &str) -> LabelReading {
    let (text, is_cut) = normalise::within_limit(text);
    let tokens = token::tokens(&normalise::marks(text));
    let items = item::items(text, &tokens);
    let mut reading = assemble::assemble(&items, &context::place(&items));
    if reading.is_blank() && reading.doubts.is_empty() {
        reading.doubts.push(Doubt::NothingRead);
    }
    if is_cut {
        reading.doubts.push(Doubt::Truncated { bytes: text.len() });
    }
    reading
}

/// Reads the label of a part that is known to be a splitter of so many outputs. Where the text itself does not say so, a loss on it
/// is that to each output, which by itself it would not tell.
pub fn read_on_splitter(text: &str, outputs: u8) -> LabelReading {
    let alone = read(text);
    if alone.kind.is_some() || outputs == 0 {
        return alone;
    }
    let told = read(&format!("{outputs}-WAY SPLITTER {text}"));
    if told.doubts.len() < alone.doubts.len() { told } else { alone }
}
