//! A single change to a house.

use crate::fact::SubjectId;
use crate::record::{Part, PartKind, Survey};
use crate::words::{Arg, Phrase};

/// What a change does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ChangeKind {
    /// Put an entry filter in, behind this part (the ground block, or the entry itself) and before the first split.
    AddEntryFilter {
        /// The part it is screwed to.
        behind: SubjectId,
    },
    /// Move the entry filter to behind this part.
    MoveEntryFilter {
        /// The filter.
        filter: SubjectId,
        /// The part it is screwed to from then on.
        behind: SubjectId,
    },
    /// Swap the entry filter for one that stops the MoCA band.
    SwapEntryFilter {
        /// The filter.
        filter: SubjectId,
    },
    /// Swap a splitter for one rated for the MoCA band with so many legs.
    SwapSplitter {
        /// The splitter.
        splitter: SubjectId,
        /// Legs of the new one.
        legs: u8,
    },
    /// Take out a splitter of which one leg is used, and join its two cables.
    RemoveSplitter {
        /// The splitter.
        splitter: SubjectId,
    },
    /// Make one splitter of two that hang close together.
    MergeSplitters {
        /// The upper one, which is replaced.
        upper: SubjectId,
        /// The lower one, which goes.
        lower: SubjectId,
        /// Legs of the new one.
        legs: u8,
    },
    /// Cap a free leg or an outlet with nothing plugged in.
    Cap {
        /// The part.
        part: SubjectId,
        /// The port.
        port: u8,
    },
    /// Swap an amplifier for one with a by-pass for the MoCA band.
    SwapAmplifier {
        /// The amplifier.
        amplifier: SubjectId,
    },
    /// Take an amplifier out and join its cables (by a splitter if it has several outputs).
    RemoveAmplifier {
        /// The amplifier.
        amplifier: SubjectId,
    },
    /// Replace the run that feeds this part with new 6-series cable.
    ReplaceRun {
        /// The part at its house end.
        to: SubjectId,
    },
    /// Put new compression connectors on the run that feeds this part.
    RenewConnectors {
        /// The part at its house end.
        to: SubjectId,
    },
}

/// A change, ready to be spoken of.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What it does.
    pub kind: ChangeKind,
}

impl ChangeKind {
    /// The part that the work is done at.
    pub fn at(self) -> SubjectId {
        match self {
            Self::AddEntryFilter { behind } => behind,
            Self::MoveEntryFilter { filter, .. } | Self::SwapEntryFilter { filter } => filter,
            Self::SwapSplitter { splitter, .. } | Self::RemoveSplitter { splitter } => splitter,
            Self::MergeSplitters { upper, .. } => upper,
            Self::Cap { part, .. } => part,
            Self::SwapAmplifier { amplifier } | Self::RemoveAmplifier { amplifier } => amplifier,
            Self::ReplaceRun { to } | Self::RenewConnectors { to } => to,
        }
    }

    /// The message that names it; what it speaks of is filled in by [`ChangeKind::phrase`].
    fn message(self) -> &'static str {
        match self {
            Self::AddEntryFilter { .. } => "change-add-entry-filter",
            Self::MoveEntryFilter { .. } => "change-move-entry-filter",
            Self::SwapEntryFilter { .. } => "change-swap-entry-filter",
            Self::SwapSplitter { .. } => "change-swap-splitter",
            Self::RemoveSplitter { .. } => "change-remove-splitter",
            Self::MergeSplitters { .. } => "change-merge-splitters",
            Self::Cap { .. } => "change-cap",
            Self::SwapAmplifier { .. } => "change-swap-amplifier",
            Self::RemoveAmplifier { .. } => "change-remove-amplifier",
            Self::ReplaceRun { .. } => "change-replace-run",
            Self::RenewConnectors { .. } => "change-renew-connectors",
        }
    }
}
