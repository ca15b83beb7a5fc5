//! Readings of a meter at a part or one of its legs: several frequencies in a row, the same ones at the next place.

use advice::finding::Caution;
use facts::fact::SubjectId;
use house::naming;
use house::record::{Is, Part, PartKind, Reading, ReadingKind, Survey, field};
use phrase::Phrase;

use super::{builder, clear, finder, go, gone, reading, write};
use crate::error::Result;
use crate::number::Quantity;
use crate::place::{Choice, FieldPlace, Key, Move};
use crate::question::{Answer, Told, not_answered};
use crate::screen::{PressWeight, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// The most readings of a place that are shown.
const SHOWN: usize = 40;

/// Where at a part one measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum MeasuredAt {
    /// At its input.
    Input,
    /// At one of its outputs.
    Output(u8),
}

impl Choice for MeasuredAt {
    fn key(&self) -> String {
        match self {
            Self::Input => "in".into(),
            Self::Output(port) => port.key(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        if key == "in" { Some(Self::Input) } else { u8::of(key).map(Self::Output) }
    }
}

pub(crate) fn show_places<'a>(snapshot: &SurveySnapshot<'a>) -> ScreenBuilder<'a> {
    let mut builder = builder(snapshot, &Phrase::new("free-meter"));
    builder.words(WordsRole::Lead, &Phrase::new("free-meter-lead"));
    finder::draw(snapshot, &mut builder, &Phrase::new("free-parts-rows"), None, |_| true);
    if !snapshot.survey.readings.is_empty() {
        builder.words(WordsRole::Heading, &Phrase::new("free-meter-so-far"));
        reading::blocks(snapshot, &mut builder, snapshot.survey.readings.values(), SHOWN);
    }
    builder
}

pub(crate) fn pressed_place(key: &Key) -> Move {
    match key {
        Key::Part(part) => go(FieldPlace::Meter(*part)),
        _ => Move::Stay,
    }
}

/// Whether it has legs to tell apart; at an entry or an outlet there is one place only.
fn has_legs(part: &Part) -> bool {
    !matches!(part.kind, PartKind::Entry | PartKind::Outlet) && part.outputs() > 0
}

fn port(snapshot: &SurveySnapshot<'_>) -> Option<u8> {
    match snapshot.pending().one(&Key::Port)? {
        MeasuredAt::Input => None,
        MeasuredAt::Output(port) => Some(port),
    }
}

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>, id: SubjectId) -> ScreenBuilder<'a> {
    let survey = snapshot.survey;
    let Some(part) = survey.parts.get(&id) else { return gone(snapshot, "free-part") };
    let mut builder =
        builder(snapshot, &Phrase::new("free-meter-at").phrase("part", naming::part(survey, id)));
    builder.words(WordsRole::How, &Phrase::new("free-meter-how"));
    if has_legs(part) {
        let leg = |port: u8| {
            let words = naming::with_port(Phrase::new("free-port"), Some(part), port);
            Offer::new(&MeasuredAt::Output(port), words)
        };
        let offers = [Offer::new(&MeasuredAt::Input, Phrase::new("free-port-in"))].into_iter();
        let offers = offers.chain((1..=part.outputs()).map(leg)).collect();
        builder.choice(&Key::Port, &Phrase::new("free-meter-port"), false, offers, &[MeasuredAt::Input]);
    }
    let next = next_mhz(snapshot, id, port(snapshot));
    builder.number(&Key::Mhz, &Phrase::new("free-mhz"), None, Quantity::Frequency, next);
    builder.number(&Key::Dbmv, &Phrase::new("free-dbmv"), None, Quantity::Level, None);
    builder.number(
        &Key::Mer,
        &Phrase::new("free-mer"),
        Some(&Phrase::new("free-mer.hint")),
        Quantity::ErrorRatio,
        None,
    );
    if part.kind == PartKind::Outlet {
        let hint = Phrase::new("free-sends.hint");
        builder.number(&Key::Sends, &Phrase::new("free-sends"), Some(&hint), Quantity::Level, None);
    }
    if Caution::WhoDependsOnIt.is_open_in(survey) {
        builder.caution(&Caution::WhoDependsOnIt.phrase());
    }
    if matches!(part.kind, PartKind::Entry | PartKind::GroundBlock | PartKind::EntryFilter) {
        builder.caution(&Caution::HouseSideOnly.phrase());
        builder.caution(&Caution::KeepGrounds.phrase());
    }
    builder.press(&Key::Keep, &Phrase::new("free-keep"), PressWeight::Main);
    builder.press(&Key::Other, &Phrase::new("free-meter-other"), PressWeight::Other);
    reading::blocks(snapshot, &mut builder, survey.readings_at(id), SHOWN);
    builder
}

/// The frequency of a reading that has one.
fn mhz_of(reading: &Reading) -> Option<f64> {
    match reading.measured {
        ReadingKind::Level { mhz, .. } | ReadingKind::ErrorRatio { mhz, .. } => Some(mhz),
        _ => None,
    }
}

fn same_mhz(one: f64, two: f64) -> bool {
    (one - two).abs() < 0.05
}

/// The lowest frequency that was measured at the place before and not yet here.
fn next_mhz(snapshot: &SurveySnapshot<'_>, part: SubjectId, port: Option<u8>) -> Option<f64> {
    let survey = snapshot.survey;
    let place = |reading: &Reading| (reading.about, reading.port);
    let here = (Some(part), port);
    let with_mhz = || survey.readings.values().filter(|reading| mhz_of(reading).is_some());
    let before = with_mhz().filter(|reading| place(reading) != here);
    let before = before.max_by_key(|reading| reading::written(snapshot, reading)).map(place)?;
    let at = |of: (Option<SubjectId>, Option<u8>)| {
        with_mhz().filter(move |reading| place(reading) == of).filter_map(mhz_of)
    };
    let done: Vec<f64> = at(here).collect();
    at(before).filter(|mhz| !done.iter().any(|there| same_mhz(*there, *mhz))).min_by(f64::total_cmp)
}

/// A reading at a place. One of the same frequency that stands there is written over; its story keeps what it said.
fn say(survey: &Survey, answer: Answer, part: SubjectId, port: Option<u8>, told: ReadingKind) -> Answer {
    let same = |reading: &&Reading| {
        let kind = std::mem::discriminant(&reading.measured) == std::mem::discriminant(&told);
        let new = Reading { id: reading.id, about: None, port, measured: told, how: None };
        let at = match (mhz_of(reading), mhz_of(&new)) {
            (Some(one), Some(two)) => same_mhz(one, two),
            (one, two) => one.is_none() && two.is_none(),
        };
        kind && reading.port == port && at
    };
    if let Some(there) = survey.readings_at(part).find(same) {
        return answer.says(there.id, field::reading::MEASURED, &told);
    }
    let id = SubjectId::random();
    let answer = answer.is(id, Is::Reading).says(id, field::reading::ABOUT, &part);
    let answer = match port {
        Some(port) => answer.says(id, field::reading::PORT, &port),
        None => answer,
    };
    answer.says(id, field::reading::MEASURED, &told)
}

fn readings(snapshot: &SurveySnapshot<'_>, id: SubjectId) -> Told<Answer> {
    let pending = snapshot.pending();
    let part = snapshot.survey.parts.get(&id).ok_or_else(not_answered)?;
    let port = port(snapshot).filter(|port| has_legs(part) && (1..=part.outputs()).contains(port));
    let mhz = match pending.typed(&Key::Mhz) {
        Some(_) => pending.number(&Key::Mhz, Quantity::Frequency)?,
        None => next_mhz(snapshot, id, port),
    };
    let level = pending.number(&Key::Dbmv, Quantity::Level)?;
    let ratio = pending.number(&Key::Mer, Quantity::ErrorRatio)?;
    let sends = pending.number(&Key::Sends, Quantity::Level)?;
    let mut answer = Answer::new();
    if level.is_some() || ratio.is_some() {
        let mhz = mhz.ok_or_else(|| Phrase::new("free-no-mhz"))?;
        if let Some(dbmv) = level {
            answer = say(snapshot.survey, answer, id, port, ReadingKind::Level { mhz, dbmv });
        }
        if let Some(db) = ratio {
            answer = say(snapshot.survey, answer, id, port, ReadingKind::ErrorRatio { mhz, db });
        }
    }
    if let Some(dbmv) = sends {
        answer = say(snapshot.survey, answer, id, None, ReadingKind::ModemSends { dbmv });
    }
    if answer.edits.is_empty() { Err(Phrase::new("free-nothing-measured")) } else { Ok(answer) }
}

pub(crate) fn pressed(session: &mut Session, id: SubjectId, key: &Key) -> Result<Move> {
    match key {
        Key::Other => return Ok(go(FieldPlace::MeterAt)),
        Key::Keep => {}
        _ => return Ok(Move::Stay),
    }
    let at = session.with_snapshot(|snapshot| snapshot.pending().one::<MeasuredAt>(&Key::Port))?;
    let told = session.with_snapshot(|snapshot| readings(snapshot, id))?;
    if write(session, told)? {
        // The same leg, the next frequency.
        clear(session)?;
        if let Some(at) = at {
            session.open_survey()?.memory.pending.pick(&Key::Port, [at]);
        }
    }
    Ok(Move::Stay)
}
