//! The guide behind its lock: one call at a time, and no panic out.

use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::sync::{Mutex, MutexGuard, PoisonError};

use guide::Guide;

use crate::error::{DoorError, Result};
use crate::settings::Settings;

/// A guide that is made anew where a call into it broke off.
pub(crate) struct Guarded(Mutex<Held>);

struct Held {
    settings: Settings,
    /// Where it is made; `None` after a call broke off, until the next one.
    guide: Option<Guide>,
    /// Where it is to stand when it is made.
    token: Option<String>,
    /// Whether a call went well since it was made.
    is_sound: bool,
}

impl Guarded {
    /// A guide over a home folder, where the token says.
    pub(crate) fn new(settings: Settings, token: Option<String>) -> Result<Self> {
        let mut held = Held { settings, guide: None, token, is_sound: false };
        held.call(|_| Ok(()))?;
        Ok(Self(Mutex::new(held)))
    }

    /// One call into the guide.
    pub(crate) fn call<T>(&self, call: impl FnOnce(&mut Guide) -> guide::Result<T>) -> Result<T> {
        self.lock().call(call)
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

    fn lock(&self) -> MutexGuard<'_, Held> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Held {
    fn call<T>(&mut self, call: impl FnOnce(&mut Guide) -> guide::Result<T>) -> Result<T> {
        let called = caught(|| {
            if self.guide.is_none() {
                let made = made(&self.settings, self.token.as_deref());
                self.guide = Some(made.map_err(|error| DoorError::of(&error, &self.settings.words()))?);
            }
            let Some(guide) = &mut self.guide else {
                return Err(DoorError::Broken { fault: "no guide".into() });
            };
            call(guide).map_err(|error| DoorError::of(&error, guide.language()))
        });
        match called {
            Ok(called) => {
                self.is_sound |= called.is_ok();
                called
            }
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
fn made(settings: &Settings, token: Option<&str>) -> guide::Result<Guide> {
    let mut guide = Guide::on_device(Path::new(&settings.home), settings.words())?;
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
    use guide::Deed;

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
        guarded.call(|guide| guide.act(&name)).unwrap();
        guarded
    }

    fn name(guarded: &Guarded) -> String {
        guarded.call(|guide| Ok(guide.screen().name)).unwrap()
    }

    fn broken(guarded: &Guarded, fault: &'static str) {
        let broke = guarded.call(|_| -> guide::Result<()> { panic!("{fault}") });
        assert_eq!(broke, Err(DoorError::Broken { fault: fault.into() }));
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

    #[test]
    fn where_it_breaks_off_again_at_once_it_is_not_led_to_again() {
        let home = tempfile::tempdir().unwrap();
        let guarded = begun(home.path());
        broken(&guarded, "planted");
        broken(&guarded, "planted again");
        assert_eq!(name(&guarded), "surveys");
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
