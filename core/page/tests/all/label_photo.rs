//! A label's photo on the page: the piece of it beside each number. What needs the model is run by `tests/rooms/print`, which makes it.
#![expect(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what cannot be read, and a screen that lacks what it should have, end the test"
)]

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use facts::fact::{AuthorId, Edit, SubjectId};
use facts::store::Store;
use guide::screen::{Block, Screen};
use guide::{Deed, Guide};
use telling::words::Figures;

use super::browser::{Answer, Browser, House};

fn press(guide: &mut Guide, key: &str) -> Screen {
    guide.act(&Deed::Press { key: key.into() }).unwrap();
    guide.wait_for_long_work(Duration::MAX);
    guide.screen()
}

/// The row of a screen whose head has this word.
fn row(screen: &Screen, word: &str) -> String {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    let found = rows.flatten().find(|row| row.head.contains(word)).and_then(|row| row.key.clone());
    found.unwrap_or_else(|| panic!("no row has {word}: {screen:?}"))
}

/// The page on the question what is printed on a splitter.
fn at_label(model: &Path) -> House {
    let home = tempfile::tempdir().unwrap();
    let author = AuthorId::random();
    let folder = home.path().join("house.legwork");
    let mut store = Store::create(&folder, author).unwrap();
    let (survey, part) = (store.survey_id().subject(), SubjectId::random());
    let said = [(survey, "is", "survey"), (survey, "name", "An invented house"), (part, "is", "part")];
    let of_part = [(part, "kind", "splitter"), (part, "tag", "S1")];
    let edits: Vec<Edit> = said
        .into_iter()
        .chain(of_part)
        .map(|(subject, field, value)| Edit::new(subject, field, value))
        .collect();
    store.write(&edits).unwrap();
    drop(store);
    let mut guide = Guide::at(home.path(), author, guide::english(Figures::default())).unwrap();
    guide.wait_for_long_work(Duration::MAX);
    guide.open(&folder).unwrap();
    guide.read_print_with(model);
    press(&mut guide, "free-parts");
    let parts = guide.screen();
    let part = press(&mut guide, &row(&parts, "S1"));
    let label = press(&mut guide, &row(&part, "its label"));
    assert_eq!(label.name, "ask-label");
    House { served: page::serve(guide, page::english(Figures::default())).unwrap(), home }
}

/// A photo of a splitter's label that `tests/photos/make.py` made.
fn photo() -> PathBuf {
    let folder =
        PathBuf::from(std::env::var_os("LEGWORK_PHOTOS").expect("LEGWORK_PHOTOS names a folder of photos"));
    let truth: Vec<serde_json::Value> =
        serde_json::from_slice(&std::fs::read(folder.join("truth.json")).unwrap()).unwrap();
    let found = truth.iter().find(|photo| photo["kind"] == "splitter").expect("a splitter");
    folder.join(found["file"].as_str().expect("a file"))
}

/// The screen once the photo was read.
fn once_read(browser: &Browser) -> Answer {
    let since = Instant::now();
    loop {
        let shown = browser.get("/");
        if !shown.body.contains("<progress") {
            return shown;
        }
        assert!(since.elapsed() < Duration::from_secs(120), "never read: {}", shown.body);
        std::thread::sleep(Duration::from_millis(50));
    }
}

#[test]
#[ignore = "needs the model and photos"]
fn each_number_stands_beside_its_piece_of_the_photo_and_no_other_piece_is_served() {
    let model =
        std::env::var_os("LEGWORK_PRINT_MODEL").expect("LEGWORK_PRINT_MODEL names the model's folder");
    let house = at_label(Path::new(&model));
    let browser = house.browser();
    let asked = browser.get("/");
    let input = asked.attribute(".drop input[type=file]", "name").unwrap();
    let (ticket, picture) = (asked.ticket(), std::fs::read(photo()).unwrap());
    let fields =
        [("ticket", None, ticket.as_bytes()), (input.as_str(), Some("label.jpg"), picture.as_slice())];
    assert_eq!(browser.post(&fields).status, 303);
    let shown = once_read(&browser);
    let piece = shown.attribute("button.fig img.fp", "src").unwrap_or_else(|| panic!("{}", shown.body));
    let name = shown.attribute("button.fig img.fp", "alt").unwrap();
    assert!(name.starts_with("in the photo"), "{name}");
    let answer = browser.get(&piece);
    assert_eq!((answer.status, answer.header("content-type")), (200, Some("image/jpeg")));
    assert!(answer.body.len() < 200_000, "{} bytes", answer.body.len());
    assert_eq!(browser.without("Cookie").get(&piece).status, 403);
    let photo = piece.split('/').nth(3).unwrap().to_owned();
    for rest in ["0/0/10000/9999", "0/0/0/0", "4294967295/0/1/1", "9999/9999/2/2", "1/2/3"] {
        assert_eq!(browser.get(&format!("/photo/piece/{photo}/{rest}")).status, 404, "{rest}");
    }
    for rest in ["-1/0/10/10", "0/0/99999999999999999999/1", "a/b/c/d", "0.5/0/1/1", "%2e%2e/0/1/1"] {
        let status = browser.get(&format!("/photo/piece/{photo}/{rest}")).status;
        assert_eq!(status, 400, "{rest}");
    }
}

/// Two touches on the photo, as a browser without script says them: pixels of the photo as wide as it is shown.
#[test]
fn two_touches_on_the_photo_choose_the_part_that_is_shown() {
    let house = at_label(Path::new("no model"));
    let browser = house.browser();
    let asked = browser.get("/");
    let input = asked.attribute(".drop input[type=file]", "name").unwrap();
    let mut picture = std::io::Cursor::new(Vec::new());
    let grey = image::RgbImage::from_pixel(400, 200, image::Rgb([90, 90, 90]));
    grey.write_to(&mut picture, image::ImageFormat::Png).unwrap();
    let ticket = asked.ticket();
    let fields =
        [("ticket", None, ticket.as_bytes()), (input.as_str(), Some("a.png"), picture.get_ref().as_slice())];
    assert_eq!(browser.post(&fields).status, 303);
    let shown = once_read(&browser);
    let to_part = shown.attribute("button[value^='photo-part:']", "value").unwrap();
    let part = browser.deed(&shown, &[("press", &to_part)]);
    assert_eq!(part.screen(), "photo-part");
    let photo = part.attribute("input[type=image]", "src").unwrap();
    assert_eq!(browser.get(&photo).header("content-type"), Some("image/jpeg"));
    // The widest is shown 660 pixels wide, and therefore 330 high.
    let name = part.attribute(".wide-660 input", "name").unwrap();
    let touch = |screen: &Answer, x: &str, y: &str| {
        browser.deed(screen, &[(&format!("{name}.x"), x), (&format!("{name}.y"), y)])
    };
    let again = touch(&part, "x", "-7");
    assert_eq!(again.attribute(".pshot path", "d"), None, "what is no place is none");
    let first = touch(&again, "66", "33");
    assert_eq!(first.attribute(".pshot path", "d").as_deref(), Some("M1000 0V10000M0 1000H10000"));
    let label = touch(&first, "330", "99999");
    assert_eq!(label.screen(), "ask-label");
    let cut = label.attribute(".lshot.cut img", "src").unwrap_or_else(|| panic!("{}", label.body));
    assert!(cut.ends_with("/1000/1000/4000/9000"), "{cut}");
    assert_eq!(browser.get(&cut).status, 200);
}
