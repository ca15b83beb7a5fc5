//! What a label states, member by member, each sure or not.

use super::SeenPlace;
use super::number::{SeenNumber, SeenUnit};
use super::unsure::Unsure;
use crate::doubt::{Doubt, Quantity};
use crate::reading::LabelReading;

/// Declares the members of a reading that can be suggested, each with the unit of its figures, if it has any.
macro_rules! members {
    ($($(#[$doc:meta])* $variant:ident = $field:ident $(in $unit:ident as $figures:expr)?;)*) => {
        /// One thing that a label states.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Member {
            $($(#[$doc])* $variant,)*
        }

        impl Member {
            /// All of them.
            pub const ALL: &[Self] = &[$(Self::$variant),*];

            /// The name of the reading's member.
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$variant => stringify!($field),)*
                }
            }

            /// Copies this member of a reading into another.
            pub fn copy(self, from: &LabelReading, to: &mut LabelReading) {
                match self {
                    $(Self::$variant => to.$field.clone_from(&from.$field),)*
                }
            }

            /// Its figures, and what they count.
            fn figures(self, reading: &LabelReading) -> Option<(SeenUnit, Vec<f64>)> {
                match self {
                    $(Self::$variant => {
                        members!(@figures reading.$field $(, $unit, $figures)?)
                    })*
                }
            }
        }
    };
    (@figures $field:expr) => { { let _ = &$field; None } };
    (@figures $field:expr, $unit:ident, $figures:expr) => {
        Some((SeenUnit::$unit, $field.iter().map($figures).collect()))
    };
}

members! {
    /// The kind of part.
    Kind = kind;
    /// Outputs that the label counts.
    Legs = legs in Outputs as |legs| f64::from(*legs);
    /// Lower edge of the band that the part is made for.
    Low = low in Megahertz as |edge| edge.value();
    /// Upper edge of it.
    High = high in Megahertz as |edge| edge.value();
    /// Loss from the input to each output.
    LegLosses = leg_losses in Decibels as |loss| loss.value().abs();
    /// Loss to a tap output.
    Tap = tap in Decibels as |loss| loss.value().abs();
    /// Forward gain.
    Gain = gain in Decibels as |gain| gain.value().abs();
    /// Loss in a filter's stop band.
    Rejection = rejection in Decibels as |loss| loss.value().abs();
    /// Isolation between outputs.
    Isolation = isolation in Decibels as |loss| loss.value().abs();
    /// Return loss.
    ReturnLoss = return_loss in Decibels as |loss| loss.value().abs();
    /// Lower edge of a filter's stop band.
    StopLow = stop_low in Megahertz as |edge| edge.value();
    /// Upper edge of it.
    StopHigh = stop_high in Megahertz as |edge| edge.value();
    /// Lower edge of the return band.
    ReturnLow = return_low in Megahertz as |edge| edge.value();
    /// Upper edge of it.
    ReturnHigh = return_high in Megahertz as |edge| edge.value();
    /// Gain in the return band.
    ReturnGain = return_gain in Decibels as |gain| gain.value().abs();
    /// Lower edge of a diplexer's satellite band.
    SatelliteLow = satellite_low in Megahertz as |edge| edge.value();
    /// Upper edge of it.
    SatelliteHigh = satellite_high in Megahertz as |edge| edge.value();
    /// Whether and where direct current passes.
    PowerPass = power_pass;
    /// Whether an amplifier lets the home network's band by.
    MocaBypass = moca_bypass;
    /// Whether an amplifier has an output that is not amplified.
    ModemPort = modem_port;
    /// Whether the label says that the part is made for MoCA.
    SaysMoca = says_moca;
    /// Whether it says that the part is for indoors.
    IndoorOnly = indoor_only;
    /// A cable's series.
    Cable = cable;
}

/// One thing that a label states, as it was seen.
#[derive(Debug, Clone, PartialEq)]
pub struct SeenMember {
    /// Which; its value stands in the suggestion's reading.
    pub member: Member,
    /// Why it is asked; nothing if it is sure.
    pub unsure: Vec<Unsure>,
    /// Where its numbers stand; nothing where it is told by words.
    pub places: Vec<SeenPlace>,
}

impl SeenMember {
    /// Whether nothing speaks against it.
    pub fn is_sure(&self) -> bool {
        self.unsure.is_empty()
    }
}

/// What the rows state that can be believed.
pub(super) struct Certain {
    /// Each row of which both looks saw every letter for certain, by itself.
    pub rows: Vec<LabelReading>,
    /// All whose words are certain, together.
    pub words: LabelReading,
    /// Those of them that were seen whole, together.
    pub whole_words: LabelReading,
}

/// What a text states, by what the looks read by themselves and by what is said of its numbers.
pub(super) fn members(
    reading: &LabelReading,
    of_looks: &[LabelReading; 2],
    numbers: &[SeenNumber],
    certain: &Certain,
) -> Vec<SeenMember> {
    let blank = LabelReading::default();
    let mut members: Vec<SeenMember> = Member::ALL
        .iter()
        .filter_map(|&member| {
            let only = |reading: &LabelReading| {
                let mut only = LabelReading::default();
                member.copy(reading, &mut only);
                only
            };
            let own = only(reading);
            if own == blank {
                return None;
            }
            let mut unsure: Vec<Unsure> = Vec::new();
            if of_looks.iter().any(|look| only(look) != own) {
                unsure.push(Unsure::ReadOtherwise);
            }
            unsure.extend(reading.doubts.iter().filter_map(|doubt| unsure_by(doubt, member)));
            let (unit, mut figures) = member.figures(reading).unwrap_or((SeenUnit::Volts, Vec::new()));
            figures.sort_by(f64::total_cmp);
            figures.dedup();
            let mut places = Vec::new();
            // "DC" begins at nothing: no number stands there.
            for figure in figures.into_iter().filter(|figure| *figure != 0.0) {
                let found: Vec<&SeenNumber> = numbers
                    .iter()
                    .filter(|number| number.unit == unit && (number.value - figure).abs() < 1e-9)
                    .collect();
                if found.is_empty() {
                    unsure.push(Unsure::MeaningUnclear);
                }
                places.extend(found.iter().map(|number| number.place.clone()));
                unsure.extend(found.iter().flat_map(|number| number.unsure.iter().cloned()));
            }
            let states = |reading: &LabelReading| only(reading) == own;
            // The number of a cable's series stands in its name, and counts nothing by itself.
            let is_faint = member == Member::Cable && !certain.rows.iter().any(states);
            // Where a row was not seen whole, “POWER PASS” may be the end of “NO POWER PASS”.
            let is_told = member != Member::Cable && member.figures(reading).is_none();
            if is_faint || is_told && !states(&certain.words) {
                unsure.push(Unsure::Faint);
            } else if is_told && !states(&certain.whole_words) {
                unsure.push(Unsure::Cut);
            }
            let mut once: Vec<Unsure> = Vec::new();
            for why in unsure {
                if !once.contains(&why) {
                    once.push(why);
                }
            }
            Some(SeenMember { member, unsure: once, places })
        })
        .collect();
    // So many losses as outputs were made of one figure: whoever doubts the count doubts them.
    let of_count = members.iter().find(|seen| seen.member == Member::Legs).map(|legs| legs.unsure.clone());
    if let Some(losses) = members.iter_mut().find(|seen| seen.member == Member::LegLosses) {
        for why in of_count.unwrap_or_default() {
            if !losses.unsure.contains(&why) {
                losses.unsure.push(why);
            }
        }
    }
    members
}

/// Adds to numbers what does not fit between them.
pub(super) fn doubt_what_does_not_fit(reading: &LabelReading, numbers: &mut [SeenNumber]) {
    for doubt in &reading.doubts {
        for number in numbers.iter_mut() {
            let is_of_it = match (doubt, number.unit) {
                (Doubt::LossUnusual { loss, .. }, SeenUnit::Decibels) => (number.value - loss).abs() < 1e-9,
                (Doubt::LossUnusual { legs, .. }, SeenUnit::Outputs) => {
                    (number.value - f64::from(*legs)).abs() < 1e-9
                }
                (Doubt::BandBackwards { from, to, .. }, SeenUnit::Megahertz) => {
                    [from, to].into_iter().any(|edge| (number.value - edge).abs() < 1e-9)
                }
                _ => false,
            };
            if is_of_it {
                number.doubt(Unsure::DoesNotFit);
            }
        }
    }
}

/// What a doubt about a text says against a member.
fn unsure_by(doubt: &Doubt, member: Member) -> Option<Unsure> {
    use Member as M;
    let is_band = matches!(
        member,
        M::Low
            | M::High
            | M::StopLow
            | M::StopHigh
            | M::ReturnLow
            | M::ReturnHigh
            | M::SatelliteLow
            | M::SatelliteHigh
    );
    let is_legs = matches!(member, M::Legs | M::LegLosses);
    let quantity = match member {
        M::LegLosses => Some(Quantity::Loss),
        M::Tap => Some(Quantity::Tap),
        M::Gain => Some(Quantity::Gain),
        M::ReturnGain => Some(Quantity::ReturnGain),
        M::Rejection => Some(Quantity::Rejection),
        M::Isolation => Some(Quantity::Isolation),
        M::ReturnLoss => Some(Quantity::ReturnLoss),
        _ => None,
    };
    let unclear = |applies: bool| applies.then_some(Unsure::MeaningUnclear);
    match doubt {
        // Told of each number by itself, or of no number that was read.
        Doubt::NothingRead | Doubt::LettersForDigits { .. } | Doubt::UnitMisread { .. } => None,
        Doubt::Truncated { .. } | Doubt::KindUnclear { .. } => unclear(true),
        Doubt::Unreadable { .. } => unclear(is_band || quantity.is_some() || is_legs),
        Doubt::KindFromBands { .. } => unclear(member == M::Kind),
        Doubt::EdgeUnusual { .. } => is_band.then_some(Unsure::Unusual),
        Doubt::Thousands { .. }
        | Doubt::BandWithoutUnit { .. }
        | Doubt::BandUnitsMixed { .. }
        | Doubt::BandBackwards { .. }
        | Doubt::BandsUnclear { .. }
        | Doubt::BandsJoined { .. }
        | Doubt::PathsAssumed { .. }
        | Doubt::UpperEdgeAlone { .. }
        | Doubt::LowerEdgeAlone { .. }
        | Doubt::FrequencyUnplaced { .. } => unclear(is_band),
        Doubt::LossUnusual { .. } => is_legs.then_some(Unsure::DoesNotFit),
        Doubt::LegsDisagree { .. }
        | Doubt::LegsNotStated { .. }
        | Doubt::UnbalancedAssumed { .. }
        | Doubt::OutputsIncomplete
        | Doubt::PortsAsOutputs { .. }
        | Doubt::LegCountsDiffer { .. }
        | Doubt::LossByBand { .. } => unclear(is_legs),
        Doubt::DecibelsWithoutUnit { .. } | Doubt::DecibelRange { .. } | Doubt::FigureUnplaced { .. } => {
            unclear(quantity.is_some())
        }
        Doubt::FigureUnusual { what, .. } => (quantity == Some(*what)).then_some(Unsure::Unusual),
        Doubt::TwoFigures { what, .. }
        | Doubt::GuaranteedTaken { what }
        | Doubt::FigureAssumed { what, .. } => unclear(quantity == Some(*what)),
        Doubt::PowerPassUnclear => unclear(member == M::PowerPass),
        Doubt::PassiveUnclear => unclear(matches!(member, M::MocaBypass | M::ModemPort)),
    }
}
