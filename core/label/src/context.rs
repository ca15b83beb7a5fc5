//! Which word belongs to which figure or band: what words ask for, and the walk over the lines.

use super::alignment::{RoleWord, Step, place_in_bands, place_paths, place_roles};
use super::doubt::Doubt;
use super::item::{Band, Figure, Item, Lost};
use super::vocabulary::Term;

/// What a word makes of the figure beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    /// Loss.
    Loss,
    /// What an output has: a loss, or of an amplifier perhaps its gain.
    Port,
    /// Loss to a tap.
    Tap,
    /// Through loss of a tap.
    Through,
    /// Gain.
    Gain,
    /// Loss in a stop band; an attenuator's value.
    Rejection,
    /// Isolation.
    Isolation,
    /// Return loss.
    ReturnLoss,
    /// Something that is not kept: noise, flatness.
    Unmeasured,
    /// Shielding, which is not kept either.
    Shielding,
    /// Behind a word for something not kept, but perhaps a figure of its own.
    Unsure,
}

impl Role {
    /// Whether one word may stand for a whole list of figures.
    pub const fn is_shared(self) -> bool {
        matches!(self, Self::Loss | Self::Port)
    }
}

/// What a word makes of the band beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Path {
    /// What a filter passes.
    Pass,
    /// What a filter stops.
    Stop,
    /// An amplifier's forward band.
    Forward,
    /// An amplifier's return band.
    Return,
    /// The home network's band.
    Network,
    /// A diplexer's satellite band.
    Satellite,
    /// A diplexer's band below it.
    Terrestrial,
}

/// A figure, or one that cannot be read, in its place.
#[derive(Debug, Clone)]
pub(super) struct PlacedFigure {
    /// The figure, or why it is lost.
    pub body: Result<Figure, Doubt>,
    /// What it is, if a word says so.
    pub role: Option<Role>,
    /// Whether that word stands before it.
    pub is_named: bool,
    /// The outputs it is for, if they are numbered.
    pub outputs: Vec<u8>,
    /// The path it stands with.
    pub path: Option<Path>,
    /// Whether that path is named on the same line.
    pub path_is_near: bool,
    /// The band it stands with, by its place among the bands.
    pub band: Option<usize>,
}

/// A band, or one that cannot be read, in its place.
#[derive(Debug, Clone)]
pub(super) struct PlacedBand {
    /// The band, or why it is lost.
    pub body: Result<Band, Doubt>,
    /// What it is, if a word says so.
    pub path: Option<Path>,
}

/// Figures and bands with what their words say.
#[derive(Debug, Default)]
pub(super) struct Placed {
    /// In the label's order.
    pub figures: Vec<PlacedFigure>,
    /// In the label's order.
    pub bands: Vec<PlacedBand>,
}

/// Finds the word for every figure and band.
pub(super) fn place(items: &[Item]) -> Placed {
    let mut placed = Placed::default();
    let mut waiting = Waiting::default();
    for line in items.split(|item| *item == Item::Break) {
        place_line(line, &mut placed, &mut waiting);
    }
    placed
}

/// What earlier lines leave for the next.
#[derive(Default)]
pub(super) struct Waiting {
    /// A word for figures that had none after it.
    pub role: Option<RoleWord>,
    /// A word for bands that had none after it.
    pub path: Option<Path>,
    last_path: Option<Path>,
    last_band: Option<usize>,
}

fn place_line(line: &[Item], placed: &mut Placed, waiting: &mut Waiting) {
    let first_band = placed.bands.len();
    let mut role_steps: Vec<Step<RoleWord>> = Vec::new();
    let mut path_steps: Vec<Step<Path>> = Vec::new();
    let mut band_steps: Vec<Step<usize>> = Vec::new();
    let mut near = (waiting.last_path, false);
    let mut before: Option<&Item> = None;
    for (at, item) in line.iter().enumerate() {
        match item {
            Item::Word(term) => {
                if let Some(word) = role_word(*term) {
                    let joined = matches!(before, Some(Item::Word(term)) if role_word(*term).is_some());
                    role_steps.push(Step::Word(RoleWord { joined, ..word }));
                }
                if let Some(path) = path_word(*term, line.get(at + 1), line.get(at..).unwrap_or_default()) {
                    path_steps.push(Step::Word(path));
                    near = (Some(path), true);
                }
            }
            Item::Outputs(outputs) => role_steps.push(Step::Word(RoleWord {
                role: Role::Port,
                strength: 0,
                joined: false,
                outputs: outputs.clone(),
            })),
            Item::Figure(figure) if !figure.has_unit && !figure.minus && !may_be_bare(before, figure) => {
                before = None;
                continue;
            }
            Item::Figure(_) | Item::Lost(Lost::Decibels, _) => {
                let body = match item {
                    Item::Figure(figure) => Ok(figure.clone()),
                    Item::Lost(_, doubt) => Err(doubt.clone()),
                    _ => continue,
                };
                role_steps.push(Step::Thing(placed.figures.len()));
                band_steps.push(Step::Thing(placed.figures.len()));
                placed.figures.push(PlacedFigure {
                    body,
                    role: None,
                    is_named: false,
                    outputs: Vec::new(),
                    path: near.0,
                    path_is_near: near.1,
                    band: waiting.last_band,
                });
            }
            Item::Band(_) | Item::Lost(Lost::Frequency, _) => {
                let body = match item {
                    Item::Band(band) => Ok(band.clone()),
                    Item::Lost(_, doubt) => Err(doubt.clone()),
                    _ => continue,
                };
                near = match path_steps.last() {
                    Some(Step::Word(path)) => (Some(*path), true),
                    None if waiting.path.is_some() => (waiting.path, true),
                    _ => (None, true),
                };
                path_steps.push(Step::Thing(placed.bands.len()));
                band_steps.push(Step::Word(placed.bands.len()));
                placed.bands.push(PlacedBand { body, path: None });
            }
            _ => {}
        }
        before = Some(item);
    }
    place_roles(&role_steps, placed, waiting);
    place_paths(&path_steps, placed, waiting);
    place_in_bands(&band_steps, placed);
    if placed.bands.len() > first_band {
        waiting.last_band = Some(placed.bands.len() - 1);
    }
    if near.1 {
        // A band that its word follows on the line tells the path too.
        waiting.last_path = placed
            .bands
            .get(first_band..)
            .and_then(|bands| bands.last())
            .map_or(near.0, |band| band.path.or(near.0));
    }
}

/// Whether a bare number without a sign stands where a word asks for one.
fn may_be_bare(before: Option<&Item>, figure: &Figure) -> bool {
    match before {
        Some(Item::Word(Term::Output | Term::Outputs | Term::Leg | Term::Port)) => figure.size.fract() > 0.0,
        Some(Item::Word(term)) => role_word(*term).is_some(),
        Some(Item::Outputs(_)) => true,
        Some(Item::Figure(earlier)) => !earlier.has_unit,
        _ => false,
    }
}

fn role_word(term: Term) -> Option<RoleWord> {
    let (role, strength) = match term {
        Term::Output | Term::Outputs | Term::Leg => (Role::Port, 0),
        Term::Loss | Term::Insertion => (Role::Loss, 1),
        // Weak, since on most labels it names the part.
        Term::Tap | Term::Coupler => (Role::Tap, 1),
        Term::Through => (Role::Through, 2),
        Term::Gain => (Role::Gain, 2),
        Term::Rejection | Term::Attenuation => (Role::Rejection, 2),
        Term::Isolation => (Role::Isolation, 2),
        Term::ReturnLoss => (Role::ReturnLoss, 2),
        Term::Unmeasured | Term::PassivePort => (Role::Unmeasured, 2),
        Term::Shielding => (Role::Shielding, 2),
        _ => return None,
    };
    Some(RoleWord { role, strength, joined: false, outputs: Vec::new() })
}

/// What a word says of bands; some do only with a band after them.
fn path_word(term: Term, next: Option<&Item>, rest: &[Item]) -> Option<Path> {
    Some(match term {
        Term::Pass => Path::Pass,
        Term::Stop => Path::Stop,
        Term::Forward => Path::Forward,
        Term::Return => Path::Return,
        Term::Satellite => Path::Satellite,
        Term::Terrestrial => Path::Terrestrial,
        Term::NetworkBypass => Path::Network,
        Term::Network => match next {
            Some(Item::Band(band)) if band.low.is_some_and(|low| low >= 1100.0) => Path::Network,
            _ => return None,
        },
        Term::Rejection | Term::Attenuation => {
            let next_thing =
                rest.iter().find(|item| matches!(item, Item::Band(_) | Item::Figure(_) | Item::Lost(..)));
            match next_thing {
                Some(Item::Band(_) | Item::Lost(Lost::Frequency, _)) => Path::Stop,
                _ => return None,
            }
        }
        _ => return None,
    })
}
