//! The cables between parts: series, length and how that is known, on one screen a cable.

use advice::finding::Caution;
use facts::fact::{Fact, SubjectId};
use house::record::{
    Asked, CableKind, LengthKnown, PartKind, Reply, Run, RunLength, Survey, field, reading_order,
};
use phrase::{Arg, Phrase};

use super::answer::{Answer, Told, UNSURE, not_answered};
use super::jacket_photo::{self, printed};
use super::leads_to::jumper_length;
use crate::number::Quantity;
use crate::place::{Choice, Key, TakenOfJacket};
use crate::screen::{PressWeight, WordsRole};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// The series that a jacket may name, in the order in which they are offered.
const SERIES: [CableKind; 4] = [CableKind::Six, CableKind::FiftyNine, CableKind::Seven, CableKind::Eleven];

/// How a length may be known.
const KNOWN: [LengthKnown; 3] = [LengthKnown::Measured, LengthKnown::Paced, LengthKnown::Guessed];

/// The cables that are asked about: each that feeds a part and is more than a jumper, as the map shows them.
pub(crate) fn laid(survey: &Survey) -> Vec<&Run> {
    let fed_over = |part| survey.runs.get(&survey.wiring.feed(part)?.run?);
    reading_order(survey).into_iter().filter_map(fed_over).filter(|run| !run.is_jumper()).collect()
}

/// Whether somebody said which series a cable is, if only that nobody can tell. Earlier releases asked that once of all
/// cables.
pub(super) fn is_series_told(survey: &Survey, run: &Run) -> bool {
    run.cable != CableKind::Unknown
        || survey.answer(run.id, Asked::Cable).is_some()
        || survey.reply(survey.id, Asked::Cables) == Some(Reply::Unsure)
}

/// The same of how long it is.
pub(super) fn is_length_told(survey: &Survey, run: &Run) -> bool {
    run.length.is_some() || survey.answer(run.id, Asked::Length).is_some()
}

/// The series on a jacket.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum OnJacket {
    /// A series.
    Series(CableKind),
    /// Somebody looked and could not tell.
    Unsure,
}

impl Choice for OnJacket {
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

/// Whether somebody said a range, and not a figure alone whose range is that of its way of knowing.
fn has_own_range(length: &RunLength) -> bool {
    *length != RunLength::stated(length.metres, length.known)
}

/// How a length is known, if it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum HowKnown {
    /// In one of these ways.
    By(LengthKnown),
    /// Somebody looked and could not tell how long it is.
    Unsure,
}

impl Choice for HowKnown {
    fn key(&self) -> String {
        match self {
            Self::By(known) => known.key(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match key {
            UNSURE => Some(Self::Unsure),
            key => LengthKnown::of(key).filter(|known| KNOWN.contains(known)).map(Self::By),
        }
    }
}

/// What was said of a cable; `None` where nothing was.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct CableAnswer {
    series: Option<OnJacket>,
    metres: Option<f64>,
    known: Option<HowKnown>,
    /// Whether some of it was taken as it was read in photos of the jacket.
    is_from_photo: bool,
}

impl CableAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, run: SubjectId) {
        let survey = snapshot.survey;
        let found = survey.runs.get(&run);
        if let Some(found) = found {
            jacket_photo::draw(snapshot, builder, found);
        }
        let offer = |series: &CableKind| {
            let words = Phrase::new(format!("cable-{}", series.key()));
            let about = words.attribute("about");
            Offer::new(&OnJacket::Series(*series), words).about(about)
        };
        let mut offers: Vec<_> = SERIES.iter().map(offer).collect();
        offers.push(Offer::unsure(&OnJacket::Unsure));
        let series = found.map(|run| run.cable).filter(|of| SERIES.contains(of)).map(OnJacket::Series);
        let unsure = || survey.answer(run, Asked::Cable).map(|_| OnJacket::Unsure);
        let now = series.or_else(unsure);
        builder.choice(&Key::Series, &Phrase::new("cable-series"), false, offers, &now);

        let length = found.and_then(|run| run.length);
        let (name, hint) = (Phrase::new("length"), Phrase::new("ask-cable.hint"));
        let metres = length.map(|length| length.metres);
        builder.number(&Key::Length, &name, Some(&hint), Quantity::Length, metres);
        if let Some(length) = length.filter(has_own_range) {
            let range = Phrase::new("length-range").with("length", Arg::LengthRange(length.span()));
            builder.words(WordsRole::Aside, &range);
        }
        let words = |known: &LengthKnown| Phrase::new(format!("how-long-{}", known.key()));
        let mut offers: Vec<_> =
            KNOWN.iter().map(|known| Offer::new(&HowKnown::By(*known), words(known))).collect();
        offers.push(Offer::unsure(&HowKnown::Unsure));
        let unsure = || survey.answer(run, Asked::Length).map(|_| HowKnown::Unsure);
        let known = length.map(|length| length.known).filter(|of| KNOWN.contains(of)).map(HowKnown::By);
        // How the last one was known stands here already: mostly it is the same.
        let now = match length {
            Some(_) => known,
            None => unsure().or_else(|| last_known(snapshot).map(HowKnown::By)),
        };
        builder.choice(&Key::Known, &Phrase::new("how-long-known"), false, offers, &now);

        builder.press(&Key::Marks, &Phrase::new("how-long-from-marks"), PressWeight::Other);
        if others(survey, run).next().is_some() {
            builder.press(&Key::OthersToo, &Phrase::new("cable-others-too"), PressWeight::Other);
        }
        if may_be_short(survey, run) {
            builder.press(&Key::Short, &Phrase::new("cable-short"), PressWeight::Other);
            let more = others_short(survey, run).count() as u64;
            if more > 0 {
                let words = Phrase::new("cable-all-short").with("others", Arg::Count(more));
                builder.press(&Key::AllShort, &words, PressWeight::Other);
            }
        }
        builder.caution(&Caution::Heights.phrase());
    }

    /// What somebody chose or typed goes before what was taken as it was read in a photo.
    pub(super) fn read(pending: &Pending) -> Told<Self> {
        let mut answer = Self {
            series: series_given(pending),
            metres: pending.number(&Key::Length, Quantity::Length)?,
            known: pending.one(&Key::Known),
            is_from_photo: false,
        };
        for taken in jacket_photo::given(pending) {
            match taken {
                TakenOfJacket::Series(_) if pending.picked_keys(&Key::Series).is_none() => {}
                TakenOfJacket::Metres(metres)
                    if answer.metres.is_none() && answer.known != Some(HowKnown::Unsure) =>
                {
                    answer.metres = Some(metres);
                    answer.known = answer.known.or(Some(HowKnown::By(LengthKnown::Measured)));
                }
                TakenOfJacket::Series(_) | TakenOfJacket::Metres(_) => continue,
            }
            answer.is_from_photo = true;
        }
        Ok(answer)
    }

    /// What stands already is not written again. What was left empty beside the first answer is not known.
    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, run: SubjectId) -> Told<Answer> {
        let survey = snapshot.survey;
        let found = survey.runs.get(&run).ok_or_else(not_answered)?;
        // Of a cable that was photographed what is missing may be seen on the next photo.
        let is_first =
            !is_series_told(survey, found) && !is_length_told(survey, found) && !self.is_from_photo;
        let says_length = self.metres.is_some() || self.known == Some(HowKnown::Unsure);
        if self.series.is_none() && !says_length && (self.known.is_none() || found.length.is_none()) {
            return Err(not_answered());
        }
        let answer = if self.is_from_photo { printed(snapshot, run) } else { Answer::new() };
        let answer = match self.series.or_else(|| is_first.then_some(OnJacket::Unsure)) {
            Some(seen) => series(answer, found, seen),
            None => answer,
        };
        let known = match self.known {
            Some(HowKnown::Unsure) if self.metres.is_none() => {
                return Ok(without_length(answer, survey, found));
            }
            Some(HowKnown::By(known)) => Some(known),
            Some(HowKnown::Unsure) | None => None,
        };
        if let (None, Some(known), Some(before)) = (self.metres, known, found.length.filter(has_own_range)) {
            // The figure was not touched, and neither is the range that somebody gave it.
            return Ok(answer.says(run, field::run::LENGTH, &RunLength { known, ..before }));
        }
        let Some(metres) = self.metres.or(found.length.map(|length| length.metres)) else {
            return Ok(if is_first { without_length(answer, survey, found) } else { answer });
        };
        if self.metres.is_none() && known.is_none() {
            return Ok(answer);
        }
        // Who does not say how takes what stands on the screen: how this one, or else the last one, is known.
        let known = known.or(found.length.map(|length| length.known)).or_else(|| last_known(snapshot));
        let known = known.unwrap_or(LengthKnown::Guessed);
        Ok(answer.says(run, field::run::LENGTH, &RunLength::stated(metres, known)))
    }

    /// The same, and its series for every other cable of which nobody said more. Who is sure of nothing is so of all.
    pub(super) fn answer_for_all(self, snapshot: &SurveySnapshot<'_>, run: SubjectId) -> Told<Answer> {
        let survey = snapshot.survey;
        let found = survey.runs.get(&run).ok_or_else(not_answered)?;
        let of_this = (found.cable != CableKind::Unknown).then_some(OnJacket::Series(found.cable));
        let seen = self.series.or(of_this).ok_or_else(not_answered)?;
        let mut answer = self.answer(snapshot, run)?;
        let knows_length = self.metres.is_some() || found.length.is_some();
        // Jumpers too: nobody is asked about them one by one.
        let of_all = survey.runs.values().filter(|other| other.id != run && !is_series_told(survey, other));
        for other in of_all {
            answer = series(answer, other, seen);
            if seen == OnJacket::Unsure && !knows_length {
                answer = without_length(answer, survey, other);
            }
        }
        Ok(answer)
    }

    /// A cable as short as an arm: nobody measures it, and nothing more is asked.
    pub(super) fn short(snapshot: &SurveySnapshot<'_>, run: SubjectId) -> Answer {
        let given = snapshot.survey.runs.get(&run).zip(series_given(snapshot.pending()));
        let answer = given.map_or_else(Answer::new, |(found, seen)| series(Answer::new(), found, seen));
        answer.says(run, field::run::LENGTH, &jumper_length())
    }

    /// The same of all between two boxes of which nobody said how long they are.
    pub(super) fn all_short(snapshot: &SurveySnapshot<'_>, run: SubjectId) -> Answer {
        let others = others_short(snapshot.survey, run).map(|other| other.id);
        others.fold(Self::short(snapshot, run), |answer, other| {
            answer.says(other, field::run::LENGTH, &jumper_length())
        })
    }
}

/// The series that was chosen on the screen, or else taken from a photo.
fn series_given(pending: &Pending) -> Option<OnJacket> {
    let taken = || {
        jacket_photo::given(pending).into_iter().find_map(|taken| match taken {
            TakenOfJacket::Series(series) => Some(OnJacket::Series(series)),
            TakenOfJacket::Metres(_) => None,
        })
    };
    pending.one(&Key::Series).or_else(taken)
}

/// What is said of a cable's series.
fn series(answer: Answer, run: &Run, seen: OnJacket) -> Answer {
    match seen {
        OnJacket::Series(series) if run.cable == series => answer,
        OnJacket::Series(series) => answer.says(run.id, field::run::CABLE, &series),
        OnJacket::Unsure => {
            let answer = answer.asked(run.id, Asked::Cable, Reply::Unsure);
            if run.cable == CableKind::Unknown {
                answer
            } else {
                answer.says(run.id, field::run::CABLE, &CableKind::Unknown)
            }
        }
    }
}

/// Nobody can tell how long a cable is.
fn without_length(answer: Answer, survey: &Survey, run: &Run) -> Answer {
    let answer = if run.length.is_some() { answer.clears(run.id, field::run::LENGTH) } else { answer };
    match survey.answer(run.id, Asked::Length) {
        Some(_) => answer,
        None => answer.asked(run.id, Asked::Length, Reply::Unsure),
    }
}

/// The other cables of whose series nobody said anything.
fn others(survey: &Survey, run: SubjectId) -> impl Iterator<Item = &Run> {
    laid(survey).into_iter().filter(move |other| other.id != run && !is_series_told(survey, other))
}

/// Whether a cable may be one between two boxes side by side: it leads from none of the ways in, and to no outlet.
fn may_be_short(survey: &Survey, run: SubjectId) -> bool {
    let Some(to) = survey.wiring.fed_over(run) else { return false };
    let kind = |part: SubjectId| survey.parts.get(&part).map(|part| part.kind);
    let from = survey.wiring.feed(to).and_then(|feed| kind(feed.part));
    kind(to) != Some(PartKind::Outlet) && from != Some(PartKind::Entry)
}

/// The other cables that may be so, and of the length of which nobody said anything.
fn others_short(survey: &Survey, run: SubjectId) -> impl Iterator<Item = &Run> {
    let may_be = move |other: &&Run| other.id != run && may_be_short(survey, other.id);
    laid(survey).into_iter().filter(may_be).filter(|other| !is_length_told(survey, other))
}

/// How this device knew the length that it said last.
fn last_known(snapshot: &SurveySnapshot<'_>) -> Option<LengthKnown> {
    let runs = snapshot.survey.runs.values().filter(|run| !run.is_jumper());
    let told = runs.filter_map(|run| Some((snapshot.ledger.shown(run.id, field::LENGTH)?, run.length?)));
    let by_me = told.filter(|(fact, _): &(&Fact, RunLength)| fact.by() == snapshot.me);
    by_me.max_by_key(|(fact, _)| fact.id()).map(|(_, length)| length.known)
}
