//! The shell is told when long work has come on, by a thread that holds no lock, and by no more than one at a time.

use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::mpsc::{Sender, channel};
use std::sync::{Arc, Mutex, OnceLock, Weak};
use std::time::{Duration, Instant};

use door::{Door, DoorError, DrawAgain, DrawAgainError};
use guide::Deed;

use crate::hand::{at, press, settings, settled};
use crate::whole_house;

/// A shell that fetches the screen at once, on the thread that tells it.
struct Shell {
    door: OnceLock<Weak<Door>>,
    drawn: Mutex<Sender<String>>,
    at_once: AtomicU32,
    fails: AtomicBool,
}

impl DrawAgain for Shell {
    fn draw_again(&self) -> Result<(), DrawAgainError> {
        assert_eq!(self.at_once.fetch_add(1, Ordering::SeqCst), 0, "two threads tell at once");
        let door = self.door.get().and_then(Weak::upgrade);
        let name = door.map_or_else(String::new, |door| door.screen().unwrap().name);
        self.at_once.fetch_sub(1, Ordering::SeqCst);
        let _ = self.drawn.lock().unwrap().send(name);
        if self.fails.load(Ordering::SeqCst) {
            return Err(DrawAgainError::NotDrawn { fault: "no window".into() });
        }
        Ok(())
    }
}

#[test]
fn a_shell_is_told_while_work_goes_on_and_when_it_is_over() {
    let home = tempfile::tempdir().unwrap();
    whole_house::fill(home.path());
    let (drawn, told) = channel();
    let shell = Arc::new(Shell {
        door: OnceLock::new(),
        drawn: Mutex::new(drawn),
        at_once: AtomicU32::new(0),
        // One that cannot draw now is told again all the same.
        fails: AtomicBool::new(true),
    });
    let door = at(home.path(), None, Some(Arc::clone(&shell) as Arc<dyn DrawAgain>));
    shell.door.set(Arc::downgrade(&door)).unwrap();
    let open = settled(&door).keys().into_iter().find(|key| key.starts_with("open:")).unwrap().to_owned();
    press(&door, &open);
    if settled(&door).name != "overview" {
        press(&door, "overview");
    }
    door.act(Deed::Press { key: "forecast".into() }).unwrap();
    let work = door.work().unwrap().expect("what follows from a house takes longer than a touch");
    let is = work.how_far().unwrap();
    assert!(!is.is_over && !is.name.is_empty(), "{is:?}");
    // It is told that it has come on, and at last that it is over.
    let limit = Duration::from_secs(240);
    loop {
        let shown = told.recv_timeout(limit).unwrap();
        // That the opening is over may be told only now, and its screen be fetched before the press.
        if shown == "overview" {
            continue;
        }
        assert_eq!(shown, "forecast");
        if work.how_far().unwrap().is_over {
            break;
        }
    }
    assert!(door.work().unwrap().is_none());
    // A shell that is gone hinders nothing.
    drop(told);
    door.act(Deed::Press { key: "overview".into() }).unwrap();
}

#[test]
fn long_work_that_is_stopped_says_so() {
    let home = tempfile::tempdir().unwrap();
    whole_house::fill(home.path());
    let door = at(home.path(), None, None);
    let open = settled(&door).keys().into_iter().find(|key| key.starts_with("open:")).unwrap().to_owned();
    press(&door, &open);
    if settled(&door).name != "overview" {
        press(&door, "overview");
    }
    door.act(Deed::Press { key: "forecast".into() }).unwrap();
    let work = door.work().unwrap().unwrap();
    work.stop().unwrap();
    let stopped = Instant::now();
    while !work.how_far().unwrap().is_over {
        assert!(stopped.elapsed() < Duration::from_secs(240), "it does not stop");
        std::thread::sleep(Duration::from_millis(5));
    }
    // Put aside in the middle of it, and closed in any order.
    door.suspend().unwrap();
    drop(door);
    assert!(work.how_far().unwrap().is_over);
}

#[test]
fn what_is_wrong_is_said_in_words_and_a_fault_of_the_shell_is_for_the_log() {
    let home = tempfile::tempdir().unwrap();
    let file = home.path().join("a file");
    std::fs::write(&file, "no folder").unwrap();
    let refused = Door::new(settings(&file, "en-GB"), None, None);
    let Err(DoorError::Trouble { said }) = refused else { panic!("opened in a file") };
    assert!(said.contains(' ') && !said.contains(&*home.path().display().to_string()), "{said}");
    let door = at(&home.path().join("home"), None, None);
    assert!(matches!(door.small_photo("none".into()), Err(DoorError::Broken { .. })));
    // It stands as before.
    assert_eq!(settled(&door).name, "surveys");
    assert!(door.figure("none".into()).unwrap().is_none());
}
