//! What was measured at a part, with unit, when and by whom.

use house::record::{Reading, ReadingKind, field};
use house::{naming, story};
use phrase::Phrase;

use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

/// The newest of these readings.
pub(super) fn blocks<'a>(
    snapshot: &SurveySnapshot<'_>,
    builder: &mut ScreenBuilder<'_>,
    readings: impl Iterator<Item = &'a Reading>,
    most: usize,
) {
    let mut readings: Vec<_> = readings.collect();
    readings.sort_by_cached_key(|reading| std::cmp::Reverse(written(snapshot, reading)));
    for reading in readings.into_iter().take(most) {
        block(snapshot, builder, reading);
    }
}

/// When a reading was written as it stands, and in what order.
pub(super) fn written(snapshot: &SurveySnapshot<'_>, reading: &Reading) -> Option<facts::fact::FactId> {
    snapshot.ledger.shown(reading.id, field::MEASURED).map(facts::fact::Fact::id)
}

fn block(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, reading: &Reading) {
    let survey = snapshot.survey;
    let place = match (reading.about, reading.port) {
        (Some(part), Some(port)) => naming::port(survey, part, port),
        (Some(part), None) => naming::part(survey, part),
        (None, _) => story::thing(survey, survey.id),
    };
    let kind = match reading.measured {
        ReadingKind::Level { .. } => "free-read-level",
        ReadingKind::ErrorRatio { .. } => "free-read-mer",
        ReadingKind::ModemSends { .. } => "free-read-sends",
        _ => "free-read-other",
    };
    let value = serde_json::to_value(reading.measured).unwrap_or_default();
    let remark = snapshot.ledger.shown(reading.id, field::MEASURED).map(|fact| {
        Phrase::new("free-read-when")
            .text("when", telling::words::date_and_time(fact.id().ms()))
            .phrase("author", story::author(snapshot.ledger, fact.by(), snapshot.me))
    });
    let (name, says) =
        (Phrase::new(kind).phrase("place", place), story::value(survey, field::MEASURED, &value));
    builder.reading(reading.id, &name, &says, remark.as_ref());
}
