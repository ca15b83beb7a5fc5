//! The page in a file for whoever has no program: the report, or, where that cannot be worked out, a page that says so.
//!
//! Taking one's own survey along must never hang on whether it can be worked out.

use std::panic::{AssertUnwindSafe, catch_unwind};

use advice::AdviceError;
use advice::unknown::unknowns;
use advice::worklist::{Options, Stake, WorkList, stakes, worklist_watched};
use facts::FactsError;
use facts::fact::Ledger;
use facts::file::MOST_PAGE_BYTES;
use house::record::Survey;
use house::{naming, story};
use maud::{DOCTYPE, html};
use phrase::Phrase;

use super::Provenance;
use crate::words::Language;
use crate::words::error::InWords;

/// The page of a survey: its report with the work list. Where that cannot be worked out, or is longer than a file may
/// hold, a page that says so, with what is recorded, in short. To be handed to [`house::document::pack`]; for the same bytes of
/// the same facts, `language` must always be the same.
///
/// # Errors
/// [`AdviceError::Stopped`] once `goes_on` says no.
pub fn report_page(
    survey: &Survey,
    ledger: &Ledger,
    language: &Language,
    goes_on: &dyn Fn() -> bool,
) -> Result<String, AdviceError> {
    report_page_with(survey, ledger, language, goes_on, &|survey| {
        let options = Options::default();
        let list = worklist_watched(survey, &options, &mut |_| goes_on())?;
        let open = unknowns(survey, &list.as_found);
        let stakes = stakes(survey, &list.as_found, &open, &options.screening, &mut |_| goes_on())?;
        Ok((list, stakes))
    })
}

/// Works out a work list and what is at stake with what is not known, or finds both.
pub type Work<'a> = &'a dyn Fn(&Survey) -> Result<(WorkList, Vec<Option<Stake>>), AdviceError>;

/// As [`report_page`], with a work list from elsewhere: the default one of the survey, which may have been kept.
///
/// # Errors
/// [`AdviceError::Stopped`] once `goes_on` says no, or `work` does.
pub fn report_page_with(
    survey: &Survey,
    ledger: &Ledger,
    language: &Language,
    goes_on: &dyn Fn() -> bool,
    work: Work<'_>,
) -> Result<String, AdviceError> {
    let whole = catch_unwind(AssertUnwindSafe(|| {
        let (list, stakes) = work(survey)?;
        if !goes_on() {
            return Err(AdviceError::Stopped);
        }
        let provenance = match Provenance::of(survey, ledger) {
            Ok(provenance) => Provenance { has_photos_beside: true, ..provenance },
            Err(why) => return Ok(plain(survey, language, &why)),
        };
        let html = super::html_weighed(survey, (&list, &stakes), provenance, language);
        if html.len() as u64 > MOST_PAGE_BYTES {
            let what = "its report may have, in bytes,";
            return Ok(plain(survey, language, &FactsError::DoesNotFit { what, most: MOST_PAGE_BYTES }));
        }
        Ok(html)
    }));
    match whole {
        Ok(Err(AdviceError::Stopped)) => Err(AdviceError::Stopped),
        Ok(Ok(html)) => Ok(html),
        Ok(Err(why)) => Ok(plain(survey, language, &why)),
        Err(_) => Ok(plain(survey, language, &AdviceError::Inner("the report was not finished"))),
    }
}

/// The page that says that there is no report, and lists what is recorded.
fn plain(survey: &Survey, language: &Language, why: &dyn InWords) -> String {
    let word = |id: &str| language.say(&Phrase::new(id));
    let name = survey.name.clone().unwrap_or_else(|| word("home-untitled"));
    let why = Phrase::new("file-page-why").phrase("why", why.phrase());
    let part = |id| language.say(&naming::part(survey, id));
    let markup = html! {
        (DOCTYPE)
        html lang=(word("report-language")) {
            head {
                meta charset="utf-8";
                meta http-equiv="Content-Security-Policy" content="default-src 'none'";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                meta name="referrer" content="no-referrer";
                title { (name) }
            }
            body {
                h1 { (name) }
                p { (language.say(&why)) }
                p { (word("file-page-kept")) }
                h2 { (word("file-page-parts")) }
                ul {
                    @for found in survey.parts.values() {
                        li {
                            (part(found.id))
                            @if let Some(label) = &found.label { ": " (label) }
                        }
                    }
                    @for &run in survey.runs.keys() { li { (language.say(&story::thing(survey, run))) } }
                }
                @if !survey.notes.is_empty() {
                    h2 { (word("file-page-notes")) }
                    @for note in survey.notes.values() { p { (note.text) } }
                }
            }
        }
    };
    markup.into_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Figures;
    use facts::fact::{AuthorId, Edit, SubjectId};
    use facts::store::Store;
    use house::document::Document;

    #[test]
    fn where_nothing_can_be_worked_out_the_page_says_so_and_lists_what_is_there() {
        let home = tempfile::TempDir::new().unwrap();
        let mut store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
        let part = SubjectId::random();
        let edit = |field: &str, value: &str| Edit::new(part, field, value);
        store
            .write(&[edit("is", "part"), edit("kind", "splitter"), edit("tag", "S1"), edit("label", "5<b>6")])
            .unwrap();
        store.add_note(None, "an invented note").unwrap();
        let survey = store.survey().unwrap();
        let english = Language::english(Figures::default());
        let fails: [Work<'_>; 2] = [&|_| Err(coax::CoaxError::Loop { part: 9 }.into()), &|survey| {
            // What a fault of the program does.
            let none = None;
            assert!(survey.parts.is_empty(), "a fault made for the test");
            none.ok_or(AdviceError::Inner("not reached"))
        }];
        for (fail, why) in fails.into_iter().zip(["form a loop", "a fault in this program"]) {
            let page = report_page_with(&survey, store.ledger(), &english, &|| true, fail).unwrap();
            for told in [why, "S1", "5&lt;b&gt;6", "an invented note", "facts.jsonl"] {
                assert!(page.contains(told), "no {told} in {page}");
            }
            assert!(!page.contains("file-page"), "{page}");
        }
        let whole = report_page(&survey, store.ledger(), &english, &|| true).unwrap();
        assert!(whole.contains("S1") && !whole.contains("facts.jsonl"));
        assert!(matches!(
            report_page(&survey, store.ledger(), &english, &|| false),
            Err(AdviceError::Stopped)
        ));
    }
}
