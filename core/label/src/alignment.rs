//! Pairs the words of one line with its figures and bands.
//!
//! On one line a label either puts words before figures ("ISO 25dB RL 18dB") or after them ("25dB ISO 18dB
//! RL"); which of the two, the line's ends show. A word at the end of a line that had no figure waits for the
//! next line's.

use super::context::{Path, Placed, Role, Waiting};
use super::item::Figure;
use super::losses::UNMARKED_LOSS_DB;

/// From here on a figure beside a word for shielding is one of shielding, in decibels.
const SHIELDING_DB: f64 = 40.0;

/// A word for figures: what it says and how strongly.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RoleWord {
    /// What the figure is.
    pub role: Role,
    /// 0: a port; 1: loss or tap; 2: one thing only. Of words side by side the stronger counts.
    pub strength: u8,
    /// Whether another such word stands right before it.
    pub joined: bool,
    /// The outputs it names.
    pub outputs: Vec<u8>,
}

/// One step of a line as the alignment sees it: a word, or something that looks for its word.
#[derive(Debug, Clone)]
pub(super) enum Step<W> {
    /// A word.
    Word(W),
    /// A figure or band, by its place among all.
    Thing(usize),
}

/// Whether a line puts its words after what they are for.
fn is_trailing<W>(steps: &[Step<W>]) -> bool {
    matches!(steps.first(), Some(Step::Thing(_))) && matches!(steps.last(), Some(Step::Word(_)))
}

/// Gives each figure of a line its word.
pub(super) fn place_roles(steps: &[Step<RoleWord>], placed: &mut Placed, waiting: &mut Waiting) {
    if steps.is_empty() {
        return;
    }
    let trailing = is_trailing(steps);
    let mut current = waiting.role.take().filter(|_| !trailing);
    let mut fresh = false;
    // Whether the word before has had a figure already.
    let mut is_spent = false;
    // Whether the last word of the line has its figure before it, though the line puts words first.
    let mut is_last_taken = false;
    let mut last_minus = None;
    for (at, step) in steps.iter().enumerate() {
        match step {
            Step::Word(word) => {
                current = match current.take().filter(|_| fresh && word.joined) {
                    Some(earlier) if earlier.strength > word.strength => Some(earlier),
                    _ => Some(word.clone()),
                };
                fresh = true;
                is_spent = false;
                last_minus = None;
            }
            Step::Thing(index) => {
                let read = placed.figures.get(*index).and_then(|figure| figure.body.as_ref().ok());
                let minus = read.is_some_and(|figure| figure.minus);
                let after = steps.get(at + 1..).unwrap_or_default();
                let word = if trailing {
                    let is_last = matches!(after.first(), Some(Step::Word(_)));
                    following(after).filter(|word| is_last || word.role.is_shared())
                } else if current.is_none() {
                    first_of_two(after)
                } else if let Some(word) = current.as_ref().and_then(|word| last_of_line(word, after)) {
                    is_last_taken = true;
                    Some(word)
                } else if current.as_ref().is_some_and(|word| !word.role.is_shared())
                    && last_minus == Some(false)
                    && minus
                {
                    // "ISO 25dB -3.5dB": a minus marks losses, so the word before is spent.
                    current = None;
                    None
                } else {
                    current.clone()
                };
                let word = word.and_then(|word| not_kept(word, read, is_spent));
                let is_bare = read.is_some_and(|figure| !figure.has_unit);
                is_spent = true;
                last_minus = Some(minus);
                fresh = false;
                if let (Some(word), Some(figure)) = (word, placed.figures.get_mut(*index)) {
                    figure.role = Some(word.role);
                    figure.is_named = !trailing && current.is_some();
                    figure.outputs = word.outputs;
                    if is_bare && !trailing && !word.role.is_shared() {
                        // "ISO 9001 3.5dB": a bare number spends its word.
                        current = None;
                    }
                }
            }
        }
    }
    if fresh && !trailing && !is_last_taken {
        waiting.role = current;
    }
}

/// "SHIELDED 70dB REJECTION": a word for shielding often stands without a figure, so one with a word after it, the last
/// of the line, is that word's.
fn last_of_line(word: &RoleWord, after: &[Step<RoleWord>]) -> Option<RoleWord> {
    let is_last = word.role == Role::Shielding && after.iter().all(|step| matches!(step, Step::Word(_)));
    following(after).filter(|_| is_last)
}

/// What a word for something that is not kept makes of a figure: "SHIELDED 3.5dB" has a loss of 3.5 dB, and the second
/// figure of "NOISE 4dB 12dB" may be anything.
fn not_kept(word: RoleWord, figure: Option<&Figure>, is_spent: bool) -> Option<RoleWord> {
    let unsure = RoleWord { role: Role::Unsure, ..word.clone() };
    match (word.role, figure) {
        (Role::Shielding, Some(figure)) if !figure.has_unit && !figure.minus => Some(word),
        (Role::Shielding, Some(figure)) if figure.size >= SHIELDING_DB => Some(word),
        (Role::Shielding, Some(figure)) if UNMARKED_LOSS_DB.contains(&figure.size) => None,
        (Role::Shielding, Some(_)) => Some(unsure),
        (Role::Shielding, None) | (Role::Unmeasured, _) if is_spent => Some(unsure),
        _ => Some(word),
    }
}

/// The first of the words that follow, the stronger of two side by side.
fn following(steps: &[Step<RoleWord>]) -> Option<RoleWord> {
    let words = steps.iter().skip_while(|step| matches!(step, Step::Thing(_)));
    let run = words.map_while(|step| match step {
        Step::Word(word) => Some(word),
        Step::Thing(_) => None,
    });
    run.fold(None, |strongest: Option<RoleWord>, word| match strongest {
        Some(earlier) if earlier.strength >= word.strength => Some(earlier),
        _ => Some(word.clone()),
    })
}

/// "3.5dB LOSS ISO 25dB": of two words between two figures the first is the first figure's.
fn first_of_two(steps: &[Step<RoleWord>]) -> Option<RoleWord> {
    match steps {
        [Step::Word(first), Step::Word(second), ..] if second.strength >= first.strength => {
            Some(first.clone())
        }
        _ => None,
    }
}

/// Gives each band of a line its word.
pub(super) fn place_paths(steps: &[Step<Path>], placed: &mut Placed, waiting: &mut Waiting) {
    let trailing = is_trailing(steps);
    let mut current = waiting.path.take().filter(|_| !trailing);
    for (at, step) in steps.iter().enumerate() {
        match step {
            Step::Word(path) => current = Some(*path),
            Step::Thing(index) => {
                let path = match steps.get(at + 1) {
                    Some(Step::Word(path)) if trailing => Some(*path),
                    _ if trailing => None,
                    _ => current.take(),
                };
                if let Some(band) = placed.bands.get_mut(*index) {
                    band.path = path;
                }
            }
        }
    }
    if !trailing {
        waiting.path = current;
    }
}

/// The band each figure stands with: the one before it on the line, or after it where all figures stand before
/// theirs or the band is attached to it; else the last of an earlier line.
pub(super) fn place_in_bands(steps: &[Step<usize>], placed: &mut Placed) {
    let trailing = is_trailing(steps);
    let mut current = None;
    for (at, step) in steps.iter().enumerate() {
        match step {
            Step::Word(band) => {
                let stands_after = placed
                    .bands
                    .get(*band)
                    .is_some_and(|found| found.body.as_ref().is_ok_and(|band| band.is_attached));
                let figures = steps.get(..at).unwrap_or_default().iter().rev().map_while(|step| match step {
                    Step::Thing(figure) => Some(*figure),
                    Step::Word(_) => None,
                });
                for figure in figures.filter(|_| stands_after) {
                    if let Some(figure) = placed.figures.get_mut(figure) {
                        figure.band = Some(*band);
                    }
                }
                current = Some(*band);
            }
            Step::Thing(index) => {
                let after = steps.get(at + 1..).unwrap_or_default().iter().find_map(|step| match step {
                    Step::Word(band) => Some(*band),
                    Step::Thing(_) => None,
                });
                let band = if trailing { after } else { current };
                if let (Some(band), Some(figure)) = (band, placed.figures.get_mut(*index)) {
                    figure.band = Some(band);
                }
            }
        }
    }
}
