//! A house drawn as often, and at as many frequencies, as it takes until its rates stand.

use coax::link::Candidates;
use coax::{Megahertz, Sweep};

use super::drawn_house::{House, grid_of};
use super::many;
use super::options::FIRST_DRAWS;
use super::placement::{self, Tried};
use super::settled;
use super::solved::SolvedDraw;
use super::throws::Throws;
use crate::error::AdviceError;

/// All draws, what they give at every placement, and which placement is chosen.
pub(super) type AllDraws = (Vec<SolvedDraw>, Vec<Tried>, usize);

impl House<'_> {
    /// The house drawn as often and at as many frequencies as it takes, and which of the candidates the network runs at; nothing
    /// where there is none.
    pub(super) fn all_draws(
        &mut self,
        most: u32,
        candidates: &Candidates,
        goes_on: &mut dyn FnMut() -> bool,
    ) -> Result<Option<AllDraws>, AdviceError> {
        let most = u64::from(most);
        let first = if self.options.settles { most.min(FIRST_DRAWS.into()) } else { most };
        let (mut solved, mut tried): (Vec<SolvedDraw>, Vec<Tried>) = (Vec::new(), Vec::new());
        let mut draws = first;
        loop {
            let made = solved.len() as u64;
            let tools = || Sweep::on(self.grid.clone());
            let try_out = |sweep: &mut Sweep, draw| self.try_out(sweep, draw, candidates);
            for (one, tries) in many::each(made..draws, tools, try_out, goes_on)? {
                solved.push(one);
                tried.push(tries);
            }
            let Some(at) = placement::chosen(candidates, &tried) else { return Ok(None) };
            let finer = (2 * self.grid.len() - 1).min(self.options.points);
            if draws == first
                && finer > self.grid.len()
                && !self.frequencies_do(&solved, &tried, candidates, at)?
            {
                self.grid = grid_of(finer)?;
                (solved, tried) = (Vec::new(), Vec::new());
            } else if draws < most && !rates_at(&tried, candidates, at).all(settled::draws_do) {
                draws = most.min(2 * draws);
            } else {
                return Ok(Some((solved, tried, at)));
            }
        }
    }

    /// Whether every second frequency would give the same rates.
    fn frequencies_do(
        &self,
        solved: &[SolvedDraw],
        tried: &[Tried],
        candidates: &Candidates,
        at: usize,
    ) -> Result<bool, AdviceError> {
        if self.grid.len().is_multiple_of(2) {
            return Ok(false);
        }
        let Some(placement) = candidates.placements().get(at) else { return Ok(true) };
        let every_second: Vec<Megahertz> = self.grid.frequencies().iter().copied().step_by(2).collect();
        let mut without = vec![Vec::with_capacity(solved.len()); 2 * self.rooms.len()];
        for (draw, solved) in (0..).zip(solved) {
            let throws = Throws::of(self.options.seed, draw);
            for (room, ways) in self.rooms.iter().zip(without.chunks_exact_mut(2)) {
                let loadings = self.loadings(room, solved.shown(), (&every_second, 2), &throws)?;
                for (loading, way) in loadings.iter().zip(ways) {
                    way.push(loading.rate(placement, self.rooms.len() + 1)?.net.value());
                }
            }
        }
        Ok(rates_at(tried, candidates, at)
            .zip(without)
            .all(|(all, without)| settled::frequencies_do(all, without)))
    }
}

/// What each way gives at a placement, draw by draw, Mb/s.
fn rates_at<'a>(
    tried: &'a [Tried],
    candidates: &'a Candidates,
    at: usize,
) -> impl Iterator<Item = Vec<f64>> + use<'a> {
    let ways = tried.first().map_or(0, |one| one.shown.count());
    (0..ways).map(move |way| {
        tried.iter().filter_map(|one| Some(one.shown.rate(way, candidates, at)?.net.value())).collect()
    })
}
