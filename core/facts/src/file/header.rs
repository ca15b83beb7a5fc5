//! The first line of `facts.jsonl`: what this file is.
//!
//! ```text
//! {"core":"0.1.0","facts":12,"file":"legwork","format":1,"left_out":[],"survey":"..."}
//! ```

use std::collections::BTreeSet;
use std::ops::RangeInclusive;

use serde_json::{Map, Value, json};

use super::FORMAT;
use super::options::LeftOut;
use crate::error::FileFault;
use crate::fact::{SurveyId, canonical};

/// The formats that this release reads.
const READ: RangeInclusive<u32> = 0..=FORMAT;

/// The mark in the header that tells our files from other zips with a bag.
const FILE: &str = "legwork";

/// What the first line says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Header {
    /// The release that wrote the file.
    pub(super) core: String,
    /// How many facts follow.
    pub(super) facts: usize,
    /// The format of the file.
    pub(super) format: u32,
    /// What the sender left out, as far as this release knows the words.
    pub(super) left_out: BTreeSet<LeftOut>,
    /// The survey that it holds.
    pub(super) survey: SurveyId,
}

impl Header {
    /// The line, without its line feed.
    pub(super) fn to_line(&self) -> Result<String, crate::fact::FactFault> {
        let left_out: Vec<&str> = self.left_out.iter().map(|what| what.word()).collect();
        canonical(&json!({
            "core": self.core,
            "facts": self.facts,
            "file": FILE,
            "format": self.format,
            "left_out": left_out,
            "survey": self.survey.to_string(),
        }))
    }

    /// Reads the line, given without its line feed. Members that this release does not know are passed over.
    pub(super) fn read(line: &[u8]) -> Result<Self, FileFault> {
        let Ok(Value::Object(members)) = serde_json::from_slice(line) else {
            return Err(FileFault::NoSurvey);
        };
        if members.get("file").and_then(Value::as_str) != Some(FILE) {
            return Err(FileFault::NoSurvey);
        }
        // Before anything else: what a newer format says beyond this number is its own affair.
        let found = members.get("format").and_then(Value::as_u64).ok_or(FileFault::Header("format"))?;
        let format = u32::try_from(found).ok().filter(|format| READ.contains(format));
        let Some(format) = format else { return Err(FileFault::Newer { found, known: FORMAT }) };
        let survey = text(&members, "survey")?;
        let id: SurveyId = survey.parse().map_err(|_| FileFault::Header("survey"))?;
        let header = Self {
            core: text(&members, "core")?.to_owned(),
            facts: members
                .get("facts")
                .and_then(Value::as_u64)
                .and_then(|facts| usize::try_from(facts).ok())
                .ok_or(FileFault::Header("facts"))?,
            format,
            left_out: left_out(&members)?,
            survey: id,
        };
        let as_written = canonical(&Value::Object(members.clone()));
        if survey != id.to_string() || !as_written.is_ok_and(|text| text.as_bytes() == line) {
            return Err(FileFault::Header("not in canonical form (RFC 8785)"));
        }
        Ok(header)
    }
}

fn text<'a>(members: &'a Map<String, Value>, name: &'static str) -> Result<&'a str, FileFault> {
    members.get(name).and_then(Value::as_str).ok_or(FileFault::Header(name))
}

fn left_out(members: &Map<String, Value>) -> Result<BTreeSet<LeftOut>, FileFault> {
    let wrong = FileFault::Header("left_out");
    let words = members.get("left_out").and_then(Value::as_array).ok_or(wrong.clone())?;
    let mut known = BTreeSet::new();
    for word in words {
        known.extend(LeftOut::of_word(word.as_str().ok_or(wrong.clone())?));
    }
    Ok(known)
}
