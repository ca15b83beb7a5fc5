//! Damage found at start: repaired from the facts that can still be read, or with those of a file.

use std::path::Path;

use crate::error::{Result, SurveyError};
use crate::fact::{AuthorId, Fact, SurveyId};
use crate::store::{Rebuilt, Store, rebuild, salvage};

/// How the opening of a survey went.
#[derive(Debug)]
pub struct Repaired {
    /// The survey, open.
    pub store: Store,
    /// What was repaired; `None` if it was whole.
    pub rebuilt: Option<Rebuilt>,
}

impl Repaired {
    /// Opens a survey. If its database is damaged but all facts can still be read, it is built anew from them.
    ///
    /// # Errors
    /// As [`Store::open`]; `Damaged` if facts are lost, so that a file is needed ([`Repaired::open_with_file`]).
    /// Nothing is changed then.
    pub fn open(folder: &Path, author: AuthorId) -> Result<Self> {
        match Store::open(folder, author) {
            Err(SurveyError::Damaged { folder: named, report }) => {
                let found = salvage(folder)?;
                match found.survey.filter(|_| found.is_complete) {
                    Some(survey) => open_rebuilt(folder, author, survey, found.facts),
                    None => Err(SurveyError::Damaged { folder: named, report }),
                }
            }
            other => Ok(Self { store: other?, rebuilt: None }),
        }
    }

    /// Builds a damaged survey anew from the facts of a file of it and those that can still be read.
    ///
    /// # Errors
    /// `OtherSurveyInFile`; `FactDiffers` if the file was altered; as [`rebuild`]. Nothing is changed then.
    pub fn open_with_file(
        folder: &Path,
        author: AuthorId,
        survey: SurveyId,
        file: Vec<Fact>,
    ) -> Result<Self> {
        let found = salvage(folder)?;
        if found.survey.is_some_and(|id| id != survey) {
            return Err(SurveyError::OtherSurveyInFile);
        }
        let facts = file.into_iter().chain(found.facts).collect();
        open_rebuilt(folder, author, survey, facts)
    }
}

fn open_rebuilt(folder: &Path, author: AuthorId, survey: SurveyId, facts: Vec<Fact>) -> Result<Repaired> {
    let rebuilt = rebuild(folder, survey, facts)?;
    Ok(Repaired { store: Store::open(folder, author)?, rebuilt: Some(rebuilt) })
}
