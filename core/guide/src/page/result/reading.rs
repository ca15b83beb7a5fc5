//! One reading: what it says, how it was taken, and taking it out where it was a slip of the pen.

use facts::fact::SubjectId;
use house::naming;
use house::record::{HowMeasured, TestReach};
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::place::{Key, Move};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Session, SurveySnapshot};
use crate::view::ScreenBuilder;

/// How it was taken, in words.
pub(super) fn how(how: HowMeasured) -> Phrase {
    let kind = Phrase::new(match (how.reach, how.over_radio) {
        (TestReach::House, false) => "test-kind-house",
        (TestReach::House, true) => "test-kind-house-radio",
        (TestReach::Internet, false) => "test-kind-internet",
        (TestReach::Internet, true) => "test-kind-internet-radio",
        (TestReach::AdapterPage, _) => "test-kind-page",
    });
    match how.socket_mbps {
        Some(mbps) => {
            Phrase::new("test-over-socket").phrase("how", kind).with("socket", Arg::RateAsRead(mbps.into()))
        }
        None => kind,
    }
}

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, id: SubjectId) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("reading"));
    match snapshot.survey.readings.get(&id) {
        None => builder.words(WordsRole::Problem, &Phrase::new("gone")),
        Some(reading) => {
            let about = reading.about.map(|part| naming::part(snapshot.survey, part));
            let name = about.unwrap_or_else(|| Phrase::new("place-house"));
            let remark = reading.how.map(how);
            builder.reading(id, &name, &naming::reading(reading.measured), remark.as_ref());
            builder.confirm_loss(&Key::Remove, &Phrase::new("reading-remove"));
        }
    }
    builder.press(&Key::Tests, &Phrase::new("to-tests"), PressWeight::Main);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

pub(crate) fn take(session: &mut Session, id: SubjectId, done: &Done) -> Result<Move> {
    let open = session.open_survey()?;
    if !matches!(done, Done::Press(Key::Remove)) || !open.survey.readings.contains_key(&id) {
        return Ok(Move::Stay);
    }
    let removal = open.store.ledger().remove(id);
    open.write(&[removal])?;
    Ok(Move::Back)
}
