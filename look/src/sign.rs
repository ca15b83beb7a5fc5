//! The small drawn signs: one way each in `signs.toml`, and what each shell makes of it.

use std::collections::BTreeMap;
use std::path::Path;

use serde::Deserialize;

use crate::error::LookError;

/// A sign in a box of 24.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sign {
    /// Its line.
    pub way: Way,
    /// Whether it points along the line of reading.
    #[serde(default)]
    pub turns: bool,
}

/// A line of a sign: what is written in the file, and its steps.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(try_from = "String")]
pub struct Way {
    written: String,
    /// Step by step.
    pub steps: Vec<Step>,
}

/// A step of a line, from wherever the one before has led.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Step {
    /// To a place, without a line.
    Move([f64; 2]),
    /// A straight line to it.
    Line([f64; 2]),
    /// A curve by two places to a third.
    Curve([f64; 6]),
    /// Back to where it began.
    Close,
}

/// The side of the box of a sign.
pub const SIGN_BOX: f64 = 24.0;

impl Way {
    /// The same as SVG and Android write it.
    pub fn written(&self) -> &str {
        &self.written
    }
}

impl TryFrom<String> for Way {
    type Error = String;

    fn try_from(written: String) -> Result<Self, String> {
        let mut steps = Vec::new();
        let mut rest = written.as_str();
        while let Some(letter) = rest.chars().next() {
            let (places, next) = places(rest.get(1..).unwrap_or_default());
            let step = match (letter, places.as_slice()) {
                ('M', &[x, y]) => Some(Step::Move([x, y])),
                ('L', &[x, y]) => Some(Step::Line([x, y])),
                ('C', &[a, b, c, d, x, y]) => Some(Step::Curve([a, b, c, d, x, y])),
                ('Z', []) => Some(Step::Close),
                _ => None,
            };
            let in_box = places.iter().all(|place| (0.0..=SIGN_BOX).contains(place));
            let begun = !steps.is_empty() || letter == 'M';
            steps.push(step.filter(|_| in_box && begun).ok_or(format!("“{rest}” is no way of a sign"))?);
            rest = next;
        }
        Ok(Self { written, steps })
    }
}

/// The numbers at the beginning, and what follows them.
fn places(text: &str) -> (Vec<f64>, &str) {
    let mut places = Vec::new();
    let mut rest = text.trim_start();
    while let Ok(place) = word(rest).parse() {
        places.push(place);
        rest = rest.get(word(rest).len()..).unwrap_or_default().trim_start();
    }
    (places, rest)
}

fn word(text: &str) -> &str {
    text.split_whitespace().next().unwrap_or_default()
}

/// The signs of this project, by name.
///
/// # Errors
/// If the file cannot be read, or a way in it is none.
pub fn signs_of_project() -> Result<BTreeMap<String, Sign>, LookError> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("signs.toml");
    let text =
        std::fs::read_to_string(&path).map_err(|error| LookError::File { path: path.clone(), error })?;
    toml::from_str(&text).map_err(LookError::Signs)
}

const MADE: &str = "Made from look/signs.toml by `cargo run -p look`.";

/// The ways as constants of Rust, for pages; each with whether the sign turns.
pub(crate) fn rust(signs: &BTreeMap<String, Sign>) -> String {
    let one = |(name, sign): (&String, &Sign)| {
        let (name, way, turns) = (name.to_ascii_uppercase(), sign.way.written(), sign.turns);
        format!("pub(super) const {name}: (&str, bool) = (\"{way}\", {turns});\n")
    };
    format!("// {MADE}\n\n{}", signs.iter().map(one).collect::<String>())
}

/// A sign as a drawable of Android.
pub(crate) fn android(sign: &Sign) -> String {
    let turns = if sign.turns { " android:autoMirrored=\"true\"" } else { "" };
    format!(
        "<!-- {MADE} -->\n<vector xmlns:android=\"http://schemas.android.com/apk/res/android\"\n    \
         android:width=\"24dp\" android:height=\"24dp\" android:viewportWidth=\"24\" android:viewportHeight=\"24\"{turns}>\n    \
         <path android:pathData=\"{}\"\n        android:strokeColor=\"#000000\" android:strokeWidth=\"1.75\" \
         android:strokeLineCap=\"square\" android:strokeLineJoin=\"miter\" />\n</vector>\n",
        sign.way.written()
    )
}

/// The signs as values of Swift.
pub(crate) fn swift(signs: &BTreeMap<String, Sign>) -> String {
    let case = |name: &str| crate::swift::camel("", name);
    let cases: String = signs.keys().map(|name| format!("    case {}\n", case(name))).collect();
    let turning: Vec<_> =
        signs.iter().filter(|(_, sign)| sign.turns).map(|(name, _)| format!(".{}", case(name))).collect();
    let ways: String = signs
        .iter()
        .map(|(name, sign)| {
            let steps: Vec<_> = sign.way.steps.iter().map(step).collect();
            format!("        case .{}: [{}]\n", case(name), steps.join(", "))
        })
        .collect();
    format!(
        "// {MADE}\n\n/// A step of a sign's line, in a box of 24.\npublic enum SignStep: Equatable, Sendable {{\n    \
         case move(Double, Double)\n    case line(Double, Double)\n    \
         case curve(Double, Double, Double, Double, Double, Double)\n    case close\n}}\n\n\
         /// A small drawn sign. It only repeats what a word beside it says.\npublic enum Sign: String, CaseIterable, Sendable {{\n{cases}\n    \
         /// Whether it points along the line of reading, and turns with it.\n    \
         public var turns: Bool {{ [{}].contains(self) }}\n\n    \
         /// Its line, step by step.\n    public var way: [SignStep] {{\n        switch self {{\n{ways}        }}\n    }}\n}}\n",
        turning.join(", ")
    )
}

fn step(step: &Step) -> String {
    let said = |name: &str, places: &[f64]| {
        let places: Vec<_> = places.iter().map(f64::to_string).collect();
        format!(".{name}({})", places.join(", "))
    };
    match step {
        Step::Move(places) => said("move", places),
        Step::Line(places) => said("line", places),
        Step::Curve(places) => said("curve", places),
        Step::Close => ".close".to_owned(),
    }
}
