//! The screen as it stands, and its drawings.

use super::{Guide, screens};
use crate::finish::finish;
use crate::place::{Outside, Place};
use crate::screen::{Block, FigureDrawn, PressWeight, Screen};
use crate::session::SentWork;
use crate::short_hash::short_hash;

impl Guide {
    /// The screen as it stands. Drawing changes nothing, and reads no disk.
    pub fn screen(&self) -> Screen {
        match (&self.session.sent_work, &self.suspended) {
            (Some(sent_work), _) => {
                self.finished(screens::show_sent_work(&self.session, sent_work), Some(sent_work))
            }
            (None, Some(suspended)) => suspended.screen.clone(),
            (None, None) => self.screen_beneath(),
        }
    }

    /// The screen without what goes on beside.
    pub(super) fn screen_beneath(&self) -> Screen {
        self.finished(self.of_place(), None)
    }

    fn finished(&self, mut screen: Screen, sent_work: Option<&SentWork>) -> Screen {
        screen.place = format!("{}-{}", screen.name, short_hash(&self.place(sent_work)));
        screen.way = self.way;
        finish(&mut screen, self.session.language());
        screen
    }

    /// The screen of the place where one stands.
    fn of_place(&self) -> Screen {
        let inside = self.session.place().and_then(|place| {
            // From wherever one is there is a way to the whole job.
            let is_on_way = self.session.open.as_ref().is_some_and(|open| open.memory.way.len() > 1);
            let back = is_on_way || place != Place::Overview;
            let screen = self.session.with_snapshot(|snapshot| screens::show(snapshot, &place)).ok()?;
            Some(Screen { back, ..screen })
        });
        let mut screen =
            inside.unwrap_or_else(|| screens::show_outside(&self.session, &self.session.outside));
        in_order(&mut screen);
        screen.back |= self.session.open.is_none() && self.session.outside != Outside::default();
        screen.notices = self.session.notices.shown(self.session.language());
        screen
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
        self.figures().into_iter().find(|drawn| drawn.figure == figure)
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
