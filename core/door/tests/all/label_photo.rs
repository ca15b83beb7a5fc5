//! A label is read from its photo through the door. What needs the model is run by `tests/rooms/print`, which makes it.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Sender, channel};
use std::time::Duration;

use door::{Door, DrawAgain, DrawAgainError};
use guide::Deed;
use guide::screen::{Block, LabelBlock, Screen};

use crate::hand::{at, press, settled};
use crate::whole_house;

/// The key of the row whose head has this word.
fn row(screen: &Screen, word: &str) -> String {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    let found = rows.flatten().find(|row| row.head.contains(word)).and_then(|row| row.key.clone());
    found.unwrap_or_else(|| panic!("no row has {word} on {}", screen.name))
}

/// The screen that asks what is printed on a part of the invented house.
fn to_label(door: &Door, part: &str) -> Screen {
    let open = row(&settled(door), whole_house::FULL);
    press(door, &open);
    while settled(door).name != "overview" {
        door.act(Deed::Back).unwrap();
    }
    let parts = press(door, "free-parts");
    let part = press(door, &row(&parts, part));
    let screen = press(door, &row(&part, "its label"));
    assert_eq!(screen.name, "ask-label");
    screen
}

fn photograph(door: &Door, file: &Path) -> Screen {
    door.act(Deed::Photo { key: "label-photo".into(), file: file.display().to_string() }).unwrap();
    settled(door)
}

/// A picture without any text.
fn blank(folder: &Path) -> PathBuf {
    let file = folder.join("blank.png");
    image::RgbImage::from_pixel(320, 200, image::Rgb([200, 200, 200])).save(&file).unwrap();
    file
}

fn words(screen: &Screen) -> Vec<&str> {
    let words = screen.blocks.iter().filter_map(|block| match block {
        Block::Words(words) => Some(words.words.as_str()),
        _ => None,
    });
    words.collect()
}

fn label(screen: &Screen) -> Option<&LabelBlock> {
    screen.blocks.iter().find_map(|block| match block {
        Block::Label(label) => Some(label),
        _ => None,
    })
}

/// The screen once the photo was looked at.
fn looked_at(door: &Door) -> Screen {
    loop {
        let screen = door.screen().unwrap();
        if !screen.blocks.iter().any(|block| matches!(block, Block::HowFar(_))) {
            return screen;
        }
        std::thread::sleep(Duration::from_millis(5));
    }
}

#[test]
fn what_is_missing_or_damaged_of_the_model_is_named_and_a_label_is_typed() {
    // None at all; one that broke off while it was laid out; one that is another's.
    for (letters, says) in [(None, "is missing"), (Some("a\n"), "is not the one of this release")] {
        let home = tempfile::tempdir().unwrap();
        whole_house::fill(home.path());
        let model = home.path().join("model");
        if let Some(letters) = letters {
            std::fs::create_dir(&model).unwrap();
            std::fs::write(model.join("letters.txt"), letters).unwrap();
        }
        let door = at(home.path(), None, None);
        let screen = door.read_print_with(model.display().to_string()).unwrap();
        assert!(screen.notices.is_empty(), "{:?}", screen.notices);
        to_label(&door, "amplifier");
        photograph(&door, &blank(home.path()));
        let screen = looked_at(&door);
        let said = words(&screen).into_iter().find(|words| words.contains("letters.txt"));
        assert!(said.is_some_and(|words| words.contains(says)), "{:?}", words(&screen));
        assert!(label(&screen).is_none());
        door.act(Deed::Write { key: "text".into(), words: "5-1002 MHz GAIN 12 dB".into() }).unwrap();
        let screen = press(&door, "next");
        assert_eq!(screen.name, "ask-label-read");
        assert!(label(&screen).is_some_and(|label| label.text.contains("GAIN 12 dB")), "{screen:?}");
    }
}

/// A shell that only notes that it was told.
struct Told(Sender<()>);

impl DrawAgain for Told {
    fn draw_again(&self) -> Result<(), DrawAgainError> {
        let _ = self.0.send(());
        Ok(())
    }
}

/// The model may be at hand only after the label's screen is shown, as when an app lays it out as it begins.
#[test]
#[ignore = "needs the model and photos"]
fn a_label_is_read_once_the_model_is_there_and_the_shell_is_told() {
    let folder =
        |name: &str| PathBuf::from(std::env::var_os(name).unwrap_or_else(|| panic!("{name} names a folder")));
    let photos = folder("LEGWORK_PHOTOS");
    let truth = std::fs::read(photos.join("truth.json")).unwrap();
    let truth: Vec<serde_json::Value> = serde_json::from_slice(&truth).unwrap();
    let amplifier = truth.iter().find(|photo| photo["kind"] == "amplifier").unwrap();
    let photo = photos.join(amplifier["file"].as_str().unwrap());
    let home = tempfile::tempdir().unwrap();
    whole_house::fill(home.path());
    let (told, is_told) = channel();
    let door = at(home.path(), None, Some(Arc::new(Told(told))));
    to_label(&door, "amplifier");
    let screen = photograph(&door, &photo);
    assert!(label(&screen).is_none() && words(&screen).iter().all(|words| !words.contains("letters.txt")));
    while is_told.try_recv().is_ok() {}
    let model = folder("LEGWORK_PRINT_MODEL").display().to_string();
    let screen = door.read_print_with(model).unwrap();
    assert!(screen.blocks.iter().any(|block| matches!(block, Block::HowFar(_))), "{screen:?}");
    is_told.recv_timeout(Duration::from_secs(240)).unwrap();
    let screen = looked_at(&door);
    assert!(label(&screen).is_some_and(|label| !label.figures.is_empty()), "{:?}", words(&screen));
}
