//! The forecast itself: draw, solve, rate, and read off the percentiles.

use std::collections::BTreeMap;

use coax::estimates::house::MODEL_ERROR;
use coax::link::{self, BitLoading, Candidates, LinkDraw, Placement, placements_avoiding};
use coax::{Decibels, Dice, FrequencyGrid, Megahertz, OutletIndex, Sweep};
use facts::fact::SubjectId;
use house::rating::EXTENDED_D;
use house::record::Survey;
use indexmap::IndexMap;

use super::circuit::{Circuit, Terminal, variant};
use super::costs;
use super::draws::{Draw, RoomDraw, RoomDraws};
use super::many;
use super::nodes::{Node, nodes_of};
use super::outcome::{Forecast, Reach, RoomForecast, SharedCapacity, StreetLeak};
use super::percentile::spread;
use super::placement::{self, Tried};
use super::solved::{Shown, Solved, SolvedDraw, in_channels, mean_loss};
use super::taken::taken_edges;
use crate::error::AdviceError;

/// The most parts drawn in all draws together: 60 parts are drawn 200 times, and a house of more parts less often, so that
/// a house is forecast about as fast as that, however large.
const MOST_PARTS_DRAWN: usize = 12_000;

/// Sets the dice of a room's model error apart from those of all else at its outlet.
const MODEL_ERROR_KEY: u8 = 9;

/// However large a house is, it is drawn so often: the lowest and the highest tenth are then of two draws each.
const FEWEST_DRAWS: u32 = 20;

/// How a forecast is made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Options {
    /// Draws over the unknowns; fewer where a house has more than 60 parts.
    pub draws: u32,
    /// The seed: the same seed gives the same forecast.
    pub seed: u64,
    /// Frequencies over Extended D.
    pub points: usize,
}

impl Default for Options {
    /// 200 draws at 441 frequencies, 1.25 MHz apart.
    fn default() -> Self {
        Self { draws: 200, seed: 1, points: 441 }
    }
}

impl Options {
    /// How often a house of so many parts is drawn.
    fn draws_over(&self, parts: usize) -> u32 {
        let affordable = u32::try_from(MOST_PARTS_DRAWN / parts.max(1)).unwrap_or(u32::MAX);
        self.draws.clamp(1, affordable.max(FEWEST_DRAWS))
    }
}

/// What gets through to each room that has, or is to have, an adapter.
///
/// # Errors
/// Whatever the physics refuses about a part; a survey folded from facts that were checked gives none.
pub fn forecast(survey: &Survey, options: &Options) -> Result<Forecast, AdviceError> {
    forecast_watched(survey, options, &mut || true)
}

/// The same, watched: `goes_on` is asked before each draw whether to go on.
///
/// # Errors
/// [`AdviceError::Stopped`] once it says no; else as [`forecast()`].
pub fn forecast_watched(
    survey: &Survey,
    options: &Options,
    goes_on: &mut dyn FnMut() -> bool,
) -> Result<Forecast, AdviceError> {
    let nodes = nodes_of(survey);
    let bridge = nodes.first().filter(|node| node.bridge).copied();
    let mut forecast = Forecast {
        seed: options.seed,
        draws: options.draws_over(survey.parts.len()),
        bridge: bridge.map(|node| node.outlet),
        channels: Vec::new(),
        nodes: nodes.len(),
        rooms: Vec::new(),
        street: Vec::new(),
        shared: None,
        round_trip_ms: link::round_trip_added(),
    };
    let rooms: Vec<Node> =
        nodes.iter().filter(|node| Some(node.outlet) != forecast.bridge).copied().collect();
    let mut reaches: BTreeMap<SubjectId, Reach> =
        rooms.iter().map(|room| (room.outlet, reach_on_trees(survey, bridge, room))).collect();
    if let Some(bridge) = bridge {
        let reached: Vec<Node> = rooms
            .iter()
            .filter(|room| !reaches.contains_key(&room.outlet) || joined(&reaches, room))
            .copied()
            .collect();
        let on_tree: Vec<Node> = std::iter::once(bridge).chain(reached.iter().copied()).collect();
        let house = House::new(survey, bridge, &reached, &on_tree, options)?;
        house.work_out(&mut forecast, &mut reaches, goes_on)?;
    }
    forecast.rooms = rooms
        .iter()
        .filter_map(|room| {
            let reach = reaches.remove(&room.outlet)?;
            let room_id = survey.parts.get(&room.outlet).and_then(|part| part.room);
            Some(RoomForecast { outlet: room.outlet, room: room_id, reach })
        })
        .collect();
    let name =
        |room: &RoomForecast| room.room.and_then(|id| survey.rooms.get(&id)).map(|room| room.name.clone());
    forecast.rooms.sort_by_key(name);
    Ok(forecast)
}

/// Whether a room is on the bridge's tree: until its path is worked out it stands as `NoChannel`.
fn joined(reaches: &BTreeMap<SubjectId, Reach>, room: &Node) -> bool {
    matches!(reaches.get(&room.outlet), Some(Reach::NoChannel))
}

/// What the trees tell of a room, before anything is worked out; [`Reach::NoChannel`] where it is on the bridge's tree.
pub(crate) fn reach_on_trees(survey: &Survey, bridge: Option<Node>, room: &Node) -> Reach {
    let Some(bridge) = bridge else { return Reach::NoBridge };
    let wiring = &survey.wiring;
    let dead = |outlet: SubjectId| survey.parts.get(&outlet).is_some_and(|part| survey.is_dead_outlet(part));
    let (ours, theirs) = (wiring.head_of(bridge.outlet), wiring.head_of(room.outlet));
    match (wiring.loose().contains_key(&ours), wiring.loose().contains_key(&theirs)) {
        _ if ours == theirs => Reach::NoChannel,
        _ if dead(room.outlet) => Reach::FedByNothing(room.outlet),
        _ if dead(bridge.outlet) => Reach::FedByNothing(bridge.outlet),
        (_, true) => Reach::Loose(theirs),
        (true, false) => Reach::Loose(ours),
        (false, false) => Reach::OtherTree,
    }
}

struct House<'a> {
    survey: &'a Survey,
    options: &'a Options,
    circuit: Circuit,
    /// The same with every by-pass of which nobody knows, and without, where one is on the way to a room.
    worlds: Option<Box<[Circuit; 2]>>,
    /// The amplifiers on the way to each room of which nobody knows whether they have a by-pass.
    by_passes: Vec<Vec<SubjectId>>,
    grid: FrequencyGrid,
    bridge: Node,
    rooms: &'a [Node],
    entries: Vec<SubjectId>,
    asked: Asked,
}

/// The pairs of terminals that are asked for, each from one to another.
struct Asked {
    names: Vec<(SubjectId, SubjectId)>,
    /// Where it leaves, and where it enters.
    outlets: Vec<(OutletIndex, OutletIndex)>,
}

impl Asked {
    fn of(circuit: &Circuit, bridge: SubjectId, rooms: &[Node], entries: &[SubjectId]) -> Self {
        let mut asked = Self { names: Vec::new(), outlets: Vec::new() };
        let outlet = |terminal| circuit.terminals.get_index_of(&terminal).map(OutletIndex);
        let adapter = |outlet_of| outlet(Terminal::Adapter(outlet_of));
        let mut ask = |from, from_at: Option<_>, to, to_at: Option<_>| {
            if let (Some(from_at), Some(to_at)) = (from_at, to_at) {
                asked.outlets.push((to_at, from_at));
                asked.names.push((from, to));
            }
        };
        for room in rooms {
            ask(bridge, adapter(bridge), room.outlet, adapter(room.outlet));
            ask(room.outlet, adapter(room.outlet), bridge, adapter(bridge));
        }
        for entry in entries {
            for node in std::iter::once(bridge).chain(rooms.iter().map(|room| room.outlet)) {
                ask(node, adapter(node), *entry, outlet(Terminal::Street(*entry)));
            }
        }
        asked
    }

    /// Which of the pairs leads from one to another.
    fn pair(&self, from: SubjectId, to: SubjectId) -> Option<usize> {
        self.names.iter().position(|names| *names == (from, to))
    }

    /// Those that lead to an entry's street side.
    fn to_street(&self, entry: SubjectId) -> impl Iterator<Item = usize> + '_ {
        let leads = move |(_, (_, to)): &(usize, &(SubjectId, SubjectId))| *to == entry;
        self.names.iter().enumerate().filter(leads).map(|(pair, _)| pair)
    }
}

impl<'a> House<'a> {
    fn new(
        survey: &'a Survey,
        bridge: Node,
        rooms: &'a [Node],
        on_tree: &[Node],
        options: &'a Options,
    ) -> Result<Self, AdviceError> {
        let circuit = Circuit::of_tree(survey, survey.wiring.head_of(bridge.outlet), on_tree);
        let by_passes: Vec<_> =
            rooms.iter().map(|room| circuit.unknown_by_passes(bridge.outlet, room.outlet)).collect();
        let worlds = by_passes
            .iter()
            .any(|unknown| !unknown.is_empty())
            .then(|| Box::new([circuit.in_world(true), circuit.in_world(false)]));
        let grid = FrequencyGrid::even(
            Megahertz(EXTENDED_D.low_mhz),
            Megahertz(EXTENDED_D.high_mhz),
            options.points.max(16),
        )?;
        let entries: Vec<_> = circuit
            .terminals()
            .filter_map(|terminal| match terminal {
                Terminal::Street(entry) => Some(entry),
                Terminal::Adapter(_) | Terminal::Device(_) | Terminal::Meter => None,
            })
            .collect();
        let asked = Asked::of(&circuit, bridge.outlet, rooms, &entries);
        Ok(Self { survey, options, circuit, worlds, by_passes, grid, bridge, rooms, entries, asked })
    }

    fn work_out(
        &self,
        forecast: &mut Forecast,
        reaches: &mut BTreeMap<SubjectId, Reach>,
        goes_on: &mut dyn FnMut() -> bool,
    ) -> Result<(), AdviceError> {
        let candidates = self.candidates();
        if candidates.placements().is_empty() {
            return Ok(());
        }
        let draws = u64::from(forecast.draws);
        let tools = || Sweep::on(self.grid.clone());
        let try_out = |sweep: &mut Sweep, draw| self.try_out(sweep, draw, &candidates);
        let (solved, tried): (Vec<SolvedDraw>, Vec<Tried>) =
            many::each(draws, tools, try_out, goes_on)?.into_iter().unzip();
        let chosen = placement::chosen(candidates.placements(), &tried);
        let Some((at, placement)) = chosen.and_then(|at| Some((at, candidates.placements().get(at)?))) else {
            return Ok(());
        };
        let chosen = Chosen { at, placement, used: in_channels(self.grid.frequencies(), placement) };
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
        for draw in many::each(draws, || (), work, &mut || true)? {
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
            let way = self.circuit.way(Terminal::Adapter(self.bridge.outlet), Terminal::Adapter(room.outlet));
            let median = spread(gathered.loss.clone()).likely;
            let throw = |draw, key| Dice::thrown(self.options.seed, draw, key);
            let costs = costs::along(&self.circuit, &way, &gathered.loss, median, middle, throw);
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

    /// The placements that no other service needs.
    fn candidates(&self) -> Candidates {
        let newest = std::iter::once(&self.bridge).chain(self.rooms).map(|node| node.link.version).max();
        let head = self.survey.wiring.head_of(self.bridge.outlet);
        let free = |newest| placements_avoiding(newest, &taken_edges(self.survey, head));
        Candidates::new(newest.map_or_else(Vec::new, free))
    }

    /// The house of one draw, and what it gives at every placement.
    fn try_out(
        &self,
        sweep: &mut Sweep,
        draw: u64,
        candidates: &Candidates,
    ) -> Result<(SolvedDraw, Tried), AdviceError> {
        let throw = |key| Dice::thrown(self.options.seed, draw, key);
        let solved = self.solve_draw(sweep, &throw)?;
        let at_each = |room: &Node, house: &Solved| -> Result<[Vec<link::LinkRate>; 2], AdviceError> {
            let nodes = self.rooms.len() + 1;
            let [down, up] = self.loadings(room, house, &throw)?;
            Ok([down.rates(candidates, nodes)?, up.rates(candidates, nodes)?])
        };
        let mut tried = Tried { shown: Vec::new(), with_by_passes: Vec::new() };
        for (room, by_passes) in self.rooms.iter().zip(&self.by_passes) {
            let shown = at_each(room, solved.shown())?;
            if let Some([with, _]) = solved.worlds().filter(|_| !by_passes.is_empty()) {
                let is_shown = solved.is_with_all();
                tried.with_by_passes.extend(if is_shown { shown.clone() } else { at_each(room, with)? });
            }
            tried.shown.extend(shown);
        }
        Ok((solved, tried))
    }

    /// By what share of the power each pair that is asked for differs from what the model makes of it: between the bridge and a
    /// room, the same both ways. Of what leaves for the street the model is taken at its word.
    fn model_errors(&self, throw: &impl Fn([u8; 16]) -> Dice) -> Vec<f64> {
        let bridge = self.bridge.outlet;
        let error = |room| throw(variant(self.survey.dice_key(room), MODEL_ERROR_KEY)).span(MODEL_ERROR.span);
        let share = |(from, to): &(SubjectId, SubjectId)| {
            let room = self.rooms.iter().map(|room| room.outlet).find(|room| [from, to].contains(&room));
            let between = room.filter(|_| [from, to].contains(&&bridge));
            (-Decibels(between.map_or(0.0, error))).power()
        };
        self.asked.names.iter().map(share).collect()
    }

    /// The house of one draw; where a by-pass is not known, in both worlds too.
    fn solve_draw(
        &self,
        sweep: &mut Sweep,
        throw: &impl Fn([u8; 16]) -> Dice,
    ) -> Result<SolvedDraw, AdviceError> {
        let errors = self.model_errors(throw);
        let Some([with, without]) = self.worlds.as_deref() else {
            let drawn = self.circuit.drawn(throw)?;
            let powers = sweep.powers(&[&drawn.tree], &self.asked.outlets)?.pop();
            let powers = powers.ok_or(AdviceError::Inner("draw"))?;
            return Ok(SolvedDraw::One(Solved::new(powers, errors)));
        };
        // What is the same in both is drawn once, and worked out once.
        let models = with.models(throw, |_| None)?;
        let alike = |piece| models.get(piece).filter(|_| self.circuit.is_alike_in_worlds(piece)).cloned();
        let mut houses = vec![without.drawn_of(without.models(throw, alike)?, throw)?];
        let shown = self.circuit.world_shown(throw);
        if shown.is_none() {
            houses.push(self.circuit.drawn_of(self.circuit.models(throw, alike)?, throw)?);
        }
        houses.push(with.drawn_of(models, throw)?);
        let trees: Vec<_> = houses.iter().map(|house| &house.tree).collect();
        let mut powers = sweep.powers(&trees, &self.asked.outlets)?;
        let mut next = || -> Result<Solved, AdviceError> {
            let powers = powers.pop().ok_or(AdviceError::Inner("draw"))?;
            Ok(Solved::new(powers, errors.clone()))
        };
        let with = next()?;
        let shown = match shown {
            Some(true) => Shown::With,
            Some(false) => Shown::Without,
            None => Shown::Mixed(next()?),
        };
        Ok(SolvedDraw::Worlds { with, without: next()?, shown })
    }

    /// What the ways to a room and from it carry.
    fn loadings(
        &self,
        room: &Node,
        solved: &Solved,
        throw: &impl Fn([u8; 16]) -> Dice,
    ) -> Result<[BitLoading<'_>; 2], AdviceError> {
        let loading = |from: &Node, to: &Node| -> Result<BitLoading<'_>, AdviceError> {
            let transfer = solved.power(self.asked.pair(from.outlet, to.outlet));
            let draw = LinkDraw::draw(&mut throw(self.survey.dice_key(from.outlet)));
            Ok(BitLoading::new(self.grid.frequencies(), &transfer, from.link, to.link, &draw)?)
        };
        Ok([loading(&self.bridge, room)?, loading(room, &self.bridge)?])
    }

    /// The rates to a room and from it.
    fn rates(
        &self,
        room: &Node,
        solved: &Solved,
        placement: &Placement,
        throw: &impl Fn([u8; 16]) -> Dice,
    ) -> Result<[link::LinkRate; 2], AdviceError> {
        let nodes = self.rooms.len() + 1;
        let [down, up] = self.loadings(room, solved, throw)?;
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
        let throw = |key| Dice::thrown(self.options.seed, draw, key);
        let solved = drawn.shown();
        let mut demands = Vec::new();
        let mut shown = placement::pairs_at(&tried.shown, chosen.at);
        let mut with_by_passes = placement::pairs_at(&tried.with_by_passes, chosen.at);
        let missing = || AdviceError::Inner("placement");
        let rooms = self.rooms.iter().zip(&self.by_passes).map(|(room, by_passes)| {
            let rates = shown.next().ok_or_else(missing)?;
            let mut gave = self.draw_room(room, solved, rates, chosen, &mut demands);
            if let Some([_, without]) = drawn.worlds().filter(|_| !by_passes.is_empty()) {
                let with = with_by_passes.next().ok_or_else(missing)?;
                let without = if drawn.is_without_any() {
                    rates
                } else {
                    self.rates(room, without, chosen.placement, &throw)?
                };
                gave.worlds = Some([with, without]);
            }
            Ok(gave)
        });
        let rooms = rooms.collect::<Result<Vec<_>, AdviceError>>()?;
        let to_street = |entry: &SubjectId| (*entry, solved.least_loss(self.asked.to_street(*entry)));
        let leaks = self.entries.iter().map(to_street).collect();
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
        let power = solved.power(self.asked.pair(self.bridge.outlet, room.outlet));
        RoomDraw { down, up, loss: mean_loss(&power, &chosen.used), power, worlds: None }
    }
}

/// The channels that the network runs on.
struct Chosen<'a> {
    /// Which of the candidates.
    at: usize,
    placement: &'a Placement,
    /// Which frequencies of the grid lie in them.
    used: Vec<usize>,
}
