//! A sheet.

use desk::sheet;
use facts::fact::{ActId, AuthorId, FactClock, Ledger, SurveyId};
use house::record::fold;

use crate::fact::kind_of;
use crate::shape;
use crate::target::{Target, Verdict};

pub const TARGET: Target = Target {
    name: "sheet",
    weight: 2.0,
    most_bytes: 32 * 1024,
    check,
    shape: shape::lines,
    words: &[
        b"[[part]]\n",
        b"[[room]]\n",
        b"[survey]\n",
        b"[[reading]]\n",
        b"kind = \"splitter\"\n",
        b"tag = \"S1\"\n",
        b"from = \"S1\"\n",
        b"from = { tag = \"S1\", port = 2 }\n",
        b"length = \"12 m\"\n",
        b"\"12-14 m\"",
        b"\"5-1002 MHz\"",
        b"\"-0 dB\"",
        b"\"1e400 m\"",
        b"'''",
        b"\"\"\"",
        b"note = [[",
        b"{ a.b.c = 1 }",
        b"0x7fffffffffffffff",
        b"1979-05-27T07:32:00Z",
        b"\xEF\xBB\xBF",
        b"nan",
    ],
    most_memory: 32 << 20,
};

/// A sheet is refused with every problem at its place, or becomes facts that fold into what it stated.
fn check(input: &[u8]) -> Result<Verdict, String> {
    // A lone carriage return may end a line too; the end of the last line is a place as well.
    let lines = input.split(|&byte| byte == b'\n' || byte == b'\r').count() + 1;
    let stated = match sheet::read(input, None) {
        Ok(stated) => stated,
        Err(problems) => {
            if problems.is_empty() {
                return Err("refused without a reason".into());
            }
            if let Some(odd) = problems.listed().find(|found| !(1..=lines).contains(&found.line)) {
                return Err(format!("a problem at line {} of {lines}", odd.line));
            }
            if problems.listed().any(|found| found.column == 0) {
                return Err("a problem at column 0".into());
            }
            let first = problems.listed().next();
            let way = first.map(|found| format!("{:?} {:?}", kind_of(&found.expected), found.field));
            return Ok(Verdict::refused(way.unwrap_or_default()));
        }
    };
    if sheet::read(input, None).as_ref() != Ok(&stated) {
        return Err("read in two ways".into());
    }
    let survey = SurveyId::random();
    let edits = stated.edits(survey.subject());
    let mut ledger = Ledger::new();
    let facts = ledger
        .plan(ActId::random(), AuthorId::random(), &mut FactClock::system(), &edits)
        .map_err(|error| format!("taken, but no facts: {error}"))?;
    for fact in facts {
        ledger.insert(fact).map_err(|error| format!("taken, but no ledger: {error}"))?;
    }
    let house = fold(&ledger, survey).map_err(|error| format!("taken, but no survey: {error}"))?;
    if !house.unread.is_empty() {
        return Err(format!("taken, but not read: {:?}", house.unread));
    }
    if house.parts.len() != stated.parts.len() || house.rooms.len() != stated.rooms.len() {
        return Err("parts or rooms got lost".into());
    }
    for part in &stated.parts {
        let found = house.parts.values().filter(|found| found.tag.as_deref() == Some(&part.tag)).count();
        if found != 1 {
            return Err(format!("{found} parts with the tag {:?}", part.tag));
        }
    }
    let count = |number: usize| number.min(6);
    Ok(Verdict::taken(format!(
        "{} {} {} {} {}",
        count(house.parts.len()),
        count(house.rooms.len()),
        count(house.runs.len()),
        count(house.notes.len()),
        count(stated.readings.len())
    )))
}
