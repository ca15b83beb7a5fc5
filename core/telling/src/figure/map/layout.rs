//! Where each box of the map goes. Every subtree has a band of the page to itself, every depth a column, and every
//! run label a gap before its column: so nothing can overlap, whatever the house.

/// What is to be placed, in pixels.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Space {
    /// The row of what feeds it; comes before it in the list.
    pub feeder: Option<usize>,
    /// How deep it sits.
    pub depth: usize,
    /// Width of the box; 0 for a free end.
    pub width: f64,
    /// How far it and its run's label may reach above its middle line, and below: the same, so that a chain of
    /// parts stands on one line.
    pub half: f64,
    /// Width of its run's label.
    pub label: f64,
    /// For a free end: how far it and its words reach beyond the joint of the part it is on.
    pub spill: f64,
    /// Room to leave above its whole band, for a heading.
    pub lead: f64,
}

/// Where everything went.
#[derive(Debug, Default)]
pub(super) struct Places {
    /// Left edge of each column of boxes.
    pub columns: Vec<f64>,
    /// Where the cables of a column's boxes part: x of the joint.
    pub joints: Vec<f64>,
    /// The middle line of each row.
    pub middles: Vec<f64>,
    /// Top of each row's band.
    pub tops: Vec<f64>,
    /// How wide it all is.
    pub width: f64,
    /// How high it all is.
    pub height: f64,
}

/// From a box to the joint where its cables part.
const TO_JOINT: f64 = 10.0;
/// Around a run label, both sides together.
const AROUND_LABEL: f64 = 13.0;
/// Between two bands.
const BETWEEN: f64 = 12.0;

/// Places everything.
pub(super) fn lay_out(spaces: &[Space]) -> Places {
    let mut places = columns(spaces);
    let bands = bands(spaces);
    place_rows(spaces, &bands, &mut places);
    for space in spaces.iter().filter(|space| space.spill > 0.0) {
        let joint = space.depth.checked_sub(1).and_then(|column| places.joints.get(column)).copied();
        places.width = places.width.max(joint.unwrap_or(0.0) + space.spill);
    }
    places
}

fn columns(spaces: &[Space]) -> Places {
    let count = spaces.iter().map(|space| space.depth + 1).max().unwrap_or(0);
    let (mut boxes, mut gaps) = (vec![0.0_f64; count], vec![0.0_f64; count]);
    for space in spaces {
        if let Some(width) = boxes.get_mut(space.depth) {
            *width = width.max(space.width);
        }
        if let Some(gap) = gaps.get_mut(space.depth) {
            *gap = gap.max(space.label);
        }
    }
    let mut places = Places::default();
    let mut x = 0.0;
    for (depth, (width, gap)) in boxes.into_iter().zip(gaps).enumerate() {
        if depth > 0 {
            x += TO_JOINT + gap + AROUND_LABEL;
        }
        places.columns.push(x);
        x += width;
        places.joints.push(x + TO_JOINT);
    }
    places.width = x;
    places
}

/// The height of each row's band, its own and all that hangs on it, and of what hangs on it alone.
fn bands(spaces: &[Space]) -> Vec<(f64, f64)> {
    let mut bands = vec![(0.0_f64, 0.0_f64); spaces.len()];
    for (row, space) in spaces.iter().enumerate().rev() {
        let own = 2.0 * space.half + BETWEEN;
        let Some((band, below)) = bands.get_mut(row) else { continue };
        *band = own.max(*below);
        let band = *band + space.lead;
        if let Some((_, of_feeder)) = space.feeder.and_then(|feeder| bands.get_mut(feeder)) {
            *of_feeder += band;
        }
    }
    bands
}

fn place_rows(spaces: &[Space], bands: &[(f64, f64)], places: &mut Places) {
    // Tops are handed down from feeder to fed; middles come back up, to the middle of what is fed.
    let mut next_top = vec![0.0; spaces.len()];
    let mut page = 0.0;
    for (row, (space, (band, below))) in spaces.iter().zip(bands).enumerate() {
        let next = match space.feeder.and_then(|feeder| next_top.get_mut(feeder)) {
            Some(next) => next,
            None => &mut page,
        };
        let top = *next + space.lead;
        *next = top + band;
        places.tops.push(top);
        if let Some(first) = next_top.get_mut(row) {
            *first = top + (band - below) / 2.0;
        }
    }
    places.height = page;
    let mut spread = vec![(f64::INFINITY, f64::NEG_INFINITY); spaces.len()];
    let mut middles = vec![0.0; spaces.len()];
    for (row, (space, (band, _))) in spaces.iter().zip(bands).enumerate().rev() {
        let (Some(top), Some((first, last))) = (places.tops.get(row), spread.get(row)) else { continue };
        let wanted = if first <= last { f64::midpoint(*first, *last) } else { top + band / 2.0 };
        let least = top + space.half + BETWEEN / 2.0;
        let most = (top + band - space.half - BETWEEN / 2.0).max(least);
        let middle = wanted.clamp(least, most);
        if let Some(slot) = middles.get_mut(row) {
            *slot = middle;
        }
        if let Some((first, last)) = space.feeder.and_then(|feeder| spread.get_mut(feeder)) {
            *first = first.min(middle);
            *last = last.max(middle);
        }
    }
    places.middles = middles;
}
