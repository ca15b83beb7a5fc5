//! What is printed in the photos of the open survey, read beside while somebody goes on, one photo after the other.

use std::collections::{BTreeMap, VecDeque};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, PoisonError};
use std::thread;

use facts::photo::{Picture, Piece};
use house::record::Photo;
use print::{Model, PrintError};

use super::long_work::LongWork;
use super::memory::Memory;
use crate::photo_read::PhotoRead;

/// What is read: a picture, by its sum, and the part of it that somebody chose. Another part of the same picture is read anew.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct ToRead {
    /// The sum of the picture.
    pub(crate) sum: String,
    /// All of it where nobody chose a part.
    pub(crate) part: Option<Piece>,
}

/// What of a photo is read.
pub(crate) fn to_read(photo: &Photo, memory: &Memory) -> ToRead {
    ToRead { sum: photo.image.sha256.clone(), part: memory.part_of(photo.id) }
}

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

    fn read(&self, file: &Path, part: Option<Piece>, work: &LongWork) -> PrintRead {
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
        let area = part.map(|part| part.area(picture.upright_size()));
        match PhotoRead::of(model, &picture, area, &mut |share| work.goes_on(share)) {
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
    /// What waits, each with its file.
    waiting: VecDeque<(ToRead, PathBuf, LongWork)>,
    all: BTreeMap<ToRead, PrintRead>,
    is_running: bool,
}

/// Photos that are read, and what was read. Kept as long as the survey is open: what somebody takes of it is a fact then.
#[derive(Default)]
pub(crate) struct Prints {
    queue: Arc<Mutex<Queue>>,
}

impl Prints {
    /// How the print of a picture, or of its part, stands; `None` where nobody wanted it.
    pub(crate) fn of(&self, wanted: &ToRead) -> Option<PrintRead> {
        locked(&self.queue).all.get(wanted).cloned()
    }

    /// The work that reads it, or will.
    pub(crate) fn work_on(&self, wanted: &ToRead) -> Option<LongWork> {
        match self.of(wanted) {
            Some(PrintRead::Waits(work)) => Some(work),
            _ => None,
        }
    }

    /// Begins anew with another model: what was read stays, and so does what had no text; all else is as if nobody had wanted it.
    /// The thread that reads with the one before ends with its own queue.
    pub(super) fn begin_anew(&mut self) {
        self.stop_all();
        let mut all = locked(&self.queue).all.clone();
        all.retain(|_, read| matches!(read, PrintRead::Read(_) | PrintRead::Failed(PrintError::NoText)));
        self.queue = Arc::new(Mutex::new(Queue { all, ..Queue::default() }));
    }

    /// Reads these, but those that were read or wait already; before those that wait, if somebody looks at them now.
    pub(super) fn read(
        &mut self,
        model: &PrintModel,
        photos: impl IntoIterator<Item = (ToRead, PathBuf)>,
        before_others: bool,
    ) {
        let model = model.clone();
        self.read_by(move |file, part, work| model.read(file, part, work), photos, before_others);
    }

    fn read_by(
        &mut self,
        reads: impl Fn(&Path, Option<Piece>, &LongWork) -> PrintRead + Send + 'static,
        photos: impl IntoIterator<Item = (ToRead, PathBuf)>,
        before_others: bool,
    ) {
        let mut queue = locked(&self.queue);
        for (wanted, file) in photos {
            // Of a picture of which another part is wanted now, nobody waits for the one before.
            for (_, read) in queue.all.iter().filter(|(of, _)| of.sum == wanted.sum && of.part != wanted.part)
            {
                if let PrintRead::Waits(work) = read {
                    work.stop();
                }
            }
            let is_given_up = |read: &PrintRead| matches!(read, PrintRead::Waits(work) if work.is_stopped());
            if queue.all.get(&wanted).is_none_or(is_given_up) {
                let work = LongWork::new();
                queue.all.insert(wanted.clone(), PrintRead::Waits(work.clone()));
                if before_others {
                    queue.waiting.push_front((wanted, file, work));
                } else {
                    queue.waiting.push_back((wanted, file, work));
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
            while let Some((wanted, file, work)) = next(&queue) {
                let read = if work.is_stopped() {
                    PrintRead::Failed(PrintError::Stopped)
                } else {
                    let read = catch_unwind(AssertUnwindSafe(|| reads(&file, wanted.part, &work)));
                    read.unwrap_or(PrintRead::Failed(PrintError::ModelFails))
                };
                settle(&queue, &wanted, &work, read);
            }
        });
        if begun.is_err() {
            while let Some((wanted, _, work)) = next(&self.queue) {
                settle(&self.queue, &wanted, &work, PrintRead::Failed(PrintError::ModelFails));
            }
        }
    }

    /// Stops reading this one: somebody does not want to wait for it.
    pub(crate) fn stop(&self, wanted: &ToRead) {
        let mut queue = locked(&self.queue);
        if let Some(PrintRead::Waits(work)) = queue.all.get(wanted) {
            work.stop();
            queue.all.insert(wanted.clone(), PrintRead::Failed(PrintError::Stopped));
        }
    }

    /// As if nobody had stopped reading this one: it is read once somebody looks at it.
    pub(crate) fn take_back_stop(&self, wanted: &ToRead) {
        let mut queue = locked(&self.queue);
        if matches!(queue.all.get(wanted), Some(PrintRead::Failed(PrintError::Stopped))) {
            queue.all.remove(wanted);
        }
    }

    /// Stops reading all that is not read: it is read once somebody wants it again.
    pub(crate) fn stop_all(&self) {
        let queue = locked(&self.queue);
        for read in queue.all.values() {
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
fn next(queue: &Mutex<Queue>) -> Option<(ToRead, PathBuf, LongWork)> {
    let mut queue = locked(queue);
    let next = queue.waiting.pop_front();
    queue.is_running = next.is_some();
    next
}

/// Writes down what came of one. What was stopped and not by somebody who looked at it is as if nobody had wanted it.
fn settle(queue: &Mutex<Queue>, wanted: &ToRead, work: &LongWork, read: PrintRead) {
    let mut queue = locked(queue);
    if matches!(queue.all.get(wanted), Some(PrintRead::Waits(waited)) if waited.is(work)) {
        match read {
            PrintRead::Failed(PrintError::Stopped) => _ = queue.all.remove(wanted),
            read => _ = queue.all.insert(wanted.clone(), read),
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

    /// All of the picture with this sum.
    fn whole(sum: &str) -> ToRead {
        ToRead { sum: sum.into(), part: None }
    }

    fn photos(names: &[&str]) -> Vec<(ToRead, PathBuf)> {
        names.iter().map(|name| (whole(name), PathBuf::from(name))).collect()
    }

    fn wait(prints: &Prints, sum: &str) {
        if let Some(work) = prints.work_on(&whole(sum)) {
            work.wait();
        }
    }

    #[test]
    fn one_that_breaks_off_fails_and_the_next_is_read() {
        let mut prints = Prints::default();
        let reads = |file: &Path, _: Option<Piece>, _: &LongWork| {
            assert!(file != Path::new("broken"), "as a fault would");
            PrintRead::Lost
        };
        prints.read_by(reads, photos(&["broken", "sound"]), false);
        for sum in ["broken", "sound"] {
            wait(&prints, sum);
        }
        assert!(matches!(prints.of(&whole("broken")), Some(PrintRead::Failed(PrintError::ModelFails))));
        assert!(matches!(prints.of(&whole("sound")), Some(PrintRead::Lost)));
    }

    #[test]
    fn the_one_that_is_looked_at_goes_first_and_its_stop_ends_no_other() {
        let mut prints = Prints::default();
        let (go_on, goes_on) = channel::<()>();
        let (told, order) = channel::<PathBuf>();
        let goes_on = Mutex::new(goes_on);
        let reads = move |file: &Path, _: Option<Piece>, _: &LongWork| {
            told.send(file.to_owned()).unwrap();
            goes_on.lock().unwrap().recv().unwrap();
            PrintRead::Lost
        };
        prints.read_by(reads, photos(&["first", "second", "third"]), false);
        assert_eq!(order.recv().unwrap(), Path::new("first"));
        prints.read_by(
            |_: &Path, _: Option<Piece>, _: &LongWork| PrintRead::Lost,
            photos(&["looked at"]),
            true,
        );
        prints.stop(&whole("third"));
        for _ in 0..3 {
            go_on.send(()).unwrap();
        }
        let then: Vec<PathBuf> = order.iter().take(2).collect();
        assert_eq!(then, ["looked at", "second"].map(PathBuf::from));
        wait(&prints, "second");
        assert!(matches!(prints.of(&whole("second")), Some(PrintRead::Lost)));
        let third = || photos(&["third"]);
        prints.read_by(|_: &Path, _: Option<Piece>, _: &LongWork| PrintRead::Lost, third(), true);
        assert!(matches!(prints.of(&whole("third")), Some(PrintRead::Failed(PrintError::Stopped))));
        prints.take_back_stop(&whole("third"));
        prints.read_by(|_: &Path, _: Option<Piece>, _: &LongWork| PrintRead::Lost, third(), true);
        wait(&prints, "third");
        assert!(matches!(prints.of(&whole("third")), Some(PrintRead::Lost)));
    }

    #[test]
    fn whoever_begins_anew_is_not_read_for_by_what_read_before() {
        let mut prints = Prints::default();
        let (go_on, goes_on) = channel::<()>();
        let (told, begun) = channel::<()>();
        let goes_on = Mutex::new(goes_on);
        let reads = move |_: &Path, _: Option<Piece>, _: &LongWork| {
            told.send(()).unwrap();
            goes_on.lock().unwrap().recv().unwrap();
            PrintRead::Failed(PrintError::ModelMissing { file: "letters.txt" })
        };
        prints.read_by(reads, photos(&["first", "second"]), false);
        // What nobody has begun to read is never read.
        begun.recv().unwrap();
        let before = ["first", "second"].map(|sum| prints.work_on(&whole(sum)).unwrap());
        prints.begin_anew();
        assert!(prints.of(&whole("first")).is_none());
        prints.read_by(
            |_: &Path, _: Option<Piece>, _: &LongWork| PrintRead::Failed(PrintError::NoText),
            photos(&["first"]),
            false,
        );
        wait(&prints, "first");
        assert!(matches!(prints.of(&whole("first")), Some(PrintRead::Failed(PrintError::NoText))));
        // What still reads ends by itself, and whoever waits for it is told; of what it found nothing is believed.
        go_on.send(()).unwrap();
        before.iter().for_each(LongWork::wait);
        assert!(matches!(prints.of(&whole("first")), Some(PrintRead::Failed(PrintError::NoText))));
        prints.begin_anew();
        assert!(prints.of(&whole("first")).is_some());
    }

    #[test]
    fn what_nobody_stopped_who_looked_at_it_is_read_once_it_is_wanted_again() {
        let mut prints = Prints::default();
        let is_stopped = Arc::new(AtomicBool::new(false));
        let reads = || {
            let is_stopped = Arc::clone(&is_stopped);
            move |_: &Path, _: Option<Piece>, work: &LongWork| {
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
        let work = prints.work_on(&whole("later")).unwrap();
        while work.progress().is_none() {
            thread::yield_now();
        }
        prints.stop_all();
        work.wait();
        assert!(prints.of(&whole("later")).is_none());
        prints.read_by(reads(), photos(&["later"]), false);
        wait(&prints, "later");
        assert!(matches!(prints.of(&whole("later")), Some(PrintRead::Lost)));
    }

    #[test]
    fn another_part_of_a_picture_is_read_anew_and_the_one_before_is_not_waited_for() {
        let mut prints = Prints::default();
        let of = |part: &str| ToRead { sum: "label".into(), part: part.parse().ok() };
        let (told, order) = channel::<Option<Piece>>();
        let begun = Arc::new(AtomicBool::new(false));
        let seen = Arc::clone(&begun);
        let reads = move |_: &Path, part: Option<Piece>, work: &LongWork| {
            told.send(part).unwrap();
            // All of it takes as long as somebody waits for it.
            while part.is_none() && work.goes_on(0.0) {
                seen.store(true, Ordering::Relaxed);
                thread::yield_now();
            }
            if work.is_stopped() { PrintRead::Failed(PrintError::Stopped) } else { PrintRead::Lost }
        };
        prints.read_by(reads, [(of("all"), PathBuf::new())], true);
        while !begun.load(Ordering::Relaxed) {
            thread::yield_now();
        }
        for part in ["0-0-5000-5000", "5000-0-5000-5000"] {
            prints.read_by(
                |_: &Path, _: Option<Piece>, _: &LongWork| PrintRead::Lost,
                [(of(part), PathBuf::new())],
                true,
            );
        }
        let last = of("5000-0-5000-5000");
        prints.work_on(&last).unwrap().wait();
        assert!(matches!(prints.of(&last), Some(PrintRead::Lost)));
        let read: Vec<_> = order.try_iter().collect();
        assert_eq!(read, [None, last.part], "of the part between nobody waited for anything");
        assert!(prints.of(&of("all")).is_none(), "it is read once it is wanted again");
    }
}
