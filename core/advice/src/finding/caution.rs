//! What to take care of before hands go to the wiring.

use house::record::{Asked, Reply, Survey};
use phrase::Phrase;

/// A usual caution of the trade. Local code and licensed practice go first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Caution {
    /// Does a phone line, an alarm or a medical call device hang on what is to be unplugged?
    WhoDependsOnIt,
    /// The mains supplies of everything on the coax come out first; a spark or a tingle means stop.
    SuppliesFirst,
    /// Looking what goes dead when a cable is unscrewed, the one work for which an amplifier stays on: without it nothing
    /// arrives. Only where nothing puts power on the coax.
    LookWhatGoesDead,
    /// A tone tracer, and all work that follows on tracing: the supplies come out first.
    SuppliesForTracer,
    /// Only the house side of the ground block is ours; some drops carry the provider's power.
    HouseSideOnly,
    /// No ground is ever removed.
    KeepGrounds,
    /// No work on coax in a thunderstorm.
    Thunderstorm,
    /// Attics, roofs and ladders.
    Heights,
    /// A plain cap shorts the power that some legs carry.
    PoweredLeg,
    /// A fibre is never unplugged or looked into.
    Fibre,
    /// Cutter and stripper have open blades.
    Blade,
    /// Coax keeps clear of mains cables.
    MainsNear,
}

impl Caution {
    /// All cautions, in the order in which they are read.
    pub const ALL: [Self; 12] = [
        Self::WhoDependsOnIt,
        Self::SuppliesFirst,
        Self::LookWhatGoesDead,
        Self::SuppliesForTracer,
        Self::HouseSideOnly,
        Self::KeepGrounds,
        Self::Thunderstorm,
        Self::Heights,
        Self::PoweredLeg,
        Self::Fibre,
        Self::Blade,
        Self::MainsNear,
    ];

    /// Those of following a cable to where it leads: two orders of work, one with an amplifier on and one with all supplies
    /// out.
    pub const TRACING: [Self; 3] = [Self::LookWhatGoesDead, Self::SuppliesForTracer, Self::Thunderstorm];

    /// Its words, with the reason.
    pub fn phrase(self) -> Phrase {
        Phrase::new(match self {
            Self::WhoDependsOnIt => "caution-who-depends-on-it",
            Self::SuppliesFirst => "caution-supplies-first",
            Self::LookWhatGoesDead => "caution-look-what-goes-dead",
            Self::SuppliesForTracer => "caution-supplies-for-tracer",
            Self::HouseSideOnly => "caution-house-side-only",
            Self::KeepGrounds => "caution-keep-grounds",
            Self::Thunderstorm => "caution-thunderstorm",
            Self::Heights => "caution-heights",
            Self::PoweredLeg => "caution-powered-leg",
            Self::Fibre => "caution-fibre",
            Self::Blade => "caution-blade",
            Self::MainsNear => "caution-mains-near",
        })
    }

    /// Whether a house leaves open what this caution asks. Who depends on the wiring was asked of the house: where nobody
    /// does, and no other home hangs on it, the caution has its answer and is not repeated at each step.
    pub fn is_open_in(self, survey: &Survey) -> bool {
        let shared = survey.building.is_some_and(|building| building.shared);
        let nobody = || survey.replies(survey.id, Asked::Depends) == [Reply::Nothing];
        self != Self::WhoDependsOnIt || shared || !nobody()
    }
}
