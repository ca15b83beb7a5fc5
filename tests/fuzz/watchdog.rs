//! An input that never ends, or takes the whole process with it, is on the disk all the same.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

/// The longest that one input may take, on a busy machine and without optimisation.
const PATIENCE: Duration = Duration::from_secs(30);

pub struct Watchdog {
    folder: PathBuf,
    name: &'static str,
    begun: Arc<Mutex<Instant>>,
    number: AtomicU64,
}

impl Watchdog {
    pub fn start(name: &'static str) -> Self {
        let memory = Path::new("/dev/shm");
        let place = if memory.is_dir() { memory.to_owned() } else { std::env::temp_dir() };
        let folder = place.join(format!("legwork-fuzz-{}", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        let begun = Arc::new(Mutex::new(Instant::now()));
        let watch = Arc::downgrade(&begun);
        let current = folder.join(name);
        std::thread::spawn(move || {
            while let Some(begun) = watch.upgrade() {
                if begun.lock().unwrap().elapsed() > PATIENCE {
                    eprintln!("{name}: an input takes more than {PATIENCE:?}; it is {}", current.display());
                    std::process::exit(1);
                }
                drop(begun);
                std::thread::sleep(Duration::from_millis(200));
            }
        });
        Self { folder, name, begun, number: AtomicU64::new(0) }
    }

    /// Writes down what is read now.
    pub fn begin(&self, input: &[u8]) -> Instant {
        fs::write(self.folder.join(self.name), input).unwrap();
        let now = Instant::now();
        *self.begun.lock().unwrap() = now;
        now
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
