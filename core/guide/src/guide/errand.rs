//! Errands of the guide: what deeds do meanwhile, and collecting what came of one.

use phrase::Phrase;
use telling::words::error::InWords;

use super::Guide;
use crate::done::Done;
use crate::error::{GuideError, Trouble};
use crate::place::{Key, Move};

impl Guide {
    /// Does what was done on the screen of an errand; returns whether there was one. While it runs, nothing but the
    /// stop counts; once it is over, whatever is done collects it.
    pub(super) fn act_on_errand(&mut self, done: Option<&Done>) -> bool {
        let Some(errand) = &self.session.errand else { return false };
        if errand.work().is_done() {
            self.collect_errand();
        } else if matches!(done, Some(Done::Back | Done::Press(Key::ErrandStop))) {
            errand.work().stop();
        }
        true
    }

    /// Does what is to be done after an errand that is over, and says what came of it.
    pub(super) fn collect_errand(&mut self) {
        let (stood_at, stood) = (self.standpoint(), self.session.stands_at());
        let Some(errand) = self.session.errand.take_if(|errand| errand.work().is_done()) else { return };
        let done = match errand.outcome() {
            Some(Ok(after)) => after.run(&mut self.session),
            Some(Err(GuideError::Trouble(Trouble::Stopped))) | None => {
                self.session.tell_done(Phrase::new("errand-was-stopped"));
                Ok(Move::Stay)
            }
            Some(Err(error)) => {
                self.session.tell(error.phrase());
                Ok(Move::Stay)
            }
        };
        let kept = done.and_then(|step| self.go(step)).and_then(|()| {
            if self.session.stands_at() != stood {
                self.session.begin_if_wanted();
            }
            self.session.remember()
        });
        if let Err(error) = kept {
            self.session.tell(error.phrase());
        }
        self.way = stood_at.way_to(&self.standpoint());
    }

    /// Stops an errand, waits until it is over, and collects it.
    pub(super) fn end_errand(&mut self) {
        if let Some(errand) = &self.session.errand {
            errand.work().stop();
            errand.work().wait();
            self.collect_errand();
        }
    }
}
