//! Puts the reading together: kind, counts, bands, figures and marks.

use coax::Decibels;

use super::context::{Path, Placed, PlacedFigure, Role};
use super::doubt::{Doubt, Quantity};
use super::figure::add_once;
use super::item::{Item, Lost};
use super::kind::{PartKind, PowerPass};
use super::losses::{Found, guaranteed, read_leg_losses};
use super::part;
use super::rated_band::read_bands;
use super::reading::LabelReading;
use super::usual::{LARGEST_DB, is_usual};
use super::vocabulary::Term;

/// The most doubts that a reading tells.
const MOST_DOUBTS: usize = 24;
/// The most that a through path or a filter loses where it passes, in decibels; more is something else.
const MOST_THROUGH_LOSS_DB: f64 = 5.0;

/// No amplifier is sold with less forward gain, in decibels. Common practice, no source.
const LEAST_GAIN_DB: f64 = 1.0;

/// The reading of a label's items.
pub(super) fn assemble(items: &[Item], placed: &Placed) -> LabelReading {
    let mut reading = LabelReading::default();
    reading.kind = part::kind(items, placed, &mut reading.doubts);
    read_counts(items, &mut reading);
    read_bands(items, placed, &mut reading);
    read_figures(placed, &mut reading);
    if reading.kind.is_some_and(|kind| kind != PartKind::Cable) {
        let bare = placed.bare.iter().map(|written| Doubt::FigureUnplaced { written: written.clone() });
        add_once(&mut reading.doubts, bare);
    }
    read_marks(items, &mut reading);
    reading.doubts.truncate(MOST_DOUBTS);
    reading
}

fn read_counts(items: &[Item], reading: &mut LabelReading) {
    let mut is_lost = false;
    for item in items {
        match item {
            Item::Lost(Lost::Count, doubt) => {
                is_lost = true;
                add_once(&mut reading.doubts, [doubt.clone()]);
            }
            Item::Lost(Lost::Unknown, doubt) => add_once(&mut reading.doubts, [doubt.clone()]),
            Item::Legs(count, doubts) if !is_lost => match reading.legs {
                Some(first) if first != *count => {
                    add_once(&mut reading.doubts, [Doubt::LegCountsDiffer { first, second: *count }]);
                    is_lost = true;
                }
                _ => {
                    reading.legs = Some(*count);
                    add_once(&mut reading.doubts, doubts.iter().cloned());
                }
            },
            _ => {}
        }
    }
    if is_lost {
        reading.legs = None;
    }
    let passing = items.iter().filter_map(|item| match item {
        Item::Lost(Lost::PassingCount, doubt) => Some(doubt.clone()),
        _ => None,
    });
    if reading.legs.is_none() {
        add_once(&mut reading.doubts, passing);
    }
}

/// Whether a figure is a gain that is not the return path's.
fn is_forward_gain(place: &PlacedFigure) -> bool {
    let lifts = place.body.as_ref().is_ok_and(|figure| !figure.minus);
    lifts && matches!(place.role, None | Some(Role::Gain | Role::Port)) && place.path != Some(Path::Return)
}

/// Whether a figure behind the return path's word or band is that path's: one that no forward gain could be, or where
/// the forward path has its own. Else it may as well be the amplifier's only gain.
fn is_return_gain(place: &PlacedFigure, has_forward_gain: bool) -> bool {
    let loses = place.body.as_ref().is_ok_and(|figure| figure.minus || figure.size < LEAST_GAIN_DB);
    loses || has_forward_gain
}

/// What a figure is taken for, and whether a word, its sign or its place says so.
enum Taken {
    As(Quantity),
    Assumed(Quantity),
    Unplaced,
    PassedOver,
}

fn read_figures(placed: &Placed, reading: &mut LabelReading) {
    let mut found: Vec<(Quantity, Found)> = Vec::new();
    let mut lost = Vec::new();
    let has_forward_gain = placed.figures.iter().any(is_forward_gain);
    for place in &placed.figures {
        let taken = taken_for(place, placed, reading.kind, has_forward_gain);
        match (&place.body, taken) {
            (_, Taken::PassedOver) => {}
            (Err(doubt), taken) => {
                add_once(&mut reading.doubts, [doubt.clone()]);
                match taken {
                    Taken::As(what) | Taken::Assumed(what) => lost.push(what),
                    // Which figure is missing is not known, so none of those that places settle is safe.
                    _ => lost.extend([Quantity::Loss, Quantity::Tap, Quantity::Gain]),
                }
            }
            (Ok(figure), Taken::As(what)) => found.push((what, (place, figure))),
            (Ok(figure), Taken::Assumed(what)) => {
                add_once(
                    &mut reading.doubts,
                    [Doubt::FigureAssumed { what, written: figure.written.clone() }],
                );
                found.push((what, (place, figure)));
            }
            (Ok(figure), Taken::Unplaced) => {
                add_once(&mut reading.doubts, [Doubt::FigureUnplaced { written: figure.written.clone() }]);
            }
        }
    }
    let of = |what: Quantity| -> Vec<Found> {
        found.iter().filter(|(of, _)| *of == what).map(|(_, found)| *found).collect()
    };
    let mut doubts = std::mem::take(&mut reading.doubts);
    let mut one =
        |what: Quantity| (!lost.contains(&what)).then(|| one_figure(&of(what), what, &mut doubts)).flatten();
    reading.tap = one(Quantity::Tap);
    reading.gain = one(Quantity::Gain);
    reading.return_gain = one(Quantity::ReturnGain);
    reading.rejection = one(Quantity::Rejection);
    reading.isolation = one(Quantity::Isolation);
    reading.return_loss = one(Quantity::ReturnLoss);
    let is_split = reading.kind.is_none_or(PartKind::splits);
    if !is_split {
        reading.leg_losses = one(Quantity::Loss).into_iter().collect();
    }
    reading.doubts = doubts;
    if is_split {
        read_leg_losses(&of(Quantity::Loss), lost.contains(&Quantity::Loss), placed, reading);
    }
}

fn taken_for(place: &PlacedFigure, placed: &Placed, kind: Option<PartKind>, has_forward_gain: bool) -> Taken {
    let is_amplifier = kind == Some(PartKind::Amplifier);
    let in_return = place.path == Some(Path::Return);
    match place.role {
        _ if place.is_unclear => Taken::Unplaced,
        Some(Role::Unmeasured | Role::Shielding | Role::Apart | Role::PassivePort) => Taken::PassedOver,
        Some(Role::Unsure) => Taken::Unplaced,
        Some(Role::ReturnGain) => Taken::As(Quantity::ReturnGain),
        Some(Role::Tap) => Taken::As(Quantity::Tap),
        Some(Role::Isolation) => Taken::As(Quantity::Isolation),
        Some(Role::ReturnLoss) => Taken::As(Quantity::ReturnLoss),
        Some(Role::Rejection) if kind == Some(PartKind::Attenuator) => Taken::As(Quantity::Loss),
        Some(Role::Rejection) => Taken::As(Quantity::Rejection),
        Some(Role::Gain) if in_return && place.path_is_near => return_gain(place, has_forward_gain),
        Some(Role::Gain) if in_return && has_forward_gain => Taken::Assumed(Quantity::ReturnGain),
        Some(Role::Gain) if in_return => Taken::Assumed(Quantity::Gain),
        Some(Role::Gain) => Taken::As(Quantity::Gain),
        Some(Role::Loss | Role::Through) if is_amplifier => Taken::Unplaced,
        Some(Role::Port) if is_amplifier && !place.outputs.is_empty() => Taken::Unplaced,
        Some(Role::Loss | Role::Port | Role::Through) if !is_amplifier => Taken::As(Quantity::Loss),
        _ => taken_by_place(place, placed, kind, has_forward_gain),
    }
}

fn return_gain(place: &PlacedFigure, has_forward_gain: bool) -> Taken {
    if is_return_gain(place, has_forward_gain) { Taken::As(Quantity::ReturnGain) } else { Taken::Unplaced }
}

/// What a figure without a word is, by the kind of part, its path and its size.
fn taken_by_place(
    place: &PlacedFigure,
    placed: &Placed,
    kind: Option<PartKind>,
    has_forward_gain: bool,
) -> Taken {
    // One that cannot be read counts as small: it then spoils what it would most likely have been.
    let (size, minus, has_unit) =
        place.body.as_ref().map_or((0.0, false, true), |f| (f.size, f.minus, f.has_unit));
    let is_small = size <= MOST_THROUGH_LOSS_DB;
    match kind {
        _ if !has_unit && !is_usual(Quantity::Loss, size) => Taken::PassedOver,
        _ if !has_unit && !kind.is_some_and(PartKind::splits) => Taken::Unplaced,
        Some(PartKind::Amplifier) => match place.path {
            Some(Path::Return) if place.path_is_near => return_gain(place, has_forward_gain),
            Some(Path::Return) if has_forward_gain => Taken::Assumed(Quantity::ReturnGain),
            Some(Path::Return) => Taken::Assumed(Quantity::Gain),
            _ if minus => Taken::Unplaced,
            _ => Taken::As(Quantity::Gain),
        },
        Some(kind) if kind.splits() => Taken::As(Quantity::Loss),
        _ if place.path == Some(Path::Stop) && is_usual(Quantity::Rejection, size) => {
            if place.path_is_near {
                Taken::As(Quantity::Rejection)
            } else {
                Taken::Assumed(Quantity::Rejection)
            }
        }
        Some(PartKind::Tap) if part::has_tap_figure(placed) && is_small => Taken::Assumed(Quantity::Loss),
        Some(PartKind::Tap) if !part::has_tap_figure(placed) => Taken::Assumed(Quantity::Tap),
        Some(PartKind::Attenuator) => Taken::As(Quantity::Loss),
        Some(kind) if kind.has_one_way_through() && is_small => Taken::Assumed(Quantity::Loss),
        Some(PartKind::EntryFilter | PartKind::HighPassFilter) if is_usual(Quantity::Rejection, size) => {
            Taken::Assumed(Quantity::Rejection)
        }
        None if minus => Taken::As(Quantity::Loss),
        _ => Taken::Unplaced,
    }
}

/// The one figure for a thing; nothing, with a doubt, if there are two, or if it is unusual and no word before
/// it says what it is.
fn one_figure(found: &[Found], what: Quantity, doubts: &mut Vec<Doubt>) -> Option<Decibels> {
    let is_signed = matches!(what, Quantity::Gain | Quantity::ReturnGain);
    let found = guaranteed(found, what, doubts);
    let value = |(_, figure): &Found| if figure.minus && is_signed { -figure.size } else { figure.size };
    let usual: Vec<Found> =
        found.into_iter().filter(|found| found.1.has_unit || is_usual(what, value(found))).collect();
    let first = usual.first()?;
    if let Some(second) = usual.iter().find(|other| (value(other) - value(first)).abs() > 1e-9) {
        add_once(doubts, [Doubt::TwoFigures { what, first: value(first), second: value(second) }]);
        return None;
    }
    let (place, figure) = first;
    if !is_usual(what, value(first)) {
        if !place.is_named || figure.size > LARGEST_DB {
            add_once(doubts, [Doubt::FigureUnplaced { written: figure.written.clone() }]);
            return None;
        }
        add_once(doubts, [Doubt::FigureUnusual { what, figure: value(first) }]);
    }
    for (_, figure) in &usual {
        add_once(doubts, figure.doubts.iter().cloned());
    }
    if !figure.has_unit {
        add_once(doubts, [Doubt::DecibelsWithoutUnit { written: figure.written.clone() }]);
    }
    Some(Decibels(value(first)))
}

/// Direct current, the home network, indoor use, the jacket.
fn read_marks(items: &[Item], reading: &mut LabelReading) {
    let is_filter = matches!(reading.kind, Some(PartKind::EntryFilter | PartKind::HighPassFilter));
    let is_cable = reading.kind == Some(PartKind::Cable);
    let mut before = None;
    for item in items {
        let is_denied = before == Some(&Item::Word(Term::No));
        match item {
            Item::Power(power) => read_power(*power, reading),
            Item::Word(Term::Network) if !is_filter => reading.says_moca = Some(!is_denied),
            Item::Word(Term::NetworkBypass) if !is_filter => reading.moca_bypass = Some(!is_denied),
            Item::Word(Term::PassivePort) => reading.modem_port = Some(!is_denied),
            Item::Word(Term::IndoorOnly) => reading.indoor_only = Some(true),
            Item::Series(series) if is_cable => reading.cable = Some(*series),
            _ => {}
        }
        before = Some(item);
    }
    let says_passive = items.contains(&Item::Word(Term::Passive));
    if says_passive && reading.moca_bypass == Some(true) && reading.modem_port.is_none() {
        add_once(&mut reading.doubts, [Doubt::PassiveUnclear]);
    }
    let contradicts = |doubt: &Doubt| *doubt == Doubt::PowerPassUnclear;
    if reading.doubts.iter().any(contradicts) {
        reading.power_pass = None;
    }
}

fn read_power(power: PowerPass, reading: &mut LabelReading) {
    reading.power_pass = match (reading.power_pass, power) {
        (Some(before), power) if before.passes() != power.passes() => {
            add_once(&mut reading.doubts, [Doubt::PowerPassUnclear]);
            Some(before)
        }
        (Some(PowerPass::OneLeg), PowerPass::OneLeg) => Some(PowerPass::Stated),
        (None | Some(PowerPass::Stated), power) | (Some(power), PowerPass::Stated) => Some(power),
        (Some(PowerPass::AllLegs), PowerPass::AllLegs) => Some(PowerPass::AllLegs),
        (Some(before), power) if before == power => Some(before),
        _ => {
            add_once(&mut reading.doubts, [Doubt::PowerPassUnclear]);
            Some(power)
        }
    };
}
