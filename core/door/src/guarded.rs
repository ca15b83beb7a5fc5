//! The guide behind its lock: one call at a time, and no panic out.

use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use guide::screen::Screen;
use guide::{Guide, LongWork};

use crate::error::{DoorError, Result};
use crate::settings::Settings;

/// A guide that is made anew where a call into it broke off.
pub(crate) struct Guarded(Mutex<Held>);

struct Held {
    settings: Settings,
    /// Where what reads print lies, once that was said.
    print_model: Option<PathBuf>,
    /// Where it is made; `None` after a call broke off, until the next one.
    guide: Option<Guide>,
    /// Where it is to stand when it is made.
    token: Option<String>,
    /// Whether a screen was drawn since it was made.
    is_sound: bool,
    /// How its screen is drawn.
    draw: Draw,
}

/// How a guide's screen is drawn.
type Draw = fn(&Guide) -> Screen;

impl Guarded {
    /// A guide over a home folder, where the token says. Where that breaks off, at the surveys: a shell keeps its token, and
    /// would come back with it again and again.
    pub(crate) fn new(settings: Settings, token: Option<String>) -> Result<Self> {
        Self::drawn_by(Guide::screen, settings, token)
    }

    fn drawn_by(draw: Draw, settings: Settings, token: Option<String>) -> Result<Self> {
        let led = token.is_some();
        let mut held = Held { settings, print_model: None, guide: None, token, is_sound: false, draw };
        match held.show(|_| Ok(())) {
            // Where it broke off it let go of the token, and begins at the surveys.
            Err(DoorError::Broken { .. }) if led => held.show(|_| Ok(()))?,
            shown => shown?,
        };
        Ok(Self(Mutex::new(held)))
    }

    /// One call into the guide.
    pub(crate) fn call<T>(&self, call: impl FnOnce(&mut Guide) -> guide::Result<T>) -> Result<T> {
        self.lock().call(call)
    }

    /// The same, and the screen that stands then, with the long work that goes on.
    pub(crate) fn show(
        &self,
        call: impl FnOnce(&mut Guide) -> guide::Result<()>,
    ) -> Result<(Screen, Option<LongWork>)> {
        self.lock().show(call)
    }

    /// Goes by other settings from now on. The home stays: the surveys that are shown lie there.
    pub(crate) fn settle(&self, settings: Settings) -> Result<()> {
        let mut held = self.lock();
        held.settings = Settings { home: held.settings.home.clone(), ..settings };
        let words = held.settings.words();
        held.call(|guide| {
            guide.speak(words);
            Ok(())
        })
    }

    /// Reads print by the model in this folder from now on, also in a guide that is made anew; and the screen that stands then.
    pub(crate) fn read_print_with(&self, folder: PathBuf) -> Result<(Screen, Option<LongWork>)> {
        let mut held = self.lock();
        held.print_model = Some(folder.clone());
        held.show(|guide| {
            guide.read_print_with(&folder);
            Ok(())
        })
    }

    fn lock(&self) -> MutexGuard<'_, Held> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Held {
    fn show(
        &mut self,
        call: impl FnOnce(&mut Guide) -> guide::Result<()>,
    ) -> Result<(Screen, Option<LongWork>)> {
        let draw = self.draw;
        let shown = self.call(|guide| {
            call(guide)?;
            guide.collect_long_work();
            // Before drawing: work that ends meanwhile stands on the screen as going on, and its end has to be told.
            let work = guide.long_work();
            Ok((draw(guide), work))
        });
        self.is_sound |= shown.is_ok();
        shown
    }

    fn call<T>(&mut self, call: impl FnOnce(&mut Guide) -> guide::Result<T>) -> Result<T> {
        let called = caught(|| {
            if self.guide.is_none() {
                let made = made(&self.settings, self.print_model.as_deref(), self.token.as_deref());
                self.guide = Some(made.map_err(|error| DoorError::of(&error, &self.settings.words()))?);
            }
            let Some(guide) = &mut self.guide else {
                return Err(DoorError::Broken { fault: "no guide".into() });
            };
            call(guide).map_err(|error| DoorError::of(&error, guide.language()))
        });
        match called {
            Ok(called) => called,
            Err(fault) => {
                self.begin_anew();
                Err(DoorError::Broken { fault })
            }
        }
    }

    /// Lets go of a guide a call into which broke off: what it has in memory may be half done, and what was answered is on
    /// the disk. One that breaks off again at once is not led to the same place a third time.
    fn begin_anew(&mut self) {
        let Some(mut guide) = self.guide.take() else {
            self.token = None;
            return;
        };
        let token = caught(|| guide.token().ok()).ok().flatten().or_else(|| self.token.take());
        self.token = token.filter(|_| self.is_sound);
        self.is_sound = false;
        let _ = caught(|| drop(guide));
    }
}

/// A guide at the place that a token names.
fn made(settings: &Settings, print_model: Option<&Path>, token: Option<&str>) -> guide::Result<Guide> {
    let mut guide = Guide::on_device(Path::new(&settings.home), settings.words())?;
    if let Some(folder) = print_model {
        guide.read_print_with(folder);
    }
    if let Some(token) = token {
        guide.restore(token)?;
    }
    Ok(guide)
}

/// What a call gives, or what it said when it broke off.
fn caught<T>(call: impl FnOnce() -> T) -> std::result::Result<T, String> {
    catch_unwind(AssertUnwindSafe(call)).map_err(|said: Box<dyn Any + Send>| {
        let plain = said.downcast_ref::<&str>().map(|said| (*said).to_owned());
        plain.or_else(|| said.downcast_ref::<String>().cloned()).unwrap_or_else(|| "it broke off".into())
    })
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use guide::Deed;
    use guide::screen::Block;

    use super::*;
    use crate::settings::FirstLength;

    fn settings(home: &Path) -> Settings {
        Settings {
            home: home.display().to_string(),
            language: "en".into(),
            first_length: FirstLength::Metres,
        }
    }

    fn begun(home: &Path) -> Guarded {
        let guarded = Guarded::new(settings(home), None).unwrap();
        guarded.call(|guide| guide.act(&Deed::Press { key: "new".into() })).unwrap();
        let name = Deed::Write { key: "name".into(), words: "Mill House".into() };
        guarded.show(|guide| guide.act(&name)).unwrap();
        guarded
    }

    fn name(guarded: &Guarded) -> String {
        guarded.show(|_| Ok(())).unwrap().0.name
    }

    fn broken(guarded: &Guarded, fault: &'static str) {
        let broke = guarded.call(|_| -> guide::Result<()> { panic!("{fault}") });
        assert_eq!(broke, Err(DoorError::Broken { fault: fault.into() }));
    }

    /// Draws as ever, but for one screen.
    fn breaking_off(guide: &Guide) -> Screen {
        let screen = guide.screen();
        assert_ne!(screen.name, "new-survey", "planted");
        screen
    }

    #[test]
    fn a_call_that_breaks_off_is_an_error_and_the_same_screen_stands_after_it() {
        let home = tempfile::tempdir().unwrap();
        let guarded = begun(home.path());
        broken(&guarded, "planted");
        assert_eq!(name(&guarded), "new-survey");
        guarded.call(|guide| guide.act(&Deed::Press { key: "make".into() })).unwrap();
        guarded
            .call(|guide| {
                guide.settle_long_work();
                Ok(())
            })
            .unwrap();
        assert_eq!(name(&guarded), "ask-whose");
        broken(&guarded, "planted");
        guarded
            .call(|guide| {
                guide.settle_long_work();
                Ok(())
            })
            .unwrap();
        assert_eq!(name(&guarded), "ask-whose");
    }

    /// What stands on the screen that asks what is printed on the amplifier, once its photo was looked at.
    fn said_of_a_label_photo(guarded: &Guarded, file: &Path) -> String {
        let press = |word: &str| {
            let (screen, _) = guarded.show(|_| Ok(())).unwrap();
            let rows = screen.blocks.iter().filter_map(|block| match block {
                Block::Rows(rows) => Some(&rows.rows),
                _ => None,
            });
            let row = rows.flatten().find(|row| row.head.contains(word)).and_then(|row| row.key.clone());
            act(guarded, &Deed::Press { key: row.unwrap_or_else(|| word.into()) });
        };
        press(crate::whole_house::FULL);
        while name(guarded) != "overview" {
            act(guarded, &Deed::Back);
        }
        for word in ["free-parts", "amplifier", "its label"] {
            press(word);
        }
        act(guarded, &Deed::Photo { key: "label-photo".into(), file: file.display().to_string() });
        let (screen, work) = guarded.show(|_| Ok(())).unwrap();
        assert_eq!(screen.name, "ask-label");
        if let Some(work) = work {
            assert!(work.wait_at_most(Duration::from_secs(60)));
        }
        format!("{:?}", guarded.show(|_| Ok(())).unwrap().0.blocks)
    }

    fn act(guarded: &Guarded, deed: &Deed) {
        guarded.call(|guide| guide.act(deed)).unwrap();
        guarded
            .call(|guide| {
                guide.settle_long_work();
                Ok(())
            })
            .unwrap();
    }

    #[test]
    fn a_guide_that_is_made_anew_reads_print_as_the_one_before() {
        let home = tempfile::tempdir().unwrap();
        crate::whole_house::fill(home.path());
        let guarded = Guarded::new(settings(home.path()), None).unwrap();
        act(&guarded, &Deed::Back);
        guarded.read_print_with(home.path().join("no-model")).unwrap();
        broken(&guarded, "planted");
        let file = home.path().join("blank.png");
        image::RgbImage::from_pixel(320, 200, image::Rgb([200, 200, 200])).save(&file).unwrap();
        let said = said_of_a_label_photo(&guarded, &file);
        assert!(said.contains("letters.txt"), "{said}");
    }

    #[test]
    fn where_it_breaks_off_again_at_once_it_is_not_led_to_again() {
        let home = tempfile::tempdir().unwrap();
        let guarded = begun(home.path());
        broken(&guarded, "planted");
        broken(&guarded, "planted again");
        assert_eq!(name(&guarded), "surveys");
    }

    #[test]
    fn a_token_that_leads_to_a_screen_that_breaks_off_leads_to_the_surveys() {
        let home = tempfile::tempdir().unwrap();
        let token = begun(home.path()).call(Guide::token).unwrap();
        // Where nothing breaks off, it leads there.
        assert_eq!(name(&Guarded::new(settings(home.path()), Some(token.clone())).unwrap()), "new-survey");
        for _ in 0..2 {
            let guarded =
                Guarded::drawn_by(breaking_off, settings(home.path()), Some(token.clone())).unwrap();
            assert_eq!(name(&guarded), "surveys");
        }
    }

    #[test]
    fn a_call_that_draws_nothing_does_not_say_that_the_screen_can_be_drawn() {
        let home = tempfile::tempdir().unwrap();
        let guarded = Guarded::drawn_by(breaking_off, settings(home.path()), None).unwrap();
        let press = Deed::Press { key: "new".into() };
        assert!(guarded.show(|guide| guide.act(&press)).is_err());
        // It was led there once more, as the screen before was drawn.
        guarded.call(|guide| Ok(guide.figure("none"))).unwrap();
        assert!(guarded.show(|_| Ok(())).is_err());
        assert_eq!(name(&guarded), "surveys");
    }

    /// Draws so slowly that long work is over by then.
    fn slowly(guide: &Guide) -> Screen {
        let screen = guide.screen();
        if let Some(work) = guide.long_work() {
            assert!(work.wait_at_most(Duration::from_secs(60)));
        }
        screen
    }

    #[test]
    fn work_that_ends_while_the_screen_is_drawn_is_still_followed() {
        let press = |guarded: &Guarded, key: &str| {
            let deed = Deed::Press { key: key.into() };
            let (screen, work) = guarded.show(|guide| guide.act(&deed)).unwrap();
            let goes_on = screen.blocks.iter().any(|block| matches!(block, Block::HowFar(_)));
            assert!(work.is_some() || !goes_on, "{} stands still", screen.name);
            goes_on
        };
        // A house without parts may be worked out before anything is drawn.
        let seen = (0..20).any(|_| {
            let home = tempfile::tempdir().unwrap();
            let guarded = begun(home.path());
            guarded.lock().draw = slowly;
            press(&guarded, "make");
            guarded.show(|_| Ok(())).unwrap();
            press(&guarded, "overview");
            press(&guarded, "forecast")
        });
        assert!(seen);
    }

    #[test]
    fn a_panic_from_another_thread_leaves_the_lock_usable() {
        let home = tempfile::tempdir().unwrap();
        let guarded = std::sync::Arc::new(begun(home.path()));
        let other = std::sync::Arc::clone(&guarded);
        std::thread::spawn(move || broken(&other, "planted")).join().unwrap();
        assert_eq!(name(&guarded), "new-survey");
    }
}
