//! What the draws of one room gave, summed up.

use coax::{FrequencyGrid, link};
use facts::fact::SubjectId;

use super::by_pass_worlds::{ByPassWorlds, WorldDraws};
use super::outcome::{Cost, Curve, PathForecast};
use super::percentile::{spread, spread_of};

/// What one draw gave.
pub(super) struct Draw {
    /// In the order of the rooms.
    pub(super) rooms: Vec<RoomDraw>,
    pub(super) leaks: Vec<(SubjectId, f64)>,
    pub(super) airtime: Option<f64>,
    /// Whether every amplifier of which nobody knows it has a by-pass in it.
    pub(super) has_all_by_passes: bool,
}

/// What one draw gave for one room.
pub(super) struct RoomDraw {
    pub(super) down: link::LinkRate,
    pub(super) up: link::LinkRate,
    pub(super) loss: f64,
    /// What gets through at each frequency of the grid.
    pub(super) power: Vec<f64>,
    /// Both ways with every by-pass of which nobody knows, and without, where one is on the way.
    pub(super) worlds: Option<[[link::LinkRate; 2]; 2]>,
}

/// What the draws of one room gave.
#[derive(Default)]
pub(super) struct RoomDraws {
    pub(super) down: Vec<f64>,
    pub(super) up: Vec<f64>,
    pub(super) phy_down: Vec<f64>,
    pub(super) phy_up: Vec<f64>,
    pub(super) loss: Vec<f64>,
    pub(super) limits: Vec<link::Limit>,
    pub(super) links: u32,
    pub(super) clean: u32,
    pub(super) powers: Vec<Vec<f64>>,
    /// The amplifiers on its way of which nobody knows whether they have a by-pass.
    pub(super) by_passes: Vec<SubjectId>,
    pub(super) with: WorldDraws,
    pub(super) without: WorldDraws,
}

impl RoomDraws {
    pub(super) fn add(&mut self, RoomDraw { down, up, loss, power, worlds }: RoomDraw) {
        self.down.push(down.net.value());
        self.up.push(up.net.value());
        self.phy_down.push(down.phy.value());
        self.phy_up.push(up.phy.value());
        self.limits.push(down.limit);
        self.links += u32::from(down.links() && up.links());
        self.clean += u32::from(down.is_clean && up.is_clean);
        self.loss.push(loss);
        self.powers.push(power);
        if let Some(worlds) = worlds {
            for ([down, up], draws) in worlds.into_iter().zip([&mut self.with, &mut self.without]) {
                draws.add(down.net.value(), up.net.value(), down.links() && up.links());
            }
        }
    }

    /// `odds`: the share of draws in which every amplifier of which nobody knows it had a by-pass.
    pub(super) fn summed_up(self, grid: &FrequencyGrid, costs: Vec<Cost>, odds: f64) -> PathForecast {
        let draws = self.limits.len().max(1) as f64;
        let mut low = Vec::new();
        let mut likely = Vec::new();
        let mut high = Vec::new();
        // The less gets through, the greater the loss: only the few that are told are put in decibels.
        let loss = |negative: f64| -10.0 * (-negative).log10();
        let mut here = Vec::with_capacity(self.powers.len());
        let mhz: Vec<f64> = match self.powers.first() {
            Some(power) if !power.is_empty() => {
                grid.frequencies().iter().map(|frequency| frequency.value()).collect()
            }
            _ => Vec::new(),
        };
        for place in 0..mhz.len() {
            here.clear();
            here.extend(self.powers.iter().filter_map(|power| power.get(place)).map(|power| -power));
            let at = spread_of(&mut here, loss);
            low.push(at.low);
            likely.push(at.likely);
            high.push(at.high);
        }
        PathForecast {
            down: spread(self.down),
            up: spread(self.up),
            phy_down: spread(self.phy_down),
            phy_up: spread(self.phy_up),
            loss: spread(self.loss),
            links: f64::from(self.links) / draws,
            clean: f64::from(self.clean) / draws,
            limit: most_frequent(&self.limits),
            costs,
            curve: Curve { mhz, low, likely, high },
            by_pass: (!self.by_passes.is_empty()).then(|| {
                Box::new(ByPassWorlds {
                    amplifiers: self.by_passes,
                    odds,
                    with: self.with.summed_up(),
                    without: self.without.summed_up(),
                })
            }),
        }
    }
}

fn most_frequent(limits: &[link::Limit]) -> link::Limit {
    let count = |limit: &link::Limit| limits.iter().filter(|other| *other == limit).count();
    limits.iter().copied().max_by_key(|limit| count(limit)).unwrap_or(link::Limit::Path)
}
