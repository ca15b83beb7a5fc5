//! What else uses the coax: all services, and one with its bands and details.

use facts::fact::SubjectId;
use house::record::{PartKind, Plugged, Service, ServiceKind, field};
use house::{naming, story};
use phrase::{Arg, Phrase};

use super::service_edits::{self, ENTRY_MOST, GENERATIONS, SINGLE, TV, VERSIONS};
use super::{finder, go, gone, sketch, write};
use crate::error::Result;
use crate::number::Quantity;
use crate::place::{FieldPlace, Move, Place, key_of, subject_of};
use crate::question::{Answer, Told, not_answered};
use crate::screen::PressWeight;
use crate::session::{Scene, Session};
use crate::view::{Offer, Sketch};

/// The most parts that DC may come from or go to, as options.
const PARTS: usize = 60;

/// Every kind of service.
const KINDS: [(&str, ServiceKind); 7] = [
    ("cable_tv", ServiceKind::CableTv),
    ("cable_internet", ServiceKind::CableInternet),
    ("antenna_tv", ServiceKind::AntennaTv),
    ("satellite_tv", ServiceKind::SatelliteTv),
    ("provider_network", ServiceKind::ProviderNetwork),
    ("fibre_link", ServiceKind::FibreLink),
    ("power_over_coax", ServiceKind::PowerOverCoax),
];

pub(crate) fn show_all<'a>(scene: &Scene<'a>) -> Sketch<'a> {
    let survey = scene.survey;
    let mut sketch = sketch(scene, &Phrase::new("free-services"));
    let mut services: Vec<_> = survey.services.values().collect();
    services.sort_by_key(|service| (service.kind, service.id));
    let row = |service: &&Service| {
        let says = said(scene, service);
        sketch.row(Some(key_of("service", service.id)), &naming::service(service.kind), says.as_ref(), None)
    };
    let rows = services.iter().take(finder::ROWS).map(row).collect();
    sketch.rows(&Phrase::new("free-services-rows"), rows);
    let offers = KINDS.iter().map(|(key, kind)| Offer::new(*key, naming::service(*kind))).collect();
    sketch.choice("kind", &Phrase::new("free-service-new"), false, offers, &[]);
    sketch.press("add", &Phrase::new("free-add"), PressWeight::Main);
    sketch
}

/// What is known of a service beside its kind.
fn said(scene: &Scene<'_>, service: &Service) -> Option<Phrase> {
    let names =
        [field::TOP, field::SIGNAL, field::MODEM, field::SINGLE_CABLE, field::OTHER_NETWORK, field::POWER];
    let said: Vec<_> = names
        .into_iter()
        .filter_map(|name| scene.ledger.shown(service.id, name).map(|fact| (name, fact)))
        .filter(|(_, fact)| !fact.value().is_null())
        .map(|(name, fact)| Arg::Phrase(Box::new(story::value(scene.survey, name, fact.value()))))
        .collect();
    (!said.is_empty()).then(|| Phrase::new("value-several").with("several", Arg::Several(said)))
}

pub(crate) fn pressed_all(session: &mut Session, key: &str) -> Result<Move> {
    if let Some(service) = subject_of(key, "service") {
        return Ok(go(FieldPlace::Service(service)));
    }
    if key != "add" {
        return Ok(Move::Stay);
    }
    let id = SubjectId::random();
    let told = session.with_scene(|scene| -> Told<Answer> {
        let picked = scene.pending().one("kind").ok_or_else(not_answered)?;
        let (_, kind) = KINDS.iter().find(|(key, _)| *key == picked).ok_or_else(not_answered)?;
        Answer::new().is(id, "service").says(id, field::KIND, kind)
    })?;
    Ok(if write(session, told)? { Move::Go(Place::Field(FieldPlace::Service(id))) } else { Move::Stay })
}

pub(crate) fn show<'a>(scene: &Scene<'a>, id: SubjectId) -> Sketch<'a> {
    let Some(service) = scene.survey.services.get(&id) else { return gone(scene, "free-service") };
    let name = naming::service(service.kind);
    let mut sketch = sketch(scene, &Phrase::new("free-service").phrase("service", name.clone()));
    if service.kind == ServiceKind::PowerOverCoax {
        power(scene, &mut sketch, service);
    } else {
        entries(scene, &mut sketch, service);
        let hint = Phrase::new("free-top.hint");
        sketch.number("top", &Phrase::new("free-top"), Some(&hint), Quantity::Frequency, service.top_mhz);
    }
    match service.kind {
        ServiceKind::CableTv | ServiceKind::AntennaTv => {
            words(&mut sketch, "signal", "free-signal", &TV, "value-signal", service.signal);
        }
        ServiceKind::CableInternet => modem(&mut sketch, service),
        ServiceKind::SatelliteTv => {
            words(&mut sketch, "single", "free-single", &SINGLE, "value-single_cable", service.single_cable);
        }
        ServiceKind::ProviderNetwork | ServiceKind::FibreLink => network(&mut sketch, service),
        ServiceKind::PowerOverCoax => {}
    }
    sketch.press("save", &Phrase::new("free-save"), PressWeight::Main);
    sketch.confirm_loss("remove", &Phrase::new("free-remove-service").phrase("service", name));
    sketch
}

/// A choice out of a closed list whose words the survey has.
fn words<T: Copy + PartialEq>(
    sketch: &mut Sketch<'_>,
    key: &str,
    name: &str,
    list: &[(&str, T)],
    prefix: &str,
    now: Option<T>,
) {
    let offers =
        list.iter().map(|(key, _)| Offer::new(*key, Phrase::new(format!("{prefix}-{key}")))).collect();
    let now = list.iter().find(|(_, value)| Some(*value) == now);
    let now: Vec<_> = now.map(|(key, _)| (*key).to_owned()).into_iter().collect();
    sketch.choice(key, &Phrase::new(name), false, offers, &now);
}

fn entries(scene: &Scene<'_>, sketch: &mut Sketch<'_>, service: &Service) {
    let survey = scene.survey;
    let entries = finder::by_tag(survey).into_iter().filter(|part| part.kind == PartKind::Entry);
    let offer =
        |part: &house::record::Part| Offer::new(key_of("part", part.id), naming::of_part(survey, part));
    let offers: Vec<_> = entries.take(ENTRY_MOST).map(offer).collect();
    if !offers.is_empty() {
        let now: Vec<_> = service.entry.map(|entry| key_of("part", entry)).into_iter().collect();
        sketch.choice("entry", &Phrase::new("free-by-entry"), false, offers, &now);
    }
}

fn modem(sketch: &mut Sketch<'_>, service: &Service) {
    let bands = service.modem.unwrap_or_default();
    let offers = GENERATIONS
        .iter()
        .map(|(key, _)| Offer::new(*key, Phrase::new("value-modem-generation").text("version", *key)))
        .collect();
    let now = GENERATIONS.iter().find(|(_, generation)| Some(*generation) == bands.generation);
    let now: Vec<_> = now.map(|(key, _)| (*key).to_owned()).into_iter().collect();
    sketch.choice("generation", &Phrase::new("free-generation"), false, offers, &now);
    let hint = Phrase::new("free-upstream.hint");
    let upstream = bands.upstream_top_mhz;
    sketch.number("upstream", &Phrase::new("free-upstream"), Some(&hint), Quantity::Frequency, upstream);
}

fn network(sketch: &mut Sketch<'_>, service: &Service) {
    let network = service.network.clone().unwrap_or_default();
    let offer =
        |version: &&str| Offer::new(*version, Phrase::new("value-network-version").text("version", *version));
    let now: Vec<_> = network.version.into_iter().collect();
    sketch.choice("version", &Phrase::new("free-version"), false, VERSIONS.iter().map(offer).collect(), &now);
    let band = network.bands.first();
    let low = band.map(|band| band.low_mhz);
    sketch.number("low", &Phrase::new("free-band-low"), None, Quantity::Frequency, low);
    let high = band.map(|band| band.high_mhz);
    sketch.number("high", &Phrase::new("free-band-high"), None, Quantity::Frequency, high);
    for band in network.bands.iter().skip(1) {
        let words = Phrase::new("value-network-band").with("band", Arg::Band(band.low_mhz, band.high_mhz));
        sketch.words(crate::screen::WordsRole::Plain, &words);
    }
    let nodes = (network.nodes > 0).then(|| f64::from(network.nodes));
    sketch.number("nodes", &Phrase::new("free-nodes"), None, Quantity::Count, nodes);
    sketch.press("add-band", &Phrase::new("free-add-band"), PressWeight::Other);
}

fn power(scene: &Scene<'_>, sketch: &mut Sketch<'_>, service: &Service) {
    let survey = scene.survey;
    let parts = finder::by_tag(survey);
    let offer =
        |part: &&&house::record::Part| Offer::new(key_of("part", part.id), naming::of_part(survey, part));
    let gives = |part: &&&house::record::Part| {
        let plugged = part.plugged.as_deref().unwrap_or_default();
        part.kind == PartKind::PowerInserter
            || plugged.iter().any(|it| matches!(it, Plugged::PowerSupply | Plugged::SatelliteReceiver))
            || part.kind == PartKind::Outlet
    };
    let needs = |part: &&&house::record::Part| matches!(part.kind, PartKind::Amplifier | PartKind::Entry);
    let now =
        |part: Option<SubjectId>| -> Vec<_> { part.map(|part| key_of("part", part)).into_iter().collect() };
    let from = parts.iter().filter(gives).take(PARTS).map(|part| offer(&part)).collect();
    let feed = service.power;
    sketch.choice("from", &Phrase::new("free-power-from"), false, from, &now(feed.map(|feed| feed.from)));
    let to = parts.iter().filter(needs).take(PARTS).map(|part| offer(&part)).collect();
    sketch.choice("to", &Phrase::new("free-power-to"), false, to, &now(feed.map(|feed| feed.to)));
    sketch.caution(&advice::finding::Caution::PoweredLeg.phrase());
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &str) -> Result<Move> {
    match key {
        "save" | "add-band" => {
            let told = session.with_scene(|scene| service_edits::edits(scene, id, key == "add-band"))?;
            let written = write(session, told)?;
            if written && key == "add-band" {
                super::clear(session)?;
                return Ok(Move::Stay);
            }
            Ok(if written { Move::Back } else { Move::Stay })
        }
        "remove" => {
            let edit = session.with_scene(|scene| scene.ledger.remove(id))?;
            write(session, Ok(Answer { edits: vec![edit], then: None }))?;
            Ok(Move::Back)
        }
        _ => Ok(Move::Stay),
    }
}
