//! A single change to a house.

use crate::fact::SubjectId;
use crate::naming;
use crate::record::{PartKind, Survey};
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

    /// What is done, in words; the attributes `.why`, `.how`, `.caution` and `.check` of the same message say the rest.
    /// Names are those of `survey`, the house before the change.
    pub fn phrase(self, survey: &Survey) -> Phrase {
        let part = |id| naming::part(survey, id);
        match self {
            Self::AddEntryFilter { behind } => {
                Phrase::new("change-add-entry-filter").phrase("behind", part(behind))
            }
            Self::MoveEntryFilter { filter, behind } => Phrase::new("change-move-entry-filter")
                .phrase("filter", part(filter))
                .phrase("behind", part(behind)),
            Self::SwapEntryFilter { filter } => {
                Phrase::new("change-swap-entry-filter").phrase("filter", part(filter))
            }
            Self::SwapSplitter { splitter, legs } => Phrase::new("change-swap-splitter")
                .phrase("splitter", part(splitter))
                .with("legs", Arg::Count(u64::from(legs))),
            Self::RemoveSplitter { splitter } => {
                Phrase::new("change-remove-splitter").phrase("splitter", part(splitter))
            }
            Self::MergeSplitters { upper, lower, legs } => Phrase::new("change-merge-splitters")
                .phrase("upper", part(upper))
                .phrase("lower", part(lower))
                .with("legs", Arg::Count(u64::from(legs))),
            Self::Cap { part: at, port } => {
                let outlet = survey.parts.get(&at).is_some_and(|part| part.kind == PartKind::Outlet);
                if outlet {
                    Phrase::new("change-cap-outlet").phrase("outlet", part(at))
                } else {
                    Phrase::new("change-cap").phrase("port", naming::port(survey, at, port))
                }
            }
            Self::SwapAmplifier { amplifier } => {
                Phrase::new("change-swap-amplifier").phrase("amplifier", part(amplifier))
            }
            Self::RemoveAmplifier { amplifier } => {
                Phrase::new("change-remove-amplifier").phrase("amplifier", part(amplifier))
            }
            Self::ReplaceRun { to } => {
                Phrase::new("change-replace-run").phrase("run", naming::run_to(survey, to))
            }
            Self::RenewConnectors { to } => {
                Phrase::new("change-renew-connectors").phrase("run", naming::run_to(survey, to))
            }
        }
    }
}
