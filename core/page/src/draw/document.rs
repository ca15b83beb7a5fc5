//! The whole document around a screen.

use guide::Screen;
use guide::screen::{Block, FigureBlock, FigureDrawn, NoticeRole, WayTaken, WordsRole};
use maud::{DOCTYPE, Markup, html};
use phrase::{Arg, Phrase};
use telling::words::Language;

use super::sign::{Sign, sign};
use super::{Drawn, blocks, dock, drawing};

/// A document around a body, in the language and the direction of its words. `again`: without script it is drawn again by
/// itself.
fn whole(words: &Language, title: &str, again: bool, body: &Markup) -> String {
    let direction = if words.is_right_to_left() { "rtl" } else { "ltr" };
    let markup = html! {
        (DOCTYPE)
        html lang=(words.locale()) dir=(direction) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                @if again { noscript { meta http-equiv="refresh" content="1"; } }
                title { (title) }
                link rel="stylesheet" href="/look.css";
                link rel="stylesheet" href="/page.css";
                link rel="icon" href="data:,";
                script src="/page.js" defer {}
            }
            (body)
        }
    };
    markup.into_string()
}

/// A screen as a document.
pub(crate) fn document(drawn: &Drawn<'_>) -> String {
    let screen = drawn.screen;
    let way = match screen.way {
        WayTaken::On => "on",
        WayTaken::Back => "back",
        WayTaken::Same => "same",
    };
    let name = screen.trail.first().map_or_else(String::new, |survey| format!(" · {survey}"));
    let has_lead = screen
        .blocks
        .iter()
        .any(|block| matches!(block, Block::Words(words) if words.role == WordsRole::Lead));
    let body = html! {
            body data-place=(screen.place) data-name=(screen.name) data-way=(way) data-working[drawn.working] {
                form.screen.wide[has_side(screen)] method="post" action="/deed" enctype="multipart/form-data" {
                    input type="hidden" name="ticket" value=(drawn.ticket);
                    (enter(screen))
                    header {
                        @if !screen.trail.is_empty() { p.trail { (screen.trail.join(" · ")) } }
                        @if has_lead { p.title { (screen.title) } } @else { h1.title tabindex="-1" { (screen.title) } }
                        @if let Some(far) = &screen.how_far { (tape(far.done, far.of, &far.words)) }
                    }
                    (notices(drawn))
                    main { (blocks(drawn)) }
                    (dock::dock(drawn))
                }
                (words_of_script(drawn))
            }
    };
    whole(drawn.words, &format!("{}{name}", screen.title), drawn.working, &body)
}

/// What the script has to say: it holds no word itself.
fn words_of_script(drawn: &Drawn<'_>) -> Markup {
    html! {
        div id="page-words" hidden data-larger=(drawn.word("page-larger")) data-smaller=(drawn.word("page-smaller"))
            data-turn=(drawn.word("page-turn")) data-back=(drawn.word("page-back"))
            data-crop=(drawn.word("page-crop")) data-take=(drawn.word("page-crop-take")) data-frame=(drawn.word("page-crop-frame")) {}
        template id="page-stale" { p.problem role="alert" data-told { (sign(Sign::Cross, 20)) span { (drawn.word("page-stale")) } } }
    }
}

/// What Enter in a place to write presses: what the place itself names, else only that what is written is kept.
fn enter(screen: &Screen) -> Markup {
    let submit = screen.blocks.iter().find_map(|block| match block {
        Block::Writing(writing) => writing.submit.as_deref(),
        Block::Number(number) => number.submit.as_deref(),
        _ => None,
    });
    html! {
        @match submit {
            Some(key) => button.hide type="submit" name="press" value=(key) tabindex="-1" aria-hidden="true" {},
            None => button.hide type="submit" name="keep" value="1" tabindex="-1" aria-hidden="true" {}
        }
    }
}

/// Whether something of the screen stands beside the rest where there is room.
fn has_side(screen: &Screen) -> bool {
    screen.blocks.iter().any(|block| match block {
        Block::Figure(_) => true,
        Block::Label(label) => label.photo.is_some(),
        Block::PhotoSlot(slot) => !slot.photos.is_empty(),
        _ => false,
    })
}

fn notices(drawn: &Drawn<'_>) -> Markup {
    html! {
        div.notices {
            @if let Some(said) = drawn.said {
                p.problem role="alert" data-notice=(drawn.ticket) { (sign(Sign::Cross, 20)) span { (drawn.words.say(said)) } }
            }
            @for notice in &drawn.screen.notices {
                @match notice.role {
                    NoticeRole::Problem => {
                        p.problem role="alert" data-notice=(notice.id) { (sign(Sign::Cross, 20)) span { (notice.words) } }
                    }
                    NoticeRole::Done => p.done role="status" data-notice=(notice.id) { (sign(Sign::Tick, 20)) span { (notice.words) } }
                }
            }
            @for (name, place) in drawn.written {
                p.done role="status" {
                    (sign(Sign::File, 24))
                    span { (drawn.words.say(&Phrase::new("page-file-ready").with("name", Arg::Text(name.clone())))) }
                    " "
                    a.press.other data-written href={ "/written/" (place) } download=(name) { (drawn.word("page-download")) }
                }
            }
        }
    }
}

/// How far the guide has come, as a measuring tape: a long mark every ten.
fn tape(done: u32, of: u32, words: &str) -> Markup {
    let of = of.max(1);
    let (marks, step) = (of.min(200), 352.0 / f64::from(of.clamp(2, 200) - 1));
    let reach = f64::from(done.min(of)) / f64::from(of) * 352.0;
    html! {
        div.tape {
            svg viewBox="0 0 358 12" preserveAspectRatio="none" aria-hidden="true" {
                path.tb d=(format!("M3 .75H{:.1}", 3.0 + reach)) {}
                @for mark in 0..marks {
                    @let x = 3.0 + f64::from(mark) * step;
                    path.d[x <= 3.0 + reach] d=(format!("M{x:.1} 0v{}", if mark % 10 == 0 { 9 } else if mark % 5 == 0 { 6 } else { 4 })) {}
                }
            }
            span { (words) }
        }
    }
}

/// A drawing by itself, at the size at which it can be read.
pub(crate) fn drawing_alone(figure: &FigureDrawn, block: &FigureBlock, words: &Language) -> String {
    let body = html! {
        body.alone {
            main {
                h1.lead { (block.name) }
                div.pane tabindex="0" role="region" aria-label=(block.name) data-drawing { (drawing::svg(figure, block, "")) }
                p.aside { (block.description) }
            }
        }
    };
    whole(words, &block.name, false, &body)
}

/// What a stranger sees, and whoever lost the cookie.
pub(crate) fn closed(words: &Language) -> String {
    let say = |id: &str| words.say(&Phrase::new(id));
    let body = html! {
        body { main.closed { h1.lead { (say("page-closed")) } p { (say("page-closed-how")) } } }
    };
    whole(words, &say("page-closed"), false, &body)
}
