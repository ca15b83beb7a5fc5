//! A label is read from its photo: offered, and counted once it is taken. What needs the model is run by `tests/rooms/print`, which
//! makes it. Every house here is invented.

use std::path::{Path, PathBuf};

use guide::screen::{Block, LabelBlock, PhotoPartBlock, PhotoPiece};
use guide::{Deed, Screen};
use house::record::EntryKind;
use houses::House;

use crate::result_house::{Walk, sound, text};

pub fn house() -> Walk {
    let house = House::new().entry("E1", EntryKind::Cable).splitter("S1", 0).from("E1", 1);
    Walk::of(&house.at("S1").with(|part| part.rating = house::rating::PartRating::default()).survey())
}

/// The row of a screen whose head has this word.
pub fn row(screen: &Screen, word: &str) -> String {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    let found = rows.flatten().find(|row| row.head.contains(word)).and_then(|row| row.key.clone());
    found.unwrap_or_else(|| panic!("no row has {word}: {}", text(screen)))
}

/// The screen that asks what is printed on the splitter.
pub fn to_label(walk: &mut Walk) -> Screen {
    let parts = walk.go("free-parts");
    let part = walk.press(&row(&parts, "S1"));
    walk.press(&row(&part, "its label"))
}

pub fn label(screen: &Screen) -> Option<&LabelBlock> {
    screen.blocks.iter().find_map(|block| match block {
        Block::Label(label) => Some(label),
        _ => None,
    })
}

/// A picture without any text.
fn blank(folder: &Path) -> PathBuf {
    let file = folder.join("blank.png");
    image::RgbImage::from_pixel(320, 200, image::Rgb([200, 200, 200])).save(&file).expect("written");
    file
}

pub fn photograph(walk: &mut Walk, file: &Path) -> Screen {
    let file = file.to_str().expect("a path").to_owned();
    walk.guide.act(&Deed::Photo { key: "label-photo".into(), file }).expect("taken");
    walk.screen()
}

#[test]
fn without_a_model_a_label_is_typed_as_ever() {
    let mut walk = house();
    to_label(&mut walk);
    let file = blank(walk.home.path());
    let screen = photograph(&mut walk, &file);
    sound(&screen);
    assert_eq!(screen.name, "ask-label");
    assert!(label(&screen).is_none());
}

#[test]
fn what_is_missing_of_the_model_is_said_and_a_label_can_be_typed() {
    let mut walk = house();
    let nowhere = walk.home.path().join("no-model");
    walk.guide.read_print_with(&nowhere);
    to_label(&mut walk);
    let file = blank(walk.home.path());
    let screen = photograph(&mut walk, &file);
    sound(&screen);
    assert!(text(&screen).contains("letters.txt"), "{}", text(&screen));
    walk.guide.act(&Deed::Write { key: "text".into(), words: "4-WAY 5-1002 MHz".into() }).expect("typed");
    walk.press("next");
    let survey = walk.survey();
    let part = survey.parts.values().find(|part| part.tag.as_deref() == Some("S1")).expect("the splitter");
    assert_eq!(part.rating.legs, 4);
}

#[test]
fn a_model_that_comes_later_reads_what_one_that_was_missing_did_not() {
    let mut walk = house();
    let folder = walk.home.path().join("model");
    walk.guide.read_print_with(&folder);
    to_label(&mut walk);
    let file = blank(walk.home.path());
    let screen = photograph(&mut walk, &file);
    assert!(text(&screen).contains("is missing"), "{}", text(&screen));
    // Something lies there now: it is looked at anew.
    std::fs::create_dir(&folder).expect("made");
    std::fs::write(folder.join("letters.txt"), "of another release").expect("written");
    walk.guide.read_print_with(&folder);
    let screen = walk.screen();
    assert!(text(&screen).contains("is not the one of this release"), "{}", text(&screen));
}

#[test]
fn of_several_photos_of_a_label_the_last_one_counts() {
    let mut walk = house();
    to_label(&mut walk);
    let mut known = Vec::new();
    for shade in 0..6 {
        let file = walk.home.path().join("another.png");
        let picture = image::RgbImage::from_pixel(64, 48, image::Rgb([shade * 40; 3]));
        picture.save(&file).expect("written");
        photograph(&mut walk, &file);
        let screen = recognise(&mut walk, "4-WAY 5-1002 MHz");
        let shown = label(&screen).and_then(|label| label.photo.clone()).expect("its photo beside it");
        assert!(!known.contains(&shown), "photo {shade}: one that was taken before");
        known.push(shown);
    }
}

/// What the device itself recognised, as a shell hands it over.
pub fn recognise(walk: &mut Walk, words: &str) -> Screen {
    walk.guide.act(&Deed::Print { key: "recognised".into(), words: words.into() }).expect("offered");
    walk.screen()
}

#[test]
fn what_the_device_recognised_stands_in_where_the_model_is_missing() {
    let mut walk = house();
    let nowhere = walk.home.path().join("no-model");
    walk.guide.read_print_with(&nowhere);
    to_label(&mut walk);
    let file = blank(walk.home.path());
    photograph(&mut walk, &file);
    let screen = recognise(&mut walk, "4-WAY 5-1002 MHz");
    let offered = label(&screen).unwrap_or_else(|| panic!("{}", text(&screen)));
    assert_eq!(offered.text, "4-WAY 5-1002 MHz");
    assert!(!screen.keys().contains(&"take-sure"), "nobody knows how sure it is");
}

/// Photos that `tests/photos/make.py` made, with what stands on them.
pub fn photos(kind: &str) -> Vec<(PathBuf, serde_json::Value)> {
    let folder =
        PathBuf::from(std::env::var_os("LEGWORK_PHOTOS").expect("LEGWORK_PHOTOS names a folder of photos"));
    let truth = std::fs::read(folder.join("truth.json")).expect("what stands on them");
    let truth: Vec<serde_json::Value> = serde_json::from_slice(&truth).expect("a list");
    let of_kind = truth.into_iter().filter(|photo| photo["kind"] == kind);
    of_kind.map(|photo| (folder.join(photo["file"].as_str().expect("a file")), photo)).collect()
}

pub fn with_model() -> Walk {
    let mut walk = house();
    let model =
        std::env::var_os("LEGWORK_PRINT_MODEL").expect("LEGWORK_PRINT_MODEL names the model's folder");
    walk.guide.read_print_with(Path::new(&model));
    walk
}

/// The photo of which a part is chosen.
fn photo_part(screen: &Screen) -> PhotoPartBlock {
    let found = screen.blocks.iter().find_map(|block| match block {
        Block::PhotoPart(part) => Some(part.clone()),
        _ => None,
    });
    found.unwrap_or_else(|| panic!("no photo to touch: {}", text(screen)))
}

/// On to the screen that asks which part of the label's photo is read.
fn to_part(walk: &mut Walk) -> Screen {
    let key = walk.screen().keys().iter().find(|key| key.starts_with("photo-part:")).map(ToString::to_string);
    walk.press(&key.expect("a way to choose the part"))
}

/// Touches a place, ten-thousandths.
fn touch(walk: &mut Walk, (across, down): (u32, u32)) -> Screen {
    walk.guide.act(&Deed::Touch { key: "corner".into(), across, down }).expect("touched");
    walk.screen()
}

/// Left, top, width, height.
fn sides(piece: &PhotoPiece) -> [u32; 4] {
    [piece.left, piece.top, piece.width, piece.height]
}

#[test]
fn two_touches_on_opposite_corners_choose_the_part_whichever_comes_first() {
    let mut walk = house();
    to_label(&mut walk);
    let file = blank(walk.home.path());
    let screen = photograph(&mut walk, &file);
    assert!(label(&screen).is_none(), "nothing was read, and no part chosen");
    let beyond = u32::MAX;
    for (one, other, part) in [
        ((1_000, 2_000), (6_000, 5_000), [1_000, 2_000, 5_000, 3_000]),
        ((6_000, 5_000), (1_000, 2_000), [1_000, 2_000, 5_000, 3_000]),
        ((6_000, 2_000), (1_000, 5_000), [1_000, 2_000, 5_000, 3_000]),
        // Beyond the photo is its edge.
        ((7_000, 8_000), (beyond, 10_001), [7_000, 8_000, 3_000, 2_000]),
    ] {
        let screen = to_part(&mut walk);
        sound(&screen);
        assert_eq!(photo_part(&screen).corner, None);
        let screen = touch(&mut walk, one);
        sound(&screen);
        let corner = photo_part(&screen).corner.expect("the first corner is shown");
        assert_eq!((corner.across, corner.down), one);
        let screen = touch(&mut walk, other);
        assert_eq!(screen.name, "ask-label", "after the second it is over");
        let shown = label(&screen).and_then(|label| label.part.clone()).expect("the part is shown");
        assert_eq!(sides(&shown), part);
        let cut = image::open(walk.guide.photo_piece(&shown).expect("its file")).expect("a picture");
        assert_eq!((cut.width(), cut.height()), (320 * part[2] / 10_000, 200 * part[3] / 10_000));
    }
    let screen = to_part(&mut walk);
    assert_eq!(photo_part(&screen).part.map(|part| sides(&part)), Some([7_000, 8_000, 3_000, 2_000]));
}

#[test]
fn what_is_too_small_for_a_label_is_refused_in_words_and_a_first_corner_can_be_taken_back() {
    let mut walk = house();
    to_label(&mut walk);
    let file = blank(walk.home.path());
    photograph(&mut walk, &file);
    to_part(&mut walk);
    for other in [(5_000, 5_000), (5_100, 9_000), (9_000, 4_900)] {
        touch(&mut walk, (5_000, 5_000));
        let screen = touch(&mut walk, other);
        sound(&screen);
        assert_eq!(screen.name, "photo-part");
        assert!(text(&screen).contains("too small"), "{}", text(&screen));
        assert_eq!(photo_part(&screen).corner, None, "one begins again");
    }
    touch(&mut walk, (5_000, 5_000));
    let screen = walk.press("again");
    assert_eq!(photo_part(&screen).corner, None);
    touch(&mut walk, (0, 0));
    let screen = touch(&mut walk, (3_000, 3_000));
    assert_eq!(label(&screen).and_then(|label| label.part.as_ref()).map(sides), Some([0, 0, 3_000, 3_000]));
}

/// Who touches nothing chooses among a few pieces; all of the photo is one of them.
#[test]
fn a_piece_can_be_chosen_without_a_touch_on_the_photo() {
    let mut walk = house();
    to_label(&mut walk);
    let file = blank(walk.home.path());
    photograph(&mut walk, &file);
    walk.guide.act(&Deed::Write { key: "text".into(), words: "4-WAY".into() }).expect("typed");
    let pick = |walk: &mut Walk, piece: &str| {
        to_part(walk);
        walk.guide.act(&Deed::Pick { key: "piece".into(), picked: vec![piece.into()] }).expect("picked");
        walk.screen()
    };
    let screen = pick(&mut walk, "lower");
    assert_eq!(screen.name, "ask-label");
    assert!(text(&screen).contains("4-WAY"), "what was typed is still there: {}", text(&screen));
    assert_eq!(
        label(&screen).and_then(|label| label.part.as_ref()).map(sides),
        Some([0, 4_000, 10_000, 6_000])
    );
    let screen = pick(&mut walk, "whole");
    assert!(label(&screen).is_none(), "nothing was read, and all of it is no part");
}

/// A photo says in a tag which way up it is (Exif 2.3, "Orientation"): 6 is a quarter turn. What is touched is what is shown.
#[test]
fn of_a_turned_photo_the_part_is_the_one_that_is_shown() {
    let mut walk = house();
    to_label(&mut walk);
    // As it lies in the file: blue at the left, red at the right. Turned, blue is above.
    let pixels = image::RgbImage::from_fn(400, 200, |x, _| {
        image::Rgb(if x < 200 { [0, 0, 230] } else { [230, 0, 0] })
    });
    let file = walk.home.path().join("turned.png");
    let tiff = [b'M', b'M', 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0];
    let mut encoder = image::codecs::png::PngEncoder::new(std::fs::File::create(&file).expect("a file"));
    image::ImageEncoder::set_exif_metadata(&mut encoder, tiff.to_vec()).expect("a tag");
    image::DynamicImage::ImageRgb8(pixels).write_with_encoder(encoder).expect("written");
    photograph(&mut walk, &file);
    to_part(&mut walk);
    touch(&mut walk, (0, 0));
    let screen = touch(&mut walk, (10_000, 4_000));
    let shown = label(&screen).and_then(|label| label.part.clone()).expect("the part");
    assert_eq!(walk.guide.photo_size(&shown.photo).expect("its size"), (200, 400));
    let cut = image::open(walk.guide.photo_piece(&shown).expect("its file")).expect("a picture").into_rgb8();
    assert_eq!(cut.dimensions(), (200, 160));
    assert!(cut.pixels().all(|pixel| pixel.0[2] > 180 && pixel.0[0] < 60), "all of it is blue");
}

/// What was taken stays as it was read, whatever part is read after that; another part is read anew.
#[test]
#[ignore = "needs the model and photos"]
fn another_part_is_read_anew_and_what_was_taken_before_stays() {
    let mut checked = 0;
    for (file, _) in photos("splitter").into_iter().take(6) {
        let mut walk = with_model();
        to_label(&mut walk);
        let screen = photograph(&mut walk, &file);
        if !screen.keys().contains(&"take-sure") {
            continue;
        }
        let screen = walk.press("take-sure");
        let before = label(&screen).expect("what was read").clone();
        let taken = |label: &LabelBlock| -> Vec<(String, String)> {
            let taken = label.figures.iter().filter(|figure| figure.taken);
            taken.map(|figure| (figure.name.clone(), figure.says.clone())).collect()
        };
        // A corner of the photo in which nothing of it stands.
        to_part(&mut walk);
        touch(&mut walk, (0, 0));
        let screen = touch(&mut walk, (200, 200));
        let after = label(&screen).expect("what was taken").clone();
        assert_eq!(taken(&after), taken(&before), "{file:?}");
        assert!(after.figures.iter().all(|figure| figure.taken), "nothing else is read in that corner");
        // And of all of it once more, as before: what was taken still stands.
        to_part(&mut walk);
        walk.guide.act(&Deed::Pick { key: "piece".into(), picked: vec!["whole".into()] }).expect("picked");
        let screen = walk.screen();
        assert_eq!(label(&screen).map(|label| label.figures.len()), Some(before.figures.len()));
        to_part(&mut walk);
        touch(&mut walk, (0, 0));
        touch(&mut walk, (200, 200));
        walk.press("next");
        let survey = walk.survey();
        let part =
            survey.parts.values().find(|part| part.tag.as_deref() == Some("S1")).expect("the splitter");
        let rating = format!("{:?}", part.rating);
        assert!(part.rating.legs > 0 || part.rating.band.is_some(), "{rating} of {:?}", taken(&before));
        checked += 1;
    }
    assert!(checked >= 2, "{checked}");
}

/// The second and the third touch: on, and what was read is confirmed.
fn confirm(walk: &mut Walk) {
    let screen = walk.press("next");
    assert_eq!(screen.name, "ask-label-read");
    let keep = if screen.keys().contains(&"next") { "next" } else { "keep" };
    walk.press(keep);
}

/// Whether the splitter's band stands in the record; what stands there is what the generator printed.
fn has_its_band(walk: &Walk, truth: &serde_json::Value) -> bool {
    let survey = walk.survey();
    let part = survey.parts.values().find(|part| part.tag.as_deref() == Some("S1")).expect("the splitter");
    let (Some(found), Some(high)) = (part.rating.band, truth["states"]["high"].as_f64()) else {
        return false;
    };
    assert!((found.high_mhz - high).abs() < 1e-6, "{found:?} for {truth}");
    true
}

/// From the photo to the rating on the disk with two touches for the part and three after them.
#[test]
#[ignore = "needs the model and photos"]
fn a_part_of_a_photo_becomes_a_rating_with_three_touches_after_it() {
    let mut taken = 0;
    for (file, truth) in photos("splitter").into_iter().take(6) {
        let mut walk = with_model();
        to_label(&mut walk);
        photograph(&mut walk, &file);
        to_part(&mut walk);
        touch(&mut walk, (9_900, 9_900));
        let screen = touch(&mut walk, (100, 100));
        if !screen.keys().contains(&"take-sure") {
            continue;
        }
        walk.press("take-sure");
        confirm(&mut walk);
        taken += usize::from(has_its_band(&walk, &truth));
    }
    assert!(taken >= 2, "of six labels {taken} gave their band");
}

/// From the photo to the rating on the disk: all that is sure, on, and what was read is confirmed.
#[test]
#[ignore = "needs the model and photos"]
fn a_photo_becomes_a_rating_with_three_touches() {
    let mut taken = 0;
    for (file, truth) in photos("splitter").into_iter().take(6) {
        let mut walk = with_model();
        to_label(&mut walk);
        let screen = photograph(&mut walk, &file);
        sound(&screen);
        if !screen.keys().contains(&"take-sure") {
            continue;
        }
        let offered = label(&screen).expect("what was read").clone();
        assert!(offered.figures.iter().all(|figure| !figure.taken), "nothing counts before a touch");
        let screen = walk.press("take-sure");
        let sure = label(&screen).expect("still there").figures.clone();
        for figure in &sure {
            assert_eq!(figure.taken, figure.doubt.is_empty(), "{figure:?}");
        }
        confirm(&mut walk);
        let is_sure = sure.iter().any(|figure| figure.id.contains("high") && figure.taken);
        taken += usize::from(is_sure && has_its_band(&walk, &truth));
        let survey = walk.survey();
        let photo = survey.photos.values().next().expect("the photo");
        assert_eq!(photo.print.as_deref(), Some(offered.text.as_str()), "what was read stays beside it");
    }
    assert!(taken >= 2, "of six labels {taken} gave their band");
}

/// Beside each number stands the piece of the photo in which it was read: a small file, of no more of the photo than that.
#[test]
#[ignore = "needs the model and photos"]
fn each_number_has_its_piece_of_the_photo() {
    let mut shown = 0;
    for (file, _) in photos("splitter").into_iter().take(6) {
        let mut walk = with_model();
        to_label(&mut walk);
        let screen = photograph(&mut walk, &file);
        let Some(offered) = label(&screen) else { continue };
        for figure in &offered.figures {
            let Some(piece) = &figure.piece else { continue };
            assert_eq!(Some(&piece.photo), offered.photo.as_ref());
            assert!(piece.name.starts_with("in the photo"), "{}", piece.name);
            let cut = image::open(walk.guide.photo_piece(piece).expect("its file")).expect("a picture");
            let whole =
                image::open(walk.guide.whole_photo(&piece.photo).expect("its file")).expect("a picture");
            let share = |parts: u32, side: u32| f64::from(parts) / 10_000.0 * f64::from(side);
            let (width, height) = (share(piece.width, whole.width()), share(piece.height, whole.height()));
            let scale = (1280.0 / width.max(height)).min(1.0);
            assert!((f64::from(cut.width()) - width * scale).abs() < 2.0, "{piece:?} is {}", cut.width());
            assert!((f64::from(cut.height()) - height * scale).abs() < 2.0, "{piece:?} is {}", cut.height());
            assert!(piece.width * piece.height < 10_000 * 10_000 / 5, "a number fills no photo: {piece:?}");
            shown += 1;
        }
        // What no screen shows is not made, whoever asks.
        if let Some(piece) = offered.figures.iter().find_map(|figure| figure.piece.clone()) {
            for other in [
                PhotoPiece { left: piece.left + 1, ..piece.clone() },
                PhotoPiece { width: u32::MAX, ..piece.clone() },
                PhotoPiece { left: 0, top: 0, width: 0, height: 0, ..piece.clone() },
                PhotoPiece { photo: "../../etc".into(), ..piece },
            ] {
                walk.guide.photo_piece(&other).unwrap_err();
            }
        }
    }
    assert!(shown >= 12, "{shown} numbers of six labels have their piece");
}

/// What somebody types stands, whatever was read: typed beside the photo, or before it was taken.
#[test]
#[ignore = "needs the model and photos"]
fn a_typed_word_wins_over_the_photo() {
    let readable = photos("splitter").into_iter().find_map(|(file, _)| {
        let mut walk = with_model();
        to_label(&mut walk);
        photograph(&mut walk, &file).keys().contains(&"take-sure").then_some(file)
    });
    let readable = readable.expect("one that is read");
    for before in [false, true] {
        let mut walk = with_model();
        to_label(&mut walk);
        let words = "7-WAY SPLITTER 5-777 MHz".to_owned();
        let typed = Deed::Write { key: "text".into(), words };
        if before {
            walk.guide.act(&typed).expect("typed");
            walk.press("next");
            to_label(&mut walk);
        }
        photograph(&mut walk, &readable);
        // What is read and is not as it was typed goes with no other.
        if walk.screen().keys().contains(&"take-sure") {
            walk.press("take-sure");
        }
        if !before {
            walk.guide.act(&typed).expect("typed");
        }
        walk.press("next");
        let survey = walk.survey();
        let part =
            survey.parts.values().find(|part| part.tag.as_deref() == Some("S1")).expect("the splitter");
        assert_eq!(part.rating.legs, 7, "{before}");
        assert_eq!(part.rating.band.map(|band| band.high_mhz), Some(777.0), "{before}");
    }
}

/// The rating of the splitter.
pub fn rating(walk: &Walk) -> house::rating::PartRating {
    let survey = walk.survey();
    let part = survey.parts.values().find(|part| part.tag.as_deref() == Some("S1"));
    part.expect("the splitter").rating.clone()
}

/// One end of a band says nothing of the other: nobody read a band that ends where it begins.
#[test]
fn one_end_of_a_band_alone_makes_no_band_and_what_was_taken_before_stays() {
    let mut walk = house();
    let screen = to_label(&mut walk);
    let key = screen.blocks.iter().find_map(|block| match block {
        Block::PhotoSlot(slot) => slot.print_key.clone(),
        _ => None,
    });
    let key = key.expect("a key for print");
    for (take, legs, band) in [
        (vec!["take:legs"], 4, None),
        (vec!["take:low"], 4, None),
        (vec!["take:low", "take:high"], 4, Some((5.0, 1002.0))),
    ] {
        walk.guide
            .act(&Deed::Print { key: key.clone(), words: "4-WAY SPLITTER 5-1002 MHz".into() })
            .expect("told");
        for take in take {
            walk.press(take);
        }
        walk.press("next");
        let found = rating(&walk);
        assert_eq!((found.legs, found.band.map(|band| (band.low_mhz, band.high_mhz))), (legs, band));
        to_label(&mut walk);
    }
}

#[test]
#[ignore = "needs the model and photos"]
fn what_the_model_read_goes_before_what_the_device_recognised() {
    let (file, _) = photos("splitter").into_iter().next().expect("a photo of a splitter");
    let mut walk = with_model();
    to_label(&mut walk);
    let read = photograph(&mut walk, &file);
    let read = label(&read).expect("what was read").clone();
    let screen = recognise(&mut walk, "9-WAY 7-777 MHz");
    assert_eq!(label(&screen), Some(&read));
    // Of what has no text the model says nothing, and the device's stands.
    let file = blank(walk.home.path());
    photograph(&mut walk, &file);
    let screen = recognise(&mut walk, "9-WAY 7-777 MHz");
    assert!(label(&screen).is_some_and(|label| label.text == "9-WAY 7-777 MHz"), "{}", text(&screen));
}
