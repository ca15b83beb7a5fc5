//! Why something is no fact.

use super::id::FactId;

/// Why a fact is not well formed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum FactFault {
    /// The value is longer than [`super::MAX_VALUE_BYTES`].
    #[error("what was written under \"{field}\" is {bytes} bytes long; at most {limit} fit, so shorten it")]
    TooLong {
        /// The field it was written under.
        field: String,
        /// Its length in canonical form.
        bytes: usize,
        /// The longest allowed.
        limit: usize,
    },
    /// The value is nested deeper than [`super::MAX_DEPTH`].
    #[error("a value is nested deeper than {limit} levels")]
    TooDeep {
        /// The deepest allowed.
        limit: usize,
    },
    /// Infinity, not-a-number, or a kind of value that JSON does not have.
    #[error("a value cannot be written as JSON (only finite numbers can)")]
    NotJson,
    /// A whole number that a double does not hold exactly.
    #[error("the whole number {number} is too large to be kept exactly")]
    NumberInexact {
        /// The number.
        number: String,
    },
    /// The field's name is empty, too long, or has characters that do not belong in a name.
    #[error("a field name must be 1 to {limit} letters, digits, dots, dashes or underscores of ASCII")]
    FieldName {
        /// The longest allowed.
        limit: usize,
    },
    /// An id that is no UUID of version 7.
    #[error("the id {id} is not a UUID of version 7")]
    IdVersion {
        /// The id.
        id: uuid::Uuid,
    },
    /// A fact that replaces itself or a later one.
    #[error("record {id} replaces {later}, which is not older")]
    ReplacesLater {
        /// The fact.
        id: FactId,
        /// The fact that it names.
        later: FactId,
    },
    /// A fact that tells what to forget, and is itself marked as forgotten.
    #[error("a record that tells what to forget cannot be forgotten itself")]
    ForgottenForget,
    /// A line that is no JSON object with the members of a fact.
    #[error("line is not a record ({reason}, at column {column})")]
    Line {
        /// What kind of mistake it is.
        reason: &'static str,
        /// Where in the line, counted in bytes from 1.
        column: usize,
    },
    /// A line that is right but not written in the one canonical way.
    #[error("line is not in canonical form (RFC 8785)")]
    LineNotCanonical,
    /// Members unknown to this release that are too long together.
    #[error("members unknown to this release take {bytes} bytes; at most {limit} are kept")]
    ExtraTooLong {
        /// Their length in canonical form.
        bytes: usize,
        /// The longest allowed.
        limit: usize,
    },
}
