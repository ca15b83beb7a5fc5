//! `legwork label --photo`: what is refused. What is read stands in `label_photo_read`, which needs the model.

use crate::support::Desk;
use crate::support::pictures::{jpeg, png, png_announcing};

fn with_a_photo() -> Desk {
    let desk = Desk::new();
    desk.write("a.jpg", jpeg(64, 48, 1));
    desk
}

#[test]
fn without_the_model_it_says_where_it_was_looked_for_and_how_it_is_made() {
    let desk = with_a_photo();
    let err = desk.refused(1, "print_model", &["label", "--photo", "a.jpg"]);
    for said in ["“letters.txt”", "is missing", "core/print/model/make", "LEGWORK_PRINT_MODEL"] {
        assert!(err.contains(said), "no {said} in {err}");
    }
    assert!(err.contains(&desk.print_model().display().to_string()), "{err}");
    // A folder that is named by nothing is none.
    let mut command = desk.command(&["label", "--photo", "a.jpg"]);
    let output = command.env("LEGWORK_PRINT_MODEL", "").output().unwrap();
    assert_eq!(output.status.code(), Some(1));
    let err = String::from_utf8(output.stderr).unwrap();
    let beside = std::path::Path::new(env!("CARGO_BIN_EXE_legwork")).with_file_name("print-model");
    assert!(err.contains(&beside.display().to_string()), "{err}");
}

#[test]
fn a_model_of_another_sum_is_refused() {
    let desk = with_a_photo();
    std::fs::create_dir(desk.print_model()).unwrap();
    std::fs::write(desk.print_model().join("letters.txt"), "abc\n").unwrap();
    let err = desk.refused(1, "print_model", &["label", "--photo", "a.jpg"]);
    assert!(err.contains("“letters.txt”") && err.contains("not the one of this release"), "{err}");
    assert!(err.contains("core/print/model/make"), "{err}");
}

#[test]
fn what_is_no_picture_is_refused_before_the_model_is_looked_for() {
    let desk = with_a_photo();
    let whole = jpeg(64, 48, 2);
    desk.write("cut.jpg", &whole[..whole.len() / 2]);
    desk.write("text.jpg", "no picture");
    desk.write("empty.png", "");
    desk.write("large.png", png_announcing(60_000, 60_000));
    desk.write("long.png", png_announcing(60_000, 4));
    for (bad, words) in [
        ("cut.jpg", "end is missing"),
        ("text.jpg", "no JPEG"),
        ("empty.png", "empty"),
        ("large.png", "60000 × 60000"),
        ("long.png", "60000 × 4"),
    ] {
        for photos in [&["label", "--photo", bad][..], &["label", "--photo", "a.jpg", "--photo", bad]] {
            let err = desk.refused(3, "picture", photos);
            assert!(err.contains(bad) && err.contains(words), "{err}");
        }
    }
    desk.refused(1, "file", &["label", "--photo", "missing.jpg"]);
    desk.refused(1, "file", &["label", "--photo", "."]);
}

#[test]
fn a_crop_is_told_what_is_wrong_with_it() {
    let desk = with_a_photo();
    desk.write("b.png", png(20, 10, 3));
    for bad in ["1,2,3", "1,2,3,0", "-1,2,3,4", "1.5,2,3,4", "all", "", "1,2,3,99999999999"] {
        let err = desk.refused(3, "label", &["label", "--photo", "a.jpg", "--crop", bad]);
        assert!(err.contains(&format!("“{bad}”")) && err.contains("X,Y,W,H"), "{err}");
    }
    for outside in ["64,0,5,5", "0,48,5,5", "4294967295,0,4294967295,1"] {
        let err = desk.refused(3, "picture", &["label", "--photo", "a.jpg", "--crop", outside]);
        assert!(err.contains("a.jpg") && err.contains("64 pixels wide and 48 high"), "{err}");
    }
    let both = ["label", "--photo", "a.jpg", "--photo", "b.png", "--crop", "1,1,5,5", "--crop", "30,1,5,5"];
    let err = desk.refused(3, "picture", &both);
    assert!(err.contains("b.png") && err.contains("20 pixels wide"), "{err}");
    let err = desk.refused(3, "label", &both[..7]);
    assert!(err.contains("2 photos and one crop"), "{err}");
    // What sticks out is cut off, so that only the model is missing.
    desk.refused(1, "print_model", &["label", "--photo", "a.jpg", "--crop", "60,40,500,500"]);
}

#[test]
fn it_is_a_text_or_photos_and_never_more_than_two() {
    let desk = with_a_photo();
    for wrong in [
        &["label"][..],
        &["label", "4-WAY", "--photo", "a.jpg"],
        &["label", "-", "--photo", "a.jpg"],
        &["label", "4-WAY", "--crop", "1,2,3,4"],
        &["label", "--photo"],
    ] {
        assert_eq!(desk.run(wrong).code, 2, "{wrong:?}");
    }
    let three = ["label", "--photo", "a.jpg", "--photo", "a.jpg", "--photo", "a.jpg"];
    let err = desk.refused(3, "label", &three);
    assert!(err.contains("3 photos"), "{err}");
}
