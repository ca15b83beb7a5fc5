//! The lines before and between the numbers: option line and keywords.

use super::data::{Data, numbers, shortened};
use super::error::TouchstoneError;

/// Which of the two layouts a file has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Version {
    One,
    Two,
}

/// How a pair of numbers gives a complex value.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Format {
    /// Decibels and degrees.
    Decibels,
    /// Magnitude and degrees.
    Magnitude,
    /// Real and imaginary part.
    Real,
}

/// Which entries of a matrix are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Layout {
    Full,
    Lower,
    Upper,
}

/// All that stands before the numbers.
#[derive(Debug, Clone)]
pub(super) struct Header {
    pub version: Version,
    /// What a frequency is multiplied by to give MHz.
    pub to_megahertz: f64,
    pub format: Format,
    pub layout: Layout,
    /// Whether a two-port's second pair is S21 (version 1 always).
    pub second_is_21: bool,
    pub ports: Option<usize>,
    pub frequencies: Option<usize>,
    /// The R of the option line.
    resistance: f64,
    /// Those of the keyword.
    resistances: Vec<f64>,
}

/// Where in a file a line of numbers stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Section {
    /// Version 1: data begin at once. Version 2: before the data, only reference resistances.
    Head,
    Network,
    /// Noise data or information: nothing for us.
    PassedOver,
}

/// What the format assumes where the option line says nothing (specification, option line).
impl Default for Header {
    fn default() -> Self {
        Self {
            version: Version::One,
            to_megahertz: 1e3,
            format: Format::Magnitude,
            layout: Layout::Full,
            second_is_21: true,
            ports: None,
            frequencies: None,
            resistance: 50.0,
            resistances: Vec::new(),
        }
    }
}

impl Header {
    /// Takes a file apart.
    pub(super) fn and_data(text: &str) -> Result<(Self, Data), TouchstoneError> {
        let mut header = Self::default();
        let mut data = Data::default();
        let mut section = Section::Head;
        let mut options_seen = false;
        let mut order_seen = false;
        for (index, whole) in text.lines().enumerate() {
            let number = index + 1;
            let line = whole.split('!').next().unwrap_or_default().trim();
            if line.is_empty() {
                continue;
            }
            if let Some(options) = line.strip_prefix('#') {
                // Only the first option line counts (specification, option line).
                if !options_seen {
                    header.options(options, number)?;
                    options_seen = true;
                }
            } else if let Some((keyword, value)) =
                line.strip_prefix('[').and_then(|rest| rest.split_once(']'))
            {
                let keyword = keyword.trim().to_ascii_lowercase();
                match keyword.as_str() {
                    "end" => break,
                    "network data" => section = Section::Network,
                    "noise data" | "begin information" => section = Section::PassedOver,
                    "end information" => section = Section::Head,
                    "two-port data order" => {
                        order_seen = true;
                        header.keyword(&keyword, value.trim(), number)?;
                    }
                    _ if section == Section::PassedOver => {}
                    _ => header.keyword(&keyword, value.trim(), number)?,
                }
            } else if section == Section::Network
                || (section, header.version) == (Section::Head, Version::One)
            {
                data.add_line(line, number)?;
            } else if section == Section::Head {
                header.resistances.extend(numbers(line, number)?);
            }
        }
        if header.version == Version::Two && header.ports == Some(2) && !order_seen {
            return Err(TouchstoneError::KeywordMissing { keyword: "Two-Port Data Order" });
        }
        Ok((header, data))
    }

    fn options(&mut self, options: &str, line: usize) -> Result<(), TouchstoneError> {
        let mut words = options.split_whitespace();
        while let Some(word) = words.next() {
            let bad = |word: &str| TouchstoneError::BadOption { line, word: shortened(word) };
            match word.to_ascii_lowercase().as_str() {
                "hz" => self.to_megahertz = 1e-6,
                "khz" => self.to_megahertz = 1e-3,
                "mhz" => self.to_megahertz = 1.0,
                "ghz" => self.to_megahertz = 1e3,
                "s" => {}
                "y" | "z" | "h" | "g" => {
                    return Err(TouchstoneError::NotScattering { line, kind: word.to_ascii_uppercase() });
                }
                "db" => self.format = Format::Decibels,
                "ma" => self.format = Format::Magnitude,
                "ri" => self.format = Format::Real,
                "r" => {
                    let value = words.next().ok_or_else(|| bad(word))?;
                    let ohm = value.parse().ok().filter(|ohm: &f64| ohm.is_finite() && *ohm > 0.0);
                    self.resistance = ohm.ok_or_else(|| bad(value))?;
                }
                _ => return Err(bad(word)),
            }
        }
        Ok(())
    }

    fn keyword(&mut self, keyword: &str, value: &str, line: usize) -> Result<(), TouchstoneError> {
        let bad = || TouchstoneError::BadKeyword { line, keyword: shortened(keyword) };
        let count = || value.parse::<usize>().ok().filter(|&count| count > 0).ok_or_else(bad);
        let lower = value.to_ascii_lowercase();
        match keyword {
            "version" if lower.starts_with("2.") => self.version = Version::Two,
            "number of ports" => self.ports = Some(count()?),
            "number of frequencies" => self.frequencies = Some(count()?),
            "number of noise frequencies" => {}
            "two-port data order" => {
                self.second_is_21 = match lower.as_str() {
                    "21_12" => true,
                    "12_21" => false,
                    _ => return Err(bad()),
                }
            }
            "matrix format" => {
                self.layout = match lower.as_str() {
                    "full" => Layout::Full,
                    "lower" => Layout::Lower,
                    "upper" => Layout::Upper,
                    _ => return Err(bad()),
                }
            }
            "reference" => self.resistances = numbers(value, line)?,
            "mixed-mode order" => {
                return Err(TouchstoneError::NotScattering { line, kind: "mixed-mode".into() });
            }
            _ => return Err(bad()),
        }
        Ok(())
    }

    /// The reference resistance of each port.
    pub(super) fn resistances(&self, ports: usize) -> Result<Vec<f64>, TouchstoneError> {
        let all = match self.resistances.as_slice() {
            [] => vec![self.resistance; ports],
            &[one] => vec![one; ports],
            each => each.to_vec(),
        };
        let sound = all.len() == ports && all.iter().all(|ohm| ohm.is_finite() && *ohm > 0.0);
        if sound { Ok(all) } else { Err(TouchstoneError::BadReference { ports }) }
    }
}
