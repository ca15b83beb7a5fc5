//! Tags to cut out and stick round the cables: two of each, one for either end.

use house::naming;
use house::record::{Part, reading_order};
use maud::{Markup, html};
use phrase::Phrase;

use super::page::Section;
use super::teller::ReportTeller;

/// The section; `None` where nothing has a tag.
pub(super) fn section(teller: &ReportTeller<'_>) -> Option<Section> {
    let order = reading_order(teller.survey());
    let tags: Vec<_> =
        order.into_iter().filter_map(|id| teller.part(id)).filter_map(|part| tag(teller, part)).collect();
    if tags.is_empty() {
        return None;
    }
    let body = html! {
        p { (teller.word("report-tags-how")) }
        ul.cuts {
            @for tag in &tags {
                @for _ in 0..2 { (strip(tag)) }
            }
        }
    };
    Some(Section { id: "tags", heading: "report-tags", body })
}

/// What stands on a tag: on one half where the cable leads, on the other where it comes from.
struct Tag {
    mark: String,
    to: String,
    from: String,
}

fn tag(teller: &ReportTeller<'_>, part: &Part) -> Option<Tag> {
    let survey = teller.survey();
    let feed = survey.wiring.feed(part.id);
    let run = feed.and_then(|feed| survey.runs.get(&feed.run?));
    let run_tag = run.and_then(|run| run.tag.clone());
    let mark = run_tag.clone().or_else(|| part.tag.clone())?;
    let what = match survey.room_of(part) {
        Some(room) if !room.name.trim().is_empty() => Phrase::new("text-said").text("text", &room.name),
        _ => naming::kind(part),
    };
    // A cable with a mark of its own also says which part it leads to.
    let to = match &part.tag {
        Some(part_tag) if run_tag.is_some() => {
            Phrase::new("report-tag-to").text("tag", part_tag).phrase("what", what)
        }
        _ => what,
    };
    let from = match feed {
        Some(feed) if survey.parts.get(&feed.part).is_some_and(|feeder| feeder.outputs() > 1) => {
            let from = Phrase::new("report-tag-from-port").phrase("part", naming::mark(survey, feed.part));
            naming::with_port(from, survey.parts.get(&feed.part), feed.port)
        }
        Some(feed) => Phrase::new("report-tag-from").phrase("part", naming::mark(survey, feed.part)),
        None if survey.wiring.loose().contains_key(&part.id) => Phrase::new("report-tag-from-not-known"),
        None => Phrase::new("report-tag-from-outside"),
    };
    Some(Tag { mark, to: teller.say(&to), from: teller.say(&from) })
}

fn strip(tag: &Tag) -> Markup {
    let half = |says: &str| html! { span.half-tag { b { (ReportTeller::own(&tag.mark)) } " " span { (ReportTeller::own(says)) } } };
    html! { li { (half(&tag.to)) " " span.round aria-hidden="true" {} (half(&tag.from)) } }
}
