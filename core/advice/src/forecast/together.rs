//! Several houses that differ in little, forecast together: what is the same in them is drawn once, and a branch that is the
//! same is folded once. So a change costs its own parts and the way from them to the bridge.

use std::collections::HashMap;
use std::sync::Arc;

use coax::link::Candidates;
use coax::{Branches, Dice, Model};
use house::record::Survey;

use super::circuit::Circuit;
use super::drawn_house::{House, Told, grid_of};
use super::from_bridge::FromBridge;
use super::many;
use super::outcome::Forecast;
use super::pieces::Rated;
use super::placement::{self, Tried};
use super::run::{Options, Prepared, forecast, forecast_watched};
use super::solved::{Shown, Solved, SolvedDraw};
use super::throws::Throws;
use crate::error::AdviceError;

/// So many draws of houses at once: what they give at every placement has to be held until all are drawn.
const AT_ONCE: usize = 1_024;

/// What the rooms of each of these houses get, by the draws that [`forecast()`] makes; not where it is lost, nor what leaves the
/// house. Where fewer draws may do, all of it.
///
/// # Errors
/// As [`forecast()`].
pub(crate) fn forecast_each(houses: &[&Survey], options: &Options) -> Result<Vec<Forecast>, AdviceError> {
    forecast_each_watched(houses, options, &mut |_| true)
}

/// The same, watched: `goes_on` is told again and again how many draws of houses are made, in all as many as houses and draws
/// of each, and says whether to go on.
///
/// # Errors
/// [`AdviceError::Stopped`] once it says no; else as [`forecast()`].
pub(crate) fn forecast_each_watched(
    houses: &[&Survey],
    options: &Options,
    goes_on: &mut dyn FnMut(usize) -> bool,
) -> Result<Vec<Forecast>, AdviceError> {
    if options.settles {
        let alone = |house: &&Survey| forecast_watched(house, options, &mut || goes_on(1));
        return houses.iter().map(alone).collect();
    }
    let mut forecasts = Vec::with_capacity(houses.len());
    let at_once = AT_ONCE / usize::try_from(options.draws).unwrap_or(AT_ONCE).clamp(1, AT_ONCE);
    for houses in houses.chunks(at_once) {
        forecasts.extend(forecast_all(houses, options, &mut || goes_on(houses.len()))?);
    }
    Ok(forecasts)
}

fn forecast_all(
    houses: &[&Survey],
    options: &Options,
    goes_on: &mut dyn FnMut() -> bool,
) -> Result<Vec<Forecast>, AdviceError> {
    let prepared = houses.iter().map(|house| Prepared::of(house, options));
    let mut prepared = prepared.collect::<Result<Vec<_>, _>>()?;
    let mut pieces = Pieces::default();
    let mut among = Vec::with_capacity(prepared.len());
    for (place, prepared) in prepared.iter().enumerate() {
        if let Some(house) = &prepared.house {
            among.extend(Among::of(place, prepared.forecast.draws, house, &mut pieces)?);
        }
    }
    let draws = among.iter().map(|among| u64::from(among.draws)).max().unwrap_or(0);
    let grid = grid_of(options.first_points())?;
    let work = |branches: &mut Branches, draw: u64| {
        branches.forget();
        let mut drawn = vec![None; pieces.count];
        let throws = Throws::of(options.seed, draw);
        let drawn_houses = among.iter().map(|among| {
            let is_drawn = draw < u64::from(among.draws);
            is_drawn.then(|| among.draw(&throws, branches, &mut drawn)).transpose()
        });
        drawn_houses.collect::<Result<Vec<_>, AdviceError>>()
    };
    let made = many::each(0..draws, || Branches::on(grid.clone()), work, goes_on)?;
    let mut by_house: Vec<(Vec<SolvedDraw>, Vec<Tried>)> = among.iter().map(|_| Default::default()).collect();
    for draw in made {
        for (one, (solved, tried)) in draw.into_iter().zip(&mut by_house) {
            if let Some((one, tries)) = one {
                solved.push(one);
                tried.push(tries);
            }
        }
    }
    let mut told = Vec::with_capacity(among.len());
    for (among, (solved, tried)) in among.iter().zip(&by_house) {
        let Some(at) = placement::chosen(among.candidates.placements(), tried) else { continue };
        let Some(prepared) = prepared.get(among.place) else { continue };
        let (mut forecast, mut reaches) = (prepared.forecast.clone(), prepared.reaches.clone());
        let all = (solved.as_slice(), tried.as_slice(), at);
        among.house.told((&mut forecast, &mut reaches), &among.candidates, all, Told::Rates)?;
        told.push((among.place, forecast, reaches));
    }
    let alone: Vec<bool> = (0..prepared.len())
        .map(|place| {
            let is_among = among.iter().any(|among| among.place == place);
            !is_among && prepared.get(place).is_some_and(|one| one.house.is_some())
        })
        .collect();
    drop(among);
    for (place, forecast, reaches) in told {
        if let Some(prepared) = prepared.get_mut(place) {
            (prepared.forecast, prepared.reaches) = (forecast, reaches);
        }
    }
    let closed = prepared.into_iter().zip(alone).zip(houses).map(|((prepared, alone), house)| {
        // One that cannot be seen from its bridge is drawn by itself.
        if alone { forecast(house, options) } else { Ok(prepared.closed()) }
    });
    closed.collect()
}

/// The pieces of all houses, those that are the same numbered alike: with the same dice they are the same part.
#[derive(Default)]
struct Pieces<'a> {
    by_key: HashMap<[u8; 16], Vec<(usize, &'a Rated)>>,
    count: usize,
}

impl<'a> Pieces<'a> {
    /// The numbers of a circuit's pieces.
    fn numbers(&mut self, circuit: &'a Circuit) -> Vec<usize> {
        let mut numbers = Vec::with_capacity(circuit.pieces.len());
        for piece in &circuit.pieces {
            let same_key = self.by_key.entry(piece.key).or_default();
            let known = same_key.iter().find(|(_, rated)| **rated == piece.rated).map(|(number, _)| *number);
            numbers.push(known.unwrap_or_else(|| {
                same_key.push((self.count, &piece.rated));
                self.count += 1;
                self.count - 1
            }));
        }
        numbers
    }
}

/// A house among others.
struct Among<'a> {
    /// Which of them.
    place: usize,
    draws: u32,
    house: &'a House<'a>,
    candidates: Candidates,
    seen: FromBridge,
    /// Its pieces; with every by-pass of which nobody knows, and without, where one is on the way to a room.
    pieces: Vec<usize>,
    worlds: Option<[Vec<usize>; 2]>,
}

impl<'a> Among<'a> {
    /// `None` where nothing is to be drawn, or it cannot be seen from its bridge.
    fn of(
        place: usize,
        draws: u32,
        house: &'a House<'a>,
        pieces: &mut Pieces<'a>,
    ) -> Result<Option<Self>, AdviceError> {
        let candidates = house.candidates();
        if candidates.placements().is_empty() {
            return Ok(None);
        }
        let Some(seen) = FromBridge::of(house)? else { return Ok(None) };
        let own = pieces.numbers(&house.circuit);
        let worlds =
            house.worlds.as_deref().map(|worlds| worlds.each_ref().map(|world| pieces.numbers(world)));
        Ok(Some(Self { place, draws, house, candidates, seen, pieces: own, worlds }))
    }

    /// The house of one draw, and what it gives at every placement. `drawn` are the pieces that are drawn, by their numbers.
    fn draw(
        &self,
        throws: &Throws,
        branches: &mut Branches,
        drawn: &mut [Option<Arc<Model>>],
    ) -> Result<(SolvedDraw, Tried), AdviceError> {
        let house = self.house;
        let throw = |key| throws.dice(key);
        let errors = house.model_errors(throws);
        let ends = self.seen.ends(house, throws);
        let mut solve = |circuit: &Circuit, numbers: &[usize]| -> Result<Solved, AdviceError> {
            let models = drawn_models(circuit, numbers, &throw, drawn)?;
            self.seen.solved(branches, &models, &ends, &errors)
        };
        let solved = match (house.worlds.as_deref(), &self.worlds) {
            (Some([with, without]), Some([pieces_with, pieces_without])) => {
                let shown = match house.circuit.world_shown(throw) {
                    Some(true) => Shown::With,
                    Some(false) => Shown::Without,
                    None => Shown::Mixed(solve(&house.circuit, &self.pieces)?),
                };
                let (with, without) = (solve(with, pieces_with)?, solve(without, pieces_without)?);
                SolvedDraw::Worlds { with, without, shown }
            }
            _ => SolvedDraw::One(solve(&house.circuit, &self.pieces)?),
        };
        let tried = house.tried(&solved, throws, &self.candidates)?;
        Ok((solved, tried))
    }
}

/// The parts of a circuit, each drawn once for all houses in which it is the same.
fn drawn_models(
    circuit: &Circuit,
    numbers: &[usize],
    throw: &impl Fn([u8; 16]) -> Dice,
    drawn: &mut [Option<Arc<Model>>],
) -> Result<Vec<Arc<Model>>, AdviceError> {
    let mut models = Vec::with_capacity(numbers.len());
    for (piece, number) in circuit.pieces.iter().zip(numbers) {
        let known = drawn.get_mut(*number).ok_or(AdviceError::Inner("piece"))?;
        let model = match known {
            Some(model) => Arc::clone(model),
            None => Arc::clone(known.insert(Arc::new(piece.rated.draw(&mut throw(piece.key))?))),
        };
        models.push(model);
    }
    Ok(models)
}

#[cfg(test)]
mod tests {
    use houses::random::seeds;

    use super::*;
    use crate::worklist::{applied, proposed};

    /// All that may be done in a random house, forecast together and one by one.
    fn together_and_alone(seed: u64) -> Option<String> {
        let options = Options { draws: 6, seed: 1, points: 23, settles: false };
        let survey = houses::random::survey(seed);
        let changed: Vec<Survey> =
            proposed(&survey).into_iter().map(|change| applied(change, &survey)).collect();
        let houses: Vec<&Survey> = std::iter::once(&survey).chain(&changed).collect();
        let together = forecast_each(&houses, &options).expect("sound houses");
        for (house, together) in houses.iter().zip(&together) {
            let alone = forecast(house, &options).expect("a sound house");
            if alone.channels != together.channels || alone.rooms.len() != together.rooms.len() {
                return Some(format!("{:?} for {:?}", together.channels, alone.channels));
            }
            for room in &alone.rooms {
                let (one, other) = (alone.path(room.outlet), together.path(room.outlet));
                let Some((one, other)) = one.zip(other) else {
                    if one.is_some() || other.is_some() {
                        return Some("one has a rate, the other none".into());
                    }
                    continue;
                };
                let rates = [(one.down, other.down), (one.up, other.up), (one.loss, other.loss)];
                let worlds = one
                    .by_pass
                    .iter()
                    .zip(&other.by_pass)
                    .map(|(one, other)| (one.without.down, other.without.down));
                for (one, other) in rates.into_iter().chain(worlds) {
                    let ends = [(one.low, other.low), (one.likely, other.likely), (one.high, other.high)];
                    // Both may be a loss without end.
                    if ends.iter().any(|(one, other)| {
                        one.to_bits() != other.to_bits() && (one - other).abs() > 1e-6 * one.abs().max(1.0)
                    }) {
                        return Some(format!("{other:?} for {one:?}"));
                    }
                }
            }
        }
        None
    }

    #[test]
    fn houses_forecast_together_get_what_each_gets_alone() {
        let found = seeds::over_seeds(40, |seed| together_and_alone(seed).into_iter().collect());
        seeds::none(&found, &std::env::temp_dir(), houses::random::survey);
    }
}
