//! The screen as it stands, and its drawings.

use super::{Guide, screens};
use crate::finish::{cautions::gather, finish};
use crate::place::{Outside, Place};
use crate::screen::{Block, FigureDrawn, PressWeight, Screen};
use crate::session::{SentWork, SurveySnapshot};
use crate::short_hash::short_hash;

impl Guide {
    /// The screen as it stands. Drawing changes nothing, and reads no disk.
    pub fn screen(&self) -> Screen {
        self.screen_and(|_, _| ()).0
    }

    /// The screen as it stands, and every drawing of it as [`figures`](Self::figures) gives them: for whoever wants both,
    /// since what is drawn for the one is not drawn again for the other.
    pub fn screen_with_figures(&self) -> (Screen, Vec<FigureDrawn>) {
        let (screen, figures) = self.screen_and(screens::figures);
        (screen, figures.unwrap_or_default())
    }

    /// The screen as it stands, and what is made beside it of the snapshot that it was drawn from, where there was one.
    fn screen_and<T>(&self, beside: impl FnOnce(&SurveySnapshot<'_>, &Place) -> T) -> (Screen, Option<T>) {
        match (&self.session.sent_work, &self.suspended) {
            (Some(sent_work), _) => {
                let screen = screens::show_sent_work(&self.session, sent_work);
                (self.finished(screen, Some(sent_work)), None)
            }
            (None, Some(suspended)) => (suspended.screen.clone(), None),
            (None, None) => {
                let (screen, beside) = self.of_place(beside);
                (self.finished(screen, None), beside)
            }
        }
    }

    /// The screen without what goes on beside.
    pub(super) fn screen_beneath(&self) -> Screen {
        self.finished(self.of_place(|_, _| ()).0, None)
    }

    fn finished(&self, mut screen: Screen, sent_work: Option<&SentWork>) -> Screen {
        screen.place = format!("{}-{}", screen.name, short_hash(&self.place(sent_work)));
        screen.way = self.way;
        finish(&mut screen, self.session.language());
        screen
    }

    /// The screen of the place where one stands, and what is made beside it.
    fn of_place<T>(&self, beside: impl FnOnce(&SurveySnapshot<'_>, &Place) -> T) -> (Screen, Option<T>) {
        let inside = self.session.place().and_then(|place| {
            // From wherever one is there is a way to the whole job.
            let is_on_way = self.session.open.as_ref().is_some_and(|open| open.memory.way.len() > 1);
            let back = is_on_way || place != Place::Overview;
            let drawn =
                |snapshot: &SurveySnapshot<'_>| (screens::show(snapshot, &place), beside(snapshot, &place));
            let (screen, beside) = self.session.with_snapshot(drawn).ok()?;
            Some((Screen { back, ..screen }, Some(beside)))
        });
        let (mut screen, beside) =
            inside.unwrap_or_else(|| (screens::show_outside(&self.session, &self.session.outside), None));
        in_order(&mut screen);
        if let Some(open) = &self.session.open {
            gather(&mut screen, &open.memory.read, self.session.language());
        }
        screen.back |= self.session.open.is_none() && self.session.outside != Outside::default();
        screen.notices = self.session.notices.shown(self.session.language());
        (screen, beside)
    }

    /// What tells the place that is shown from every other.
    fn place(&self, sent_work: Option<&SentWork>) -> String {
        match (sent_work, &self.session.open) {
            (Some(sent_work), _) => format!("{:?}", sent_work.kind),
            (None, None) => format!("{:?}", self.session.outside),
            (None, Some(open)) => {
                let place = serde_json::to_string(&self.session.place()).unwrap_or_default();
                format!("{} {place}", open.survey.id)
            }
        }
    }

    /// Every drawing of the screen that is shown, each in all its layouts; none while the app is put aside. Whoever wants
    /// more than one of them has them drawn once.
    pub fn figures(&self) -> Vec<FigureDrawn> {
        let Some(place) = self.session.place() else { return Vec::new() };
        self.session.with_snapshot(|snapshot| screens::figures(snapshot, &place)).unwrap_or_default()
    }

    /// A drawing of the screen that is shown, by the name that its block gives; `None` if the screen has no such drawing
    /// any more, and while the app is put aside. A shell asks for it once, and again when its version has changed.
    pub fn figure(&self, figure: &str) -> Option<FigureDrawn> {
        let place = self.session.place()?;
        // Only this one is drawn: of a large house each layout takes its time.
        self.session.with_snapshot(|snapshot| screens::figure(snapshot, &place, figure)).ok().flatten()
    }
}

/// The presses that stand together in the same order on every screen: first the way on, last what leads elsewhere.
fn in_order(screen: &mut Screen) {
    let order = |block: &Block| match block {
        Block::Press(press) => match press.weight {
            PressWeight::Main => Some(0),
            PressWeight::Other => Some(1),
            PressWeight::Quiet => Some(2),
        },
        Block::Confirm(_) => Some(1),
        _ => None,
    };
    for together in screen.blocks.chunk_by_mut(|one, two| order(one).is_some() == order(two).is_some()) {
        together.sort_by_key(order);
    }
}
