//! What else uses the coax: all services, and one with its bands and details.

use facts::fact::SubjectId;
use house::record::{Is, PartKind, Plugged, Service, ServiceKind, field};
use house::{naming, story};
use phrase::{Arg, Phrase};

use super::service_edits::{self, DropsOut, ENTRY_MOST, GENERATIONS, NodeVersion, SINGLE, TV, VERSIONS};
use super::{builder, finder, go, gone, write};
use crate::error::Result;
use crate::number::Quantity;
use crate::place::{Choice, FieldPlace, Key, Move, Place};
use crate::question::{Answer, Told, not_answered};
use crate::screen::PressWeight;
use crate::session::{Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// The most parts that DC may come from or go to, as options.
const PARTS: usize = 60;

/// Every kind of service.
const KINDS: [ServiceKind; 7] = [
    ServiceKind::CableTv,
    ServiceKind::CableInternet,
    ServiceKind::AntennaTv,
    ServiceKind::SatelliteTv,
    ServiceKind::ProviderNetwork,
    ServiceKind::FibreLink,
    ServiceKind::PowerOverCoax,
];

pub(crate) fn show_all<'a>(snapshot: &SurveySnapshot<'a>) -> ScreenBuilder<'a> {
    let survey = snapshot.survey;
    let mut builder = builder(snapshot, &Phrase::new("free-services"));
    let mut services: Vec<_> = survey.services.values().collect();
    services.sort_by_key(|service| (service.kind, service.id));
    let row = |service: &&Service| {
        let says = said(snapshot, service);
        builder.row(Some(Key::Service(service.id)), &naming::service(service.kind), says.as_ref(), None)
    };
    let rows = services.iter().take(finder::ROWS).map(row).collect();
    builder.rows(&Phrase::new("free-services-rows"), rows);
    let offers = KINDS.iter().map(|kind| Offer::new(kind, naming::service(*kind))).collect();
    builder.choice(&Key::Kind, &Phrase::new("free-service-new"), false, offers, None::<&ServiceKind>);
    builder.press(&Key::Add, &Phrase::new("free-add"), PressWeight::Main);
    builder
}

/// What is known of a service beside its kind.
fn said(snapshot: &SurveySnapshot<'_>, service: &Service) -> Option<Phrase> {
    let names =
        [field::TOP, field::SIGNAL, field::MODEM, field::SINGLE_CABLE, field::OTHER_NETWORK, field::POWER];
    let said: Vec<_> = names
        .into_iter()
        .filter_map(|name| snapshot.ledger.shown(service.id, name).map(|fact| (name, fact)))
        .filter(|(_, fact)| !fact.value().is_null())
        .map(|(name, fact)| Arg::Phrase(Box::new(story::value(snapshot.survey, name, fact.value()))))
        .collect();
    (!said.is_empty()).then(|| Phrase::new("value-several").with("several", Arg::Several(said)))
}

pub(crate) fn pressed_all(session: &mut Session, key: &Key) -> Result<Move> {
    match key {
        Key::Service(service) => return Ok(go(FieldPlace::Service(*service))),
        Key::Add => {}
        _ => return Ok(Move::Stay),
    }
    let id = SubjectId::random();
    let told = session.with_snapshot(|snapshot| -> Told<Answer> {
        let kind: ServiceKind = snapshot.pending().one(&Key::Kind).ok_or_else(not_answered)?;
        Ok(Answer::new().is(id, Is::Service).says(id, field::service::KIND, &kind))
    })?;
    Ok(if write(session, told)? { Move::Go(Place::Field(FieldPlace::Service(id))) } else { Move::Stay })
}

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>, id: SubjectId) -> ScreenBuilder<'a> {
    let Some(service) = snapshot.survey.services.get(&id) else { return gone(snapshot, "free-service") };
    let name = naming::service(service.kind);
    let mut builder = builder(snapshot, &Phrase::new("free-service").phrase("service", name.clone()));
    if service.kind == ServiceKind::PowerOverCoax {
        power(snapshot, &mut builder, service);
    } else {
        entries(snapshot, &mut builder, service);
        let hint = Phrase::new("free-top.hint");
        builder.number(
            &Key::Top,
            &Phrase::new("free-top"),
            Some(&hint),
            Quantity::Frequency,
            service.top_mhz,
        );
    }
    match service.kind {
        ServiceKind::CableTv | ServiceKind::AntennaTv => {
            words(&mut builder, &Key::Signal, "free-signal", &TV, "value-signal", service.signal.as_ref());
        }
        ServiceKind::CableInternet => modem(&mut builder, service),
        ServiceKind::SatelliteTv => {
            words(
                &mut builder,
                &Key::Single,
                "free-single",
                &SINGLE,
                "value-single_cable",
                service.single_cable.as_ref(),
            );
        }
        ServiceKind::ProviderNetwork | ServiceKind::FibreLink => network(&mut builder, service),
        ServiceKind::PowerOverCoax => {}
    }
    builder.press(&Key::Save, &Phrase::new("free-save"), PressWeight::Main);
    let remove = Phrase::new("free-remove-service").phrase("service", name);
    let remove = remove.phrase("hangs", naming::Hanging::on(snapshot.survey, id).phrase());
    builder.confirm_loss(&Key::Remove, &remove);
    builder
}

/// A choice out of a closed list whose words the survey has.
fn words<C: Choice>(
    builder: &mut ScreenBuilder<'_>,
    key: &Key,
    name: &str,
    list: &[C],
    prefix: &str,
    now: Option<&C>,
) {
    let words = |choice: &C| Phrase::new(format!("{prefix}-{}", choice.key()));
    let offers = list.iter().map(|choice| Offer::new(choice, words(choice))).collect();
    builder.choice(key, &Phrase::new(name), false, offers, now);
}

fn entries(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, service: &Service) {
    let survey = snapshot.survey;
    let entries = finder::by_tag(survey).into_iter().filter(|part| part.kind == PartKind::Entry);
    let offer = |part: &house::record::Part| Offer::new(&Key::Part(part.id), naming::of_part(survey, part));
    let offers: Vec<_> = entries.take(ENTRY_MOST).map(offer).collect();
    if !offers.is_empty() {
        let now = service.entry.map(Key::Part);
        builder.choice(&Key::Entry, &Phrase::new("free-by-entry"), false, offers, &now);
    }
}

fn modem(builder: &mut ScreenBuilder<'_>, service: &Service) {
    let bands = service.modem.unwrap_or_default();
    let offers = GENERATIONS
        .iter()
        .map(|generation| {
            let words = Phrase::new("value-modem-generation").text("version", generation.key());
            Offer::new(generation, words)
        })
        .collect();
    builder.choice(&Key::Generation, &Phrase::new("free-generation"), false, offers, &bands.generation);
    let hint = Phrase::new("free-upstream.hint");
    let upstream = bands.upstream_top_mhz;
    builder.number(&Key::Upstream, &Phrase::new("free-upstream"), Some(&hint), Quantity::Frequency, upstream);
    let offer = |drops: &DropsOut| Offer::new(drops, Phrase::new(format!("free-drops-{}", drops.word())));
    let now = service.drops_out.then_some(DropsOut::Yes);
    let offers = DropsOut::ALL.iter().map(offer).collect();
    builder.choice(&Key::Drops, &Phrase::new("free-drops"), false, offers, &now);
}

fn network(builder: &mut ScreenBuilder<'_>, service: &Service) {
    let network = service.network.clone().unwrap_or_default();
    let offer = |version: &&'static str| {
        Offer::new(&NodeVersion(version), Phrase::new("value-network-version").text("version", *version))
    };
    let now = network.version.as_deref().and_then(NodeVersion::of);
    builder.choice(
        &Key::Version,
        &Phrase::new("free-version"),
        false,
        VERSIONS.iter().map(offer).collect(),
        &now,
    );
    let band = network.bands.first();
    let low = band.map(|band| band.low_mhz);
    builder.number(&Key::Low, &Phrase::new("free-band-low"), None, Quantity::Frequency, low);
    let high = band.map(|band| band.high_mhz);
    builder.number(&Key::High, &Phrase::new("free-band-high"), None, Quantity::Frequency, high);
    for band in network.bands.iter().skip(1) {
        let words = Phrase::new("value-network-band").with("band", Arg::Band(band.low_mhz, band.high_mhz));
        builder.words(crate::screen::WordsRole::Plain, &words);
    }
    let nodes = (network.nodes > 0).then(|| f64::from(network.nodes));
    builder.number(&Key::Nodes, &Phrase::new("free-nodes"), None, Quantity::Count, nodes);
    builder.press(&Key::AddBand, &Phrase::new("free-add-band"), PressWeight::Other);
}

fn power(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, service: &Service) {
    let survey = snapshot.survey;
    let parts = finder::by_tag(survey);
    let offer = |part: &&&house::record::Part| Offer::new(&Key::Part(part.id), naming::of_part(survey, part));
    let gives = |part: &&&house::record::Part| {
        let plugged = part.plugged.as_deref().unwrap_or_default();
        part.kind == PartKind::PowerInserter
            || plugged.iter().any(|it| matches!(it, Plugged::PowerSupply | Plugged::SatelliteReceiver))
            || part.kind == PartKind::Outlet
    };
    let needs = |part: &&&house::record::Part| matches!(part.kind, PartKind::Amplifier | PartKind::Entry);
    let now = |part: Option<SubjectId>| part.map(Key::Part);
    let from = parts.iter().filter(gives).take(PARTS).map(|part| offer(&part)).collect();
    let feed = service.power;
    builder.choice(
        &Key::From,
        &Phrase::new("free-power-from"),
        false,
        from,
        &now(feed.map(|feed| feed.from)),
    );
    let to = parts.iter().filter(needs).take(PARTS).map(|part| offer(&part)).collect();
    builder.choice(&Key::To, &Phrase::new("free-power-to"), false, to, &now(feed.map(|feed| feed.to)));
    builder.caution(&advice::finding::Caution::PoweredLeg.phrase());
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    match key {
        Key::Save | Key::AddBand => {
            let told =
                session.with_snapshot(|snapshot| service_edits::edits(snapshot, id, *key == Key::AddBand))?;
            let written = write(session, told)?;
            if written && *key == Key::AddBand {
                super::clear(session)?;
                return Ok(Move::Stay);
            }
            Ok(if written { Move::Back } else { Move::Stay })
        }
        Key::Remove => {
            let edit = session.with_snapshot(|snapshot| snapshot.ledger.remove(id))?;
            write(session, Ok(Answer { edits: vec![edit], then: None }))?;
            Ok(Move::Back)
        }
        _ => Ok(Move::Stay),
    }
}
