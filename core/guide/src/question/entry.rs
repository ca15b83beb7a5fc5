//! Where cables come into the house: what comes in, whether it is joined, the ground block, the entry filter.

use advice::finding::Caution;
use facts::fact::SubjectId;
use house::record::{EntryKind, EntryState, Feed, FeedFrom, PartKind, field};
use phrase::Phrase;
use serde_json::json;

use super::leads_to::jumper;
use super::{Answer, Question, Told, free_tag, not_answered};
use crate::session::Scene;
use crate::view::{Offer, Sketch, UNSURE};

/// What may come in, in the order in which it is offered.
const WAYS: [(&str, EntryKind); 4] = [
    ("cable", EntryKind::Cable),
    ("antenna", EntryKind::Antenna),
    ("satellite", EntryKind::Satellite),
    ("fibre_box", EntryKind::FibreBox),
];

fn entries<'a>(scene: &Scene<'a>) -> impl Iterator<Item = (SubjectId, EntryKind)> + use<'a> {
    let parts = scene.survey.parts.values();
    parts.filter(|part| part.kind == PartKind::Entry).map(|part| (part.id, part.entry_kind))
}

pub(super) fn draw_ways_in(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let mut offers: Vec<_> = WAYS
        .iter()
        .map(|(key, _)| {
            let words = Phrase::new(format!("way-in-{key}"));
            Offer::new(*key, words.clone()).about(words.attribute("about"))
        })
        .collect();
    offers.push(Offer::unsure());
    let now: Vec<_> = entries(scene)
        .map(|(_, kind)| WAYS.iter().find(|(_, of)| *of == kind).map_or(UNSURE, |(key, _)| *key).to_owned())
        .collect();
    sketch.choice("ways", &Phrase::new("ask-ways-in"), true, offers, &now);
    sketch.caution(&Caution::HouseSideOnly.phrase());
    sketch.caution(&Caution::Heights.phrase());
    sketch.caution(&Caution::Fibre.phrase());
}

/// An entry for each kind of cable that comes in. One that is there already stays; it is removed on its own page.
pub(super) fn take_ways_in(scene: &Scene<'_>) -> Told<Answer> {
    let picked =
        scene.pending().picked("ways").filter(|picked| !picked.is_empty()).ok_or_else(not_answered)?;
    let mut answer = Answer::new().asked(scene.survey.id, "ways-in", "yes");
    let there: Vec<_> = entries(scene).map(|(_, kind)| kind).collect();
    let mut tag = 0;
    for (key, kind) in WAYS.into_iter().chain([(UNSURE, EntryKind::Unknown)]) {
        if picked.iter().any(|one| one == key) && !there.contains(&kind) {
            let id = SubjectId::random();
            answer = answer.is(id, "part").says(id, field::KIND, &PartKind::Entry)?;
            answer = answer.says(id, field::ENTRY_KIND, &kind)?;
            answer = answer.plain(id, field::TAG, json!(free_tag(scene.survey, PartKind::Entry, tag)));
            tag += 1;
        }
    }
    Ok(answer)
}

pub(super) fn draw_joined(scene: &Scene<'_>, sketch: &mut Sketch<'_>, entry: SubjectId) {
    let now = scene.survey.parts.get(&entry).map(|part| match part.entry_state {
        EntryState::Connected => "connected",
        EntryState::CutOff => "cut_off",
        EntryState::Unknown => "",
    });
    let unsure = scene.survey.answer(entry, "joined").and_then(|answer| answer.as_str());
    let now: Vec<_> =
        [now, unsure].into_iter().flatten().filter(|key| !key.is_empty()).map(str::to_owned).collect();
    let offer = |key: &str| Offer::new(key, Phrase::new(format!("joined-{key}")));
    let offers = vec![offer("connected"), offer("cut_off"), Offer::unsure()];
    sketch.choice("joined", &Question::Joined(entry).phrase(scene), false, offers, &now);
    sketch.caution(&Caution::HouseSideOnly.phrase());
}

pub(super) fn take_joined(scene: &Scene<'_>, entry: SubjectId) -> Told<Answer> {
    let state = match scene.pending().one("joined").ok_or_else(not_answered)? {
        "connected" => EntryState::Connected,
        "cut_off" => EntryState::CutOff,
        UNSURE => {
            let answer = Answer::new().says(entry, field::ENTRY_STATE, &EntryState::Unknown)?;
            return Ok(answer.asked(entry, "joined", UNSURE));
        }
        _ => return Err(not_answered()),
    };
    Answer::new().says(entry, field::ENTRY_STATE, &state)
}

/// The first part of a kind in the chain behind a part, before anything branches.
pub(crate) fn behind(scene: &Scene<'_>, part: SubjectId, kind: PartKind) -> Option<SubjectId> {
    chain(scene, part).into_iter().find(|id| scene.survey.parts.get(id).is_some_and(|part| part.kind == kind))
}

/// The parts behind an entry, one after the other, until it branches, ends or reaches an outlet.
fn chain(scene: &Scene<'_>, entry: SubjectId) -> Vec<SubjectId> {
    let mut chain = Vec::new();
    let mut at = entry;
    while let [only] = scene.survey.wiring.fed_from(at) {
        chain.push(*only);
        at = *only;
        let branches = scene.survey.parts.get(&at).is_none_or(|part| part.outputs() != 1);
        if branches || chain.len() > 64 {
            break;
        }
    }
    chain
}

fn draw_seen(
    scene: &Scene<'_>,
    sketch: &mut Sketch<'_>,
    question: &Question,
    entry: SubjectId,
    kind: PartKind,
) {
    let there = behind(scene, entry, kind).is_some();
    let asked = scene.survey.answer(entry, question.name()).and_then(|answer| answer.as_str());
    let now: Vec<_> = if there { Some("yes") } else { asked }.map(str::to_owned).into_iter().collect();
    let offer = |key: &str| Offer::new(key, Phrase::new(format!("{}-{key}", question.name())));
    let offers = vec![offer("yes"), offer("no"), Offer::unsure()];
    sketch.choice("seen", &question.phrase(scene), false, offers, &now);
}

/// Puts a part in behind `after`; what hung there hangs on the new part from then on.
fn put_in(scene: &Scene<'_>, answer: Answer, after: SubjectId, kind: PartKind) -> Told<Answer> {
    let survey = scene.survey;
    let id = SubjectId::random();
    let (answer, run) = jumper(answer)?;
    let feed = Feed::From(FeedFrom { part: after, port: 1, run: Some(run) });
    let mut answer = answer.is(id, "part").says(id, field::KIND, &kind)?.says(id, field::FEED, &feed)?.plain(
        id,
        field::TAG,
        json!(free_tag(survey, kind, 0)),
    );
    for child in survey.wiring.on_port(after, 1) {
        if let Some(feed) = survey.wiring.feed(child) {
            let moved = Feed::From(FeedFrom { part: id, port: 1, run: feed.run });
            answer = answer.says(child, field::FEED, &moved)?;
        }
    }
    Ok(answer)
}

fn take_seen(
    scene: &Scene<'_>,
    question: &Question,
    entry: SubjectId,
    kind: PartKind,
    after: SubjectId,
) -> Told<Answer> {
    let there = behind(scene, entry, kind);
    let answer = Answer::new();
    match scene.pending().one("seen").ok_or_else(not_answered)? {
        "yes" => {
            let answer = answer.asked(entry, question.name(), "yes");
            if there.is_some() { Ok(answer) } else { put_in(scene, answer, after, kind) }
        }
        told @ ("no" | UNSURE) => {
            let mut answer = answer.asked(entry, question.name(), told);
            if let Some(part) = there {
                // What hung on it hangs on what fed it.
                if let Some(feed) = scene.survey.wiring.feed(part) {
                    for child in scene.survey.wiring.fed_from(part) {
                        let run = scene.survey.wiring.feed(*child).and_then(|feed| feed.run).or(feed.run);
                        let moved = Feed::From(FeedFrom { run, ..feed.clone() });
                        answer = answer.says(*child, field::FEED, &moved)?;
                    }
                }
                answer.edits.push(scene.ledger.remove(part));
            }
            Ok(answer)
        }
        _ => Err(not_answered()),
    }
}

pub(super) fn draw_ground_block(scene: &Scene<'_>, sketch: &mut Sketch<'_>, entry: SubjectId) {
    draw_seen(scene, sketch, &Question::GroundBlock(entry), entry, PartKind::GroundBlock);
    sketch.caution(&Caution::KeepGrounds.phrase());
    sketch.caution(&Caution::HouseSideOnly.phrase());
    sketch.caution(&Caution::Thunderstorm.phrase());
}

pub(super) fn take_ground_block(scene: &Scene<'_>, entry: SubjectId) -> Told<Answer> {
    take_seen(scene, &Question::GroundBlock(entry), entry, PartKind::GroundBlock, entry)
}

pub(super) fn draw_filter(scene: &Scene<'_>, sketch: &mut Sketch<'_>, entry: SubjectId) {
    draw_seen(scene, sketch, &Question::EntryFilter(entry), entry, PartKind::EntryFilter);
    sketch.caution(&Caution::HouseSideOnly.phrase());
}

pub(super) fn take_filter(scene: &Scene<'_>, entry: SubjectId) -> Told<Answer> {
    let after = behind(scene, entry, PartKind::GroundBlock).unwrap_or(entry);
    take_seen(scene, &Question::EntryFilter(entry), entry, PartKind::EntryFilter, after)
}
