//! A single change to a house.

use serde::{Deserialize, Serialize};

use super::to_buy::ask_provider;
use crate::fact::SubjectId;
use crate::finding::{Caution, cautions};
use crate::naming;
use crate::record::{PartKind, Plugged, Survey};
use crate::words::{Arg, Phrase};

/// What a change does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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
    /// Put a new compression connector wherever the run that feeds this part has a poor one.
    RenewConnectors {
        /// The part at its house end.
        to: SubjectId,
    },
    /// Put a filter at the port of the modem or TV at this outlet.
    FilterAtDevice {
        /// The outlet.
        outlet: SubjectId,
    },
    /// Give the modem at this outlet a line of its own straight from the entry, and cut the rest of the house off from
    /// the street.
    ModemOwnLine {
        /// The outlet with the modem.
        outlet: SubjectId,
    },
    /// Let an adapter and a device share this outlet: through the adapter, or by a small splitter.
    ShareOutlet {
        /// The outlet.
        outlet: SubjectId,
    },
    /// Trace a loose part to the only loose end, and join the two.
    JoinLoose {
        /// The loose part.
        part: SubjectId,
        /// The part with the loose end.
        to: SubjectId,
        /// Its port.
        port: u8,
    },
    /// Move the bridge adapter to another outlet.
    MoveBridge {
        /// Where it stands.
        from: SubjectId,
        /// Where it goes.
        to: SubjectId,
    },
    /// Serve a room without coax from an outlet of another room.
    UseOutletNearby {
        /// The room.
        room: SubjectId,
        /// The outlet.
        outlet: SubjectId,
    },
    /// Lay a new run from a splitter to a room without coax.
    NewRun {
        /// The room.
        room: SubjectId,
        /// The splitter.
        from: SubjectId,
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
            Self::Cap { part, .. } | Self::JoinLoose { part, .. } => part,
            Self::SwapAmplifier { amplifier } | Self::RemoveAmplifier { amplifier } => amplifier,
            Self::ReplaceRun { to } | Self::RenewConnectors { to } | Self::MoveBridge { to, .. } => to,
            Self::FilterAtDevice { outlet }
            | Self::ModemOwnLine { outlet }
            | Self::ShareOutlet { outlet }
            | Self::UseOutletNearby { outlet, .. } => outlet,
            Self::NewRun { from, .. } => from,
        }
    }

    /// What to take care of, most important first.
    pub fn cautions(self) -> &'static [Caution] {
        match self {
            Self::AddEntryFilter { .. }
            | Self::MoveEntryFilter { .. }
            | Self::SwapEntryFilter { .. }
            | Self::ModemOwnLine { .. } => cautions::ENTRY,
            Self::SwapSplitter { .. }
            | Self::RemoveSplitter { .. }
            | Self::MergeSplitters { .. }
            | Self::SwapAmplifier { .. }
            | Self::RemoveAmplifier { .. }
            | Self::FilterAtDevice { .. }
            | Self::ShareOutlet { .. }
            | Self::MoveBridge { .. }
            | Self::UseOutletNearby { .. } => cautions::UNSCREW,
            Self::Cap { .. } => cautions::CAP,
            Self::RenewConnectors { .. } => cautions::CONNECTORS,
            Self::ReplaceRun { .. } | Self::NewRun { .. } => cautions::NEW_CABLE,
            Self::JoinLoose { .. } => cautions::TRACE,
        }
    }

    /// What is done, in words; the attributes `.why`, `.how`, `.check` and `.back` (how to put it back) of the
    /// same message say the rest.
    /// Names are those of `survey`, the house before the change.
    pub fn phrase(self, survey: &Survey) -> Phrase {
        let part = |id| naming::part(survey, id);
        match self {
            Self::AddEntryFilter { behind } => Phrase::new("change-add-entry-filter")
                .phrase("behind", part(behind))
                .text("ask", ask_provider(survey)),
            Self::MoveEntryFilter { filter, behind } => Phrase::new("change-move-entry-filter")
                .phrase("filter", part(filter))
                .phrase("behind", part(behind)),
            Self::SwapEntryFilter { filter } => Phrase::new("change-swap-entry-filter")
                .phrase("filter", part(filter))
                .text("ask", ask_provider(survey)),
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
                let ends = poor_ends(survey, to);
                let named = ends.iter().map(|end| Arg::Phrase(Box::new(Phrase::new(*end))));
                Phrase::new("change-renew-connectors")
                    .with("count", Arg::Count(ends.len() as u64))
                    .with("ends", Arg::Several(named.collect()))
                    .phrase("run", naming::run_to(survey, to))
            }
            Self::FilterAtDevice { outlet } => {
                let modem = is_modem_at(survey, outlet);
                let (id, ask) = if modem {
                    ("change-filter-at-modem", ask_provider(survey))
                } else {
                    ("change-filter-at-tv", "no")
                };
                Phrase::new(id).phrase("outlet", part(outlet)).text("ask", ask)
            }
            Self::ModemOwnLine { outlet } => {
                Phrase::new("change-modem-own-line").phrase("outlet", part(outlet))
            }
            Self::ShareOutlet { outlet } => Phrase::new("change-share-outlet").phrase("outlet", part(outlet)),
            Self::JoinLoose { part: loose, to, port } => Phrase::new("change-join-loose")
                .phrase("part", part(loose))
                .phrase("port", naming::port(survey, to, port)),
            Self::MoveBridge { from, to } => {
                Phrase::new("change-move-bridge").phrase("from", part(from)).phrase("to", part(to))
            }
            Self::UseOutletNearby { room, outlet } => Phrase::new("change-use-outlet-nearby")
                .text("room", room_name(survey, room))
                .phrase("outlet", part(outlet)),
            Self::NewRun { room, from } => {
                Phrase::new("change-new-run").text("room", room_name(survey, room)).phrase("from", part(from))
            }
        }
    }
}

fn room_name(survey: &Survey, room: SubjectId) -> &str {
    survey.rooms.get(&room).map_or("", |room| room.name.as_str())
}

/// Whether what is plugged in there is a modem.
pub(super) fn is_modem_at(survey: &Survey, outlet: SubjectId) -> bool {
    let plugged = survey.parts.get(&outlet).and_then(|part| part.plugged.as_ref());
    plugged.is_some_and(|plugged| plugged.contains(&Plugged::Modem))
}

/// The ends with a poor connector of the run that feeds a part, as messages.
pub(super) fn poor_ends(survey: &Survey, to: SubjectId) -> Vec<&'static str> {
    let run = survey.wiring.feed(to).and_then(|feed| survey.runs.get(&feed.run?));
    let ends = run.map(|run| [(run.connector_near, "run-end-near"), (run.connector_far, "run-end-far")]);
    let poor = ends.into_iter().flatten().filter(|(connector, _)| connector.is_poor());
    poor.map(|(_, end)| end).collect()
}
