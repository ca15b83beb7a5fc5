//! Folders of surveys in the home folder, by their names.

use std::path::PathBuf;

use super::Session;
use crate::error::Result;

impl Session {
    /// A folder in the home folder for a survey of this name, numbered where there is one already.
    pub(crate) fn free_folder(&self, name: &str) -> Result<PathBuf> {
        let plain = folder_name(name);
        let mut folder = self.home().place(&plain)?;
        let mut number = 2_u32;
        while folder.symlink_metadata().is_ok() {
            folder = self.home().place(&format!("{plain} {number}"))?;
            number += 1;
        }
        Ok(folder)
    }
}

/// A folder's name out of a survey's name: what no system forbids.
pub(crate) fn folder_name(name: &str) -> String {
    let plain: String = name
        .chars()
        .map(|sign| if sign.is_alphanumeric() || matches!(sign, ' ' | '-' | '_') { sign } else { ' ' })
        .collect();
    let plain = plain.split_whitespace().collect::<Vec<_>>().join(" ");
    let short: String = plain.chars().take(45).collect();
    if short.is_empty() { "survey".into() } else { short }
}
