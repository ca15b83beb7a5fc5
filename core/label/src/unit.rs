//! Units as spelled on labels.

use std::collections::HashMap;
use std::sync::LazyLock;

/// What a unit measures, as far as it matters here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unit {
    /// Decibels.
    Decibel,
    /// Megahertz.
    Megahertz,
    /// Gigahertz.
    Gigahertz,
    /// A bare `M`: megahertz in a range of frequencies, else nothing.
    ShortMega,
    /// A bare `G`: gigahertz in a range of frequencies, else nothing.
    ShortGiga,
    /// Hertz: the mains, or a misread larger unit.
    Hertz,
    /// A unit of something else: its number is passed over.
    Other,
}

impl Unit {
    /// Whether it is one of frequency, in a range of frequencies.
    pub const fn is_frequency(self) -> bool {
        matches!(self, Self::Megahertz | Self::Gigahertz | Self::ShortMega | Self::ShortGiga)
    }

    /// Whether numbers before it are in thousands of megahertz.
    pub const fn is_giga(self) -> bool {
        matches!(self, Self::Gigahertz | Self::ShortGiga)
    }

    /// The unit's symbol.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Decibel => "dB",
            Self::Megahertz | Self::ShortMega => "MHz",
            Self::Gigahertz | Self::ShortGiga => "GHz",
            Self::Hertz => "Hz",
            Self::Other => "",
        }
    }
}

/// A unit's spelling.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Spelling {
    /// In small letters.
    pub text: &'static str,
    /// The unit.
    pub unit: Unit,
    /// Whether it is a misreading, such as `d8`.
    pub misread: bool,
    /// Whether it counts only directly after a number.
    pub clings: bool,
}

const fn spelling(text: &'static str, unit: Unit) -> Spelling {
    Spelling { text, unit, misread: false, clings: text.len() == 1 }
}

const fn misreading(text: &'static str, unit: Unit) -> Spelling {
    Spelling { text, unit, misread: true, clings: false }
}

/// A spelling that is another word unless it stands directly after a number.
const fn clinging(text: &'static str, unit: Unit) -> Spelling {
    Spelling { text, unit, misread: false, clings: true }
}

/// All spellings; a longer one stands before one that ends it.
#[rustfmt::skip]
const SPELLINGS: &[Spelling] = &[
    spelling("dbmv", Unit::Other), spelling("dbuv", Unit::Other), spelling("dbuw", Unit::Other),
    spelling("dbpw", Unit::Other), spelling("dbm", Unit::Other), spelling("dbi", Unit::Other),
    spelling("dbc", Unit::Other), spelling("dbw", Unit::Other), spelling("dbd", Unit::Other),
    spelling("db", Unit::Decibel), spelling("дб", Unit::Decibel),
    misreading("d8", Unit::Decibel), misreading("dß", Unit::Decibel),
    misreading("rnhz", Unit::Megahertz), spelling("mhz", Unit::Megahertz), spelling("мгц", Unit::Megahertz),
    misreading("mh2", Unit::Megahertz), misreading("mnz", Unit::Megahertz),
    spelling("ghz", Unit::Gigahertz), spelling("ггц", Unit::Gigahertz), misreading("gh2", Unit::Gigahertz),
    spelling("khz", Unit::Other), spelling("hz", Unit::Hertz), misreading("h2", Unit::Hertz),
    spelling("ohms", Unit::Other), spelling("ohm", Unit::Other),
    spelling("vac", Unit::Other), spelling("vdc", Unit::Other), spelling("kv", Unit::Other),
    spelling("mv", Unit::Other), spelling("ma", Unit::Other), spelling("ka", Unit::Other),
    spelling("mw", Unit::Other), spelling("mm", Unit::Other), spelling("cm", Unit::Other),
    spelling("ft", Unit::Other), spelling("awg", Unit::Other), spelling("kg", Unit::Other),
    spelling("°c", Unit::Other), spelling("ms", Unit::Other), spelling("ns", Unit::Other),
    clinging("amps", Unit::Other), clinging("amp", Unit::Other), spelling("v", Unit::Other), spelling("a", Unit::Other), spelling("w", Unit::Other),
    spelling("c", Unit::Other), spelling("m", Unit::ShortMega), spelling("g", Unit::ShortGiga),
];

static SPELLED: LazyLock<HashMap<&str, Spelling>> =
    LazyLock::new(|| SPELLINGS.iter().map(|spelling| (spelling.text, *spelling)).collect());

/// The unit that all of a word spells.
pub(super) fn spelled(word: &str) -> Option<Spelling> {
    SPELLED.get(word).copied()
}

/// What stands before the unit at a word's end, for each unit that ends it.
pub(super) fn endings(word: &str) -> impl Iterator<Item = (&str, Spelling)> {
    SPELLINGS.iter().filter_map(move |spelling| {
        let before = word.strip_suffix(spelling.text)?;
        (!before.is_empty()).then_some((before, *spelling))
    })
}
