//! The loss of each leg.

use coax::Decibels;

use super::context::{Placed, PlacedFigure};
use super::count::MOST_OUTPUTS;
use super::doubt::{Doubt, Quantity};
use super::figure::add_once;
use super::item::{Figure, Standing};
use super::reading::LabelReading;
use super::usual::unusual_loss;

/// A loss without a minus or a word that is not within these, in decibels, is not taken for one.
pub(super) const UNMARKED_LOSS_DB: std::ops::RangeInclusive<f64> = 2.0..=20.0;

/// A figure with where it stands.
pub(super) type Found<'p> = (&'p PlacedFigure, &'p Figure);

/// Reads the losses of a splitter's legs.
pub(super) fn read_leg_losses(found: &[Found], is_lost: bool, placed: &Placed, reading: &mut LabelReading) {
    if is_lost || found.is_empty() {
        return;
    }
    let found = guaranteed(found, Quantity::Loss, &mut reading.doubts);
    let found = of_lowest_band(found, placed, &mut reading.doubts);
    let found = without_strays(found, reading.legs, &mut reading.doubts);
    let Some(losses) = by_leg(&found, reading.legs, &mut reading.doubts) else { return };
    let is_marked = found.iter().any(|(place, figure)| figure.minus || place.is_named);
    let stray = losses.iter().any(|loss| !UNMARKED_LOSS_DB.contains(loss));
    let unusual = unusual_loss(&losses);
    if !is_marked && stray {
        add_once(&mut reading.doubts, unplaced(&found));
        return;
    }
    for (_, figure) in &found {
        add_once(&mut reading.doubts, figure.doubts.iter().cloned());
        if !figure.has_unit {
            add_once(&mut reading.doubts, [Doubt::DecibelsWithoutUnit { written: figure.written.clone() }]);
        }
    }
    let legs = u8::try_from(losses.len()).unwrap_or(u8::MAX);
    if legs == 1 && reading.legs.is_none() {
        add_once(&mut reading.doubts, losses.first().map(|&loss| Doubt::LegsNotStated { loss }));
    } else if let Some(loss) = unusual {
        add_once(&mut reading.doubts, [Doubt::LossUnusual { legs, loss }]);
    }
    reading.leg_losses = losses.into_iter().map(Decibels).collect();
}

/// Without the numbers that go on a list but have no unit, where with them it is none that a splitter has and without
/// them it is one.
fn without_strays<'p>(found: Vec<Found<'p>>, legs: Option<u8>, doubts: &mut Vec<Doubt>) -> Vec<Found<'p>> {
    let is_usual = |found: &[Found]| {
        let losses = by_leg(found, legs, &mut Vec::new());
        losses.is_some_and(|losses| unusual_loss(&losses).is_none())
    };
    let (strays, others): (Vec<Found>, Vec<Found>) =
        found.iter().copied().partition(|(_, figure)| figure.is_listed);
    if strays.is_empty() || is_usual(&found) || others.len() > 1 || !is_usual(&others) {
        return found;
    }
    let Some(losses) = by_leg(&found, legs, &mut Vec::new()) else { return found };
    if legs.is_none_or(|legs| losses.len() != usize::from(legs)) {
        return found;
    }
    add_once(doubts, unplaced(&strays));
    others
}

/// Without the typical figures where there are guaranteed ones.
pub(super) fn guaranteed<'p>(found: &[Found<'p>], what: Quantity, doubts: &mut Vec<Doubt>) -> Vec<Found<'p>> {
    let has = |standing| found.iter().any(|(_, figure)| figure.standing == standing);
    if !(has(Standing::Typical) && has(Standing::Guaranteed)) {
        return found.to_vec();
    }
    add_once(doubts, [Doubt::GuaranteedTaken { what }]);
    found.iter().copied().filter(|(_, figure)| figure.standing != Standing::Typical).collect()
}

/// Where losses are stated band by band, those of the lowest.
fn of_lowest_band<'p>(found: Vec<Found<'p>>, placed: &Placed, doubts: &mut Vec<Doubt>) -> Vec<Found<'p>> {
    let low = |place: &PlacedFigure| {
        let band = placed.bands.get(place.band?)?.body.as_ref().ok()?;
        Some((band.low.unwrap_or(0.0), band.high, band.written.clone()))
    };
    let bands: Vec<_> = found.iter().filter_map(|(place, _)| low(place)).collect();
    let differs =
        |a: &(f64, f64, String), b: &(f64, f64, String)| (a.0 - b.0).abs() + (a.1 - b.1).abs() > 1e-9;
    let Some(lowest) = bands.iter().min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))).cloned()
    else {
        return found;
    };
    if !bands.iter().any(|band| differs(band, &lowest)) {
        return found;
    }
    add_once(doubts, [Doubt::LossByBand { taken: lowest.2.clone() }]);
    found.into_iter().filter(|(place, _)| low(place).is_some_and(|band| !differs(&band, &lowest))).collect()
}

/// One loss a leg; nothing, with a doubt, where legs and losses do not fit together.
fn by_leg(found: &[Found], legs: Option<u8>, doubts: &mut Vec<Doubt>) -> Option<Vec<f64>> {
    if found.iter().any(|(place, _)| !place.outputs.is_empty()) {
        let losses = by_number(found, legs);
        if losses.is_none() {
            add_once(doubts, [Doubt::OutputsIncomplete]);
        }
        return losses;
    }
    let losses: Vec<f64> = found.iter().map(|(_, figure)| figure.size).collect();
    let Some(legs) = legs else {
        if losses.len() > usize::from(MOST_OUTPUTS) {
            // Not one splitter's: a list of several, or no label.
            add_once(doubts, unplaced(found));
            return None;
        }
        return Some(losses);
    };
    let count = usize::from(legs);
    match losses[..] {
        [loss] => Some(vec![loss; count]),
        _ if losses.len() == count => Some(losses),
        [a, b] if legs == 3 && (2.0..=5.0).contains(&(a - b).abs()) => {
            add_once(doubts, [Doubt::UnbalancedAssumed { losses: listed(&losses) }]);
            let (less, more) = (a.min(b), a.max(b));
            Some(vec![less, more, more])
        }
        _ => {
            add_once(doubts, [Doubt::LegsDisagree { legs, losses: listed(&losses) }]);
            None
        }
    }
}

/// The losses of outputs that the label numbers, if every output from the first on has exactly one.
fn by_number(found: &[Found], legs: Option<u8>) -> Option<Vec<f64>> {
    let most = found.iter().flat_map(|(place, _)| place.outputs.iter().copied()).max()?;
    let count = legs.unwrap_or(most);
    if most > count || count < 2 {
        return None;
    }
    let mut losses: Vec<Option<f64>> = vec![None; usize::from(count)];
    for (place, figure) in found {
        if place.outputs.is_empty() {
            return None;
        }
        for output in &place.outputs {
            let loss = losses.get_mut(usize::from(*output).checked_sub(1)?)?;
            if loss.is_some_and(|loss| (loss - figure.size).abs() > 1e-9) {
                return None;
            }
            *loss = Some(figure.size);
        }
    }
    losses.into_iter().collect()
}

fn unplaced(found: &[Found]) -> Vec<Doubt> {
    found.iter().map(|(_, figure)| Doubt::FigureUnplaced { written: figure.written.clone() }).collect()
}

fn listed(losses: &[f64]) -> String {
    let written: Vec<String> = losses.iter().map(f64::to_string).collect();
    written.join(", ")
}
