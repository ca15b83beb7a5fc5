//! What of a screen stands at its foot.

/// What of a screen stands in its dock, by the ids of its blocks: all else stands between head and dock. The way back and the
/// light of the device stand there, too.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct DockShown {
    /// The one choice of a screen that asks nothing else, if its answers are few.
    pub answers: Option<String>,
    /// The way on, and at most one press beside it, the way on first.
    pub on: Vec<String>,
    /// Presses that can wait.
    pub out: Vec<String>,
    /// Whether an answer to the one choice of the screen leads on by itself: there is no press that would take it.
    pub answers_lead_on: bool,
}

impl DockShown {
    /// Whether the block with this id stands in the dock.
    pub fn has(&self, id: &str) -> bool {
        self.answers.iter().chain(&self.on).chain(&self.out).any(|docked| docked == id)
    }
}
