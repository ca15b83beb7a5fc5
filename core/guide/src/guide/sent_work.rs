//! Long works of the guide: what deeds do meanwhile, and collecting what came of one.

use std::collections::VecDeque;
use std::time::Instant;

use phrase::Phrase;
use telling::words::error::InWords;

use super::Guide;
use crate::deed::Deed;
use crate::done::Done;
use crate::error::{GuideError, Trouble};
use crate::place::{Key, Move, Place};
use crate::session::WorkKind;

/// Photos taken one after the other, faster than they are taken in.
pub(super) struct Photos {
    /// Where they were taken.
    place: Place,
    /// The photo slot.
    key: Key,
    /// The files of those that wait.
    waiting: VecDeque<String>,
}

impl Photos {
    pub(super) fn at(place: Place, key: Key) -> Self {
        Self { place, key, waiting: VecDeque::new() }
    }
}

impl Guide {
    /// Does what was done on the screen of long work; returns whether there was one. While it runs, nothing but the
    /// stop counts; once it is over, whatever is done collects it.
    pub(super) fn act_on_sent_work(&mut self, done: &Done) -> bool {
        let Some(sent_work) = &self.session.sent_work else { return false };
        if sent_work.work().is_done() {
            self.collect_sent_work();
        } else if matches!(done, Done::Back | Done::Press(Key::WorkStop)) {
            sent_work.work().stop();
            self.photos = None;
        }
        true
    }

    /// Keeps a photo waiting that was taken while the one before it is taken in; returns whether it is one.
    pub(super) fn wait_in_line(&mut self, deed: &Deed) -> bool {
        let takes = self
            .session
            .sent_work
            .as_ref()
            .is_some_and(|sent_work| sent_work.kind == WorkKind::Photo && !sent_work.work().is_stopped());
        match (deed, &mut self.photos) {
            (Deed::Photo { key, file }, Some(photos))
                if takes && Key::of(key).as_ref() == Some(&photos.key) =>
            {
                photos.waiting.push_back(file.clone());
                true
            }
            _ => false,
        }
    }

    /// Whether this is one more photo for where the last one was taken: what was refused of them stays told.
    pub(super) fn is_next_of_series(&self, done: &Done) -> bool {
        let Done::Photo(key, _) = done else { return false };
        self.photos
            .as_ref()
            .is_some_and(|photos| photos.key == *key && Some(&photos.place) == self.session.place().as_ref())
    }

    /// Waits for long work as long as a deed may take, and collects it. One may send the next.
    pub(super) fn be_patient(&mut self) {
        if self.patience.is_zero() {
            return;
        }
        let until = Instant::now().checked_add(self.patience);
        while let Some(sent_work) = &self.session.sent_work {
            let left = until.map_or(self.patience, |until| until.saturating_duration_since(Instant::now()));
            if !sent_work.work().wait_at_most(left) || !self.collect_sent_work() {
                break;
            }
        }
    }

    /// Does what is to be done after long work that is over, and says what came of it; returns whether there was one that
    /// could be collected. What belongs to a survey that is put aside waits until that is open again.
    pub(super) fn collect_sent_work(&mut self) -> bool {
        let (stood_at, stood) = (self.standpoint(), self.session.stands_at());
        let is_collected = |kind: WorkKind| self.suspended.is_none() || kind == WorkKind::Open;
        let Some(sent_work) = self
            .session
            .sent_work
            .take_if(|sent_work| sent_work.work().is_done() && is_collected(sent_work.kind))
        else {
            return false;
        };
        let done = match sent_work.outcome() {
            Some(Ok(after)) => after.run(&mut self.session),
            Some(Err(GuideError::Trouble(Trouble::Stopped))) | None => {
                self.session.tell_done(Phrase::new("long-work-was-stopped"));
                Ok(Move::Stay)
            }
            Some(Err(error)) => {
                self.session.tell(error.phrase());
                Ok(Move::Stay)
            }
        };
        let kept = match done {
            Err(error) if self.suspended.is_some() => {
                self.not_resumed = Some(error);
                Ok(())
            }
            done => {
                self.take_up();
                done.and_then(|step| self.settle(step, stood))
            }
        };
        if let Err(error) = kept {
            self.session.tell(error.phrase());
        }
        self.take_next_photo();
        self.way = stood_at.way_to(&self.standpoint());
        true
    }

    /// Takes the next photo in that waits, if one is still where it was taken.
    fn take_next_photo(&mut self) {
        let place = self.session.place();
        if self.session.sent_work.is_some() {
            return;
        }
        let Some(photos) = self.photos.as_mut().filter(|photos| Some(&photos.place) == place.as_ref()) else {
            self.photos = None;
            return;
        };
        let Some(file) = photos.waiting.pop_front() else { return };
        let photo = Done::Photo(photos.key.clone(), file);
        let taken = super::screens::take(&mut self.session, &photos.place, &photo);
        if let Err(error) = taken {
            self.session.tell(error.phrase());
        }
    }

    /// Stops long work, waits until it is over, and collects it.
    pub(super) fn end_sent_work(&mut self) {
        self.photos = None;
        if let Some(sent_work) = &self.session.sent_work {
            sent_work.work().stop();
            sent_work.work().wait();
            if !self.collect_sent_work() {
                self.session.sent_work = None;
            }
        }
    }
}
