//! The figures that matter on a label: what each is, where it stands in a rating, how it is drawn.

use facts::fact::SubjectId;
use house::printed::kind_printed;
use house::rating::{Band, PartRating};
use house::record::{PartKind, field};
use label::LabelReading;
use phrase::{Arg, Phrase};

use super::answer::Answer;
use crate::number::Quantity;
use crate::place::{Key, LabelFigure};
use crate::screen::{Aloud, LabelFigure as FigureOnScreen, PhotoPiece};
use crate::view::ScreenBuilder;

/// The most outputs whose losses are told one by one.
const MOST_LEGS: u8 = 16;

impl LabelFigure {
    /// The figures that matter for a part, as its rating stands.
    pub(super) fn of_part(kind: PartKind, rating: &PartRating) -> Vec<Self> {
        let differ = rating.leg_losses_db.windows(2).any(|pair| pair.first() != pair.last());
        let legs = u8::try_from(rating.leg_losses_db.len()).unwrap_or(MOST_LEGS).min(MOST_LEGS);
        let losses: Vec<Self> =
            if differ { (1..=legs).map(Self::LegLossOf).collect() } else { vec![Self::LegLoss] };
        match kind {
            PartKind::EntryFilter | PartKind::HighPassFilter => {
                vec![Self::Low, Self::High, Self::StopLow, Self::StopHigh]
            }
            PartKind::Amplifier => vec![Self::Legs, Self::Low, Self::High, Self::Gain, Self::ReturnHigh],
            PartKind::Tap => [vec![Self::Legs], losses, vec![Self::Low, Self::High, Self::TapLoss]].concat(),
            _ => [vec![Self::Legs], losses, vec![Self::Low, Self::High]].concat(),
        }
    }

    /// The key of the place where it is typed.
    pub(super) fn key_to_type(self) -> Key {
        match self {
            Self::Legs => Key::Legs,
            Self::LegLoss => Key::LegLoss,
            Self::LegLossOf(leg) => Key::LegLossOf(leg),
            Self::Low => Key::Low,
            Self::High => Key::High,
            Self::StopLow => Key::StopLow,
            Self::StopHigh => Key::StopHigh,
            Self::TapLoss => Key::TapLoss,
            Self::Gain => Key::Gain,
            Self::ReturnHigh => Key::ReturnHigh,
        }
    }

    /// What it is, in words.
    pub(super) fn phrase(self) -> Phrase {
        match self {
            Self::LegLossOf(leg) => {
                Phrase::new("figure-leg-loss-of").with("port", Arg::Count(u64::from(leg)))
            }
            other => Phrase::new(format!("figure-{}", other.name())),
        }
    }

    pub(super) const fn quantity(self) -> Quantity {
        match self {
            Self::Legs => Quantity::Count,
            Self::LegLoss | Self::LegLossOf(_) | Self::TapLoss | Self::Gain => Quantity::Loss,
            Self::Low | Self::High | Self::StopLow | Self::StopHigh | Self::ReturnHigh => Quantity::Frequency,
        }
    }

    /// What a rating says of it.
    pub(super) fn of(self, rating: &PartRating) -> Option<f64> {
        match self {
            Self::Legs => (rating.legs > 0).then(|| f64::from(rating.legs)),
            Self::LegLoss => rating.leg_losses_db.first().copied(),
            Self::LegLossOf(leg) => rating.leg_losses_db.get(usize::from(leg).saturating_sub(1)).copied(),
            Self::Low => rating.band.map(|band| band.low_mhz),
            Self::High => rating.band.map(|band| band.high_mhz),
            Self::StopLow => rating.stop_band.map(|band| band.low_mhz),
            Self::StopHigh => rating.stop_band.map(|band| band.high_mhz),
            Self::TapLoss => rating.tap_db,
            Self::Gain => rating.gain_db,
            Self::ReturnHigh => rating.return_high_mhz,
        }
    }

    pub(super) fn put(self, rating: &mut PartRating, value: f64) {
        let low =
            |band: Option<Band>| Band { low_mhz: value, high_mhz: band.map_or(value, |band| band.high_mhz) };
        let high =
            |band: Option<Band>| Band { low_mhz: band.map_or(5.0, |band| band.low_mhz), high_mhz: value };
        match self {
            // A count is at most 64, as `number` sees to.
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count of 0 to 64")]
            Self::Legs => {
                rating.legs = value as u8;
                rating.spread_loss(rating.legs);
            }
            Self::LegLoss => rating.leg_losses_db = vec![value; usize::from(rating.legs.max(1))],
            Self::LegLossOf(leg) => {
                let place = usize::from(leg).saturating_sub(1);
                if rating.leg_losses_db.len() <= place {
                    rating.leg_losses_db.resize(place + 1, value);
                }
                if let Some(loss) = rating.leg_losses_db.get_mut(place) {
                    *loss = value;
                }
            }
            Self::Low => rating.band = Some(low(rating.band)),
            Self::High => rating.band = Some(high(rating.band)),
            Self::StopLow => rating.stop_band = Some(low(rating.stop_band)),
            Self::StopHigh => rating.stop_band = Some(high(rating.stop_band)),
            Self::TapLoss => rating.tap_db = Some(value),
            Self::Gain => rating.gain_db = Some(value),
            Self::ReturnHigh => rating.return_high_mhz = Some(value),
        }
    }

    /// A value of it, in words.
    pub(super) fn value_said(self, value: f64) -> Arg {
        match self.quantity() {
            Quantity::Loss => Arg::Loss(value),
            Quantity::Frequency => Arg::Frequency(value),
            _ => Arg::Text(format!("{value}")),
        }
    }
}

/// What a touch on a figure does, and what it has done.
pub(super) struct State {
    /// None where a touch cannot change what counts.
    pub(super) key: Option<Key>,
    pub(super) taken: bool,
    pub(super) picked: bool,
    /// Why it is asked.
    pub(super) doubt: String,
    /// Where it stands in a photo.
    pub(super) piece: Option<PhotoPiece>,
    /// What it says.
    pub(super) value: Option<f64>,
}

pub(super) fn figures(
    builder: &ScreenBuilder<'_>,
    of: Vec<LabelFigure>,
    state: impl Fn(LabelFigure) -> State,
) -> Vec<FigureOnScreen> {
    of.into_iter()
        .map(|figure| {
            let State { key, taken, picked, doubt, piece, value } = state(figure);
            let says = value.map_or_else(
                || Phrase::new("figure-not-stated"),
                |value| Phrase::new("figure-says").with("value", figure.value_said(value)),
            );
            FigureOnScreen {
                id: figure.name(),
                aloud: Aloud::default(),
                picked,
                key: key.map(|key| key.to_string()),
                name: builder.say(&figure.phrase()),
                says: builder.say(&says),
                taken: taken && value.is_some(),
                doubt,
                piece,
            }
        })
        .collect()
}

/// A part of unknown kind is what its label says that it is.
pub(super) fn kind_from(
    answer: Answer,
    known: Option<PartKind>,
    part: SubjectId,
    reading: &LabelReading,
) -> Answer {
    match reading.kind.and_then(kind_printed).filter(|_| known == Some(PartKind::Unknown)) {
        Some(kind) => answer.says(part, field::part::KIND, &kind),
        None => answer,
    }
}
