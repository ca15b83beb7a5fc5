//! What a test said, typed in.

use facts::fact::SubjectId;
use house::record::{HowMeasured, Is, ReadingKind, TestReach, field};
use phrase::Phrase;

use super::{outlet_test_behind, outlet_test_link, outlet_test_socket};
use crate::done::Done;
use crate::error::Result;
use crate::number::Quantity;
use crate::place::{Key, Move, Place, ResultPlace, TestKind};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::{Pending, Session, SurveySnapshot};
use crate::view::{ScreenBuilder, shown};

impl TestKind {
    const fn how(self) -> HowMeasured {
        let reach = match self {
            Self::House | Self::HouseRadio => TestReach::House,
            Self::Internet | Self::InternetRadio => TestReach::Internet,
            Self::Page | Self::Link => TestReach::AdapterPage,
        };
        HowMeasured::new(reach, matches!(self, Self::HouseRadio | Self::InternetRadio))
    }

    /// What it gives, key and quantity.
    fn figures(self) -> Vec<(Key, Quantity)> {
        match self {
            Self::Link => Vec::new(),
            Self::Page => vec![
                (Key::Phy, Quantity::Rate),
                (Key::Sent, Quantity::Power),
                (Key::Received, Quantity::Power),
            ],
            _ => vec![
                (Key::Down, Quantity::Rate),
                (Key::Up, Quantity::Rate),
                (Key::Latency, Quantity::Time),
                (Key::Lost, Quantity::Share),
                (Key::LostQuiet, Quantity::Share),
            ],
        }
    }
}

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, outlet: SubjectId, kind: TestKind) -> Screen {
    let title = Phrase::new("test-title").phrase("outlet", shown::outlet(snapshot.survey, outlet));
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    builder.words(WordsRole::Lead, &Phrase::new(format!("test-kind-{}", kind.word())));
    builder.words(WordsRole::How, &Phrase::new(format!("test-how-{}", kind.word())));
    for (key, quantity) in kind.figures() {
        let name = Phrase::new(format!("test-{key}"));
        let hint = name.attribute("hint");
        let hint = snapshot.language.knows(&hint.id).then_some(hint);
        builder.number(&key, &name, hint.as_ref(), quantity, None);
    }
    match kind {
        TestKind::Link => outlet_test_link::ask(&mut builder, snapshot.survey, outlet),
        TestKind::House => {
            outlet_test_socket::ask(&mut builder);
            outlet_test_behind::ask(&mut builder, snapshot.survey, outlet);
        }
        TestKind::Internet => outlet_test_behind::ask(&mut builder, snapshot.survey, outlet),
        TestKind::HouseRadio | TestKind::InternetRadio | TestKind::Page => {}
    }
    builder.press(&Key::Keep, &Phrase::new("test-keep"), PressWeight::Main);
    builder.press(&Key::Tests, &Phrase::new("test-later"), PressWeight::Quiet);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// What was typed, as readings; none where nothing was.
fn measured(pending: &Pending, kind: TestKind) -> std::result::Result<Vec<ReadingKind>, Phrase> {
    let figure = |key: Key| {
        let quantity = kind.figures().into_iter().find(|(of, _)| *of == key).map(|(_, quantity)| quantity);
        quantity.map_or(Ok(None), |quantity| pending.number(&key, quantity))
    };
    let mut readings = Vec::new();
    match (figure(Key::Down)?, figure(Key::Up)?) {
        (Some(down_mbps), Some(up_mbps)) => readings.push(ReadingKind::Throughput { down_mbps, up_mbps }),
        (None, None) => {}
        _ => return Err(Phrase::new("test-both-ways")),
    }
    readings.extend(figure(Key::Latency)?.map(|ms| ReadingKind::RoundTrip { ms }));
    readings.extend(figure(Key::Lost)?.map(|percent| ReadingKind::PacketLoss { percent, under_load: true }));
    readings.extend(
        figure(Key::LostQuiet)?.map(|percent| ReadingKind::PacketLoss { percent, under_load: false }),
    );
    readings.extend(figure(Key::Phy)?.map(|mbps| ReadingKind::PhyRate { mbps }));
    match (figure(Key::Sent)?, figure(Key::Received)?) {
        (Some(sent_dbm), Some(received_dbm)) => {
            readings.push(ReadingKind::Power { sent_dbm, received_dbm });
        }
        (None, None) => {}
        _ => return Err(Phrase::new("test-both-powers")),
    }
    readings.extend(outlet_test_link::told(pending).map(|state| ReadingKind::Link { state }));
    Ok(readings)
}

pub(crate) fn take(session: &mut Session, outlet: SubjectId, kind: TestKind, done: &Done) -> Result<Move> {
    let open = session.open_survey()?;
    if open.memory.pending.keep(done) || !matches!(done, Done::Press(Key::Keep)) {
        return Ok(Move::Stay);
    }
    let behind = outlet_test_behind::told(&open.memory.pending, &open.survey, outlet);
    let readings = match measured(&open.memory.pending, kind) {
        Ok(readings) if readings.is_empty() && behind.is_none() => {
            session.tell(Phrase::new("not-answered"));
            return Ok(Move::Stay);
        }
        Ok(readings) => readings,
        // What was typed and cannot be taken is never passed over for what was chosen beside it.
        Err(problem) => {
            session.tell(problem);
            return Ok(Move::Stay);
        }
    };
    let how = HowMeasured { socket_mbps: outlet_test_socket::told(&open.memory.pending), ..kind.how() };
    let mut edits = Vec::new();
    for measured in readings {
        // How the link stands is one thing: what is said of it later takes the place of what was said before.
        let before = outlet_test_link::reading(&open.survey, outlet)
            .filter(|_| matches!(measured, ReadingKind::Link { .. }));
        let id = before.unwrap_or_else(SubjectId::random);
        edits.push(Is::Reading.begin(id));
        edits.push(field::reading::MEASURED.set(id, &measured));
        edits.push(field::reading::ABOUT.set(id, &outlet));
        edits.push(field::reading::HOW.set(id, &how));
    }
    edits.extend(behind.map(|behind| field::part::BEHIND_ADAPTER.set(outlet, &behind)));
    open.write(&edits)?;
    Ok(Move::Swap(Place::Result(ResultPlace::Tests)))
}
