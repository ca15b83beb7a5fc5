//! One part: what is known of it, what is wrong with it, and the questions about it.

use facts::fact::SubjectId;
use house::naming;
use house::record::{PartKind, Survey};
use phrase::Phrase;

use super::findings::{self, concerns};
use super::unknowns;
use crate::place::{Key, Question};
use crate::question::journey;
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, id: SubjectId) -> Screen {
    let survey = snapshot.survey;
    let title = naming::part(survey, id);
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    let Some(part) = survey.parts.get(&id) else {
        builder.words(WordsRole::Problem, &Phrase::new("gone"));
        builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Main);
        return builder.screen;
    };
    let mut lines = Vec::new();
    if let Some(feed) = survey.wiring.feed(id) {
        let port = naming::port(survey, feed.part, feed.port);
        lines.push(builder.say(&Phrase::new("part-fed").phrase("port", port)));
    }
    lines.extend(part.place.clone());
    lines.extend(part.label.clone());
    let photo = survey.photos_of(Some(id)).next().map(|photo| photo.id);
    builder.part(part.tag.as_deref().unwrap_or_default(), &naming::kind(part), lines, photo);
    if let Some(worked) = snapshot.worked() {
        let found = worked.findings.iter().filter(|finding| concerns(finding, id)).take(40);
        let rows = found.map(|finding| findings::row(&builder, worked, finding)).collect();
        builder.rows(&Phrase::new("part-findings"), rows);
        let open = worked.unknowns.iter().filter(|weighed| weighed.unknown.about == id).take(40);
        let rows = open.map(|unknown| unknowns::row(snapshot, &builder, unknown)).collect();
        builder.rows(&Phrase::new("part-unknowns"), rows);
    }
    let run = survey.wiring.feed(id).and_then(|feed| feed.run);
    // What a part is, nobody knew: it is told where its feeder leads to, or that it is the part sought at the entry.
    let tells = |question: &Question| part.kind == PartKind::Unknown && tells_kind(survey, question, id);
    let rows = journey(snapshot)
        .into_iter()
        .filter(|on_way| unknowns::is_about(&on_way.question, id, run) || tells(&on_way.question))
        .take(60)
        .map(|on_way| {
            let says = Phrase::new(if on_way.answered { "answered" } else { "open" });
            let head = on_way.question.phrase(snapshot).attribute("title");
            builder
                .row(Some(Key::Ask(on_way.question.clone())), &head, Some(&says), None)
                .ticked(on_way.answered)
        })
        .collect();
    builder.rows(&Phrase::new("part-questions"), rows);
    builder.press(&Key::Map, &Phrase::new("to-map"), PressWeight::Main);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

/// Whether a question is one at which a part may be told to be of a kind.
fn tells_kind(survey: &Survey, question: &Question, part: SubjectId) -> bool {
    let fed = survey.wiring.feed(part);
    match question {
        Question::LeadsTo(feeder, port) => fed.is_some_and(|feed| (feed.part, feed.port) == (*feeder, *port)),
        Question::Outputs(feeder) => fed.is_some_and(|feed| feed.part == *feeder),
        Question::GroundBlock(entry) | Question::EntryFilter(entry) => {
            survey.to_first_split(*entry).contains(&part)
        }
        _ => false,
    }
}
