//! What a version gives where no cable hinders it: the net rate of two adapters side by side, by the same formulas and draws as
//! the forecast's.

use std::cell::RefCell;

use coax::link::{self, BitLoading, EthernetPort, LinkDraw, common, placements};
use coax::{Dice, FrequencyGrid, Megahertz, Span};
use house::rating::EXTENDED_D;
use house::record::Survey;

use super::nodes::Node;
use super::options::Options;
use super::percentile::spread;

/// Draws over what adapters differ in: so few unknowns, spread evenly over each, that no more are needed.
const DRAWS: u32 = 64;

/// So many are kept at the most; then all are forgotten.
const MOST_KEPT: usize = 512;

/// All that the net rate of two adapters side by side depends on: where the one that sends stands (for its dice), both, how many
/// there are.
type Key = ([u8; 16], link::Node, link::Node, usize);

thread_local! {
    /// Whoever looks for a plan asks for the same few pairs for each of hundreds of houses.
    static KNOWN: RefCell<Vec<(Key, Option<Span>)>> = const { RefCell::new(Vec::new()) };
}

/// The net rate from one adapter to another in a network of `nodes` nodes, Mb/s, with nothing lost between and no network
/// socket in the way; `None` where the two cannot work together.
pub fn net_without_cable(survey: &Survey, from: &Node, to: &Node, nodes: usize) -> Option<Span> {
    let key = (survey.dice_key(from.outlet), from.link, to.link, nodes);
    KNOWN.with_borrow_mut(|known| {
        if let Some((_, net)) = known.iter().find(|(of, _)| *of == key) {
            return *net;
        }
        if known.len() >= MOST_KEPT {
            known.clear();
        }
        let net = worked_out(key);
        known.push((key, net));
        net
    })
}

fn worked_out((dice_key, from, to, nodes): Key) -> Option<Span> {
    let seed = Options::default().seed;
    let grid = FrequencyGrid::even(Megahertz(EXTENDED_D.low_mhz), Megahertz(EXTENDED_D.high_mhz), 16).ok()?;
    let transfer = vec![1.0; grid.len()];
    let version = common(from.version, to.version);
    let newest = from.version.max(to.version);
    let placement =
        placements(newest).into_iter().find(|placement| !placement.channels_for(version).is_empty())?;
    let bare = |node: link::Node| link::Node { port: EthernetPort::TenGigabit, ..node };
    let rates: Option<Vec<f64>> = (0..u64::from(DRAWS))
        .map(|draw| {
            let draw = LinkDraw::draw(&mut Dice::thrown(seed, draw, dice_key));
            let loading =
                BitLoading::new(grid.frequencies(), transfer.as_slice(), bare(from), bare(to), &draw).ok()?;
            Some(loading.rate(&placement, nodes).ok()?.net.value())
        })
        .collect();
    rates.map(spread)
}
