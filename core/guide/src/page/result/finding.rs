//! One finding: what, where, why it matters, what to do, on what grounds, what to mind.

use phrase::Phrase;

use super::{findings, waiting};
use crate::place::Key;
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, name: &str) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("finding"));
    let Some(worked) = waiting::worked(snapshot, &mut builder) else { return builder.screen };
    let found = worked.findings.iter().find(|finding| findings::name(worked, finding) == name);
    let Some(finding) = found else {
        builder.words(WordsRole::Lead, &Phrase::new("finding-gone"));
        builder.press(&Key::Findings, &Phrase::new("to-all-findings"), PressWeight::Main);
        return builder.screen;
    };
    builder.screen.title = builder.say(&finding.weight().phrase());
    builder.weighty_words(WordsRole::Lead, &finding.what(), findings::severity(finding.weight()));
    let cautions: Vec<Phrase> =
        finding.cautions_in(snapshot.survey).iter().map(|caution| caution.phrase()).collect();
    let rows = finding
        .at
        .iter()
        .take(60)
        .filter_map(|place| {
            let key = place.part().map(Key::Part);
            Some(builder.row(key, &place.phrase(snapshot.survey)?, None, None))
        })
        .collect();
    builder.rows(&Phrase::new("finding-where"), rows);
    builder.words(WordsRole::Why, &finding.why());
    for caution in &cautions {
        builder.caution(caution);
    }
    builder.words(WordsRole::Heading, &Phrase::new("finding-todo"));
    builder.words(WordsRole::How, &finding.todo());
    builder.words(WordsRole::Aside, &Phrase::new("finding-source").phrase("source", finding.source()));
    builder.press(&Key::Findings, &Phrase::new("to-all-findings"), PressWeight::Main);
    builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Other);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}
