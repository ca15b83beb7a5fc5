//! What was read in the photo of a label, offered figure by figure: what is sure with one touch for all of it, what is not with a touch
//! for each, and why.

use std::sync::Arc;

use facts::fact::SubjectId;
use house::printed::kind_printed;
use house::rating::PartRating;
use house::record::{PartKind, field};
use label::seen::{Member, Unsure};
use phrase::Phrase;
use print::PrintError;

use super::answer::Answer;
use super::label_figures::{State, figures, kind_from};
use crate::photo_read::PhotoRead;
use crate::place::{Key, LabelFigure, Question};
use crate::screen::{Aloud, LabelBlock, PhotoPiece, PressWeight, WordsRole};
use crate::session::{Pending, PrintRead, SurveySnapshot};
use crate::view::ScreenBuilder;

/// What was given on the screen that asks what is printed on a part.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct LabelGiven {
    /// The text, if somebody wrote any.
    pub(super) text: Option<String>,
    /// What the device recognised in a photo.
    recognised: Option<String>,
    /// Figures of what was read in a photo that were taken.
    pub(super) taken: Vec<LabelFigure>,
}

impl LabelGiven {
    pub(super) fn read(pending: &Pending) -> Self {
        Self {
            text: pending.written(&Key::Text).map(str::to_owned),
            recognised: pending.written(&Key::Recognised).map(str::to_owned),
            taken: pending.picked(&Key::Taken).unwrap_or_default(),
        }
    }
}

/// What was read in a photo, and by whom.
pub(super) enum Offered {
    /// The device itself recognised this: nobody knows how sure.
    ByDevice(String),
    /// The model beside the program read it, in this photo.
    Read(SubjectId, Arc<PhotoRead>),
}

impl Offered {
    /// What is offered for a part; `None` where nothing was read. What the model read goes before what the device recognised,
    /// since of that nobody knows how sure it is; and while the model reads, nothing is offered that it may contradict.
    pub(super) fn of(snapshot: &SurveySnapshot<'_>, part: SubjectId, given: &LabelGiven) -> Option<Self> {
        let by_device = || given.recognised.clone().map(Self::ByDevice);
        let photo = snapshot.label_photo(part);
        match photo.and_then(|photo| Some((photo.id, snapshot.prints.of(&photo.image.sha256)?))) {
            Some((photo, PrintRead::Read(read))) => {
                let states_nothing = PartRating::of_label(&read.suggestion.text) == PartRating::default();
                by_device().filter(|_| states_nothing).or(Some(Self::Read(photo, read)))
            }
            Some((_, PrintRead::Waits(_))) => None,
            Some((_, PrintRead::Failed(_) | PrintRead::Lost)) | None => by_device(),
        }
    }

    fn text(&self) -> &str {
        match self {
            Self::ByDevice(text) => text,
            Self::Read(_, read) => &read.suggestion.text,
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
            Self::ByDevice(_) => Vec::new(),
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

    /// The figures that are stated and sure.
    pub(super) fn sure(&self, known: PartKind) -> Vec<LabelFigure> {
        if matches!(self, Self::ByDevice(_)) {
            return Vec::new();
        }
        let rating = self.rating();
        let all = LabelFigure::of_part(self.kind(known), &rating).into_iter();
        all.filter(|figure| figure.of(&rating).is_some() && self.unsure(*figure).is_empty()).collect()
    }

    /// What was taken of it, as an answer. What was said of the part before stays; a figure that stands in a text that somebody typed,
    /// now or before, is as it was typed. A band is said once both its ends are known, losses once those of all outputs are.
    pub(super) fn taken(
        &self,
        snapshot: &SurveySnapshot<'_>,
        answer: Answer,
        (part, kind): (SubjectId, PartKind),
        (text, taken): (&str, &[LabelFigure]),
    ) -> Answer {
        let (read, typed, before) = (self.rating(), PartRating::of_label(text), said_before(snapshot, part));
        let figures = LabelFigure::of_part(self.kind(kind), &read);
        let is_taken = |figure: LabelFigure| taken.contains(&figure) && figure.of(&typed).is_none();
        let mut losses = figures.iter().filter(|figure| matches!(figure, LabelFigure::LegLossOf(_)));
        let all_losses = losses.all(|figure| taken.contains(figure));
        let mut rating = before.clone();
        for figure in figures.into_iter().filter(|figure| is_taken(*figure)) {
            let is_alone = match figure {
                LabelFigure::Low | LabelFigure::High | LabelFigure::StopLow | LabelFigure::StopHigh => false,
                LabelFigure::LegLossOf(_) => all_losses,
                _ => true,
            };
            if let Some(value) = figure.of(&read).filter(|_| is_alone) {
                figure.put(&mut rating, value);
            }
        }
        let ends = [(LabelFigure::Low, LabelFigure::High), (LabelFigure::StopLow, LabelFigure::StopHigh)];
        for (low, high) in ends.into_iter().filter(|(low, high)| is_taken(*low) || is_taken(*high)) {
            let known = |end: LabelFigure| {
                if is_taken(end) { end.of(&read) } else { end.of(&typed).or_else(|| end.of(&before)) }
            };
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

/// What somebody said of a part's rating itself, beside its label.
fn said_before(snapshot: &SurveySnapshot<'_>, part: SubjectId) -> PartRating {
    let said = snapshot.ledger.shown(part, field::RATING).map(|fact| fact.value().clone());
    said.and_then(|said| serde_json::from_value(said).ok()).unwrap_or_default()
}

/// The figures that one touch takes: those that were read in the photo of a part's label and are sure.
pub(crate) fn sure_figures(snapshot: &SurveySnapshot<'_>, question: &Question) -> Vec<LabelFigure> {
    let Question::Label(part) = question else { return Vec::new() };
    let Some(found) = snapshot.survey.parts.get(part) else { return Vec::new() };
    let offered = Offered::of(snapshot, *part, &LabelGiven::read(snapshot.pending()));
    offered.map(|offered| offered.sure(found.kind)).unwrap_or_default()
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
    let Some(offered) = Offered::of(snapshot, part, given) else {
        return not_read(snapshot, builder, part);
    };
    let (rating, kind) = (offered.rating(), offered.kind(known));
    let say =
        |phrases: Vec<Phrase>| -> Vec<String> { phrases.iter().map(|phrase| builder.say(phrase)).collect() };
    let mut offers = figures(builder, kind, &rating, |figure| {
        let taken = given.taken.contains(&figure);
        let doubt = say(offered.unsure(figure)).join(" ");
        let piece = offered.piece(builder, figure, figure.of(&rating));
        State { key: Key::Take(figure), taken, picked: taken, doubt, piece }
    });
    let stated = LabelFigure::of_part(kind, &rating).into_iter().map(|figure| figure.of(&rating).is_some());
    let mut stated = stated.collect::<Vec<_>>().into_iter();
    offers.retain(|_| stated.next().unwrap_or_default());
    if offers.is_empty() {
        builder.words(WordsRole::Aside, &Phrase::new("label-photo-no-figures").text("text", offered.text()));
        return;
    }
    let block = LabelBlock {
        id: String::new(),
        aloud: Aloud::default(),
        name: String::new(),
        photo: snapshot.label_photo(part).map(|photo| photo.id.to_string()),
        text: offered.text().to_owned(),
        figures: offers,
        doubts: Vec::new(),
    };
    builder.label(&Phrase::new("label-recognised"), block);
    let sure = offered.sure(known);
    if !sure.is_empty() && !sure.iter().all(|figure| given.taken.contains(figure)) {
        builder.press(&Key::TakeSure, &Phrase::new("label-take-sure"), PressWeight::Other);
    }
}

fn not_read(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
    let read = snapshot.label_photo(part).and_then(|photo| snapshot.prints.of(&photo.image.sha256));
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
            }
        }
        Some(PrintRead::Lost | PrintRead::Read(_)) | None => {}
    }
}
