//! A hand at the door: it waits for what is shown as long work, and comes back by the token.

use std::path::Path;
use std::sync::Arc;
use std::thread;
use std::time::{Duration, Instant};

use door::{Door, DrawAgain, FirstLength, Settings};
use guide::Deed;
use guide::screen::{Block, Screen};

pub fn settings(home: &Path, language: &str) -> Settings {
    Settings {
        home: home.display().to_string(),
        language: language.into(),
        first_length: FirstLength::Metres,
    }
}

pub fn at(home: &Path, token: Option<String>, watcher: Option<Arc<dyn DrawAgain>>) -> Arc<Door> {
    Door::new(settings(home, "en-GB"), token, watcher).unwrap()
}

/// The screen once no long work hides it. What is worked out from a survey may still go on beside.
pub fn settled(door: &Door) -> Screen {
    let begun = Instant::now();
    loop {
        assert!(begun.elapsed() < Duration::from_secs(240), "long work does not end");
        let screen = door.screen().unwrap();
        if screen.name != "long-work" || door.work().unwrap().is_none() {
            return door.screen().unwrap();
        }
        thread::sleep(Duration::from_millis(5));
    }
}

pub fn press(door: &Door, key: &str) -> Screen {
    let screen = settled(door);
    assert!(screen.keys().contains(&key), "{key} on {}: {:?}", screen.name, screen.keys());
    door.act(Deed::Press { key: key.into() }).unwrap();
    settled(door)
}

/// What somebody has given on a screen and not answered yet, or sees as answered.
pub fn given(screen: &Screen) -> Vec<String> {
    let mut given = Vec::new();
    for block in &screen.blocks {
        match block {
            Block::Writing(writing) => given.push(writing.text.clone()),
            Block::Number(number) => given.push(format!("{} {}", number.text, number.unit)),
            Block::Choice(choice) => {
                given.extend(choice.options.iter().filter(|of| of.picked).map(|of| of.key.clone()));
            }
            _ => {}
        }
    }
    given
}
