//! Parts as concrete multiports: numbers only, no ranges. What a label or a guess says stands in [`crate::rated`].

#![expect(
    clippy::inline_always,
    reason = "the arithmetic must be compiled anew inside each instruction set's copy of the evaluation"
)]

mod amplifier;
mod band_filter;
mod cable;
mod diplexer;
mod entry_filter;
mod junction;
mod link;
mod measured;
mod splitter;
mod table;
mod tap;
mod two_port;

pub use amplifier::{Amplifier, AmplifierCore};
pub use band_filter::{BandFilter, FilterEdge, PassBand};
pub use cable::{Cable, REFERENCE_OHM, SPEED_OF_LIGHT};
pub use diplexer::Diplexer;
pub use entry_filter::EntryFilter;
pub use junction::Junction;
pub use link::Link;
pub use measured::Measured;
pub use splitter::{AboveRating, Splitter};
pub use table::{Entry, ExplicitMultiport};
pub use tap::Tap;

use std::sync::Arc;

use two_port::TwoPort;

use crate::lanes::{Lanes, Phasor, Real};
use crate::look::{ANCHOR, Blocks, Look};
use crate::multiport::Multiport;
use crate::quantity::Megahertz;
use crate::scatter::ScatterMatrix;

/// One part. Port 0 faces the street, ports 1 and up face the outlets.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Model {
    /// A run of cable: 2 ports.
    Cable(Cable),
    /// A splitter: input and legs.
    Splitter(Splitter),
    /// A filter that passes one band and sends another back: 2 ports.
    EntryFilter(EntryFilter),
    /// A filter of one pass band or several: 2 ports.
    BandFilter(BandFilter),
    /// A tap (directional coupler): input, through output and taps.
    Tap(Box<Tap>),
    /// A satellite combiner: common port, port of the lower band, satellite port.
    Diplexer(Diplexer),
    /// An amplifier: input and outputs.
    Amplifier(Box<Amplifier>),
    /// Conductors tied together.
    Junction(Junction),
    /// A multiport whose every entry is given.
    Law(ExplicitMultiport),
    /// A part that was measured, from a Touchstone file.
    Measured(Arc<Measured>),
    /// A barrel, ground block, wall plate, pad or power inserter: 2 ports, no length.
    Link(Link),
}

impl Model {
    /// How many ports the part has.
    pub fn ports(&self) -> usize {
        match self {
            Self::Cable(_) | Self::EntryFilter(_) | Self::BandFilter(_) | Self::Link(_) => 2,
            Self::Diplexer(_) => 3,
            Self::Tap(tap) => tap.ports(),
            Self::Splitter(splitter) => splitter.ports(),
            Self::Amplifier(amplifier) => amplifier.ports(),
            Self::Junction(junction) => junction.ports(),
            Self::Law(table) => table.ports(),
            Self::Measured(part) => part.ports(),
        }
    }

    /// Whether the part carries a wave alike in both directions between any two ports.
    pub fn is_reciprocal(&self) -> bool {
        match self {
            Self::Amplifier(_) => false,
            Self::Law(table) => table.is_reciprocal(),
            Self::Measured(part) => part.is_reciprocal(),
            _ => true,
        }
    }

    /// Writes the part's scattering matrix at `frequency`.
    pub fn scatter(&self, frequency: Megahertz, into: &mut ScatterMatrix) {
        let mut look = Look::at(frequency.value());
        into.0.reset(self.ports());
        match self.two_port(&mut look) {
            Some(two_port) => two_port.write(&mut into.0),
            None => self.multiport(&mut look, &mut Housing::default(), &mut into.0),
        }
    }

    /// The part over some blocks: its matrices one after the other, each row by row with its ports in this order. Every eighth
    /// block is exact.
    #[inline(always)]
    pub(crate) fn scatter_over(
        &self,
        order: &[usize],
        blocks: &[(Lanes, Lanes)],
        filler: &mut Filler,
        into: &mut [Phasor<Lanes>],
    ) {
        let Filler { look, matrix, housing } = filler;
        let entries = order.len() * order.len();
        let is_turned = order.first() == Some(&1);
        for (blocks, into) in blocks.chunks(ANCHOR).zip(into.chunks_mut(ANCHOR * entries)) {
            look.begin();
            for ((megahertz, root), into) in blocks.iter().zip(into.chunks_exact_mut(entries)) {
                look.go_to(*megahertz, *root);
                if let Some(two_port) = self.two_port(look) {
                    two_port.write_turned(is_turned, into);
                } else {
                    matrix.reset(self.ports());
                    self.multiport(look, housing, matrix);
                    matrix.write_in_order(order, into);
                }
            }
        }
    }

    /// A part of two ports that is alike both ways. Closures would be compiled without the instruction set that the caller is
    /// compiled for: there are none here or below.
    #[inline(always)]
    fn two_port<R: Real>(&self, look: &mut Look<R>) -> Option<TwoPort<R>> {
        match self {
            Self::Cable(cable) => Some(cable.two_port(look)),
            Self::EntryFilter(filter) => Some(filter.two_port(look)),
            Self::BandFilter(filter) => Some(filter.two_port(look)),
            Self::Link(link) => Some(link.two_port(look)),
            _ => None,
        }
    }

    /// Any other part. What splitters it has in its housing are worked out first, all in one place of the code.
    #[inline(always)]
    fn multiport<R: Real>(&self, look: &mut Look<R>, housing: &mut Housing<R>, into: &mut Multiport<R>) {
        let (first, second) = match self {
            Self::Splitter(splitter) => (Some(splitter), None),
            Self::Tap(tap) => tap.splitters(),
            Self::Amplifier(amplifier) => amplifier.splitters(),
            _ => (None, None),
        };
        for (splitter, matrix) in [first, second].into_iter().zip(&mut housing.splitters) {
            if let Some(splitter) = splitter {
                matrix.reset(splitter.ports());
                splitter.scatter(look, matrix);
            }
        }
        let [first, second] = &mut housing.splitters;
        match self {
            Self::Splitter(_) => std::mem::swap(into, first),
            Self::Tap(tap) => tap.scatter(first, second, into),
            Self::Amplifier(amplifier) => amplifier.scatter(look, first, second, into),
            Self::Junction(junction) => junction.scatter(into),
            Self::Law(table) => table.scatter(look, into),
            Self::Diplexer(diplexer) => one_by_one(look, into, |f, into| diplexer.scatter(f, into)),
            Self::Measured(part) => one_by_one(look, into, |f, into| part.scatter(f, into)),
            Self::Cable(_) | Self::EntryFilter(_) | Self::BandFilter(_) | Self::Link(_) => {}
        }
    }
}

/// The matrices of the splitters in one housing.
#[derive(Debug)]
pub(crate) struct Housing<R> {
    splitters: [Multiport<R>; 2],
}

impl<R: Real> Default for Housing<R> {
    fn default() -> Self {
        Self { splitters: [Multiport::new(0), Multiport::new(0)] }
    }
}

/// What evaluating needs besides the place where the matrices go; kept from part to part.
#[derive(Debug)]
pub(crate) struct Filler {
    look: Look<Lanes>,
    matrix: Multiport<Lanes>,
    housing: Housing<Lanes>,
}

impl Filler {
    /// For the blocks of a grid.
    pub fn on(blocks: &Blocks) -> Self {
        Self { look: Look::over(blocks.step), matrix: Multiport::new(0), housing: Housing::default() }
    }
}

/// A phase of `radians` as a factor of magnitude 1.
pub(crate) fn turn(radians: f64) -> num_complex::Complex64 {
    num_complex::Complex64::cis(radians)
}

/// Writes a matrix frequency by frequency, where a part's formula is not one for all of them.
pub(crate) fn one_by_one<R: Real>(
    look: &Look<R>,
    into: &mut Multiport<R>,
    scatter: impl Fn(f64, &mut Multiport<f64>),
) {
    let mut one = Multiport::new(into.ports());
    for lane in 0..R::COUNT {
        one.reset(into.ports());
        scatter(look.megahertz.lane(lane), &mut one);
        for to in 0..into.ports() {
            for from in 0..into.ports() {
                let (value, mut entry) = (one.at(to, from), into.at(to, from));
                entry.re.set_lane(lane, value.re);
                entry.im.set_lane(lane, value.im);
                into.set(to, from, entry);
            }
        }
    }
}
