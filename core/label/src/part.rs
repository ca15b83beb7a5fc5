//! Which kind of part the words, or else the bands, tell of.

use super::context::{Path, Placed, Role};
use super::doubt::Doubt;
use super::item::{Band, Item};
use super::kind::PartKind;
use super::vocabulary::Term;

/// Kinds in the order in which one is taken when words name several.
const ORDER: [PartKind; 14] = [
    PartKind::Amplifier,
    PartKind::EntryFilter,
    PartKind::HighPassFilter,
    PartKind::SatelliteCombiner,
    PartKind::Tap,
    PartKind::Splitter,
    PartKind::Attenuator,
    PartKind::WallPlate,
    PartKind::GroundBlock,
    PartKind::Terminator,
    PartKind::PowerInserter,
    PartKind::Barrel,
    PartKind::DcBlock,
    PartKind::Cable,
];

/// Lowest edge of a band that only a satellite part has, in megahertz. Common practice, no source.
const SATELLITE_FROM_MHZ: f64 = 800.0;

/// The kind of part, with a doubt if the words fit two.
pub(super) fn kind(items: &[Item], placed: &Placed, doubts: &mut Vec<Doubt>) -> Option<PartKind> {
    let has = |term| items.contains(&Item::Word(term));
    let mut named = named_kinds(items, placed);
    if named.is_empty() {
        let from_bands = kind_from_bands(placed, has(Term::Filter));
        doubts.extend(from_bands.map(|taken| Doubt::KindFromBands { taken }));
        named.extend(from_bands);
    }
    let taken = ORDER.into_iter().find(|kind| named.contains(kind))?;
    let other = ORDER
        .into_iter()
        .find(|kind| named.contains(kind) && *kind != taken && !goes_with(taken, *kind, placed));
    doubts.extend(other.map(|other| Doubt::KindUnclear { taken, other }));
    Some(if taken == PartKind::Splitter && is_for_satellite(placed, has(Term::Satellite)) {
        PartKind::SatelliteSplitter
    } else {
        taken
    })
}

fn named_kinds(items: &[Item], placed: &Placed) -> Vec<PartKind> {
    let has = |term| items.contains(&Item::Word(term));
    let counts = items.iter().any(|item| matches!(item, Item::Legs(..)));
    // Only a tap has a through path with a loss of its own.
    let has_through = placed.figures.iter().any(|figure| figure.role == Some(Role::Through));
    let is_tap = has(Term::Coupler) || has(Term::Tap) || has_through;
    let combines = has(Term::Combiner) && !has(Term::Splitter);
    let attenuates = has(Term::Attenuation)
        && !has(Term::Filter)
        && !counts
        && !is_tap
        && !placed.bands.iter().any(|band| band.path == Some(Path::Stop));
    let is_cable = items.iter().any(|item| matches!(item, Item::Series(_)));
    [
        (has(Term::Amplifier), PartKind::Amplifier),
        (has(Term::LowPass) || has(Term::Entry), PartKind::EntryFilter),
        (has(Term::Filter) && has(Term::Network) && !has(Term::HighPass), PartKind::EntryFilter),
        (has(Term::HighPass), PartKind::HighPassFilter),
        (has(Term::Diplexer) || (combines && has(Term::Satellite)), PartKind::SatelliteCombiner),
        (is_tap, PartKind::Tap),
        (has(Term::Splitter), PartKind::Splitter),
        (counts && !is_tap, PartKind::Splitter),
        (has(Term::Attenuator) || attenuates, PartKind::Attenuator),
        (has(Term::WallPlate), PartKind::WallPlate),
        (has(Term::GroundBlock), PartKind::GroundBlock),
        (has(Term::Terminator), PartKind::Terminator),
        (has(Term::Barrel), PartKind::Barrel),
        (has(Term::PowerInserter) || has(Term::Inserter), PartKind::PowerInserter),
        (has(Term::DcBlock), PartKind::DcBlock),
        (is_cable, PartKind::Cable),
    ]
    .into_iter()
    .filter_map(|(is_named, kind)| is_named.then_some(kind))
    .collect()
}

/// Whether a part of the first kind may well carry a word for the second: an amplifier that splits, a splitter
/// that asks for terminators. What names an amplifier and a tap, and no gain, may be a tap.
fn goes_with(taken: PartKind, other: PartKind, placed: &Placed) -> bool {
    match other {
        PartKind::Cable | PartKind::Terminator | PartKind::DcBlock => true,
        PartKind::GroundBlock => taken != PartKind::Tap,
        PartKind::Splitter | PartKind::PowerInserter => taken == PartKind::Amplifier,
        PartKind::Tap => taken == PartKind::Amplifier && names_gain(placed),
        PartKind::Barrel => matches!(taken, PartKind::WallPlate | PartKind::GroundBlock),
        _ => false,
    }
}

/// A filter by what it passes and stops; an amplifier by its gain or its two ways.
fn kind_from_bands(placed: &Placed, is_filter: bool) -> Option<PartKind> {
    let band = |path| {
        placed.bands.iter().filter(|band| band.path == Some(path)).find_map(|band| band.body.as_ref().ok())
    };
    let low = |band: &Band| band.low.unwrap_or(0.0);
    match (band(Path::Pass), band(Path::Stop)) {
        (Some(pass), Some(stop)) if low(stop) >= pass.high => Some(PartKind::EntryFilter),
        (Some(pass), Some(stop)) if low(pass) >= stop.high => Some(PartKind::HighPassFilter),
        (_, Some(stop)) if is_filter && low(stop) >= 1000.0 => Some(PartKind::EntryFilter),
        // Only an amplifier has a gain, or a band for each way.
        _ if !is_filter
            && (names_gain(placed) || (band(Path::Return).is_some() && placed.bands.len() > 1)) =>
        {
            Some(PartKind::Amplifier)
        }
        _ => None,
    }
}

/// Whether a figure is named a gain.
fn names_gain(placed: &Placed) -> bool {
    placed.figures.iter().any(|figure| figure.role == Some(Role::Gain) && figure.is_named)
}

fn is_for_satellite(placed: &Placed, has_word: bool) -> bool {
    let mut bands = placed.bands.iter().filter_map(|band| band.body.as_ref().ok()).peekable();
    if bands.peek().is_none() {
        return has_word && placed.bands.is_empty();
    }
    let names_network = placed.bands.iter().any(|band| band.path == Some(Path::Network));
    !names_network
        && bands.all(|band| band.low.is_some_and(|low| (SATELLITE_FROM_MHZ..1100.0).contains(&low)))
}

/// Whether any figure is named a tap's.
pub(super) fn has_tap_figure(placed: &Placed) -> bool {
    placed.figures.iter().any(|figure| figure.role == Some(Role::Tap))
}
