//! What a part is rated for: typed by a person, or read from its label.

use coax::link::{EXTENDED_D_HIGH, EXTENDED_D_LOW};
use coax::trade::{EDGE_TOLERANCE, LABELS_BEGIN, SATELLITE_HIGH};
use coax::{Decibels, Megahertz};
use label::{self, LabelReading, PowerPass};
use serde::{Deserialize, Serialize};

/// A band of frequencies.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Band {
    /// Lower edge, MHz.
    pub low_mhz: f64,
    /// Upper edge, MHz.
    pub high_mhz: f64,
}

impl Band {
    /// Whether all of `other` lies in this band.
    pub fn contains(self, other: Self) -> bool {
        self.low_mhz <= other.low_mhz && self.high_mhz >= other.high_mhz
    }

    /// Whether the two bands share more than an edge.
    pub fn overlaps(self, other: Self) -> bool {
        self.low_mhz < other.high_mhz && other.low_mhz < self.high_mhz
    }
}

/// The band of retail MoCA adapters, Extended D: 1125 to 1675 MHz (SCTE 235 2017 announcement).
pub const EXTENDED_D: Band = Band { low_mhz: EXTENDED_D_LOW.value(), high_mhz: EXTENDED_D_HIGH.value() };

#[expect(clippy::struct_excessive_bools, reason = "each is a mark that a label carries or not, on its own")]
/// What a part is rated for. Everything not stated stays `None` and becomes a range in the forecast.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct PartRating {
    /// Number of legs, taps or outputs; 0 while not known.
    pub legs: u8,
    /// Loss to each leg, dB; empty while not known.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub leg_losses_db: Vec<f64>,
    /// The band it is made for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub band: Option<Band>,
    /// For a filter: the band it stops.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stop_band: Option<Band>,
    /// For a filter: how much it takes off there, dB.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rejection_db: Option<f64>,
    /// For a tap: loss to the tap ports, dB.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tap_db: Option<f64>,
    /// For an amplifier: forward gain, dB.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gain_db: Option<f64>,
    /// For an amplifier: gain of the return path, dB.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub return_gain_db: Option<f64>,
    /// For an amplifier: upper edge of the return path, MHz.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub return_high_mhz: Option<f64>,
    /// For an amplifier: whether it has a by-pass for the MoCA band; `None` while not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub moca_bypass: Option<bool>,
    /// For an amplifier: whether it has an unamplified port for a modem.
    pub modem_port: bool,
    /// Isolation between legs, dB.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub isolation_db: Option<f64>,
    /// Return loss, dB.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub return_loss_db: Option<f64>,
    /// Whether DC passes: `None` while not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub power_pass: Option<bool>,
    /// For an outlet: whether it, or the box on it, passes the cable on to a next part.
    pub passes_on: bool,
    /// Whether the label says that it is made for MoCA.
    pub says_moca: bool,
    /// Whether the label text was doubtful.
    pub doubtful: bool,
}

/// A label as it is read on its part: of a splitter, so many outputs that were typed tell what a loss on it is.
pub fn read_print(text: &str, is_splitter: bool, outputs: u8) -> LabelReading {
    if is_splitter { label::read_on_splitter(text, outputs) } else { label::read(text) }
}

impl PartRating {
    /// What a label states, as far as its text can be read.
    pub fn of_label(text: &str) -> Self {
        Self::of_reading(&label::read(text))
    }

    /// What a label reading states.
    pub fn of_reading(reading: &LabelReading) -> Self {
        let band = |low: Option<Megahertz>, high: Option<Megahertz>| {
            high.map(|high| Band { low_mhz: low.unwrap_or(LABELS_BEGIN).value(), high_mhz: high.value() })
        };
        let decibels = |figure: Option<Decibels>| figure.map(Decibels::value);
        Self {
            legs: legs(reading),
            leg_losses_db: reading.leg_losses.iter().map(|loss| loss.value()).collect(),
            band: band(reading.low, reading.high),
            stop_band: reading.stop_low.and(band(reading.stop_low, reading.stop_high)),
            rejection_db: decibels(reading.rejection),
            tap_db: decibels(reading.tap),
            gain_db: decibels(reading.gain),
            return_gain_db: decibels(reading.return_gain),
            return_high_mhz: reading.return_high.map(Megahertz::value),
            moca_bypass: reading.moca_bypass,
            modem_port: reading.modem_port == Some(true),
            isolation_db: decibels(reading.isolation),
            return_loss_db: decibels(reading.return_loss),
            power_pass: reading.power_pass.map(PowerPass::passes),
            passes_on: false,
            says_moca: reading.says_moca == Some(true),
            doubtful: !reading.doubts.is_empty(),
        }
    }

    /// One loss that was said of a part is that of each of its outputs: of so many, once they are counted. Losses that differ stay, and so
    /// does one by which more would come out of so many outputs than goes in; of a tap it is that of the way through alone.
    pub fn spread_loss(&mut self, outputs: u8) {
        let Some(&loss) = self.leg_losses_db.first() else { return };
        let are_alike = self.leg_losses_db.windows(2).all(|pair| pair.first() == pair.last());
        let comes_out = f64::from(outputs) * 10_f64.powf(-loss / 10.0);
        if outputs > 0 && are_alike && comes_out <= 1.0 && self.tap_db.is_none() {
            self.leg_losses_db = vec![loss; usize::from(outputs)];
        }
    }

    /// Whether it is made for the whole MoCA band: `None` while neither band nor mark is known.
    pub fn made_for_moca(&self) -> Option<bool> {
        match self.band {
            Some(band) => Some(band.high_mhz >= EXTENDED_D.high_mhz - EDGE_TOLERANCE.value()),
            None if self.says_moca => Some(true),
            None => None,
        }
    }

    /// Of an amplifier: whether it has a by-pass for the MoCA band; `None` while nobody knows. Where nobody said so, the
    /// word for MoCA on its label does, and so does a band that holds all of MoCA's: no amplifier amplifies that both ways.
    /// What reaches up to a dish's signals is made to amplify those, one way.
    pub fn by_pass(&self) -> Option<bool> {
        let reaches = |band: Band| {
            let core =
                Band { low_mhz: EXTENDED_D.low_mhz, high_mhz: EXTENDED_D.high_mhz - EDGE_TOLERANCE.value() };
            band.contains(core) && band.high_mhz < SATELLITE_HIGH.value()
        };
        let printed = self.says_moca || self.band.is_some_and(reaches);
        self.moca_bypass.or(printed.then_some(true))
    }

    /// Whether it stops the whole MoCA band, as a filter does: `None` while that is not said.
    pub fn stops_moca(&self) -> Option<bool> {
        let core = Band {
            low_mhz: EXTENDED_D.low_mhz + EDGE_TOLERANCE.value(),
            high_mhz: EXTENDED_D.high_mhz - EDGE_TOLERANCE.value(),
        };
        match (self.stop_band, self.band) {
            (Some(stop), _) => Some(stop.contains(core)),
            (None, Some(pass)) if pass.overlaps(core) => Some(false),
            (None, _) if self.says_moca || self.rejection_db.is_some() => Some(true),
            (None, _) => None,
        }
    }

    /// This rating, with what it leaves open taken from `other`.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        Self {
            legs: if self.legs == 0 { other.legs } else { self.legs },
            leg_losses_db: if self.leg_losses_db.is_empty() {
                other.leg_losses_db
            } else {
                self.leg_losses_db
            },
            band: self.band.or(other.band),
            stop_band: self.stop_band.or(other.stop_band),
            rejection_db: self.rejection_db.or(other.rejection_db),
            tap_db: self.tap_db.or(other.tap_db),
            gain_db: self.gain_db.or(other.gain_db),
            return_gain_db: self.return_gain_db.or(other.return_gain_db),
            return_high_mhz: self.return_high_mhz.or(other.return_high_mhz),
            moca_bypass: self.moca_bypass.or(other.moca_bypass),
            modem_port: self.modem_port || other.modem_port,
            isolation_db: self.isolation_db.or(other.isolation_db),
            return_loss_db: self.return_loss_db.or(other.return_loss_db),
            power_pass: self.power_pass.or(other.power_pass),
            passes_on: self.passes_on || other.passes_on,
            says_moca: self.says_moca || other.says_moca,
            doubtful: self.doubtful || other.doubtful,
        }
    }
}

/// Outputs by a label: a tap's label counts its taps, and the way through is one output more.
fn legs(reading: &LabelReading) -> u8 {
    let through = u8::from(reading.kind == Some(label::PartKind::Tap));
    reading.legs.map_or(0, |legs| legs.saturating_add(through))
}
