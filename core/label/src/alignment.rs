//! What each figure and band of one segment is, by the words beside it.
//!
//! [`pair`] settles which word is whose. Here stands what fits: a word is for figures and bands of the sizes that such
//! things have. A word behind all figures of its segment waits for the next segment's.

use super::context::{Hints, Path, Placed, Role, Waiting};
use super::doubt::{Doubt, Quantity};
use super::item::{Band, Figure};
use super::losses::UNMARKED_LOSS_DB;
use super::pairing::{Fit, Joins, Pair, Side, Step, pair};
use super::rated_band::{BARE_UPPER_EDGE_MHZ, RETURN_UP_TO_MHZ};
use super::usual::{is_usual, unusual_loss};

/// From here on a figure beside a word for shielding is one of shielding, in decibels.
const SHIELDING_DB: f64 = 40.0;
/// The most that a port without an amplifier loses, in decibels; beside its word a larger figure is something else's.
const PASSIVE_PORT_DB: f64 = 5.0;
/// The most noise, ripple or tilt of a part that somebody installs, in decibels. Common practice, no source.
const MOST_UNEVEN_DB: f64 = 10.0;
/// The least of a directivity or the like that a label boasts of, in decibels. Common practice, no source.
const LEAST_APART_DB: f64 = 12.0;

/// A word and a thing of the size that most such things have.
const FITS_WELL: u32 = 7;
/// A word and a thing of usual size.
const FITS: u32 = 6;
/// A word that often stands alone, and a thing of usual size: "SHIELDED 70dB REJECTION" is a rejection.
const FITS_IF_NO_OTHER: u32 = 5;
/// A word that only waits from an earlier segment, or only names a port.
const FITS_WEAKLY: u32 = 4;
/// A word before a thing of unusual size.
const BARELY: u32 = 2;

/// A word for figures: what it says and how strongly.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RoleWord {
    /// What the figure is.
    pub role: Role,
    /// 0: a port; 1: loss or tap; 2: one thing only. Of words side by side the stronger counts.
    pub strength: u8,
    /// Whether another such word stands right before it.
    pub joined: bool,
    /// Whether it stands in an earlier segment.
    pub waits: bool,
    /// The outputs it names.
    pub outputs: Vec<u8>,
}

impl Joins for RoleWord {
    fn gives_way_to(&self, earlier: &Self) -> bool {
        self.joined && earlier.strength > self.strength
    }
}

impl Joins for Path {
    fn gives_way_to(&self, _: &Self) -> bool {
        false
    }
}

/// Which words fit which figures.
struct Roles<'p>(&'p Placed, &'p Hints);

impl Roles<'_> {
    fn figure(&self, at: usize) -> Option<&Figure> {
        self.0.figures.get(at).and_then(|figure| figure.body.as_ref().ok())
    }
}

impl Fit<RoleWord> for Roles<'_> {
    fn pair(&self, word: &RoleWord, thing: usize, side: Side) -> u32 {
        let Some(figure) = self.figure(thing) else { return FITS };
        let size = figure.size;
        let is_usual = match word.role {
            Role::Port if self.1.is_amplifier => is_usual(Quantity::Gain, size),
            Role::Loss | Role::Port => is_usual(Quantity::Loss, size),
            Role::Tap => is_usual(Quantity::Tap, size),
            Role::Through => size <= PASSIVE_PORT_DB,
            Role::Gain => is_usual(Quantity::Gain, size),
            Role::ReturnGain => is_usual(Quantity::ReturnGain, size),
            Role::Rejection => self.1.is_pad || is_usual(Quantity::Rejection, size),
            Role::Isolation => is_usual(Quantity::Isolation, size),
            Role::ReturnLoss => is_usual(Quantity::ReturnLoss, size),
            Role::Unmeasured | Role::Unsure => size <= MOST_UNEVEN_DB,
            Role::Apart => size >= LEAST_APART_DB,
            Role::Shielding => size >= SHIELDING_DB || (!figure.has_unit && !figure.minus),
            Role::PassivePort => figure.minus && side == Side::Before,
        };
        let may_be_unusual = match word.role {
            // A word for shielding often stands alone.
            Role::Shielding => !UNMARKED_LOSS_DB.contains(&size) && size >= *UNMARKED_LOSS_DB.start(),
            Role::PassivePort => size <= PASSIVE_PORT_DB,
            _ => true,
        };
        match (is_usual, side) {
            (true, _) if word.waits || word.strength == 0 => FITS_WEAKLY,
            (true, _) if word.role == Role::Shielding => FITS_IF_NO_OTHER,
            (true, _) if is_typical(word.role, size) => FITS_WELL,
            (true, _) => FITS,
            (false, Side::Before) if may_be_unusual => BARELY,
            (false, _) => 0,
        }
    }

    fn alone(&self, thing: usize) -> u32 {
        u32::from(self.figure(thing).is_some_and(|figure| stands_alone(figure, self.1)))
    }
}

/// Whether most such figures are of this size, in decibels: an isolation is large, a return loss less so. Common practice,
/// no source.
fn is_typical(role: Role, size: f64) -> bool {
    match role {
        Role::Isolation => (18.0..=40.0).contains(&size),
        Role::ReturnLoss => (10.0..=22.0).contains(&size),
        _ => false,
    }
}

/// Whether a figure is such as labels of the part print without a word.
fn stands_alone(figure: &Figure, hints: &Hints) -> bool {
    match hints.legs {
        _ if hints.is_amplifier => is_usual(Quantity::Gain, figure.size),
        Some(legs) if hints.splits && legs > 1 => {
            unusual_loss(&vec![figure.size; usize::from(legs)]).is_none()
        }
        _ => UNMARKED_LOSS_DB.contains(&figure.size),
    }
}

/// Gives each figure of a segment its word.
pub(super) fn place_roles(
    steps: &[Step<RoleWord>],
    placed: &mut Placed,
    waiting: &mut Waiting,
    hints: &Hints,
) {
    if steps.is_empty() {
        return;
    }
    let waits = waiting.role.take().map(|word| Step::Word(RoleWord { waits: true, ..word }, false));
    let steps: Vec<Step<RoleWord>> = waits.into_iter().chain(steps.iter().cloned()).collect();
    let pairing = pair(&steps, &Roles(placed, hints));
    let mut last: Option<RoleWord> = None;
    let mut last_minus = None;
    for (at, found) in pairing.pairs.iter().enumerate() {
        let later = pairing.pairs.get(at + 1..).unwrap_or_default();
        let Some(figure) = placed.figures.get_mut(found.thing) else { continue };
        let body = figure.body.as_ref().ok();
        let minus = body.is_some_and(|figure| figure.minus);
        let is_bare = body.is_some_and(|figure| !figure.has_unit);
        let (word, is_named) = match &found.word {
            Some((word, side)) => (Some(word.clone()), *side == Side::Before),
            None => match &last {
                Some(word) => (shared(word, body, minus, last_minus, hints), true),
                None => (shared_behind(later), false),
            },
        };
        if found.word.is_none() && word.is_none() {
            // "ISO 25dB -3.5dB": the word before is spent.
            last = None;
        }
        if let Some((word, side)) = &found.word {
            // "ISO 9001 3.5dB": a bare number spends its word.
            let is_spent = *side == Side::Behind || (is_bare && !word.role.is_shared());
            last = Some(word.clone()).filter(|_| !is_spent);
        }
        last_minus = Some(minus);
        if let Some(word) = word.map(|word| as_kept(word, body, found.word.is_none())) {
            figure.role = Some(word.role);
            figure.is_named = is_named;
            figure.outputs = word.outputs;
        }
        figure.is_unclear = found.is_unclear;
    }
    let is_for_figures = |word: &RoleWord| word.role != Role::PassivePort;
    waiting.role = pairing.left_over.filter(is_for_figures);
}

/// What a word that has had its figure says of the next: one for losses may stand for a whole list, another is spent
/// where the figure is not of its size, where a minus begins the losses, or where it is just the loss of so many legs.
fn shared(
    word: &RoleWord,
    figure: Option<&Figure>,
    minus: bool,
    last_minus: Option<bool>,
    hints: &Hints,
) -> Option<RoleWord> {
    if word.role.is_shared() {
        return Some(word.clone());
    }
    let is_loss = figure.is_some_and(|figure| {
        hints.splits && hints.legs.is_some_and(|legs| legs > 1) && stands_alone(figure, hints)
    });
    let is_spent = (last_minus == Some(false) && minus)
        || is_loss
        || (figure.is_some_and(|figure| !is_of_size(word.role, figure))
            && !matches!(word.role, Role::Unmeasured));
    (!is_spent).then(|| word.clone())
}

fn is_of_size(role: Role, figure: &Figure) -> bool {
    let size = figure.size;
    match role {
        Role::Tap => is_usual(Quantity::Tap, size),
        Role::Through => size <= PASSIVE_PORT_DB,
        Role::Isolation => is_usual(Quantity::Isolation, size),
        Role::ReturnLoss => is_usual(Quantity::ReturnLoss, size),
        Role::Rejection => is_usual(Quantity::Rejection, size),
        Role::Shielding => size >= SHIELDING_DB,
        Role::Apart => size >= LEAST_APART_DB,
        _ => true,
    }
}

/// "3.5dB 7dB 7dB OUT": the word behind a list.
fn shared_behind(later: &[Pair<RoleWord>]) -> Option<RoleWord> {
    match later.iter().find_map(|pair| pair.word.clone()) {
        Some((word, Side::Behind)) if word.role.is_shared() => Some(word),
        _ => None,
    }
}

/// What a word for something that is not kept makes of a figure that may be one of its own: the second figure of
/// "NOISE 4dB 12dB" may be anything, and "PASSIVE PORT 4dB" an amplifier's gain.
fn as_kept(word: RoleWord, figure: Option<&Figure>, is_second: bool) -> RoleWord {
    let is_unsure = match (word.role, figure) {
        (Role::Shielding, Some(figure)) => figure.size < SHIELDING_DB && (figure.has_unit || figure.minus),
        (Role::PassivePort, Some(figure)) => !figure.minus || is_second,
        (Role::Unmeasured, Some(figure)) => is_second || figure.size > MOST_UNEVEN_DB,
        (Role::Unmeasured | Role::Shielding | Role::PassivePort | Role::Apart, _) => is_second,
        _ => false,
    };
    if is_unsure { RoleWord { role: Role::Unsure, ..word } } else { word }
}

/// Which words fit which bands.
struct Paths<'p> {
    placed: &'p Placed,
    hints: &'p Hints,
    /// Whether a word for the part's own band stands there: then none without a word is its own.
    names_own: bool,
}

impl Fit<Path> for Paths<'_> {
    fn pair(&self, path: &Path, thing: usize, _: Side) -> u32 {
        match self.placed.bands.get(thing).map(|band| &band.body) {
            Some(Ok(band)) if may_be(*path, band, self.hints) => FITS,
            // What cannot be read may be anything.
            Some(Err(_)) => FITS,
            _ => 0,
        }
    }

    /// A part's own band needs no word.
    fn alone(&self, thing: usize) -> u32 {
        let own = self.placed.bands.get(thing).and_then(|band| band.body.as_ref().ok());
        u32::from(
            !self.names_own
                && own.is_some_and(|band| {
                    band.high >= BARE_UPPER_EDGE_MHZ && band.low.is_none_or(|low| low < SHARED_BELOW_MHZ)
                }),
        )
    }
}

/// From here on a band is one that cable TV does not share, in megahertz.
const SHARED_BELOW_MHZ: f64 = 900.0;
/// Forward bands, and bands with a satellite's signals, end above these, in megahertz. Common practice, no source.
const FORWARD_ABOVE_MHZ: f64 = 300.0;
const SATELLITE_ABOVE_MHZ: f64 = 1400.0;
/// The home network's bands lie above this, in megahertz (band E of MoCA 1.1 from 500; from memory).
const NETWORK_FROM_MHZ: f64 = 400.0;

/// Whether a band may be what the word says, on a part of the kind that the words name.
fn may_be(path: Path, band: &Band, hints: &Hints) -> bool {
    let low = band.low.unwrap_or(0.0);
    match path {
        Path::Return => band.high <= RETURN_UP_TO_MHZ,
        Path::Forward => band.high > FORWARD_ABOVE_MHZ,
        Path::Network => low >= NETWORK_FROM_MHZ,
        Path::Satellite => band.high > SATELLITE_ABOVE_MHZ,
        Path::Terrestrial => low < SHARED_BELOW_MHZ,
        Path::Pass => !hints.stops_above || low < SHARED_BELOW_MHZ,
        Path::Stop => !hints.stops_above || low >= SHARED_BELOW_MHZ,
    }
}

/// Gives each band of a segment its word.
pub(super) fn place_paths(steps: &[Step<Path>], placed: &mut Placed, waiting: &mut Waiting, hints: &Hints) {
    if steps.is_empty() {
        return;
    }
    let waits = waiting.path.take().map(|path| Step::Word(path, false));
    let steps: Vec<Step<Path>> = waits.into_iter().chain(steps.iter().cloned()).collect();
    let is_own =
        |step: &Step<Path>| matches!(step, Step::Word(Path::Pass | Path::Forward | Path::Terrestrial, _));
    let names_own = steps.iter().any(is_own);
    let pairing = pair(&steps, &Paths { placed, hints, names_own });
    let written: Vec<String> = pairing
        .pairs
        .iter()
        .filter(|pair| pair.is_unclear)
        .filter_map(|pair| Some(placed.bands.get(pair.thing)?.body.as_ref().ok()?.written.clone()))
        .collect();
    for found in pairing.pairs {
        let Some(band) = placed.bands.get_mut(found.thing) else { continue };
        band.path = found.word.map(|(path, _)| path);
        if let (true, [first, .., second]) = (found.is_unclear, &written[..]) {
            band.body = Err(Doubt::BandsUnclear { first: first.clone(), second: second.clone() });
        }
    }
    waiting.path = pairing.left_over;
}

/// The band each loss stands with: the one before it on the line, or after it where all losses stand before
/// theirs or the band is attached to it; else the last of an earlier line.
pub(super) fn place_in_bands(steps: &[InBand], placed: &mut Placed) {
    let trailing = matches!((steps.first(), steps.last()), (Some(InBand::Figure(_)), Some(InBand::Band(_))));
    let mut current = None;
    for (at, step) in steps.iter().enumerate() {
        match step {
            InBand::Band(band) => {
                let stands_after = placed
                    .bands
                    .get(*band)
                    .is_some_and(|found| found.body.as_ref().is_ok_and(|band| band.is_attached));
                let figures = steps.get(..at).unwrap_or_default().iter().rev().map_while(|step| match step {
                    InBand::Figure(figure) => Some(*figure),
                    InBand::Band(_) => None,
                });
                for figure in figures.filter(|_| stands_after) {
                    if let Some(figure) = placed.figures.get_mut(figure) {
                        figure.band = Some(*band);
                    }
                }
                current = Some(*band);
            }
            InBand::Figure(index) => {
                let after = steps.get(at + 1..).unwrap_or_default().iter().find_map(|step| match step {
                    InBand::Band(band) => Some(*band),
                    InBand::Figure(_) => None,
                });
                let band = if trailing { after } else { current };
                if let (Some(band), Some(figure)) = (band, placed.figures.get_mut(*index)) {
                    figure.band = Some(band);
                }
            }
        }
    }
}

/// A loss or a band of a segment, by its place among all.
#[derive(Debug, Clone, Copy)]
pub(super) enum InBand {
    /// A loss.
    Figure(usize),
    /// A band.
    Band(usize),
}
