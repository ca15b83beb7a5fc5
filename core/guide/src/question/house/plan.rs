//! What the internet plan gives.

use house::record::{Internet, field};
use phrase::Phrase;

use crate::number::Quantity;
use crate::place::Key;
use crate::question::answer::{Answer, Told, not_answered};
use crate::session::{Pending, SurveySnapshot};
use crate::view::ScreenBuilder;

/// The rates that were typed, Mb/s; what was not touched stays as it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::question) struct PlanAnswer {
    down_mbps: Option<f64>,
    up_mbps: Option<f64>,
}

impl PlanAnswer {
    pub(in crate::question) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let plan = snapshot.survey.internet;
        let hint = Phrase::new("ask-plan.hint");
        let down = plan.map(|plan| plan.down_mbps);
        let up = plan.map(|plan| plan.up_mbps);
        builder.number(&Key::Down, &Phrase::new("plan-down"), Some(&hint), Quantity::Rate, down);
        builder.number(&Key::Up, &Phrase::new("plan-up"), None, Quantity::Rate, up);
    }

    pub(in crate::question) fn read(pending: &Pending) -> Told<Self> {
        Ok(Self {
            down_mbps: pending.number(&Key::Down, Quantity::Rate)?,
            up_mbps: pending.number(&Key::Up, Quantity::Rate)?,
        })
    }

    pub(in crate::question) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Told<Answer> {
        let known = snapshot.survey.internet;
        // Many people know only the one number that the plan is sold by.
        let down = self.down_mbps.or(known.map(|plan| plan.down_mbps));
        let Some(down_mbps) = down else { return Err(not_answered()) };
        let up = self.up_mbps.or(known.map(|plan| plan.up_mbps));
        let plan = Internet { down_mbps, up_mbps: up.unwrap_or(down_mbps.min(100.0)) };
        Ok(Answer::new().says(snapshot.survey.id, field::survey::INTERNET, &plan))
    }
}
