//! What is printed in the photos of the open survey, read beside while somebody goes on, one photo after the other.

use std::collections::{BTreeMap, VecDeque};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, PoisonError};
use std::thread;

use facts::photo::Picture;
use print::{Model, PrintError};

use super::long_work::LongWork;
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
    /// It is being read, or waits for that: how far it is.
    Waits(LongWork),
    /// This is in it.
    Read(Arc<PhotoRead>),
    /// Nothing could be read.
    Failed(PrintError),
    /// Its file is not there.
    Lost,
}

/// What the thread that reads and the guide both see.
#[derive(Default)]
struct Queue {
    /// Photos by the sums of their pictures, each with its file.
    waiting: VecDeque<(String, PathBuf, LongWork)>,
    by_sum: BTreeMap<String, PrintRead>,
    is_running: bool,
}

/// Photos that are read, and what was read. Kept as long as the survey is open: what somebody takes of it is a fact then.
#[derive(Default)]
pub(crate) struct Prints {
    queue: Arc<Mutex<Queue>>,
}

impl Prints {
    /// How the print of a picture with this sum stands; `None` where nobody wanted it.
    pub(crate) fn of(&self, sum: &str) -> Option<PrintRead> {
        locked(&self.queue).by_sum.get(sum).cloned()
    }

    /// The work that reads it, or will.
    pub(crate) fn work_on(&self, sum: &str) -> Option<LongWork> {
        match self.of(sum) {
            Some(PrintRead::Waits(work)) => Some(work),
            _ => None,
        }
    }

    /// Begins anew with another model: what was read stays, and so does what had no text; all else is as if nobody had wanted it.
    /// The thread that reads with the one before ends with its own queue.
    pub(super) fn begin_anew(&mut self) {
        self.stop_all();
        let mut by_sum = locked(&self.queue).by_sum.clone();
        by_sum.retain(|_, read| matches!(read, PrintRead::Read(_) | PrintRead::Failed(PrintError::NoText)));
        self.queue = Arc::new(Mutex::new(Queue { by_sum, ..Queue::default() }));
    }

    /// Reads these, but those that were read or wait already; before those that wait, if somebody looks at them now.
    pub(super) fn read(
        &mut self,
        model: &PrintModel,
        photos: impl IntoIterator<Item = (String, PathBuf)>,
        before_others: bool,
    ) {
        let model = model.clone();
        self.read_by(move |file, work| model.read(file, work), photos, before_others);
    }

    fn read_by(
        &mut self,
        reads: impl Fn(&Path, &LongWork) -> PrintRead + Send + 'static,
        photos: impl IntoIterator<Item = (String, PathBuf)>,
        before_others: bool,
    ) {
        let mut queue = locked(&self.queue);
        for (sum, file) in photos {
            if !queue.by_sum.contains_key(&sum) {
                let work = LongWork::new();
                queue.by_sum.insert(sum.clone(), PrintRead::Waits(work.clone()));
                if before_others {
                    queue.waiting.push_front((sum, file, work));
                } else {
                    queue.waiting.push_back((sum, file, work));
                }
            }
        }
        if queue.waiting.is_empty() || queue.is_running {
            return;
        }
        queue.is_running = true;
        drop(queue);
        let queue = Arc::clone(&self.queue);
        let begun = thread::Builder::new().name("print".into()).spawn(move || {
            while let Some((sum, file, work)) = next(&queue) {
                let read = if work.is_stopped() {
                    PrintRead::Failed(PrintError::Stopped)
                } else {
                    let read = catch_unwind(AssertUnwindSafe(|| reads(&file, &work)));
                    read.unwrap_or(PrintRead::Failed(PrintError::ModelFails))
                };
                settle(&queue, &sum, &work, read);
            }
        });
        if begun.is_err() {
            while let Some((sum, _, work)) = next(&self.queue) {
                settle(&self.queue, &sum, &work, PrintRead::Failed(PrintError::ModelFails));
            }
        }
    }

    /// Stops reading this one: somebody does not want to wait for it.
    pub(crate) fn stop(&self, sum: &str) {
        let mut queue = locked(&self.queue);
        if let Some(PrintRead::Waits(work)) = queue.by_sum.get(sum) {
            work.stop();
            queue.by_sum.insert(sum.to_owned(), PrintRead::Failed(PrintError::Stopped));
        }
    }

    /// Stops reading all that is not read: it is read once somebody wants it again.
    pub(crate) fn stop_all(&self) {
        let queue = locked(&self.queue);
        for read in queue.by_sum.values() {
            if let PrintRead::Waits(work) = read {
                work.stop();
            }
        }
    }
}

impl Drop for Prints {
    fn drop(&mut self) {
        self.stop_all();
    }
}

/// The next one to be read; `None` where none waits, and then the thread is over.
fn next(queue: &Mutex<Queue>) -> Option<(String, PathBuf, LongWork)> {
    let mut queue = locked(queue);
    let next = queue.waiting.pop_front();
    queue.is_running = next.is_some();
    next
}

/// Writes down what came of one. What was stopped and not by somebody who looked at it is as if nobody had wanted it.
fn settle(queue: &Mutex<Queue>, sum: &str, work: &LongWork, read: PrintRead) {
    let mut queue = locked(queue);
    if matches!(queue.by_sum.get(sum), Some(PrintRead::Waits(_))) {
        match read {
            PrintRead::Failed(PrintError::Stopped) => _ = queue.by_sum.remove(sum),
            read => _ = queue.by_sum.insert(sum.to_owned(), read),
        }
    }
    work.end();
}

fn locked(queue: &Mutex<Queue>) -> MutexGuard<'_, Queue> {
    // Each change of it is whole before anything that may break off.
    queue.lock().unwrap_or_else(PoisonError::into_inner)
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::{AtomicBool, Ordering};
    use std::sync::mpsc::channel;

    use super::*;

    fn photos(names: &[&str]) -> Vec<(String, PathBuf)> {
        names.iter().map(|name| ((*name).to_owned(), PathBuf::from(name))).collect()
    }

    fn wait(prints: &Prints, sum: &str) {
        if let Some(work) = prints.work_on(sum) {
            work.wait();
        }
    }

    #[test]
    fn one_that_breaks_off_fails_and_the_next_is_read() {
        let mut prints = Prints::default();
        let reads = |file: &Path, _: &LongWork| {
            assert!(file != Path::new("broken"), "as a fault would");
            PrintRead::Lost
        };
        prints.read_by(reads, photos(&["broken", "sound"]), false);
        for sum in ["broken", "sound"] {
            wait(&prints, sum);
        }
        assert!(matches!(prints.of("broken"), Some(PrintRead::Failed(PrintError::ModelFails))));
        assert!(matches!(prints.of("sound"), Some(PrintRead::Lost)));
    }

    #[test]
    fn the_one_that_is_looked_at_goes_first_and_its_stop_ends_no_other() {
        let mut prints = Prints::default();
        let (go_on, goes_on) = channel::<()>();
        let (told, order) = channel::<PathBuf>();
        let goes_on = Mutex::new(goes_on);
        let reads = move |file: &Path, _: &LongWork| {
            told.send(file.to_owned()).unwrap();
            goes_on.lock().unwrap().recv().unwrap();
            PrintRead::Lost
        };
        prints.read_by(reads, photos(&["first", "second", "third"]), false);
        assert_eq!(order.recv().unwrap(), Path::new("first"));
        prints.read_by(|_: &Path, _: &LongWork| PrintRead::Lost, photos(&["looked at"]), true);
        prints.stop("third");
        for _ in 0..3 {
            go_on.send(()).unwrap();
        }
        let then: Vec<PathBuf> = order.iter().take(2).collect();
        assert_eq!(then, ["looked at", "second"].map(PathBuf::from));
        wait(&prints, "second");
        assert!(matches!(prints.of("second"), Some(PrintRead::Lost)));
        assert!(matches!(prints.of("third"), Some(PrintRead::Failed(PrintError::Stopped))));
    }

    #[test]
    fn whoever_begins_anew_is_not_read_for_by_what_read_before() {
        let mut prints = Prints::default();
        let (go_on, goes_on) = channel::<()>();
        let goes_on = Mutex::new(goes_on);
        let reads = move |_: &Path, _: &LongWork| {
            goes_on.lock().unwrap().recv().unwrap();
            PrintRead::Failed(PrintError::ModelMissing { file: "letters.txt" })
        };
        prints.read_by(reads, photos(&["first", "second"]), false);
        let before = ["first", "second"].map(|sum| prints.work_on(sum).unwrap());
        prints.begin_anew();
        assert!(prints.of("first").is_none());
        prints.read_by(
            |_: &Path, _: &LongWork| PrintRead::Failed(PrintError::NoText),
            photos(&["first"]),
            false,
        );
        wait(&prints, "first");
        assert!(matches!(prints.of("first"), Some(PrintRead::Failed(PrintError::NoText))));
        // What still reads ends by itself, and whoever waits for it is told; of what it found nothing is believed.
        go_on.send(()).unwrap();
        before.iter().for_each(LongWork::wait);
        assert!(matches!(prints.of("first"), Some(PrintRead::Failed(PrintError::NoText))));
        prints.begin_anew();
        assert!(prints.of("first").is_some());
    }

    #[test]
    fn what_nobody_stopped_who_looked_at_it_is_read_once_it_is_wanted_again() {
        let mut prints = Prints::default();
        let is_stopped = Arc::new(AtomicBool::new(false));
        let reads = || {
            let is_stopped = Arc::clone(&is_stopped);
            move |_: &Path, work: &LongWork| {
                while !is_stopped.load(Ordering::Relaxed) && work.goes_on(0.0) {
                    thread::yield_now();
                }
                if is_stopped.swap(true, Ordering::Relaxed) {
                    PrintRead::Lost
                } else {
                    PrintRead::Failed(PrintError::Stopped)
                }
            }
        };
        prints.read_by(reads(), photos(&["later"]), false);
        let work = prints.work_on("later").unwrap();
        while work.progress().is_none() {
            thread::yield_now();
        }
        prints.stop_all();
        work.wait();
        assert!(prints.of("later").is_none());
        prints.read_by(reads(), photos(&["later"]), false);
        wait(&prints, "later");
        assert!(matches!(prints.of("later"), Some(PrintRead::Lost)));
    }
}
