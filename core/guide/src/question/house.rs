//! The house, its people, and what uses the coax today.

use facts::fact::SubjectId;
use house::record::{
    Building, Internet, ModemBands, ModemGeneration, Ownership, Room, Service, ServiceKind, Wish, field,
};
use phrase::Phrase;
use serde_json::json;

use super::{Answer, Told, not_answered};
use crate::number::Quantity;
use crate::place::Place;
use crate::screen::{PressWeight, WordsRole, WritingKind};
use crate::session::Scene;
use crate::view::{Offer, Sketch, UNSURE};

/// Services that a homeowner can tell by what stands in the house.
const SERVICES: [ServiceKind; 6] = [
    ServiceKind::CableTv,
    ServiceKind::CableInternet,
    ServiceKind::AntennaTv,
    ServiceKind::SatelliteTv,
    ServiceKind::ProviderNetwork,
    ServiceKind::FibreLink,
];

/// Rooms that many houses have, by the end of their message `room-<name>`.
const ROOMS: [&str; 8] = ["living", "office", "bedroom", "child", "kitchen", "basement", "attic", "guest"];

fn key(kind: ServiceKind) -> String {
    serde_json::to_value(kind).ok().and_then(|value| value.as_str().map(str::to_owned)).unwrap_or_default()
}

pub(super) fn draw_whose(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let now = scene.survey.building.map(|building| match (building.ownership, building.shared) {
        (_, true) => "shared",
        (Ownership::Own, false) => "own",
        (Ownership::Rented, false) => "rented",
    });
    let offer = |key: &str| Offer::new(key, Phrase::new(format!("whose-{key}")));
    let now = now.map(str::to_owned).into_iter().collect::<Vec<_>>();
    let offers = vec![offer("own"), offer("rented"), offer("shared")];
    sketch.choice("whose", &Phrase::new("ask-whose"), false, offers, &now);
}

pub(super) fn take_whose(scene: &Scene<'_>) -> Told<Answer> {
    let building = match scene.pending().one("whose").ok_or_else(not_answered)? {
        "own" => Building { ownership: Ownership::Own, shared: false },
        "rented" => Building { ownership: Ownership::Rented, shared: false },
        "shared" => Building { ownership: Ownership::Rented, shared: true },
        _ => return Err(not_answered()),
    };
    Answer::new().says(scene.survey.id, field::BUILDING, &building)
}

pub(super) fn draw_uses(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let mut offers: Vec<_> = SERVICES
        .into_iter()
        .map(|kind| {
            Offer::new(key(kind), Phrase::new(format!("uses-{}", key(kind))))
                .about(Phrase::new(format!("uses-{}.about", key(kind))))
        })
        .collect();
    offers.push(Offer::new("nothing", Phrase::new("uses-nothing")));
    offers.push(Offer::unsure());
    let mut now: Vec<_> = scene.survey.services.values().map(|service| key(service.kind)).collect();
    let asked = scene.survey.answer(scene.survey.id, "uses").and_then(|answer| answer.as_str());
    now.extend(asked.map(|answer| if answer == "no" { "nothing" } else { answer }.to_owned()));
    sketch.choice("uses", &Phrase::new("ask-uses"), true, offers, &now);
}

pub(super) fn take_uses(scene: &Scene<'_>) -> Told<Answer> {
    let picked =
        scene.pending().picked("uses").filter(|picked| !picked.is_empty()).ok_or_else(not_answered)?;
    let mut answer = Answer::new();
    let says = |word: &str| picked.iter().any(|picked| picked == word);
    let exclusive = says("nothing") || says(UNSURE);
    for kind in SERVICES {
        let wanted = says(&key(kind)) && !exclusive;
        let there: Vec<&Service> = scene.survey.services_of(kind).collect();
        if wanted && there.is_empty() {
            let id = SubjectId::random();
            answer = answer.is(id, "service").says(id, field::KIND, &kind)?;
        }
        for service in there.iter().filter(|_| !wanted) {
            answer.edits.push(scene.ledger.remove(service.id));
        }
    }
    let told = if says(UNSURE) {
        UNSURE
    } else if exclusive {
        "no"
    } else {
        "yes"
    };
    Ok(answer.asked(scene.survey.id, "uses", told))
}

fn modem(scene: &Scene<'_>) -> Option<SubjectId> {
    scene.survey.services_of(ServiceKind::CableInternet).next().map(|service| service.id)
}

pub(super) fn draw_modem_age(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let service = scene.survey.services_of(ServiceKind::CableInternet).next();
    let now = match service.and_then(|service| service.modem?.generation) {
        Some(ModemGeneration::V3_0) => vec!["30".to_owned()],
        Some(ModemGeneration::V3_1) => vec!["31".to_owned()],
        Some(ModemGeneration::V4_0) => vec!["40".to_owned()],
        None => Vec::new(),
    };
    let offer = |key: &str| Offer::new(key, Phrase::new(format!("modem-{key}")));
    let offers = vec![offer("30"), offer("31"), offer("40"), Offer::unsure()];
    sketch.choice("modem", &Phrase::new("ask-modem-age"), false, offers, &now);
}

pub(super) fn take_modem_age(scene: &Scene<'_>) -> Told<Answer> {
    let service = modem(scene).ok_or_else(not_answered)?;
    let known = scene.survey.services.get(&service).and_then(|service| service.modem).unwrap_or_default();
    let generation = match scene.pending().one("modem").ok_or_else(not_answered)? {
        "30" => ModemGeneration::V3_0,
        "31" => ModemGeneration::V3_1,
        "40" => ModemGeneration::V4_0,
        UNSURE => return Ok(Answer::new().asked(service, "modem-age", UNSURE)),
        _ => return Err(not_answered()),
    };
    Answer::new().says(service, field::MODEM, &ModemBands { generation: Some(generation), ..known })
}

pub(super) fn draw_plan(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let plan = scene.survey.internet;
    let hint = Phrase::new("ask-plan.hint");
    let down = plan.map(|plan| plan.down_mbps);
    let up = plan.map(|plan| plan.up_mbps);
    sketch.number("down", &Phrase::new("plan-down"), Some(&hint), Quantity::Rate, down);
    sketch.number("up", &Phrase::new("plan-up"), None, Quantity::Rate, up);
}

pub(super) fn take_plan(scene: &Scene<'_>) -> Told<Answer> {
    let pending = scene.pending();
    let known = scene.survey.internet;
    let down = pending.number("down", Quantity::Rate)?.or(known.map(|plan| plan.down_mbps));
    let up = pending.number("up", Quantity::Rate)?.or(known.map(|plan| plan.up_mbps));
    // Many people know only the one number that the plan is sold by.
    let Some(down_mbps) = down else { return Err(not_answered()) };
    let plan = Internet { down_mbps, up_mbps: up.unwrap_or(down_mbps.min(100.0)) };
    Answer::new().says(scene.survey.id, field::INTERNET, &plan)
}

/// What must not be cut off without being asked about.
const DEPENDS: [&str; 3] = ["phone", "alarm", "medical"];

pub(super) fn draw_depends(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let mut offers: Vec<_> =
        DEPENDS.into_iter().map(|key| Offer::new(key, Phrase::new(format!("depends-{key}")))).collect();
    offers.push(Offer::new("nothing", Phrase::new("depends-nothing")));
    offers.push(Offer::unsure());
    let now = depends(scene);
    sketch.choice("depends", &Phrase::new("ask-depends"), true, offers, &now);
}

/// What was said to hang on the modem or an amplifier.
pub(crate) fn depends(scene: &Scene<'_>) -> Vec<String> {
    let answer = scene.survey.answer(scene.survey.id, "depends").and_then(|answer| answer.as_array());
    answer.into_iter().flatten().filter_map(|word| word.as_str().map(str::to_owned)).collect()
}

/// The caution about what must not be cut off, unless somebody said that there is nothing of the kind.
pub(super) fn caution_of_dependents(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    caution_of_people(scene, sketch, depends(scene) != ["nothing"]);
}

/// Cautions for the people who hang on the wiring: what was named to depend on it, else the general question where
/// `ask` wants it; and the neighbours where the wiring is shared.
pub(crate) fn caution_of_people(scene: &Scene<'_>, sketch: &mut Sketch<'_>, ask: bool) {
    if let Some(told) = dependents(&depends(scene)) {
        sketch.caution(&told);
    } else if ask {
        sketch.caution(&advice::finding::Caution::WhoDependsOnIt.phrase());
    }
    if scene.survey.building.is_some_and(|building| building.shared) {
        sketch.caution(&Phrase::new("ask-shared"));
    }
}

/// What somebody said to hang on the modem or the cable, as a caution; nothing if nothing was named.
pub(crate) fn dependents(depends: &[String]) -> Option<Phrase> {
    let named = DEPENDS.iter().filter(|word| depends.iter().any(|told| told == *word));
    let named: Vec<_> = named
        .map(|word| phrase::Arg::Phrase(Box::new(Phrase::new(format!("depends-{word}.short")))))
        .collect();
    (!named.is_empty()).then(|| Phrase::new("ask-dependents").with("what", phrase::Arg::Several(named)))
}

pub(super) fn take_depends(scene: &Scene<'_>) -> Told<Answer> {
    let picked =
        scene.pending().picked("depends").filter(|picked| !picked.is_empty()).ok_or_else(not_answered)?;
    let told: Vec<&str> = DEPENDS.into_iter().filter(|word| picked.iter().any(|one| one == word)).collect();
    let told = match (told.is_empty(), picked.first()) {
        (true, Some(only)) => vec![only.as_str()],
        _ => told,
    };
    Ok(Answer::new().asked(scene.survey.id, "depends", json!(told)))
}

pub(super) fn draw_rooms(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let offers = ROOMS.iter().map(|name| Offer::new(*name, Phrase::new(format!("room-{name}")))).collect();
    let named: Vec<String> = ROOMS
        .iter()
        .filter(|name| {
            let word = sketch.say(&Phrase::new(format!("room-{name}")));
            scene.survey.rooms.values().any(|room| room.name == word)
        })
        .map(|name| (*name).to_owned())
        .collect();
    sketch.choice("rooms", &Phrase::new("ask-rooms"), true, offers, &named);
    let hint = Phrase::new("ask-rooms.hint");
    sketch.writing("others", &Phrase::new("rooms-others"), Some(&hint), WritingKind::Names, "");
    let others: Vec<_> = scene.survey.rooms.values().map(|room| room.name.clone()).collect();
    if !others.is_empty() {
        sketch.words(WordsRole::Aside, &Phrase::new("rooms-known").text("rooms", others.join(", ")));
    }
}

/// Rooms are added here. One is taken away on its own page, where what hangs on it is seen.
pub(super) fn take_rooms(scene: &Scene<'_>) -> Told<Answer> {
    let pending = scene.pending();
    let picked = pending.picked("rooms").unwrap_or_default();
    let of_list = ROOMS
        .iter()
        .filter(|name| picked.iter().any(|one| one == *name))
        .map(|name| scene.language.say(&Phrase::new(format!("room-{name}"))));
    let others = pending.written("others").unwrap_or_default();
    let written = others.split(['\n', ',', ';']).map(|name| name.trim().to_owned());
    let mut names: Vec<String> = Vec::new();
    for name in of_list.chain(written).filter(|name| !name.is_empty()) {
        let known = scene.survey.rooms.values().any(|room| room.name.eq_ignore_ascii_case(&name));
        if !known && !names.iter().any(|other| other.eq_ignore_ascii_case(&name)) {
            names.push(name);
        }
    }
    if names.is_empty() && scene.survey.rooms.is_empty() {
        return Err(not_answered());
    }
    let mut answer = Answer::new().asked(scene.survey.id, "rooms", "yes");
    for name in names {
        let id = SubjectId::random();
        answer = answer.is(id, "room").plain(id, field::NAME, json!(name));
    }
    Ok(answer)
}

/// Speeds that may be wished for in a room, Mb/s towards it and from it.
const WISHES: [(&str, Option<Wish>); 4] = [
    ("light", Some(Wish { down_mbps: 100.0, up_mbps: 20.0 })),
    ("work", Some(Wish { down_mbps: 300.0, up_mbps: 50.0 })),
    ("fast", Some(Wish { down_mbps: 900.0, up_mbps: 300.0 })),
    ("none", None),
];

pub(super) fn draw_wish(scene: &Scene<'_>, sketch: &mut Sketch<'_>, room: SubjectId) {
    let wish = scene.survey.rooms.get(&room).and_then(|room: &Room| room.wish);
    let asked = scene.survey.answer(room, "wish").is_some();
    let now = WISHES.iter().find(|(_, of)| *of == wish && (wish.is_some() || asked));
    let now: Vec<_> = now.map(|(key, _)| (*key).to_owned()).into_iter().collect();
    let mut offers: Vec<_> =
        WISHES.iter().map(|(key, _)| Offer::new(*key, Phrase::new(format!("wish-{key}")))).collect();
    offers.push(Offer::unsure());
    let name = super::Question::Wish(room).phrase(scene);
    sketch.choice("wish", &name, false, offers, &now);
    sketch.press(OTHER_WISH, &Phrase::new("wish-other"), PressWeight::Other);
}

/// The key of the press for a speed that is not among the wishes.
const OTHER_WISH: &str = "other-speed";

/// Where a press of that question leads.
pub(crate) fn wish_pressed(room: SubjectId, key: &str) -> Option<Place> {
    (key == OTHER_WISH).then_some(Place::Ask(super::Question::WishOther(room)))
}

pub(super) fn draw_wish_other(scene: &Scene<'_>, sketch: &mut Sketch<'_>, room: SubjectId) {
    let wish = scene.survey.rooms.get(&room).and_then(|room: &Room| room.wish);
    let (down, up) = (wish.map(|wish| wish.down_mbps), wish.map(|wish| wish.up_mbps));
    sketch.number("down", &Phrase::new("wish-down"), None, Quantity::Rate, down);
    sketch.number("up", &Phrase::new("wish-up"), None, Quantity::Rate, up);
}

pub(super) fn take_wish_other(scene: &Scene<'_>, room: SubjectId) -> Told<Answer> {
    let known = scene.survey.rooms.get(&room).and_then(|room: &Room| room.wish);
    let pending = scene.pending();
    let down = pending.number("down", Quantity::Rate)?.or(known.map(|wish| wish.down_mbps));
    let up = pending.number("up", Quantity::Rate)?.or(known.map(|wish| wish.up_mbps));
    let (Some(down_mbps), Some(up_mbps)) = (down, up) else { return Err(not_answered()) };
    Answer::new().asked(room, "wish", "yes").says(room, field::WISH, &Wish { down_mbps, up_mbps })
}

pub(super) fn take_wish(scene: &Scene<'_>, room: SubjectId) -> Told<Answer> {
    let picked = scene.pending().one("wish").ok_or_else(not_answered)?;
    let wish = match picked {
        // Who does not know gets what serves most work; it can be changed at any time.
        UNSURE => WISHES.iter().find(|(key, _)| *key == "work").and_then(|(_, wish)| *wish),
        picked => WISHES.iter().find(|(key, _)| *key == picked).ok_or_else(not_answered)?.1,
    };
    let answer = Answer::new().asked(room, "wish", if picked == UNSURE { UNSURE } else { "yes" });
    match wish {
        Some(wish) => answer.says(room, field::WISH, &wish),
        None => Ok(answer.plain(room, field::WISH, serde_json::Value::Null)),
    }
}
