//! Which of the bands on the label is the rated one, and what the others are.

use coax::Megahertz;

use super::band::FROM_DC_MHZ;
use super::context::{Path, Placed, PlacedBand};
use super::doubt::Doubt;
use super::figure::add_once;
use super::item::{Band, Item};
use super::kind::PartKind;
use super::reading::LabelReading;
use super::usual::is_edge;
use super::vocabulary::Term;

/// An unlabelled band of a filter at the entry that begins above this, in megahertz, is what it stops.
const STOPPED_FROM_MHZ: f64 = 1000.0;
/// No return band reaches higher, in megahertz (the extended splits of DOCSIS 4.0; from memory).
pub(super) const RETURN_UP_TO_MHZ: f64 = 684.0;
/// The band that a part is made for ends above this, in megahertz; only a return path's ends below. Common practice, no
/// source.
const LOWEST_OWN_EDGE_MHZ: f64 = 300.0;
/// A band that begins from here on has no cable TV in it, in megahertz.
const ABOVE_CABLE_TV_MHZ: f64 = 900.0;
/// Bands no further apart than this, in megahertz, adjoin.
const ADJOINING_WITHIN_MHZ: f64 = 10.0;
/// The least upper edge of a range without a unit or a word that is read as a band, in megahertz.
pub(super) const BARE_UPPER_EDGE_MHZ: f64 = 400.0;

/// Reads all bands and frequencies into the reading.
pub(super) fn read_bands(items: &[Item], placed: &Placed, reading: &mut LabelReading) {
    let has_evidence = reading.kind.is_some()
        || placed.figures.iter().any(|figure| figure.body.as_ref().is_ok_and(|f| f.has_unit));
    let bands: Vec<PlacedBand> =
        placed.bands.iter().filter(|band| keeps(band, placed, has_evidence)).cloned().collect();
    let mut sorted = Sorted::default();
    for band in bands {
        let path = settled_path(&band, reading.kind);
        let known = band.path.is_some();
        match band.body {
            Err(doubt) => {
                sorted.lost.push(path);
                add_once(&mut reading.doubts, [doubt]);
            }
            Ok(band) => sorted.bands.push((path, known, band)),
        }
    }
    if reading.kind == Some(PartKind::Amplifier) {
        sorted.part_the_paths(&mut reading.doubts);
    }
    sorted.leave_out_strays(reading.kind, &mut reading.doubts);
    if sorted.of(None).is_empty() && reading.kind != Some(PartKind::Amplifier) {
        // The home network's band alone is the rated band.
        for band in &mut sorted.bands {
            band.0 = band.0.filter(|path| *path != Path::Network);
        }
    }
    let main = sorted.one(None, &mut reading.doubts);
    set(&mut reading.low, &mut reading.high, main.as_ref());
    let stop = sorted.one(Some(Path::Stop), &mut reading.doubts);
    set(&mut reading.stop_low, &mut reading.stop_high, stop.as_ref());
    let back = sorted.one(Some(Path::Return), &mut reading.doubts);
    set(&mut reading.return_low, &mut reading.return_high, back.as_ref());
    let satellite = sorted.one(Some(Path::Satellite), &mut reading.doubts);
    set(&mut reading.satellite_low, &mut reading.satellite_high, satellite.as_ref());
    read_frequencies(items, &sorted, reading);
}

fn set(low: &mut Option<Megahertz>, high: &mut Option<Megahertz>, band: Option<&Band>) {
    if let Some(band) = band {
        *low = band.low.map(Megahertz);
        *high = Some(Megahertz(band.high));
    }
}

/// Whether a band counts: one without a unit only with a word beside it, or with usual edges on a label that is
/// one of a part, and never with letters for digits.
fn keeps(band: &PlacedBand, placed: &Placed, has_evidence: bool) -> bool {
    let Ok(found) = &band.body else { return true };
    if found.has_unit {
        return true;
    }
    let others = placed.bands.iter().filter_map(|other| other.body.as_ref().ok()).any(|other| other.has_unit);
    let has_usual_edges =
        found.low.is_some_and(|low| is_edge(low) || low <= FROM_DC_MHZ) && is_edge(found.high);
    let has_letters = found.doubts.iter().any(|doubt| matches!(doubt, Doubt::LettersForDigits { .. }));
    !has_letters
        && has_usual_edges
        && (band.path.is_some() || (has_evidence && !others && found.high >= BARE_UPPER_EDGE_MHZ))
}

/// A band's path where the kind of part settles it; none is the rated band.
fn settled_path(band: &PlacedBand, kind: Option<PartKind>) -> Option<Path> {
    let above = band.body.as_ref().is_ok_and(|band| band.low.is_some_and(|low| low >= STOPPED_FROM_MHZ));
    match (kind, band.path) {
        (Some(PartKind::EntryFilter), None | Some(Path::Network)) if above => Some(Path::Stop),
        (_, Some(Path::Pass | Path::Forward | Path::Terrestrial)) => None,
        (Some(PartKind::SatelliteCombiner), None) if above_terrestrial(band) => Some(Path::Satellite),
        (kind, Some(Path::Satellite)) if kind != Some(PartKind::SatelliteCombiner) => None,
        (_, path) => path,
    }
}

fn above_terrestrial(band: &PlacedBand) -> bool {
    band.body.as_ref().is_ok_and(|band| band.low.is_some_and(|low| low >= ABOVE_CABLE_TV_MHZ))
}

/// Bands by path: the path, whether a word named it, the band.
#[derive(Default)]
struct Sorted {
    bands: Vec<(Option<Path>, bool, Band)>,
    /// Paths of which a band cannot be read.
    lost: Vec<Option<Path>>,
}

impl Sorted {
    fn of(&self, path: Option<Path>) -> Vec<&(Option<Path>, bool, Band)> {
        self.bands.iter().filter(|(of, _, _)| *of == path).collect()
    }

    /// An amplifier's two bands without words: the lower is the return band.
    fn part_the_paths(&mut self, doubts: &mut Vec<Doubt>) {
        let has_return = !self.of(Some(Path::Return)).is_empty();
        let unnamed: Vec<usize> = (0..self.bands.len())
            .filter(|at| self.bands.get(*at).is_some_and(|(path, _, _)| path.is_none()))
            .collect();
        let [first, second] = unnamed[..] else { return };
        let (Some((_, a_named, a)), Some((_, b_named, b))) = (self.bands.get(first), self.bands.get(second))
        else {
            return;
        };
        let (lower, lower_named, below, above) =
            if a.high < b.high { (first, *a_named, a, b) } else { (second, *b_named, b, a) };
        if has_return
            || lower_named
            || below.high > RETURN_UP_TO_MHZ
            || above.low.is_none_or(|low| below.high > low)
        {
            return;
        }
        doubts.push(Doubt::PathsAssumed { lower: below.written.clone(), upper: above.written.clone() });
        if let Some(band) = self.bands.get_mut(lower) {
            band.0 = Some(Path::Return);
        }
    }

    /// Leaves out bands that no word names and that are hardly the part's own: one as low as a return path's, and one
    /// behind a word that means nothing here, which may be another language's for the return path, the satellite
    /// band, or what a filter stops.
    fn leave_out_strays(&mut self, kind: Option<PartKind>, doubts: &mut Vec<Doubt>) {
        let is_filter = matches!(kind, Some(PartKind::EntryFilter | PartKind::HighPassFilter));
        let is_stray = |band: &Band| {
            let is_low = band.high <= LOWEST_OWN_EDGE_MHZ;
            let may_be_another =
                band.high <= RETURN_UP_TO_MHZ || band.low.is_some_and(|low| low >= ABOVE_CABLE_TV_MHZ);
            (is_low && !is_filter)
                || (band.follows_word && may_be_another && kind != Some(PartKind::SatelliteSplitter))
        };
        self.bands.retain(|(path, named, band)| {
            let leaves = path.is_none() && !named && is_stray(band);
            if leaves {
                add_once(doubts, [Doubt::FrequencyUnplaced { written: band.written.clone() }]);
            }
            !leaves
        });
    }

    /// The one band of a path, two joined if they adjoin; nothing, with a doubt, if it is not clear.
    fn one(&self, path: Option<Path>, doubts: &mut Vec<Doubt>) -> Option<Band> {
        if self.lost.contains(&path) {
            return None;
        }
        let mut found: Vec<&(Option<Path>, bool, Band)> = self.of(path);
        if found.iter().any(|(_, named, _)| *named) && path.is_none() {
            let unnamed = found.iter().filter(|(_, named, _)| !named);
            add_once(
                doubts,
                unnamed.map(|(_, _, band)| Doubt::FrequencyUnplaced { written: band.written.clone() }),
            );
            found.retain(|(_, named, _)| *named);
        }
        let mut bands: Vec<Band> = found.into_iter().map(|(_, _, band)| band.clone()).collect();
        bands.sort_by(|a, b| a.low.unwrap_or(0.0).total_cmp(&b.low.unwrap_or(0.0)));
        bands.dedup_by(|a, b| a.low == b.low && (a.high - b.high).abs() < 1e-9);
        let mut bands = bands.into_iter();
        let mut joined = bands.next()?;
        for band in bands {
            let gap = band.low.unwrap_or(0.0) - joined.high;
            let (first, second) = (joined.written.clone(), band.written.clone());
            if gap.abs() > ADJOINING_WITHIN_MHZ || band.high <= joined.high {
                doubts.push(Doubt::BandsUnclear { first, second });
                return None;
            }
            doubts.push(Doubt::BandsJoined { first, second });
            joined.high = band.high;
            joined.written = band.written;
            joined.doubts.extend(band.doubts);
            joined.has_unit = joined.has_unit && band.has_unit;
        }
        if !joined.has_unit {
            add_once(doubts, [Doubt::BandWithoutUnit { written: joined.written.clone() }]);
        }
        add_once(doubts, joined.doubts.iter().cloned());
        Some(joined)
    }
}

/// Frequencies that stand alone.
fn read_frequencies(items: &[Item], sorted: &Sorted, reading: &mut LabelReading) {
    let mut alone = Vec::new();
    for item in items {
        match item {
            Item::Frequency(value, written, doubts) => alone.push((*value, written, doubts)),
            Item::Split(low, high, written, doubts) => {
                read_split(*low, *high, written, doubts, items.contains(&Item::Word(Term::Split)), reading);
            }
            _ => {}
        }
    }
    let has_band = !sorted.bands.is_empty() || !sorted.lost.is_empty();
    let is_edge_of_band = |value: f64| {
        sorted.bands.iter().any(|(_, _, band)| (band.high - value).abs() < 1e-9 || band.low == Some(value))
    };
    if let [(value, written, doubts)] = alone[..] {
        let written = written.clone();
        if !has_band && is_edge(value) && reading.high.is_none() {
            if reading.kind == Some(PartKind::HighPassFilter) {
                reading.low = Some(Megahertz(value));
                add_once(&mut reading.doubts, [Doubt::LowerEdgeAlone { written }]);
                add_once(&mut reading.doubts, doubts.iter().cloned());
                return;
            }
            if reading.kind.is_some() && value >= BARE_UPPER_EDGE_MHZ {
                reading.high = Some(Megahertz(value));
                add_once(&mut reading.doubts, [Doubt::UpperEdgeAlone { written }]);
                add_once(&mut reading.doubts, doubts.iter().cloned());
                return;
            }
        }
    }
    let unplaced = alone.into_iter().filter(|(value, _, _)| !is_edge_of_band(*value));
    add_once(
        &mut reading.doubts,
        unplaced.map(|(_, written, _)| Doubt::FrequencyUnplaced { written: written.clone() }),
    );
}

/// `42/54 MHz` on an amplifier: where the return band ends and the forward band begins.
fn read_split(
    low: f64,
    high: f64,
    written: &str,
    doubts: &[Doubt],
    is_named: bool,
    reading: &mut LabelReading,
) {
    let agrees =
        |edge: Option<Megahertz>, value: f64| edge.is_none_or(|edge| (edge.value() - value).abs() < 1e-9);
    let is_split = reading.kind == Some(PartKind::Amplifier)
        && is_edge(low)
        && is_edge(high)
        && low < high
        && high <= 300.0
        && agrees(reading.return_high, low)
        && agrees(reading.low, high);
    if !is_split {
        add_once(&mut reading.doubts, [Doubt::FrequencyUnplaced { written: written.to_owned() }]);
        return;
    }
    let is_new = reading.return_high.is_none() || reading.low.is_none();
    if is_new && !is_named {
        let [lower, upper] = [low, high].map(|edge| format!("{edge} MHz"));
        add_once(&mut reading.doubts, [Doubt::PathsAssumed { lower, upper }]);
    }
    add_once(&mut reading.doubts, doubts.iter().cloned());
    reading.return_high = Some(Megahertz(low));
    reading.low = Some(Megahertz(high));
}
