//! How a question stands: what is answered, in words, and whether a screen was given anything else than that.

use facts::fact::SubjectId;
use house::record::{CableKind, Named, field};
use house::story;
use phrase::Phrase;

use super::journey::journey;
use super::{about, outputs};
use crate::place::{Key, Question};
use crate::screen::{Block, Screen};
use crate::session::{Memory, Pending, SurveySnapshot};
use crate::view::ScreenBuilder;

/// The most letters of an answer that stand beside its question in a list.
const MOST_LETTERS: usize = 90;

/// The inputs of a question as nobody who only looks has touched them.
fn drawn(snapshot: &SurveySnapshot<'_>, question: &Question) -> Screen {
    let (memory, pending) = (Memory::default(), Pending::default());
    let mut builder = ScreenBuilder::new(snapshot.language, &pending, &Phrase::new("text"));
    question.draw(&snapshot.untouched(&memory), &mut builder);
    builder.screen
}

/// Whether anything was given that does not stand there already. Who picks or types what a screen shows anyway has only
/// looked: nothing of it becomes a fact under their name.
pub(crate) fn is_touched(snapshot: &SurveySnapshot<'_>, question: &Question) -> bool {
    let pending = snapshot.pending();
    if pending.is_empty() {
        return false;
    }
    let screen = drawn(snapshot, question);
    let marks = snapshot.language.figures().marks;
    pending.keys().any(|key| {
        let shown = screen.blocks.iter().find_map(|block| match block {
            Block::Choice(choice) if choice.key == key => {
                let mut picked: Vec<_> = choice.options.iter().filter(|option| option.picked).collect();
                picked.sort_by(|one, other| one.key.cmp(&other.key));
                let picked = picked.into_iter().map(|option| option.key.clone());
                Some(pending.has_picked(key, picked))
            }
            Block::Writing(writing) if writing.key == key => Some(pending.has_written(key, &writing.text)),
            Block::Number(number) if number.key == key => {
                Some(pending.has_typed(key, &marks.plainly(&number.text), &number.unit))
            }
            _ => None,
        });
        // What opens a place to type in, or turns a page, is no answer; nor what is folded and stands as it was picked.
        let opens =
            || [Key::Fixed, Key::Page, Key::Recognised, Key::Unfolded].iter().any(|of| of.to_string() == key);
        let folded = || match question {
            Question::Outputs(part) => outputs::is_as_it_stands(snapshot, *part, key),
            _ => false,
        };
        !(opens() || folded() || shown.unwrap_or(false))
    })
}

/// Whether a question is answered, if only by "not sure".
pub(crate) fn is_answered(snapshot: &SurveySnapshot<'_>, question: &Question) -> bool {
    let led = journey(snapshot).into_iter().find(|on_way| on_way.question == *question);
    led.map_or_else(|| about::stands(snapshot, question), |on_way| on_way.answered)
}

/// What a question is answered with, in a few words: what its screen would show.
pub(crate) fn said(snapshot: &SurveySnapshot<'_>, question: &Question, answered: bool) -> String {
    let word = |id: &str| snapshot.language.say(&Phrase::new(id));
    if !answered {
        return word("open");
    }
    let said = match question {
        Question::Cable(run) => cable(snapshot, *run),
        Question::Marks(run) => length(snapshot, *run),
        // Its figures were looked through: there is nothing to choose.
        Question::LabelRead(_) => None,
        Question::Rooms => rooms(snapshot),
        question => on_screen(snapshot, question),
    };
    let said = said.or_else(|| about::is_unsure(snapshot, question).then(|| word("said-not-sure")));
    shortened(&said.unwrap_or_else(|| word("answered")))
}

/// A length with its range and how it is known.
fn length(snapshot: &SurveySnapshot<'_>, run: SubjectId) -> Option<String> {
    let length = serde_json::to_value(snapshot.survey.runs.get(&run)?.length?).ok()?;
    Some(snapshot.language.say(&story::value(snapshot.survey, field::LENGTH, &length)))
}

/// A cable's kind and length; what nobody could tell of the two is said so.
fn cable(snapshot: &SurveySnapshot<'_>, run: SubjectId) -> Option<String> {
    let not_sure = || snapshot.language.say(&Phrase::new("said-not-sure"));
    let series = snapshot.survey.runs.get(&run)?.cable;
    let series = match series {
        CableKind::Unknown => not_sure(),
        series => snapshot.language.say(&Phrase::new(format!("cable-{}", series.name()))),
    };
    Some(format!("{series}, {}", length(snapshot, run).unwrap_or_else(not_sure)))
}

/// All rooms by name, those too that no list has.
fn rooms(snapshot: &SurveySnapshot<'_>) -> Option<String> {
    let mut names: Vec<&str> = snapshot.survey.rooms.values().map(|room| room.name.as_str()).collect();
    names.sort_unstable();
    (!names.is_empty()).then(|| names.join(", "))
}

/// What stands in the inputs of its screen.
fn on_screen(snapshot: &SurveySnapshot<'_>, question: &Question) -> Option<String> {
    let mut said = Vec::new();
    for block in drawn(snapshot, question).blocks {
        match block {
            Block::Choice(choice) => {
                let picked = choice.options.into_iter().filter(|option| option.picked);
                let not_sure = || snapshot.language.say(&Phrase::new("said-not-sure"));
                said.extend(picked.map(|option| if option.unsure { not_sure() } else { option.words }));
            }
            Block::Writing(writing) => said.push(writing.text),
            // Outputs are folded: what each leads to.
            Block::Rows(rows) => said.extend(rows.rows.into_iter().map(|row| row.says)),
            Block::Number(number) if !number.text.is_empty() => {
                let unit = number.units.iter().find(|unit| unit.key == number.unit);
                let unit = unit.map_or("", |unit| unit.words.as_str());
                said.push(format!("{} {unit}", number.text).trim_end().to_owned());
            }
            _ => {}
        }
    }
    said.retain(|said| !said.trim().is_empty());
    (!said.is_empty()).then(|| said.join(", "))
}

/// In one line, and not longer than a row takes.
fn shortened(said: &str) -> String {
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    if said.chars().count() <= MOST_LETTERS {
        return said;
    }
    let kept: String = said.chars().take(MOST_LETTERS).collect();
    format!("{}\u{2026}", kept.trim_end())
}
