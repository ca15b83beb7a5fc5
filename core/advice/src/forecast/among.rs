//! A house among others that are forecast together: what it shares with them, and one draw of it.

use std::collections::HashMap;
use std::sync::Arc;

use coax::link::Candidates;
use coax::{BranchNumbers, Branches, Complex64, Dice, Model, NumberedBranches};
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
    branches: BranchNumbers,
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
        let drawn = &mut self.drawn_somehow;
        let somehow = |key| Dice::thrown(0, 0, key);
        (0..numbers.len()).map(|piece| drawn_model(circuit, numbers, piece, &somehow, drawn)).collect()
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
    own: Laying,
    /// With every by-pass of which nobody knows, and without, where one is on the way to a room.
    worlds: Option<[Laying; 2]>,
    /// Its endings.
    endings: Vec<usize>,
}

/// What a circuit is made of, by the numbers that it has in all houses.
struct Laying {
    pieces: Vec<usize>,
    /// Its branches, view by view.
    branches: Vec<NumberedBranches>,
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
        let laying = |pieces: Vec<usize>, alike: &mut Alike| -> Result<Laying, AdviceError> {
            Ok(Laying { branches: seen.numbered(&mut alike.branches, &pieces, &endings)?, pieces })
        };
        let own = laying(own, alike)?;
        let worlds = match house.worlds.as_deref() {
            Some(worlds) => {
                let [with, without] = worlds.each_ref().map(|world| alike.pieces(world));
                Some([laying(with, alike)?, laying(without, alike)?])
            }
            None => None,
        };
        Ok(Some(Self { place, draws, told, house, candidates, seen, own, worlds, endings }))
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
        let mut solve = |circuit: &Circuit, laying: &Laying| -> Result<Solved, AdviceError> {
            let sends = |ending: usize| {
                let number = self.endings.get(ending).and_then(|number| known.get_mut(*number));
                let sent_back = || house.circuit.sent_back(ending, throw);
                number.map_or_else(sent_back, |known| *known.get_or_insert_with(sent_back))
            };
            let model = |piece: usize| drawn_model(circuit, &laying.pieces, piece, &throw, drawn);
            self.seen.solved(branches, &laying.branches, model, sends, &errors)
        };
        let solved = match (house.worlds.as_deref(), &self.worlds) {
            (Some([with, without]), Some([laid_with, laid_without])) => {
                SolvedDraw::of_worlds(house.circuit.world_shown(throw), |world| match world {
                    InWorld::AsDrawn => solve(&house.circuit, &self.own),
                    InWorld::With => solve(with, laid_with),
                    InWorld::Without => solve(without, laid_without),
                })?
            }
            _ => SolvedDraw::One(solve(&house.circuit, &self.own)?),
        };
        let tried = house.tried(&solved, throws, &self.candidates)?;
        Ok((solved, tried))
    }
}

/// A piece of a circuit, drawn once for all houses in which it is the same.
fn drawn_model(
    circuit: &Circuit,
    numbers: &[usize],
    piece: usize,
    throw: &impl Fn([u8; 16]) -> Dice,
    drawn: &mut [Option<Arc<Model>>],
) -> Result<Arc<Model>, AdviceError> {
    let missing = || AdviceError::Inner("piece");
    let number = *numbers.get(piece).ok_or_else(missing)?;
    let known = drawn.get_mut(number).ok_or_else(missing)?;
    if let Some(model) = known {
        return Ok(Arc::clone(model));
    }
    let piece = circuit.pieces.get(piece).ok_or_else(missing)?;
    Ok(Arc::clone(known.insert(Arc::new(piece.rated.draw(&mut throw(piece.key))?))))
}
