//! Writes every screen of the guide as a document that stands still, for the browser's tests: `every_screen FOLDER LANGUAGE`.
//! They are those of the guide's own walk over a home with one of everything. Small photos and pieces of photos lie beside them in `photo`.

#![expect(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "it serves the tests, and a walk that goes wrong ends it"
)]
#![expect(dead_code, reason = "the guide's tests use more of what it walks with")]

#[path = "../../desk/src/clean.rs"]
mod clean;
#[path = "../../desk/src/plain/show.rs"]
mod plain;
#[path = "../../guide/tests/all/screens_walk.rs"]
mod screens_walk;
#[path = "../../guide/tests/all/shell.rs"]
mod shell;
#[path = "../../guide/tests/all/shell_drawn.rs"]
mod shell_drawn;
#[path = "../../guide/tests/all/whole_house.rs"]
mod whole_house;

use std::fs;
use std::path::PathBuf;
use std::sync::OnceLock;

use guide::screen::PhotoPiece;
use screens_walk::Walk;
use telling::words::Figures;

/// Where the screens are written.
static FOLDER: OnceLock<PathBuf> = OnceLock::new();

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut arguments = std::env::args().skip(1);
    let folder = PathBuf::from(arguments.next().ok_or("every_screen FOLDER LANGUAGE")?);
    fs::create_dir_all(folder.join("photo/small"))?;
    FOLDER.set(folder).map_err(|_| "two folders")?;
    let mut walk = if arguments.next().as_deref() == Some("right-to-left") {
        let mut walk = Walk::over_everything_in(guide::right_to_left);
        walk.tried = Some(|walk| keep(walk, &page::worded(guide::right_to_left(Figures::default()))));
        walk
    } else {
        let mut walk = Walk::over_everything();
        walk.tried = Some(|walk| keep(walk, &page::english(Figures::default())));
        walk
    };
    walk.through_everything();
    let missing: Vec<_> =
        guide::screen_names().into_iter().filter(|name| !walk.shown.contains_key(name)).collect();
    assert!(missing.is_empty(), "the walk did not come to {missing:?}");
    println!("{}", walk.shown.len());
    Ok(())
}

/// Writes the screen that is shown, and the photos on it.
fn keep(walk: &mut Walk, words: &telling::words::Language) {
    let folder = FOLDER.get().expect("set at the beginning");
    let text = page::still(&walk.guide, words);
    let name = walk.guide.screen().name;
    for piece in text.split("/photo/small/").skip(1) {
        let id: String = piece.chars().take_while(|sign| *sign != '"').collect();
        if let Ok(photo) = walk.guide.small_photo(&id) {
            fs::copy(photo, folder.join("photo/small").join(&id)).unwrap();
        }
    }
    for piece in text.split("/photo/piece/").skip(1) {
        let at: String = piece.chars().take_while(|sign| *sign != '"').collect();
        let (photo, sides) = at.split_once('/').expect("a photo, then a piece of it");
        let sides: Vec<u32> = sides.split('/').map(|side| side.parse().unwrap()).collect();
        let [left, top, width, height] = sides[..] else { panic!("{at} is no piece") };
        let shown = PhotoPiece { photo: photo.into(), left, top, width, height, name: String::new() };
        if let Ok(file) = walk.guide.photo_piece(&shown) {
            let to = folder.join("photo/piece").join(&at);
            fs::create_dir_all(to.parent().expect("within the folder")).unwrap();
            fs::copy(file, to).unwrap();
        }
    }
    fs::write(folder.join(format!("{name}.html")), text).unwrap();
}
