//! What a reading says beside the forecast, in words: the same on the screen and in the report.

use house::naming;
use house::record::{Internet, Reading, ReadingKind};
use phrase::{Arg, Phrase};

use super::{Beside, Held, HeldOf, Tells, Verdict};

impl Verdict {
    /// The reading against the forecast, a sentence for each way. `plan` is the internet plan.
    pub fn phrases(&self, reading: &Reading, plan: Option<Internet>) -> Vec<Phrase> {
        if !self.held.is_empty() {
            return self.held.iter().map(Held::phrase).collect();
        }
        let id = match self.tells {
            Tells::Coax | Tells::Socket => "beside-reading",
            Tells::Radio => "beside-radio",
            Tells::Plan => "beside-plan",
            Tells::Internet => "beside-internet",
            Tells::Earlier => "beside-earlier",
        };
        let said = Phrase::new(id).phrase("reading", naming::reading(reading.measured));
        vec![match (self.tells, plan, reading.measured) {
            (Tells::Internet, Some(plan), ReadingKind::Throughput { .. }) => {
                said.text("plan", "known").with("rate", Arg::RateAsRead(plan.down_mbps))
            }
            _ => said.text("plan", "none").text("rate", ""),
        }]
    }
}

impl Held {
    /// The figure beside what was expected of it.
    pub fn phrase(&self) -> Phrase {
        let (of, way) = match self.of {
            HeldOf::Down => ("", "down"),
            HeldOf::Up => ("", "up"),
            HeldOf::Phy => ("phy-", "none"),
            HeldOf::Loss => ("loss-", "none"),
        };
        let lies = match (self.beside, self.of) {
            (Beside::AsExpected, _) => "within",
            (Beside::Worse, HeldOf::Loss) | (Beside::Better, HeldOf::Down | HeldOf::Up | HeldOf::Phy) => {
                "above"
            }
            (Beside::Worse, _) | (Beside::Better, HeldOf::Loss) => "below",
            (Beside::AtSocket(_), _) => "at-socket",
            (Beside::NearSocket(_), _) => "near-socket",
            (Beside::NearHundred, _) => "near-hundred",
        };
        let phrase = Phrase::new(format!("beside-{of}{lies}"))
            .text("way", way)
            .text("close", if self.is_inside() { "inside" } else { "about" })
            .with("measured", self.measured_arg())
            .with("expected", self.expected_arg());
        match self.beside.socket_mbps() {
            Some(socket) => phrase.with("socket", Arg::RateAsRead(socket)),
            None => phrase,
        }
    }
}
