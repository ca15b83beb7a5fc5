//! What a version gives where no cable hinders it: the net rate of two adapters side by side, by the same formulas and draws as
//! the forecast's.

use coax::link::{self, BitLoading, EthernetPort, LinkDraw, common, placements};
use coax::{Dice, FrequencyGrid, Megahertz, Span};
use house::rating::EXTENDED_D;
use house::record::Survey;

use super::nodes::Node;
use super::percentile::spread;
use super::run::Options;

/// Draws over what adapters differ in: so few unknowns, spread evenly over each, that no more are needed.
const DRAWS: u32 = 64;

/// The net rate from one adapter to another in a network of `nodes` nodes, Mb/s, with nothing lost between and no network
/// socket in the way; `None` where the two cannot work together.
pub fn net_without_cable(survey: &Survey, from: &Node, to: &Node, nodes: usize) -> Option<Span> {
    let seed = Options::default().seed;
    let grid = FrequencyGrid::even(Megahertz(EXTENDED_D.low_mhz), Megahertz(EXTENDED_D.high_mhz), 16).ok()?;
    let transfer = vec![1.0; grid.len()];
    let version = common(from.link.version, to.link.version);
    let newest = from.link.version.max(to.link.version);
    let placement =
        placements(newest).into_iter().find(|placement| !placement.channels_for(version).is_empty())?;
    let bare = |node: &Node| link::Node { port: EthernetPort::TenGigabit, ..node.link };
    let rates: Option<Vec<f64>> = (0..u64::from(DRAWS))
        .map(|draw| {
            let mut dice = Dice::thrown(seed, draw, survey.dice_key(from.outlet));
            let draw = LinkDraw::draw(&mut dice);
            let loading = BitLoading::new(grid.frequencies(), &transfer, bare(from), bare(to), &draw).ok()?;
            Some(loading.rate(&placement, nodes).ok()?.net.value())
        })
        .collect();
    rates.map(spread)
}
