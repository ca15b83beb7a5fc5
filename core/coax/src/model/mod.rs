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

use crate::lanes::{Phasor, Real};
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
        self.scatter_at(frequency.value(), &mut into.0);
    }

    /// Writes it at one frequency, in MHz, or at eight at once.
    #[inline(always)]
    pub(crate) fn scatter_at<R: Real>(&self, frequency: R, into: &mut Multiport<R>) {
        into.reset(self.ports());
        match self {
            Self::Cable(cable) => cable.scatter(frequency, into),
            Self::Splitter(splitter) => splitter.scatter(frequency, into),
            Self::EntryFilter(filter) => filter.scatter(frequency, into),
            Self::BandFilter(filter) => filter.scatter(frequency, into),
            Self::Tap(tap) => tap.scatter(frequency, into),
            Self::Diplexer(diplexer) => one_by_one(frequency, into, |f, into| diplexer.scatter(f, into)),
            Self::Amplifier(amplifier) => amplifier.scatter(frequency, into),
            Self::Junction(junction) => junction.scatter(into),
            Self::Law(table) => one_by_one(frequency, into, |f, into| table.scatter(f, into)),
            Self::Measured(part) => one_by_one(frequency, into, |f, into| part.scatter(f, into)),
            Self::Link(link) => link.scatter(frequency, into),
        }
    }
}

/// A phase of `radians` as a factor of magnitude 1.
pub(crate) fn turn(radians: f64) -> num_complex::Complex64 {
    num_complex::Complex64::cis(radians)
}

/// The factor by which a delay of `nanoseconds` turns a wave at `frequency`: `exp(-j 2 pi f t)`.
#[inline(always)]
pub(crate) fn delayed<R: Real>(megahertz: R, nanoseconds: f64) -> Phasor<R> {
    (megahertz * R::of(nanoseconds * -1e-3)).turns()
}

/// Writes a matrix frequency by frequency, where a part's formula is not one for all of them.
pub(crate) fn one_by_one<R: Real>(
    megahertz: R,
    into: &mut Multiport<R>,
    scatter: impl Fn(f64, &mut Multiport<f64>),
) {
    let mut one = Multiport::new(into.ports());
    for lane in 0..R::COUNT {
        one.reset(into.ports());
        scatter(megahertz.lane(lane), &mut one);
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
