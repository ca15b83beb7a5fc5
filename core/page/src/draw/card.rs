//! Blocks about one thing of the house: a photo, a label, a reading, a part.

use guide::screen::{LabelBlock, PartBlock, PhotoPiece, PhotoShown, PhotoSlotBlock, ReadingBlock};
use maud::{Markup, html};

use super::sign::{Sign, sign};
use super::{Drawn, element};
use crate::form::Field;

fn small(photo: &str) -> String {
    format!("/photo/small/{photo}")
}

fn whole(photo: &str) -> String {
    format!("/photo/whole/{photo}")
}

pub(super) fn cut_out(piece: &PhotoPiece) -> String {
    let PhotoPiece { photo, left, top, width, height, name: _ } = piece;
    format!("/photo/piece/{photo}/{left}/{top}/{width}/{height}")
}

/// A place for photos.
pub(super) fn photos(drawn: &Drawn<'_>, slot: &PhotoSlotBlock) -> Markup {
    let id = element(&slot.id);
    let input = format!("{id}-photos");
    html! {
        section.photos.burst[slot.burst] aria-labelledby=(id) {
            h2.rname id=(id) { (slot.name) }
            div.phs { @for photo in &slot.photos { (one(drawn, photo)) } }
            div.drop data-drop=(input) {
                (sign(Sign::Camera, 30))
                label for=(input) { (drawn.word("page-drop")) }
                input type="file" id=(input) name=(Field::Photo(&slot.key).name()) accept="image/jpeg,image/png" multiple;
                button.press.other type="submit" name="keep" value="1" { span { (drawn.word("page-add-photos")) } }
            }
        }
    }
}

fn one(drawn: &Drawn<'_>, photo: &PhotoShown) -> Markup {
    let picture = html! { img src=(small(&photo.photo)) alt="" loading="lazy"; };
    html! {
        div.ph {
            @match &photo.key {
                Some(key) => {
                    button type="submit" id=(element(&photo.id)) name="press" value=(key)
                        aria-pressed=[photo.picked.map(|on| if on { "true" } else { "false" })] {
                        (picture)
                        span { (photo.name) }
                        @if photo.picked.is_some() { b aria-hidden="true" { (sign(Sign::Tick, 20)) } }
                    }
                    a.large data-photo href=(whole(&photo.photo)) target="_blank" {
                        span { (drawn.word("page-all-of-it")) } span.hide { ": " (photo.name) }
                    }
                }
                None => {
                    a data-photo id=(element(&photo.id)) href=(whole(&photo.photo)) target="_blank" {
                        (picture) span { (photo.name) }
                    }
                }
            }
        }
    }
}

/// A label's photo beside its text and the figures in it.
pub(super) fn label(drawn: &Drawn<'_>, label: &LabelBlock) -> Markup {
    let id = element(&label.id);
    html! {
        section.label aria-labelledby=(id) {
            h2.rname id=(id) { (label.name) }
            div.lshot.cut[label.part.is_some()] {
                @if let Some(photo) = &label.photo {
                    a data-photo href=(whole(photo)) target="_blank" {
                        img src=(label.part.as_ref().map_or_else(|| small(photo), cut_out)) alt=(drawn.word("page-all-of-it"));
                    }
                }
                @if !label.text.is_empty() { p { (label.text) } }
            }
            @for figure in &label.figures {
                @let doubtful = !figure.doubt.is_empty();
                @let mark = match (doubtful, figure.taken) {
                    (true, _) => Some(Sign::Doubt),
                    (false, true) => Some(Sign::Tick),
                    // What no touch changes is only to be read.
                    (false, false) => figure.key.is_some().then_some(Sign::Pen),
                };
                @let inside = html! {
                    span.fn { (figure.name) }
                    span.fs { (figure.says) }
                    @if let Some(mark) = mark { span.fk { (sign(mark, 20)) } }
                    @if doubtful { small { (figure.doubt) } }
                    @if let Some(piece) = &figure.piece { img.fp src=(cut_out(piece)) alt=(piece.name); }
                };
                @match &figure.key {
                    Some(key) => {
                        button.fig.doubtful[doubtful].wait[!figure.taken] type="submit" id=(element(&figure.id))
                            name="press" value=(key) aria-pressed=[figure.picked.then_some("true")] { (inside) }
                    }
                    None => div.fig.doubtful[doubtful].wait[!figure.taken] id=(element(&figure.id)) { (inside) }
                }
            }
            @for doubt in &label.doubts { p.aside { (doubt) } }
        }
    }
}

/// Something measured.
pub(super) fn reading(reading: &ReadingBlock) -> Markup {
    html! {
        div.reading id=(element(&reading.id)) {
            span { (reading.name) }
            b { (reading.says) }
            @if !reading.remark.is_empty() { small { (reading.remark) } }
        }
    }
}

/// One part.
pub(super) fn part(part: &PartBlock) -> Markup {
    let inside = html! {
        @if let Some(photo) = &part.photo { i { img src=(small(photo)) alt=""; } }
        span.rw {
            b { @if !part.tag.is_empty() { span.tag { (part.tag) } " " } (part.name) }
            @for line in &part.lines { small { (line) } }
        }
        @if part.key.is_some() { (sign(Sign::On, 20)) }
    };
    let Some(key) = &part.key else { return html! { div.part id=(element(&part.id)) { (inside) } } };
    html! { button.part type="submit" id=(element(&part.id)) name="press" value=(key) { (inside) } }
}
