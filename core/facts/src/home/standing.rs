//! What stands in all surveys of this device, read without opening them.

use super::{Found, Home};
use crate::error::Result;
use crate::store::{self, Standing};

impl Home {
    /// What stands in the surveys of the list under some fields, of each survey oldest first. A survey in trouble is
    /// passed over.
    ///
    /// # Errors
    /// As [`Home::list`].
    pub fn standing(&self, fields: &[&str]) -> Result<Vec<Vec<Standing>>> {
        let surveys = self.list()?.into_iter().filter(|entry| matches!(entry.found, Found::Survey(_)));
        Ok(surveys.map(|entry| store::standing(&entry.folder, fields).unwrap_or_default()).collect())
    }
}
