//! How much something weighs, as a state.

/// How much something weighs. A shell shows it by shape and word, and by colour last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Severity {
    /// Nothing is wrong.
    #[default]
    Calm,
    /// Good to know.
    Note,
    /// Costs little.
    Minor,
    /// Costs speed, or may soon.
    Costly,
    /// Can hurt someone, cut something off, or let strangers in.
    Grave,
}
