//! What is wrong with the facts, alone or as a crowd.

use facts::store::Store;
use serde_json::{Value, json};

use super::super::file_support::*;
use super::{Case, sealed_lines, small};

/// Long ones, one after the other, because each takes some memory to make.
pub fn chains(survey: &str, _: &Store) -> Vec<Case> {
    let sealed = |facts: Vec<String>| {
        let entries = Bag::new(survey, facts).entries();
        zip(&entries.iter().map(|(name, content)| RawEntry::deflated(name, content)).collect::<Vec<_>>())
    };
    let parts = (1..60_000).map(|n| line(n, n, "is", &json!("part"), &[])).collect();
    let fed = (2..60_000).map(|n| {
        let (part, of) = (n / 2, format!("00000000-0000-4000-8000-{:012x}", n / 2 + 1));
        match n % 2 {
            0 => line(n, part, "is", &json!("part"), &[]),
            _ => line(n, part, "feed", &json!({"from": {"part": of, "port": 1}}), &[]),
        }
    });
    let over = |hole: u64| {
        (1..60_000)
            .filter(move |&n| n != hole)
            .map(|n| line(n, 1, "tag", &json!(n), &[n - 1][usize::from(n == 1)..]))
    };
    let crowd: Vec<Value> = (0..1150).map(|_| json!({"": 0})).collect();
    vec![
        ("60,000 parts", sealed(parts)),
        ("a chain of 30,000 parts, each fed by the next", sealed(fed.collect())),
        ("a story of 60,000 steps with a hole", sealed(over(59_990).collect())),
        ("60,001 facts", sealed((1..=60_001).map(|n| line(n, n / 1000, "tag", &json!(n), &[])).collect())),
        (
            "objects that cost more memory than text",
            sealed((1..200).map(|n| line(n, n, "x", &json!(crowd), &[])).collect()),
        ),
        ("a million values", sealed((1..400).map(|n| line(n, n, "x", &json!(vec![0; 4000]), &[])).collect())),
        ("a line of 30 MB", {
            let mut bag = small(survey);
            bag.lines.push("[".repeat(30 * 1024 * 1024));
            sealed_lines(&bag)
        }),
        ("33 MB of facts", {
            let mut bag = small(survey);
            bag.lines.extend((0..5).map(|_| " ".repeat(7 * 1024 * 1024)));
            sealed_lines(&bag)
        }),
    ]
}

#[expect(clippy::too_many_lines, reason = "a list")]
pub fn facts(survey: &str, store: &Store) -> Vec<Case> {
    let sealed = |facts: Vec<String>| zip(&stored(&Bag::new(survey, facts).entries()));
    let one = |line: String| sealed(vec![line]);
    let raw = |change: &dyn Fn(Vec<u8>) -> Vec<u8>| {
        let lines = small(survey).lines.join("\n") + "\n";
        let payload = vec![("data/facts.jsonl".to_owned(), change(lines.into_bytes()))];
        zip(&stored(&seal(survey, payload)))
    };
    let header = |change: &dyn Fn(&str) -> String| {
        let mut bag = small(survey);
        bag.lines[0] = change(&bag.lines[0]);
        zip(&stored(&bag.entries()))
    };
    let tag = |n| line(n, 1, "tag", &json!("S1"), &[]);
    let deep = tag(1).replace("\"S1\"", &("[".repeat(20_000) + &"]".repeat(20_000)));
    let held = store.ledger().facts().next().unwrap().to_line().unwrap();
    let shifted = |by: &str, to: &str| tag(1).replace(by, to);
    // 9999-12-31 and the last moment that an id can state: GNU date; RFC 9562, 5.7.
    let late = line_at(253_402_214_400_000, 1, "tag", &json!(1), &[]);
    vec![
        (
            "a fact that is held, with another value",
            one({
                let mut fact: Value = serde_json::from_str(&held).unwrap();
                fact["value"] = json!("forged");
                fact.to_string()
            }),
        ),
        (
            "a fact that is held, by another author",
            one({
                let mut fact: Value = serde_json::from_str(&held).unwrap();
                fact["by"] = json!("00000000-0000-4000-8000-0000000000b9");
                fact.to_string()
            }),
        ),
        ("an id of the year 9999", one(late)),
        ("the last id of all", one(line_at((1 << 48) - 1, 1, "tag", &json!(1), &[]))),
        ("an id of version 4", one(shifted("-7000-", "-4000-"))),
        ("an id in capitals", one(shifted("-8000-000000000001\",\"over", "-8000-00000000000A\",\"over"))),
        ("deep JSON", one(deep)),
        (
            "deep members that nobody knows",
            one(tag(1).replace(
                "\"value\":\"S1\"}",
                &format!("\"value\":\"S1\",\"z\":{}1{}}}", "[".repeat(100), "]".repeat(100)),
            )),
        ),
        ("facts in another order", sealed(vec![tag(2), tag(1)])),
        ("a fact twice", sealed(vec![tag(1), tag(1)])),
        ("one id for two facts", sealed(vec![tag(1), tag(1).replace("S1", "S2")])),
        ("over what nobody has", one(line(5, 1, "tag", &json!("S1"), &[4]))),
        ("over what comes later", sealed(vec![line(1, 1, "tag", &json!("S1"), &[2]), tag(2)])),
        ("over itself", one(line(1, 1, "tag", &json!("S1"), &[1]))),
        (
            "over another field",
            sealed(vec![line(1, 1, "kind", &json!("tap"), &[]), line(2, 1, "tag", &json!("S1"), &[1])]),
        ),
        (
            "over another part",
            sealed(vec![line(1, 2, "tag", &json!("S1"), &[]), line(2, 1, "tag", &json!("S1"), &[1])]),
        ),
        ("a value of 9 kB", one(line(1, 1, "tag", &json!("x".repeat(9000)), &[]))),
        ("a field name of 65 letters", one(line(1, 1, &"f".repeat(65), &json!(1), &[]))),
        ("a field name that climbs", one(line(1, 1, "../x", &json!(1), &[]))),
        ("a number beyond all numbers", one(shifted("\"S1\"", "1e400"))),
        ("a number that is not exact", one(shifted("\"S1\"", "9007199254740993"))),
        ("a number that is none", one(shifted("\"S1\"", "NaN"))),
        ("half a surrogate pair", one(shifted("S1", "\\ud800"))),
        ("a member twice", one(shifted("\"value\":\"S1\"", "\"value\":\"S1\",\"value\":\"S2\""))),
        ("spaces", one(shifted(",\"by\"", ", \"by\""))),
        ("no value", one(shifted(",\"value\":\"S1\"", ""))),
        ("a list", one("[]".into())),
        ("an empty line", one(String::new())),
        (
            "bad UTF-8",
            raw(&|mut bytes| {
                let at = bytes.len() - 5;
                bytes[at] = 0xFF;
                bytes
            }),
        ),
        ("facts with a byte order mark", raw(&|bytes| [b"\xEF\xBB\xBF".to_vec(), bytes].concat())),
        (
            "facts with CRLF",
            raw(&|bytes| String::from_utf8(bytes).unwrap().replace('\n', "\r\n").into_bytes()),
        ),
        (
            "no line feed at the end",
            raw(&|mut bytes| {
                bytes.pop();
                bytes
            }),
        ),
        ("no facts in the file of facts", raw(&|_| Vec::new())),
        (
            "no header",
            raw(&|bytes| bytes[bytes.iter().position(|&byte| byte == b'\n').unwrap() + 1..].to_vec()),
        ),
        ("a newer format", header(&|old| old.replace("\"format\":1", "\"format\":2"))),
        (
            "a format beyond 64 bits",
            header(&|old| old.replace("\"format\":1", "\"format\":99999999999999999999")),
        ),
        ("a format that is a text", header(&|old| old.replace("\"format\":1", "\"format\":\"0\""))),
        ("more facts counted than there are", header(&|old| old.replace("\"facts\":3", "\"facts\":4"))),
        ("fewer facts counted than there are", header(&|old| old.replace("\"facts\":3", "\"facts\":2"))),
        ("a header that is not canonical", header(&|old| old.replace("\"facts\":3", "\"facts\":3.0"))),
        ("a header of no survey", header(&|old| old.replace("\"survey\":\"", "\"survey\":\"x"))),
        ("a header of something else", header(&|old| old.replace("legwork", "lunchbox"))),
    ]
}
