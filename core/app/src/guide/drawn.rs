//! The screen as it stands, and its drawings.

use super::{Guide, Notice};
use crate::finish::finish;
use crate::page;
use crate::place::{Outside, Place};
use crate::screen::{Aloud, FigureDrawn, NoticeShown, Screen};
use crate::short_hash::short_hash;

impl Guide {
    /// The screen as it stands. Drawing changes nothing.
    pub fn screen(&self) -> Screen {
        if let Some(suspended) = &self.suspended {
            return suspended.screen.clone();
        }
        let mut screen = match (&self.errand, &self.open) {
            (Some(errand), _) => page::show_errand(self, errand),
            (None, None) => page::show_outside(self, &self.outside),
            (None, Some(open)) => {
                let scene = self.scene(open);
                let place = open.memory.way.last().cloned().unwrap_or(Place::Overview);
                let mut screen = page::show(open, &scene, &place);
                screen.back = open.memory.way.len() > 1;
                screen
            }
        };
        if self.errand.is_none() {
            page::in_order(&mut screen);
            screen.back |= self.open.is_none() && self.outside != Outside::default();
            screen.notices = self.notices.iter().map(|notice| self.shown(notice)).collect();
        }
        screen.place = format!("{}-{}", screen.name, short_hash(self.place().as_bytes()));
        screen.way = self.way;
        finish(&mut screen, &self.language);
        screen
    }

    fn shown(&self, notice: &Notice) -> NoticeShown {
        let words = self.language.say(&notice.phrase);
        let id = format!("notice:{}:{}", notice.phrase.id, notice.number);
        NoticeShown { id, aloud: Aloud::default(), role: notice.role, words }
    }

    /// What tells the place that is shown from every other.
    fn place(&self) -> String {
        match (&self.errand, &self.open) {
            (Some(errand), _) => format!("{:?}", errand.doing),
            (None, None) => format!("{:?}", self.outside),
            (None, Some(open)) => {
                let place = serde_json::to_string(&open.memory.way.last()).unwrap_or_default();
                format!("{} {place}", open.survey.id)
            }
        }
    }

    /// A drawing of the screen that is shown, by the name that its block gives; `None` if the screen has no such drawing
    /// any more. A shell asks for it once, and again when its version has changed.
    pub fn figure(&self, figure: &str) -> Option<FigureDrawn> {
        let open = self.open.as_ref()?;
        let place = open.memory.way.last()?;
        page::figures(&self.scene(open), place).into_iter().find(|drawn| drawn.figure == figure)
    }
}
