//! What kind of part a label is on.

/// The kind of part that a label's words or figures name.
///
/// A directional coupler is a [`PartKind::Tap`]: one device under two names. A splitter that passes only the
/// satellite band is a [`PartKind::SatelliteSplitter`]; one that passes it beside cable TV is a plain
/// [`PartKind::Splitter`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PartKind {
    /// One input, two or more outputs.
    Splitter,
    /// A tap or directional coupler: a through output and one or more tap outputs.
    Tap,
    /// A powered amplifier.
    Amplifier,
    /// A filter at the entry that passes the service and stops the band of the home network above it
    /// (trade wording: "POE filter", for point of entry).
    EntryFilter,
    /// A filter that passes what lies above its edge.
    HighPassFilter,
    /// The block where the cable's shield is bonded to ground.
    GroundBlock,
    /// A fixed attenuator, or pad.
    Attenuator,
    /// A 75 ohm load for a free port.
    Terminator,
    /// A splitter for the satellite band alone.
    SatelliteSplitter,
    /// A diplexer: joins or parts the satellite band and the band below it.
    SatelliteCombiner,
    /// An outlet's wall plate.
    WallPlate,
    /// A barrel: two female connectors back to back.
    Barrel,
    /// What feeds direct current into the coax, for an amplifier.
    PowerInserter,
    /// A barrel that holds direct current back.
    DcBlock,
    /// A cable, known by its jacket print.
    Cable,
}

impl PartKind {
    /// The kind's name in JSON.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Splitter => "splitter",
            Self::Tap => "tap",
            Self::Amplifier => "amplifier",
            Self::EntryFilter => "entry_filter",
            Self::HighPassFilter => "high_pass_filter",
            Self::GroundBlock => "ground_block",
            Self::Attenuator => "pad",
            Self::Terminator => "terminator",
            Self::SatelliteSplitter => "satellite_splitter",
            Self::SatelliteCombiner => "satellite_combiner",
            Self::WallPlate => "wall_plate",
            Self::Barrel => "barrel",
            Self::PowerInserter => "power_inserter",
            Self::DcBlock => "dc_block",
            Self::Cable => "cable",
        }
    }

    /// Whether the part's outputs are legs that share the signal.
    pub(super) const fn splits(self) -> bool {
        matches!(self, Self::Splitter | Self::SatelliteSplitter)
    }

    /// Whether the part has one way through, whose loss is its insertion loss.
    pub(super) const fn has_one_way_through(self) -> bool {
        matches!(
            self,
            Self::EntryFilter
                | Self::HighPassFilter
                | Self::GroundBlock
                | Self::Attenuator
                | Self::WallPlate
                | Self::Barrel
                | Self::PowerInserter
                | Self::DcBlock
        )
    }
}

impl std::fmt::Display for PartKind {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(self.name())
    }
}

/// What a label says about direct current (power for an amplifier or a dish) through the part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PowerPass {
    /// No port passes direct current.
    Blocked,
    /// Direct current passes; through which outputs is not said.
    Stated,
    /// Exactly one output passes direct current.
    OneLeg,
    /// Every output passes direct current.
    AllLegs,
}

impl PowerPass {
    /// Whether any direct current passes.
    pub const fn passes(self) -> bool {
        !matches!(self, Self::Blocked)
    }

    /// Which legs pass direct current, as named in JSON: `"one"`, `"all"`, or nothing where the label does
    /// not say.
    pub const fn legs_name(self) -> Option<&'static str> {
        match self {
            Self::OneLeg => Some("one"),
            Self::AllLegs => Some("all"),
            Self::Blocked | Self::Stated => None,
        }
    }
}

/// A coaxial cable's series, as its jacket print names it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CableSeries {
    /// Series 59.
    Series59,
    /// Series 6.
    Series6,
    /// Series 7.
    Series7,
    /// Series 11.
    Series11,
}

impl CableSeries {
    /// The series' number as printed.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Series59 => "59",
            Self::Series6 => "6",
            Self::Series7 => "7",
            Self::Series11 => "11",
        }
    }

    /// The series of that number, if it is one that houses are wired with.
    pub(crate) fn numbered(number: u32) -> Option<Self> {
        match number {
            59 => Some(Self::Series59),
            6 => Some(Self::Series6),
            7 => Some(Self::Series7),
            11 => Some(Self::Series11),
            _ => None,
        }
    }
}
