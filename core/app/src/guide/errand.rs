//! Errands of the guide: sending one, what deeds do meanwhile, and collecting what came of it.

use survey::SurveyError;
use survey::words::Phrase;

use super::Guide;
use crate::deed::Deed;
use crate::errand::{After, Doing, Errand};
use crate::long_work::LongWork;
use crate::memory::Keep;
use crate::page::ERRAND_STOP;
use crate::place::Move;

impl Guide {
    /// Sends an errand. The screen tells of it until it is over and collected.
    pub(crate) fn send(
        &mut self,
        doing: Doing,
        run: impl FnOnce(&LongWork) -> survey::error::Result<After> + Send + 'static,
    ) {
        self.errand = Some(Errand::send(doing, run));
    }

    /// Does what was done on the screen of an errand; returns whether there was one. While it runs, nothing but the
    /// stop counts; once it is over, whatever is done collects it.
    pub(super) fn act_on_errand(&mut self, deed: &Deed) -> bool {
        let Some(errand) = &self.errand else { return false };
        if errand.work().is_done() {
            self.collect_errand();
        } else if *deed == Deed::Back || deed.key() == Some(ERRAND_STOP) {
            errand.work().stop();
        }
        true
    }

    /// Does what is to be done after an errand that is over, and says what came of it.
    pub(super) fn collect_errand(&mut self) {
        let Some(errand) = self.errand.take_if(|errand| errand.work().is_done()) else { return };
        let stood = self.stands_at();
        let done = match errand.outcome() {
            Some(Ok(after)) => after.run(self),
            Some(Err(SurveyError::Stopped)) | None => {
                self.tell_done(Phrase::new("errand-was-stopped"));
                Ok(Move::Stay)
            }
            Some(Err(error)) => {
                self.tell_failed(error);
                Ok(Move::Stay)
            }
        };
        let kept = done.and_then(|step| self.go(step)).and_then(|()| {
            if self.stands_at() != stood {
                self.begin_if_wanted();
            }
            self.remember(Keep::Now)
        });
        if let Err(error) = kept {
            self.tell_failed(&error);
        }
    }

    /// Stops an errand, waits until it is over, and collects it.
    pub(super) fn end_errand(&mut self) {
        if let Some(errand) = &self.errand {
            errand.work().stop();
            errand.work().wait();
            self.collect_errand();
        }
    }

    /// Says on the screen what could not be done.
    fn tell_failed(&mut self, error: &dyn std::error::Error) {
        self.tell(Phrase::new("problem").text("what", error.to_string()));
    }
}
