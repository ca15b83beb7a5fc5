//! The cables between parts: series, length, connectors.

use advice::finding::Caution;
use coax::quantity::METRES_PER_FOOT;
use facts::fact::SubjectId;
use house::record::{Asked, CableKind, Connector, LengthKnown, Named, Reply, RunLength, field};
use phrase::{Arg, Phrase};

use super::answer::{Answer, Told, UNSURE, not_answered};
use crate::number::Quantity;
use crate::place::{Choice, Key, Question, choices, replies};
use crate::screen::{PressWeight, WordsRole};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// The series that a jacket may name, in the order in which they are offered.
const SERIES: [CableKind; 4] = [CableKind::Six, CableKind::FiftyNine, CableKind::Seven, CableKind::Eleven];

/// How a connector may be, in the order in which it is offered.
const CONNECTORS: [Connector; 7] = [
    Connector::Compression,
    Connector::Crimp,
    Connector::PushOn,
    Connector::TwistOn,
    Connector::Corroded,
    Connector::HandTight,
    Connector::BadJoint,
];

/// How a length may be known.
const KNOWN: [LengthKnown; 3] = [LengthKnown::Measured, LengthKnown::Paced, LengthKnown::Guessed];

fn series_offers() -> Vec<Offer> {
    let offer = |series: &CableKind| {
        let words = Phrase::new(format!("cable-{}", series.key()));
        let about = words.attribute("about");
        Offer::new(series, words).about(about)
    };
    SERIES.iter().map(offer).collect()
}

/// What is printed on the jackets, all at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum CablesAnswer {
    /// The same on all.
    All(CableKind),
    /// Not the same.
    Differ,
    /// Somebody looked and could not tell.
    Unsure,
}

impl Choice for CablesAnswer {
    fn key(&self) -> String {
        match self {
            Self::All(series) => series.key(),
            Self::Differ => "differ".into(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match key {
            "differ" => Some(Self::Differ),
            UNSURE => Some(Self::Unsure),
            key => CableKind::of(key).filter(|series| SERIES.contains(series)).map(Self::All),
        }
    }
}

impl CablesAnswer {
    /// The reply that it is written as.
    fn reply(self) -> Reply {
        match self {
            Self::All(CableKind::Six) => Reply::Six,
            Self::All(CableKind::FiftyNine) => Reply::FiftyNine,
            Self::All(CableKind::Seven) => Reply::Seven,
            Self::All(CableKind::Eleven) => Reply::Eleven,
            Self::Differ => Reply::Differ,
            Self::All(CableKind::Unknown) | Self::Unsure => Reply::Unsure,
        }
    }

    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let mut offers = series_offers();
        offers.push(Offer::new(&Self::Differ, Phrase::new("cable-differ")));
        offers.push(Offer::unsure(&Self::Unsure));
        let now =
            snapshot.survey.reply(snapshot.survey.id, Asked::Cables).and_then(|reply| Self::of(reply.name()));
        builder.choice(&Key::Series, &Phrase::new("ask-cables"), false, offers, &now);
        builder.caution(&Caution::Heights.phrase());
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Series).ok_or_else(not_answered)
    }

    /// One answer for all cables of which nobody said more; where they differ, each is asked about.
    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let mut answer = Answer::new().asked(snapshot.survey.id, Asked::Cables, self.reply());
        if let Self::All(series) = self {
            for run in snapshot.survey.runs.values().filter(|run| run.cable == CableKind::Unknown) {
                answer = answer.says(run.id, field::run::CABLE, &series);
            }
        }
        answer
    }
}

/// What is printed on one cable's jacket.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum CableAnswer {
    /// A series.
    Series(CableKind),
    /// Somebody looked and could not tell.
    Unsure,
}

impl Choice for CableAnswer {
    fn key(&self) -> String {
        match self {
            Self::Series(series) => series.key(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match key {
            UNSURE => Some(Self::Unsure),
            key => CableKind::of(key).filter(|series| SERIES.contains(series)).map(Self::Series),
        }
    }
}

impl CableAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, run: SubjectId) {
        let mut offers = series_offers();
        offers.push(Offer::unsure(&Self::Unsure));
        let series = snapshot.survey.runs.get(&run).map(|run| run.cable).filter(|of| SERIES.contains(of));
        let unsure = || snapshot.survey.answer(run, Asked::Cable).map(|_| Self::Unsure);
        let now = series.map(Self::Series).or_else(unsure);
        builder.choice(&Key::Series, &Question::Cable(run).phrase(snapshot), false, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Series).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, run: SubjectId) -> Answer {
        match self {
            Self::Unsure => Answer::new().asked(run, Asked::Cable, Reply::Unsure).says(
                run,
                field::run::CABLE,
                &CableKind::Unknown,
            ),
            Self::Series(series) => Answer::new().says(run, field::run::CABLE, &series),
        }
    }
}

/// Whether somebody said a range, and not a figure alone whose range is that of its way of knowing.
fn has_own_range(length: &RunLength) -> bool {
    *length != RunLength::stated(length.metres, length.known)
}

/// How long a cable is, and how that is known; what was not touched stays as it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LengthAnswer {
    metres: Option<f64>,
    known: Option<LengthKnown>,
}

impl LengthAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, run: SubjectId) {
        let length = snapshot.survey.runs.get(&run).and_then(|run| run.length);
        let (name, hint) = (Phrase::new("length"), Phrase::new("ask-length.hint"));
        let metres = length.map(|length| length.metres);
        builder.number(&Key::Length, &name, Some(&hint), Quantity::Length, metres);
        if let Some(length) = length.filter(has_own_range) {
            let range = Phrase::new("length-range").with("length", Arg::LengthRange(length.span()));
            builder.words(WordsRole::Aside, &range);
        }
        let words = |known: &LengthKnown| Phrase::new(format!("how-long-{}", known.key()));
        let offers = KNOWN.iter().map(|known| Offer::new(known, words(known))).collect();
        let now = length.map(|length| length.known).filter(|known| KNOWN.contains(known));
        builder.choice(&Key::Known, &Phrase::new("how-long-known"), false, offers, &now);
        builder.press(&Key::Marks, &Phrase::new("how-long-from-marks"), PressWeight::Other);
        builder.caution(&Caution::Heights.phrase());
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        Ok(Self {
            metres: pending.number(&Key::Length, Quantity::Length)?,
            known: pending.one(&Key::Known).filter(|known| KNOWN.contains(known)),
        })
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, run: SubjectId) -> Told<Answer> {
        let before = snapshot.survey.runs.get(&run).and_then(|run| run.length);
        if let (None, Some(known), Some(before)) = (self.metres, self.known, before.filter(has_own_range)) {
            // The figure was not touched, and neither is the range that somebody gave it.
            return Ok(Answer::new().says(run, field::run::LENGTH, &RunLength { known, ..before }));
        }
        let metres = self.metres.or(before.map(|length| length.metres)).ok_or_else(not_answered)?;
        // Who does not say how is taken to have guessed.
        let known = self.known.or(before.map(|length| length.known)).unwrap_or(LengthKnown::Guessed);
        Ok(Answer::new().says(run, field::run::LENGTH, &RunLength::stated(metres, known)))
    }
}

choices! {
    /// The unit in which a jacket counts.
    MarksUnit {
        /// Feet.
        Feet "ft",
        /// Metres.
        Metres "m",
    }
}

/// How long a cable is, by the marks at its two ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct MarksAnswer {
    near: f64,
    far: f64,
    unit: MarksUnit,
}

impl MarksAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, run: SubjectId) {
        builder.words(WordsRole::How, &Question::Marks(run).phrase(snapshot).attribute("how-far"));
        builder.number(&Key::Near, &Phrase::new("marks-one-end"), None, Quantity::Count, None);
        builder.number(&Key::Far, &Phrase::new("marks-other-end"), None, Quantity::Count, None);
        let words = |unit: &MarksUnit| Phrase::new(format!("marks-{}", unit.word()));
        let offers = MarksUnit::ALL.iter().map(|unit| Offer::new(unit, words(unit))).collect();
        builder.choice(&Key::Unit, &Phrase::new("marks-unit"), false, offers, &[MarksUnit::Feet]);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        let mark = |key: &Key| {
            let (typed, _) = pending.typed(key)?;
            typed.trim().replace(',', "").parse::<f64>().ok().filter(|mark| (0.0..1e6).contains(mark))
        };
        let unit = pending.one(&Key::Unit).unwrap_or(MarksUnit::Feet);
        match (mark(&Key::Near), mark(&Key::Far)) {
            (Some(near), Some(far)) => Ok(Self { near, far, unit }),
            _ => Err(Phrase::new("marks-not-read")),
        }
    }

    pub(super) fn answer(self, run: SubjectId) -> Told<Answer> {
        let unit_metres = match self.unit {
            MarksUnit::Feet => METRES_PER_FOOT,
            MarksUnit::Metres => 1.0,
        };
        let metres = (self.near - self.far).abs() * unit_metres;
        if metres > 500.0 {
            return Err(Phrase::new("marks-too-far-apart"));
        }
        Ok(Answer::new().says(run, field::run::LENGTH, &RunLength::stated(metres, LengthKnown::Measured)))
    }
}

replies! {
    /// How the connectors are, all at once.
    ConnectorsAnswer {
        /// Good.
        Good = Good,
        /// Some are not.
        Some = Some,
        /// Somebody looked and could not tell.
        Unsure = Unsure,
    }
}

impl ConnectorsAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offer = |connectors: &Self| match connectors {
            Self::Unsure => Offer::unsure(connectors),
            connectors => Offer::new(connectors, Phrase::new(format!("connectors-{}", connectors.word()))),
        };
        let offers = Self::ALL.iter().map(offer).collect();
        let now = snapshot.survey.reply(snapshot.survey.id, Asked::Connectors).and_then(Self::of_reply);
        builder.choice(&Key::Connectors, &Phrase::new("ask-connectors"), false, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Connectors).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let mut answer = Answer::new().asked(snapshot.survey.id, Asked::Connectors, self.reply());
        if self != Self::Good {
            return answer;
        }
        for run in snapshot.survey.runs.values() {
            for (name, connector) in [
                (field::run::CONNECTOR_NEAR, run.connector_near),
                (field::run::CONNECTOR_FAR, run.connector_far),
            ] {
                if connector == Connector::Unknown {
                    answer = answer.says(run.id, name, &Connector::Compression);
                }
            }
        }
        answer
    }
}

/// How one connector is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum ConnectorSeen {
    /// Like this.
    Is(Connector),
    /// Somebody looked and could not tell.
    Unsure,
}

impl Choice for ConnectorSeen {
    fn key(&self) -> String {
        match self {
            Self::Is(connector) => connector.key(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        let connector = Connector::of(key).filter(|connector| CONNECTORS.contains(connector));
        Some(connector.map_or(Self::Unsure, Self::Is))
    }
}

/// How the two connectors of a cable are; `None` where nobody said.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct ConnectorsOfAnswer {
    near: Option<ConnectorSeen>,
    far: Option<ConnectorSeen>,
}

impl ConnectorsOfAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, run: SubjectId) {
        let found = snapshot.survey.runs.get(&run);
        for (key, connector) in
            [(Key::Near, found.map(|run| run.connector_near)), (Key::Far, found.map(|run| run.connector_far))]
        {
            let seen = CONNECTORS.iter().map(|connector| ConnectorSeen::Is(*connector));
            let offer = |seen: ConnectorSeen| Offer::new(&seen, Phrase::new(format!("plug-{}", seen.key())));
            let mut offers: Vec<_> = seen.map(offer).collect();
            offers.push(Offer::unsure(&ConnectorSeen::Unsure));
            let now = connector.filter(|connector| CONNECTORS.contains(connector)).map(ConnectorSeen::Is);
            builder.choice(&key, &Phrase::new(format!("plug-at-{key}")), false, offers, &now);
        }
    }

    pub(super) fn read(pending: &Pending) -> Self {
        Self { near: pending.one(&Key::Near), far: pending.one(&Key::Far) }
    }

    pub(super) fn answer(self, run: SubjectId) -> Answer {
        let mut answer = Answer::new().asked(run, Asked::Connectors, Reply::Yes);
        for (seen, name) in [(self.near, field::run::CONNECTOR_NEAR), (self.far, field::run::CONNECTOR_FAR)] {
            let connector = match seen {
                None => continue,
                Some(ConnectorSeen::Is(connector)) => connector,
                Some(ConnectorSeen::Unsure) => Connector::Unknown,
            };
            answer = answer.says(run, name, &connector);
        }
        answer
    }
}
