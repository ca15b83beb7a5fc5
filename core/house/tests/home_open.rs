//! A large survey opens to what was said last: 300 parts, 2,000 photos, 20,000 facts.

use facts::fact::{AuthorId, Edit, SubjectId};
use facts::store::Store;
use house::record::fold;
use serde_json::json;
use tempfile::TempDir;

#[test]
fn a_large_survey_opens_whole() {
    let home = TempDir::new().unwrap();
    let folder = home.path().join("large.legwork");
    let mut store = Store::create(&folder, AuthorId::random()).unwrap();
    let parts: Vec<SubjectId> = (0..300).map(|_| SubjectId::random()).collect();
    for (number, &part) in parts.iter().enumerate() {
        let feed = json!({"from": {"part": parts[number / 2], "port": 1 + number % 2, "run": null}});
        let kind = if number < 150 { "splitter" } else { "outlet" };
        let edits = [
            ("is", json!("part")),
            ("kind", json!(kind)),
            ("feed", feed),
            ("tag", json!(format!("S{number}"))),
        ];
        store.write(&edits.map(|(field, value)| Edit::new(part, field, value))).unwrap();
    }
    for number in 0..2_000 {
        let photo = SubjectId::random();
        let image = json!({
            "sha256": format!("{number:064x}"), "ext": "jpg", "bytes": 3_000_000, "width": 4000, "height": 3000,
        });
        let of = json!(parts[number % 300]);
        let edits = [("is", json!("photo")), ("image", image), ("of", of), ("role", json!("label"))];
        store.write(&edits.map(|(field, value)| Edit::new(photo, field, value))).unwrap();
    }
    let mut round = 0;
    while store.ledger().len() < 20_000 {
        round += 1;
        let edits: Vec<Edit> = parts
            .iter()
            .map(|&part| Edit::new(part, "where", format!("behind the shelf, moved {round} times")))
            .collect();
        store.write(&edits).unwrap();
    }
    drop(store);
    let store = Store::open(&folder, AuthorId::random()).unwrap();
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!((records.parts.len(), records.photos.len()), (300, 2_000));
    assert_eq!(store.summary().progress.photos, 2_000);
    let last = format!("behind the shelf, moved {round} times");
    assert!(records.parts.values().all(|part| part.place.as_ref() == Some(&last)));
}
