//! The table of findings: id, weight, grounds and cautions of each kind.

use phrase::Phrase;

use super::caution::Caution;
use super::caution::Caution::{Fibre, PoweredLeg, SuppliesFirst, WhoDependsOnIt};
use super::cautions::{CABLE, CAP, CONNECTORS, ENTRY, ENTRY_LOOK, JOIN, LOOK, TRACE, TRACE_AND_CAP, UNSCREW};

/// How much a finding matters, most first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Weight {
    /// A service stops, the network leaves the house, or there is no network.
    Grave,
    /// It costs speed, or is likely to.
    Costly,
    /// It costs little; worth a minute while one is there.
    Minor,
    /// Not yet known, or good to know.
    Note,
}

impl Weight {
    /// Its name in words.
    pub fn phrase(self) -> Phrase {
        Phrase::new(match self {
            Self::Grave => "weight-grave",
            Self::Costly => "weight-costly",
            Self::Minor => "weight-minor",
            Self::Note => "weight-note",
        })
    }
}

/// What a finding's claim rests on. The words stand in the message's `.source`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Grounds {
    /// A document that the message names.
    Published,
    /// What the trade does, with no source behind it.
    CommonPractice,
    /// From memory; not checked against a document.
    FromMemory,
    /// The survey itself: what is written there, or missing.
    Survey,
}

macro_rules! kinds {
    ($($(#[$doc:meta])* $name:ident = $id:literal, $weight:ident, $grounds:ident, $cautions:expr;)+) => {
        /// What a finding is about. Within one weight, findings stand in this order.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum FindingKind {
            $($(#[$doc])* $name,)+
        }

        impl FindingKind {
            /// Every kind.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// Its id: the message is `finding-<id>`.
            pub const fn id(self) -> &'static str {
                match self { $(Self::$name => $id,)+ }
            }

            /// How much it matters.
            pub const fn weight(self) -> Weight {
                match self { $(Self::$name => Weight::$weight,)+ }
            }

            /// What its claim rests on.
            pub const fn grounds(self) -> Grounds {
                match self { $(Self::$name => Grounds::$grounds,)+ }
            }

            /// What to take care of, most important first.
            pub const fn cautions(self) -> &'static [Caution] {
                match self { $(Self::$name => $cautions,)+ }
            }
        }
    };
}

kinds! {
    /// An entry joined to the street or an antenna has no entry filter.
    EntryFilterMissing = "entry-filter-missing", Grave, Published, ENTRY;
    /// The same in a building that shares its coax.
    SharedBuildingOpen = "shared-building-open", Grave, Published, ENTRY;
    /// An entry filter stands in a dish's line.
    FilterInSatelliteLine = "filter-in-satellite-line", Grave, Published, ENTRY;
    /// The entry filter does not stop the whole MoCA band.
    FilterNotForBand = "filter-not-for-band", Grave, Published, ENTRY;
    /// The entry filter's pass band ends below what a service uses.
    FilterCutsService = "filter-cuts-service", Grave, Published, ENTRY;
    /// Two bridges on one tree.
    TwoBridges = "two-bridges", Grave, CommonPractice, &[WhoDependsOnIt];
    /// An adapter and the bridge hang on different trees.
    OtherTree = "other-tree", Grave, CommonPractice, JOIN;
    /// Nothing feeds an outlet where an adapter is or shall be.
    OutletFedByNothing = "outlet-fed-by-nothing", Grave, Survey, LOOK;
    /// Satellite signals and adapters share a tree.
    SatelliteOnTree = "satellite-on-tree", Grave, Published, UNSCREW;
    /// An amplifier without by-pass stands between adapters.
    AmplifierNoBypass = "amplifier-no-bypass", Grave, CommonPractice, UNSCREW;
    /// What a room gets hangs on whether an amplifier has a by-pass, and nobody knows.
    AmplifierBypassDecides = "amplifier-bypass-decides", Grave, CommonPractice, LOOK;
    /// More adapters than a network may have.
    TooManyAdapters = "too-many-adapters", Grave, Published, LOOK;
    /// A part on the way that DC takes is stated to hold it back.
    DcBroken = "dc-broken", Grave, Survey, &[PoweredLeg, SuppliesFirst];
    /// An amplifier on the way to a modem returns less than the modem sends.
    AmplifierReturnNarrow = "amplifier-return-narrow", Grave, Survey, UNSCREW;
    /// An amplifier on the way to a TV or modem ends below what the service uses.
    AmplifierEndsBelow = "amplifier-ends-below", Grave, Survey, UNSCREW;
    /// An adapter sees more nodes than are known.
    NodesMoreThanKnown = "nodes-more-than-known", Grave, CommonPractice, ENTRY_LOOK;
    /// A room's adapter hears no other.
    NoLink = "no-link", Grave, Survey, UNSCREW;
    /// No channel is free for an adapter and the bridge.
    NoChannel = "no-channel", Grave, Survey, LOOK;

    /// An entry of which it is not known what comes in, or whether it is joined, has no entry filter.
    EntryFilterIfConnected = "entry-filter-if-connected", Costly, Published, ENTRY;
    /// Somebody looked for an entry filter and could not tell.
    EntryFilterNotSeen = "entry-filter-not-seen", Costly, Published, ENTRY_LOOK;
    /// An entry filter stands behind a split.
    FilterAfterSplit = "filter-after-split", Costly, CommonPractice, ENTRY;
    /// A splitter or tap on a path is not made for the band.
    SplitterNotForBand = "splitter-not-for-band", Costly, CommonPractice, UNSCREW;
    /// A splitter of which one leg is used.
    SplitterNeedless = "splitter-needless", Costly, Published, UNSCREW;
    /// A splitter with more legs than used.
    SplitterTooLarge = "splitter-too-large", Costly, Published, UNSCREW;
    /// Two splitters side by side where one would do.
    SplittersInCascade = "splitters-in-cascade", Costly, Published, UNSCREW;
    /// A TV and satellite combiner stands on a path, and no dish is known.
    CombinerInPath = "combiner-in-path", Costly, CommonPractice, UNSCREW;
    /// Many splits in a row.
    SplitsMany = "splits-many", Costly, CommonPractice, UNSCREW;
    /// Adapters hang on different outputs of one amplifier.
    AmplifierOutputsApart = "amplifier-outputs-apart", Costly, CommonPractice, UNSCREW;
    /// A long run of 59-series cable.
    RunThinAndLong = "run-thin-and-long", Costly, FromMemory, CABLE;
    /// A very long run.
    RunVeryLong = "run-very-long", Costly, FromMemory, CABLE;
    /// Conductors twisted together, or a connector half off.
    JointBad = "joint-bad", Costly, Published, CONNECTORS;
    /// A twist-on, push-on, corroded or hand-tight connector.
    ConnectorPoor = "connector-poor", Costly, CommonPractice, CONNECTORS;
    /// A poor connector or bad joint where only the provider works.
    ConnectorStreetSide = "connector-street-side", Costly, CommonPractice, ENTRY_LOOK;
    /// A cable service reaches into the MoCA band on the adapters' tree.
    ServiceInBand = "service-in-band", Costly, Published, ENTRY;
    /// A modem whose internet drops out shares an outlet or a splitter with an adapter and has no filter.
    ModemDropsOut = "modem-drops-out", Costly, CommonPractice, UNSCREW;
    /// The version between an adapter and the bridge is slower than what is wanted.
    VersionTooSlow = "version-too-slow", Costly, Published, LOOK;
    /// Another network on the wire leaves ours fewer channels than it could use.
    NetworksOverlap = "networks-overlap", Costly, Published, LOOK;
    /// A room's link is there at times and gone at others.
    LinkComesAndGoes = "link-comes-and-goes", Costly, CommonPractice, UNSCREW;
    /// An adapter sees fewer nodes than are there.
    NodesFewer = "nodes-fewer", Costly, Survey, LOOK;
    /// An adapter sees no other node.
    NodeAlone = "node-alone", Costly, FromMemory, LOOK;
    /// Less analog TV at an outlet than the rule asks for.
    LevelBelowRule = "level-below-rule", Costly, Published, LOOK;
    /// A TV level outside what is usual.
    LevelOutsideGuide = "level-outside-guide", Costly, FromMemory, LOOK;
    /// A modem receives too little or too much.
    ModemLevelOutside = "modem-level-outside", Costly, Published, LOOK;
    /// Less was measured somewhere than the wiring explains.
    LevelBelowWiring = "level-below-wiring", Costly, Survey, LOOK;
    /// More was measured somewhere than the wiring explains.
    LevelAboveWiring = "level-above-wiring", Costly, Survey, LOOK;
    /// A digital signal arrives too noisy to be received.
    SignalNotClean = "signal-not-clean", Costly, FromMemory, LOOK;
    /// A modem has to send more than is good.
    ModemSendsHigh = "modem-sends-high", Costly, Published, LOOK;
    /// A level that nobody measured there comes out outside what the device needs.
    LevelWorkedOutOutside = "level-worked-out-outside", Costly, Survey, LOOK;
    /// A frequency that a service uses is lost on the way.
    ServiceDoesNotArrive = "service-does-not-arrive", Costly, Survey, LOOK;
    /// A room measured slower than expected.
    MeasuredBelowForecast = "measured-below-forecast", Costly, Survey, LOOK;
    /// A path measured with more loss than expected.
    LossAboveForecast = "loss-above-forecast", Costly, Survey, LOOK;
    /// One direction is much slower than the other.
    OneWaySlower = "one-way-slower", Costly, CommonPractice, LOOK;
    /// A piece outside the coax that is made for 100 Mb/s holds a test.
    HundredSomewhere = "hundred-somewhere", Costly, Published, LOOK;
    /// Packets get lost while the network is busy.
    LossUnderLoad = "loss-under-load", Costly, Published, LOOK;
    /// Packets get lost while nothing else runs.
    LossWhileQuiet = "loss-while-quiet", Costly, Published, UNSCREW;
    /// All wishes at once need more than the one capacity that all share.
    WishesDoNotFit = "wishes-do-not-fit", Costly, Survey, LOOK;

    /// The entry filter stands on the street side of the ground block.
    FilterStreetSide = "filter-street-side", Minor, CommonPractice, ENTRY_LOOK;
    /// The entry filter takes off less than such filters do.
    FilterWeak = "filter-weak", Minor, Published, ENTRY;
    /// An amplifier without by-pass stands above all adapters.
    AmplifierAbove = "amplifier-above", Minor, CommonPractice, UNSCREW;
    /// A free leg is open.
    LegOpen = "leg-open", Minor, CommonPractice, CAP;
    /// An outlet with nothing plugged in.
    OutletOpen = "outlet-open", Minor, CommonPractice, CAP;
    /// A cable leaves and nobody knows where to.
    LooseEnd = "loose-end", Minor, CommonPractice, TRACE_AND_CAP;
    /// Two cables are noted on one port.
    TwoOnPort = "two-on-port", Minor, Survey, LOOK;
    /// A part is not traced to a feed.
    PartLoose = "part-loose", Minor, Survey, TRACE;
    /// An Ethernet port slower than what is wanted.
    EthernetSlower = "ethernet-slower", Minor, Published, LOOK;

    /// The entry filter's label begins above what a cable modem sends on.
    FilterMayHoldReturn = "filter-may-hold-return", Note, Published, ENTRY_LOOK;
    /// The entry filter's label says nothing of the band it stops.
    FilterLabelUnknown = "filter-label-unknown", Note, Survey, ENTRY_LOOK;
    /// No ground block is noted at an entry.
    GroundBlockNotSeen = "ground-block-not-seen", Note, Published, ENTRY_LOOK;
    /// The building shares its coax and a filter is there.
    SharedBuilding = "shared-building", Note, Published, LOOK;
    /// Many splits in a row, all of them made for the band, and the rooms get what is wished.
    SplitsManyMet = "splits-many-met", Note, CommonPractice, LOOK;
    /// The band of a splitter or tap on a path is not known.
    SplitterLabelUnknown = "splitter-label-unknown", Note, Survey, LOOK;
    /// A splitter or tap on a path is made for satellite signals too, by its label.
    SplitterForSatellite = "splitter-for-satellite", Note, CommonPractice, LOOK;
    /// A label text was doubtful.
    LabelDoubtful = "label-doubtful", Note, Survey, LOOK;
    /// Nobody looked whether free legs are capped.
    LegNotSeen = "leg-not-seen", Note, Survey, LOOK;
    /// Whether an amplifier between adapters has a by-pass is not known.
    AmplifierBypassUnknown = "amplifier-bypass-unknown", Note, CommonPractice, LOOK;
    /// A long run whose series is not known.
    RunUnknownAndLong = "run-unknown-and-long", Note, FromMemory, LOOK;
    /// Nobody has said which outlet gets the bridge.
    BridgeNotChosen = "bridge-not-chosen", Note, Survey, LOOK;
    /// One tag stands on two things.
    TagTwice = "tag-twice", Note, Survey, LOOK;
    /// A satellite service is named, but not where its cables run.
    SatelliteNotPlaced = "satellite-not-placed", Note, Published, LOOK;
    /// The provider runs a network of its own on the coax.
    ProviderNetwork = "provider-network", Note, CommonPractice, LOOK;
    /// A fibre box reaches the router over coax.
    FibreLink = "fibre-link", Note, CommonPractice, &[Fibre];
    /// Another network is on the wire and nobody knows on which channels.
    NetworkChannelsUnknown = "network-channels-unknown", Note, Published, LOOK;
    /// A modem may be made to listen in the MoCA band and has no filter.
    ModemMayReachBand = "modem-may-reach-band", Note, Published, UNSCREW;
    /// DC goes over parts of the coax.
    DcFeed = "dc-feed", Note, CommonPractice, &[PoweredLeg, SuppliesFirst];
    /// DC goes over one run.
    DcFeedDirect = "dc-feed-direct", Note, CommonPractice, &[PoweredLeg, SuppliesFirst];
    /// A modem sends less than is recommended.
    ModemSendsLow = "modem-sends-low", Note, Published, LOOK;
    /// Nobody knows how far a modem reaches, and the network uses channels that it may listen to.
    ModemReachUnknown = "modem-reach-unknown", Note, Published, LOOK;
    /// A level was measured before work was done on the way to that place.
    LevelBeforeWork = "level-before-work", Note, Survey, LOOK;
    /// A level inside what a TV or modem is made for, outside what is recommended.
    LevelNotRecommended = "level-not-recommended", Note, CommonPractice, LOOK;
    /// A digital signal arrives with little margin over its noise.
    SignalHardlyClean = "signal-hardly-clean", Note, FromMemory, LOOK;
    /// What an instrument found of a part does not reach over the band that is looked at, so the part counts as rated.
    MeasuredPartNotUsed = "measured-part-not-used", Note, Survey, LOOK;
    /// A room measured faster than expected.
    MeasuredAboveForecast = "measured-above-forecast", Note, Survey, LOOK;
    /// A network socket held a test, not the coax.
    SocketHoldsTest = "socket-holds-test", Note, Published, LOOK;
    /// A test to the internet stays below the plan.
    InternetBelowPlan = "internet-below-plan", Note, CommonPractice, LOOK;
    /// Packets get lost on the way to the internet.
    InternetLosesPackets = "internet-loses-packets", Note, CommonPractice, LOOK;
    /// Internet speed goes with heat or the hour.
    SpeedSwings = "speed-swings", Note, Published, LOOK;
    /// Older and newer adapters on one tree.
    VersionsMixed = "versions-mixed", Note, Published, LOOK;
}
