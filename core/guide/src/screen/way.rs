//! How one came to a screen.

/// How one came to the screen from the one before it: a shell may show it by the way in which it turns the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum WayTaken {
    /// On: to something new, or deeper in.
    On,
    /// Back to where one was, or out.
    Back,
    /// Nowhere: it is the same place, drawn anew.
    #[default]
    Same,
}
