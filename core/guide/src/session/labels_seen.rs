//! Label texts that were read on this device before, in any survey.

use std::sync::OnceLock;

use facts::home::Home;
use house::label_seen::{LabelSeen, labels_seen};

/// The label texts of this device, looked up when they are first needed and held while a survey is open.
pub(crate) struct LabelsSeen {
    home: Home,
    on_disk: OnceLock<Vec<LabelSeen>>,
}

impl LabelsSeen {
    /// Nothing looked up yet.
    pub(crate) fn over(home: &Home) -> Self {
        Self { home: home.clone(), on_disk: OnceLock::new() }
    }

    /// The texts, most used first. Where they cannot be read there are none: nothing else depends on them.
    pub(crate) fn labels(&self) -> &[LabelSeen] {
        self.on_disk.get_or_init(|| labels_seen(&self.home).unwrap_or_default())
    }
}
