//! One house drawn, solved and rated, draw by draw, and what comes of all draws together.

use std::collections::BTreeMap;
use std::sync::Arc;

use coax::link::{self, BitLoading, Candidates, Carried, PathPower, Placement, Version, placements_avoiding};
use coax::{Dice, FrequencyGrid, Megahertz, Sweep};
use facts::fact::SubjectId;
use house::rating::EXTENDED_D;
use house::record::Survey;
use indexmap::IndexMap;

use super::asked::Asked;
use super::circuit::{Circuit, Terminal};
use super::costs;
use super::draws::{Draw, RoomDraw, RoomDraws};
use super::many;
use super::nodes::Node;
use super::options::Options;
use super::outcome::{Cost, Forecast, Reach, SharedCapacity, StreetLeak};
use super::percentile::spread;
use super::placement::{Tried, Ways};
use super::solved::{InWorld, Pairs, Solved, SolvedDraw, in_channels};
use super::taken::taken_edges;
use super::throws::Throws;
use crate::error::AdviceError;

/// So many frequencies over Extended D.
pub(super) fn grid_of(points: usize) -> Result<FrequencyGrid, AdviceError> {
    let (low, high) = (Megahertz(EXTENDED_D.low_mhz), Megahertz(EXTENDED_D.high_mhz));
    Ok(FrequencyGrid::even(low, high, points)?)
}

/// A house to be drawn.
pub(super) struct House<'a> {
    survey: &'a Survey,
    pub(super) options: &'a Options,
    pub(super) circuit: Circuit,
    /// The same with every by-pass of which nobody knows, and without, where one is on the way to a room.
    pub(super) worlds: Option<Box<[Circuit; 2]>>,
    /// The amplifiers on the way to each room of which nobody knows whether they have a by-pass.
    by_passes: Vec<Vec<SubjectId>>,
    pub(super) grid: FrequencyGrid,
    pub(super) bridge: Node,
    pub(super) rooms: Vec<Node>,
    entries: Vec<SubjectId>,
    pub(super) asked: Asked,
}

impl<'a> House<'a> {
    pub(super) fn new(
        survey: &'a Survey,
        bridge: Node,
        rooms: Vec<Node>,
        options: &'a Options,
    ) -> Result<Self, AdviceError> {
        let on_tree: Vec<Node> = std::iter::once(bridge).chain(rooms.iter().copied()).collect();
        let circuit = Circuit::of_tree(survey, survey.wiring.head_of(bridge.outlet), &on_tree);
        let by_passes: Vec<_> =
            rooms.iter().map(|room| circuit.unknown_by_passes(bridge.outlet, room.outlet)).collect();
        let worlds = by_passes
            .iter()
            .any(|unknown| !unknown.is_empty())
            .then(|| Box::new([circuit.in_world(true), circuit.in_world(false)]));
        let grid = grid_of(options.first_points())?;
        let entries: Vec<_> = circuit
            .terminals()
            .filter_map(|terminal| match terminal {
                Terminal::Street(entry) => Some(entry),
                Terminal::Adapter(_) | Terminal::Device(_) | Terminal::Meter => None,
            })
            .collect();
        let asked = Asked::of(&circuit, bridge.outlet, &rooms, &entries);
        Ok(Self { survey, options, circuit, worlds, by_passes, grid, bridge, rooms, entries, asked })
    }

    /// Draws it, and tells what comes of it.
    pub(super) fn work_out(
        &mut self,
        forecast: &mut Forecast,
        reaches: &mut BTreeMap<SubjectId, Reach>,
        goes_on: &mut dyn FnMut() -> bool,
    ) -> Result<(), AdviceError> {
        let candidates = self.may_run().candidates().on(self.grid.frequencies());
        if candidates.placements().is_empty() {
            return Ok(());
        }
        let Some((solved, tried, at)) = self.all_draws(forecast.draws, &candidates, goes_on)? else {
            return Ok(());
        };
        self.told((forecast, reaches), &candidates, (&solved, &tried, at), Told::All)
    }

    /// What comes of all draws, at the placement chosen.
    pub(super) fn told(
        &self,
        (forecast, reaches): (&mut Forecast, &mut BTreeMap<SubjectId, Reach>),
        candidates: &Candidates,
        (solved, tried, at): (&[SolvedDraw], &[Tried], usize),
        told: Told,
    ) -> Result<(), AdviceError> {
        let Some(placement) = candidates.placements().get(at) else { return Ok(()) };
        let draws = solved.len() as u64;
        forecast.draws = u32::try_from(draws).unwrap_or(u32::MAX);
        forecast.frequencies = self.grid.len();
        let chosen =
            Chosen { candidates, at, told, placement, used: in_channels(self.grid.frequencies(), placement) };
        forecast.channels = placement
            .channels()
            .iter()
            .map(|channel| (channel.centre.value(), channel.width.value()))
            .collect();

        let of_room =
            |by_passes: &Vec<SubjectId>| RoomDraws { by_passes: by_passes.clone(), ..RoomDraws::default() };
        let mut rooms: Vec<RoomDraws> = self.by_passes.iter().map(of_room).collect();
        let mut with_all = 0_u32;
        let mut leaks: IndexMap<SubjectId, Vec<f64>> = IndexMap::new();
        let mut airtimes = Vec::new();
        let found = |draw: u64| {
            let draw = usize::try_from(draw).ok()?;
            solved.get(draw).zip(tried.get(draw))
        };
        let work = |(): &mut (), draw| {
            let (solved, tried) = found(draw).ok_or(AdviceError::Inner("draw"))?;
            self.draw(draw, solved, tried, &chosen)
        };
        for draw in many::each(0..draws, || (), work, &mut || true)? {
            for (room, gathered) in draw.rooms.into_iter().zip(&mut rooms) {
                gathered.add(room);
            }
            for (entry, loss) in draw.leaks {
                leaks.entry(entry).or_default().push(loss);
            }
            airtimes.extend(draw.airtime);
            with_all += u32::from(draw.has_all_by_passes);
        }
        let middle = Megahertz(f64::midpoint(placement.low().value(), placement.high().value()));
        for (room, gathered) in self.rooms.iter().zip(rooms) {
            let costs = match told {
                Told::All => self.costs(room, &gathered.loss, middle),
                Told::Rates => Vec::new(),
            };
            let odds = f64::from(with_all) / f64::from(forecast.draws.max(1));
            let path = gathered.summed_up(&self.grid, costs, odds);
            reaches.insert(room.outlet, Reach::Estimated(Box::new(path)));
        }
        forecast.street =
            leaks.into_iter().map(|(entry, losses)| StreetLeak { entry, loss: spread(losses) }).collect();
        // What one room hangs on decides over all wishes at once, too.
        let hangs = self.rooms.iter().any(|room| {
            let Some(Reach::Estimated(path)) = reaches.get(&room.outlet) else { return false };
            let wish = self.survey.wish_at(room.outlet);
            path.by_pass.as_deref().zip(wish).is_some_and(|(worlds, wish)| worlds.decide(wish))
        });
        forecast.shared =
            (!airtimes.is_empty() && !hangs).then(|| SharedCapacity { airtime: spread(airtimes) });
        Ok(())
    }

    /// Where the way to a room loses what it loses, draw by draw.
    fn costs(&self, room: &Node, losses: &[f64], at: Megahertz) -> Vec<Cost> {
        let way = self.circuit.way(Terminal::Adapter(self.bridge.outlet), Terminal::Adapter(room.outlet));
        let median = spread(losses.to_vec()).likely;
        let throw = |draw, key| Dice::thrown(self.options.seed, draw, key);
        costs::along(&self.circuit, &way, losses, median, at, throw)
    }

    /// What the placements depend on among which one is chosen.
    pub(super) fn may_run(&self) -> MayRun {
        let newest = std::iter::once(&self.bridge).chain(&self.rooms).map(|node| node.link.version).max();
        let head = self.survey.wiring.head_of(self.bridge.outlet);
        let spoken = |room: &Node| link::common(self.bridge.link.version, room.link.version);
        let mut spoken: Vec<_> = self.rooms.iter().map(spoken).collect();
        spoken.sort_unstable();
        spoken.dedup();
        MayRun { newest, spoken, taken: taken_edges(self.survey, head) }
    }

    /// The house of one draw, and what it gives at every placement.
    pub(super) fn try_out(
        &self,
        sweep: &mut Sweep,
        draw: u64,
        candidates: &Candidates,
    ) -> Result<(SolvedDraw, Tried), AdviceError> {
        let throws = Throws::of(self.options.seed, draw);
        let solved = self.solve_draw(sweep, &throws)?;
        let tried = self.tried(&solved, &throws, candidates)?;
        Ok((solved, tried))
    }

    /// What a draw gives at every placement.
    pub(super) fn tried(
        &self,
        solved: &SolvedDraw,
        throws: &Throws,
        candidates: &Candidates,
    ) -> Result<Tried, AdviceError> {
        let nodes = self.rooms.len() + 1;
        let pair = |room: &Node, house: &Solved| -> Result<[Carried; 2], AdviceError> {
            let [down, up] = self.loadings(room, house, (self.grid.frequencies(), 1), throws)?;
            Ok([down.carried(candidates)?, up.carried(candidates)?])
        };
        let mut shown = Vec::with_capacity(2 * self.rooms.len());
        for room in &self.rooms {
            shown.extend(pair(room, solved.shown())?);
        }
        let shown = Ways::new(nodes, shown);
        let mut with_by_passes = Vec::new();
        if let Some([with, _]) = solved.worlds() {
            for (place, (room, by_passes)) in self.rooms.iter().zip(&self.by_passes).enumerate() {
                if by_passes.is_empty() {
                    continue;
                }
                if solved.is_with_all() {
                    with_by_passes.extend_from_slice(shown.pair(place));
                } else {
                    with_by_passes.extend(pair(room, with)?);
                }
            }
        }
        Ok(Tried { shown, with_by_passes: Ways::new(nodes, with_by_passes) })
    }

    /// By what share of the power each pair that is asked for differs from what the model makes of it: between the bridge and a
    /// room, the same both ways. Of what leaves for the street the model is taken at its word.
    pub(super) fn model_errors(&self, throws: &Throws) -> Vec<f64> {
        let bridge = self.bridge.outlet;
        let share = |(from, to): &(SubjectId, SubjectId)| {
            let room = self.rooms.iter().map(|room| room.outlet).find(|room| [from, to].contains(&room));
            let between = room.filter(|_| [from, to].contains(&&bridge));
            between.map_or(1.0, |room| throws.model_error(self.survey.dice_key(room)))
        };
        self.asked.names.iter().map(share).collect()
    }

    /// The house of one draw; where a by-pass is not known, in both worlds too.
    fn solve_draw(&self, sweep: &mut Sweep, throws: &Throws) -> Result<SolvedDraw, AdviceError> {
        let errors = self.model_errors(throws);
        let throw = &|key| throws.dice(key);
        let Some([with, without]) = self.worlds.as_deref() else {
            let drawn = self.circuit.drawn(throw)?;
            let powers = sweep.powers(&[&drawn.tree], &self.asked.outlets)?.pop();
            let powers = powers.ok_or(AdviceError::Inner("draw"))?;
            return Ok(SolvedDraw::One(Solved::new(Pairs::Swept(powers), errors)));
        };
        // What is the same in both is drawn once, and worked out once.
        let models = with.models(throw, |_| None)?;
        let alike = |piece| models.get(piece).filter(|_| self.circuit.is_alike_in_worlds(piece)).cloned();
        let mut houses = vec![(InWorld::Without, without.drawn_of(without.models(throw, alike)?, throw)?)];
        let shown = self.circuit.world_shown(throw);
        if shown.is_none() {
            let drawn = self.circuit.drawn_of(self.circuit.models(throw, alike)?, throw)?;
            houses.push((InWorld::AsDrawn, drawn));
        }
        houses.push((InWorld::With, with.drawn_of(models, throw)?));
        let trees: Vec<_> = houses.iter().map(|(_, house)| &house.tree).collect();
        let mut powers: Vec<_> = sweep.powers(&trees, &self.asked.outlets)?.into_iter().map(Some).collect();
        SolvedDraw::of_worlds(shown, |world| {
            let place = houses.iter().position(|(of, _)| *of == world);
            let powers = place.and_then(|place| powers.get_mut(place)?.take());
            let powers = powers.ok_or(AdviceError::Inner("draw"))?;
            Ok(Solved::new(Pairs::Swept(powers), errors.clone()))
        })
    }

    /// What the ways to a room and from it carry, by these frequencies: every so many of the grid's.
    pub(super) fn loadings<'g>(
        &self,
        room: &Node,
        solved: &Solved,
        (frequencies, every): (&'g [Megahertz], usize),
        throws: &Throws,
    ) -> Result<[BitLoading<'g>; 2], AdviceError> {
        let path = |pair| -> Result<Arc<PathPower<'g>>, AdviceError> {
            let mut transfer = solved.power(pair);
            if every > 1 {
                transfer = transfer.into_iter().step_by(every).collect();
            }
            Ok(Arc::new(PathPower::new(frequencies, transfer)?))
        };
        let loading = |path: &Arc<PathPower<'g>>, from: &Node, to: &Node| {
            let draw = throws.link(self.survey.dice_key(from.outlet));
            BitLoading::over(path, from.link, to.link, &draw)
        };
        let [there, back] = [(self.bridge.outlet, room.outlet), (room.outlet, self.bridge.outlet)]
            .map(|(from, to)| self.asked.pair(from, to));
        let down = path(there)?;
        let up = if solved.are_alike(there, back) { Arc::clone(&down) } else { path(back)? };
        Ok([loading(&down, &self.bridge, room)?, loading(&up, room, &self.bridge)?])
    }

    /// The rates to a room and from it.
    pub(super) fn rates(
        &self,
        room: &Node,
        solved: &Solved,
        placement: &Placement,
        throws: &Throws,
    ) -> Result<[link::LinkRate; 2], AdviceError> {
        let nodes = self.rooms.len() + 1;
        let [down, up] = self.loadings(room, solved, (self.grid.frequencies(), 1), throws)?;
        Ok([down.rate(placement, nodes)?, up.rate(placement, nodes)?])
    }

    /// What a draw gives on the channels that were chosen.
    fn draw(
        &self,
        draw: u64,
        drawn: &SolvedDraw,
        tried: &Tried,
        chosen: &Chosen<'_>,
    ) -> Result<Draw, AdviceError> {
        let throws = Throws::of(self.options.seed, draw);
        let solved = drawn.shown();
        let mut demands = Vec::new();
        let mut shown = tried.shown.pairs_at(chosen.candidates, chosen.at);
        let mut with_by_passes = tried.with_by_passes.pairs_at(chosen.candidates, chosen.at);
        let missing = || AdviceError::Inner("placement");
        let rooms = self.rooms.iter().zip(&self.by_passes).map(|(room, by_passes)| {
            let rates = shown.next().ok_or_else(missing)?;
            let mut gave = self.draw_room(room, solved, rates, chosen, &mut demands);
            if let Some([_, without]) = drawn.worlds().filter(|_| !by_passes.is_empty()) {
                let with = with_by_passes.next().ok_or_else(missing)?;
                let without = if drawn.is_without_any() {
                    rates
                } else {
                    self.rates(room, without, chosen.placement, &throws)?
                };
                gave.worlds = Some([with, without]);
            }
            Ok(gave)
        });
        let rooms = rooms.collect::<Result<Vec<_>, AdviceError>>()?;
        let entries = if chosen.told == Told::All { self.entries.as_slice() } else { &[] };
        let to_street = |entry: &SubjectId| (*entry, solved.least_loss(self.asked.to_street(*entry)));
        let leaks = entries.iter().map(to_street).collect();
        let airtime = (!demands.is_empty()).then(|| link::shared::share(&demands).airtime);
        Ok(Draw { rooms, leaks, airtime, has_all_by_passes: drawn.is_with_all() })
    }

    fn draw_room(
        &self,
        room: &Node,
        solved: &Solved,
        [down, up]: [link::LinkRate; 2],
        chosen: &Chosen<'_>,
        demands: &mut Vec<link::shared::Demand>,
    ) -> RoomDraw {
        if let Some(wish) = self.survey.wish_at(room.outlet) {
            let wanted = |mbps| coax::MegabitsPerSecond(mbps);
            demands.push(link::shared::Demand { wanted: wanted(wish.down_mbps), alone: down });
            demands.push(link::shared::Demand { wanted: wanted(wish.up_mbps), alone: up });
        }
        let pair = self.asked.pair(self.bridge.outlet, room.outlet);
        let loss = solved.mean_loss(pair, &chosen.used);
        let power = if chosen.told == Told::All { solved.power(pair) } else { Vec::new() };
        RoomDraw { down, up, loss, power, worlds: None }
    }
}

/// What decides among which placements a network may choose.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct MayRun {
    newest: Option<Version>,
    /// The versions that the bridge and some room both speak.
    spoken: Vec<Version>,
    /// What other services take.
    taken: Vec<(Megahertz, Megahertz)>,
}

impl MayRun {
    /// The placements that no other service needs.
    pub(super) fn candidates(&self) -> Candidates {
        let free = |newest| placements_avoiding(newest, &self.taken);
        Candidates::told_apart_by(self.newest.map_or_else(Vec::new, free), &self.spoken)
    }
}

/// How much of a forecast is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Told {
    /// All of it.
    All,
    /// What the rooms get: not where it is lost, at which frequency, nor what leaves the house.
    Rates,
}

/// The channels that the network runs on.
struct Chosen<'a> {
    /// Which of which candidates.
    candidates: &'a Candidates,
    at: usize,
    told: Told,
    placement: &'a Placement,
    /// Which frequencies of the grid lie in them.
    used: Vec<usize>,
}
