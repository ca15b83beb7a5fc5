//! A fact as one line of text: a canonical JSON object (RFC 8785).
//!
//! ```text
//! {"act":"...","by":"...","field":"length","id":"...","over":["..."],"subject":"...","value":{"likely_m":20}}
//! ```
//!
//! A fact whose value was forgotten has `"forgotten":true` in place of `value`, and nothing else.
//!
//! `over` is sorted. Members with other names are kept and written again where they stood. A fact has exactly one
//! line: a line that is written in any other way is refused, so equal facts have equal bytes.

use serde::de::DeserializeOwned;
use serde_json::error::Category;
use serde_json::{Map, Value, json};

use super::fault::FactFault;
use super::{Fact, canonical};

/// The member that stands for a value that was forgotten.
const FORGOTTEN: &str = "forgotten";

impl Fact {
    /// The fact's line, without the line feed.
    ///
    /// # Errors
    /// None for a fact that was made by [`Fact::new`] or read by [`Fact::from_line`].
    pub fn to_line(&self) -> Result<String, FactFault> {
        let mut members = self.extra.clone();
        members.insert("act".into(), json!(self.act));
        members.insert("by".into(), json!(self.by));
        members.insert("field".into(), json!(self.field()));
        members.insert("id".into(), json!(self.id));
        members.insert("over".into(), json!(self.over));
        members.insert("subject".into(), json!(self.subject));
        if self.forgotten {
            members.insert(FORGOTTEN.into(), json!(true));
        } else {
            members.insert("value".into(), self.value.clone());
        }
        serde_json_canonicalizer::to_string(&members).map_err(|_| FactFault::NotJson)
    }

    /// Reads a fact's line, given without the line feed.
    ///
    /// # Errors
    /// [`FactFault::Line`] if it is no object with a fact's members, [`FactFault::LineNotCanonical`] if it is not
    /// written exactly as [`Fact::to_line`] would, or what [`Fact::new`] refuses.
    pub fn from_line(line: &str) -> Result<Self, FactFault> {
        let read: Value = serde_json::from_str(line).map_err(|fault| FactFault::Line {
            reason: match fault.classify() {
                Category::Eof => "it ends too early",
                Category::Io | Category::Syntax | Category::Data => "it is not JSON",
            },
            column: fault.column(),
        })?;
        // Depth and numbers of the whole, members unknown to this release included.
        if canonical(&read)? != line {
            return Err(FactFault::LineNotCanonical);
        }
        let Value::Object(mut members) = read else {
            return Err(FactFault::Line { reason: "it is not an object", column: 1 });
        };
        let field: String = take(&mut members, "field")?;
        let forgotten = members.remove(FORGOTTEN);
        let value = members.remove("value");
        let over: Vec<_> = take(&mut members, "over")?;
        if !over.is_sorted_by(|a, b| a < b) {
            return Err(FactFault::LineNotCanonical);
        }
        let id = take(&mut members, "id")?;
        let act = take(&mut members, "act")?;
        let by = take(&mut members, "by")?;
        let subject = take(&mut members, "subject")?;
        let fact = match (forgotten, value) {
            (None, Some(value)) => {
                Self::new(id, act, by, subject, &field, &value, over)?.with_extra(members)?
            }
            (None, None) => {
                return Err(FactFault::Line { reason: name_of_fault("value"), column: 1 });
            }
            (Some(Value::Bool(true)), None) if members.is_empty() => {
                Self::forgotten(id, act, by, subject, field, over)?
            }
            (Some(_), _) => return Err(FactFault::Line { reason: name_of_fault(FORGOTTEN), column: 1 }),
        };
        // What is left to differ: an id in capitals, in braces or without hyphens.
        if fact.to_line()? != line {
            return Err(FactFault::LineNotCanonical);
        }
        Ok(fact)
    }
}

fn take<T: DeserializeOwned>(members: &mut Map<String, Value>, name: &'static str) -> Result<T, FactFault> {
    let wrong = FactFault::Line { reason: name_of_fault(name), column: 1 };
    members.remove(name).and_then(|member| serde_json::from_value(member).ok()).ok_or(wrong)
}

fn name_of_fault(member: &str) -> &'static str {
    match member {
        "act" => "its member act is missing or wrong",
        "by" => "its member by is missing or wrong",
        FORGOTTEN => "its member forgotten is wrong, or stands beside what was to be forgotten",
        "field" => "its member field is missing or wrong",
        "id" => "its member id is missing or wrong",
        "over" => "its member over is missing or wrong",
        "subject" => "its member subject is missing or wrong",
        _ => "its member value is missing or wrong",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Written by hand; members in the order of RFC 8785, 3.2.3.
    const LINE: &str = concat!(
        r#"{"act":"00000000-0000-4000-8000-0000000000a1","by":"00000000-0000-4000-8000-0000000000b1","#,
        r#""colour":["later",{"a":1}],"field":"length","id":"017f22e2-79b0-7cc3-98c4-dc0c0c07398f","#,
        r#""over":["017f22e2-79af-7cc3-98c4-dc0c0c07398f"],"subject":"00000000-0000-4000-8000-0000000000c1","#,
        r#""value":{"known":"measured","likely_m":20.5},"zone":null}"#
    );

    #[test]
    fn a_line_with_unknown_members_comes_back_byte_for_byte() {
        let fact = Fact::from_line(LINE).unwrap();
        assert_eq!(fact.field(), "length");
        assert_eq!(fact.value(), &json!({"likely_m": 20.5, "known": "measured"}));
        assert_eq!(fact.id().ms(), 1_645_557_742_000);
        assert_eq!(fact.over().len(), 1);
        assert_eq!(fact.extra().len(), 2);
        assert_eq!(fact.to_line().unwrap(), LINE);
    }

    #[test]
    fn the_same_fact_written_in_another_way_is_refused() {
        let id = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f";
        let older = "\"017f22e2-79af-7cc3-98c4-dc0c0c07398f\"";
        let others = [
            LINE.replace(id, &id.to_uppercase()),
            LINE.replace(id, &id.replace('-', "")),
            LINE.replace(id, &format!("urn:uuid:{id}")),
            LINE.replace("20.5", "20.50"),
            LINE.replace("\"zone\":null", "\"zone\":null,\"zone\":null"),
            LINE.replace("{\"act\"", "{ \"act\""),
            format!("{LINE}\n"),
            LINE.replace(older, &format!("{older},{older}")),
            LINE.replace("length", "l\\u0065ngth"),
        ];
        for other in others {
            assert_ne!(other, LINE);
            assert_eq!(Fact::from_line(&other), Err(FactFault::LineNotCanonical), "{other}");
        }
    }

    #[test]
    fn a_forgotten_fact_keeps_its_frame_and_nothing_else() {
        let mut fact = Fact::from_line(LINE).unwrap();
        let whole = fact.clone();
        fact.forget();
        // By hand: the line above without colour, value and zone, and with the mark between field and id.
        let line = concat!(
            r#"{"act":"00000000-0000-4000-8000-0000000000a1","by":"00000000-0000-4000-8000-0000000000b1","#,
            r#""field":"length","forgotten":true,"id":"017f22e2-79b0-7cc3-98c4-dc0c0c07398f","#,
            r#""over":["017f22e2-79af-7cc3-98c4-dc0c0c07398f"],"subject":"00000000-0000-4000-8000-0000000000c1"}"#
        );
        assert_eq!(fact.to_line().unwrap(), line);
        let read = Fact::from_line(line).unwrap();
        assert_eq!(read, fact);
        assert!(read.is_forgotten() && read.is_same(&whole) && whole.is_same(&read) && read != whole);
        let refused = [
            line.replace("true", "false"),
            line.replace("true", "null"),
            line.replace('}', ",\"value\":1}"),
            line.replace('}', ",\"zone\":1}"),
            line.replace("length", "forget"),
        ];
        for other in refused {
            assert!(Fact::from_line(&other).is_err(), "{other}");
        }
    }

    #[test]
    fn every_shortened_line_is_refused() {
        for end in 0..LINE.len() {
            assert!(Fact::from_line(&LINE[..end]).is_err(), "cut at {end}");
        }
    }

    #[test]
    fn every_member_is_needed() {
        let whole: Map<String, Value> = serde_json::from_str(LINE).unwrap();
        for name in ["act", "by", "field", "id", "over", "subject", "value"] {
            let mut members = whole.clone();
            members.remove(name);
            let line = serde_json_canonicalizer::to_string(&members).unwrap();
            let fault = Fact::from_line(&line).unwrap_err();
            assert!(
                matches!(fault, FactFault::Line { reason, .. } if reason.contains(name)),
                "{name}: {fault}"
            );
        }
    }

    #[test]
    fn unknown_members_are_bounded() {
        let long = LINE.replace("null}", &format!("\"{}\"}}", "x".repeat(9000)));
        assert!(matches!(Fact::from_line(&long), Err(FactFault::ExtraTooLong { .. })));
        let deep = LINE.replace("null}", &format!("{}{}}}", "[".repeat(90), "]".repeat(90)));
        assert!(matches!(Fact::from_line(&deep), Err(FactFault::TooDeep { .. })));
    }
}
