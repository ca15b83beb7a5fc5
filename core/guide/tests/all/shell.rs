//! What a native shell counts on, on every screen.

use std::collections::BTreeSet;

use guide::screen::{
    AloudRole, Block, FileAsked, LONG_WORDS, Need, NumberBlock, NumberKind, Screen, WordsRole,
};

/// Keys whose press destroys something, wherever they stand.
const DESTROYS: [&str; 4] = ["delete", "remove", "forget", "replace"];

/// What holds on every screen, in every language.
pub fn assert_for_shells(screen: &Screen) {
    let name = &screen.name;
    assert!(screen.place.starts_with(name.as_str()) && screen.place.len() > name.len(), "{name}: no place");
    let items = screen.items();
    let mut ids = BTreeSet::new();
    for item in &items {
        assert!(
            !item.id.is_empty() && ids.insert(item.id),
            "{name}: {:?} is no id, or stands twice",
            item.id
        );
        assert!(!item.aloud.label.trim().is_empty(), "{name}: {} has no label", item.id);
        assert!(item.key.is_none() || item.aloud.role.is_control(), "{name}: {} has no role", item.id);
    }
    assert!(!screen.blocks.is_empty(), "{name}: nothing is on it");
    let keys = screen.keys();
    for block in &screen.blocks {
        assert_block(name, block, &keys);
    }
}

fn assert_block(name: &str, block: &Block, keys: &[&str]) {
    match block {
        Block::Words(words) => {
            let is_long = words.role.may_fold() && words.words.chars().count() >= LONG_WORDS;
            assert!(!is_long || !words.head.is_empty(), "{name}: long, and without a head: {}", words.words);
            assert_ne!(words.head, words.words, "{name}");
            let role = words.aloud.role;
            assert_eq!(words.role == WordsRole::Problem, role == AloudRole::Alert, "{name}: {}", words.words);
        }
        Block::Caution(caution) => {
            assert!(!caution.head.trim().is_empty(), "{name}: a caution without a head: {}", caution.words);
            assert_ne!(caution.head, caution.words, "{name}");
            assert!(caution.aloud.value.contains(&caution.words), "{name}: a caution that is not read out");
        }
        Block::Writing(writing) => {
            assert_eq!(writing.lines, writing.kind.has_lines(), "{name}: {}", writing.key);
            assert_submit(name, writing.submit.as_deref(), keys);
        }
        Block::Number(number) => {
            assert_eq!(number.kind, kind_of(number), "{name}: {}", number.key);
            assert_submit(name, number.submit.as_deref(), keys);
        }
        Block::PhotoSlot(slot) => assert_eq!(slot.need, Need::Photo { burst: slot.burst }, "{name}"),
        Block::Press(press) => {
            let asks_file = FileAsked::of(&press.key).is_some();
            assert_eq!(press.need.as_ref().is_some_and(Need::is_file), asks_file, "{name}: {press:?}");
            press.need.iter().for_each(|need| assert_need(name, need));
        }
        Block::Confirm(confirm) => {
            let destroys = DESTROYS.contains(&confirm.key.as_str());
            assert!(
                confirm.destructive || !destroys,
                "{name}: {} destroys, and does not say so",
                confirm.key
            );
        }
        Block::Rows(rows) => {
            let mut scales = BTreeSet::new();
            for row in &rows.rows {
                assert!(row.done_of.is_none_or(|stage| stage.done <= stage.of), "{name}: {row:?}");
                assert!(row.share.is_none_or(|share| share <= 1000), "{name}: {row:?}");
                assert!(row.switched.is_none() || row.key.is_some(), "{name}: a switch without a key");
                let said = [&row.says, &row.remark, &row.aloud.value].iter().any(|said| !said.is_empty());
                assert!(row.mark.is_none() || said, "{name}: a sign without a word: {row:?}");
                let Some(bar) = &row.bar else { continue };
                scales.insert(bar.scale_end.to_bits());
                let ordered = 0.0 <= bar.low && bar.low <= bar.likely && bar.likely <= bar.high;
                assert!(ordered && bar.high <= bar.scale_end, "{name}: {bar:?}");
                let others = [bar.wish, bar.measured, bar.after];
                let fit = others.into_iter().flatten().all(|rate| (0.0..=bar.scale_end).contains(&rate));
                assert!(fit && !bar.words.is_empty(), "{name}: {bar:?}");
            }
            assert!(scales.len() <= 1, "{name}: bars of one list on several scales");
        }
        _ => {}
    }
}

/// Numbers of things are whole, levels and powers (dB against a fixed one) lie on both sides of nothing, and all else
/// that is measured here does not go below it.
fn kind_of(number: &NumberBlock) -> NumberKind {
    match number.unit.as_str() {
        "count" => NumberKind::Whole,
        // A microvolt less than one is less than nothing in dBµV, too.
        "dbmv" | "dbuv" | "dbm" => NumberKind::Signed,
        _ => NumberKind::Decimal,
    }
}

fn assert_submit(name: &str, submit: Option<&str>, keys: &[&str]) {
    assert!(submit.is_none_or(|press| keys.contains(&press)), "{name}: {submit:?} is no press of it");
}

fn assert_need(name: &str, need: &Need) {
    let kinds = match need {
        Need::FileToRead { kinds } => kinds.clone(),
        Need::FileToWrite { name: file, kind } | Need::FileToShare { name: file, kind } => {
            assert!(file.ends_with(&format!(".{}", kind.extension)), "{name}: {file}");
            vec![kind.clone()]
        }
        Need::Photo { .. } => return,
    };
    assert!(!kinds.is_empty(), "{name}: a file of no kind");
    for kind in kinds {
        // RFC 6838, 4.2: a type and a subtype.
        let parts: Vec<_> = kind.media_type.split('/').collect();
        assert!(matches!(parts[..], [of, sub] if !of.is_empty() && !sub.is_empty()), "{name}: {kind:?}");
        assert!(!kind.extension.is_empty(), "{name}: {kind:?}");
    }
}
