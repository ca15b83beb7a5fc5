//! A single change to a house.

use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::Survey;
use super::closed_list::closed_list;

closed_list! {
    /// What can be checked at an outlet whose test failed, before anything is bought.
    pub enum OutletCheck {
        /// Whether the adapter has power, is screwed on and has the password of the others.
        Adapter = "adapter",
        /// The short coax cable between the wall and the adapter.
        ShortCable = "short_cable",
        /// The network cables, sockets and switches between the adapter and the computer.
        NetworkCable = "network_cable",
        /// Whether another room's adapter does better there.
        OtherAdapter = "other_adapter",
        /// The way there, measured by somebody who has a meter for it.
        Measure = "measure",
    }
}

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
    /// Put an adapter of a newer version at an outlet, and at the start of the network if the one there is as old.
    NewerAdapter {
        /// The outlet.
        outlet: SubjectId,
    },
    /// Let the adapters of two outlets change places: each then has what the other had.
    ExchangeAdapters {
        /// The outlet that gets the better one.
        outlet: SubjectId,
        /// Where that stands.
        with: SubjectId,
    },
    /// Look at a part on the way to an outlet whose test failed, then test again.
    LookAtPart {
        /// The part.
        part: SubjectId,
        /// The outlet.
        outlet: SubjectId,
    },
    /// Look along the run that feeds this part, on the way to an outlet whose test failed, then test again.
    LookAtRun {
        /// The part at its house end.
        to: SubjectId,
        /// The outlet.
        outlet: SubjectId,
    },
    /// Check something at an outlet whose test failed, then test again.
    CheckAtOutlet {
        /// The outlet.
        outlet: SubjectId,
        /// What.
        check: OutletCheck,
    },
}

impl ChangeKind {
    /// Its name in the record, and wherever else data name it: `add_entry_filter`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::AddEntryFilter { .. } => "add_entry_filter",
            Self::MoveEntryFilter { .. } => "move_entry_filter",
            Self::SwapEntryFilter { .. } => "swap_entry_filter",
            Self::SwapSplitter { .. } => "swap_splitter",
            Self::RemoveSplitter { .. } => "remove_splitter",
            Self::MergeSplitters { .. } => "merge_splitters",
            Self::Cap { .. } => "cap",
            Self::SwapAmplifier { .. } => "swap_amplifier",
            Self::RemoveAmplifier { .. } => "remove_amplifier",
            Self::ReplaceRun { .. } => "replace_run",
            Self::RenewConnectors { .. } => "renew_connectors",
            Self::FilterAtDevice { .. } => "filter_at_device",
            Self::ModemOwnLine { .. } => "modem_own_line",
            Self::ShareOutlet { .. } => "share_outlet",
            Self::JoinLoose { .. } => "join_loose",
            Self::MoveBridge { .. } => "move_bridge",
            Self::UseOutletNearby { .. } => "use_outlet_nearby",
            Self::NewRun { .. } => "new_run",
            Self::NewerAdapter { .. } => "newer_adapter",
            Self::ExchangeAdapters { .. } => "exchange_adapters",
            Self::LookAtPart { .. } => "look_at_part",
            Self::LookAtRun { .. } => "look_at_run",
            Self::CheckAtOutlet { .. } => "check_at_outlet",
        }
    }

    /// Whether it changes nothing of the house: something is looked at or tried, and then the room is tested again.
    pub const fn is_check(self) -> bool {
        matches!(self, Self::LookAtPart { .. } | Self::LookAtRun { .. } | Self::CheckAtOutlet { .. })
    }

    /// The same change with each id as `renamed` has it.
    #[must_use]
    pub fn with_ids(self, renamed: impl Fn(SubjectId) -> SubjectId) -> Self {
        match self {
            Self::AddEntryFilter { behind } => Self::AddEntryFilter { behind: renamed(behind) },
            Self::MoveEntryFilter { filter, behind } => {
                Self::MoveEntryFilter { filter: renamed(filter), behind: renamed(behind) }
            }
            Self::SwapEntryFilter { filter } => Self::SwapEntryFilter { filter: renamed(filter) },
            Self::SwapSplitter { splitter, legs } => Self::SwapSplitter { splitter: renamed(splitter), legs },
            Self::RemoveSplitter { splitter } => Self::RemoveSplitter { splitter: renamed(splitter) },
            Self::MergeSplitters { upper, lower, legs } => {
                Self::MergeSplitters { upper: renamed(upper), lower: renamed(lower), legs }
            }
            Self::Cap { part, port } => Self::Cap { part: renamed(part), port },
            Self::SwapAmplifier { amplifier } => Self::SwapAmplifier { amplifier: renamed(amplifier) },
            Self::RemoveAmplifier { amplifier } => Self::RemoveAmplifier { amplifier: renamed(amplifier) },
            Self::ReplaceRun { to } => Self::ReplaceRun { to: renamed(to) },
            Self::RenewConnectors { to } => Self::RenewConnectors { to: renamed(to) },
            Self::FilterAtDevice { outlet } => Self::FilterAtDevice { outlet: renamed(outlet) },
            Self::ModemOwnLine { outlet } => Self::ModemOwnLine { outlet: renamed(outlet) },
            Self::ShareOutlet { outlet } => Self::ShareOutlet { outlet: renamed(outlet) },
            Self::JoinLoose { part, to, port } => {
                Self::JoinLoose { part: renamed(part), to: renamed(to), port }
            }
            Self::MoveBridge { from, to } => Self::MoveBridge { from: renamed(from), to: renamed(to) },
            Self::UseOutletNearby { room, outlet } => {
                Self::UseOutletNearby { room: renamed(room), outlet: renamed(outlet) }
            }
            Self::NewRun { room, from } => Self::NewRun { room: renamed(room), from: renamed(from) },
            Self::NewerAdapter { outlet } => Self::NewerAdapter { outlet: renamed(outlet) },
            Self::ExchangeAdapters { outlet, with } => {
                Self::ExchangeAdapters { outlet: renamed(outlet), with: renamed(with) }
            }
            Self::LookAtPart { part, outlet } => {
                Self::LookAtPart { part: renamed(part), outlet: renamed(outlet) }
            }
            Self::LookAtRun { to, outlet } => Self::LookAtRun { to: renamed(to), outlet: renamed(outlet) },
            Self::CheckAtOutlet { outlet, check } => Self::CheckAtOutlet { outlet: renamed(outlet), check },
        }
    }

    /// What to order changes by: first what they do, then where it stands in the order of the house.
    #[must_use]
    pub fn in_order(self, survey: &Survey) -> Self {
        self.with_ids(|id| {
            let place = survey.parts.get_index_of(&id).or_else(|| survey.rooms.get_index_of(&id));
            SubjectId::from_uuid(Uuid::from_u128(place.map_or(u128::MAX, |place| place as u128)))
        })
    }

    /// The part that the work is done at.
    pub fn at(self) -> SubjectId {
        match self {
            Self::AddEntryFilter { behind } => behind,
            Self::MoveEntryFilter { filter, .. } | Self::SwapEntryFilter { filter } => filter,
            Self::SwapSplitter { splitter, .. } | Self::RemoveSplitter { splitter } => splitter,
            Self::MergeSplitters { upper, .. } => upper,
            Self::Cap { part, .. } | Self::JoinLoose { part, .. } | Self::LookAtPart { part, .. } => part,
            Self::SwapAmplifier { amplifier } | Self::RemoveAmplifier { amplifier } => amplifier,
            Self::ReplaceRun { to }
            | Self::RenewConnectors { to }
            | Self::MoveBridge { to, .. }
            | Self::LookAtRun { to, .. } => to,
            Self::FilterAtDevice { outlet }
            | Self::ModemOwnLine { outlet }
            | Self::ShareOutlet { outlet }
            | Self::UseOutletNearby { outlet, .. }
            | Self::NewerAdapter { outlet }
            | Self::ExchangeAdapters { outlet, .. }
            | Self::CheckAtOutlet { outlet, .. } => outlet,
            Self::NewRun { from, .. } => from,
        }
    }
}
