//! What is printed on a part: photo, text, and the figures in it, each taken or corrected by a touch.

use facts::fact::SubjectId;
use house::rating::{Band, PartRating};
use house::record::{PartKind, field};
use label::{self, LabelReading, PartKind as Printed};
use phrase::{Arg, Phrase};
use serde_json::json;

use super::{Answer, Question, Told};
use crate::number::Quantity;
use crate::place::Place;
use crate::screen::{Aloud, LabelBlock, LabelFigure, WordsRole, WritingKind};
use crate::session::Scene;
use crate::view::{Sketch, UNSURE};

/// A figure that a label may state, and that can be corrected.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Figure {
    Legs,
    /// The loss to every output.
    LegLoss,
    /// The loss to one output, where they differ.
    LegLossOf(u8),
    Low,
    High,
    StopLow,
    StopHigh,
    TapLoss,
    Gain,
    ReturnHigh,
}

/// The most outputs whose losses are told one by one.
const MOST_LEGS: u8 = 16;

impl Figure {
    /// The figures that matter for a part, as its rating stands.
    fn of_part(kind: PartKind, rating: &PartRating) -> Vec<Self> {
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

    /// Its name in keys; for one output with its number.
    fn name(self) -> String {
        match self {
            Self::Legs => "legs".into(),
            Self::LegLoss => "leg-loss".into(),
            Self::LegLossOf(leg) => format!("leg-loss-{leg}"),
            Self::Low => "low".into(),
            Self::High => "high".into(),
            Self::StopLow => "stop-low".into(),
            Self::StopHigh => "stop-high".into(),
            Self::TapLoss => "tap-loss".into(),
            Self::Gain => "gain".into(),
            Self::ReturnHigh => "return-high".into(),
        }
    }

    /// What it is, in words.
    fn phrase(self) -> Phrase {
        match self {
            Self::LegLossOf(leg) => {
                Phrase::new("figure-leg-loss-of").with("port", Arg::Count(u64::from(leg)))
            }
            other => Phrase::new(format!("figure-{}", other.name())),
        }
    }

    const fn quantity(self) -> Quantity {
        match self {
            Self::Legs => Quantity::Count,
            Self::LegLoss | Self::LegLossOf(_) | Self::TapLoss | Self::Gain => Quantity::Loss,
            Self::Low | Self::High | Self::StopLow | Self::StopHigh | Self::ReturnHigh => Quantity::Frequency,
        }
    }

    /// What a rating says of it.
    fn of(self, rating: &PartRating) -> Option<f64> {
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

    fn put(self, rating: &mut PartRating, value: f64) {
        let low =
            |band: Option<Band>| Band { low_mhz: value, high_mhz: band.map_or(value, |band| band.high_mhz) };
        let high =
            |band: Option<Band>| Band { low_mhz: band.map_or(5.0, |band| band.low_mhz), high_mhz: value };
        match self {
            // A count is at most 64, as `number` sees to.
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count of 0 to 64")]
            Self::Legs => rating.legs = value as u8,
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

    fn written(quantity: Quantity, value: f64) -> Phrase {
        let arg = match quantity {
            Quantity::Loss => Arg::Loss(value),
            Quantity::Frequency => Arg::Frequency(value),
            _ => Arg::Text(format!("{value}")),
        };
        Phrase::new("figure-says").with("value", arg)
    }
}

/// The key under which print recognised in a photo is kept.
const PRINT: &str = "recognised";

pub(super) fn draw_label(scene: &Scene<'_>, sketch: &mut Sketch<'_>, part: SubjectId) {
    let Some(found) = scene.survey.parts.get(&part) else { return };
    if let Some(tag) = &found.tag {
        sketch.words(WordsRole::How, &Phrase::new("write-tag").text("tag", tag));
    }
    crate::view::photo_slot(scene, sketch, "label-photo", part, house::record::PhotoRole::Label);
    sketch.reads_print(PRINT);
    let hint = Phrase::new("ask-label.hint");
    let now = found.label.clone().unwrap_or_default();
    sketch.writing("text", &Phrase::new("label-text"), Some(&hint), WritingKind::Print, &now);
    // A place for what is recognised in the photo: number by number, each waits for a touch.
    if let Some(text) = scene.pending().written(PRINT) {
        let rating = PartRating::of_label(text);
        let taken = scene.pending().picked("taken").unwrap_or_default();
        let figures = figures(sketch, found.kind, &rating, |name| {
            let is_taken = taken.iter().any(|one| one == name);
            State { key: Some(format!("take:{name}")), taken: is_taken, picked: is_taken }
        });
        let block = LabelBlock {
            id: String::new(),
            aloud: Aloud::default(),
            name: String::new(),
            photo: label_photo(scene, part),
            text: text.to_owned(),
            figures,
            doubts: Vec::new(),
        };
        sketch.label(&Phrase::new("label-recognised"), block);
    }
}

fn label_photo(scene: &Scene<'_>, part: SubjectId) -> Option<String> {
    let photos = scene.survey.photos_of(Some(part));
    photos
        .max_by_key(|photo| photo.role == Some(house::record::PhotoRole::Label))
        .map(|photo| photo.id.to_string())
}

/// What a touch on a figure does, and what it has done.
struct State {
    key: Option<String>,
    taken: bool,
    picked: bool,
}

fn figures(
    sketch: &Sketch<'_>,
    kind: PartKind,
    rating: &PartRating,
    state: impl Fn(&str) -> State,
) -> Vec<LabelFigure> {
    Figure::of_part(kind, rating)
        .into_iter()
        .map(|figure| {
            let State { key, taken, picked } = state(&figure.name());
            let value = figure.of(rating);
            let says = value.map_or_else(
                || Phrase::new("figure-not-stated"),
                |value| Figure::written(figure.quantity(), value),
            );
            LabelFigure {
                id: figure.name(),
                aloud: Aloud::default(),
                picked,
                key,
                name: sketch.say(&figure.phrase()),
                says: sketch.say(&says),
                taken: taken && value.is_some(),
                doubt: String::new(),
            }
        })
        .collect()
}

pub(super) fn take_label(scene: &Scene<'_>, part: SubjectId) -> Told<Answer> {
    let pending = scene.pending();
    let known = scene.survey.parts.get(&part);
    let text = pending.written("text").or_else(|| known?.label.as_deref()).unwrap_or_default();
    let taken = pending.picked("taken").unwrap_or_default();
    if text.is_empty() && taken.is_empty() {
        return Ok(Answer::new().asked(part, "label", UNSURE));
    }
    let mut answer = Answer::new();
    if !text.is_empty() {
        answer = answer.plain(part, field::LABEL, json!(text));
        answer = kind_from(answer, known.map(|part| part.kind), part, &label::read(text))?;
    }
    if let Some(recognised) = pending.written(PRINT).filter(|_| !taken.is_empty()) {
        let read = PartRating::of_label(recognised);
        let mut rating = PartRating::default();
        let kind = known.map_or(PartKind::Unknown, |part| part.kind);
        for figure in Figure::of_part(kind, &read) {
            if let Some(value) = figure.of(&read).filter(|_| taken.contains(&figure.name())) {
                figure.put(&mut rating, value);
            }
        }
        answer = answer.says(part, field::RATING, &rating)?;
    }
    Ok(answer.then(Place::Ask(Question::LabelRead(part))))
}

/// A part of unknown kind is what its label says that it is.
fn kind_from(
    answer: Answer,
    known: Option<PartKind>,
    part: SubjectId,
    reading: &LabelReading,
) -> Told<Answer> {
    match reading.kind.and_then(kind_printed).filter(|_| known == Some(PartKind::Unknown)) {
        Some(kind) => answer.says(part, field::KIND, &kind),
        None => Ok(answer),
    }
}

/// The kind of part that a print tells of; none for print that is on no part of its own.
pub(crate) fn kind_printed(printed: Printed) -> Option<PartKind> {
    Some(match printed {
        Printed::Splitter | Printed::SatelliteSplitter => PartKind::Splitter,
        Printed::Tap => PartKind::Tap,
        Printed::Amplifier => PartKind::Amplifier,
        Printed::EntryFilter => PartKind::EntryFilter,
        Printed::GroundBlock => PartKind::GroundBlock,
        Printed::Barrel => PartKind::Barrel,
        Printed::Attenuator => PartKind::Pad,
        Printed::HighPassFilter => PartKind::HighPassFilter,
        Printed::SatelliteCombiner => PartKind::SatelliteCombiner,
        _ => return None,
    })
}

pub(super) fn draw_read(scene: &Scene<'_>, sketch: &mut Sketch<'_>, part: SubjectId) {
    let Some(found) = scene.survey.parts.get(&part) else { return };
    let text = found.label.clone().unwrap_or_default();
    let fixing = scene.pending().picked("fix").unwrap_or_default();
    let figures = figures(sketch, found.kind, &found.rating, |name| {
        let picked = fixing.iter().any(|one| one == name);
        State { key: Some(format!("fix:{name}")), taken: true, picked }
    });
    let doubts = if text.is_empty() {
        Vec::new()
    } else {
        telling::doubts::said(&label::read(&text).doubts, scene.language)
    };
    let block = LabelBlock {
        id: String::new(),
        aloud: Aloud::default(),
        name: String::new(),
        photo: label_photo(scene, part),
        text,
        figures,
        doubts,
    };
    sketch.label(&Phrase::new("label-as-read"), block);
    for figure in Figure::of_part(found.kind, &found.rating) {
        if fixing.contains(&figure.name()) {
            let now = figure.of(&found.rating);
            sketch.number(&figure.name(), &figure.phrase(), None, figure.quantity(), now);
        }
    }
}

pub(super) fn take_read(scene: &Scene<'_>, part: SubjectId) -> Told<Answer> {
    let mut answer = Answer::new().asked(part, "label-read", "yes");
    let Some(found) = scene.survey.parts.get(&part) else { return Ok(answer) };
    let mut rating = found.rating.clone();
    for figure in Figure::of_part(found.kind, &found.rating) {
        if let Some(value) = scene.pending().number(&figure.name(), figure.quantity())? {
            figure.put(&mut rating, value);
        }
    }
    if rating != found.rating {
        rating.doubtful = false;
        answer = answer.says(part, field::RATING, &rating)?;
    }
    Ok(answer)
}
