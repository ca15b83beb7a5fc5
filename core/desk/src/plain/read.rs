//! A typed line as a deed.
//!
//! A number chooses what stands beside it; several numbers, parted by spaces or commas, choose several options of one
//! choice. A letter presses. `NUMBER = text` answers a place to write in, a number or a photo slot (the picture's
//! file); `LETTER = file` gives a file to a press that asks for one. Where a screen asks for one thing only, the text
//! alone will do. `<` goes back.

use super::show::{Numbered, Target, letters};
use guide::Deed;
use guide::screen::{Block, PressWeight, Screen};

/// What a typed line means.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Typed {
    /// These deeds, one after the other.
    Deeds(Vec<Deed>),
    /// A deed that is asked about once more, with the second question.
    AskAgain(Deed, String),
    /// Nothing was typed.
    Blank,
    /// Nothing on this screen fits it: the id of the message that says how to answer.
    NotUnderstood(&'static str),
}

/// Reads a line typed on a screen.
pub fn read(line: &str, screen: &Screen, numbered: &Numbered) -> Typed {
    let line = line.trim();
    if line.is_empty() {
        return Typed::Blank;
    }
    if matches!(line, "?" | "help") {
        return Typed::NotUnderstood("plain-help");
    }
    if line == "<" {
        return Typed::Deeds(vec![Deed::Back]);
    }
    if let Some((mark, text)) = line.split_once('=')
        && is_mark(mark.trim())
    {
        let Some(target) = target(mark, numbered) else { return Typed::NotUnderstood("plain-help") };
        return given(target, text.trim()).map_or(Typed::NotUnderstood("plain-cannot-write"), |deed| {
            Typed::Deeds(and_on(vec![deed], screen))
        });
    }
    if let Some(place) = (1..=numbered.letters.len()).find(|place| letters(*place) == line)
        && let Some(target) = numbered.letters.get(place - 1)
    {
        return pick(&[target], screen);
    }
    // Where one number or text is asked for and nothing is to be chosen, what is typed is the answer itself.
    let chooses =
        numbered.numbers.iter().any(|target| matches!(target, Target::Option { .. } | Target::Press { .. }));
    let input = only_input(numbered);
    // The mark of a place to write in is no text for it.
    if let (Some(Target::Write { .. }), Some(marked)) = (input, target(line, numbered))
        && input == Some(marked)
    {
        return Typed::NotUnderstood("plain-write-how");
    }
    if let Some(chosen) = numbers(line, numbered).filter(|_| chooses || input.is_none()) {
        return pick(&chosen, screen);
    }
    match input {
        Some(target) => given(target, line)
            .map_or(Typed::NotUnderstood("plain-help"), |deed| Typed::Deeds(and_on(vec![deed], screen))),
        None => Typed::NotUnderstood("plain-help"),
    }
}

/// Whether this stands for a number or a letter of a screen rather than for words.
fn is_mark(mark: &str) -> bool {
    mark.parse::<usize>().is_ok()
        || (mark.len() <= 2 && mark.bytes().all(|letter| letter.is_ascii_lowercase()))
}

fn target<'a>(mark: &str, numbered: &'a Numbered) -> Option<&'a Target> {
    let mark = mark.trim();
    if let Some(place) = (1..=numbered.letters.len()).find(|place| letters(*place) == mark) {
        return numbered.letters.get(place - 1);
    }
    let number: usize = mark.parse().ok()?;
    numbered.numbers.get(number.checked_sub(1)?)
}

fn numbers<'a>(line: &str, numbered: &'a Numbered) -> Option<Vec<&'a Target>> {
    let number = |word: &str| numbered.numbers.get(word.parse::<usize>().ok()?.checked_sub(1)?);
    line.split([' ', ',']).filter(|word| !word.is_empty()).map(number).collect()
}

/// The only place of the screen that takes text.
fn only_input(numbered: &Numbered) -> Option<&Target> {
    let mut inputs = numbered
        .numbers
        .iter()
        .filter(|target| matches!(target, Target::Write { .. } | Target::Measure { .. }));
    let first = inputs.next();
    if inputs.next().is_some() { None } else { first }
}

fn given(target: &Target, text: &str) -> Option<Deed> {
    match target {
        Target::Write { key } => Some(Deed::Write { key: key.clone(), words: text.replace("\\n", "\n") }),
        Target::Measure { key, unit } => {
            Some(Deed::Measure { key: key.clone(), typed: text.into(), unit: unit.clone() })
        }
        Target::Photo { key } => Some(Deed::Photo { key: key.clone(), file: text.into() }),
        Target::Press { key, .. } => Some(Deed::File { key: key.clone(), file: text.into() }),
        Target::Confirm { .. } | Target::Option { .. } | Target::Absent => None,
    }
}

fn pick(chosen: &[&Target], screen: &Screen) -> Typed {
    match chosen {
        [Target::Absent] => Typed::NotUnderstood("plain-no-way-on"),
        [Target::Press { asks_file: true, .. }] => Typed::NotUnderstood("plain-file-how"),
        [Target::Press { key, .. }] => Typed::Deeds(vec![Deed::Press { key: key.clone() }]),
        [Target::Confirm { key, question }] => {
            Typed::AskAgain(Deed::Press { key: key.clone() }, question.clone())
        }
        [Target::Write { .. } | Target::Measure { .. } | Target::Photo { .. }] => {
            Typed::NotUnderstood("plain-write-how")
        }
        [Target::Option { choice, several, .. }, ..] => {
            let of_this = |target: &&Target| match target {
                Target::Option { choice: other, option, alone, .. } if other == choice => {
                    Some((option.clone(), *alone))
                }
                _ => None,
            };
            let Some(picked) = chosen.iter().map(of_this).collect::<Option<Vec<_>>>() else {
                return Typed::NotUnderstood("plain-one-choice");
            };
            if picked.len() > 1 && (!several || picked.iter().any(|(_, alone)| *alone)) {
                return Typed::NotUnderstood("plain-only-one");
            }
            let picked = picked.into_iter().map(|(option, _)| option).collect();
            Typed::Deeds(and_on(vec![Deed::Pick { key: choice.clone(), picked }], screen))
        }
        _ => Typed::NotUnderstood("plain-help"),
    }
}

/// Where the screen offers one choice and nothing to write, choosing goes on. What was typed is looked at first.
fn and_on(mut deeds: Vec<Deed>, screen: &Screen) -> Vec<Deed> {
    let inputs = screen
        .blocks
        .iter()
        .filter(|block| matches!(block, Block::Choice(_) | Block::Writing(_) | Block::Number(_)))
        .count();
    let main = screen.blocks.iter().find_map(|block| match block {
        Block::Press(press) if press.weight == PressWeight::Main && press.need.is_none() => {
            Some(press.key.clone())
        }
        _ => None,
    });
    let is_chosen = matches!(deeds.last(), Some(Deed::Pick { .. }));
    if let Some(key) = main.filter(|_| inputs == 1 && is_chosen) {
        deeds.push(Deed::Press { key });
    }
    deeds
}
