//! Where the loss of a path arises, along the way.

use coax::{Dice, Megahertz, ScatterMatrix};

use super::circuit::Circuit;
use super::outcome::Cost;
use super::way::OnWay;

/// Of the draws, in order of their loss, those from this share to that are about the median.
const ABOUT_MEDIAN: (f64, f64) = (0.4, 0.6);

/// What each run and part on a way costs in the draws about the median; together they are `median`, the loss of the whole in
/// dB. The part where the way turns from up to down bears what remains of each draw's loss: through its isolation and every
/// echo. `losses` has the loss of each draw, and `throw` the dice of a draw for a key.
pub(super) fn along(
    circuit: &Circuit,
    way: &[OnWay],
    losses: &[f64],
    median: f64,
    at: Megahertz,
    throw: impl Fn(u64, [u8; 16]) -> Dice,
) -> Vec<Cost> {
    let mut costs: Vec<Cost> = Vec::new();
    for draw in about_median(losses) {
        let own: Vec<f64> =
            way.iter().map(|step| own_loss(circuit, *step, at, |key| throw(draw, key))).collect();
        let turn = way.iter().position(|step| step.turns());
        let others: f64 =
            own.iter().enumerate().filter(|(place, _)| Some(*place) != turn).map(|(_, db)| db).sum();
        let whole = usize::try_from(draw).ok().and_then(|draw| losses.get(draw)).copied().unwrap_or(median);
        for (place, (step, own)) in way.iter().zip(own).enumerate() {
            let db = if Some(place) == turn { whole - others } else { own };
            let at = circuit.place_of(*step);
            match costs.iter_mut().find(|cost| cost.at == at) {
                Some(cost) => cost.db += db,
                None => costs.push(Cost { at, db }),
            }
        }
    }
    let sum: f64 = costs.iter().map(|cost| cost.db).sum();
    if sum > 0.0 {
        for cost in &mut costs {
            cost.db *= median / sum;
        }
    }
    costs
}

fn about_median(losses: &[f64]) -> Vec<u64> {
    let mut order: Vec<(f64, u64)> = losses.iter().copied().zip(0..).collect();
    order.sort_by(|(a, _), (b, _)| a.total_cmp(b));
    let count = order.len() as f64;
    let within = |place: usize| {
        let share = (place as f64 + 0.5) / count;
        (ABOUT_MEDIAN.0..=ABOUT_MEDIAN.1).contains(&share)
    };
    let middle: Vec<_> =
        order.iter().enumerate().filter(|(place, _)| within(*place)).map(|(_, at)| at.1).collect();
    if middle.is_empty() { order.get(order.len() / 2).map(|at| at.1).into_iter().collect() } else { middle }
}

fn own_loss(circuit: &Circuit, step: OnWay, at: Megahertz, throw: impl Fn([u8; 16]) -> Dice) -> f64 {
    let Some(Ok(model)) = circuit.model_of(step, throw) else { return 0.0 };
    let mut matrix = ScatterMatrix::new(model.ports());
    model.scatter(at, &mut matrix);
    if step.entered.max(step.left) >= model.ports() {
        return 0.0;
    }
    -20.0 * matrix.at(step.left, step.entered).norm().log10()
}
