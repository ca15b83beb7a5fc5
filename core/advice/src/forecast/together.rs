//! Several houses that differ in little, forecast together: what is the same in them is drawn once, and a branch that is the
//! same is folded once. So a change costs its own parts and the way from them to the bridge.

use std::ops::Range;
use std::sync::{Mutex, PoisonError};

use coax::{Branches, FrequencyGrid};
use house::record::Survey;

use super::among::{Alike, Among, DrawnOnce};
use super::drawn_house::{Told, grid_of};
use super::many;
use super::options::Options;
use super::outcome::Forecast;
use super::placement::{self, Tried};
use super::run::{Prepared, forecast, forecast_watched};
use super::solved::SolvedDraw;
use super::throws::Throws;
use crate::error::AdviceError;

/// So many draws of houses at once: what they give at every placement has to be held until all are drawn.
const DRAWS_AT_ONCE: usize = 1_536;

/// What the rooms of each of these houses get, by the draws that [`forecast()`] makes; where fewer draws may do, all of it.
///
/// # Errors
/// As [`forecast()`].
pub(crate) fn forecast_each(houses: &[&Survey], options: &Options) -> Result<Vec<Forecast>, AdviceError> {
    let rates: Vec<_> = houses.iter().map(|house| (*house, Told::Rates)).collect();
    forecast_each_watched(&rates, options, &mut |_| true)
}

/// The same with so much told of each, watched: `goes_on` is told again and again how many draws of houses are made, in all as many as houses and draws
/// of each, and says whether to go on.
///
/// # Errors
/// [`AdviceError::Stopped`] once it says no; else as [`forecast()`].
pub(crate) fn forecast_each_watched(
    houses: &[(&Survey, Told)],
    options: &Options,
    goes_on: &mut dyn FnMut(usize) -> bool,
) -> Result<Vec<Forecast>, AdviceError> {
    if options.settles {
        let alone = |(house, _): &(&Survey, Told)| forecast_watched(house, options, &mut || goes_on(1));
        return houses.iter().map(alone).collect();
    }
    let mut forecasts = Vec::with_capacity(houses.len());
    let grid = grid_of(options.first_points())?;
    for houses in houses.chunks(at_once(options)) {
        let each = |draws: Range<u64>, all: &[Among<'_>], alike: &Alike| {
            let work = |drawn: &mut Drawn, draw| {
                drawn.forget();
                drawn.draw(all, alike, options, draw)
            };
            many::each(draws, || Drawn::on(grid.clone()), work, &mut || goes_on(houses.len()))
        };
        forecasts.extend(forecast_all(houses, options, &mut Alike::default(), each)?);
    }
    Ok(forecasts)
}

/// Forecasts houses of which many are asked for, one group after another, all much alike: what one of them is made of is kept for
/// the next.
#[derive(Debug)]
pub(crate) struct Forecaster {
    options: Options,
    alike: Alike,
    /// What is kept of each draw.
    by_draw: Vec<Mutex<Drawn>>,
    most_waves: usize,
}

/// Of all draws together so many waves of parts and folded branches are kept (about 25 MB) from one group of houses to the next; more
/// is forgotten.
const MOST_WAVES_KEPT: usize = 200_000;

impl Forecaster {
    /// By a fixed number of draws.
    pub(crate) fn new(options: Options) -> Self {
        Self { options, alike: Alike::default(), by_draw: Vec::new(), most_waves: MOST_WAVES_KEPT }
    }

    /// As [`forecast_each`].
    ///
    /// # Errors
    /// As [`forecast()`].
    pub(crate) fn forecast_each(&mut self, houses: &[&Survey]) -> Result<Vec<Forecast>, AdviceError> {
        let options = Options { settles: false, ..self.options };
        let grid = grid_of(options.first_points())?;
        let mut forecasts = Vec::with_capacity(houses.len());
        let rates: Vec<_> = houses.iter().map(|house| (*house, Told::Rates)).collect();
        for houses in rates.chunks(at_once(&options)) {
            let Self { alike, by_draw, .. } = &mut *self;
            by_draw.resize_with(options.draws.max(1) as usize, || Mutex::new(Drawn::on(grid.clone())));
            let work = |all: &[Among<'_>], alike: &Alike, draw: u64| {
                let place = usize::try_from(draw).ok();
                let drawn = place.and_then(|place| by_draw.get(place)).ok_or(AdviceError::Inner("draw"))?;
                // A thread that panicked takes the whole forecast with it.
                let mut drawn = drawn.lock().unwrap_or_else(PoisonError::into_inner);
                drawn.draw(all, alike, &options, draw)
            };
            let each = |draws: Range<u64>, all: &[Among<'_>], alike: &Alike| {
                many::each(draws, || (), |(), draw| work(all, alike, draw), &mut || true)
            };
            forecasts.extend(forecast_all(houses, &options, alike, each)?);
            self.forget_too_much();
        }
        Ok(forecasts)
    }

    /// Looked at after each group of houses; the memory is used again.
    fn forget_too_much(&mut self) {
        let kept = |drawn: &mut Mutex<Drawn>| {
            drawn.get_mut().unwrap_or_else(PoisonError::into_inner).branches.waves()
        };
        if self.by_draw.iter_mut().map(kept).sum::<usize>() > self.most_waves {
            self.alike = Alike::default();
            for drawn in &mut self.by_draw {
                drawn.get_mut().unwrap_or_else(PoisonError::into_inner).forget();
            }
        }
    }
}

/// What is worked out of one draw of all houses.
#[derive(Debug)]
struct Drawn {
    branches: Branches,
    once: DrawnOnce,
    /// What it shows, for as long as it is one and the same draw.
    throws: Option<Throws>,
}

/// One draw of each of some houses, and what it gives at every placement; nothing where a house is not drawn so often.
type OneDraw = Vec<Option<(SolvedDraw, Tried)>>;

impl Drawn {
    fn on(grid: FrequencyGrid) -> Self {
        Self { branches: Branches::on(grid), once: DrawnOnce::default(), throws: None }
    }

    fn forget(&mut self) {
        self.branches.forget();
        self.once.forget();
        self.throws = None;
    }

    fn draw(
        &mut self,
        all: &[Among<'_>],
        alike: &Alike,
        options: &Options,
        draw: u64,
    ) -> Result<OneDraw, AdviceError> {
        let Self { branches, once, throws } = self;
        once.make_room(alike);
        let throws = throws.get_or_insert_with(|| Throws::of(options.seed, draw));
        let one = |among: &Among<'_>| {
            let is_drawn = draw < u64::from(among.draws);
            is_drawn.then(|| among.draw(throws, branches, once)).transpose()
        };
        all.iter().map(one).collect()
    }
}

/// So many houses at once.
fn at_once(options: &Options) -> usize {
    DRAWS_AT_ONCE / usize::try_from(options.draws).unwrap_or(DRAWS_AT_ONCE).clamp(1, DRAWS_AT_ONCE)
}

/// `each` makes these draws of these houses.
fn forecast_all(
    houses: &[(&Survey, Told)],
    options: &Options,
    alike: &mut Alike,
    each: impl FnOnce(Range<u64>, &[Among<'_>], &Alike) -> Result<Vec<OneDraw>, AdviceError>,
) -> Result<Vec<Forecast>, AdviceError> {
    let prepared = houses.iter().map(|(house, _)| Prepared::of(house, options));
    let mut prepared = prepared.collect::<Result<Vec<_>, _>>()?;
    let mut among = Vec::with_capacity(prepared.len());
    for ((place, prepared), (_, told)) in prepared.iter().enumerate().zip(houses) {
        if let Some(house) = &prepared.house {
            among.extend(Among::of((place, prepared.forecast.draws, *told), house, alike)?);
        }
    }
    let draws = among.iter().map(|among| u64::from(among.draws)).max().unwrap_or(0);
    let made = each(0..draws, &among, alike)?;
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
        let Some(at) = placement::chosen(&among.candidates, tried) else { continue };
        let Some(prepared) = prepared.get(among.place) else { continue };
        let (mut forecast, mut reaches) = (prepared.forecast.clone(), prepared.reaches.clone());
        let all = (solved.as_slice(), tried.as_slice(), at);
        among.house.told((&mut forecast, &mut reaches), &among.candidates, all, among.told)?;
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
    let closed = prepared.into_iter().zip(alone).zip(houses).map(|((prepared, alone), (house, _))| {
        // One that cannot be seen from its bridge is drawn by itself.
        if alone { forecast(house, options) } else { Ok(prepared.closed()) }
    });
    closed.collect()
}

#[cfg(test)]
mod tests {
    use houses::random::seeds;

    use super::super::outcome::{CostAt, PathForecast};
    use super::*;
    use crate::worklist::{applied, proposed};

    /// All that may be done in a random house, forecast together and one by one.
    fn together_and_alone(seed: u64) -> Option<String> {
        let options = Options { draws: 6, seed: 1, points: 23, settles: false };
        let survey = houses::random::survey(seed);
        let changed: Vec<Survey> =
            proposed(&survey).into_iter().map(|change| applied(change, &survey)).collect();
        let houses: Vec<&Survey> = std::iter::once(&survey).chain(&changed).collect();
        let whole: Vec<_> = houses.iter().map(|house| (*house, Told::All)).collect();
        let together = forecast_each_watched(&whole, &options, &mut |_| true).expect("sound houses");
        for (house, together) in houses.iter().zip(&together) {
            let alone = forecast(house, &options).expect("a sound house");
            let leaks = |of: &Forecast| -> Vec<_> {
                of.street.iter().flat_map(|leak| [leak.loss.low, leak.loss.likely, leak.loss.high]).collect()
            };
            let (leaks_alone, leaks_together) = (leaks(&alone), leaks(together));
            let are_near = |(one, other): (&f64, &f64)| {
                one.to_bits() == other.to_bits() || (one - other).abs() <= 1e-6 * one.abs().max(1.0)
            };
            if leaks_alone.len() != leaks_together.len()
                || !leaks_alone.iter().zip(&leaks_together).all(are_near)
            {
                return Some(format!("{:?} for {:?} at the street", together.street, alone.street));
            }
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
                let costs =
                    |of: &PathForecast| of.costs.iter().map(|cost| (cost.at, cost.db)).collect::<Vec<_>>();
                let (costs_one, costs_other) = (costs(one), costs(other));
                let is_same = |(one, other): (&(CostAt, f64), &(CostAt, f64))| {
                    one.0 == other.0 && are_near((&one.1, &other.1))
                };
                if costs_one.len() != costs_other.len() || !costs_one.iter().zip(&costs_other).all(is_same) {
                    return Some(format!("{costs_other:?} for {costs_one:?}"));
                }
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

    /// All that may be done in a random house, group after group, with what is kept from one to the next, and each group by itself.
    fn kept_and_anew(seed: u64, most_waves: usize) -> Option<String> {
        let options = Options { draws: 6, seed: 1, points: 23, settles: false };
        let survey = houses::random::survey(seed);
        let changed = proposed(&survey).into_iter().map(|change| applied(change, &survey));
        let houses: Vec<Survey> = std::iter::once(survey.clone()).chain(changed).collect();
        let mut forecaster = Forecaster { most_waves, ..Forecaster::new(options) };
        houses.chunks(3).find_map(|group| {
            let group: Vec<&Survey> = group.iter().collect();
            let kept = forecaster.forecast_each(&group).expect("sound houses");
            let anew = forecast_each(&group, &options).expect("sound houses");
            (kept != anew).then(|| "what was kept changes what is told".into())
        })
    }

    #[test]
    fn what_is_kept_from_group_to_group_changes_nothing() {
        for most_waves in [0, 2_000, MOST_WAVES_KEPT] {
            let found = seeds::over_seeds(15, |seed| kept_and_anew(seed, most_waves).into_iter().collect());
            seeds::none(&found, &std::env::temp_dir(), houses::random::survey);
        }
    }
}
