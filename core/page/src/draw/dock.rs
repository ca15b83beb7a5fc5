//! The dock at the foot of the screen: the way on above, the way back and what can wait below.

use guide::screen::{Block, ChoiceBlock, PressBlock, PressWeight};
use maud::{Markup, html};

use super::sign::{Sign, sign};
use super::{Drawn, choice, press};

/// Of other ways, so many stand beside the main one.
const MOST_OTHER: usize = 1;
/// Another way stands beside the main one if it says it in so many letters; a longer one stands in the row below.
const MOST_LETTERS: usize = 20;
/// So many answers may stand in the dock; more would hide the question.
const MOST_ANSWERS: usize = 4;

/// Which blocks of a screen stand in its dock, by their places.
#[derive(Default)]
pub(super) struct InDock {
    /// The answers, where the screen asks one thing.
    answers: Option<usize>,
    /// The way on, and one beside it.
    on: Vec<usize>,
    /// What can wait.
    out: Vec<usize>,
}

impl InDock {
    /// Whether the block at this place stands in the dock.
    pub(super) fn has(&self, at: usize) -> bool {
        self.answers == Some(at) || self.on.contains(&at) || self.out.contains(&at)
    }
}

/// Whether a block is the main way on.
pub(super) fn is_main(block: &Block) -> bool {
    matches!(block, Block::Press(press) if press.weight == PressWeight::Main)
}

/// What stands in the dock of a screen.
pub(super) fn of(drawn: &Drawn<'_>) -> InDock {
    let blocks = &drawn.screen.blocks;
    let mut dock = InDock::default();
    let main = blocks.iter().position(is_main);
    dock.on.extend(main);
    if let Some(main) = main {
        let beside = blocks
            .iter()
            .enumerate()
            .skip(main + 1)
            .take_while(|(_, block)| matches!(block, Block::Press(_)));
        let other = beside.filter(|(_, block)| {
            matches!(block, Block::Press(press) if press.weight == PressWeight::Other && press.need.is_none())
        });
        let other: Vec<_> = other.map(|(at, _)| at).collect();
        // Several others are a list to read, not a way beside the way on.
        if other.len() <= MOST_OTHER {
            let is_short = |at: &usize| matches!(blocks.get(*at), Some(Block::Press(press)) if press.words.chars().count() <= MOST_LETTERS);
            let (short, long): (Vec<_>, Vec<_>) = other.into_iter().partition(is_short);
            dock.on.extend(short);
            dock.out.extend(long);
        }
    } else {
        dock.answers = answers(blocks);
    }
    let quiet = |block: &Block| matches!(block, Block::Press(press) if press.weight == PressWeight::Quiet);
    dock.out.extend(blocks.iter().enumerate().filter(|(_, block)| quiet(block)).map(|(at, _)| at));
    dock
}

/// The one choice of a screen that asks nothing else, if its answers are few.
fn answers(blocks: &[Block]) -> Option<usize> {
    // A screen of lists and photos asks several things.
    let is_more = |block: &Block| {
        matches!(
            block,
            Block::Rows(_) | Block::PhotoSlot(_) | Block::Writing(_) | Block::Number(_) | Block::Label(_)
        )
    };
    if blocks.iter().any(is_more) {
        return None;
    }
    let mut choices = blocks.iter().enumerate().filter(|(_, block)| matches!(block, Block::Choice(_)));
    let (at, block) = choices.next()?;
    let few = |choice: &ChoiceBlock| {
        !choice.several
            && choice.options.len() <= MOST_ANSWERS
            && choice.options.iter().all(|option| option.about.chars().count() <= 60)
    };
    match block {
        Block::Choice(choice) if choices.next().is_none() && few(choice) => Some(at),
        _ => None,
    }
}

/// The dock.
pub(super) fn dock(drawn: &Drawn<'_>) -> Markup {
    let dock = of(drawn);
    let blocks = &drawn.screen.blocks;
    let presses = |places: &[usize]| -> Vec<&PressBlock> {
        places
            .iter()
            .filter_map(|at| match blocks.get(*at) {
                Some(Block::Press(press)) => Some(press),
                _ => None,
            })
            .collect()
    };
    let (on, out) = (presses(&dock.on), presses(&dock.out));
    let answers = dock.answers.and_then(|at| match blocks.get(at) {
        Some(Block::Choice(choice)) => Some(choice),
        _ => None,
    });
    if on.is_empty() && out.is_empty() && answers.is_none() && !drawn.screen.back {
        return html! {};
    }
    html! {
        nav.dock aria-label=(drawn.word("page-ways")) {
            @if let Some(answers) = answers { div.on { (choice::choice(answers, true, drawn.is_lead(&answers.name))) } }
            @if !on.is_empty() {
                // The other way stands before the main one, as the thumb of the hand that holds finds them.
                div.on.split2[on.len() > 1] { @for way in on.iter().rev() { (press::press(drawn, way)) } }
            }
            div.out {
                @if drawn.screen.back {
                    button.press.quiet.ic type="submit" name="back" value="1" id="back" {
                        (sign(Sign::Back, 22)) span { (drawn.word("page-back")) }
                    }
                }
                div.mid { @for way in &out { (press::quiet(drawn, way)) } }
            }
        }
    }
}
