//! What can be wrong with a Touchstone file: one sentence each, for a person.

/// Why a Touchstone file could not be read.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum TouchstoneError {
    /// A file beyond all use.
    #[error("the file has {bytes} bytes, at most {most} are read: export fewer frequencies")]
    TooLarge {
        /// Its size.
        bytes: usize,
        /// The most.
        most: usize,
    },
    /// More matrix entries than are held.
    #[error("the file holds more than {most} values: export fewer frequencies")]
    TooManyValues {
        /// The most.
        most: usize,
    },
    /// No ports, or too many.
    #[error("the file is of a part with {ports} ports, but 1 to {most} can be read")]
    TooManyPorts {
        /// How many it has.
        ports: usize,
        /// The most.
        most: usize,
    },
    /// The number of ports cannot be told.
    #[error(
        "the number of ports cannot be told from the file: give it its usual name, such as part.s2p for two ports"
    )]
    PortsUnclear,
    /// No numbers.
    #[error("the file holds no measured values: is it a Touchstone file?")]
    NoData,
    /// A word in the option line that is not of the format.
    #[error("line {line}: \"{word}\" cannot stand in the option line, which looks like \"# MHz S RI R 75\"")]
    BadOption {
        /// The line, counted from 1.
        line: usize,
        /// The word.
        word: String,
    },
    /// Other than scattering parameters.
    #[error(
        "line {line}: the file holds {kind} parameters, only S (scattering) parameters can be read: export those"
    )]
    NotScattering {
        /// The line, counted from 1.
        line: usize,
        /// Y, Z, H, G or mixed-mode.
        kind: String,
    },
    /// A keyword whose value makes no sense, or a keyword out of place.
    #[error(
        "line {line}: \"[{keyword}]\" is not followed by what it needs, or is not of Touchstone 1 or 2.0"
    )]
    BadKeyword {
        /// The line, counted from 1.
        line: usize,
        /// The keyword.
        keyword: String,
    },
    /// A keyword that must be there.
    #[error("the file lacks the line \"[{keyword}]\", which version 2 of the format requires")]
    KeywordMissing {
        /// The keyword.
        keyword: &'static str,
    },
    /// Something else where a number should be.
    #[error("line {line}: \"{text}\" is not a number that a measurement can give")]
    BadNumber {
        /// The line, counted from 1.
        line: usize,
        /// The text.
        text: String,
    },
    /// A last record without all its values.
    #[error(
        "line {line}: the values for this frequency are {given}, but a part with {ports} ports has {needed}"
    )]
    CutShort {
        /// The line at which the record begins, counted from 1.
        line: usize,
        /// How many numbers there are.
        given: usize,
        /// How many there must be.
        needed: usize,
        /// The ports.
        ports: usize,
    },
    /// A frequency that is not above the last.
    #[error("line {line}: the frequency {megahertz} MHz is not above the one before it")]
    NotRising {
        /// The line, counted from 1.
        line: usize,
        /// The frequency.
        megahertz: f64,
    },
    /// Not as many frequencies as announced.
    #[error("the file announces {announced} frequencies but holds {given}: it may be cut off")]
    WrongCount {
        /// By its keyword.
        announced: usize,
        /// Those there are.
        given: usize,
    },
    /// A reference resistance that is none.
    #[error(
        "the reference resistances must be {ports} positive numbers of ohms, one for each port, or one for all"
    )]
    BadReference {
        /// The ports.
        ports: usize,
    },
    /// A matrix that has no counterpart at 75 ohm.
    #[error("at {megahertz} MHz the values cannot be turned to 75 ohm")]
    NotConvertible {
        /// The frequency.
        megahertz: f64,
    },
    /// Numbers that make no part.
    #[error(transparent)]
    Part(#[from] crate::error::CoaxError),
}
