//! What is printed on a part: photo, text, and the figures in it, each taken or corrected by a touch.

use facts::fact::SubjectId;
use house::record::{Asked, PartKind, PhotoRole, Reply, field};
use phrase::Phrase;

use super::answer::{Answer, Told};
use super::label_figures::{State, figures, kind_from};
use super::label_photo::{self, LabelGiven, Offered};
use super::label_standing::Standing;
use crate::place::{Key, LabelFigure, Place, Question};
use crate::screen::{Aloud, LabelBlock, WordsRole, WritingKind};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{ScreenBuilder, photo_slot};

/// What is printed on a part.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct LabelAnswer(LabelGiven);

impl LabelAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
        let Some(found) = snapshot.survey.parts.get(&part) else { return };
        if let Some(tag) = &found.tag {
            builder.words(WordsRole::How, &Phrase::new("write-tag").text("tag", tag));
        }
        photo_slot(snapshot, builder, &Key::LabelPhoto, part, PhotoRole::Label);
        builder.reads_print(&Key::Recognised);
        let hint = Phrase::new("ask-label.hint");
        let now = found.label.clone().unwrap_or_default();
        builder.writing(&Key::Text, &Phrase::new("label-text"), Some(&hint), WritingKind::Print, &now);
        label_photo::draw(snapshot, builder, (part, found.kind), &LabelGiven::read(snapshot.pending()));
    }

    pub(super) fn read(pending: &Pending) -> Self {
        Self(LabelGiven::read(pending))
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Answer {
        let Self(given) = self;
        let known = snapshot.survey.parts.get(&part);
        let text = known.map(|known| given.text_of(known)).unwrap_or_default();
        if text.is_empty() && given.taken.is_empty() {
            return Answer::new().asked(part, Asked::Label, Reply::Unsure);
        }
        let mut answer = Answer::new();
        if !text.is_empty() {
            answer = answer.says(part, field::part::LABEL, &text);
            answer = kind_from(answer, known.map(|part| part.kind), part, &label::read(&text));
        }
        let kind = known.map_or(PartKind::Unknown, |part| part.kind);
        let standing = Standing::of(snapshot, part, &text);
        if let Some(offered) = Offered::of(snapshot, part, &given).filter(|_| !given.taken.is_empty()) {
            answer = offered.taken(&standing, answer, (part, kind), (&text, &given));
        } else if let Some(rating) = standing.with_loss_spread() {
            answer = answer.says(part, field::part::RATING, &rating);
        }
        answer.then(Place::Ask(Question::LabelRead(part)))
    }
}

/// What was read off a label, as it was set right.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct LabelReadAnswer(Vec<(LabelFigure, f64)>);

impl LabelReadAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
        let Some(found) = snapshot.survey.parts.get(&part) else { return };
        let text = found.label.clone().unwrap_or_default();
        let fixing: Vec<LabelFigure> = snapshot.pending().picked(&Key::Fixed).unwrap_or_default();
        let in_photo = Offered::of(snapshot, part, &LabelGiven::default());
        let piece = |figure: LabelFigure| in_photo.as_ref()?.piece(builder, figure, figure.of(&found.rating));
        let figures = figures(builder, LabelFigure::of_part(found.kind, &found.rating), |figure| State {
            key: Some(Key::Fix(figure)),
            taken: true,
            picked: fixing.contains(&figure),
            doubt: String::new(),
            piece: piece(figure),
            value: figure.of(&found.rating),
        });
        let doubts = telling::doubts::of_part(found, snapshot.language);
        let block = LabelBlock {
            id: String::new(),
            aloud: Aloud::default(),
            name: String::new(),
            photo: snapshot.label_photo(part).map(|photo| photo.id.to_string()),
            part: label_photo::part_shown(snapshot, builder, part),
            text,
            figures,
            doubts,
        };
        builder.label(&Phrase::new("label-as-read"), block);
        for figure in LabelFigure::of_part(found.kind, &found.rating) {
            if fixing.contains(&figure) {
                let now = figure.of(&found.rating);
                builder.number(&figure.key_to_type(), &figure.phrase(), None, figure.quantity(), now);
            }
        }
    }

    /// The figures that may be typed are those of the part as its rating stands.
    pub(super) fn read(pending: &Pending, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Told<Self> {
        let Some(found) = snapshot.survey.parts.get(&part) else { return Ok(Self(Vec::new())) };
        let mut figures = Vec::new();
        for figure in LabelFigure::of_part(found.kind, &found.rating) {
            let value = pending.number(&figure.key_to_type(), figure.quantity())?;
            figures.extend(value.map(|value| (figure, value)));
        }
        Ok(Self(figures))
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Answer {
        let answer = Answer::new().asked(part, Asked::LabelRead, Reply::Yes);
        let Some(found) = snapshot.survey.parts.get(&part) else { return answer };
        let mut rating = found.rating.clone();
        for (figure, value) in self.0 {
            figure.put(&mut rating, value);
        }
        if rating == found.rating {
            return answer;
        }
        rating.doubtful = false;
        answer.says(part, field::part::RATING, &rating)
    }
}
