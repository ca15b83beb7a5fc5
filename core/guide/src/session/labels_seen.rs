//! Label texts that were read on this device before, in any survey.

use facts::home::Home;
use house::label_seen::{LabelSeen, labels_seen};

/// The label texts of this device as they were when the survey was opened.
pub(crate) struct LabelsSeen(Vec<LabelSeen>);

impl LabelsSeen {
    /// Looks them up. Where they cannot be read there are none: nothing else depends on them.
    pub(super) fn on(home: &Home) -> Self {
        Self(labels_seen(home).unwrap_or_default())
    }

    /// None, for a page that is tried without a disk.
    #[cfg(test)]
    pub(super) const fn none() -> Self {
        Self(Vec::new())
    }

    /// The texts, most used first.
    pub(crate) fn labels(&self) -> &[LabelSeen] {
        &self.0
    }
}
