//! Which word belongs to which figure or band: what words ask for, and the walk over the lines.

use super::alignment::{InBand, RoleWord, place_in_bands, place_paths, place_roles};
use super::doubt::Doubt;
use super::item::{Band, Figure, Item, Lost};
use super::pairing::Step;
use super::vocabulary::Term;

/// Bare numbers within these, in decibels, may be figures of the part.
const BARE_FIGURE_DB: std::ops::RangeInclusive<f64> = 2.0..=40.0;

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
    /// Gain of the return path.
    ReturnGain,
    /// Loss in a stop band; an attenuator's value.
    Rejection,
    /// Isolation.
    Isolation,
    /// Return loss.
    ReturnLoss,
    /// Something that is not kept: noise, flatness.
    Unmeasured,
    /// Something large that is not kept: directivity, cross polarisation.
    Apart,
    /// What an amplifier's port that is not amplified loses, which is not kept.
    PassivePort,
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
    /// Whether another word could as well be its own.
    pub is_unclear: bool,
}

impl PlacedFigure {
    fn unplaced(body: Result<Figure, Doubt>, band: Option<usize>) -> Self {
        Self {
            body,
            role: None,
            is_named: false,
            outputs: Vec::new(),
            path: None,
            path_is_near: false,
            band,
            is_unclear: false,
        }
    }
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
    /// Numbers without a unit that no word asks for, as written.
    pub bare: Vec<String>,
}

/// What the words alone say of the part, before any figure or band is placed.
#[derive(Debug, Default)]
#[expect(clippy::struct_excessive_bools, reason = "each is what a word says or not, on its own")]
pub(super) struct Hints {
    /// Outputs, where one count stands there.
    pub legs: Option<u8>,
    /// Whether it is an amplifier.
    pub is_amplifier: bool,
    /// Whether its outputs share the signal, and it is nothing else.
    pub splits: bool,
    /// Whether it is a fixed attenuator.
    pub is_pad: bool,
    /// Whether it is a filter that stops what lies above its edge.
    pub stops_above: bool,
}

impl Hints {
    fn of(items: &[Item]) -> Self {
        let has = |terms: &[Term]| {
            items.iter().any(|item| matches!(item, Item::Word(term) if terms.contains(term)))
        };
        let mut counts = items.iter().filter_map(|item| match item {
            Item::Legs(count, _) => Some(*count),
            _ => None,
        });
        let legs = counts.next();
        let is_amplifier = has(&[Term::Amplifier]);
        let is_filter = has(&[Term::Filter, Term::LowPass, Term::HighPass, Term::Entry]);
        let is_other = is_amplifier || is_filter || has(&[Term::Tap, Term::Coupler, Term::Attenuator]);
        let stops_above =
            has(&[Term::LowPass, Term::Entry]) || (has(&[Term::Filter]) && has(&[Term::Network]));
        Self {
            legs: legs.filter(|first| counts.all(|count| count == *first)),
            is_amplifier,
            splits: !is_other && (legs.is_some() || has(&[Term::Splitter])),
            is_pad: has(&[Term::Attenuator]),
            stops_above: stops_above && !has(&[Term::HighPass]),
        }
    }
}

/// Finds the word for every figure and band.
pub(super) fn place(items: &[Item]) -> Placed {
    let hints = Hints::of(items);
    let mut placed = Placed::default();
    let mut waiting = Waiting::default();
    for line in items.split(|item| *item == Item::Break) {
        place_line(line, &mut placed, &mut waiting, &hints);
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

/// A figure or band of a line, by its place among all, or a word that tells the path.
enum OnLine {
    Figure(usize),
    Band(usize),
    Path(Path),
}

fn place_line(line: &[Item], placed: &mut Placed, waiting: &mut Waiting, hints: &Hints) {
    let first_band = placed.bands.len();
    let mut role_steps: Vec<Step<RoleWord>> = Vec::new();
    let mut path_steps: Vec<Step<Path>> = Vec::new();
    let mut on_line: Vec<OnLine> = Vec::new();
    let mut before: Option<&Item> = None;
    // Whether what stands right before is a figure, or a band, or a word that follows it without a gap.
    let (mut touches_figure, mut touches_band) = (false, false);
    for (at, item) in line.iter().enumerate() {
        let (touched_figure, touched_band) =
            (std::mem::take(&mut touches_figure), std::mem::take(&mut touches_band));
        match item {
            Item::Word(term) => {
                let is_near = *term != Term::PassivePort || matches!(line.get(at + 1), Some(Item::Figure(_)));
                if let Some(word) = role_word(*term).filter(|_| is_near) {
                    let joined = matches!(before, Some(Item::Word(term)) if role_word(*term).is_some());
                    role_steps.push(Step::Word(RoleWord { joined, ..word }, touched_figure));
                    touches_figure = touched_figure;
                }
                if let Some(path) = path_word(*term, line.get(at + 1), line.get(at..).unwrap_or_default()) {
                    path_steps.push(Step::Word(path, touched_band));
                    touches_band = touched_band;
                    on_line.push(OnLine::Path(path));
                }
            }
            Item::Outputs(outputs) => {
                let word = port_word(outputs.clone());
                role_steps.push(Step::Word(word, touched_figure));
            }
            Item::Figure(figure) if !may_be_figure(before, figure) => {
                if may_be_loss(figure) {
                    placed.bare.push(figure.written.clone());
                }
                before = None;
                continue;
            }
            Item::Figure(_) | Item::Lost(Lost::Decibels, _) => {
                let body = match item {
                    Item::Figure(figure) => Ok(figure.clone()),
                    Item::Lost(_, doubt) => Err(doubt.clone()),
                    _ => continue,
                };
                let index = placed.figures.len();
                role_steps.push(Step::Thing(index));
                on_line.push(OnLine::Figure(index));
                placed.figures.push(PlacedFigure::unplaced(body, waiting.last_band));
                touches_figure = true;
            }
            Item::Band(_) | Item::Lost(Lost::Frequency, _) => {
                let body = match item {
                    Item::Band(band) => Ok(band.clone()),
                    Item::Lost(_, doubt) => Err(doubt.clone()),
                    _ => continue,
                };
                path_steps.push(Step::Thing(placed.bands.len()));
                on_line.push(OnLine::Band(placed.bands.len()));
                placed.bands.push(PlacedBand { body, path: None });
                touches_band = true;
            }
            _ => {}
        }
        before = Some(item);
    }
    place_roles(&role_steps, placed, waiting, hints);
    place_paths(&path_steps, placed, waiting, hints);
    tell_paths(&on_line, placed, waiting);
    let is_loss = |figure: usize| {
        let role = placed.figures.get(figure).and_then(|figure| figure.role);
        role.is_none_or(Role::is_shared)
    };
    let in_bands: Vec<InBand> = on_line
        .iter()
        .filter_map(|thing| match thing {
            OnLine::Figure(figure) => is_loss(*figure).then_some(InBand::Figure(*figure)),
            OnLine::Band(band) => Some(InBand::Band(*band)),
            OnLine::Path(_) => None,
        })
        .collect();
    place_in_bands(&in_bands, placed);
    if placed.bands.len() > first_band {
        waiting.last_band = Some(placed.bands.len() - 1);
    }
}

/// Tells each figure of a line the path it stands with: that of the last band or word before it.
fn tell_paths(on_line: &[OnLine], placed: &mut Placed, waiting: &mut Waiting) {
    let mut near = (waiting.last_path, false);
    for thing in on_line {
        match thing {
            OnLine::Path(path) => near = (Some(*path), true),
            OnLine::Band(band) => near = (placed.bands.get(*band).and_then(|band| band.path), true),
            OnLine::Figure(figure) => {
                if let Some(figure) = placed.figures.get_mut(*figure) {
                    (figure.path, figure.path_is_near) = near;
                }
            }
        }
    }
    if near.1 {
        waiting.last_path = near.0;
    }
}

/// Whether a figure has a unit, a minus, a word or a list that makes it one.
fn may_be_figure(before: Option<&Item>, figure: &Figure) -> bool {
    figure.has_unit || figure.minus || figure.is_listed || may_be_bare(before, figure)
}

/// Whether a bare number that no word asks for may yet be a figure of the part whose unit is missing: not one that
/// another word has before it, such as a version's.
fn may_be_loss(figure: &Figure) -> bool {
    !figure.follows_word && BARE_FIGURE_DB.contains(&figure.size)
}

/// A word for one or more numbered outputs.
fn port_word(outputs: Vec<u8>) -> RoleWord {
    RoleWord { role: Role::Port, strength: 0, joined: false, waits: false, outputs }
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
        Term::ReturnGain => (Role::ReturnGain, 2),
        Term::Unmeasured => (Role::Unmeasured, 2),
        Term::Apart => (Role::Apart, 2),
        Term::PassivePort => (Role::PassivePort, 2),
        Term::Shielding => (Role::Shielding, 2),
        _ => return None,
    };
    Some(RoleWord { role, strength, joined: false, waits: false, outputs: Vec::new() })
}

/// What a word says of bands; some do only with a band after them.
fn path_word(term: Term, next: Option<&Item>, rest: &[Item]) -> Option<Path> {
    Some(match term {
        Term::Pass => Path::Pass,
        Term::Stop => Path::Stop,
        Term::Forward => Path::Forward,
        Term::Return | Term::ReturnGain => Path::Return,
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
