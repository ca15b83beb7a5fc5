//! A typed line as a deed.
//!
//! A number chooses what stands beside it; several numbers, parted by spaces or commas, choose several options of one
//! choice. A word or letter presses, the same on every screen. `NAME = text` answers a place to write in, a figure or a
//! photo slot (the picture's file), and gives a file to a press that asks for one. Where a screen asks for one thing only,
//! the text alone will do; where it asks for one figure, a number is that figure and never a choice. `<` goes back.

use super::show::{Marked, Target, WAY_ON, word};
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
pub fn read(line: &str, screen: &Screen, marked: &Marked) -> Typed {
    let line = line.trim();
    if line.is_empty() {
        return Typed::Blank;
    }
    if matches!(line, "?" | "help") {
        return Typed::NotUnderstood("plain-help");
    }
    if matches!(line, "<" | "back") && marked.target(line).is_none() {
        return Typed::Deeds(vec![Deed::Back]);
    }
    if let Some((mark, text)) = line.split_once('=')
        && let Some(target) = target(mark, marked)
    {
        return given(target, text.trim()).map_or(Typed::NotUnderstood("plain-cannot-write"), |deed| {
            Typed::Deeds(and_on(vec![deed], screen))
        });
    }
    if let Some((name, _)) = line.split_once(" =")
        && is_name(name.trim())
    {
        return Typed::NotUnderstood("plain-no-such-name");
    }
    if line == CLEAR {
        let written = inputs(marked, |target| matches!(target, Target::Write { .. }));
        return match written.as_slice() {
            [only] => filled(only, "", screen),
            _ => Typed::NotUnderstood("plain-clear-how"),
        };
    }
    if let Some(target) = target(line, marked) {
        return pick(&[target], screen);
    }
    if let Some(chosen) = several(line, marked) {
        return pick(&chosen, screen);
    }
    let figures = inputs(marked, |target| matches!(target, Target::Measure { .. }));
    let begins_a_figure =
        line.starts_with(|sign: char| sign.is_ascii_digit() || "+-.,\u{2212}".contains(sign));
    if begins_a_figure {
        match figures.as_slice() {
            [] => {}
            [only] => return filled(only, line, screen),
            _ => return Typed::NotUnderstood("plain-which-figure"),
        }
    }
    // Where nothing but a picture is wanted, its path is enough.
    let photos = inputs(marked, |target| matches!(target, Target::Photo { .. }));
    if let ([only], true) = (photos.as_slice(), is_path(line)) {
        return filled(only, line, screen);
    }
    if is_an_act_elsewhere(line, marked) {
        return Typed::NotUnderstood("plain-not-here");
    }
    // Where one text is asked for, what is typed is the answer itself; a number is none where numbers choose.
    let all = inputs(marked, |target| matches!(target, Target::Write { .. } | Target::Measure { .. }));
    let chooses = targets(marked).any(|target| matches!(target, Target::Option { .. }));
    let is_number = line.split([' ', ',']).all(|word| word.bytes().all(|byte| byte.is_ascii_digit()));
    match all.as_slice() {
        [only @ Target::Write { .. }] if !(chooses && is_number) => filled(only, line, screen),
        _ => Typed::NotUnderstood("plain-help"),
    }
}

/// Empties the one place to write.
const CLEAR: &str = "clear";

/// Whether a word is one that fills something on some screen: letters and dashes alone.
fn is_name(word: &str) -> bool {
    !word.is_empty() && word.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-')
}

/// Whether a line is the path of a picture.
fn is_path(line: &str) -> bool {
    let bare = line.trim_end_matches(['\'', '"']).to_lowercase();
    crate::given::PICTURES.iter().any(|ending| bare.ends_with(&format!(".{ending}")))
}

/// Whether a line is a word or mark that does something on another screen than this: it is no text to be written.
fn is_an_act_elsewhere(line: &str, marked: &Marked) -> bool {
    let is_list = |sign: char| LISTS.contains(&sign) || marked.lettered && sign.is_ascii_lowercase();
    let is_mark = line.len() <= 3
        && line.starts_with(is_list)
        && line
            .get(1..)
            .is_some_and(|number| !number.is_empty() && number.bytes().all(|b| b.is_ascii_digit()));
    is_mark || is_name(line) && ACTS.contains(&line)
}

/// The letters of the lists of the whole job.
const LISTS: [char; 4] = ['a', 'b', 'c', 'd'];

/// Words that lead or act on many screens; a room or a tag that is called so is written as `name = …`.
const ACTS: [&str; 24] = [
    "add", "assign", "b", "clear", "findings", "g", "l", "list", "make", "map", "marks", "more", "next",
    "note", "overview", "photo", "remove", "rename", "s", "save", "skip", "u", "undo", "w",
];

fn filled(target: &Target, line: &str, screen: &Screen) -> Typed {
    given(target, line)
        .map_or(Typed::NotUnderstood("plain-help"), |deed| Typed::Deeds(and_on(vec![deed], screen)))
}

/// What a mark stands for; the way on and what has a letter answer to the names of their keys too.
fn target<'a>(mark: &str, marked: &'a Marked) -> Option<&'a Target> {
    let mark = mark.trim();
    marked.target(mark).or_else(|| {
        let letter = word(mark);
        (letter != mark && letter != WAY_ON || mark == "next").then(|| marked.target(&letter)).flatten()
    })
}

/// Several marks of one list: `1 3`, `a1 a3`, `a1 3`.
fn several<'a>(line: &str, marked: &'a Marked) -> Option<Vec<&'a Target>> {
    let mut letter = "";
    line.split([' ', ','])
        .filter(|word| !word.is_empty())
        .map(|word| {
            let digits = word.find(|sign: char| sign.is_ascii_digit())?;
            let (of, number) = word.split_at_checked(digits)?;
            if !of.is_empty() {
                letter = of;
            }
            if number.bytes().any(|byte| !byte.is_ascii_digit()) || marked.lettered && letter.is_empty() {
                return None;
            }
            marked.target(&format!("{letter}{number}"))
        })
        .collect()
}

/// What stands on the screen, in order.
fn targets(marked: &Marked) -> impl Iterator<Item = &Target> {
    marked.marks.iter().map(|(_, target)| target)
}

/// The places of the screen that take something of a kind.
fn inputs(marked: &Marked, is: impl Fn(&Target) -> bool) -> Vec<&Target> {
    targets(marked).filter(|target| is(target)).collect()
}

fn given(target: &Target, text: &str) -> Option<Deed> {
    match target {
        Target::Write { key } => Some(Deed::Write { key: key.clone(), words: text.replace("\\n", "\n") }),
        Target::Measure { key, unit } => {
            Some(Deed::Measure { key: key.clone(), typed: text.into(), unit: unit.clone() })
        }
        Target::Touch { key } => {
            let (across, down) = text.split_once(',')?;
            let (across, down) = (ten_thousandths(across)?, ten_thousandths(down)?);
            Some(Deed::Touch { key: key.clone(), across, down })
        }
        Target::Photo { key } => Some(Deed::Photo { key: key.clone(), file: text.into() }),
        Target::Press { key, .. } => Some(Deed::File { key: key.clone(), file: text.into() }),
        Target::Confirm { .. } | Target::Option { .. } | Target::Absent => None,
    }
}

/// A share in per cent as it is typed, in ten-thousandths; what is below nothing or beyond all of it is the edge.
fn ten_thousandths(text: &str) -> Option<u32> {
    let share: f64 = text.trim().trim_end_matches('%').trim_end().parse().ok()?;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 0 and 10,000")]
    share.is_finite().then(|| (share * 100.0).clamp(0.0, 10_000.0).round() as u32)
}

fn pick(chosen: &[&Target], screen: &Screen) -> Typed {
    match chosen {
        [Target::Absent] => Typed::NotUnderstood("plain-no-way-on"),
        [Target::Press { asks_file: true, .. }] => Typed::NotUnderstood("plain-file-how"),
        [Target::Press { key, .. }] => Typed::Deeds(vec![Deed::Press { key: key.clone() }]),
        [Target::Confirm { key, question }] => {
            Typed::AskAgain(Deed::Press { key: key.clone() }, question.clone())
        }
        [Target::Write { .. } | Target::Measure { .. } | Target::Touch { .. } | Target::Photo { .. }] => {
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
