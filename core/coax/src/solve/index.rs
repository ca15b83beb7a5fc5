//! How parts and outlets of a network are called.

/// A part of one [`Network`](super::Network), counted from 0 in the order of adding.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct PartIndex(pub usize);

/// An outlet of one [`Network`](super::Network), counted from 0 in the order of naming.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct OutletIndex(pub usize);
