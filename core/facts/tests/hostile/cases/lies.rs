//! Files that are right as files and lie in what they say: rings, chains, words to forget, images that are not.

use facts::store::Store;
use serde_json::{Value, json};

use super::super::file_support::*;
use super::Case;

fn subject(number: u64) -> String {
    format!("00000000-0000-4000-8000-{number:012x}")
}

fn sealed(survey: &str, facts: Vec<String>) -> Vec<u8> {
    zip(&stored(&Bag::new(survey, facts).entries()))
}

fn from(part: u64, port: u64) -> Value {
    json!({"from": {"part": subject(part), "port": port, "run": null}})
}

/// Parts that hang on each other as no house does.
pub fn rings(survey: &str, store: &Store) -> Vec<Case> {
    let feeds = |feeds: &[(u64, Value)]| {
        let parts = feeds
            .iter()
            .enumerate()
            .map(|(n, (part, _))| line(n as u64 + 1, *part, "is", &json!("part"), &[]));
        let fed = feeds
            .iter()
            .enumerate()
            .map(|(n, (part, feed))| line(n as u64 + 5_001, *part, "feed", feed, &[]));
        sealed(survey, parts.chain(fed).collect())
    };
    let ring = |length: u64| feeds(&(1..=length).map(|n| (n, from(n % length + 1, 1))).collect::<Vec<_>>());
    let row = |length: u64| feeds(&(1..=length).map(|n| (n, from(n + 1, 1))).collect::<Vec<_>>());
    let held = store.ledger().facts().find(|fact| fact.value() == "part").unwrap().subject();
    let same = |field: &'static str, values: Vec<Value>| {
        let facts = values.iter().enumerate().map(|(n, value)| line(n as u64 + 1, 1, field, value, &[]));
        sealed(survey, facts.collect())
    };
    vec![
        ("a part that feeds itself", ring(1)),
        ("two parts that feed each other", ring(2)),
        ("a ring of 255 parts", ring(255)),
        ("a ring of 2,000 parts", ring(2_000)),
        ("a row of 257 parts", row(257)),
        ("a row of 2,000 parts", row(2_000)),
        ("2,000 parts on one port", feeds(&(1..=2_000).map(|n| (n, from(1, 1))).collect::<Vec<_>>())),
        ("a part on port 0", feeds(&[(1, from(2, 0)), (2, json!("nothing"))])),
        ("a part on port 255", feeds(&[(1, from(2, 255)), (2, json!("nothing"))])),
        ("a part on a port beyond all ports", feeds(&[(1, from(2, 1 << 40)), (2, json!("nothing"))])),
        ("a part fed by the survey", feeds(&[(1, json!({"from": {"part": survey, "port": 1}}))])),
        ("a part fed by nobody", feeds(&[(1, from(77, 1))])),
        ("a feed that is a list", feeds(&[(1, json!([from(2, 1)]))])),
        ("a part of ours fed by its own child", {
            let feed = json!({"from": {"part": subject(1), "port": 1, "run": null}});
            let ours = line(3, 0, "feed", &feed, &[]).replace(&subject(0), &held.to_string());
            let child = json!({"from": {"part": held, "port": 1, "run": null}});
            sealed(survey, vec![line(1, 1, "is", &json!("part"), &[]), line(2, 1, "feed", &child, &[]), ours])
        }),
        (
            "one thing of every kind",
            same("is", ["part", "run", "room", "note", "photo", "work"].map(Value::from).into()),
        ),
        ("a kind that is a tree", same("is", vec![json!({"part": {"part": {"part": 1}}})])),
        ("a removal of what nobody said", same("removed", vec![json!({"seen": [id(1), id(2)]})])),
        ("a removal that is a text", same("removed", vec![json!("yes")])),
        ("a removal of itself", same("removed", vec![json!({"seen": [id(1_760_000_000_001)]})])),
        ("a rating of 255 legs", same("rating", vec![json!({"legs": 255, "modem_port": true})])),
        (
            "a length of less than nothing",
            same(
                "length",
                vec![json!({"metres": -9, "low_metres": -9, "high_metres": -9, "known": "paced"})],
            ),
        ),
        (
            "a length beyond all lengths",
            same(
                "length",
                vec![json!({"metres": 1e308, "low_metres": 1e308, "high_metres": 1e308, "known": "paced"})],
            ),
        ),
        ("the least number", same("top_mhz", vec![json!(5e-324)])),
        ("a disagreement of 1,500", same("tag", (0..1_500).map(|n| json!(n)).collect())),
        ("a name of signs that steer", same("name", vec![json!("\u{1b}]0;x\u{7}\u{202e}\u{0}")])),
    ]
}

/// Words to forget: nothing is lost by any of them without a yes.
pub fn forgets(survey: &str, store: &Store) -> Vec<Case> {
    let ours: Vec<String> = store.ledger().facts().map(|fact| fact.id().to_string()).collect();
    let word = |value: &Value| sealed(survey, vec![line(1, 1, "forget", value, &[])]);
    let mine = id(1_760_000_000_001);
    let frames = |count: usize| {
        let facts = store.ledger().facts().take(count).map(|fact| {
            let mut fact: Value = serde_json::from_str(&fact.to_line().unwrap()).unwrap();
            let members = fact.as_object_mut().unwrap();
            members.remove("value");
            members.insert("forgotten".into(), json!(true));
            fact.to_string()
        });
        sealed(survey, facts.collect())
    };
    let many: Vec<String> = (0..200).map(|n| id(1_760_000_000_000 + n)).collect();
    vec![
        ("a word to forget all", word(&json!({"facts": ours}))),
        ("a word to forget one", word(&json!({"facts": [ours[0]]}))),
        ("a word to forget one 200 times", word(&json!({"facts": vec![&ours[0]; 200]}))),
        ("a word to forget itself", word(&json!({"facts": [mine]}))),
        ("a word to forget nothing", word(&json!({"facts": []}))),
        ("a word to forget what nobody has", word(&json!({"facts": many}))),
        ("a word in capitals", word(&json!({"facts": [ours[0].to_uppercase()]}))),
        ("a word in braces", word(&json!({"facts": [format!("{{{}}}", ours[0])]}))),
        ("a word with figures for ids", word(&json!({"facts": [1, null, {}, [ours[0]]]}))),
        ("a word that is a text", word(&json!(ours[0]))),
        ("a word that is a list", word(&json!(ours))),
        ("a word that is null", word(&Value::Null)),
        ("a word whose list is a text", word(&json!({"facts": ours[0]}))),
        ("a word within a word", word(&json!({"facts": {"facts": ours}}))),
        ("a word with another member", word(&json!({"facts": [], "subjects": [survey]}))),
        ("a word by another name", sealed(survey, vec![line(1, 1, "Forget", &json!({"facts": ours}), &[])])),
        ("a word about the survey", {
            let word = line(1, 0, "forget", &json!({"facts": ours}), &[]).replace(&subject(0), survey);
            sealed(survey, vec![word])
        }),
        ("a word over a word", {
            let words = [(1, &[][..]), (2, &[1][..])]
                .map(|(n, over)| line(n, 1, "forget", &json!({"facts": ours}), over));
            sealed(survey, words.into())
        }),
        ("a word to forget a word", {
            let first = line(1, 1, "forget", &json!({"facts": []}), &[]);
            sealed(survey, vec![first, line(2, 2, "forget", &json!({"facts": [mine]}), &[])])
        }),
        (
            "300 words",
            sealed(survey, (1..=300).map(|n| line(n, n, "forget", &json!({"facts": ours}), &[])).collect()),
        ),
        ("a frame of one of ours", frames(1)),
        ("frames of all of ours", frames(usize::MAX)),
    ]
}

/// Images that are not what is said of them.
pub fn images(survey: &str, store: &Store) -> Vec<Case> {
    let picture = [b"\xFF\xD8\xFF\xE0".to_vec(), vec![7; 600]].concat();
    let sha256 = sha256_hex(&picture);
    let said = |change: &dyn Fn(&mut Value)| {
        let mut image = json!({"bytes": 604, "ext": "jpg", "height": 3, "sha256": sha256, "width": 4});
        change(&mut image);
        sealed(survey, vec![line(1, 1, "image", &image, &[])])
    };
    let member = |name: &'static str, value: Value| said(&move |image| image[name] = value.clone());
    let with_picture = |change: &dyn Fn(&mut Value), times: u64| {
        let mut image = json!({"bytes": 604, "ext": "jpg", "height": 3, "sha256": sha256, "width": 4});
        change(&mut image);
        let mut bag = Bag::new(survey, (1..=times).map(|n| line(n, n, "image", &image, &[])).collect());
        bag.photos.push((format!("{sha256}.jpg"), picture.clone()));
        zip(&stored(&bag.entries()))
    };
    let ours = store.ledger().facts().find(|fact| fact.field() == "image").unwrap();
    vec![
        ("an image without a picture", said(&|_| ())),
        ("a picture of no pixels", with_picture(&|image| image["width"] = json!(0), 1)),
        (
            "a picture of 4,294,967,295 pixels a row",
            with_picture(&|image| image["width"] = json!(u32::MAX), 1),
        ),
        ("a picture longer than it is", with_picture(&|image| image["bytes"] = json!(1_u64 << 52), 1)),
        ("a picture shorter than it is", with_picture(&|image| image["bytes"] = json!(1), 1)),
        ("a picture named 1,000 times", with_picture(&|_| (), 1_000)),
        ("an image of less than no bytes", member("bytes", json!(-1))),
        ("an image of half a byte", member("bytes", json!(0.5))),
        ("an image of a text of bytes", member("bytes", json!("604"))),
        ("an image that climbs", member("sha256", json!("../../../../etc/passwd"))),
        ("an image whose ending climbs", member("ext", json!("jpg/../../x"))),
        ("an image of another kind", member("ext", json!("svg"))),
        ("an image in capitals", member("sha256", json!(sha256.to_uppercase()))),
        ("an image of half a sum", member("sha256", json!(sha256[..32]))),
        ("an image of no sum", member("sha256", Value::Null)),
        ("an image that is a text", sealed(survey, vec![line(1, 1, "image", &json!(sha256), &[])])),
        ("an image that is a list", sealed(survey, vec![line(1, 1, "image", &json!([sha256]), &[])])),
        ("our picture, said to be another's", {
            sealed(
                survey,
                vec![line(1, 1, "image", ours.value(), &[]), line(2, 1, "is", &json!("photo"), &[])],
            )
        }),
        ("a photo of a photo of itself", {
            sealed(
                survey,
                vec![line(1, 1, "is", &json!("photo"), &[]), line(2, 1, "of", &json!(subject(1)), &[])],
            )
        }),
    ]
}
