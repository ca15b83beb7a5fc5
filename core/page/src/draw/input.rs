//! Words to write, and numbers.

use guide::screen::{NumberBlock, NumberKind, WritingBlock, WritingKind};
use maud::{Markup, html};

use super::element;
use crate::form::Field;

/// A place to write in.
pub(super) fn writing(writing: &WritingBlock) -> Markup {
    let id = element(&writing.id);
    let hint = (!writing.hint.is_empty()).then(|| format!("{id}-hint"));
    let name = Field::Written(&writing.key).name();
    let (capitals, corrected) = match writing.kind {
        WritingKind::Name | WritingKind::Names => ("words", false),
        WritingKind::Tag => ("characters", false),
        WritingKind::Print | WritingKind::Search => ("none", false),
        WritingKind::Note => ("sentences", true),
    };
    html! {
        div.writing {
            label.nl for=(id) { (writing.name) }
            @if writing.lines {
                textarea.tag[writing.kind == WritingKind::Print] id=(id) name=(name) rows="3" autocapitalize=(capitals)
                    spellcheck=(corrected) autocomplete="off" aria-describedby=[hint.as_deref()] { "\n" (writing.text) }
            } @else {
                input.tag[writing.kind == WritingKind::Tag] id=(id) name=(name) value=(writing.text)
                    type=(if writing.kind == WritingKind::Search { "search" } else { "text" })
                    autocapitalize=(capitals) spellcheck=(corrected) autocomplete="off"
                    data-search[writing.kind == WritingKind::Search] aria-describedby=[hint.as_deref()];
            }
            @if let Some(hint) = &hint { p.aside id=(hint) { (writing.hint) } }
        }
    }
}

/// A number with its unit.
pub(super) fn number(number: &NumberBlock) -> Markup {
    let id = element(&number.id);
    let hint = (!number.hint.is_empty()).then(|| format!("{id}-hint"));
    let keys = match number.kind {
        // A pad of digits has no letters for a unit.
        _ if number.letters => "text",
        NumberKind::Whole => "numeric",
        NumberKind::Decimal => "decimal",
        // A keyboard of numbers may have no minus.
        NumberKind::Signed => "text",
    };
    let unit = Field::Unit(&number.key).name();
    html! {
        div.number {
            label.nl for=(id) { (number.name) }
            div.nrow {
                input id=(id) name=(Field::Typed(&number.key).name()) value=(number.text) inputmode=(keys)
                    autocomplete="off" aria-describedby=[hint.as_deref()];
                @match number.units.as_slice() {
                    [] => {}
                    [only] => {
                        input type="hidden" name=(unit) value=(only.key);
                        span.only-unit { (only.words) }
                    }
                    units => {
                        div.units role="radiogroup" aria-labelledby=(format!("{id}-units")) {
                            span.hide id=(format!("{id}-units")) { (number.name) }
                            @for option in units {
                                label.unit {
                                    input type="radio" id=(element(&option.id)) name=(unit) value=(option.key)
                                        checked[option.key == number.unit];
                                    span { (option.words) }
                                }
                            }
                        }
                    }
                }
            }
            @if let Some(hint) = &hint { p.aside id=(hint) { (number.hint) } }
        }
    }
}

#[cfg(test)]
mod tests {
    use guide::screen::Aloud;

    use super::*;

    fn keys(kind: NumberKind, letters: bool) -> String {
        let block = NumberBlock {
            id: "down".into(),
            aloud: Aloud::default(),
            key: "down".into(),
            name: "Down".into(),
            text: String::new(),
            units: Vec::new(),
            unit: String::new(),
            hint: String::new(),
            kind,
            letters,
            submit: None,
        };
        let drawn = number(&block).into_string();
        let keys = drawn.split("inputmode=\"").nth(1).and_then(|rest| rest.split('"').next());
        keys.unwrap_or_default().to_owned()
    }

    #[test]
    fn a_pad_comes_up_only_where_neither_letters_nor_a_minus_are_typed() {
        assert_eq!(keys(NumberKind::Whole, false), "numeric");
        assert_eq!(keys(NumberKind::Decimal, false), "decimal");
        assert_eq!(keys(NumberKind::Signed, false), "text");
        assert_eq!(keys(NumberKind::Decimal, true), "text");
        assert_eq!(keys(NumberKind::Whole, true), "text");
    }
}
