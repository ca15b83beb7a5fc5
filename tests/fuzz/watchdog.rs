//! An input that never ends, or takes the whole process with it, is on the disk all the same.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

/// How often the watchdog looks.
const BEAT: Duration = Duration::from_millis(200);

/// The most beats that one input may take, on a busy machine and without optimisation: half a minute. Beats are counted
/// rather than time: a machine that is put to sleep meanwhile stops the watchdog too.
const PATIENCE: u32 = 150;

pub struct Watchdog {
    folder: PathBuf,
    name: &'static str,
    /// How many inputs were begun.
    begun: Arc<AtomicU64>,
    number: AtomicU64,
}

impl Watchdog {
    pub fn start(name: &'static str) -> Self {
        let memory = Path::new("/dev/shm");
        let place = if memory.is_dir() { memory.to_owned() } else { std::env::temp_dir() };
        let folder = place.join(format!("legwork-fuzz-{}", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        let begun = Arc::new(AtomicU64::new(0));
        let watch = Arc::downgrade(&begun);
        let current = folder.join(name);
        std::thread::spawn(move || {
            let (mut watched, mut beats) = (0, 0);
            while let Some(begun) = watch.upgrade() {
                let number = begun.load(Ordering::Relaxed);
                drop(begun);
                beats = if number == watched { beats + 1 } else { 0 };
                watched = number;
                if beats > PATIENCE {
                    let most = BEAT * PATIENCE;
                    eprintln!("{name}: an input takes more than {most:?}; it is {}", current.display());
                    std::process::exit(1);
                }
                std::thread::sleep(BEAT);
            }
        });
        Self { folder, name, begun, number: AtomicU64::new(0) }
    }

    /// Writes down what is read now.
    pub fn begin(&self, input: &[u8]) -> Instant {
        fs::write(self.folder.join(self.name), input).unwrap();
        self.begun.fetch_add(1, Ordering::Relaxed);
        Instant::now()
    }

    /// Keeps an input that failed.
    pub fn keep(&self, input: &[u8]) -> PathBuf {
        let number = self.number.fetch_add(1, Ordering::Relaxed);
        let path = self.folder.join(format!("{}-failed-{number}", self.name));
        fs::write(&path, input).unwrap();
        path
    }
}

impl Drop for Watchdog {
    fn drop(&mut self) {
        let _ = fs::remove_file(self.folder.join(self.name));
        // Stays if something was kept in it.
        let _ = fs::remove_dir(&self.folder);
    }
}
