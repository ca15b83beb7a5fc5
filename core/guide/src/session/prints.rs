//! What is printed in the photos of the open survey, read beside while somebody goes on, one photo after the other.

use std::collections::{BTreeMap, VecDeque};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, PoisonError};

use facts::photo::Picture;
use print::{Model, PrintError};

use super::long_work::{LongWork, LongWorkOf};
use crate::photo_read::PhotoRead;

/// The model of this device: where it lies, and itself once it was needed.
#[derive(Clone)]
pub(crate) struct PrintModel {
    folder: PathBuf,
    loaded: Arc<OnceLock<Result<Model, PrintError>>>,
}

impl PrintModel {
    /// In a folder; it is read once it is needed.
    pub(super) fn in_folder(folder: PathBuf) -> Self {
        Self { folder, loaded: Arc::default() }
    }

    fn read(&self, file: &Path, work: &LongWork) -> PrintRead {
        let model = match self.loaded.get_or_init(|| Model::load(&self.folder)) {
            Ok(model) => model,
            Err(error) => return PrintRead::Failed(error.clone()),
        };
        let picture = match Picture::read(file) {
            Ok(Ok(picture)) => picture,
            Ok(Err(fault)) => return PrintRead::Failed(fault.into()),
            // That a photo's file is lost is said where it is shown.
            Err(_) => return PrintRead::Lost,
        };
        match PhotoRead::of(model, &picture, None, &mut |share| work.goes_on(share)) {
            Ok(read) => PrintRead::Read(Arc::new(read)),
            Err(error) => PrintRead::Failed(error),
        }
    }
}

/// How the print of one photo stands.
#[derive(Debug, Clone)]
pub(crate) enum PrintRead {
    /// It is being read, or waits for that.
    Waits,
    /// This is in it.
    Read(Arc<PhotoRead>),
    /// Nothing could be read.
    Failed(PrintError),
    /// Its file is not there.
    Lost,
}

/// What a thread that reads and the guide both see.
#[derive(Default)]
struct Queue {
    /// Photos by the sums of their pictures, each with its file.
    waiting: VecDeque<(String, PathBuf)>,
    by_sum: BTreeMap<String, PrintRead>,
    is_running: bool,
}

/// Photos that are read, and what was read. Kept as long as the survey is open: what somebody takes of it is a fact then.
#[derive(Default)]
pub(crate) struct Prints {
    queue: Arc<Mutex<Queue>>,
    going: Option<LongWorkOf<()>>,
}

impl Prints {
    /// How the print of a picture with this sum stands; `None` where nobody wanted it.
    pub(crate) fn of(&self, sum: &str) -> Option<PrintRead> {
        locked(&self.queue).by_sum.get(sum).cloned()
    }

    /// The reading that is going on.
    pub(crate) fn running(&self) -> Option<&LongWork> {
        self.going.as_ref().map(LongWorkOf::work).filter(|work| !work.is_done())
    }

    /// Reads these, but those that were read or wait already; before those that wait, if somebody looks at them now.
    pub(super) fn read(
        &mut self,
        model: &PrintModel,
        photos: impl IntoIterator<Item = (String, PathBuf)>,
        before_others: bool,
    ) {
        let mut queue = locked(&self.queue);
        for (sum, file) in photos {
            if !queue.by_sum.contains_key(&sum) {
                queue.by_sum.insert(sum.clone(), PrintRead::Waits);
                if before_others {
                    queue.waiting.push_front((sum, file));
                } else {
                    queue.waiting.push_back((sum, file));
                }
            }
        }
        // A thread that broke off reads no more.
        let is_running = queue.is_running && self.going.as_ref().is_some_and(|going| !going.work().is_done());
        if queue.waiting.is_empty() || is_running {
            return;
        }
        queue.is_running = true;
        drop(queue);
        let (queue, model) = (Arc::clone(&self.queue), model.clone());
        self.going = Some(LongWorkOf::begin(move |work| {
            while let Some((sum, file)) = next(&queue, work) {
                let read = catch_unwind(AssertUnwindSafe(|| model.read(&file, work)));
                let read = read.unwrap_or(PrintRead::Failed(PrintError::ModelFails));
                locked(&queue).by_sum.insert(sum, read);
            }
            Ok(())
        }));
    }

    /// Stops reading: the photo at hand is not read until the survey is opened again; those that wait are, once somebody wants them.
    pub(crate) fn stop(&self) {
        if let Some(going) = &self.going {
            going.work().stop();
        }
    }
}

impl Drop for Prints {
    fn drop(&mut self) {
        self.stop();
    }
}

/// The next one to be read; none is left where it was told to stop.
fn next(queue: &Mutex<Queue>, work: &LongWork) -> Option<(String, PathBuf)> {
    let mut queue = locked(queue);
    if work.is_stopped() {
        for (sum, _) in std::mem::take(&mut queue.waiting) {
            queue.by_sum.remove(&sum);
        }
    }
    let next = queue.waiting.pop_front();
    queue.is_running = next.is_some();
    next
}

fn locked(queue: &Mutex<Queue>) -> MutexGuard<'_, Queue> {
    // Each change of it is whole before anything that may break off.
    queue.lock().unwrap_or_else(PoisonError::into_inner)
}
