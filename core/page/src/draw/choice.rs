//! One or several of a few answers.

use guide::screen::{ChoiceBlock, ChoiceOption};
use maud::{Markup, html};

use super::element;
use crate::form::Field;

/// Answers with at most so many letters stand side by side, without a dot.
const SHORT: usize = 12;

/// The choice. Where it `leads_on`, an answer is a press; else it is marked, and taken with a press of the screen. What is
/// asked is not said twice to the eye where it is the screen's lead.
pub(super) fn choice(choice: &ChoiceBlock, leads_on: bool, is_lead: bool) -> Markup {
    let short = choice
        .options
        .iter()
        .all(|option| option.about.is_empty() && (option.unsure || option.words.chars().count() <= SHORT));
    let presses = leads_on && !choice.several;
    html! {
        fieldset.choice.short[short && !presses] id=(element(&choice.id)) {
            legend.hide[is_lead] { (choice.name) }
            @if presses {
                @for option in &choice.options { (press(choice, option)) }
            } @else {
                // That it was there, where nothing in it is marked.
                input type="hidden" name=(Field::Chosen(&choice.key).name()) value="";
                @for option in &choice.options { (mark(choice, option)) }
                @if leads_on { button.press.other type="submit" name="keep" value="1" { (choice.name) } }
            }
        }
    }
}

fn press(choice: &ChoiceBlock, option: &ChoiceOption) -> Markup {
    html! {
        button.opt.unsure[option.unsure].picked[option.picked] type="submit" id=(element(&option.id))
            name=(Field::Pick(&choice.key).name()) value=(option.key) aria-pressed=[option.picked.then_some("true")]
            disabled[!option.enabled] {
            span.dot aria-hidden="true" {}
            (said(option))
        }
    }
}

fn mark(choice: &ChoiceBlock, option: &ChoiceOption) -> Markup {
    let kind = if choice.several { "checkbox" } else { "radio" };
    html! {
        label.opt.unsure[option.unsure] {
            input type=(kind) id=(element(&option.id)) name=(Field::Chosen(&choice.key).name()) value=(option.key)
                checked[option.picked] disabled[!option.enabled] data-alone[option.unsure];
            span.dot aria-hidden="true" {}
            (said(option))
        }
    }
}

fn said(option: &ChoiceOption) -> Markup {
    html! { span.ow { (option.words) @if !option.about.is_empty() { small { (option.about) } } } }
}
