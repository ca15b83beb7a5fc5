//! What may become of a house: each change that may be made in it for a rate alone, held against all that must not suffer, with
//! what the rooms get then and what it costs to get there.

use std::collections::BTreeSet;
use std::sync::Arc;

use house::record::{ChangeKind, NEWEST_PORT_MBPS, Survey};

use super::effect::applied;
use super::known_rates::{KnownRates, with};
use super::need::{gains_nothing, gives_a_link, is_wanted_anyway, loses_the_network};
use super::price::price;
use super::propose::candidates;
use super::rank::{most, value};
use super::refusal::own_refusal;
use super::search::Space;
use super::services::{AsFound, Others, weighed_in};
use crate::error::AdviceError;
use crate::forecast::Forecast;
use crate::level::MovedOut;

/// A house as some changes leave it. Hundreds are held at a time: each as what its last change makes of a house that several share.
#[derive(Debug, Clone)]
pub(super) struct Prospect {
    before: Arc<Survey>,
    last: Option<ChangeKind>,
    /// All changes made, in their order.
    made: Vec<ChangeKind>,
    /// What it is worth, and what it may be worth at the most, Mb/s.
    value: f64,
    most: f64,
    forecast: Forecast,
    /// Levels that its changes were let move out of their windows.
    moved_out: Vec<MovedOut>,
    /// What all its changes cost, Mb/s.
    price: f64,
}

impl Prospect {
    /// What all rooms together likely get more than in another, towards them, Mb/s.
    pub(super) fn gain_over(&self, other: &Self) -> f64 {
        let all = |of: &Self| -> f64 {
            of.forecast.rooms.iter().map(|room| of.forecast.likely_down(room.outlet)).sum()
        };
        all(self) - all(other)
    }

    /// The house itself.
    pub(super) fn house(&self) -> Arc<Survey> {
        self.last.map_or_else(|| Arc::clone(&self.before), |last| Arc::new(applied(last, &self.before)))
    }
}

/// So many houses are made at a time.
pub(super) const HOUSES_AT_ONCE: usize = 64;

/// Where changes are looked for.
pub(super) struct Prospects<'a> {
    pub(super) known: &'a KnownRates,
    pub(super) services: &'a AsFound,
    pub(super) given_up: &'a BTreeSet<ChangeKind>,
    /// Told of each house that is weighed; says whether to go on.
    pub(super) weighed: &'a mut dyn FnMut() -> Result<(), AdviceError>,
}

impl Prospects<'_> {
    /// The house with all that is done whether or not a room gains by it: that is no choice, and what it costs the rooms is
    /// counted before any choice.
    pub(super) fn start(&mut self, survey: &Survey, most_steps: usize) -> Result<Prospect, AdviceError> {
        let forecast = self.known.one(Vec::new(), survey)?;
        let mut here = Prospect {
            before: Arc::new(survey.clone()),
            last: None,
            made: Vec::new(),
            value: value((survey, &forecast)),
            most: most((survey, &forecast), f64::from(NEWEST_PORT_MBPS)),
            forecast,
            moved_out: Vec::new(),
            price: 0.0,
        };
        for _ in 0..most_steps {
            let wanted = self.offered(&here.house()).into_iter().filter(|change| is_wanted_anyway(*change));
            let wanted: Vec<_> = wanted.collect();
            let Some((_, next)) = self.weigh(&here, &wanted, 1)?.into_iter().next() else { break };
            here = Prospect { price: 0.0, ..next };
        }
        Ok(here)
    }

    /// What may be made in a house, as far as the house itself tells.
    fn offered(&self, house: &Survey) -> Vec<ChangeKind> {
        let offered = candidates(house, self.given_up).into_iter();
        offered.filter(|change| own_refusal(*change, house).is_none()).collect()
    }

    /// The first so many of these changes for which nothing else has to suffer, each with what is there then.
    fn weigh(
        &mut self,
        here: &Prospect,
        changes: &[ChangeKind],
        enough: usize,
    ) -> Result<Vec<(ChangeKind, Prospect)>, AdviceError> {
        let house = here.house();
        let guard = self.services.guard(&house, here.moved_out.clone())?;
        let mut found = Vec::new();
        // Where one is enough, none is weighed for the sake of others.
        for changes in changes.chunks(if enough < changes.len() { 1 } else { HOUSES_AT_ONCE }) {
            if found.len() == enough {
                break;
            }
            let mut made = Vec::with_capacity(changes.len());
            for change in changes.iter().copied() {
                (self.weighed)()?;
                let after = applied(change, &house);
                let others = guard.look(&weighed_in(change, &after, self.given_up))?;
                if others.against.is_none() {
                    made.push((change, after, others));
                }
            }
            let houses: Vec<_> =
                made.iter().map(|(change, after, _)| (with(&here.made, *change), after)).collect();
            let forecasts = self.known.each(&houses)?;
            for ((change, after, others), then) in made.into_iter().zip(forecasts) {
                if !self.is_allowed(change, &others, (&house, &here.forecast), &then) {
                    continue;
                }
                let moved_out = here.moved_out.iter().copied().chain(others.out).collect();
                let there = Prospect {
                    before: Arc::clone(&house),
                    last: Some(change),
                    made: with(&here.made, change),
                    value: value((&after, &then)),
                    most: most((&after, &then), f64::from(NEWEST_PORT_MBPS)),
                    forecast: then,
                    moved_out,
                    price: here.price + price(change, &house),
                };
                found.push((change, there));
            }
        }
        Ok(found)
    }

    /// Whether nothing else has to suffer for it. Where an amplifier with a by-pass in its place may be had, none is taken out
    /// at the cost of a level for the sake of a link.
    fn is_allowed(
        &self,
        change: ChangeKind,
        others: &Others,
        (house, now): (&Survey, &Forecast),
        then: &Forecast,
    ) -> bool {
        let may_be_swapped = |amplifier| {
            let swap = ChangeKind::SwapAmplifier { amplifier };
            !self.given_up.contains(&swap) && own_refusal(swap, house).is_none()
        };
        let is_left_to_swap =
            matches!(change, ChangeKind::RemoveAmplifier { amplifier } if may_be_swapped(amplifier));
        let only_this = gives_a_link(now, then) && !is_left_to_swap;
        others.level_refusal(change, only_this).is_none()
            && loses_the_network(now, then).is_none()
            // Nobody gives up signal of a TV or modem for a rate that is not there nine times in ten.
            && !(others.costs && !is_wanted_anyway(change) && gains_nothing(change, now, then))
    }
}

impl Space for Prospects<'_> {
    type Choice = ChangeKind;
    type State = Prospect;
    type Error = AdviceError;

    fn choices(&self, here: &Prospect) -> Vec<ChangeKind> {
        let offered = self.offered(&here.house()).into_iter();
        offered.filter(|change| !is_wanted_anyway(*change)).collect()
    }

    fn then(
        &mut self,
        here: &Prospect,
        changes: &[ChangeKind],
    ) -> Result<Vec<(ChangeKind, Prospect)>, AdviceError> {
        self.weigh(here, changes, changes.len())
    }

    fn score(&self, here: &Prospect) -> f64 {
        here.value - here.price
    }

    fn bound(&self, here: &Prospect) -> f64 {
        here.most - here.price
    }
}
