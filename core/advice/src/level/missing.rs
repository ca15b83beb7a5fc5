//! Losses that readings show and the wiring does not explain: which readings show the same one, where it most likely arises, and
//! what it means where nobody measured.
//!
//! A loss is told once. Two places that miss about the same behind one stretch miss it there, unless a third one over it is
//! sound. Where on the stretch it arises nobody knows: it is thrown over what lies there, each by how likely it is at fault,
//! draw by draw, as all that is unknown.

use coax::{Dice, estimates};
use facts::fact::SubjectId;
use house::naming::{SpecialPort, special_port};
use house::record::{PartKind, Survey};

use super::Options;
use super::entry_levels::{EntryLevels, Metered, NEIGHBOUR_MHZ, metered_on};
use super::held::{LevelHeld, Stretch, Tree};
use crate::beside::Beside;
use crate::error::AdviceError;
use crate::forecast::MeteredAt;
use crate::weighed::{part_weight_of_level, run_weight};

/// Losses that differ by no more than this may be one and the same, dB: neighbours in a cable differ by so much (47 CFR
/// 76.605(a)(4), from memory), and readings are no better.
const SAME_LOSS_DB: f64 = 3.0;

/// How likely it is one output alone of a part that takes a level, against a sound part, 1 (common practice, no source).
const OF_ONE_OUTPUT: f64 = 1.0;

/// Steps of the golden ratio fill the unit evenly, whatever their number.
const GOLDEN: f64 = 0.618_033_988_749_894_8;

/// What the wiring does not explain: one loss, or more than was to come.
#[derive(Debug, Clone, PartialEq)]
pub struct Unexplained {
    /// Each reading that shows it, at the frequency where that shows most: most missing first.
    pub readings: Vec<LevelHeld>,
    /// Where it arises.
    pub stretch: Stretch,
    /// What lies there, with the chance that it arises in it: the likeliest first. Empty where there is more than was to come.
    pub suspects: Vec<(LostAt, f64)>,
    /// How much is lost at each frequency that was measured, MHz and dB.
    lost: Vec<(f64, f64)>,
    /// Its number among the losses of its tree, the greatest first: by it its dice are its own, whatever ids the parts have.
    number: u8,
}

/// Something that may take a level.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LostAt {
    /// A part as a whole: all its outputs miss it.
    Part(SubjectId),
    /// One output of a part that has several.
    Output(SubjectId, u8),
    /// The run that feeds this part.
    RunTo(SubjectId),
}

/// A loss that is counted in a level that nobody measured.
#[derive(Debug, Clone, PartialEq)]
pub struct Missed {
    /// How much, dB, where it was measured.
    pub db: f64,
    /// The chance that it arises on the way here.
    pub chance: f64,
    /// Where it was measured.
    pub measured_at: Vec<MeteredAt>,
}

/// All that the wiring of a house does not explain.
///
/// # Errors
/// Whatever the physics refuses about a part.
pub fn unexplained(survey: &Survey, options: &Options) -> Result<Vec<Unexplained>, AdviceError> {
    let mut found = Vec::new();
    for entry in survey.parts.values().filter(|part| part.is_joined_entry()) {
        let metered = metered_on(survey, entry.id);
        if metered.len() > 1 {
            let incoming = EntryLevels::of(survey, entry.id, &metered, options)?;
            found.extend(on_tree(survey, &incoming, &metered));
        }
    }
    Ok(found)
}

/// Every place at which a level was measured that the wiring does not explain, at the frequency where that shows most.
///
/// # Errors
/// Whatever the physics refuses about a part.
pub fn levels_beside(survey: &Survey, options: &Options) -> Result<Vec<LevelHeld>, AdviceError> {
    Ok(unexplained(survey, options)?.into_iter().flat_map(|found| found.readings).collect())
}

/// The same on one tree.
pub(super) fn on_tree(survey: &Survey, incoming: &EntryLevels, metered: &[Metered]) -> Vec<Unexplained> {
    let tree = Tree { survey, incoming, metered };
    let (mut less, mut found) = (Vec::new(), Vec::new());
    let mut sound: Vec<LostAt> = Vec::new();
    for place in metered {
        match tree.worst_at(place) {
            Some(held) if held.beside == Beside::Worse => less.push(held),
            Some(held) => found.push(Unexplained {
                stretch: held.stretch.clone(),
                readings: vec![held],
                suspects: vec![],
                lost: vec![],
                number: 0,
            }),
            None => sound.extend(stretch_of(&tree, place)),
        }
    }
    less.sort_by(|a, b| b.missing_db().total_cmp(&a.missing_db()));
    let mut losses: Vec<(Vec<LevelHeld>, Vec<LostAt>)> = Vec::new();
    for held in less {
        let way = without(&way_to_place(survey, held.stretch.to), &way_to_place(survey, held.known_at));
        let doubtful = without(&way, &sound);
        let way = if doubtful.is_empty() { way } else { doubtful };
        let same = losses.iter_mut().find_map(|(readings, shared)| {
            let alike =
                readings.iter().all(|one| (one.missing_db() - held.missing_db()).abs() <= SAME_LOSS_DB);
            let both: Vec<_> = shared.iter().copied().filter(|at| way.contains(at)).collect();
            (alike && !both.is_empty()).then_some((readings, shared, both))
        });
        match same {
            Some((readings, shared, both)) => {
                readings.push(held);
                *shared = both;
            }
            None => losses.push((vec![held], way)),
        }
    }
    let numbered = (0..=u8::MAX).cycle().zip(losses);
    let told =
        numbered.map(|(number, (readings, shared))| Unexplained::loss(&tree, number, readings, &shared));
    told.chain(found).collect()
}

impl Unexplained {
    fn loss(tree: &Tree<'_>, number: u8, readings: Vec<LevelHeld>, shared: &[LostAt]) -> Self {
        let stretch = match readings.as_slice() {
            [one] => one.stretch.clone(),
            _ => stretch_over(tree.survey, shared),
        };
        let weights: Vec<_> = shared.iter().map(|at| (*at, weight(tree.survey, *at))).collect();
        let all: f64 = weights.iter().map(|(_, weight)| weight).sum();
        let mut suspects: Vec<_> = weights.into_iter().map(|(at, weight)| (at, weight / all)).collect();
        suspects.sort_by(|a, b| b.1.total_cmp(&a.1));
        let places = readings.iter().map(|held| held.stretch.to);
        let metered = tree.metered.iter().filter(|metered| places.clone().any(|place| place == metered.at));
        let mut by_place: Vec<_> = metered.flat_map(|metered| tree.missing_at(metered)).collect();
        by_place.sort_by(|a, b| a.0.total_cmp(&b.0));
        let same = by_place.chunk_by(|a, b| (a.0 - b.0).abs() < f64::EPSILON);
        let lost = same.filter_map(|same| {
            let sum: f64 = same.iter().map(|(_, db)| db).sum();
            same.first().map(|(mhz, _)| (*mhz, (sum / same.len() as f64).max(0.0)))
        });
        let lost = lost.collect();
        Self { readings, stretch, suspects, lost, number }
    }

    /// Whether it is a loss.
    pub fn is_loss(&self) -> bool {
        !self.suspects.is_empty()
    }

    /// How much is missing, dB, where it shows most; negative where there is more.
    pub fn missing_db(&self) -> f64 {
        self.readings.first().map_or(0.0, LevelHeld::missing_db)
    }

    /// What is to be counted at a place at a frequency, dB a draw, where what comes in is known by a reading at another; `None`
    /// where it says nothing there. Negative where it is the other place that misses it.
    pub(super) fn lost_between(
        &self,
        survey: &Survey,
        (known, place): (MeteredAt, MeteredAt),
        mhz: f64,
        options: &Options,
    ) -> Option<Vec<f64>> {
        let (here, there) = (way_to_place(survey, place), way_to_place(survey, known));
        let misses = |at: LostAt| f64::from(here.contains(&at)) - f64::from(there.contains(&at));
        if self.suspects.iter().all(|(at, _)| here.contains(at) == there.contains(at)) {
            return None;
        }
        let key = self.key();
        let turn = Dice::thrown(options.seed, 0, key).unit();
        let drawn = (0..options.draws.max(1)).map(|draw| {
            let lost = self.lost_at(mhz, &mut Dice::thrown(options.seed, draw.into(), key));
            let at = self.thrown((turn + f64::from(draw) * GOLDEN).fract());
            at.map_or(0.0, |at| misses(at) * lost)
        });
        Some(drawn.collect())
    }

    /// What of it is counted at a place.
    pub(super) fn missed_at(&self, survey: &Survey, place: MeteredAt) -> Missed {
        let here = way_to_place(survey, place);
        let chance = self.suspects.iter().filter(|(at, _)| here.contains(at)).map(|(_, chance)| chance).sum();
        let measured_at = self.readings.iter().map(|held| held.stretch.to).collect();
        Missed { db: self.missing_db(), chance, measured_at }
    }

    /// Where it arises when `share` of all chances lie before that.
    fn thrown(&self, share: f64) -> Option<LostAt> {
        let mut before = 0.0;
        let found = self.suspects.iter().find(|(_, chance)| {
            before += chance;
            share < before
        });
        found.or(self.suspects.last()).map(|(at, _)| *at)
    }

    /// How much is lost at a frequency, dB: as measured there or next to it, in a straight line between two, and beyond them with
    /// the doubt that goes with it.
    fn lost_at(&self, mhz: f64, dice: &mut Dice) -> f64 {
        let elsewhere = dice.span(estimates::house::MISSING_ELSEWHERE.span);
        let nearest = self.lost.iter().min_by(|a, b| (a.0 - mhz).abs().total_cmp(&(b.0 - mhz).abs()));
        let Some(nearest) = nearest else { return 0.0 };
        if (nearest.0 - mhz).abs() <= NEIGHBOUR_MHZ {
            return nearest.1;
        }
        let between = self.lost.windows(2).find_map(|pair| match pair {
            [below, above] if below.0 < mhz && mhz < above.0 => {
                Some(below.1 + (above.1 - below.1) * (mhz - below.0) / (above.0 - below.0))
            }
            _ => None,
        });
        between.unwrap_or(nearest.1 * elsewhere)
    }

    /// Dice of its own: parts and runs throw others, which stand where they do in the house.
    fn key(&self) -> [u8; 16] {
        [self.number; 16]
    }
}

/// What lies between a place that fits and the reading it is held against, by any frequency read there.
fn stretch_of(tree: &Tree<'_>, place: &Metered) -> Vec<LostAt> {
    let known = place.levels.iter().find_map(|(mhz, _)| tree.held_against(place.at, *mhz));
    let Some(known) = known else { return Vec::new() };
    without(&way_to_place(tree.survey, place.at), &way_to_place(tree.survey, known.by))
}

fn without(all: &[LostAt], but: &[LostAt]) -> Vec<LostAt> {
    all.iter().copied().filter(|at| !but.contains(at)).collect()
}

/// What a signal passes from the entry to a place, from the street on. Past an amplifier's port that it does not amplify the
/// amplifier itself is not passed.
fn way_to_place(survey: &Survey, place: MeteredAt) -> Vec<LostAt> {
    let mut way = survey.wiring.way_up(place.part);
    way.reverse();
    let mut found = Vec::new();
    for (step, id) in way.iter().copied().enumerate().skip(1) {
        found.push(LostAt::RunTo(id));
        let next = way.get(step + 1).and_then(|next| survey.wiring.feed(*next)).map(|feed| feed.port);
        found.extend(passed(survey, id, next.or(place.port)));
    }
    found
}

/// What of a part is passed by whoever leaves it by a port; without one it is where the way ends.
fn passed(survey: &Survey, id: SubjectId, port: Option<u8>) -> Vec<LostAt> {
    let Some(part) = survey.parts.get(&id) else { return Vec::new() };
    match port {
        Some(port) if special_port(part, port) == Some(SpecialPort::Passive) => Vec::new(),
        Some(port) if part.outputs() > 1 => vec![LostAt::Part(id), LostAt::Output(id, port)],
        None if part.kind != PartKind::Outlet => Vec::new(),
        _ => vec![LostAt::Part(id)],
    }
}

/// How likely something takes a level, against a sound part, 1.
fn weight(survey: &Survey, at: LostAt) -> f64 {
    match at {
        LostAt::Part(id) => survey.parts.get(&id).map_or(1.0, part_weight_of_level),
        LostAt::Output(..) => OF_ONE_OUTPUT,
        LostAt::RunTo(id) => {
            let run = survey.wiring.feed(id).and_then(|feed| feed.run);
            run_weight(run.and_then(|run| survey.runs.get(&run))).0
        }
    }
}

/// From where to where some places in a row lie.
fn stretch_over(survey: &Survey, shared: &[LostAt]) -> Stretch {
    let begins = |at: LostAt| match at {
        LostAt::Part(part) => MeteredAt { part, port: None },
        LostAt::Output(part, port) => MeteredAt { part, port: Some(port) },
        LostAt::RunTo(part) => survey.wiring.feed(part).map_or(MeteredAt { part, port: None }, |feed| {
            let is_entry = survey.parts.get(&feed.part).is_some_and(|part| part.kind == PartKind::Entry);
            MeteredAt { part: feed.part, port: (!is_entry).then_some(feed.port) }
        }),
    };
    let (part, port, through) = match shared.last().copied() {
        Some(LostAt::Part(part)) => (part, None, true),
        Some(LostAt::Output(part, port)) => (part, Some(port), false),
        Some(LostAt::RunTo(part)) => (part, None, false),
        None => (survey.id, None, false),
    };
    let to = MeteredAt { part, port };
    let of_provider = |at: &LostAt| matches!(at, LostAt::RunTo(part) if survey.is_street_side(*part));
    let street_side = !shared.is_empty() && shared.iter().all(of_provider);
    Stretch { from: shared.first().copied().map_or(to, begins), to, through, street_side }
}
