//! Long work, as a handle.

use std::sync::Arc;

use guide::LongWork;

use crate::error::Result;

/// How far long work is.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct HowFarItIs {
    /// What is being done, in words; empty where the screen says nothing of it.
    pub name: String,
    /// Thousandths done; `None` while that cannot be told.
    pub thousandths: Option<u32>,
    /// Whether it is over: done, stopped or failed. Which of them, the next screen says.
    pub is_over: bool,
}

/// Work that goes on beside the screen. It may be let go of at any time: that neither stops nor ends it.
#[derive(uniffi::Object)]
pub struct Work {
    name: String,
    work: LongWork,
}

impl Work {
    pub(crate) fn new(name: String, work: LongWork) -> Arc<Self> {
        Arc::new(Self { name, work })
    }
}

#[uniffi::export]
impl Work {
    /// How far it is. Waits for nothing.
    pub fn how_far(&self) -> Result<HowFarItIs> {
        let (thousandths, is_over) = (self.work.progress(), self.work.is_done());
        Ok(HowFarItIs { name: self.name.clone(), thousandths, is_over })
    }

    /// Tells it to stop. It soon does, and leaves nothing half done.
    pub fn stop(&self) -> Result<()> {
        self.work.stop();
        Ok(())
    }
}
