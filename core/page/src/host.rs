//! The guide that is served, and what the page keeps beside it.

use std::collections::BTreeMap;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use guide::screen::{Block, FigureBlock, FigureDrawn, PhotoPiece};
use guide::{Guide, Screen};
use phrase::Phrase;
use telling::words::Language;
use tempfile::TempDir;

use crate::deeds::{Asked, Undone, act};
use crate::draw::{Drawn, document, drawing_alone};
use crate::error::PageError;
use crate::form::Given;
use crate::tickets::{Tickets, Worth};

/// How far what goes on beside is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum HowFar {
    /// There is nothing, or nothing any more.
    Over,
    /// It cannot be told.
    NotKnown,
    /// So many thousandths.
    Thousandths(u32),
}

/// The guide that is served.
pub(crate) struct Host {
    guide: Guide,
    words: Language,
    tickets: Tickets,
    /// What is uploaded and what is written for saving lies here until the end.
    folder: TempDir,
    rooms: usize,
    asked: Vec<Asked>,
    /// Written files that are still to be pointed out, and whether they were.
    fresh: Vec<(usize, bool)>,
    /// What the page itself has to say about the last deed.
    said: Option<Phrase>,
    /// The screen as it was drawn last. A ticket counts only as long as nothing was done since.
    shown: Option<Screen>,
}

impl Host {
    /// A guide, ready to be served.
    ///
    /// # Errors
    /// If there is no place for temporary files.
    pub(crate) fn new(guide: Guide, words: Language) -> Result<Self, PageError> {
        let folder = tempfile::Builder::new().prefix("legwork-page-").tempdir().map_err(PageError::Folder)?;
        let (tickets, asked, fresh) = (Tickets::default(), Vec::new(), Vec::new());
        Ok(Self { guide, words, tickets, folder, rooms: 0, asked, fresh, said: None, shown: None })
    }

    /// The words of the page.
    pub(crate) fn words(&self) -> &Language {
        &self.words
    }

    /// A folder of its own for one upload.
    ///
    /// # Errors
    /// If it cannot be made.
    pub(crate) fn room(&mut self) -> std::io::Result<PathBuf> {
        room_in(self.folder.path(), &mut self.rooms)
    }

    /// Takes a ticket.
    pub(crate) fn takes(&mut self, ticket: &str) -> Worth {
        self.tickets.take(ticket)
    }

    /// Says something on the screen that is drawn next.
    pub(crate) fn say(&mut self, what: Phrase) {
        self.said = Some(what);
    }

    /// Does what a form says, whose ticket was taken.
    pub(crate) fn act(&mut self, given: &Given) {
        self.tickets.something_was_done();
        self.fresh.retain(|(_, shown)| !shown);
        let screen = self.shown.take().unwrap_or_else(|| self.guide.screen());
        let room = || room_in(self.folder.path(), &mut self.rooms);
        match act(&mut self.guide, &screen, given, room) {
            Ok(Some(asked)) => {
                self.fresh.push((self.asked.len(), false));
                self.asked.push(asked);
            }
            Ok(None) => {}
            Err(Undone::NoRoom(error)) => self.say(no_room(&error)),
            Err(Undone::Fault) => self.say(Phrase::new("page-fault")),
        }
    }

    /// Keeps what is half typed.
    pub(crate) fn keep_drafts(&mut self) {
        // Tried again in a second; what was answered is on the disk already.
        let _ = self.guide.keep_drafts();
    }

    /// Whether something goes on beside, and how far that is.
    pub(crate) fn how_far(&self) -> HowFar {
        match self.guide.long_work().map(|work| work.progress()) {
            None => HowFar::Over,
            Some(None) => HowFar::NotKnown,
            Some(Some(thousandths)) => HowFar::Thousandths(thousandths),
        }
    }

    /// The screen as it stands, as a document. `shown_wide`: how wide its drawings are shown, CSS pixels, where that is
    /// known.
    ///
    /// # Errors
    /// If the system gives no random numbers.
    pub(crate) fn draw(&mut self, shown_wide: Option<u32>) -> Result<String, PageError> {
        self.guide.collect_long_work();
        let working = self.guide.long_work().is_some();
        let (screen, figures) = self.guide.screen_with_figures();
        // What went on beside is over: a tab that still shows it is out of date.
        if self.shown.as_ref().is_some_and(|shown| shown.place != screen.place) {
            self.tickets.something_was_done();
        }
        let ticket = self.tickets.give()?;
        let is_written = |place: usize| self.asked.get(place).filter(|asked| asked.path.is_file());
        let mut written = Vec::new();
        for (place, shown) in &mut self.fresh {
            if let Some(asked) = is_written(*place) {
                *shown = true;
                written.push((asked.name.clone(), *place));
            }
        }
        let drawn = Drawn {
            screen: &screen,
            figures: &by_name(figures),
            shown_wide,
            ticket: ticket.letters(),
            said: self.said.as_ref(),
            written: &written,
            working,
            words: &self.words,
        };
        let document = document(&drawn);
        self.said = None;
        self.shown = Some(screen);
        Ok(document)
    }

    /// One drawing of the screen that is shown, alone.
    pub(crate) fn drawing(&self, name: &str) -> Option<String> {
        let screen = self.guide.screen();
        let block: &FigureBlock = screen.blocks.iter().find_map(|block| match block {
            Block::Figure(figure) if layouts(block).any(|layout| layout == name) => Some(figure),
            _ => None,
        })?;
        Some(drawing_alone(&self.guide.figure(name)?, block, &self.words))
    }

    /// The file of a photo of the survey that is open.
    pub(crate) fn photo(&self, small: bool, photo: &str) -> Option<PathBuf> {
        if small { self.guide.small_photo(photo) } else { self.guide.whole_photo(photo) }.ok()
    }

    /// The file of a piece of a photo that the screen shows.
    pub(crate) fn piece(&self, photo: String, [left, top, width, height]: [u32; 4]) -> Option<PathBuf> {
        self.guide.photo_piece(&PhotoPiece { photo, left, top, width, height, name: String::new() }).ok()
    }

    /// A file that was written for saving.
    pub(crate) fn written(&self, place: usize) -> Option<(&str, &Path)> {
        let asked = self.asked.get(place).filter(|asked| asked.path.is_file())?;
        Some((&asked.name, &asked.path))
    }

    /// Ends it: where one is is kept.
    ///
    /// # Errors
    /// If that cannot be written.
    pub(crate) fn close(&mut self) -> Result<(), PageError> {
        Ok(self.guide.close()?)
    }
}

/// Makes a folder of its own beside those before.
fn room_in(folder: &Path, rooms: &mut usize) -> std::io::Result<PathBuf> {
    *rooms += 1;
    let room = folder.join(rooms.to_string());
    std::fs::create_dir(&room)?;
    Ok(room)
}

/// That a file could not be put down on this computer, and why.
pub(crate) fn no_room(error: &std::io::Error) -> Phrase {
    match error.kind() {
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => Phrase::new("page-disk-full"),
        _ => Phrase::new("page-disk").text("says", error.to_string()),
    }
}

/// The screen as it stands as a document that only shows it: its ticket is nobody’s, so nothing on it counts. For pictures and
/// for tests; photos and drawings by themselves are not beside it.
pub fn still(guide: &Guide, words: &Language) -> String {
    let (screen, figures) = guide.screen_with_figures();
    document(&Drawn {
        screen: &screen,
        figures: &by_name(figures),
        shown_wide: None,
        ticket: "still",
        said: None,
        written: &[],
        working: false,
        words,
    })
}

fn by_name(figures: Vec<FigureDrawn>) -> BTreeMap<String, FigureDrawn> {
    figures.into_iter().map(|drawn| (drawn.figure.clone(), drawn)).collect()
}

/// The names of every layout of the drawing in a block, if it is one.
fn layouts(block: &Block) -> impl Iterator<Item = &str> {
    let figure = match block {
        Block::Figure(figure) => Some(figure),
        _ => None,
    };
    figure.into_iter().flat_map(|figure| {
        figure.narrower.iter().map(|layout| layout.figure.as_str()).chain([figure.figure.as_str()])
    })
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use telling::words::Figures;

    use super::*;

    /// A form with one field.
    fn form(name: &str, text: &str) -> Given {
        Given { texts: vec![(name.into(), text.into())], files: Vec::new() }
    }

    /// A host over a fresh home whose own folder is gone, as where a disk is full nothing can be put into it.
    fn without_folder(home: &Path) -> Host {
        let author = facts::fact::AuthorId::random();
        let mut guide = Guide::at(home, author, guide::english(Figures::default())).unwrap();
        guide.wait_for_long_work(Duration::MAX);
        let host = Host::new(guide, crate::english(Figures::default())).unwrap();
        std::fs::remove_dir(host.folder.path()).unwrap();
        host
    }

    #[test]
    fn only_a_file_to_be_written_needs_a_folder_and_where_there_is_none_that_is_said() {
        let home = tempfile::tempdir().unwrap();
        let mut host = without_folder(home.path());
        host.act(&form("press", "new"));
        let named = Given {
            texts: vec![("written name".into(), "Mill House".into()), ("press".into(), "make".into())],
            files: vec![],
        };
        host.act(&named);
        host.act(&form("press", "overview"));
        host.act(&form("press", "pack"));
        assert_eq!((host.guide.screen().name.as_str(), &host.said), ("share-pack", &None));
        let write = host.guide.screen().blocks.into_iter().find_map(|block| match block {
            Block::Press(press) => press.need.is_some().then_some(press.key),
            _ => None,
        });
        host.act(&form("press", &write.unwrap()));
        let said = host.said.clone().unwrap();
        assert_eq!(said.id, "page-disk", "{said:?}");
        assert!(!host.words.say(&said).contains("page-disk"));
        assert!(host.asked.is_empty());
    }

    #[test]
    fn a_full_disk_is_called_one() {
        let of = |kind: ErrorKind| no_room(&std::io::Error::from(kind)).id;
        assert_eq!(of(ErrorKind::StorageFull), "page-disk-full");
        assert_eq!(of(ErrorKind::QuotaExceeded), "page-disk-full");
        assert_eq!(of(ErrorKind::PermissionDenied), "page-disk");
    }
}
