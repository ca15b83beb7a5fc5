//! What single unknowns move: each is thrown again, all else as it was, on the channels that the network runs on.
//!
//! An unknown is about one piece of the circuit. Only that piece is drawn again, and only the way from it to the bridge solved
//! again ([`Branches`]): the draws of the house itself are made once for all its unknowns.

use std::sync::Arc;

use coax::link::{Candidates, Placement};
use coax::{BranchNumbers, Branches, Dice, Model, NumberedBranches, Sweep};
use facts::fact::SubjectId;
use house::record::Survey;

use super::again::{Again, Open};
use super::drawn_house::{House, Told};
use super::many;
use super::options::Options;
use super::outcome::Forecast;
use super::placement;
use super::run::Prepared;
use super::solved::{Pairs, Solved};
use super::throws::Throws;
use super::total_effect::TotalEffect;
use super::views::Views;
use crate::error::AdviceError;

/// The total effects of one unknown on the rates of a room.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Moved {
    pub(crate) outlet: SubjectId,
    pub(crate) down: TotalEffect,
    pub(crate) up: TotalEffect,
}

/// What each of these moves in every room that the forecast reaches, in their order; nothing for what is not on the bridge's
/// tree, or is known.
///
/// # Errors
/// [`AdviceError::Stopped`] once `goes_on` says no, which is asked for each draw; else as
/// [`forecast()`](super::forecast()).
pub(crate) fn total_effects(
    survey: &Survey,
    forecast: &Forecast,
    open: &[Open],
    options: &Options,
    goes_on: &mut dyn FnMut() -> bool,
) -> Result<Vec<Vec<Moved>>, AdviceError> {
    let nothing = || Ok(open.iter().map(|_| Vec::new()).collect());
    if open.is_empty() {
        return nothing();
    }
    let prepared = Prepared::of(survey, options)?;
    let Some(house) = &prepared.house else { return nothing() };
    let again: Vec<Option<Again>> = open.iter().map(|open| Again::of(&house.circuit, *open)).collect();
    if again.iter().all(Option::is_none) {
        return nothing();
    }
    let draws = u64::from(prepared.forecast.draws);
    let Some(placement) = placement_of(house, forecast, draws, goes_on)? else { return nothing() };
    let seen = Seen::of(house, &again)?;
    let tools = || (Branches::on(house.grid.clone()), Sweep::on(house.grid.clone()));
    let work = |tools: &mut (Branches, Sweep), draw| {
        Looked { house, seen: seen.as_ref(), placement: &placement }.draw(tools, draw, &again)
    };
    let made = many::each(0..draws, tools, work, goes_on)?;
    let outlets: Vec<SubjectId> = house.rooms.iter().map(|room| room.outlet).collect();
    let still = |outlet: &SubjectId| Moved {
        outlet: *outlet,
        down: TotalEffect::default(),
        up: TotalEffect::default(),
    };
    let of_room = |again: &Option<Again>| again.iter().flat_map(|_| outlets.iter().map(still)).collect();
    let mut moved: Vec<Vec<Moved>> = again.iter().map(of_room).collect();
    for Drawn { as_thrown, again } in &made {
        for (rooms, (otherwise, chance)) in moved.iter_mut().zip(again) {
            for ((room, first), second) in rooms.iter_mut().zip(as_thrown).zip(otherwise) {
                room.down.add(first[0], second[0], *chance);
                room.up.add(first[1], second[1], *chance);
            }
        }
    }
    Ok(moved)
}

/// The channels of a forecast among those that the house may use. Where one of several hops makes no difference to the forecast's
/// channels, but to adapters of 1.x, it is the one that these draws choose.
fn placement_of(
    house: &House<'_>,
    forecast: &Forecast,
    draws: u64,
    goes_on: &mut dyn FnMut() -> bool,
) -> Result<Option<Placement>, AdviceError> {
    let candidates = house.may_run().candidates();
    let is_it = |placement: &&Placement| {
        let channels =
            placement.channels().iter().map(|channel| (channel.centre.value(), channel.width.value()));
        channels.eq(forecast.channels.iter().copied())
    };
    let mut found: Vec<Placement> = candidates.placements().iter().filter(is_it).cloned().collect();
    if found.len() > 1 {
        let several = Candidates::new(found.clone());
        let try_out = |sweep: &mut Sweep, draw| Ok(house.try_out(sweep, draw, &several)?.1);
        let tried = many::each(0..draws, || Sweep::on(house.grid.clone()), try_out, goes_on)?;
        found =
            placement::chosen(&several, &tried).and_then(|at| found.get(at).cloned()).into_iter().collect();
    }
    Ok(found.pop())
}

/// The rates to each room and from it.
type Rates = Vec<[f64; 2]>;

/// One draw.
struct Drawn {
    as_thrown: Rates,
    /// For each unknown what it gives, with what chance; nothing for what is known.
    again: Vec<(Rates, f64)>,
}

/// A house seen from its bridge, as it is thrown and with each unknown thrown again.
struct Seen {
    views: Views,
    as_thrown: Vec<NumberedBranches>,
    /// Nothing for what is known.
    again: Vec<Vec<NumberedBranches>>,
}

impl Seen {
    /// `None` where it cannot be seen from there.
    fn of(house: &House<'_>, again: &[Option<Again>]) -> Result<Option<Self>, AdviceError> {
        let circuit = &house.circuit;
        let somehow = circuit.models(|key| Dice::thrown(0, 0, key), |_| None)?;
        let Some(views) = Views::of(house, Told::Rates, &somehow)? else { return Ok(None) };
        let mut numbers = BranchNumbers::default();
        let endings: Vec<usize> = (0..circuit.endings.len()).collect();
        let mut pieces: Vec<usize> = (0..circuit.pieces.len()).collect();
        let as_thrown = views.numbered(&mut numbers, &pieces, &endings)?;
        let mut thrown_again = Vec::with_capacity(again.len());
        for (place, again) in again.iter().enumerate() {
            let here = again.as_ref().and_then(|again| pieces.get_mut(again.piece));
            let Some(here) = here else {
                thrown_again.push(Vec::new());
                continue;
            };
            // A piece thrown again is none of the others.
            let first = std::mem::replace(here, circuit.pieces.len() + place);
            thrown_again.push(views.numbered(&mut numbers, &pieces, &endings)?);
            if let Some(here) = again.as_ref().and_then(|again| pieces.get_mut(again.piece)) {
                *here = first;
            }
        }
        Ok(Some(Self { views, as_thrown, again: thrown_again }))
    }
}

/// A house that is looked at draw by draw.
struct Looked<'a> {
    house: &'a House<'a>,
    /// `None` where it cannot be seen from its bridge.
    seen: Option<&'a Seen>,
    placement: &'a Placement,
}

impl Looked<'_> {
    fn draw(
        &self,
        (branches, sweep): &mut (Branches, Sweep),
        draw: u64,
        again: &[Option<Again>],
    ) -> Result<Drawn, AdviceError> {
        branches.forget();
        let (house, circuit) = (self.house, &self.house.circuit);
        let throws = Throws::of(house.options.seed, draw);
        let errors = house.model_errors(&throws);
        let sends = |end| circuit.sent_back(end, |key| throws.dice(key));
        let mut models = circuit.models(|key| throws.dice(key), |_| None)?;
        let mut rates = |models: &[Arc<Model>], thrown_again: Option<usize>| -> Result<Rates, AdviceError> {
            let solved = if let Some(Seen { views, as_thrown, again }) = self.seen {
                let numbered = thrown_again.map_or(Some(as_thrown), |place| again.get(place));
                let numbered = numbered.ok_or(AdviceError::Inner("unknown"))?;
                let model = |piece: usize| models.get(piece).cloned().ok_or(AdviceError::Inner("piece"));
                views.solved(branches, numbered, model, sends, &errors)?
            } else {
                let tree = circuit.drawn_of(models.to_vec(), |key| throws.dice(key))?.tree;
                let powers = sweep.powers(&[&tree], &house.asked.outlets)?.pop();
                Solved::new(Pairs::Swept(powers.ok_or(AdviceError::Inner("draw"))?), errors.clone())
            };
            let of =
                |room| Ok(house.rates(room, &solved, self.placement, &throws)?.map(|rate| rate.net.value()));
            house.rooms.iter().map(of).collect()
        };
        let as_thrown = rates(&models, None)?;
        let mut gave = Vec::with_capacity(again.len());
        for (place, again) in again.iter().enumerate() {
            let Some(again) = again else {
                gave.push((Rates::new(), 0.0));
                continue;
            };
            let piece = circuit.pieces.get(again.piece).ok_or(AdviceError::Inner("piece"))?;
            let (drawn, chance) = again.draw(piece, &throws)?;
            let here = models.get_mut(again.piece).ok_or(AdviceError::Inner("piece"))?;
            let first = std::mem::replace(here, Arc::new(drawn));
            gave.push((rates(&models, Some(place))?, chance));
            if let Some(here) = models.get_mut(again.piece) {
                *here = first;
            }
        }
        Ok(Drawn { as_thrown, again: gave })
    }
}

#[cfg(test)]
mod tests;
