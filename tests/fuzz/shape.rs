//! Changes of text by its lines and words, and of JSON by its values.

use proofs::chance::Chance;
use serde_json::{Map, Value, json};

/// Moves, doubles or drops a line, or changes a word for another of the same text.
pub fn lines(chance: &mut Chance, input: &[u8]) -> Option<Vec<u8>> {
    let text = std::str::from_utf8(input).ok()?;
    if chance.below(2) == 0 {
        let mut words: Vec<&str> = text.split_inclusive(|sign: char| " \n=\",:".contains(sign)).collect();
        let (from, to) = (chance.below(words.len()), chance.below(words.len()));
        let word = *words.get(from)?;
        if let Some(place) = words.get_mut(to) {
            *place = word;
        }
        return Some(words.concat().into_bytes());
    }
    let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
    let from = chance.below(lines.len());
    let line = *lines.get(from)?;
    match chance.below(3) {
        0 => drop(lines.remove(from)),
        1 => lines.insert(chance.below(lines.len() + 1), line),
        _ => {
            let to = chance.below(lines.len());
            lines.swap(from, to);
        }
    }
    Some(lines.concat().into_bytes())
}

/// Changes one value somewhere in a canonical JSON text, and writes it canonically again.
pub fn json_text(chance: &mut Chance, text: &str) -> Option<String> {
    let mut value: Value = serde_json::from_str(text).ok()?;
    // What a fact states may be anything; its frame may not.
    match value.get_mut("value") {
        Some(stated) if chance.below(2) == 0 => change(chance, stated, 6),
        _ => change(chance, &mut value, 6),
    }
    serde_json_canonicalizer::to_string(&value).ok()
}

fn change(chance: &mut Chance, value: &mut Value, depth: u32) {
    let inner = depth > 0 && chance.below(4) > 0;
    match value {
        Value::Object(members) if inner && !members.is_empty() => change_member(chance, members, depth),
        Value::Array(items) if inner && !items.is_empty() => {
            let at = chance.below(items.len());
            match chance.below(6) {
                0 => drop(items.remove(at)),
                1 => {
                    let again = items.get(at).cloned().unwrap_or_default();
                    items.push(again);
                }
                _ => {
                    if let Some(item) = items.get_mut(at) {
                        change(chance, item, depth - 1);
                    }
                }
            }
        }
        Value::String(text) if inner => change_text(chance, text),
        _ => *value = fresh(chance, value),
    }
}

fn change_member(chance: &mut Chance, members: &mut Map<String, Value>, depth: u32) {
    let names: Vec<String> = members.keys().cloned().collect();
    let Some(name) = chance.pick(&names).cloned() else { return };
    match chance.below(8) {
        0 => drop(members.remove(&name)),
        1 => {
            let value = members.get(&name).cloned().unwrap_or_default();
            members.insert(format!("{name}x"), value);
        }
        2 => {
            if let (Some(other), Some(value)) = (chance.pick(&names), members.get(&name).cloned()) {
                members.insert(other.clone(), value);
            }
        }
        _ => {
            if let Some(value) = members.get_mut(&name) {
                change(chance, value, depth - 1);
            }
        }
    }
}

fn change_text(chance: &mut Chance, text: &mut String) {
    let mut signs: Vec<char> = text.chars().collect();
    let at = chance.below(signs.len());
    match chance.below(4) {
        0 => signs.truncate(at),
        1 => signs.insert(at, '\u{FEFF}'),
        2 => signs = signs.repeat(1 + chance.below(40)),
        // One digit or letter for another keeps an id an id.
        _ => {
            if let Some(sign) = signs.get_mut(at) {
                *sign = char::from_digit(u32::try_from(chance.below(16)).unwrap_or(0), 16).unwrap_or('0');
            }
        }
    }
    *text = signs.into_iter().collect();
}

fn fresh(chance: &mut Chance, was: &Value) -> Value {
    match chance.below(10) {
        0 => Value::Null,
        1 => json!(true),
        2 => json!(f64::from_bits(chance.bits())),
        3 => json!(chance.bits()),
        4 => json!(9_007_199_254_740_993_u64),
        5 => json!([was]),
        6 => json!({"": was}),
        7 => (0..chance.below(70)).fold(was.clone(), |inner, _| json!([inner])),
        8 => json!("x".repeat(chance.below(9_000))),
        _ => json!(-0.0),
    }
}
