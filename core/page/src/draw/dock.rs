//! The dock at the foot of the screen: the way on above, the way back and what can wait below.

use guide::screen::Block;
use maud::{Markup, html};

use super::sign::{Sign, sign};
use super::{Drawn, choice, press};

/// The dock.
pub(super) fn dock(drawn: &Drawn<'_>) -> Markup {
    let (dock, blocks) = (&drawn.screen.dock, &drawn.screen.blocks);
    let press = |id: &String| {
        blocks.iter().find_map(|block| match block {
            Block::Press(press) if press.id == *id => Some(press),
            _ => None,
        })
    };
    let presses = |ids: &[String]| -> Vec<_> { ids.iter().filter_map(press).collect() };
    let (on, out) = (presses(&dock.on), presses(&dock.out));
    let answers = blocks.iter().find_map(|block| match block {
        Block::Choice(choice) if dock.answers.as_ref() == Some(&choice.id) => Some(choice),
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
