//! What an account of a house leaves open, drawn from one file for all: `prior.json`.
#![expect(clippy::expect_used, reason = "a prior that cannot be read fails the test")]
#![allow(dead_code, reason = "each test binary uses its own share")]

use coax::{Dice, Span};
use house::record::{CableKind, Connector, LengthKnown, RunLength};
use houses::House;
use serde::Deserialize;

/// The whole file.
#[derive(Deserialize)]
pub struct Prior {
    /// Lengths in metres: least, likely, most.
    pub runs_m: Runs,
    /// Houses as their former owners left them.
    pub old: State,
    /// Houses that somebody went over.
    pub put_in_order: State,
    /// Rooms besides the one with the bridge: least and most.
    pub rooms: [u8; 2],
}

/// Lengths of runs by where they are.
#[derive(Deserialize)]
pub struct Runs {
    pub entry_to_first_split: [f64; 3],
    pub splitter_to_splitter: [f64; 3],
    pub to_outlet: [f64; 3],
}

/// How often a house has what.
#[derive(Deserialize)]
#[expect(clippy::struct_field_names, reason = "they are all shares, and the file reads better so")]
pub struct State {
    pub share_59_series: f64,
    pub share_unknown_series: f64,
    pub share_splitter_for_the_band: f64,
    pub share_poor_connector: f64,
    pub share_leg_left_open: f64,
    pub share_amplifier_in_the_way: f64,
    pub share_second_splitter: f64,
    pub share_entry_filter: f64,
}

/// The prior of all cases.
pub fn prior() -> Prior {
    serde_json::from_str(include_str!("prior.json")).expect("prior.json")
}

/// A draw of the gaps.
pub struct Gaps {
    pub dice: Dice,
}

impl Gaps {
    /// The gaps of draw `number` of a case.
    pub fn new(case: u8, number: u64) -> Self {
        Self { dice: Dice::thrown(2_026, number, [case; 16]) }
    }

    pub fn chance(&mut self, share: f64) -> bool {
        self.dice.unit() < share
    }

    pub fn metres(&mut self, [low, likely, high]: [f64; 3]) -> f64 {
        self.dice.span(Span::new(low, likely, high))
    }

    pub fn series(&mut self, state: &State) -> CableKind {
        let throw = self.dice.unit();
        if throw < state.share_59_series {
            CableKind::FiftyNine
        } else if throw < state.share_59_series + state.share_unknown_series {
            CableKind::Unknown
        } else {
            CableKind::Six
        }
    }

    /// A run to the part named last, of drawn length, series and connectors.
    pub fn run(&mut self, house: House, metres: [f64; 3], state: &State) -> House {
        let (metres, series) = (self.metres(metres), self.series(state));
        let poor = self.chance(state.share_poor_connector);
        house.run(|run| {
            run.cable = series;
            run.length = Some(RunLength::stated(metres, LengthKnown::Measured));
            run.connector_near = Connector::Compression;
            run.connector_far = if poor { Connector::TwistOn } else { Connector::Compression };
        })
    }
}
