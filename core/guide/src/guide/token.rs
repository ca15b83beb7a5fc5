//! Where one is, as a word that a shell keeps for the time when the system has ended the app; and what comes from outside.

use std::path::{Component, Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::Guide;
use crate::error::Result;
use crate::page::sent;
use crate::place::{Move, Outside, Place, SharePlace};
use crate::screen::WayTaken;
use crate::session::{Keep, Pending, look};

/// The form of a token. One of another form is as good as none.
const VERSION: u32 = 1;

/// Where one is, as far as it does not stand in the survey's own memory. Folders are told from the home folder on: a
/// phone moves that.
#[derive(Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
struct Token {
    version: u32,
    /// The survey that is open.
    survey: Option<PathBuf>,
    /// The screen that is shown while none is.
    outside: Outside,
    /// What that screen was given.
    pending: Pending,
    /// What a new survey was given before its screen was left.
    new_survey: Pending,
    /// A file that was looked into and not taken in.
    file: Option<PathBuf>,
}

impl Guide {
    /// A word for where one is, with which [`Guide::restore`] comes back to the same screen after the app's death. What is
    /// half typed is kept on the disk, or stands in it where no survey is open: a shell keeps it where only this app reads.
    ///
    /// # Errors
    /// If where one is cannot be written down.
    pub fn token(&mut self) -> Result<String> {
        self.session.remember(Keep::Now)?;
        let home = self.session.home().folder().to_owned();
        let within = |folder: &Path| folder.strip_prefix(&home).ok().map(Path::to_owned);
        let open = self.session.open.as_ref();
        let looked = open.map_or(self.session.looked.as_ref(), |open| open.looked.as_ref());
        let survey = self.open_folder().as_deref().and_then(within);
        let outside = self.session.outside.clone().with_folder(within).unwrap_or_default();
        let token = Token {
            version: VERSION,
            survey,
            outside,
            pending: self.session.pending.clone(),
            new_survey: self.session.new_survey.clone(),
            // A name that is no text cannot be written down: the file is asked for again, and the rest comes back.
            file: looked.map(|looked| looked.file.clone()).filter(|file| file.to_str().is_some()),
        };
        Ok(serde_json::to_string(&token).unwrap_or_default())
    }

    /// Comes back to where one was when the token was made. Opening a large survey may take longer than a touch: then the
    /// screen tells so. A token that cannot be read, or of a survey that is gone, leads to the surveys of this device.
    ///
    /// # Errors
    /// If where one is now cannot be written down.
    pub fn restore(&mut self, token: &str) -> Result<()> {
        let known = serde_json::from_str(token).ok().filter(|token: &Token| token.version == VERSION);
        let token = known.unwrap_or_default();
        self.close_survey()?;
        (self.session.looked, self.session.new_survey) = (None, token.new_survey);
        let home = self.session.home().folder().to_owned();
        let whole = |folder: &Path| within(&home, folder).filter(|folder| folder.is_dir());
        let file = token.file.filter(|file| file.is_file());
        if let Some(survey) = token.survey {
            if let Some(folder) = whole(&survey) {
                self.session.send_open(folder, |session| {
                    if let (Some(Place::Share(SharePlace::TakeIn)), Some(file)) = (session.place(), file) {
                        look(session, file)?;
                    }
                    Ok(Move::Stay)
                });
            }
        } else {
            if let Some(outside) = token.outside.with_folder(whole) {
                (self.session.outside, self.session.pending) = (outside, token.pending);
            }
            if let Some(file) = file.filter(|_| self.session.outside == Outside::Sent) {
                self.session.list_and(|session| Ok(sent::look_into(session, file)));
            }
        }
        if self.session.sent_work.is_none() {
            self.session.list_if_wanted();
        }
        self.be_patient();
        self.way = WayTaken::Same;
        Ok(())
    }

    /// Looks into a file that came from outside, wherever one is: another program handed it over. The survey that is open
    /// is closed as it stands, and the screen tells what is in the file.
    ///
    /// # Errors
    /// If where one is now cannot be written down.
    pub fn receive(&mut self, file: &str) -> Result<()> {
        self.close_survey()?;
        self.session.notices.clear();
        (self.session.outside, self.session.looked) = (Outside::Sent, None);
        let file = PathBuf::from(file);
        self.session.list_and(|session| Ok(sent::look_into(session, file)));
        self.be_patient();
        self.way = WayTaken::On;
        Ok(())
    }
}

/// A folder within the home folder; `None` where the way leads out of it.
fn within(home: &Path, folder: &Path) -> Option<PathBuf> {
    let is_plain = folder.components().all(|part| matches!(part, Component::Normal(_)));
    (is_plain && folder.components().next().is_some()).then(|| home.join(folder))
}
