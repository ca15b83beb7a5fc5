//! The one object.

use std::path::PathBuf;
use std::sync::Arc;

use guide::screen::{Block, FigureDrawn, PhotoPiece, RowBar, Screen};
use guide::{Deed, Guide};

use crate::draw_again::DrawAgain;
use crate::error::{DoorError, Result};
use crate::guarded::Guarded;
use crate::settings::Settings;
use crate::watch::Watch;
use crate::work::Work;

/// The guide on this phone: the surveys of a home folder, and the screen that is shown. One of it at a time over one home.
///
/// Calls may come from any thread, one after the other. None takes longer than a touch but where it says so: whatever may
/// is [`Work`].
#[derive(uniffi::Object)]
pub struct Door {
    guide: Guarded,
    watch: Watch,
}

#[uniffi::export]
impl Door {
    /// Opens the door: at the surveys of the home folder, or where one was when `token` was made ([`Door::token`]). A token
    /// that cannot be read, of a survey that is gone, or of a screen that breaks off leads to the surveys. `watcher` is told
    /// when the screen changes while nobody touches anything.
    #[uniffi::constructor]
    pub fn new(
        settings: Settings,
        token: Option<String>,
        watcher: Option<Arc<dyn DrawAgain>>,
    ) -> Result<Arc<Self>> {
        let door = Self { guide: Guarded::new(settings, token)?, watch: Watch::new(watcher) };
        door.screen()?;
        Ok(Arc::new(door))
    }

    /// The screen as it stands. What long work brought is on it.
    pub fn screen(&self) -> Result<Screen> {
        self.then_screen(|_| Ok(()))
    }

    /// Does what was done on the screen, and gives the screen that comes of it. What keeps a deed from being done is a
    /// notice on it; a deed that the screen does not offer changes nothing. What was answered is on the disk when this
    /// returns.
    pub fn act(&self, deed: Deed) -> Result<Screen> {
        self.then_screen(|guide| guide.act(&deed))
    }

    /// The marks of a drawing of the screen, by the name that its block gives; `None` if the screen has no such drawing any
    /// more. Ask once, and again when its version has changed.
    pub fn figure(&self, figure: String) -> Result<Option<FigureDrawn>> {
        self.guide.call(|guide| Ok(guide.figure(&figure)))
    }

    /// The file of a small picture of a photo, by the id that a block gives: a JPEG of at most 320 pixels a side, the right
    /// way up. It is there until the survey is closed.
    pub fn small_photo(&self, photo: String) -> Result<String> {
        text_of(self.guide.call(|guide| guide.small_photo(&photo))?)
    }

    /// The file of a whole photo, as it was taken in: a JPEG or PNG that says itself which way up it is.
    pub fn whole_photo(&self, photo: String) -> Result<String> {
        text_of(self.guide.call(|guide| guide.whole_photo(&photo))?)
    }

    /// The file of a piece of a photo that the screen shows: a JPEG, the right way up, there as long as small pictures are.
    pub fn photo_piece(&self, piece: PhotoPiece) -> Result<String> {
        text_of(self.guide.call(|guide| guide.photo_piece(&piece))?)
    }

    /// A file that another program handed over, wherever one is: the screen tells what is in it, and asks before anything
    /// is taken in. Its content decides what it is, not its name; it has to stay where it is until then.
    pub fn receive(&self, file: String) -> Result<Screen> {
        self.then_screen(|guide| guide.receive(&file))
    }

    /// The long work that is going on, if there is any.
    pub fn work(&self) -> Result<Option<Arc<Work>>> {
        self.guide.call(|guide| {
            let Some(work) = guide.long_work() else { return Ok(None) };
            let blocks = guide.screen().blocks;
            let name = blocks.into_iter().find_map(|block| match block {
                Block::HowFar(far) => Some(far.name),
                _ => None,
            });
            Ok(Some(Work::new(name.unwrap_or_default(), work)))
        })
    }

    /// Keeps what is half typed, if that was not kept for a second: call it when nothing was typed for a second.
    pub fn keep_drafts(&self) -> Result<()> {
        self.guide.call(Guide::keep_drafts)
    }

    /// Puts the guide aside, and gives the token to come back by ([`Door::token`]): long work is told to stop and waited
    /// for, at most two seconds; what is half typed is kept, and the survey's database is closed.
    pub fn suspend(&self) -> Result<String> {
        self.guide.call(|guide| {
            guide.suspend()?;
            guide.token()
        })
    }

    /// Takes it up again where it was put aside. A deed does so by itself.
    pub fn resume(&self) -> Result<Screen> {
        self.then_screen(Guide::resume)
    }

    /// A word for where one is, for the time when the system has ended the app: [`Door::new`] comes back to the same screen
    /// by it. Keep it where only this app reads. Half typed words may stand in it; it is at most some kilobytes long.
    pub fn token(&self) -> Result<String> {
        self.guide.call(Guide::token)
    }

    /// Reads what is printed in photos of labels from now on, by the model in this folder: the files of
    /// `core/print/model/sums`, which the app carries. Call it once they are whole there, after each [`Door::new`]. They are
    /// read when the first photo is; where one is missing, or is another, the label's screen names it, and all else works.
    pub fn read_print_with(&self, folder: String) -> Result<Screen> {
        let (screen, work) = self.guide.read_print_with(folder.into())?;
        self.watch.watch(work);
        Ok(screen)
    }

    /// Goes by other settings from now on, as when the system's language was changed. The home stays as it was.
    pub fn settle(&self, settings: Settings) -> Result<Screen> {
        self.guide.settle(settings)?;
        self.screen()
    }
}

impl Door {
    /// Does something, and gives the screen that stands then.
    fn then_screen(&self, call: impl FnOnce(&mut Guide) -> guide::Result<()>) -> Result<Screen> {
        let (screen, work) = self.guide.show(call)?;
        self.watch.watch(work);
        Ok(screen)
    }
}

/// The bar of a row as marks, as it stands in the report too.
#[uniffi::export]
pub fn bar_drawn(bar: RowBar) -> Result<FigureDrawn> {
    Ok(bar.drawn())
}

/// A file as the text that all languages have for it.
fn text_of(file: PathBuf) -> Result<String> {
    let no_text = |_| DoorError::Broken { fault: "the home folder's name is no text".into() };
    file.into_os_string().into_string().map_err(no_text)
}
