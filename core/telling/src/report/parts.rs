//! Every part and every run, with what its label says.

use house::naming;
use house::record::{CableKind, Connector, LengthKnown, Part, PartKind, Run, reading_order};
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::page::Section;
use super::table::table;
use super::teller::ReportTeller;

/// The section.
pub(super) fn section(teller: &ReportTeller<'_>) -> Section {
    let order: Vec<_> = reading_order(teller.survey()).into_iter().filter_map(|id| teller.part(id)).collect();
    let rows: Vec<_> = order.iter().map(|part| row(teller, part)).collect();
    let heads = teller.words(&[
        "head-part",
        "head-where",
        "head-fed",
        "head-label",
        "head-rated",
        "report-runs-caption",
    ]);
    let body = html! {
        @if rows.is_empty() {
            p { (teller.word("report-parts-none")) }
        } @else {
            (table(&teller.word("report-parts-caption"), &heads, &rows))
        }
    };
    Section { id: "parts", heading: "report-parts", body }
}

fn row(teller: &ReportTeller<'_>, part: &Part) -> Vec<Markup> {
    let survey = teller.survey();
    let fed = match survey.wiring.feed(part.id) {
        Some(feed) if survey.parts.get(&feed.part).is_some_and(|feeder| feeder.outputs() > 1) => {
            naming::port(survey, feed.part, feed.port)
        }
        Some(feed) => naming::part(survey, feed.part),
        None if survey.wiring.loose().contains_key(&part.id) => Phrase::new("fed-loose"),
        None => Phrase::new("fed-from-nothing"),
    };
    let place = part.place.as_deref().map_or_else(|| html! { "–" }, ReportTeller::own);
    let has_label = !matches!(part.kind, PartKind::Entry | PartKind::Outlet);
    let label = match &part.label {
        Some(label) => html! { span.print { (ReportTeller::own(label)) } },
        None if has_label => teller.cell(&Phrase::new("label-none")),
        None => html! { "–" },
    };
    let mut said = naming::rated(&part.rating);
    said.extend(part.measured.as_ref().map(|_| Phrase::new("rated-measured")));
    let rated = match said.is_empty() {
        true if has_label => teller.cell(&Phrase::new("rated-none")),
        true => html! { "–" },
        false => teller.cell(&Phrase::new("mark").with("tag", ReportTeller::list(said))),
    };
    let run = run(teller, part).unwrap_or_else(|| html! { "–" });
    vec![teller.name(part.id), place, ReportTeller::own(&teller.say(&fed)), label, rated, run]
}

/// The cable that feeds a part: its mark where it has one, series, length, connectors.
fn run(teller: &ReportTeller<'_>, part: &Part) -> Option<Markup> {
    let survey = teller.survey();
    let feed = survey.wiring.feed(part.id)?;
    let run = feed.run.and_then(|run| survey.runs.get(&run)).cloned();
    // A run that nobody wrote down is one of which nothing is known.
    let run = run.unwrap_or_else(|| Run::new(part.id));
    let (near, far) = (connector_message(run.connector_near), connector_message(run.connector_far));
    let connectors = if near == far {
        Phrase::new("connectors-alike").phrase("both", Phrase::new(near))
    } else {
        Phrase::new("connectors").phrase("near", Phrase::new(near)).phrase("far", Phrase::new(far))
    };
    let is_screwed_on = run.length.is_some_and(|length| length.is_screwed_on());
    let told = match () {
        // Nothing was written down of it: that is said once.
        () if feed.run.is_none() => vec![Phrase::new("run-not-told")],
        () if is_screwed_on => vec![Phrase::new("run-screwed-on")],
        () => vec![Phrase::new(series_message(run.cable)), length(&run), connectors],
    };
    Some(html! {
        @if let Some(tag) = &run.tag { b { (ReportTeller::own(tag)) } ": " }
        @for (place, phrase) in told.iter().enumerate() { @if place > 0 { "; " } (teller.say(phrase)) }
    })
}

fn length(run: &Run) -> Phrase {
    let Some(length) = run.length else { return Phrase::new("length-unknown") };
    let message = match length.known {
        LengthKnown::Measured => {
            return Phrase::new("length-measured").with("length", Arg::Length(length.metres));
        }
        _ if run.is_jumper() => return Phrase::new("length-short"),
        LengthKnown::Paced => "length-paced",
        LengthKnown::Guessed => "length-guessed",
    };
    Phrase::new(message).with("length", Arg::LengthRange(length.span()))
}

fn series_message(cable: CableKind) -> &'static str {
    match cable {
        CableKind::Six => "series-6",
        CableKind::FiftyNine => "series-59",
        CableKind::Seven => "series-7",
        CableKind::Eleven => "series-11",
        CableKind::Unknown => "series-unknown",
    }
}

fn connector_message(connector: Connector) -> &'static str {
    match connector {
        Connector::Compression => "run-connector-compression",
        Connector::Crimp => "run-connector-crimp",
        Connector::PushOn => "run-connector-push-on",
        Connector::TwistOn => "run-connector-twist-on",
        Connector::Corroded => "run-connector-corroded",
        Connector::HandTight => "run-connector-hand-tight",
        Connector::BadJoint => "run-connector-bad-joint",
        Connector::Unknown => "run-connector-unknown",
    }
}
