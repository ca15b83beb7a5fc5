//! One part: what is known of it, what is wrong with it, and the questions about it.

use facts::fact::SubjectId;
use house::naming;
use phrase::Phrase;

use super::findings::{self, concerns};
use super::unknowns;
use crate::place::Key;
use crate::question::journey;
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::Scene;
use crate::view::Sketch;

pub(crate) fn show(scene: &Scene<'_>, id: SubjectId) -> Screen {
    let survey = scene.survey;
    let title = naming::part(survey, id);
    let mut sketch = Sketch::new(scene.language, scene.pending(), &title);
    let Some(part) = survey.parts.get(&id) else {
        sketch.words(WordsRole::Problem, &Phrase::new("gone"));
        sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Main);
        return sketch.screen;
    };
    let mut lines = Vec::new();
    if let Some(feed) = survey.wiring.feed(id) {
        let port = naming::port(survey, feed.part, feed.port);
        lines.push(sketch.say(&Phrase::new("part-fed").phrase("port", port)));
    }
    lines.extend(part.place.clone());
    lines.extend(part.label.clone());
    let photo = survey.photos_of(Some(id)).next().map(|photo| photo.id);
    sketch.part(part.tag.as_deref().unwrap_or_default(), &naming::kind(part), lines, photo);
    if let Some(worked) = scene.worked() {
        let found = worked.findings.iter().filter(|finding| concerns(finding, id)).take(40);
        let rows = found.map(|finding| findings::row(&sketch, worked, finding)).collect();
        sketch.rows(&Phrase::new("part-findings"), rows);
        let open = worked.unknowns.iter().filter(|weighed| weighed.unknown.about == id).take(40);
        let rows = open.map(|unknown| unknowns::row(scene, &sketch, unknown)).collect();
        sketch.rows(&Phrase::new("part-unknowns"), rows);
    }
    let run = survey.wiring.feed(id).and_then(|feed| feed.run);
    let rows = journey(scene)
        .into_iter()
        .filter(|on_way| unknowns::is_about(&on_way.question, id, run))
        .take(60)
        .map(|on_way| {
            let says = Phrase::new(if on_way.answered { "answered" } else { "open" });
            let head = on_way.question.phrase(scene).attribute("title");
            sketch
                .row(Some(Key::Ask(on_way.question.clone())), &head, Some(&says), None)
                .ticked(on_way.answered)
        })
        .collect();
    sketch.rows(&Phrase::new("part-questions"), rows);
    sketch.press(&Key::Map, &Phrase::new("to-map"), PressWeight::Main);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}
