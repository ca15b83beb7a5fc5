//! What photos of a cable's jacket show: its series, the marks at its ends, and the length that two of them give; offered like the
//! figures of a label, and counted once it is taken.

use std::sync::Arc;

use facts::fact::SubjectId;
use house::printed::cable_printed;
use house::record::{CableKind, LengthKnown, Photo, PhotoRole, Run, RunLength, field};
use label::seen::{
    JacketLength, LengthAmong, LengthUnsure, Member, NoLength, SeenNumber, SeenPlace, Suggestion, Unsure,
};
use phrase::{Arg, Phrase};

use super::answer::{Answer, UNSURE};
use super::label_photo::{not_read, part_shown_of};
use crate::photo_read::PhotoRead;
use crate::place::{Choice, JacketFigure, Key, Question, TakenOfJacket};
use crate::screen::{Aloud, LabelBlock, LabelFigure, PhotoPiece, PressWeight, WordsRole};
use crate::session::{Pending, PrintRead, SurveySnapshot};
use crate::view::{ScreenBuilder, photo_slot};

/// A length that is this share off what stands is the same: it was written in another unit.
const SAME_LENGTH: f64 = 1e-6;

/// What the photos of a cable's jacket show; the last photo comes first.
struct Jacket<'a> {
    run: &'a Run,
    reads: Vec<(SubjectId, Arc<PhotoRead>)>,
    /// What lies between two of their marks.
    between: Option<Result<LengthAmong, NoLength>>,
    /// Whether one of them is still to be read: what was read so far may not be all.
    is_waiting: bool,
}

/// One thing read off a jacket.
struct ReadOff {
    taken: TakenOfJacket,
    /// Why it is asked; nothing if it is sure.
    unsure: Vec<Phrase>,
    /// Where it stands, if it stands somewhere.
    at: Option<(usize, SeenPlace)>,
    /// Whether the survey says just that.
    stands: bool,
}

impl<'a> Jacket<'a> {
    fn of(snapshot: &SurveySnapshot<'a>, run: &'a Run) -> Self {
        let photos = snapshot.jacket_photos(run.id);
        let is_waiting =
            photos.iter().any(|photo| matches!(snapshot.print_of(photo), Some(PrintRead::Waits(_))));
        let read = |photo: &Photo| match snapshot.print_of(photo) {
            Some(PrintRead::Read(read)) => Some((photo.id, read)),
            _ => None,
        };
        let reads: Vec<(SubjectId, Arc<PhotoRead>)> = photos.into_iter().filter_map(read).collect();
        let seen: Vec<&Suggestion> = reads.iter().map(|(_, read)| &read.suggestion).collect();
        let between = JacketLength::among(&seen);
        Self { run, reads, between, is_waiting }
    }

    fn series(&self) -> Option<ReadOff> {
        let named = |read: &PhotoRead| read.suggestion.reading.cable.map(cable_printed);
        let mut all = self.reads.iter().enumerate();
        let (place, series, read) =
            all.find_map(|(place, (_, read))| named(read).map(|series| (place, series, read)))?;
        let seen = read.suggestion.members.iter().find(|seen| seen.member == Member::Cable);
        let mut unsure: Vec<Phrase> = seen.map_or_else(
            || vec![Unsure::MeaningUnclear.phrase()],
            |seen| seen.unsure.iter().map(Unsure::phrase).collect(),
        );
        if self.reads.iter().filter_map(|(_, read)| named(read)).any(|other| other != series) {
            unsure.push(LengthUnsure::TwoSeries.phrase());
        }
        let stands = self.run.cable == series;
        if self.run.cable != CableKind::Unknown && !stands {
            unsure.push(Phrase::new("jacket-stands-otherwise"));
        }
        let at = seen.and_then(|seen| seen.places.first()).map(|at| (place, at.clone()));
        Some(ReadOff { taken: TakenOfJacket::Series(series), unsure, at, stands })
    }

    fn length(&self) -> Option<ReadOff> {
        let LengthAmong { length, .. } = self.between.as_ref()?.as_ref().ok()?;
        let mut unsure: Vec<Phrase> = length.unsure.iter().map(|why| why.phrase()).collect();
        let read = RunLength::stated(length.metres, LengthKnown::Measured);
        let is_near = |one: f64, other: f64| (one - other).abs() <= SAME_LENGTH * other;
        let is_it = |stands: RunLength| {
            stands.known == read.known
                && is_near(stands.low_metres, read.low_metres)
                && is_near(stands.high_metres, read.high_metres)
        };
        let stands = self.run.length.is_some_and(is_it);
        if self.run.length.is_some() && !stands {
            unsure.push(Phrase::new("jacket-stands-otherwise"));
        }
        Some(ReadOff { taken: TakenOfJacket::Metres(length.metres), unsure, at: None, stands })
    }

    fn read_off(&self) -> Vec<ReadOff> {
        self.series().into_iter().chain(self.length()).collect()
    }

    fn piece(&self, builder: &ScreenBuilder<'_>, (place, at): (usize, &SeenPlace)) -> Option<PhotoPiece> {
        let (photo, read) = self.reads.get(place)?;
        Some(builder.piece(*photo, read.piece_shown(at)?))
    }

    /// The marks as they stand on the screen: those that give the length, else those of the last photo that has any.
    fn marks(&self, builder: &ScreenBuilder<'_>) -> Vec<LabelFigure> {
        let marks: Vec<(usize, &SeenNumber)> = if let Some(Ok(among)) = &self.between {
            among.photos.into_iter().zip(&among.length.marks).collect()
        } else {
            let all = self.reads.iter().enumerate();
            let mut marks: Vec<_> =
                all.filter_map(|(place, (_, read))| Some((place, read.suggestion.mark()?))).take(2).collect();
            marks.reverse();
            marks
        };
        let of_mark = |(end, (place, mark)): (usize, (usize, &SeenNumber))| {
            let name = Phrase::new("jacket-mark").text("end", if end == 0 { "one" } else { "other" });
            let says =
                Phrase::new("jacket-mark-says").text("mark", &mark.written).text("unit", mark.unit.symbol());
            LabelFigure {
                id: format!("mark-{}", end + 1),
                aloud: Aloud::default(),
                key: None,
                name: builder.say(&name),
                says: builder.say(&says),
                taken: false,
                picked: false,
                doubt: said(builder, mark.unsure.iter().map(Unsure::phrase)),
                piece: self.piece(builder, (place, &mark.place)),
            }
        };
        marks.into_iter().enumerate().map(of_mark).collect()
    }

    /// What is sure of it, and does not stand already; nothing while another photo is read.
    fn sure(&self) -> Vec<TakenOfJacket> {
        let is_sure = |read: &ReadOff| read.unsure.is_empty() && !read.stands && !self.is_waiting;
        self.read_off().into_iter().filter(is_sure).map(|read| read.taken).collect()
    }
}

/// An answer that says of each photo of a jacket what was read in it: who confirmed some of it saw that.
pub(super) fn printed(snapshot: &SurveySnapshot<'_>, run: SubjectId) -> Answer {
    let Some(run) = snapshot.survey.runs.get(&run) else { return Answer::new() };
    let of_photo = |answer: Answer, (photo, read): &(SubjectId, Arc<PhotoRead>)| {
        answer.says(*photo, field::photo::PRINT, read.suggestion.text.as_str())
    };
    Jacket::of(snapshot, run).reads.iter().fold(Answer::new(), of_photo)
}

/// What was taken of a jacket on this screen.
pub(super) fn given(pending: &Pending) -> Vec<TakenOfJacket> {
    pending.picked(&Key::Taken).unwrap_or_default()
}

/// Keeps what is taken once one touch has taken all that was read and is sure, beside what was taken before; what was chosen or typed
/// on the screen stands.
pub(crate) fn take_sure(pending: &mut Pending, sure: Vec<TakenOfJacket>) {
    let mut taken = given(pending);
    taken.extend(sure.into_iter().filter(|sure| is_open(pending, sure.figure())));
    keep(pending, &taken);
}

/// Whether a figure was neither taken nor told on the screen.
fn is_open(pending: &Pending, figure: JacketFigure) -> bool {
    given(pending).iter().all(|taken| taken.figure() != figure) && !is_told(pending, figure)
}

/// Whether a figure was chosen or typed on the screen.
fn is_told(pending: &Pending, figure: JacketFigure) -> bool {
    match figure {
        JacketFigure::Series => pending.picked_keys(&Key::Series).is_some_and(|picked| !picked.is_empty()),
        JacketFigure::Length => {
            pending.typed(&Key::Length).is_some_and(|(typed, _)| !typed.trim().is_empty())
                || is_unsure(pending)
        }
    }
}

/// Whether somebody said on the screen that nobody can tell how long the cable is.
fn is_unsure(pending: &Pending) -> bool {
    pending.picked_keys(&Key::Known).is_some_and(|picked| picked.iter().any(|key| key == UNSURE))
}

/// Keeps what is taken once one figure was touched: it, in place of what was chosen or typed before; or not it, if it was taken
/// before.
pub(crate) fn touch(pending: &mut Pending, read: Vec<TakenOfJacket>, figure: JacketFigure) {
    let mut taken = given(pending);
    let before = taken.len();
    taken.retain(|taken| taken.figure() != figure);
    let is_taken_back = taken.len() < before;
    let read = read.into_iter().filter(|read| read.figure() == figure && !is_taken_back);
    taken.extend(read);
    if !is_taken_back {
        match figure {
            JacketFigure::Series => pending.forget(&Key::Series),
            JacketFigure::Length => {
                pending.forget(&Key::Length);
                if is_unsure(pending) {
                    pending.forget(&Key::Known);
                }
            }
        }
    }
    keep(pending, &taken);
}

/// What is chosen or typed after something was taken stands in its place.
pub(crate) fn told_instead(pending: &mut Pending) {
    let mut taken = given(pending);
    taken.retain(|taken| !is_told(pending, taken.figure()));
    keep(pending, &taken);
}

/// Forgets a length that waits on a cable's screen, taken or typed: it was told in another way since.
pub(crate) fn forget_length(pending: &mut Pending) {
    let mut taken = given(pending);
    taken.retain(|taken| taken.figure() != JacketFigure::Length);
    keep(pending, &taken);
    pending.forget(&Key::Length);
    pending.forget(&Key::Known);
}

fn keep(pending: &mut Pending, taken: &[TakenOfJacket]) {
    if taken.is_empty() {
        pending.forget(&Key::Taken);
    } else {
        pending.pick(&Key::Taken, taken.iter().copied());
    }
}

/// What was read off the jacket of the cable that a question is about.
pub(crate) fn read_off(snapshot: &SurveySnapshot<'_>, question: &Question) -> Vec<TakenOfJacket> {
    let jacket = run_of(snapshot, question).map(|run| Jacket::of(snapshot, run));
    jacket.into_iter().flat_map(|jacket| jacket.read_off()).map(|read| read.taken).collect()
}

/// What of that is sure.
pub(crate) fn sure(snapshot: &SurveySnapshot<'_>, question: &Question) -> Vec<TakenOfJacket> {
    let jacket = run_of(snapshot, question).map(|run| Jacket::of(snapshot, run));
    jacket.map(|jacket| jacket.sure()).unwrap_or_default()
}

fn run_of<'a>(snapshot: &SurveySnapshot<'a>, question: &Question) -> Option<&'a Run> {
    match question {
        Question::Cable(run) => snapshot.survey.runs.get(run),
        _ => None,
    }
}

/// Draws a place for photos of a jacket, and what was read in them.
pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, run: &Run) {
    photo_slot(snapshot, builder, &Key::LabelPhoto, run.id, PhotoRole::Label);
    let photos = snapshot.jacket_photos(run.id);
    let jacket = Jacket::of(snapshot, run);
    // One that waits is told of; else why nothing came of the last that failed, as long as something is missing.
    let is_it = |photo: &&&Photo, waits: bool| match snapshot.print_of(photo) {
        Some(PrintRead::Waits(_)) => waits,
        Some(PrintRead::Failed(_)) => !waits,
        _ => false,
    };
    let waits = photos.iter().find(|photo| is_it(photo, true));
    let failed = || photos.iter().find(|photo| is_it(photo, false)).filter(|_| jacket.length().is_none());
    if let Some(photo) = waits.or_else(failed) {
        not_read(snapshot.print_of(photo), builder);
    }
    read(snapshot, builder, &jacket);
    for (place, photo) in photos.iter().take(2).enumerate() {
        let words = Phrase::new("jacket-part").text("photo", if place == 0 { "last" } else { "before" });
        builder.press(&Key::PhotoPart(photo.id), &words, PressWeight::Other);
    }
}

fn read(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, jacket: &Jacket<'_>) {
    let texts: Vec<&str> =
        jacket.reads.iter().take(2).rev().map(|(_, read)| read.suggestion.text.as_str()).collect();
    let text = texts.join("\n");
    let (read_off, given) = (jacket.read_off(), given(snapshot.pending()));
    let marks = jacket.marks(builder);
    let has_mark = !marks.is_empty();
    let of = |figure: JacketFigure| {
        let read = read_off.iter().find(|read| read.taken.figure() == figure);
        let taken = given.iter().copied().find(|taken| taken.figure() == figure);
        let value = taken.or(read.map(|read| read.taken))?;
        // What is read now says nothing of what was taken before and is otherwise.
        let read = read.filter(|read| read.taken == value);
        let stands = taken.is_none() && read.is_some_and(|read| read.stands);
        let piece = read
            .and_then(|read| read.at.as_ref())
            .and_then(|(place, at)| jacket.piece(builder, (*place, at)));
        Some(LabelFigure {
            id: figure.word().into(),
            aloud: Aloud::default(),
            key: (!stands).then(|| Key::TakeOff(figure).to_string()),
            name: builder.say(&Phrase::new(format!("jacket-{}", figure.word()))),
            says: builder.say(&written(value)),
            taken: taken.is_some() || stands,
            picked: taken.is_some(),
            doubt: read.map(|read| said(builder, read.unsure.iter().cloned())).unwrap_or_default(),
            piece,
        })
    };
    let [series, length] = [JacketFigure::Series, JacketFigure::Length].map(of);
    let figures: Vec<LabelFigure> = series.into_iter().chain(marks).chain(length).collect();
    if figures.is_empty() {
        if !jacket.reads.is_empty() {
            let nothing = Phrase::new("label-photo-no-figures").text("text", text);
            builder.words(WordsRole::Aside, &nothing);
        }
        return;
    }
    let photo = jacket.reads.first().map(|(photo, _)| *photo);
    let block = LabelBlock {
        id: String::new(),
        aloud: Aloud::default(),
        name: String::new(),
        photo: photo.map(|photo| photo.to_string()),
        part: photo.and_then(|photo| part_shown_of(snapshot, builder, photo)),
        text,
        figures,
        doubts: Vec::new(),
    };
    builder.label(&Phrase::new("jacket-recognised"), block);
    if !jacket.is_waiting {
        match &jacket.between {
            Some(Err(why)) => builder.words(WordsRole::Aside, &why.phrase()),
            None if has_mark => builder.words(WordsRole::Aside, &Phrase::new("jacket-other-end")),
            Some(Ok(_)) | None => {}
        }
    }
    if jacket.sure().iter().any(|sure| is_open(snapshot.pending(), sure.figure())) {
        builder.press(&Key::TakeSure, &Phrase::new("label-take-sure"), PressWeight::Other);
    }
}

fn said(builder: &ScreenBuilder<'_>, phrases: impl Iterator<Item = Phrase>) -> String {
    phrases.map(|phrase| builder.say(&phrase)).collect::<Vec<_>>().join(" ")
}

fn written(taken: TakenOfJacket) -> Phrase {
    match taken {
        TakenOfJacket::Series(series) => Phrase::new(format!("cable-{}", series.key())),
        TakenOfJacket::Metres(metres) => Phrase::new("figure-says").with("value", Arg::Length(metres)),
    }
}
