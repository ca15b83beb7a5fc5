//! A house among others that are forecast together: what it shares with them, and one draw of it.

use std::collections::HashMap;
use std::sync::Arc;

use coax::link::Candidates;
use coax::{Branches, Complex64, Dice, Model};
use foldhash::fast::FixedState;

use super::circuit::Circuit;
use super::drawn_house::{House, MayRun, Told};
use super::pieces::{Ending, Rated};
use super::placement::Tried;
use super::solved::{InWorld, Solved, SolvedDraw};
use super::throws::Throws;
use super::views::Views;
use crate::error::AdviceError;

/// Things numbered by what they are and the key of their dice: what is the same in several houses has one number.
#[derive(Debug)]
struct Numbered<T> {
    by_key: HashMap<[u8; 16], Vec<(usize, T)>, FixedState>,
    count: usize,
}

impl<T> Default for Numbered<T> {
    fn default() -> Self {
        Self { by_key: HashMap::default(), count: 0 }
    }
}

impl<T: PartialEq + Clone> Numbered<T> {
    /// The numbers of some of them.
    fn numbers<'a>(&mut self, all: impl Iterator<Item = (&'a [u8; 16], &'a T)>) -> Vec<usize>
    where
        T: 'a,
    {
        all.map(|(key, thing)| {
            let same_key = self.by_key.entry(*key).or_default();
            let known = same_key.iter().find(|(_, other)| other == thing).map(|(number, _)| *number);
            known.unwrap_or_else(|| {
                same_key.push((self.count, thing.clone()));
                self.count += 1;
                self.count - 1
            })
        })
        .collect()
    }
}

/// What is the same in several houses. Their pieces and endings, those that are the same numbered alike: with the same dice they are
/// the same. The placements among which they choose.
#[derive(Debug, Default)]
pub(super) struct Alike {
    pieces: Numbered<Rated>,
    /// Each piece drawn in some way, by its number.
    drawn_somehow: Vec<Option<Arc<Model>>>,
    endings: Numbered<Ending>,
    candidates: Vec<(MayRun, Arc<Candidates>)>,
}

impl Alike {
    /// Among which placements a house chooses.
    fn candidates(&mut self, house: &House<'_>) -> Arc<Candidates> {
        let may_run = house.may_run();
        if let Some((_, known)) = self.candidates.iter().find(|(of, _)| *of == may_run) {
            return Arc::clone(known);
        }
        let candidates = Arc::new(may_run.candidates().on(house.grid.frequencies()));
        self.candidates.push((may_run, Arc::clone(&candidates)));
        candidates
    }

    /// The numbers of a circuit's pieces.
    fn pieces(&mut self, circuit: &Circuit) -> Vec<usize> {
        self.pieces.numbers(circuit.pieces.iter().map(|piece| (&piece.key, &piece.rated)))
    }

    /// The numbers of a circuit's endings.
    fn endings(&mut self, circuit: &Circuit) -> Vec<usize> {
        self.endings.numbers(circuit.endings.iter().map(|(_, ending, key)| (key, ending)))
    }

    /// Pieces of a circuit drawn in some way.
    fn drawn_somehow(
        &mut self,
        circuit: &Circuit,
        numbers: &[usize],
    ) -> Result<Vec<Arc<Model>>, AdviceError> {
        self.drawn_somehow.resize(self.pieces.count, None);
        drawn_models(circuit, numbers, &|key| Dice::thrown(0, 0, key), &mut self.drawn_somehow)
    }
}

/// What is drawn of some houses in one draw, each thing once.
#[derive(Debug, Default)]
pub(super) struct DrawnOnce {
    /// The pieces, by their numbers.
    models: Vec<Option<Arc<Model>>>,
    /// What the endings send back, by their numbers.
    ends: Vec<Option<Complex64>>,
}

impl DrawnOnce {
    /// Has room for all that is numbered.
    pub(super) fn make_room(&mut self, alike: &Alike) {
        self.models.resize(alike.pieces.count, None);
        self.ends.resize(alike.endings.count, None);
    }

    pub(super) fn forget(&mut self) {
        self.models.clear();
        self.ends.clear();
    }
}

/// A house among others.
pub(super) struct Among<'a> {
    /// Which of them.
    pub(super) place: usize,
    pub(super) draws: u32,
    pub(super) told: Told,
    pub(super) house: &'a House<'a>,
    pub(super) candidates: Arc<Candidates>,
    seen: Views,
    /// Its pieces; with every by-pass of which nobody knows, and without, where one is on the way to a room.
    pieces: Vec<usize>,
    worlds: Option<[Vec<usize>; 2]>,
    /// Its endings.
    endings: Vec<usize>,
}

impl<'a> Among<'a> {
    /// `None` where nothing is to be drawn, or it cannot be seen from its bridge.
    pub(super) fn of(
        (place, draws, told): (usize, u32, Told),
        house: &'a House<'a>,
        alike: &mut Alike,
    ) -> Result<Option<Self>, AdviceError> {
        let candidates = alike.candidates(house);
        if candidates.placements().is_empty() {
            return Ok(None);
        }
        let own = alike.pieces(&house.circuit);
        let Some(seen) = Views::of(house, told, &alike.drawn_somehow(&house.circuit, &own)?)? else {
            return Ok(None);
        };
        let endings = alike.endings(&house.circuit);
        let worlds = house.worlds.as_deref().map(|worlds| worlds.each_ref().map(|world| alike.pieces(world)));
        Ok(Some(Self { place, draws, told, house, candidates, seen, pieces: own, worlds, endings }))
    }

    /// The house of one draw, and what it gives at every placement.
    pub(super) fn draw(
        &self,
        throws: &Throws,
        branches: &mut Branches,
        drawn: &mut DrawnOnce,
    ) -> Result<(SolvedDraw, Tried), AdviceError> {
        let house = self.house;
        let throw = |key| throws.dice(key);
        let errors = house.model_errors(throws);
        let DrawnOnce { models: drawn, ends: known } = drawn;
        let ends = self.seen.ends(|ending| {
            let number = self.endings.get(ending).and_then(|number| known.get_mut(*number));
            let sent_back = || house.circuit.sent_back(ending, throw);
            number.map_or_else(sent_back, |known| *known.get_or_insert_with(sent_back))
        });
        let mut solve = |circuit: &Circuit, numbers: &[usize]| -> Result<Solved, AdviceError> {
            let models = drawn_models(circuit, numbers, &throw, drawn)?;
            self.seen.solved(branches, &models, &ends, &errors)
        };
        let solved = match (house.worlds.as_deref(), &self.worlds) {
            (Some([with, without]), Some([pieces_with, pieces_without])) => {
                SolvedDraw::of_worlds(house.circuit.world_shown(throw), |world| match world {
                    InWorld::AsDrawn => solve(&house.circuit, &self.pieces),
                    InWorld::With => solve(with, pieces_with),
                    InWorld::Without => solve(without, pieces_without),
                })?
            }
            _ => SolvedDraw::One(solve(&house.circuit, &self.pieces)?),
        };
        let tried = house.tried(&solved, throws, &self.candidates)?;
        Ok((solved, tried))
    }
}

/// The parts of a circuit, each drawn once for all houses in which it is the same.
fn drawn_models(
    circuit: &Circuit,
    numbers: &[usize],
    throw: &impl Fn([u8; 16]) -> Dice,
    drawn: &mut [Option<Arc<Model>>],
) -> Result<Vec<Arc<Model>>, AdviceError> {
    let mut models = Vec::with_capacity(numbers.len());
    for (piece, number) in circuit.pieces.iter().zip(numbers) {
        let known = drawn.get_mut(*number).ok_or(AdviceError::Inner("piece"))?;
        let model = match known {
            Some(model) => Arc::clone(model),
            None => Arc::clone(known.insert(Arc::new(piece.rated.draw(&mut throw(piece.key))?))),
        };
        models.push(model);
    }
    Ok(models)
}
