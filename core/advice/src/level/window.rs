//! The levels that a TV or modem needs, each with what backs it.

use coax::{Backing, Span};
use house::record::{ModemGeneration, ServiceKind, Survey, TvSignal};
use phrase::Phrase;

/// A range of levels that something needs: outside it is not made to work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// A name for words and documents to look it up by: the message is `window-<name>`.
    pub name: &'static str,
    /// The least, dBmV; `None` where none is stated.
    pub low_dbmv: Option<f64>,
    /// The most, dBmV; `None` where none is stated.
    pub high_dbmv: Option<f64>,
    /// What backs it.
    pub backing: Backing,
    /// The narrower range that is recommended, where one is; its message is `window-<name>.recommended`.
    pub recommended: Option<Recommended>,
}

/// A range of levels that leaves a margin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Recommended {
    /// The least, dBmV.
    pub low_dbmv: f64,
    /// The most, dBmV.
    pub high_dbmv: f64,
    /// What backs it.
    pub backing: Backing,
}

/// Analog TV at the input of a TV: 0 dBmV or more. 47 CFR 76.605(a)(3), as of 2005 to 2015; (b)(3) in 2021.
pub const ANALOG_TV: Window = Window {
    name: "analog-tv",
    low_dbmv: Some(0.0),
    high_dbmv: None,
    backing: Backing::Published("47 CFR 76.605(a)(3), 2015; (b)(3), 2021"),
    recommended: None,
};

/// Digital cable TV (256-QAM) at the input of a TV or box: a guide figure of SCTE 40, from memory.
pub const DIGITAL_TV: Window = Window {
    name: "digital-tv",
    low_dbmv: Some(-12.0),
    high_dbmv: Some(15.0),
    backing: Backing::FromMemory,
    recommended: None,
};

/// Cable TV with analog and digital channels: of both windows the stricter edge at each side.
pub const BOTH_TV: Window = Window {
    name: "both-tv",
    low_dbmv: ANALOG_TV.low_dbmv,
    high_dbmv: DIGITAL_TV.high_dbmv,
    backing: Backing::FromMemory,
    recommended: None,
};

/// What a cable modem receives, one channel: -15 to +15 dBmV. DOCSIS Radio Frequency Interface Specification, table "Electrical
/// Input to CM", as quoted in "Broadband: Total Power", cablefax.com. Installers aim at -7 to +7 dBmV (common practice, no source).
pub const MODEM_RECEIVES: Window = Window {
    name: "modem-receives",
    low_dbmv: Some(-15.0),
    high_dbmv: Some(15.0),
    backing: Backing::Published(
        "DOCSIS Radio Frequency Interface Specification, as quoted in \"Broadband: Total Power\", cablefax.com",
    ),
    recommended: Some(Recommended { low_dbmv: -7.0, high_dbmv: 7.0, backing: Backing::CommonPractice }),
};

/// At what level a cable modem sends when all is well: 40 to 50 dBmV with up to four channels. An article on DOCSIS 3.1
/// transmit power, volpefirm.com. Above it runs short of what it can send ([`modem_sends_most`]); below nothing is lost, so
/// that no lower edge is needed, only recommended.
pub const MODEM_SENDS: Window = Window {
    name: "modem-sends",
    low_dbmv: None,
    high_dbmv: Some(50.0),
    backing: Backing::Published("\"DOCSIS 3.1 cable modem transmit power\", volpefirm.com"),
    recommended: Some(Recommended {
        low_dbmv: 40.0,
        high_dbmv: 50.0,
        backing: Backing::Published("\"DOCSIS 3.1 cable modem transmit power\", volpefirm.com"),
    }),
};

/// Antenna TV at the input of a TV: -83 to -5 dBm (-34.25 to +43.75 dBmV) is where a tuner works (ATSC A/74:2010, 5.1, as
/// quoted on a public forum). Reception fades, and several stations add up: from A/74's weak signal of -68 dBm
/// (tvtechnology.com, "NTIA proposes minimum performance standards") to its -8 dBm for each of several (5.2) there is a
/// margin at both ends.
pub const ANTENNA_TV: Window = Window {
    name: "antenna-tv",
    low_dbmv: Some(-34.25),
    high_dbmv: Some(43.75),
    backing: Backing::Published("ATSC A/74:2010, 5.1, as quoted on a public forum"),
    recommended: Some(Recommended {
        low_dbmv: -19.25,
        high_dbmv: 40.75,
        backing: Backing::Published(
            "ATSC A/74, as reported by tvtechnology.com and quoted on a public forum",
        ),
    }),
};

/// What EN 60728-1 wants at an outlet, read second-hand in the compendium of a maker of antenna equipment (not named here); of
/// the satellite band also in "Indicazioni e norme tecniche", 01smartlife.it, April 2010. Its dBuV less 60 are dBmV.
const EN_OUTLET: Backing = Backing::Published("EN 60728-1, levels at the outlet, read second-hand");

const fn en_outlet(name: &'static str, low_dbuv: f64, high_dbuv: f64) -> Window {
    Window {
        name,
        low_dbmv: Some(low_dbuv - 60.0),
        high_dbmv: Some(high_dbuv - 60.0),
        backing: EN_OUTLET,
        recommended: None,
    }
}

/// Satellite intermediate frequency at an outlet: 47 to 77 dBuV.
pub const SATELLITE: Window = en_outlet("satellite", 47.0, 77.0);
/// Analog TV at an outlet in Europe: 60 to 77 dBuV.
pub const EN_ANALOG_TV: Window = en_outlet("en-analog-tv", 60.0, 77.0);
/// 256-QAM, TV or modem, at an outlet in Europe: 54 to 74 dBuV.
pub const EN_256_QAM: Window = en_outlet("en-256-qam", 54.0, 74.0);
/// 64-QAM, TV or modem, at an outlet in Europe: 47 to 67 dBuV.
pub const EN_64_QAM: Window = en_outlet("en-64-qam", 47.0, 67.0);
/// Antenna TV (DVB-T, 64-QAM) at an outlet in Europe: 45 to 74 dBuV.
pub const EN_ANTENNA_TV: Window = en_outlet("en-antenna-tv", 45.0, 74.0);

/// What is wanted at an outlet in Europe: told beside [`window_of`], and judged nowhere, since nobody says on which side of
/// the ocean a house stands.
pub fn european_windows_of(survey: &Survey, service: ServiceKind) -> &'static [Window] {
    match service {
        ServiceKind::CableTv if cable_tv(survey).name == ANALOG_TV.name => &[EN_ANALOG_TV],
        ServiceKind::CableTv if cable_tv(survey).name == BOTH_TV.name => {
            &[EN_ANALOG_TV, EN_256_QAM, EN_64_QAM]
        }
        ServiceKind::CableTv | ServiceKind::CableInternet => &[EN_256_QAM, EN_64_QAM],
        ServiceKind::AntennaTv => &[EN_ANTENNA_TV],
        _ => &[],
    }
}

/// Meters and our own words show levels in tenths: a level that reads like the edge is not outside, dB.
const SHOWN_APART_DB: f64 = 0.05;

impl Window {
    /// Every window.
    pub const ALL: [Self; 11] = [
        ANALOG_TV,
        DIGITAL_TV,
        BOTH_TV,
        MODEM_RECEIVES,
        MODEM_SENDS,
        ANTENNA_TV,
        SATELLITE,
        EN_ANALOG_TV,
        EN_256_QAM,
        EN_64_QAM,
        EN_ANTENNA_TV,
    ];

    /// Whether a level lies in it, edges included, and what a meter would show as the edge.
    pub fn holds(&self, dbmv: f64) -> bool {
        self.outside_by(dbmv) < SHOWN_APART_DB
    }

    /// By how much a level lies outside, dB; 0 inside.
    pub fn outside_by(&self, dbmv: f64) -> f64 {
        let below = self.low_dbmv.map_or(0.0, |low| low - dbmv);
        let above = self.high_dbmv.map_or(0.0, |high| dbmv - high);
        below.max(above).max(0.0)
    }

    /// By how much a level within it lacks the margin that is recommended, or its range lies outside, dB; 0 where neither does.
    pub(super) fn lacks(&self, level: Span) -> f64 {
        let margin = self.recommended.map_or(0.0, |recommended| {
            (recommended.low_dbmv - level.likely).max(level.likely - recommended.high_dbmv)
        });
        margin.max(self.outside_by(level.low)).max(self.outside_by(level.high)).max(0.0)
    }

    /// Its words: what it is for, and from where it is known.
    pub fn phrase(&self) -> Phrase {
        Phrase::new(format!("window-{}", self.name))
    }

    /// What is recommended, and from where that is known; `None` where nothing narrower is.
    pub fn recommended_phrase(&self) -> Option<Phrase> {
        self.recommended.map(|_| self.phrase().attribute("recommended"))
    }

    /// All that is told of it: what is needed, then what is recommended.
    pub(crate) fn told(&self) -> Vec<Phrase> {
        [Some(self.phrase()), self.recommended_phrase()].into_iter().flatten().collect()
    }

    /// Whether a level keeps the margin that is recommended; any level does where none is.
    pub fn has_margin(&self, dbmv: f64) -> bool {
        self.recommended.is_none_or(|recommended| {
            let outside = (recommended.low_dbmv - dbmv).max(dbmv - recommended.high_dbmv);
            outside < SHOWN_APART_DB
        })
    }
}

/// The window of what a service brings to an outlet; `None` for a service of which no level is known here. Where
/// nobody said whether cable TV is analog or digital, the wider, digital one.
pub fn window_of(survey: &Survey, service: ServiceKind) -> Option<Window> {
    match service {
        ServiceKind::CableTv => Some(cable_tv(survey)),
        ServiceKind::CableInternet => Some(MODEM_RECEIVES),
        ServiceKind::AntennaTv => Some(ANTENNA_TV),
        ServiceKind::SatelliteTv => Some(SATELLITE),
        _ => None,
    }
}

fn cable_tv(survey: &Survey) -> Window {
    let signals = || survey.services_of(ServiceKind::CableTv).filter_map(|service| service.signal);
    let has = |kind: TvSignal| signals().any(|signal| signal == kind || signal == TvSignal::Both);
    match (has(TvSignal::Analog), has(TvSignal::Digital)) {
        (true, false) => ANALOG_TV,
        (true, true) => BOTH_TV,
        (false, _) => DIGITAL_TV,
    }
}

/// The most that a cable modem can send on one channel, dBmV, and what backs it: 3.0, 58 (16-QAM; "DOCSIS 3.0 cable
/// modems", volpefirm.com); 3.1 and later, 65 in all (from memory).
pub fn modem_sends_most(generation: ModemGeneration) -> (f64, Backing) {
    match generation {
        ModemGeneration::V3_0 => (58.0, Backing::Published("\"DOCSIS 3.0 cable modems\", volpefirm.com")),
        ModemGeneration::V3_1 | ModemGeneration::V4_0 => (65.0, Backing::FromMemory),
    }
}

/// The least visual level of an analog channel at a terminal of `ohm`, millivolts: sqrt(0.0133 Z). 47 CFR
/// 76.605(a)(3).
pub fn least_visual_millivolts(ohm: f64) -> f64 {
    (0.0133 * ohm).sqrt()
}

/// The same at the end of a 30 m (100 ft) drop from the tap: 2 sqrt(0.00662 Z). 47 CFR 76.605(a)(3).
pub fn least_visual_millivolts_at_drop(ohm: f64) -> f64 {
    2.0 * (0.00662 * ohm).sqrt()
}

/// A voltage as a level, dBmV: 20 log10 of the voltage over one millivolt.
pub fn level_of_millivolts(millivolts: f64) -> f64 {
    20.0 * millivolts.log10()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// -83, -68, -8 and -5 dBm of ATSC A/74 across 75 ohm: dBmV = dBm + 48.7506 (Application Note 808, 2002).
    #[test]
    fn the_antenna_window_is_a_74s() {
        let recommended = ANTENNA_TV.recommended.map(|margin| [margin.low_dbmv, margin.high_dbmv]);
        let [low, high] = recommended.unwrap_or_default();
        let edges = [ANTENNA_TV.low_dbmv, Some(low), Some(high), ANTENNA_TV.high_dbmv];
        for (edge, dbm) in edges.into_iter().zip([-83.0, -68.0, -8.0, -5.0]) {
            assert!((edge.unwrap_or_default() - (dbm + 48.7506)).abs() < 0.01, "{edge:?} is not {dbm} dBm");
        }
    }

    /// EN 60728-1 in dBuV, read second-hand; dBmV = dBuV - 60 (Application Note 808, 2002).
    #[test]
    fn the_windows_at_outlets_are_en_60728_1s() {
        let dbuv =
            |window: Window| [window.low_dbmv, window.high_dbmv].map(|edge| edge.map(|dbmv| dbmv + 60.0));
        assert_eq!(dbuv(SATELLITE), [Some(47.0), Some(77.0)]);
        assert_eq!(dbuv(EN_ANALOG_TV), [Some(60.0), Some(77.0)]);
        assert_eq!(dbuv(EN_256_QAM), [Some(54.0), Some(74.0)]);
        assert_eq!(dbuv(EN_64_QAM), [Some(47.0), Some(67.0)]);
        assert_eq!(dbuv(EN_ANTENNA_TV), [Some(45.0), Some(74.0)]);
    }

    #[test]
    fn a_margin_ends_before_the_window_does() {
        assert!(ANTENNA_TV.holds(-25.0) && !ANTENNA_TV.has_margin(-25.0) && ANTENNA_TV.has_margin(-15.0));
        assert!(MODEM_RECEIVES.has_margin(7.04) && !MODEM_RECEIVES.has_margin(-8.0));
        assert!(DIGITAL_TV.has_margin(-12.0), "nothing narrower is recommended");
    }

    #[test]
    fn a_level_that_reads_like_the_edge_is_not_outside() {
        assert!(MODEM_RECEIVES.holds(15.0) && MODEM_RECEIVES.holds(15.04) && MODEM_RECEIVES.holds(-15.04));
        assert!(!MODEM_RECEIVES.holds(15.06) && !MODEM_RECEIVES.holds(-15.1));
    }
}
