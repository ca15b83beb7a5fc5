//! A large house as it is told: one entry, splitters of 16 legs below each other, and outlets in rooms of their own.

use facts::fact::{Edit, SubjectId};
use serde_json::json;

/// The legs of each splitter.
const LEGS: usize = 16;

/// A house of so many parts: them, and what tells of them.
pub fn large(parts: usize) -> (Vec<SubjectId>, Vec<Edit>) {
    // All but the entry and the first splitter hang on a leg.
    let splitters = parts.saturating_sub(2).div_ceil(LEGS);
    let ids: Vec<_> = (0..parts).map(|_| SubjectId::random()).collect();
    let mut edits = Vec::new();
    for (number, &part) in ids.iter().enumerate() {
        let (kind, letter, feeder) = match number {
            0 => ("entry", 'E', None),
            1 => ("splitter", 'S', Some((0, 1))),
            _ => {
                let feeder = Some((1 + (number - 2) / LEGS, (number - 2) % LEGS + 1));
                if number <= splitters { ("splitter", 'S', feeder) } else { ("outlet", 'O', feeder) }
            }
        };
        edits.extend([
            Edit::new(part, "is", "part"),
            Edit::new(part, "kind", kind),
            Edit::new(part, "tag", format!("{letter}{number}")),
        ]);
        if kind == "splitter" {
            edits.push(Edit::new(part, "rating", json!({"legs": LEGS})));
        }
        if let Some((feeder, port)) = feeder {
            let run = SubjectId::random();
            let from = json!({"part": ids.get(feeder), "port": port, "run": run});
            edits.push(Edit::new(run, "is", "run"));
            edits.push(Edit::new(part, "feed", json!({"from": from})));
        }
        if kind == "outlet" {
            let room = SubjectId::random();
            edits.extend([
                Edit::new(room, "is", "room"),
                Edit::new(room, "name", format!("Room {number}")),
                Edit::new(part, "room", json!(room)),
            ]);
        }
    }
    (ids, edits)
}
