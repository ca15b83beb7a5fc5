//! The job in words: the answer, what was asked, and of which house.

use advice::adapters::{are_adapters_planned, are_adapters_to_place, has_no_adapters};
use advice::verdict::{Stands, Together, answers, answers_to_come, met, summary};
use house::naming;
use house::record::Ownership;
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::page::Section;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let body = html! {
        div.side-by-side {
            div { h3 { (teller.word("report-asked")) } (asked(teller)) }
            div { h3 { (teller.word("report-house")) } ul { @for line in house(teller) { li { (line) } } } }
        }
    };
    Section { id: "job", heading: "report-job", body }
}

/// The answer: whose wish is met now, and whose once all is done.
pub(super) fn answer(teller: &ReportTeller<'_>) -> String {
    let answers = answers(teller.survey(), teller.forecast());
    let mut sentences = vec![teller.say(&summary(&answers))];
    if let Some((house, forecast)) = teller.input.when_done.filter(|_| !teller.input.steps.is_empty()) {
        let then = answers_to_come(house, forecast);
        if !then.is_empty() {
            let phrase = Phrase::new("answer-when-done").with("met", Arg::Count(met(&then) as u64));
            sentences.push(teller.say(&phrase.with("asked", Arg::Count(then.len() as u64))));
        }
    }
    sentences.join(" ")
}

/// What else belongs to the answer: room by room, and what hinders it.
pub(super) fn more(teller: &ReportTeller<'_>) -> Option<String> {
    let answers = answers(teller.survey(), teller.forecast());
    let mut sentences = Vec::new();
    if teller.forecast().bridge.is_none() {
        sentences.push(teller.word("report-bridge-none"));
        let place = |(outlet, says): &(Phrase, Phrase)| {
            teller.say(
                &Phrase::new("report-bridge-place")
                    .phrase("outlet", outlet.clone())
                    .phrase("says", says.clone()),
            )
        };
        sentences.extend(teller.input.places.iter().map(place));
    }
    for stands in [
        Stands::Met,
        Stands::LikelyMet,
        Stands::HangsOnByPass,
        Stands::NotYet,
        Stands::LikelyNot,
        Stands::NotKnown,
    ] {
        let message = match stands {
            Stands::Met => "answer-surely",
            Stands::LikelyMet => "answer-likely",
            Stands::HangsOnByPass => "answer-hang-on-by-pass",
            Stands::NotYet => "answer-not-met",
            Stands::LikelyNot => "answer-unlikely",
            Stands::NotKnown => "answer-not-known",
        };
        let rooms: Vec<_> = answers.iter().filter(|answer| answer.wished.stands() == stands).collect();
        if !rooms.is_empty() {
            let names = rooms.iter().map(|answer| naming::of_room(teller.survey(), answer.room));
            let names = names.map(|name| Arg::Phrase(Box::new(name))).collect();
            sentences.push(teller.say(&Phrase::new(message).with("rooms", Arg::Several(names))));
        }
    }
    if !answers.is_empty() && Together::is_too_much(teller.forecast()) {
        sentences.push(teller.word("answer-not-together"));
    }
    // Where a test failed, what is left for it is said before all else.
    sentences.extend(teller.input.failed.iter().map(|room| teller.say(room)));
    (!sentences.is_empty()).then(|| sentences.join(" "))
}

/// That there is nothing to do, or nothing more, or that it cannot be told yet.
pub(super) fn nothing_to_do(teller: &ReportTeller<'_>) -> String {
    let sentences: Vec<_> =
        advice::worklist::nothing_to_do(teller.survey()).iter().map(|phrase| teller.say(phrase)).collect();
    sentences.join(" ")
}

fn asked(teller: &ReportTeller<'_>) -> Markup {
    let mut rooms: Vec<_> = teller.survey().rooms.values().collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    let wishes: Vec<_> = rooms
        .into_iter()
        .filter_map(|room| {
            let wish = room.wish?;
            let phrase = Phrase::new("report-wish").phrase("room", naming::of_room(teller.survey(), room));
            Some(phrase.with("down", Arg::Rate(wish.down_mbps)).with("up", Arg::Rate(wish.up_mbps)))
        })
        .collect();
    html! {
        @if wishes.is_empty() {
            p { (teller.word("report-wish-none")) }
        } @else {
            ul { @for wish in &wishes { li { (teller.say(wish)) } } }
        }
    }
}

fn house(teller: &ReportTeller<'_>) -> Vec<String> {
    let survey = teller.survey();
    let mut lines = Vec::new();
    if let Some(place) = &survey.place {
        lines.push(teller.say(&Phrase::new("report-place").text("place", place)));
    }
    if let Some(building) = survey.building {
        lines.push(teller.word(match building.ownership {
            Ownership::Own => "report-building-own",
            Ownership::Rented => "report-building-rented",
        }));
        if building.shared {
            lines.push(teller.word("report-building-shared"));
        }
    }
    if let Some(internet) = survey.internet {
        let (down, up) = (Arg::Rate(internet.down_mbps), Arg::Rate(internet.up_mbps));
        lines.push(teller.say(&Phrase::new("report-internet").with("down", down).with("up", up)));
    }
    let mut services: Vec<_> = survey.services.values().map(|service| service.kind).collect();
    services.sort_unstable();
    services.dedup();
    lines.push(if services.is_empty() {
        teller.word("report-services-none")
    } else {
        let names = services.into_iter().map(naming::service);
        teller.say(&Phrase::new("report-services").with("services", ReportTeller::list(names)))
    });
    let planned = are_adapters_planned(survey);
    let port = survey.network.port();
    lines.push(
        teller.say(
            &Phrase::new(if planned { "report-network-planned" } else { "report-network" })
                .text("version", &survey.network.version)
                .text("said", if port.is_stated { "yes" } else { "no" })
                .with("port", Arg::RateAsRead(f64::from(port.mbps))),
        ),
    );
    if let Some(bridge) = teller.forecast().bridge {
        let to_come = has_no_adapters(survey) && are_adapters_to_place(survey);
        let id = if to_come { "report-bridge-planned" } else { "report-bridge" };
        lines.push(teller.say(&Phrase::new(id).phrase("bridge", naming::part(survey, bridge))));
    }
    lines
}
