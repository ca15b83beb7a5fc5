//! The line of a fact.

use facts::fact::{Fact, Ledger, MAX_VALUE_BYTES};
use proofs::chance::Chance;
use serde_json::Value;

use crate::shape;
use crate::target::{Target, Verdict};

pub const TARGET: Target = Target {
    name: "fact",
    weight: 1.0,
    most_bytes: 64 * 1024,
    check,
    shape: shaped,
    words: &[
        b"\"act\":",
        b"\"by\":",
        b"\"field\":",
        b"\"forgotten\":true",
        b"\"id\":",
        b"\"over\":[",
        b"\"subject\":",
        b"\"value\":",
        b"017f22e2-79b0-7cc3-98c4-dc0c0c07398f",
        b"ffffffff-ffff-7fff-bfff-ffffffffffff",
        b"[[[[[[[[",
        b"\\ud800",
        b"forget",
        b"removed",
    ],
    most_memory: 8 << 20,
};

fn shaped(chance: &mut Chance, input: &[u8]) -> Option<Vec<u8>> {
    shape::json_text(chance, std::str::from_utf8(input).ok()?).map(String::into_bytes)
}

/// What is taken is written again byte for byte, and holds what an ordinary JSON reader finds in it.
fn check(input: &[u8]) -> Result<Verdict, String> {
    let Ok(line) = std::str::from_utf8(input) else { return Ok(Verdict::refused("no text")) };
    let fact = match Fact::from_line(line) {
        Ok(fact) => fact,
        Err(fault) => return Ok(Verdict::refused(kind_of(&fault))),
    };
    let again = fact.to_line().map_err(|fault| format!("taken and not written: {fault}"))?;
    if again != line {
        return Err(format!("written as {again}"));
    }
    let read: Value = serde_json::from_str(line).map_err(|error| format!("no JSON: {error}"))?;
    let text = |name: &str| read.get(name).and_then(Value::as_str).map(str::to_owned);
    let over = read.get("over").and_then(Value::as_array).map_or(0, Vec::len);
    let same = text("field").as_deref() == Some(fact.field())
        && text("id") == Some(fact.id().to_string())
        && text("subject") == Some(fact.subject().to_string())
        && text("by") == Some(fact.by().to_string())
        && read.get("value").unwrap_or(&Value::Null) == fact.value()
        && read.get("forgotten").is_some() == fact.is_forgotten()
        && over == fact.over().len();
    if !same {
        return Err("it holds something else than it says".into());
    }
    if !fact.is_forgotten() && fact.value().to_string().len() > 2 * MAX_VALUE_BYTES {
        return Err("its value is longer than any may be".into());
    }
    let alone = fact.over().is_empty();
    let mut ledger = Ledger::new();
    let entered = ledger.insert(fact.clone());
    // One that replaces what is not there is a hole.
    if entered.is_ok() && !alone {
        return Err("it went over a hole".into());
    }
    if entered.is_ok() && ledger.to_lines().map_err(|fault| fault.to_string())? != format!("{line}\n") {
        return Err("the ledger tells it in another way".into());
    }
    let members = read.as_object().map_or(0, serde_json::Map::len);
    Ok(Verdict::taken(format!("{} {over} {members} {}", fact.is_forgotten(), entered.is_ok())))
}

/// An error without its numbers and quotations, so that equal mistakes are one.
pub fn kind_of(error: &impl std::fmt::Debug) -> String {
    let text = format!("{error:?}");
    let mut quoted = false;
    text.chars()
        .filter(|&sign| {
            quoted ^= sign == '"';
            !quoted && !sign.is_ascii_digit()
        })
        .take(160)
        .collect()
}
