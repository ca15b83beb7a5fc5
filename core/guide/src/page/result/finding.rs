//! One finding: what, where, why it matters, what to do, on what grounds, what to mind.

use phrase::Phrase;

use super::{findings, waiting};
use crate::place::Key;
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::Scene;
use crate::view::Sketch;

pub(crate) fn show(scene: &Scene<'_>, name: &str) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("finding"));
    let Some(worked) = waiting::worked(scene, &mut sketch) else { return sketch.screen };
    let found = worked.findings.iter().find(|finding| findings::name(worked, finding) == name);
    let Some(finding) = found else {
        sketch.words(WordsRole::Lead, &Phrase::new("finding-gone"));
        sketch.press(&Key::Findings, &Phrase::new("to-all-findings"), PressWeight::Main);
        return sketch.screen;
    };
    sketch.screen.title = sketch.say(&finding.weight().phrase());
    sketch.weighty_words(WordsRole::Lead, &finding.what(), findings::severity(finding.weight()));
    let cautions: Vec<Phrase> = finding.cautions().iter().map(|caution| caution.phrase()).collect();
    let rows = finding
        .at
        .iter()
        .take(60)
        .filter_map(|place| {
            let key = place.part().map(Key::Part);
            Some(sketch.row(key, &place.phrase(scene.survey)?, None, None))
        })
        .collect();
    sketch.rows(&Phrase::new("finding-where"), rows);
    sketch.words(WordsRole::Why, &finding.why());
    for caution in &cautions {
        sketch.caution(caution);
    }
    sketch.words(WordsRole::Heading, &Phrase::new("finding-todo"));
    sketch.words(WordsRole::How, &finding.todo());
    sketch.words(WordsRole::Aside, &Phrase::new("finding-source").phrase("source", finding.source()));
    sketch.press(&Key::Findings, &Phrase::new("to-all-findings"), PressWeight::Main);
    sketch.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Other);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}
