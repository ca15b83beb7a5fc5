//! The tokens as they stand in the file.

use std::collections::BTreeMap;
use std::path::Path;

use serde::Deserialize;

use crate::error::LookError;

/// All tokens. Sizes are in CSS pixels, which are `dp` on Android and points on iOS.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tokens {
    /// Families of type, in the words of CSS.
    pub font: BTreeMap<String, String>,
    /// Sizes of type.
    #[serde(rename = "type")]
    pub types: Types,
    /// Steps between things.
    pub space: BTreeMap<String, u32>,
    /// Least and greatest sizes of things.
    pub size: BTreeMap<String, u32>,
    /// Radii of corners.
    pub radius: BTreeMap<String, u32>,
    /// Widths of lines.
    pub line: BTreeMap<String, f64>,
    /// How cables are drawn.
    pub cable: BTreeMap<String, CableLine>,
    /// How long things move, milliseconds.
    pub motion: BTreeMap<String, u32>,
    /// The inks.
    pub ink: Inks,
}

/// Size, line height and weight of a kind of type.
#[derive(Debug, Clone, Copy, Deserialize)]
pub struct Type(
    /// Height of the type.
    pub u32,
    /// From line to line.
    pub u32,
    /// Weight, 400 or more.
    pub u32,
);

/// Every kind of type.
#[derive(Debug, Clone, Deserialize)]
pub struct Types {
    /// On paper.
    pub print: Print,
    /// On screens, by name.
    #[serde(flatten)]
    pub screen: BTreeMap<String, Type>,
}

/// Type on paper.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Print {
    /// Running text.
    pub text: String,
    /// Quiet text.
    pub says: String,
    /// A heading.
    pub head: String,
    /// The answer.
    pub lead: String,
    /// From line to line, as a multiple of the size.
    pub leading: f64,
}

/// How a cable is drawn.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CableLine {
    /// Width.
    pub width: f64,
    /// Stroke and gap; empty where it is unbroken.
    pub dash: Vec<u32>,
    /// What else marks it.
    pub extra: String,
}

/// An ink as it is written: `#RRGGBB`.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(try_from = "String")]
pub struct Ink([u8; 3]);

/// The inks by role: by day, by night, on paper.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Inks {
    /// By day.
    pub light: BTreeMap<String, Ink>,
    /// By night.
    pub dark: BTreeMap<String, Ink>,
    /// On paper.
    pub print: BTreeMap<String, Ink>,
}

impl CableLine {
    /// Strokes and gaps as CSS and SVG write them; empty where it is unbroken.
    pub fn dashes(&self) -> String {
        self.dash.iter().map(u32::to_string).collect::<Vec<_>>().join(" ")
    }
}

impl Ink {
    /// Red, green and blue.
    pub const fn parts(&self) -> [u8; 3] {
        self.0
    }

    /// As it is written: `#RRGGBB`.
    pub fn written(&self) -> String {
        let [red, green, blue] = self.0;
        format!("#{red:02X}{green:02X}{blue:02X}")
    }
}

impl TryFrom<String> for Ink {
    type Error = String;

    fn try_from(written: String) -> Result<Self, String> {
        let wrong = || format!("{written} is no ink: write it as #RRGGBB");
        let digits = written.strip_prefix('#').filter(|digits| digits.len() == 6).ok_or_else(wrong)?;
        let number = u32::from_str_radix(digits, 16).map_err(|_| wrong())?;
        let [_, red, green, blue] = number.to_be_bytes();
        Ok(Self([red, green, blue]))
    }
}

impl Tokens {
    /// The tokens in this text.
    ///
    /// # Errors
    /// If it is no such file.
    pub fn of(text: &str) -> Result<Self, LookError> {
        Ok(toml::from_str(text)?)
    }

    /// The tokens of this project.
    ///
    /// # Errors
    /// If the file is missing or not as it should be.
    pub fn of_project() -> Result<Self, LookError> {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tokens.toml");
        let text = std::fs::read_to_string(&path).map_err(|error| LookError::File { path, error })?;
        Self::of(&text)
    }
}
