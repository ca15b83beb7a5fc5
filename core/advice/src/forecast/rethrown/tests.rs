//! Held against other ways to the same figures: the forecast's own draws, and each unknown tried at all that it may be.

use house::rating::{Band, EXTENDED_D};
use house::record::{LengthKnown, RunLength};

use super::super::again::What;
use super::super::outcome::CostAt;
use super::super::percentile::spread;
use super::super::run::forecast;
use super::*;
use crate::unknown::unknowns;
use crate::worklist::open;

/// As often as a house is drawn for it.
const OPTIONS: Options = Options { draws: 32, seed: 1, points: 89, settles: false };

/// So often is the whole estimate made, each time by draws of its own: how far those lie apart tells how far off they are.
const TIMES: u64 = 8;

/// So many values are tried of a length, and so often is all else drawn.
const VALUES: u32 = 12;
const OTHERWISE: u32 = 128;

/// What the unknowns of a house leave open, but for the series of a cable: a record cannot say that it lies between two.
fn open_in(survey: &Survey, forecast: &Forecast) -> Vec<Open> {
    let unknowns = unknowns(survey, forecast);
    unknowns.iter().filter_map(open).filter(|open| open.what != What::Series).collect()
}

/// The house with that known, at each of many values, and how likely each is: by its record alone.
fn known(survey: &Survey, open: Open) -> Vec<(Survey, f64)> {
    let (CostAt::Part(about) | CostAt::RunTo(about)) = open.at;
    let with = |change: &dyn Fn(&mut Survey)| {
        let mut house = survey.clone();
        change(&mut house);
        house
    };
    match open.what {
        What::Length => {
            let Some(run) = survey.wiring.feed(about).and_then(|feed| feed.run) else { return Vec::new() };
            let of = survey.runs[&run].length;
            let span = of.map_or(coax::estimates::house::UNKNOWN_RUN.span, |length| length.span());
            let at = |number: u32| span.quantile((f64::from(number) + 0.5) / f64::from(VALUES));
            let exactly = |metres: f64| RunLength {
                metres,
                low_metres: metres,
                high_metres: metres,
                known: LengthKnown::Measured,
            };
            let house =
                |number| with(&|house| house.runs.get_mut(&run).unwrap().length = Some(exactly(at(number))));
            (0..VALUES).map(|number| (house(number), 1.0 / f64::from(VALUES))).collect()
        }
        What::ByPass => {
            let read = survey.parts[&about].label.is_some() || survey.parts[&about].rating.band.is_some();
            let odds = if read { 0.1 } else { 0.3 };
            let house =
                |has| with(&|house| house.parts.get_mut(&about).unwrap().rating.moca_bypass = Some(has));
            vec![(house(true), odds), (house(false), 1.0 - odds)]
        }
        What::Label => {
            let whole = Band { low_mhz: 5.0, high_mhz: EXTENDED_D.high_mhz };
            let seems_whole = survey.parts[&about].rating.made_for_moca() == Some(true);
            let other = with(&|house| {
                let rating = &mut house.parts.get_mut(&about).unwrap().rating;
                (rating.band, rating.says_moca) =
                    ((!seems_whole).then_some(whole), rating.says_moca && !seems_whole);
            });
            vec![(survey.clone(), 0.5), (other, 0.5)]
        }
        What::Series => Vec::new(),
    }
}

/// The rates of a house in each of some draws, each house swept from its head as a forecast is.
fn drawn(survey: &Survey, placement: &Placement, draws: std::ops::Range<u64>) -> Vec<Vec<f64>> {
    let prepared = Prepared::of(survey, &OPTIONS).unwrap();
    let house = prepared.house.as_ref().expect("a bridge");
    let only = Candidates::new(vec![placement.clone()]);
    let mut sweep = Sweep::on(house.grid.clone());
    let rates = |draw| {
        let (_, tried) = house.try_out(&mut sweep, draw, &only).unwrap();
        tried.shown.pairs_at(&only, 0).flatten().map(|way| way.net.value()).collect()
    };
    draws.map(rates).collect()
}

/// A figure, and by how much it may be off for having been drawn so often: one standard error.
#[derive(Debug, Clone, Copy)]
struct Found {
    mean: f64,
    error: f64,
}

impl Found {
    fn of(values: &[f64]) -> Self {
        let count = values.len() as f64;
        let mean = values.iter().sum::<f64>() / count;
        let squares: f64 = values.iter().map(|value| (value - mean).powi(2)).sum();
        Self { mean, error: (squares / (count - 1.0) / count).sqrt() }
    }

    /// By how many standard errors of both it lies above another.
    fn above(self, other: Self) -> f64 {
        (self.mean - other.mean) / self.error.hypot(other.error).max(1e-9)
    }
}

/// The variance over all that an unknown may be, while all else stays as it is drawn; the mean of that over other draws of all
/// else than the estimate takes: for each way.
fn nested(survey: &Survey, placement: &Placement, open: Open) -> Vec<Found> {
    let draws = 5_000..5_000 + u64::from(OTHERWISE);
    let house = |(house, likely): &(Survey, f64)| (drawn(house, placement, draws.clone()), *likely);
    let houses: Vec<(Vec<Vec<f64>>, f64)> = known(survey, open).iter().map(house).collect();
    let ways = houses.first().and_then(|(draws, _)| draws.first()).map_or(0, Vec::len);
    let variance = |draw: usize, way: usize| {
        let mean: f64 = houses.iter().map(|(draws, likely)| likely * draws[draw][way]).sum();
        houses.iter().map(|(draws, likely)| likely * (draws[draw][way] - mean).powi(2)).sum::<f64>()
    };
    let over_draws = |way| (0..OTHERWISE as usize).map(|draw| variance(draw, way)).collect::<Vec<_>>();
    (0..ways).map(|way| Found::of(&over_draws(way))).collect()
}

/// The same as the program estimates it, over several seeds.
fn estimated(survey: &Survey, forecast: &Forecast, open: &[Open]) -> Vec<Vec<Found>> {
    let variances = |rooms: &Vec<Moved>| -> Vec<f64> {
        rooms.iter().flat_map(|room| [room.down.variance(), room.up.variance()]).collect()
    };
    let times = (1..=TIMES).map(|seed| {
        let options = Options { seed, ..OPTIONS };
        let moved = total_effects(survey, forecast, open, &options, &mut || true).expect("a sound house");
        moved.iter().map(variances).collect::<Vec<_>>()
    });
    let times: Vec<Vec<Vec<f64>>> = times.collect();
    let of_way =
        |unknown: usize, way| Found::of(&times.iter().map(|time| time[unknown][way]).collect::<Vec<_>>());
    (0..open.len())
        .map(|unknown| (0..times[0][unknown].len()).map(|way| of_way(unknown, way)).collect())
        .collect()
}

/// What each unknown of a house moves on each way: as estimated, and by all that it may be.
fn both(survey: &Survey) -> Vec<Vec<[Found; 2]>> {
    let forecast = forecast(survey, &OPTIONS).expect("a sound house");
    let mut open = open_in(survey, &forecast);
    open.truncate(5);
    let prepared = Prepared::of(survey, &OPTIONS).unwrap();
    let Some(house) = &prepared.house else { return Vec::new() };
    let Some(placement) = placement_of(house, &forecast, 8, &mut || true).unwrap() else { return Vec::new() };
    let estimated = estimated(survey, &forecast, &open);
    let pairs = open.into_iter().zip(estimated).filter(|(_, ways)| !ways.is_empty());
    let of = |(open, ways): (Open, Vec<Found>)| {
        ways.into_iter().zip(nested(survey, &placement, open)).map(|(one, other)| [one, other]).collect()
    };
    pairs.map(of).collect()
}

fn houses_to_try() -> Vec<Survey> {
    let random = [14, 20, 30, 31, 33, 35, 39].map(houses::random::survey);
    random.into_iter().chain([houses::old(20)]).collect()
}

/// A network of 2.5 with an adapter of 1.1 in it: to that the beacon's place matters, too.
fn mixed() -> Survey {
    let house = houses::change_cases::house(houses::change_cases::FAR);
    house
        .outlet("O3", "Den")
        .plugged(&[])
        .adapter("1.1")
        .from("F1", 1)
        .over_guessed(house::record::CableKind::Six, 20.0, LengthKnown::Guessed)
        .survey()
}

/// Within what drawing so often leaves open the estimate is that of trying each unknown at all that it may be, and it puts them
/// in the same order.
#[test]
fn what_each_moves_is_what_trying_all_that_it_may_be_gives() {
    let (mut looked_at, mut sure, mut ordered) = (0, 0, 0);
    for (at, survey) in houses_to_try().iter().enumerate() {
        let unknowns = both(survey);
        for (number, ways) in unknowns.iter().enumerate() {
            for [found, known] in ways {
                let said = format!("house {at}, unknown {number}: {found:?} for {known:?}");
                // Some hundred are looked at: more than 4.5 standard errors are no chance.
                assert!(found.above(*known).abs() < 4.5, "{said}");
                looked_at += 1;
                if found.error < 0.15 * found.mean && known.error < 0.15 * known.mean && known.mean > 1.0 {
                    assert!((0.8..1.25).contains(&(found.mean / known.mean).sqrt()), "{said}");
                    sure += 1;
                }
            }
        }
        for way in 0..unknowns.first().map_or(0, Vec::len) {
            let pairs = unknowns.iter().flat_map(|one| unknowns.iter().map(move |other| (one, other)));
            for (one, other) in pairs {
                let ([found, known], [found_other, known_other]) = (one[way], other[way]);
                if known.mean > 4.0 && known.above(known_other) > 4.0 {
                    let said = format!("house {at}, way {way}: {found:?} {found_other:?}");
                    assert!(found.mean > found_other.mean, "{said}");
                    ordered += 1;
                }
            }
        }
    }
    assert!(looked_at > 100 && sure > 10 && ordered > 40, "{looked_at} {sure} {ordered}");
}

/// The house as it is thrown is the forecast's, draw by draw, on its channels; and whichever way it is solved, the same comes of
/// it, as it is and with each unknown thrown again.
#[test]
fn what_is_thrown_first_is_the_forecast_itself() {
    let (mut rooms, mut hops) = (0, 0);
    for survey in houses_to_try().into_iter().chain([mixed()]) {
        let told = forecast(&survey, &OPTIONS).expect("a sound house");
        let prepared = Prepared::of(&survey, &OPTIONS).unwrap();
        let house = prepared.house.as_ref().expect("a bridge");
        let Some(placement) = placement_of(house, &told, OPTIONS.draws.into(), &mut || true).unwrap() else {
            continue;
        };
        let channels = |of: &Placement| of.channels().to_vec();
        let candidates = house.may_run().candidates();
        let alike = candidates.placements().iter().filter(|one| channels(one) == channels(&placement));
        hops += usize::from(alike.count() > 1);
        let open = open_in(&survey, &told);
        let again: Vec<_> = open.iter().map(|open| Again::of(&house.circuit, *open)).collect();
        let seen = Seen::of(house, &again).unwrap();
        let mut tools = (Branches::on(house.grid.clone()), Sweep::on(house.grid.clone()));
        let mut draws = Vec::new();
        for draw in 0..OPTIONS.draws.into() {
            let mut looked =
                |seen| Looked { house, seen, placement: &placement }.draw(&mut tools, draw, &again).unwrap();
            let (one, other) = (looked(seen.as_ref()), looked(None));
            let all = |drawn: &Drawn| -> Vec<f64> {
                let again = drawn.again.iter().flat_map(|(rates, _)| rates);
                drawn.as_thrown.iter().chain(again).flatten().copied().collect()
            };
            for (one, other) in all(&one).iter().zip(all(&other)) {
                assert!((one - other).abs() < 1e-6 * one.max(1.0), "{one} {other}");
            }
            draws.push(one.as_thrown);
        }
        for (at, room) in house.rooms.iter().enumerate() {
            let path = told.path(room.outlet).expect("it is reached");
            for (way, told) in [path.down, path.up].into_iter().enumerate() {
                let rates = spread(draws.iter().map(|draw| draw[at][way]).collect());
                let ends = [(rates.low, told.low), (rates.likely, told.likely), (rates.high, told.high)];
                for (one, other) in ends {
                    assert!((one - other).abs() < 1e-6 * other.max(1.0), "{one} for {other}");
                }
            }
            rooms += 1;
        }
    }
    assert!(rooms > 20 && hops > 0, "{rooms} {hops}");
}
