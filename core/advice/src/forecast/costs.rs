//! Where the loss of a path arises, along the way.

use coax::link::Placement;
use coax::{Dice, FrequencyGrid, Megahertz, ScatterMatrix};
use facts::fact::SubjectId;
use house::rating::EXTENDED_D;
use house::record::{Part, Survey};

use super::outcome::{Cost, CostAt};
use super::pieces;
use super::run::{Solved, mean_loss};

/// The likely loss of each run and part on the way from one outlet to another, the bend (the part where the way turns
/// from up to down) bearing what remains of the whole: through its isolation and every echo.
pub(super) fn along(
    survey: &Survey,
    likely: &Solved,
    from: SubjectId,
    to: SubjectId,
    placement: &Placement,
    grid: &FrequencyGrid,
) -> Vec<Cost> {
    let Some(way) = survey.wiring.way_between(from, to) else { return Vec::new() };
    let total = mean_loss(grid.frequencies(), &likely.power(from, to), placement);
    let up = survey.wiring.way_up(from);
    let Some(bend) = way.iter().copied().rfind(|id| up.contains(id)) else { return Vec::new() };
    let mut costs = Vec::new();
    let middle = Megahertz(f64::midpoint(placement.low().value(), placement.high().value()));
    let mut bend_at = 0;
    for (place, id) in way.iter().copied().enumerate() {
        let Some(part) = survey.parts.get(&id) else { continue };
        let before = place.checked_sub(1).and_then(|place| way.get(place)).copied();
        let after = way.get(place + 1).copied();
        if id == bend {
            // Coming down from the bend, a run stands before its part; going up, behind it.
            bend_at = costs.len();
            costs.push(Cost { at: CostAt::Part(id), db: 0.0 });
            continue;
        }
        let rising = up.contains(&id);
        let house_side = if rising { before } else { after };
        let port = house_side.and_then(|child| survey.wiring.feed(child)).map_or(1, |feed| feed.port);
        let own = Cost { at: CostAt::Part(id), db: part_loss(survey, part, port, middle) };
        let run = Cost { at: CostAt::RunTo(id), db: run_loss(survey, part, middle) };
        costs.extend(if rising { [own, run] } else { [run, own] });
    }
    let rest = total - costs.iter().map(|cost| cost.db).sum::<f64>();
    if let Some(cost) = costs.get_mut(bend_at) {
        cost.db = rest;
    }
    costs
}

fn part_loss(survey: &Survey, part: &Part, port: u8, at: Megahertz) -> f64 {
    through(&pieces::in_band(part, EXTENDED_D), usize::from(port), at, survey.dice_key(part.id))
}

fn run_loss(survey: &Survey, part: &Part, at: Megahertz) -> f64 {
    let run = survey.wiring.feed(part.id).and_then(|feed| survey.runs.get(&feed.run?));
    through(&pieces::of_run(run), 1, at, survey.dice_key(part.id))
}

fn through(piece: &pieces::Rated, port: usize, at: Megahertz, key: [u8; 16]) -> f64 {
    let Ok(model) = piece.draw(&mut Dice::likely(key)) else { return 0.0 };
    let mut matrix = ScatterMatrix::new(model.ports());
    model.scatter(at, &mut matrix);
    if port >= model.ports() {
        return 0.0;
    }
    -20.0 * matrix.at(port, 0).norm().log10()
}
