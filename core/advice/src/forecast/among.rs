//! A house among others that are forecast together: what it shares with them, and one draw of it.

use std::collections::HashMap;
use std::sync::Arc;

use coax::link::Candidates;
use coax::{Branches, Dice, Model};

use super::circuit::Circuit;
use super::drawn_house::{House, MayRun};
use super::from_bridge::FromBridge;
use super::pieces::Rated;
use super::placement::Tried;
use super::solved::{InWorld, Solved, SolvedDraw};
use super::throws::Throws;
use crate::error::AdviceError;

/// What is the same in several houses. Their pieces, those that are the same numbered alike: with the same dice they are the same
/// part. The placements among which they choose.
#[derive(Debug, Default)]
pub(super) struct Alike {
    by_key: HashMap<[u8; 16], Vec<(usize, Rated)>>,
    pub(super) pieces: usize,
    candidates: Vec<(MayRun, Arc<Candidates>)>,
}

impl Alike {
    /// Among which placements a house chooses.
    fn candidates(&mut self, house: &House<'_>) -> Arc<Candidates> {
        let may_run = house.may_run();
        if let Some((_, known)) = self.candidates.iter().find(|(of, _)| *of == may_run) {
            return Arc::clone(known);
        }
        let candidates = Arc::new(may_run.candidates());
        self.candidates.push((may_run, Arc::clone(&candidates)));
        candidates
    }

    /// The numbers of a circuit's pieces.
    fn numbers(&mut self, circuit: &Circuit) -> Vec<usize> {
        let mut numbers = Vec::with_capacity(circuit.pieces.len());
        for piece in &circuit.pieces {
            let same_key = self.by_key.entry(piece.key).or_default();
            let known = same_key.iter().find(|(_, rated)| *rated == piece.rated).map(|(number, _)| *number);
            numbers.push(known.unwrap_or_else(|| {
                same_key.push((self.pieces, piece.rated.clone()));
                self.pieces += 1;
                self.pieces - 1
            }));
        }
        numbers
    }
}

/// A house among others.
pub(super) struct Among<'a> {
    /// Which of them.
    pub(super) place: usize,
    pub(super) draws: u32,
    pub(super) house: &'a House<'a>,
    pub(super) candidates: Arc<Candidates>,
    seen: FromBridge,
    /// Its pieces; with every by-pass of which nobody knows, and without, where one is on the way to a room.
    pieces: Vec<usize>,
    worlds: Option<[Vec<usize>; 2]>,
}

impl<'a> Among<'a> {
    /// `None` where nothing is to be drawn, or it cannot be seen from its bridge.
    pub(super) fn of(
        place: usize,
        draws: u32,
        house: &'a House<'a>,
        alike: &mut Alike,
    ) -> Result<Option<Self>, AdviceError> {
        let candidates = alike.candidates(house);
        if candidates.placements().is_empty() {
            return Ok(None);
        }
        let Some(seen) = FromBridge::of(house)? else { return Ok(None) };
        let own = alike.numbers(&house.circuit);
        let worlds =
            house.worlds.as_deref().map(|worlds| worlds.each_ref().map(|world| alike.numbers(world)));
        Ok(Some(Self { place, draws, house, candidates, seen, pieces: own, worlds }))
    }

    /// The house of one draw, and what it gives at every placement. `drawn` are the pieces that are drawn, by their numbers.
    pub(super) fn draw(
        &self,
        throws: &Throws,
        branches: &mut Branches,
        drawn: &mut [Option<Arc<Model>>],
    ) -> Result<(SolvedDraw, Tried), AdviceError> {
        let house = self.house;
        let throw = |key| throws.dice(key);
        let errors = house.model_errors(throws);
        let ends = self.seen.ends(house, throws);
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
