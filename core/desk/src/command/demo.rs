//! `legwork demo`: the whole job on an invented house.

use std::path::{Path, PathBuf};

use advice::finding::findings_beside;
use facts::fact::AuthorId;
use facts::store::Store;
use house::record::Survey;
use phrase::Phrase;
use serde::Serialize;

use super::context::Context;
use super::findings::FindingJson;
use super::forecast::ForecastJson;
use super::worked::all;
use super::worklist::WorkListJson;
use super::{
    findings as findings_command, forecast, report, sheet as sheet_command, worklist as list_command,
};
use crate::error::{Advice, DeskError};
use crate::sheet;

/// The invented house.
const HOUSE: &str = include_str!("../../demo/house.toml");
/// The names of what is written.
const SURVEY: &str = "demo.legwork";
const REPORT: &str = "demo.html";

/// What to type for one's own house.
const OWN_HOUSE: &str = "legwork sheet HOUSE.toml HOUSE.legwork";

#[derive(Serialize)]
struct DemoJson {
    survey: String,
    report: String,
    forecast: ForecastJson,
    findings: Vec<FindingJson>,
    worklist: WorkListJson,
}

/// Makes the survey of the invented house.
///
/// # Errors
/// If it cannot be written.
pub(super) fn survey(folder: &Path) -> Result<Survey, DeskError> {
    let house = sheet::read(HOUSE.as_bytes(), None)
        .map_err(|problems| DeskError::Sheet { file: "demo/house.toml".into(), problems })?;
    sheet_command::write(house, folder)
}

/// Writes the survey and the report into `out`, and tells everything.
pub fn run(context: &Context, out: &Path) -> Result<(), DeskError> {
    let (folder, file) = (out.join(SURVEY), out.join(REPORT));
    refuse_if_there(&[&folder, &file])?;
    let cannot = |source| DeskError::Write { path: out.to_owned(), source };
    let new = !out.exists();
    std::fs::create_dir_all(out).map_err(cannot)?;
    let done = write(context, &folder, &file);
    if done.is_err() && new {
        // Only an empty folder goes: nothing of anybody else's.
        let _ = std::fs::remove_dir(out);
    }
    done
}

fn write(context: &Context, folder: &PathBuf, file: &Path) -> Result<(), DeskError> {
    let survey = survey(folder)?;
    let told = all(context, folder, &survey).and_then(|(list, stakes)| {
        let store = Store::open(folder, AuthorId::random())?;
        report::write(context, &store, (&survey, store.ledger()), (&list, &stakes), true, (file, false))?;
        Ok(list)
    });
    let list = match told {
        Ok(list) => list,
        Err(error) => {
            // A demo is whole or not there.
            let _ = std::fs::remove_dir_all(folder);
            return Err(error);
        }
    };
    let found = findings_beside(&survey, &list.as_found, &list.levels);
    let (survey_name, report_name) = (folder.display().to_string(), file.display().to_string());
    let as_json = DemoJson {
        survey: survey_name.clone(),
        report: report_name.clone(),
        forecast: forecast::as_json(&survey, &list.as_found, forecast::Of::AsFound),
        findings: findings_command::as_json(context, &survey, &found),
        worklist: list_command::as_json(context, &survey, &list),
    };
    context.answer(&as_json, |page| {
        if let Some(name) = &survey.name {
            page.heading(name);
        }
        page.paragraph(0, &context.word("desk-demo-invented"));
        forecast::tell(context, &survey, &list.as_found, page);
        findings_command::tell(context, &found, page);
        list_command::tell(context, &survey, &list, page);
        page.heading(&context.word("desk-demo-wrote"));
        page.paragraph(0, &context.say(&Phrase::new("desk-demo-survey").text("survey", &survey_name)));
        page.paragraph(0, &context.say(&Phrase::new("desk-demo-report").text("report", &report_name)));
        page.paragraph(0, &context.word("desk-demo-own"));
        page.paragraph(4, OWN_HOUSE);
    })
}

fn refuse_if_there(paths: &[&PathBuf]) -> Result<(), DeskError> {
    match paths.iter().find(|path| path.symlink_metadata().is_ok()) {
        Some(path) => Err(DeskError::Exists { path: (*path).clone(), advice: Advice::OtherOut }),
        None => Ok(()),
    }
}
