//! Splitters, taps and amplifiers: how many legs, how powered, where a loose part gets its signal.

use advice::finding::Caution;
use facts::fact::SubjectId;
use house::naming;
use house::record::reading_order;
use house::record::{Feed, PartKind, field};
use phrase::Phrase;
use serde_json::json;

use super::leads_to::join;
use super::{Answer, Question, Told, free_tag, not_answered};
use crate::number::Quantity;
use crate::screen::WordsRole;
use crate::session::Scene;
use crate::view::{Offer, Sketch, UNSURE};

pub(super) fn draw_legs(scene: &Scene<'_>, sketch: &mut Sketch<'_>, part: SubjectId) {
    let legs = scene.survey.parts.get(&part).map(|part| part.rating.legs).filter(|legs| *legs > 0);
    sketch.number("legs", &Question::Legs(part).phrase(scene), None, Quantity::Count, legs.map(f64::from));
}

pub(super) fn take_legs(scene: &Scene<'_>, part: SubjectId) -> Told<Answer> {
    let legs = scene.pending().number("legs", Quantity::Count)?.ok_or_else(not_answered)?;
    if !(1.0..=16.0).contains(&legs) {
        return Err(Phrase::new("legs-out-of-range").into());
    }
    let mut rating = scene.survey.parts.get(&part).map(|part| part.rating.clone()).unwrap_or_default();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "1 to 16")]
    let legs = legs as u8;
    rating.legs = legs;
    Answer::new().says(part, field::RATING, &rating)
}

pub(super) fn draw_powered(scene: &Scene<'_>, sketch: &mut Sketch<'_>, part: SubjectId) {
    let offer = |key: &str| Offer::new(key, Phrase::new(format!("powered-{key}")));
    let now = scene.survey.answer(part, "powered").and_then(|answer| answer.as_str());
    let now: Vec<_> = now.map(str::to_owned).into_iter().collect();
    let offers = vec![offer("plug"), offer("coax"), offer("off"), Offer::unsure()];
    sketch.choice("powered", &Question::Powered(part).phrase(scene), false, offers, &now);
    sketch.caution(&Caution::PoweredLeg.phrase());
}

pub(super) fn take_powered(scene: &Scene<'_>, part: SubjectId) -> Told<Answer> {
    match scene.pending().one("powered").ok_or_else(not_answered)? {
        told @ ("plug" | "coax" | "off" | UNSURE) => Ok(Answer::new().asked(part, "powered", told)),
        _ => Err(not_answered()),
    }
}

/// Free ports that may feed a loose part, by key `part/port`.
fn feeders(scene: &Scene<'_>, loose: SubjectId) -> Vec<(String, SubjectId, u8)> {
    let survey = scene.survey;
    let mut found = Vec::new();
    let parts = reading_order(survey).into_iter().filter_map(|id| survey.parts.get(&id));
    for part in parts.filter(|part| part.kind != PartKind::Outlet || part.rating.passes_on) {
        if survey.wiring.head_of(part.id) == survey.wiring.head_of(loose) {
            continue;
        }
        for port in (1..=part.outputs()).filter(|port| survey.wiring.on_port(part.id, *port).next().is_none())
        {
            found.push((format!("port:{}/{port}", part.id), part.id, port));
        }
    }
    // A port with a cable of which nobody knows where it leads comes first.
    found.sort_by_key(|(_, part, port)| {
        let end = survey.parts.get(part).and_then(|part| part.end(*port));
        (end != Some(house::record::PortEnd::LooseEnd), end == Some(house::record::PortEnd::Capped))
    });
    found.truncate(150);
    found
}

pub(super) fn draw_fed_by(scene: &Scene<'_>, sketch: &mut Sketch<'_>, part: SubjectId) {
    let mut offers: Vec<_> = feeders(scene, part)
        .into_iter()
        .map(|(key, feeder, port)| Offer::new(key, naming::port(scene.survey, feeder, port)))
        .collect();
    offers.push(Offer::new("outside", Phrase::new("fed-by-outside")));
    offers.push(Offer::new("nothing", Phrase::new("fed-by-nothing")));
    offers.push(Offer::unsure());
    let unsure = scene.survey.answer(part, "fed-by").and_then(|answer| answer.as_str());
    let now: Vec<_> = unsure.map(str::to_owned).into_iter().collect();
    sketch.words(WordsRole::How, &Phrase::new("fed-by-how"));
    sketch.choice("feeder", &Question::FedBy(part).phrase(scene), false, offers, &now);
    super::house::caution_of_dependents(scene, sketch);
}

pub(super) fn take_fed_by(scene: &Scene<'_>, part: SubjectId) -> Told<Answer> {
    match scene.pending().one("feeder").ok_or_else(not_answered)? {
        "nothing" => Answer::new().says(part, field::FEED, &Feed::Nothing),
        // A way in that nobody had come to yet.
        "outside" => {
            let entry = SubjectId::random();
            let answer = Answer::new().is(entry, "part").says(entry, field::KIND, &PartKind::Entry)?;
            let tag = free_tag(scene.survey, PartKind::Entry, 0);
            join(answer.plain(entry, field::TAG, json!(tag)), part, entry, 1)
        }
        UNSURE => Ok(Answer::new().asked(part, "fed-by", UNSURE)),
        picked => {
            let feeders = feeders(scene, part);
            let (_, feeder, port) =
                feeders.into_iter().find(|(key, ..)| key == picked).ok_or_else(not_answered)?;
            let mut answer = Answer::new();
            let has_end = scene.survey.parts.get(&feeder).is_some_and(|part| part.end(port).is_some());
            if has_end {
                answer = answer.plain(feeder, field::end_field(port), json!(null));
            }
            join(answer, part, feeder, port)
        }
    }
}
