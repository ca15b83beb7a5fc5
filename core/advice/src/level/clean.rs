//! How clean a digital signal must arrive: the least modulation error ratio (MER), with what backs it.

use coax::Backing;
use facts::fact::SubjectId;
use house::record::{ReadingKind, ServiceKind, Survey, TvSignal};
use phrase::Phrase;

/// What a service needs of the modulation error ratio.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CleanNeed {
    /// A name for words to look it up by: the message is `clean-<name>`.
    pub name: &'static str,
    /// Below this it fails, dB.
    pub least_db: f64,
    /// From here on there is a margin, dB.
    pub recommended_db: f64,
    /// What backs it.
    pub backing: Backing,
}

/// Cable services, taken for 256-QAM: to be run at 31 dB or more, which is 3 dB or more above where reception fails
/// ("Broadband: Making MER Better, Part 1", cablefax.com); so it fails below 28 dB (as a field meter's manual has it, from
/// memory).
pub const CABLE_CLEAN: CleanNeed = CleanNeed {
    name: "cable",
    least_db: 28.0,
    recommended_db: 31.0,
    backing: Backing::Published("\"Broadband: Making MER Better, Part 1\", cablefax.com"),
};

/// Antenna TV in 8-VSB: fails below 15.2 dB (ATSC A/53, from memory); 6 dB above it is the margin that the same article
/// names for good practice.
pub const ANTENNA_CLEAN: CleanNeed =
    CleanNeed { name: "antenna", least_db: 15.2, recommended_db: 21.2, backing: Backing::FromMemory };

/// Meters and our own words show ratios in tenths, dB.
const SHOWN_APART_DB: f64 = 0.05;

impl CleanNeed {
    /// Both.
    pub const ALL: [Self; 2] = [CABLE_CLEAN, ANTENNA_CLEAN];

    /// Whether a signal of this ratio is received at all.
    pub fn holds(&self, db: f64) -> bool {
        db > self.least_db - SHOWN_APART_DB
    }

    /// Whether it keeps the margin that is recommended.
    pub fn has_margin(&self, db: f64) -> bool {
        db > self.recommended_db - SHOWN_APART_DB
    }

    /// Its words: what is needed, what is recommended, and from where that is known.
    pub fn phrase(&self) -> Phrase {
        Phrase::new(format!("clean-{}", self.name))
    }
}

/// What a service needs; `None` for analog TV, which has no such ratio, and for a dish, of which no figure is known here.
pub fn clean_need_of(survey: &Survey, service: ServiceKind) -> Option<CleanNeed> {
    let analog_only = || {
        let mut signals =
            survey.services_of(ServiceKind::CableTv).filter_map(|service| service.signal).peekable();
        signals.peek().is_some() && signals.all(|signal| signal == TvSignal::Analog)
    };
    match service {
        ServiceKind::CableTv => (!analog_only()).then_some(CABLE_CLEAN),
        ServiceKind::CableInternet => Some(CABLE_CLEAN),
        ServiceKind::AntennaTv => Some(ANTENNA_CLEAN),
        _ => None,
    }
}

/// The error ratios read at a part, by rising frequency: MHz and dB.
pub(crate) fn ratios_at(survey: &Survey, part: SubjectId) -> Vec<(f64, f64)> {
    let mut read: Vec<_> = survey
        .levels_read_at(part)
        .filter_map(|reading| match reading.measured {
            ReadingKind::ErrorRatio { mhz, db } if mhz > 0.0 && mhz.is_finite() && db.is_finite() => {
                Some((mhz, db))
            }
            _ => None,
        })
        .collect();
    read.sort_by(|a, b| a.0.total_cmp(&b.0));
    read
}
