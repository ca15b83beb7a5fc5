//! Label texts that were read on this device before, in any survey.

use std::sync::OnceLock;

use facts::home::Home;
use house::label_seen::{LabelSeen, labels_seen};

/// The label texts of this device, looked up when they are first needed and held while a survey is open.
pub(crate) struct LabelsSeen {
    /// Where they are looked up; `None` if there are none.
    home: Option<Home>,
    on_disk: OnceLock<Vec<LabelSeen>>,
}

impl LabelsSeen {
    /// Nothing looked up yet.
    pub(crate) fn over(home: &Home) -> Self {
        Self { home: Some(home.clone()), on_disk: OnceLock::new() }
    }

    /// None at all.
    #[cfg(test)]
    pub(crate) fn none() -> Self {
        Self { home: None, on_disk: OnceLock::new() }
    }

    /// The texts, most used first. Where they cannot be read there are none: nothing else depends on them.
    pub(crate) fn labels(&self) -> &[LabelSeen] {
        let look = || labels_seen(self.home.as_ref()?).ok();
        self.on_disk.get_or_init(|| look().unwrap_or_default())
    }
}
