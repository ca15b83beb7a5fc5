//! What was read in the photo of a label, offered figure by figure: what is sure with one touch for all of it, what is not with a touch
//! for each, and why.

use std::sync::Arc;

use facts::fact::SubjectId;
use house::printed::kind_printed;
use house::rating::PartRating;
use house::record::{Part, PartKind, field};
use label::seen::{Member, Unsure};
use phrase::Phrase;
use print::PrintError;

use super::answer::Answer;
use super::label_figures::{State, figures, kind_from};
use super::label_standing::{Otherwise, Standing};
use crate::photo_read::PhotoRead;
use crate::place::{Key, LabelFigure, Question, TakenFigure};
use crate::screen::{Aloud, LabelBlock, PhotoPiece, PressWeight, WordsRole};
use crate::session::{Pending, PrintRead, SurveySnapshot};
use crate::view::ScreenBuilder;

/// What was given on the screen that asks what is printed on a part.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct LabelGiven {
    /// The text, if somebody wrote any.
    pub(super) text: Option<String>,
    /// What the device recognised in a photo.
    recognised: Option<String>,
    /// Figures of what was read in a photo that were taken.
    pub(super) taken: Vec<TakenFigure>,
}

impl LabelGiven {
    pub(super) fn read(pending: &Pending) -> Self {
        Self {
            text: pending.written(&Key::Text).map(str::to_owned),
            recognised: pending.written(&Key::Recognised).map(str::to_owned),
            taken: pending.picked(&Key::Taken).unwrap_or_default(),
        }
    }

    /// The text of a part's label: written now, or before.
    pub(super) fn text_of(&self, part: &Part) -> String {
        self.text.clone().or_else(|| part.label.clone()).unwrap_or_default()
    }

    /// Whether the losses that were taken one by one are those of the outputs from the first on, none left out.
    fn are_losses_whole(&self) -> bool {
        let legs = self.taken.iter().filter_map(|taken| match taken.figure {
            LabelFigure::LegLossOf(leg) => Some(leg),
            _ => None,
        });
        let (count, last) = legs.fold((0_u8, 0_u8), |(count, last), leg| (count + 1, last.max(leg)));
        count == last
    }

    /// What was taken of a figure.
    fn taken(&self, figure: LabelFigure) -> Option<f64> {
        self.taken.iter().find(|taken| taken.figure == figure).map(|taken| taken.value)
    }
}

/// What was read in a photo, and by whom.
pub(super) enum Offered {
    /// The device itself recognised this: nobody knows how sure.
    ByDevice(String),
    /// The model beside the program read it, in this photo.
    Read(SubjectId, Arc<PhotoRead>),
    /// Nothing is read now, of what was read before some was taken.
    Before,
}

impl Offered {
    /// What is offered for a part; `None` where nothing was read. What the model read goes before what the device recognised,
    /// since of that nobody knows how sure it is; and while the model reads, nothing is offered that it may contradict.
    pub(super) fn of(snapshot: &SurveySnapshot<'_>, part: SubjectId, given: &LabelGiven) -> Option<Self> {
        let by_device = || given.recognised.clone().map(Self::ByDevice);
        let before = || (!given.taken.is_empty()).then_some(Self::Before);
        let photo = snapshot.label_photo(part);
        match photo.and_then(|photo| Some((photo.id, snapshot.print_of(photo)?))) {
            Some((photo, PrintRead::Read(read))) => {
                let states_nothing = PartRating::of_label(&read.suggestion.text) == PartRating::default();
                by_device().filter(|_| states_nothing).or(Some(Self::Read(photo, read)))
            }
            Some((_, PrintRead::Waits(_))) => before(),
            Some((_, PrintRead::Failed(_) | PrintRead::Lost)) | None => by_device().or_else(before),
        }
    }

    fn text(&self) -> &str {
        match self {
            Self::ByDevice(text) => text,
            Self::Read(_, read) => &read.suggestion.text,
            Self::Before => "",
        }
    }

    fn rating(&self) -> PartRating {
        PartRating::of_label(self.text())
    }

    /// The part's kind: what is known, else what was read.
    fn kind(&self, known: PartKind) -> PartKind {
        let read = || label::read(self.text()).kind.and_then(kind_printed);
        if known == PartKind::Unknown { read().unwrap_or(known) } else { known }
    }

    /// Why a figure is asked, where that is known; nothing if it is sure.
    fn unsure(&self, figure: LabelFigure) -> Vec<Phrase> {
        match self {
            Self::ByDevice(_) | Self::Before => Vec::new(),
            Self::Read(_, read) => {
                let of_figure = read.suggestion.members.iter().find(|seen| seen.member == member(figure));
                of_figure.map_or_else(
                    || vec![Unsure::MeaningUnclear.phrase()],
                    |seen| seen.unsure.iter().map(Unsure::phrase).collect(),
                )
            }
        }
    }

    /// The piece of the photo in which a figure stands with this value.
    pub(super) fn piece(
        &self,
        builder: &ScreenBuilder<'_>,
        figure: LabelFigure,
        value: Option<f64>,
    ) -> Option<PhotoPiece> {
        let Self::Read(photo, read) = self else { return None };
        let piece = read.piece_of(member(figure), value?)?;
        Some(builder.piece(*photo, piece))
    }

    /// The figures that are stated and sure, and that nobody said otherwise.
    fn sure(&self, known: PartKind, standing: &Standing) -> Vec<TakenFigure> {
        if matches!(self, Self::ByDevice(_)) {
            return Vec::new();
        }
        let rating = self.rating();
        let all = LabelFigure::of_part(self.kind(known), &rating).into_iter();
        let stated = all.filter_map(|figure| Some(TakenFigure { figure, value: figure.of(&rating)? }));
        let is_sure = |stated: &TakenFigure| {
            self.unsure(stated.figure).is_empty() && standing.otherwise(*stated).is_none()
        };
        stated.filter(is_sure).collect()
    }

    /// The figures that are read or were taken, each with what was taken of it or else with what is read.
    fn all(&self, known: PartKind, given: &LabelGiven) -> Vec<TakenFigure> {
        let rating = self.rating();
        let read = LabelFigure::of_part(self.kind(known), &rating);
        let taken = given.taken.iter().map(|taken| taken.figure).filter(|figure| !read.contains(figure));
        let value = |figure: &LabelFigure| given.taken(*figure).or_else(|| figure.of(&rating));
        let all = read.iter().copied().chain(taken);
        all.filter_map(|figure| Some(TakenFigure { figure, value: value(&figure)? })).collect()
    }

    /// What was taken of it, as an answer. What was said of the part before stays; a figure that stands in a text that somebody typed,
    /// now or before, is as it was typed. A band is said once both its ends are known, losses once those of all outputs are.
    pub(super) fn taken(
        &self,
        standing: &Standing,
        answer: Answer,
        (part, kind): (SubjectId, PartKind),
        (text, given): (&str, &LabelGiven),
    ) -> Answer {
        let before = &standing.said;
        let taken = |figure: LabelFigure| given.taken(figure).filter(|_| standing.typed(figure).is_none());
        let figures: Vec<LabelFigure> = self.all(kind, given).iter().map(|stated| stated.figure).collect();
        let mut losses = figures.iter().filter(|figure| matches!(figure, LabelFigure::LegLossOf(_)));
        let all_losses = losses.all(|figure| given.taken(*figure).is_some()) && given.are_losses_whole();
        let mut rating = before.clone();
        for figure in figures {
            let is_alone = match figure {
                LabelFigure::Low | LabelFigure::High | LabelFigure::StopLow | LabelFigure::StopHigh => false,
                LabelFigure::LegLossOf(_) => all_losses,
                _ => true,
            };
            if let Some(value) = taken(figure).filter(|_| is_alone) {
                figure.put(&mut rating, value);
            }
        }
        rating.spread_loss(standing.outputs(&rating));
        let ends = [(LabelFigure::Low, LabelFigure::High), (LabelFigure::StopLow, LabelFigure::StopHigh)];
        for (low, high) in ends {
            if taken(low).is_none() && taken(high).is_none() {
                continue;
            }
            let known =
                |end: LabelFigure| taken(end).or_else(|| standing.typed(end)).or_else(|| end.of(before));
            if let (Some(low_mhz), Some(high_mhz)) = (known(low), known(high)) {
                low.put(&mut rating, low_mhz);
                high.put(&mut rating, high_mhz);
            }
        }
        let answer = answer.says(part, field::part::RATING, &rating);
        let Self::Read(photo, read) = self else { return answer };
        let answer = answer.says(*photo, field::photo::PRINT, read.suggestion.text.as_str());
        let is_kind = |seen: &label::seen::SeenMember| seen.member == Member::Kind && seen.is_sure();
        let is_typed = label::read(text).kind.is_some();
        if read.suggestion.members.iter().any(is_kind) && !is_typed {
            kind_from(answer, Some(kind), part, &read.suggestion.reading)
        } else {
            answer
        }
    }
}

/// What is offered of the label that a question is about, with what was given.
fn offered_at(
    snapshot: &SurveySnapshot<'_>,
    question: &Question,
) -> Option<(Offered, SubjectId, LabelGiven)> {
    let Question::Label(part) = question else { return None };
    let given = LabelGiven::read(snapshot.pending());
    Some((Offered::of(snapshot, *part, &given)?, *part, given))
}

/// What is taken once one touch has taken all that was read and is sure, beside what was taken before.
pub(crate) fn with_sure_taken(snapshot: &SurveySnapshot<'_>, question: &Question) -> Vec<TakenFigure> {
    let Some((offered, part, given)) = offered_at(snapshot, question) else { return Vec::new() };
    let Some(known) = snapshot.survey.parts.get(&part) else { return Vec::new() };
    let standing = Standing::of(snapshot, part, &given.text_of(known));
    let sure =
        offered.sure(known.kind, &standing).into_iter().filter(|sure| given.taken(sure.figure).is_none());
    given.taken.iter().copied().chain(sure).collect()
}

/// What is taken once a figure was touched: it, as it is read now; or not it, if it was taken before.
pub(crate) fn with_touched(
    snapshot: &SurveySnapshot<'_>,
    question: &Question,
    figure: LabelFigure,
) -> Vec<TakenFigure> {
    let Some((offered, _, given)) = offered_at(snapshot, question) else { return Vec::new() };
    let mut taken = given.taken.clone();
    if given.taken(figure).is_some() {
        taken.retain(|taken| taken.figure != figure);
    } else {
        taken.extend(figure.of(&offered.rating()).map(|value| TakenFigure { figure, value }));
    }
    taken
}

/// The part of the photo of a part's label that somebody chose, to be shown large.
pub(super) fn part_shown(
    snapshot: &SurveySnapshot<'_>,
    builder: &ScreenBuilder<'_>,
    part: SubjectId,
) -> Option<PhotoPiece> {
    part_shown_of(snapshot, builder, snapshot.label_photo(part)?.id)
}

/// The same of a photo.
pub(super) fn part_shown_of(
    snapshot: &SurveySnapshot<'_>,
    builder: &ScreenBuilder<'_>,
    photo: SubjectId,
) -> Option<PhotoPiece> {
    Some(builder.piece(photo, snapshot.memory.part_of(photo)?))
}

/// What of a label a figure is.
const fn member(figure: LabelFigure) -> Member {
    match figure {
        LabelFigure::Legs => Member::Legs,
        LabelFigure::LegLoss | LabelFigure::LegLossOf(_) => Member::LegLosses,
        LabelFigure::Low => Member::Low,
        LabelFigure::High => Member::High,
        LabelFigure::StopLow => Member::StopLow,
        LabelFigure::StopHigh => Member::StopHigh,
        LabelFigure::TapLoss => Member::Tap,
        LabelFigure::Gain => Member::Gain,
        LabelFigure::ReturnHigh => Member::ReturnHigh,
    }
}

/// Draws what was read in the photo of a part's label, or how far that is, or why there is nothing.
pub(super) fn draw(
    snapshot: &SurveySnapshot<'_>,
    builder: &mut ScreenBuilder<'_>,
    (part, known): (SubjectId, PartKind),
    given: &LabelGiven,
) {
    let offered = Offered::of(snapshot, part, given);
    if !matches!(offered, Some(Offered::ByDevice(_) | Offered::Read(..))) {
        not_read(snapshot.label_photo(part).and_then(|photo| snapshot.print_of(photo)), builder);
    }
    read(snapshot, builder, (part, known), (offered.as_ref(), given));
    if let Some(photo) = snapshot.label_photo(part) {
        let is_chosen = snapshot.memory.part_of(photo.id).is_some();
        let words = Phrase::new(if is_chosen { "label-part-chosen" } else { "label-part" });
        builder.press(&Key::PhotoPart(photo.id), &words, PressWeight::Other);
    }
}

/// Draws what is offered of a label, and the part of its photo that somebody chose.
fn read(
    snapshot: &SurveySnapshot<'_>,
    builder: &mut ScreenBuilder<'_>,
    (part, known): (SubjectId, PartKind),
    (offered, given): (Option<&Offered>, &LabelGiven),
) {
    let all = offered.map(|offered| offered.all(known, given)).unwrap_or_default();
    let block = LabelBlock {
        id: String::new(),
        aloud: Aloud::default(),
        name: String::new(),
        photo: snapshot.label_photo(part).map(|photo| photo.id.to_string()),
        part: part_shown(snapshot, builder, part),
        text: offered.map(Offered::text).unwrap_or_default().to_owned(),
        figures: Vec::new(),
        doubts: Vec::new(),
    };
    let Some(offered) = offered.filter(|_| !all.is_empty()) else {
        if let Some(offered) = offered {
            let nothing = Phrase::new("label-photo-no-figures").text("text", offered.text());
            builder.words(WordsRole::Aside, &nothing);
        }
        if block.part.is_some() {
            builder.label(&Phrase::new("label-in-photo"), LabelBlock { text: String::new(), ..block });
        }
        return;
    };
    let rating = offered.rating();
    let text = snapshot.survey.parts.get(&part).map(|part| given.text_of(part)).unwrap_or_default();
    let standing = Standing::of(snapshot, part, &text);
    let say =
        |phrases: Vec<Phrase>| -> Vec<String> { phrases.iter().map(|phrase| builder.say(phrase)).collect() };
    let of = all.iter().map(|stated| stated.figure).collect();
    let figures = figures(builder, of, |figure| {
        let value = all.iter().find(|stated| stated.figure == figure).map(|stated| stated.value);
        // What is read now says nothing of what was taken before and is otherwise.
        let is_read = value.is_some() && value == figure.of(&rating);
        let unsure = if is_read { offered.unsure(figure) } else { Vec::new() };
        let otherwise = value.and_then(|value| standing.otherwise(TakenFigure { figure, value }));
        let doubt = say(unsure.into_iter().chain(otherwise.map(|stands| stands.phrase(figure))).collect());
        let counts = !matches!(otherwise, Some(Otherwise::Typed(_)));
        let taken = counts && given.taken(figure).is_some();
        let piece = offered.piece(builder, figure, value);
        let key = counts.then_some(Key::Take(figure));
        State { key, taken, picked: taken, doubt: doubt.join(" "), piece, value }
    });
    builder.label(&Phrase::new("label-recognised"), LabelBlock { figures, ..block });
    let sure = offered.sure(known, &standing);
    if sure.iter().any(|sure| given.taken(sure.figure).is_none()) {
        builder.press(&Key::TakeSure, &Phrase::new("label-take-sure"), PressWeight::Other);
    }
}

/// Says how far the reading of a photo is, or why nothing came of it.
pub(super) fn not_read(read: Option<PrintRead>, builder: &mut ScreenBuilder<'_>) {
    match read {
        Some(PrintRead::Waits(work)) => {
            let (name, stop) = (Phrase::new("label-being-read"), Phrase::new("work-stop"));
            builder.how_far(&name, work.progress(), (&Key::Stop, &stop), work.is_stopped());
        }
        Some(PrintRead::Failed(error)) => {
            if let Some(phrase) = error.phrase() {
                builder.words(WordsRole::Aside, &phrase);
            } else if error == PrintError::Stopped {
                builder.words(WordsRole::Aside, &Phrase::new("label-reading-stopped"));
                builder.press(&Key::ReadAgain, &Phrase::new("label-read-again"), PressWeight::Other);
            }
        }
        Some(PrintRead::Lost | PrintRead::Read(_)) | None => {}
    }
}
