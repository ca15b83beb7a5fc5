//! Forms become deeds, as without script.
#![expect(clippy::unwrap_used, reason = "a picture that cannot be made ends the test")]

use super::browser::{Browser, House};

fn new_survey(browser: &Browser) -> super::browser::Answer {
    let list = browser.get("/");
    assert_eq!(list.screen(), "surveys");
    let new = browser.deed(&list, &[("press", "new")]);
    assert_eq!(new.screen(), "new-survey");
    browser.deed(&new, &[("written name", "Mill House"), ("press", "make")])
}

#[test]
fn a_survey_is_made_and_its_first_question_answered_by_forms_alone() {
    let house = House::new();
    let browser = house.browser();
    let asked = new_survey(&browser);
    assert_eq!(asked.screen(), "ask-whose");
    // The one choice of the screen leads on by itself.
    let name = asked.attribute(".choice button.opt", "name").unwrap();
    let option = asked.attribute(".choice button.opt", "value").unwrap();
    let next = browser.deed(&asked, &[(name.as_str(), option.as_str())]);
    assert_ne!(next.screen(), "ask-whose");
    let back = browser.deed(&next, &[("back", "1")]);
    assert_eq!(back.screen(), "ask-whose");
}

#[test]
fn what_is_written_is_kept_though_nothing_is_pressed() {
    let house = House::new();
    let browser = house.browser();
    let list = browser.get("/");
    let new = browser.deed(&list, &[("press", "new")]);
    let kept = browser.deed(&new, &[("written name", "A house with \"quotes\" & <tags>"), ("keep", "1")]);
    assert_eq!(kept.screen(), "new-survey");
    let text = kept.attribute("[name='written name']", "value").unwrap();
    assert_eq!(text, "A house with \"quotes\" & <tags>");
    assert!(!kept.body.contains("<tags>"), "nothing that was written becomes markup");
}

#[test]
fn a_photo_is_taken_in_and_shown() {
    let house = House::new();
    let browser = house.browser();
    let asked = new_survey(&browser);
    let overview = browser.deed(&asked, &[("press", "overview")]);
    let burst = browser.deed(&overview, &[("press", "free-burst")]);
    let input = burst.attribute(".drop input[type=file]", "name").unwrap();
    let picture = picture();
    let ticket = burst.ticket();
    let fields =
        [("ticket", None, ticket.as_bytes()), (input.as_str(), Some("../../etc/a.png"), picture.as_slice())];
    assert_eq!(browser.post(&fields).status, 303);
    let shown = browser.get("/");
    let small = shown.attribute(".phs img", "src").unwrap_or_else(|| panic!("{}", shown.body));
    let answer = browser.get(&small);
    assert_eq!((answer.status, answer.header("content-type")), (200, Some("image/jpeg")));
}

#[test]
fn a_file_is_written_pointed_out_and_saved_and_can_be_taken_in_elsewhere() {
    let house = House::new();
    let browser = house.browser();
    let asked = new_survey(&browser);
    let overview = browser.deed(&asked, &[("press", "overview")]);
    let pack = browser.deed(&overview, &[("press", "pack")]);
    assert_eq!(pack.screen(), "share-pack");
    let write = pack.attribute(".press.main", "value").unwrap();
    let written = browser.deed(&pack, &[("press", write.as_str())]);
    let link = written.attribute("a[data-written]", "href").unwrap_or_else(|| panic!("{}", written.body));
    let saved = browser.get(&link);
    assert_eq!(saved.status, 200);
    assert!(saved.header("content-disposition").unwrap().starts_with("attachment;"));
    assert!(saved.body.starts_with("PK"), "the file is a ZIP (APPNOTE.TXT 4.3.7)");
}

#[test]
fn a_press_that_the_screen_does_not_have_does_nothing() {
    let house = House::new();
    let browser = house.browser();
    let list = browser.get("/");
    let same = browser.deed(&list, &[("press", "overview"), ("pick whose", "own"), ("written name", "x")]);
    assert_eq!(same.screen(), "surveys");
}

/// A small picture.
fn picture() -> Vec<u8> {
    let mut bytes = Vec::new();
    let picture = image::RgbImage::from_fn(16, 12, |x, y| {
        image::Rgb([u8::try_from(x * 9).unwrap_or(0), u8::try_from(y * 11).unwrap_or(0), 60])
    });
    picture.write_to(&mut std::io::Cursor::new(&mut bytes), image::ImageFormat::Png).unwrap();
    bytes
}
