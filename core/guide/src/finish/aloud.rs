//! What a screen reader says of everything on a screen.

use phrase::{Arg, Phrase};
use telling::words::Language;

use crate::screen::{
    Aloud, AloudRole, Block, ChoiceBlock, ConfirmBlock, FigureBlock, HowFarBlock, LabelBlock, Need,
    NoticeRole, NumberBlock, PartBlock, PhotoShown, PhotoSlotBlock, PressBlock, RowEntry, RowMark, RowsBlock,
    Screen, WordsRole, WritingBlock, WritingKind,
};

/// Says it of everything.
pub(super) fn give(screen: &mut Screen, language: &Language) {
    notices(screen);
    let speaker = Speaker { language };
    screen.blocks.iter_mut().for_each(|block| speaker.block(block));
}

/// Says it of the notices.
pub(crate) fn notices(screen: &mut Screen) {
    for notice in &mut screen.notices {
        let role = match notice.role {
            NoticeRole::Problem => AloudRole::Alert,
            NoticeRole::Done => AloudRole::Status,
        };
        notice.aloud = Aloud::new(role, &notice.words);
    }
}

struct Speaker<'a> {
    language: &'a Language,
}

impl Speaker<'_> {
    fn block(&self, block: &mut Block) {
        match block {
            Block::Words(words) => {
                let role = match words.role {
                    WordsRole::Lead | WordsRole::Heading => AloudRole::Heading,
                    WordsRole::Problem => AloudRole::Alert,
                    WordsRole::Why | WordsRole::How | WordsRole::Plain | WordsRole::Aside => AloudRole::Prose,
                };
                words.aloud = Aloud::new(role, &words.words);
            }
            Block::Caution(caution) => {
                caution.aloud = Aloud::new(AloudRole::Caution, &caution.name).value(&caution.words);
            }
            Block::Choice(choice) => Self::choice(choice),
            Block::Writing(writing) => Self::writing(writing),
            Block::Number(number) => self.number(number),
            Block::PhotoSlot(slot) => self.photos(slot),
            Block::PhotoPart(part) => {
                let now = part.part.as_ref().map_or("", |piece| piece.name.as_str());
                part.aloud = Aloud::new(AloudRole::Picture, &part.name).value(now);
            }
            Block::Label(label) => self.label(label),
            Block::Reading(reading) => {
                reading.aloud =
                    Aloud::new(AloudRole::Fact, &reading.name).value(&reading.says).hint(&reading.remark);
            }
            Block::Part(part) => self.part(part),
            Block::Rows(rows) => self.rows(rows),
            Block::Figure(figure) => Self::figure(figure),
            Block::HowFar(far) => self.how_far(far),
            Block::Press(press) => self.press(press),
            Block::Confirm(confirm) => self.confirm(confirm),
        }
    }

    fn say(&self, id: &str) -> String {
        self.language.say(&Phrase::new(id))
    }

    /// Several texts as one, those that are empty left out.
    fn together<'a>(&self, texts: impl IntoIterator<Item = &'a str>) -> String {
        let texts = texts.into_iter().filter(|text| !text.is_empty()).map(str::to_owned);
        let and = |one: String, other: String| {
            self.language.say(&Phrase::new("aloud-and").text("one", one).text("other", other))
        };
        texts.reduce(and).unwrap_or_default()
    }

    fn choice(choice: &mut ChoiceBlock) {
        let (role, of) = if choice.several {
            (AloudRole::ChooseSeveral, AloudRole::AnyOf)
        } else {
            (AloudRole::ChooseOne, AloudRole::OneOf)
        };
        choice.aloud = Aloud::new(role, &choice.name);
        for option in &mut choice.options {
            option.aloud = Aloud::new(of, &option.words).hint(&option.about);
        }
    }

    fn writing(writing: &mut WritingBlock) {
        let role = match writing.kind {
            WritingKind::Search => AloudRole::SearchHere,
            WritingKind::Name
            | WritingKind::Names
            | WritingKind::Tag
            | WritingKind::Print
            | WritingKind::Note => AloudRole::WriteHere,
        };
        writing.aloud = Aloud::new(role, &writing.name).value(&writing.text).hint(&writing.hint);
    }

    fn number(&self, number: &mut NumberBlock) {
        let is_choice = number.units.len() > 1;
        for unit in &mut number.units {
            let role = if is_choice { AloudRole::OneOf } else { AloudRole::Fact };
            unit.aloud = Aloud::new(role, self.say(&format!("unit-{}.aloud", unit.key)));
        }
        let unit = number.units.iter().find(|unit| unit.key == number.unit);
        let value = match unit {
            Some(unit) if !number.text.is_empty() && !unit.words.is_empty() => {
                let typed = Phrase::new("aloud-typed").text("typed", &number.text);
                self.language.say(&typed.text("unit", &unit.aloud.label))
            }
            _ => number.text.clone(),
        };
        number.aloud = Aloud::new(AloudRole::NumberHere, &number.name).value(value).hint(&number.hint);
    }

    fn photos(&self, slot: &mut PhotoSlotBlock) {
        let there = Phrase::new("aloud-photos").with("count", Arg::Count(slot.photos.len() as u64));
        slot.aloud = Aloud::new(AloudRole::PhotosHere, &slot.name)
            .value(self.language.say(&there))
            .hint(self.say("aloud-takes-photo"));
        for photo in &mut slot.photos {
            photo.aloud = Aloud::new(role_of_photo(photo), &photo.name);
        }
    }

    fn label(&self, label: &mut LabelBlock) {
        let doubts = self.together(label.doubts.iter().map(String::as_str));
        label.aloud = Aloud::new(AloudRole::Group, &label.name).value(&label.text).hint(doubts);
        for figure in &mut label.figures {
            let role = if figure.key.is_some() { AloudRole::Press } else { AloudRole::Fact };
            figure.aloud = Aloud::new(role, &figure.name).value(&figure.says).hint(&figure.doubt);
        }
    }

    fn part(&self, part: &mut PartBlock) {
        let role = if part.key.is_some() { AloudRole::LeadsOn } else { AloudRole::Group };
        let name = self.together([part.tag.as_str(), &part.name]);
        part.aloud = Aloud::new(role, name).value(self.together(part.lines.iter().map(String::as_str)));
    }

    fn rows(&self, rows: &mut RowsBlock) {
        rows.aloud = Aloud::new(AloudRole::Heading, &rows.name);
        for row in &mut rows.rows {
            let role = match (row.switched, &row.key) {
                (Some(_), _) => AloudRole::Switch,
                (None, Some(_)) => AloudRole::LeadsOn,
                (None, None) => AloudRole::Fact,
            };
            let value = self.row(row);
            row.aloud = Aloud::new(role, &row.head).value(value).hint(&row.remark);
        }
    }

    /// What a row says; its sign and its bar in words where it says nothing else.
    fn row(&self, row: &RowEntry) -> String {
        let sign = row.mark.filter(|_| row.says.is_empty()).map(|mark| {
            self.say(match mark {
                RowMark::Box => "mark-box",
                RowMark::Done => "mark-done",
                RowMark::Weak => "mark-weak",
                RowMark::NotKnown => "mark-not-known",
            })
        });
        // What a bar shows is mostly said by its row.
        let bar = row.bar.as_ref().filter(|_| row.says.is_empty()).map_or("", |bar| bar.words.as_str());
        self.together([row.says.as_str(), sign.as_deref().unwrap_or_default(), bar])
    }

    fn figure(figure: &mut FigureBlock) {
        figure.aloud = Aloud::new(AloudRole::Drawing, &figure.name).value(&figure.description);
    }

    fn how_far(&self, far: &mut HowFarBlock) {
        let share = far.thousandths.map(|done| Arg::Share(f64::from(done) / 1000.0));
        let value = share.map(|share| self.language.say(&Phrase::new("plain-done").with("share", share)));
        far.aloud = Aloud::new(AloudRole::Progress, &far.name).value(value.unwrap_or_default());
        far.stop.iter_mut().for_each(|stop| self.press(stop));
    }

    fn press(&self, press: &mut PressBlock) {
        let hint = press.need.as_ref().map(|need| match need {
            Need::FileToRead { .. } => "aloud-asks-file",
            Need::FileToWrite { .. } => "aloud-asks-place",
            Need::FileToShare { .. } => "aloud-shares",
            Need::Photo { .. } => "aloud-takes-photo",
        });
        let hint = hint.map(|id| self.say(id)).unwrap_or_default();
        press.aloud = Aloud::new(AloudRole::Press, &press.words).hint(hint);
    }

    fn confirm(&self, confirm: &mut ConfirmBlock) {
        confirm.aloud = Aloud::new(AloudRole::PressAsks, &confirm.words).hint(self.say("aloud-asks-again"));
    }
}

fn role_of_photo(photo: &PhotoShown) -> AloudRole {
    match (photo.picked, &photo.key) {
        (Some(_), _) => AloudRole::AnyOf,
        (None, Some(_)) => AloudRole::LeadsOn,
        (None, None) => AloudRole::Picture,
    }
}
