//! What photos of a cable's jacket show: its series, the marks at its ends, and the length that two of them give; offered like the
//! figures of a label, and counted once it is taken.

use std::sync::Arc;

use facts::fact::SubjectId;
use house::printed::cable_printed;
use house::record::{CableKind, Photo, PhotoRole, Run, RunLength, field};
use label::seen::{JacketLength, LengthUnsure, Member, NoLength, SeenNumber, SeenPlace, Unsure};
use phrase::{Arg, Phrase};

use super::answer::Answer;
use super::label_photo::{not_read, part_shown_of};
use crate::photo_read::PhotoRead;
use crate::place::{Choice, JacketFigure, Key, Question, TakenOfJacket};
use crate::screen::{Aloud, LabelBlock, LabelFigure, PhotoPiece, PressWeight, WordsRole};
use crate::session::{Pending, PrintRead, SurveySnapshot};
use crate::view::{ScreenBuilder, photo_slot};

/// A length that is this share off what stands is the same: a mark counts whole feet or metres.
const SAME_LENGTH: f64 = 0.005;

/// What the photos of a cable's jacket show; the last photo comes first.
struct Jacket<'a> {
    run: &'a Run,
    reads: Vec<(SubjectId, Arc<PhotoRead>)>,
}

/// One thing read off a jacket.
struct ReadOff {
    taken: TakenOfJacket,
    /// Why it is asked; nothing if it is sure.
    unsure: Vec<Phrase>,
    /// Where it stands, if it stands somewhere.
    at: Option<(usize, SeenPlace)>,
}

impl<'a> Jacket<'a> {
    fn of(snapshot: &SurveySnapshot<'a>, run: &'a Run) -> Self {
        let read = |photo: &Photo| match snapshot.print_of(photo) {
            Some(PrintRead::Read(read)) => Some((photo.id, read)),
            _ => None,
        };
        Self { run, reads: snapshot.jacket_photos(run.id).into_iter().filter_map(read).collect() }
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
        if self.run.cable != CableKind::Unknown && self.run.cable != series {
            unsure.push(Phrase::new("jacket-stands-otherwise"));
        }
        let at = seen.and_then(|seen| seen.places.first()).map(|at| (place, at.clone()));
        Some(ReadOff { taken: TakenOfJacket::Series(series), unsure, at })
    }

    /// The two photos by whose marks the length is worked out, the earlier one first: of the last with a mark and the last before
    /// it with which there is a length. Where there is none, why not.
    fn length(&self) -> Option<Result<([usize; 2], JacketLength), NoLength>> {
        let has_mark =
            |(_, (_, read)): &(usize, &(SubjectId, Arc<PhotoRead>))| read.suggestion.marks().next().is_some();
        let mut marked = self.reads.iter().enumerate().filter(has_mark);
        let (far, (_, last)) = marked.next()?;
        let mut why_not = None;
        for (near, (_, read)) in marked {
            match JacketLength::between([&read.suggestion, &last.suggestion]) {
                Ok(length) => return Some(Ok(([near, far], length))),
                Err(why) => _ = why_not.get_or_insert(why),
            }
        }
        why_not.map(Err)
    }

    fn read_off(&self) -> Vec<ReadOff> {
        let length = self.length().and_then(Result::ok).map(|(_, length)| {
            let mut unsure: Vec<Phrase> = length.unsure.iter().map(|why| why.phrase()).collect();
            let is_same = |stands: RunLength| (stands.metres / length.metres - 1.0).abs() <= SAME_LENGTH;
            if self.run.length.is_some_and(|stands| !is_same(stands)) {
                unsure.push(Phrase::new("jacket-stands-otherwise"));
            }
            ReadOff { taken: TakenOfJacket::Metres(length.metres), unsure, at: None }
        });
        self.series().into_iter().chain(length).collect()
    }

    fn piece(&self, builder: &ScreenBuilder<'_>, (place, at): (usize, &SeenPlace)) -> Option<PhotoPiece> {
        let (photo, read) = self.reads.get(place)?;
        Some(builder.piece(*photo, read.piece_shown(at)?))
    }

    /// The marks as they stand on the screen: those that give the length, else those of the last photo that has any.
    fn marks(&self, builder: &ScreenBuilder<'_>) -> Vec<LabelFigure> {
        let marks: Vec<(usize, SeenNumber)> = if let Some(Ok((places, length))) = self.length() {
            places.into_iter().zip(length.marks).collect()
        } else {
            let mark = |(place, (_, read)): (usize, &(SubjectId, Arc<PhotoRead>))| {
                Some((place, read.suggestion.marks().next()?.clone()))
            };
            let mut marks: Vec<_> = self.reads.iter().enumerate().filter_map(mark).take(2).collect();
            marks.reverse();
            marks
        };
        let of_mark = |(end, (place, mark)): (usize, (usize, SeenNumber))| {
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

    /// What is sure of it.
    fn sure(&self) -> Vec<TakenOfJacket> {
        self.read_off().into_iter().filter(|read| read.unsure.is_empty()).map(|read| read.taken).collect()
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

/// What is taken once one touch has taken all that was read and is sure, beside what was taken before.
pub(crate) fn with_sure_taken(snapshot: &SurveySnapshot<'_>, question: &Question) -> Vec<TakenOfJacket> {
    let mut taken = given(snapshot.pending());
    let Some(run) = run_of(snapshot, question) else { return taken };
    for sure in Jacket::of(snapshot, run).sure() {
        if taken.iter().all(|taken| taken.figure() != sure.figure()) {
            taken.push(sure);
        }
    }
    taken
}

/// What is taken once this was touched: it, as it is read now; or not it, if it was taken before.
pub(crate) fn with_touched(
    snapshot: &SurveySnapshot<'_>,
    question: &Question,
    figure: JacketFigure,
) -> Vec<TakenOfJacket> {
    let mut taken = given(snapshot.pending());
    let Some(run) = run_of(snapshot, question) else { return taken };
    let before = taken.len();
    taken.retain(|taken| taken.figure() != figure);
    if taken.len() == before {
        let read = Jacket::of(snapshot, run).read_off().into_iter().map(|read| read.taken);
        taken.extend(read.filter(|read| read.figure() == figure));
    }
    taken
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
    // One that waits is told of once; of the others why nothing came of the last.
    let waits = photos.iter().find(|photo| matches!(snapshot.print_of(photo), Some(PrintRead::Waits(_))));
    if let Some(photo) = waits.or(photos.first()) {
        not_read(snapshot.print_of(photo), builder);
    }
    let jacket = Jacket::of(snapshot, run);
    read(snapshot, builder, &jacket);
    for (place, photo) in photos.iter().take(2).enumerate() {
        let words = Phrase::new("jacket-part").text("photo", if place == 0 { "last" } else { "before" });
        builder.press(&Key::PhotoPart(photo.id), &words, PressWeight::Other);
    }
}

fn read(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, jacket: &Jacket<'_>) {
    let Some((photo, _)) = jacket.reads.first() else { return };
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
        Some(LabelFigure {
            id: figure.word().into(),
            aloud: Aloud::default(),
            key: Some(Key::TakeOff(figure).to_string()),
            name: builder.say(&Phrase::new(format!("jacket-{}", figure.word()))),
            says: builder.say(&written(value)),
            taken: taken.is_some(),
            picked: taken.is_some(),
            doubt: read.map(|read| said(builder, read.unsure.iter().cloned())).unwrap_or_default(),
            piece: read
                .and_then(|read| read.at.as_ref())
                .and_then(|(place, at)| jacket.piece(builder, (*place, at))),
        })
    };
    let [series, length] = [JacketFigure::Series, JacketFigure::Length].map(of);
    let figures: Vec<LabelFigure> = series.into_iter().chain(marks).chain(length).collect();
    if figures.is_empty() {
        let nothing = Phrase::new("label-photo-no-figures").text("text", text);
        builder.words(WordsRole::Aside, &nothing);
        return;
    }
    let block = LabelBlock {
        id: String::new(),
        aloud: Aloud::default(),
        name: String::new(),
        photo: Some(photo.to_string()),
        part: part_shown_of(snapshot, builder, *photo),
        text,
        figures,
        doubts: Vec::new(),
    };
    builder.label(&Phrase::new("jacket-recognised"), block);
    match jacket.length() {
        Some(Err(why)) => builder.words(WordsRole::Aside, &why.phrase()),
        None if has_mark => builder.words(WordsRole::Aside, &Phrase::new("jacket-other-end")),
        Some(Ok(_)) | None => {}
    }
    let is_open = |sure: &TakenOfJacket| given.iter().all(|taken| taken.figure() != sure.figure());
    if jacket.sure().iter().any(is_open) {
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
