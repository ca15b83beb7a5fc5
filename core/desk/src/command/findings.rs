//! `legwork findings`: what is wrong or at risk.

use std::collections::BTreeSet;

use advice::finding::{Caution, Finding, Grounds, Place, Weight, findings};
use house::record::Survey;
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::context::Context;
use super::json::{PartJson, part};
use super::worked::Opened;
use crate::error::DeskError;
use crate::printed::Page;

/// Looks the house over and tells what is found.
pub fn run(context: &Context, opened: &Opened) -> Result<(), DeskError> {
    let (forecast, survey) = (opened.forecast(context)?, &opened.survey);
    let found = findings(survey, Some(&forecast));
    context.answer(&as_json(context, survey, &found), |page| tell(context, &found, page))
}

/// Tells findings in words: what, why, what to do and on what grounds, then the cautions once each.
pub fn tell(context: &Context, found: &[Finding], page: &mut Page) {
    page.heading(&context.word("desk-findings"));
    page.paragraph(
        0,
        &context.say(&Phrase::new("desk-findings-count").with("count", Arg::Count(found.len() as u64))),
    );
    for (number, finding) in found.iter().enumerate() {
        let what = Phrase::new("desk-finding")
            .phrase("weight", finding.weight().phrase())
            .phrase("what", finding.what());
        page.numbered(number + 1, &context.say(&what));
        page.rows(
            3,
            &[
                (context.word("desk-why"), context.say(&finding.why())),
                (context.word("desk-to-do"), context.say(&finding.todo())),
                (context.word("desk-source"), context.say(&finding.source())),
            ],
        );
    }
    let cautions: BTreeSet<Caution> = found.iter().flat_map(Finding::cautions).copied().collect();
    if !cautions.is_empty() {
        page.heading(&context.word("desk-cautions"));
        page.paragraph(0, &context.word("desk-cautions-first"));
        for caution in cautions {
            page.item(0, &context.say(&caution.phrase()));
        }
    }
}

/// A finding as JSON.
#[derive(Serialize)]
pub struct FindingJson {
    id: &'static str,
    weight: &'static str,
    grounds: &'static str,
    at: Vec<PlaceJson>,
    what: String,
    why: String,
    to_do: String,
    source: String,
    cautions: Vec<String>,
}

#[derive(Serialize)]
struct PlaceJson {
    kind: &'static str,
    part: Option<PartJson>,
    port: Option<u8>,
    room: Option<String>,
}

/// Findings as JSON.
pub fn as_json(context: &Context, survey: &Survey, found: &[Finding]) -> Vec<FindingJson> {
    let one = |finding: &Finding| FindingJson {
        id: finding.kind.id(),
        weight: match finding.weight() {
            Weight::Grave => "grave",
            Weight::Costly => "costly",
            Weight::Minor => "minor",
            Weight::Note => "note",
        },
        grounds: match finding.kind.grounds() {
            Grounds::Published => "published",
            Grounds::CommonPractice => "common_practice",
            Grounds::FromMemory => "from_memory",
            Grounds::Survey => "survey",
        },
        at: finding.at.iter().map(|place| place_as_json(survey, place)).collect(),
        what: context.say(&finding.what()),
        why: context.say(&finding.why()),
        to_do: context.say(&finding.todo()),
        source: context.say(&finding.source()),
        cautions: finding.cautions_in(survey).iter().map(|caution| context.say(&caution.phrase())).collect(),
    };
    found.iter().map(one).collect()
}

fn place_as_json(survey: &Survey, place: &Place) -> PlaceJson {
    let kind = match place {
        Place::Part(_) => "part",
        Place::Port { .. } => "port",
        Place::RunTo(_) => "run_to",
        Place::Room(_) => "room",
        Place::Service(_) => "service",
        Place::House => "house",
    };
    let port = match place {
        Place::Port { port, .. } => Some(*port),
        _ => None,
    };
    let room = match place {
        Place::Room(id) => survey.rooms.get(id).map(|room| room.name.clone()),
        _ => None,
    };
    PlaceJson { kind, part: place.part().map(|id| part(survey, id)), port, room }
}
