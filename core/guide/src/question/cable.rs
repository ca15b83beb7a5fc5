//! The cables between parts: series, length, connectors.

use advice::finding::Caution;
use coax::quantity::METRES_PER_FOOT;
use facts::fact::SubjectId;
use house::record::{CableKind, Connector, LengthKnown, RunLength, field};
use phrase::Phrase;

use super::{Answer, Question, Told, not_answered};
use crate::number::Quantity;
use crate::place::Place;
use crate::screen::{PressWeight, WordsRole};
use crate::session::Scene;
use crate::view::{Offer, Sketch, UNSURE};

const SERIES: [(&str, CableKind); 4] = [
    ("six", CableKind::Six),
    ("fifty_nine", CableKind::FiftyNine),
    ("seven", CableKind::Seven),
    ("eleven", CableKind::Eleven),
];

const CONNECTORS: [(&str, Connector); 7] = [
    ("compression", Connector::Compression),
    ("crimp", Connector::Crimp),
    ("push_on", Connector::PushOn),
    ("twist_on", Connector::TwistOn),
    ("corroded", Connector::Corroded),
    ("hand_tight", Connector::HandTight),
    ("bad_joint", Connector::BadJoint),
];

const KNOWN: [(&str, LengthKnown); 3] =
    [("measured", LengthKnown::Measured), ("paced", LengthKnown::Paced), ("guessed", LengthKnown::Guessed)];

fn series_offers() -> Vec<Offer> {
    let words = |key: &str| Phrase::new(format!("cable-{key}"));
    SERIES.iter().map(|(key, _)| Offer::new(*key, words(key)).about(words(key).attribute("about"))).collect()
}

pub(super) fn draw_all(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let mut offers = series_offers();
    offers.push(Offer::new("differ", Phrase::new("cable-differ")));
    offers.push(Offer::unsure());
    let now = scene.survey.answer(scene.survey.id, "cables").and_then(|answer| answer.as_str());
    let now: Vec<_> = now.map(str::to_owned).into_iter().collect();
    sketch.choice("series", &Phrase::new("ask-cables"), false, offers, &now);
    sketch.caution(&Caution::Heights.phrase());
}

/// One answer for all cables of which nobody said more; where they differ, each is asked about.
pub(super) fn take_all(scene: &Scene<'_>) -> Told<Answer> {
    let picked = scene.pending().one("series").ok_or_else(not_answered)?;
    let mut answer = Answer::new().asked(scene.survey.id, "cables", picked);
    match SERIES.iter().find(|(key, _)| *key == picked) {
        Some((_, series)) => {
            for run in scene.survey.runs.values().filter(|run| run.cable == CableKind::Unknown) {
                answer = answer.says(run.id, field::CABLE, series)?;
            }
        }
        None if picked == "differ" || picked == UNSURE => {}
        None => return Err(not_answered()),
    }
    Ok(answer)
}

pub(super) fn draw_one(scene: &Scene<'_>, sketch: &mut Sketch<'_>, run: SubjectId) {
    let mut offers = series_offers();
    offers.push(Offer::unsure());
    let series = scene.survey.runs.get(&run).map(|run| run.cable);
    let mut now: Vec<String> =
        SERIES.iter().filter(|(_, of)| Some(*of) == series).map(|(key, _)| (*key).to_owned()).collect();
    if now.is_empty() && scene.survey.answer(run, "cable").is_some() {
        now.push(UNSURE.into());
    }
    sketch.choice("series", &Question::Cable(run).phrase(scene), false, offers, &now);
}

pub(super) fn take_one(scene: &Scene<'_>, run: SubjectId) -> Told<Answer> {
    match scene.pending().one("series").ok_or_else(not_answered)? {
        UNSURE => Answer::new().asked(run, "cable", UNSURE).says(run, field::CABLE, &CableKind::Unknown),
        picked => {
            let (_, series) = SERIES.iter().find(|(key, _)| *key == picked).ok_or_else(not_answered)?;
            Answer::new().says(run, field::CABLE, series)
        }
    }
}

pub(super) fn draw_length(scene: &Scene<'_>, sketch: &mut Sketch<'_>, run: SubjectId) {
    let length = scene.survey.runs.get(&run).and_then(|run| run.length);
    let hint = Phrase::new("ask-length.hint");
    sketch.number(
        "length",
        &Phrase::new("length"),
        Some(&hint),
        Quantity::Length,
        length.map(|length| length.metres),
    );
    let offers =
        KNOWN.iter().map(|(key, _)| Offer::new(*key, Phrase::new(format!("how-long-{key}")))).collect();
    let now = length.map(|length| length.known);
    let now: Vec<_> =
        KNOWN.iter().filter(|(_, of)| Some(*of) == now).map(|(key, _)| (*key).to_owned()).collect();
    sketch.choice("known", &Phrase::new("how-long-known"), false, offers, &now);
    sketch.press("marks", &Phrase::new("how-long-from-marks"), PressWeight::Other);
    sketch.caution(&Caution::Heights.phrase());
}

pub(super) fn take_length(scene: &Scene<'_>, run: SubjectId) -> Told<Answer> {
    let pending = scene.pending();
    let before = scene.survey.runs.get(&run).and_then(|run| run.length);
    let metres = pending
        .number("length", Quantity::Length)?
        .or(before.map(|length| length.metres))
        .ok_or_else(not_answered)?;
    let picked = pending.one("known");
    let known = KNOWN.iter().find(|(key, _)| Some(*key) == picked).map(|(_, known)| *known);
    // Who does not say how is taken to have guessed.
    let known = known.or(before.map(|length| length.known)).unwrap_or(LengthKnown::Guessed);
    Answer::new().says(run, field::LENGTH, &RunLength::stated(metres, known))
}

pub(super) fn draw_marks(scene: &Scene<'_>, sketch: &mut Sketch<'_>, run: SubjectId) {
    sketch.words(WordsRole::How, &Question::Marks(run).phrase(scene).attribute("how-far"));
    sketch.number("near", &Phrase::new("marks-one-end"), None, Quantity::Count, None);
    sketch.number("far", &Phrase::new("marks-other-end"), None, Quantity::Count, None);
    let offers = ["ft", "m"].map(|unit| Offer::new(unit, Phrase::new(format!("marks-{unit}")))).into();
    sketch.choice("unit", &Phrase::new("marks-unit"), false, offers, &["ft".to_owned()]);
}

pub(super) fn take_marks(scene: &Scene<'_>, run: SubjectId) -> Told<Answer> {
    let mark = |key: &str| {
        let (typed, _) = scene.pending().typed(key)?;
        typed.trim().replace(',', "").parse::<f64>().ok().filter(|mark| (0.0..1e6).contains(mark))
    };
    let unit = scene.pending().one("unit").unwrap_or("ft");
    let (Some(near), Some(far)) = (mark("near"), mark("far")) else {
        return Err(Phrase::new("marks-not-read").into());
    };
    let metres = (near - far).abs() * if unit == "m" { 1.0 } else { METRES_PER_FOOT };
    if metres > 500.0 {
        return Err(Phrase::new("marks-too-far-apart").into());
    }
    Answer::new().says(run, field::LENGTH, &RunLength::stated(metres, LengthKnown::Measured))
}

pub(super) fn draw_connectors(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let offer = |key: &str| Offer::new(key, Phrase::new(format!("connectors-{key}")));
    let offers = vec![offer("good"), offer("some"), Offer::unsure()];
    let now = scene.survey.answer(scene.survey.id, "connectors").and_then(|answer| answer.as_str());
    let now: Vec<_> = now.map(str::to_owned).into_iter().collect();
    sketch.choice("connectors", &Phrase::new("ask-connectors"), false, offers, &now);
}

pub(super) fn take_connectors(scene: &Scene<'_>) -> Told<Answer> {
    let picked = scene.pending().one("connectors").ok_or_else(not_answered)?;
    let mut answer = Answer::new().asked(scene.survey.id, "connectors", picked);
    match picked {
        "good" => {
            for run in scene.survey.runs.values() {
                for (name, connector) in
                    [(field::CONNECTOR_NEAR, run.connector_near), (field::CONNECTOR_FAR, run.connector_far)]
                {
                    if connector == Connector::Unknown {
                        answer = answer.says(run.id, name, &Connector::Compression)?;
                    }
                }
            }
        }
        "some" | UNSURE => {}
        _ => return Err(not_answered()),
    }
    Ok(answer)
}

pub(super) fn draw_connectors_of(scene: &Scene<'_>, sketch: &mut Sketch<'_>, run: SubjectId) {
    let found = scene.survey.runs.get(&run);
    for (key, connector) in
        [("near", found.map(|run| run.connector_near)), ("far", found.map(|run| run.connector_far))]
    {
        let words = |name: &str| Phrase::new(format!("plug-{name}"));
        let mut offers: Vec<_> = CONNECTORS.iter().map(|(name, _)| Offer::new(*name, words(name))).collect();
        offers.push(Offer::unsure());
        let now = CONNECTORS.iter().filter(|(_, of)| Some(*of) == connector);
        let now: Vec<_> = now.map(|(name, _)| (*name).to_owned()).collect();
        sketch.choice(key, &Phrase::new(format!("plug-at-{key}")), false, offers, &now);
    }
}

pub(super) fn take_connectors_of(scene: &Scene<'_>, run: SubjectId) -> Told<Answer> {
    let mut answer = Answer::new().asked(run, "connectors", "yes");
    for (key, name) in [("near", field::CONNECTOR_NEAR), ("far", field::CONNECTOR_FAR)] {
        if let Some(picked) = scene.pending().one(key) {
            let found = CONNECTORS.iter().find(|(of, _)| *of == picked);
            answer =
                answer.says(run, name, &found.map_or(Connector::Unknown, |(_, connector)| *connector))?;
        }
    }
    Ok(answer)
}

/// Where a press on the length's screen leads.
pub(crate) fn pressed(run: SubjectId, key: &str) -> Option<Place> {
    (key == "marks").then_some(Place::Ask(Question::Marks(run)))
}
