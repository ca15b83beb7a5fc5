//! Facts: who said what, when, over what.
//!
//! A survey is nothing but a set of facts. A fact says that a subject's field has a value, and names the facts it
//! replaces, which are those that its author saw. Merging two copies is the union of their sets; where two authors
//! wrote without seeing each other's fact, both stand, and people see a disagreement.
//!
//! **A value is one decision.** What a person decides at once is one fact: a length with its range and how it is
//! known, a feed with part, port and run. So no merge ever makes "20 m, measured" out of "15 m, measured" and
//! "20 m, guessed".
//!
//! This module knows nothing of cables and nothing of disks: see [`crate::store`] for keeping facts.

mod author;
mod canonical;
mod clock;
mod disagreement;
mod edit;
mod fault;
mod forget;
mod history;
mod id;
mod image;
mod ledger;
mod line;
mod removal;
pub mod reserved;
mod size;
mod wish;

use std::sync::Arc;

use serde_json::{Map, Value};

pub use author::Writer;
pub use canonical::{MAX_DEPTH, MAX_VALUE_BYTES, canonical, value_of};
pub use clock::{FactClock, MAX_AHEAD_MS};
pub use disagreement::Disagreement;
pub use edit::Edit;
pub use fault::FactFault;
pub use forget::FORGET;
pub use id::{ActId, AuthorId, DeviceKey, FactId, SubjectId, SurveyId};
pub use image::PhotoImage;
pub use ledger::Ledger;
pub(crate) use ledger::Taken;
pub(crate) use removal::removal_of;
pub use removal::{REMOVED, Removal};
pub use wish::Wish;
pub(crate) use wish::{HeldBack, hold_back, wishes};

/// The longest name of a field, in bytes.
pub const MAX_FIELD_BYTES: usize = 64;

/// One statement about one field of one subject. Never changed once written, except that what it says may be
/// forgotten.
#[derive(Debug, Clone, PartialEq)]
pub struct Fact {
    id: FactId,
    act: ActId,
    by: AuthorId,
    subject: SubjectId,
    /// Most facts share their names of fields with many others.
    field: Arc<str>,
    value: Value,
    over: Vec<FactId>,
    extra: Map<String, Value>,
    forgotten: bool,
}

impl Fact {
    /// A fact, checked as far as it can be alone. `value` is brought into the form that its canonical text reads
    /// back as; `over` is sorted.
    ///
    /// # Errors
    /// Any [`FactFault`]: a field name or value that does not fit, or `over` naming a fact that is not older.
    pub fn new(
        id: FactId,
        act: ActId,
        by: AuthorId,
        subject: SubjectId,
        field: &str,
        value: &Value,
        over: Vec<FactId>,
    ) -> Result<Self, FactFault> {
        check_field(field)?;
        let (text, value) = canonical::normal(value)?;
        Self::of_normal(id, act, by, subject, field, (&text, value), over)
    }

    /// As [`Fact::new`], of a value that has its canonical text with it.
    ///
    /// # Errors
    /// As [`Fact::new`].
    fn of_normal(
        id: FactId,
        act: ActId,
        by: AuthorId,
        subject: SubjectId,
        field: &str,
        (text, value): (&str, Value),
        mut over: Vec<FactId>,
    ) -> Result<Self, FactFault> {
        check_field(field)?;
        if text.len() > MAX_VALUE_BYTES {
            let field = field.to_owned();
            return Err(FactFault::TooLong { field, bytes: text.len(), limit: MAX_VALUE_BYTES });
        }
        sort_over(id, &mut over)?;
        let field = field.into();
        Ok(Self { id, act, by, subject, field, value, over, extra: Map::new(), forgotten: false })
    }

    /// A fact from a place that only holds what [`Fact::new`] and `with_extra` made. The value's canonical form is
    /// not looked at again, which is most of the work.
    ///
    /// # Errors
    /// As [`Fact::new`], the value aside.
    #[expect(clippy::too_many_arguments, reason = "the members of a fact")]
    pub(crate) fn kept(
        id: FactId,
        act: ActId,
        by: AuthorId,
        subject: SubjectId,
        field: Arc<str>,
        value: Value,
        mut over: Vec<FactId>,
        extra: Map<String, Value>,
    ) -> Result<Self, FactFault> {
        check_field(&field)?;
        sort_over(id, &mut over)?;
        Ok(Self { id, act, by, subject, field, value, over, extra, forgotten: false })
    }

    /// A fact of which only the frame is left: what it said was forgotten.
    ///
    /// # Errors
    /// As [`Fact::new`], and [`FactFault::ForgottenForget`] for one that told what to forget.
    pub fn forgotten(
        id: FactId,
        act: ActId,
        by: AuthorId,
        subject: SubjectId,
        field: impl Into<Arc<str>>,
        mut over: Vec<FactId>,
    ) -> Result<Self, FactFault> {
        let field = field.into();
        check_field(&field)?;
        if *field == *FORGET {
            return Err(FactFault::ForgottenForget);
        }
        sort_over(id, &mut over)?;
        Ok(Self { id, act, by, subject, field, value: Value::Null, over, extra: Map::new(), forgotten: true })
    }

    /// The same fact with members that this release does not know.
    ///
    /// # Errors
    /// [`FactFault::ExtraTooLong`] beyond [`MAX_VALUE_BYTES`], or what [`canonical`] refuses.
    pub(crate) fn with_extra(mut self, extra: Map<String, Value>) -> Result<Self, FactFault> {
        if extra.is_empty() {
            return Ok(self);
        }
        let (text, extra) = canonical::normal(&Value::Object(extra))?;
        if text.len() > MAX_VALUE_BYTES {
            return Err(FactFault::ExtraTooLong { bytes: text.len(), limit: MAX_VALUE_BYTES });
        }
        if let Value::Object(extra) = extra {
            self.extra = extra;
        }
        Ok(self)
    }

    /// Its id, which also tells when it was written by its author's clock.
    pub const fn id(&self) -> FactId {
        self.id
    }

    /// The action of the user that it belongs to.
    pub const fn act(&self) -> ActId {
        self.act
    }

    /// Who wrote it.
    pub const fn by(&self) -> AuthorId {
        self.by
    }

    /// What it speaks of.
    pub const fn subject(&self) -> SubjectId {
        self.subject
    }

    /// Which field of the subject.
    pub fn field(&self) -> &str {
        &self.field
    }

    /// The same, to be kept.
    pub(crate) fn shared_field(&self) -> Arc<str> {
        Arc::clone(&self.field)
    }

    /// What it says. Null says that the field is empty, and is all that is left of a forgotten one.
    pub const fn value(&self) -> &Value {
        &self.value
    }

    /// The facts that it replaces, sorted.
    pub fn over(&self) -> &[FactId] {
        &self.over
    }

    /// Members of its line that this release does not know, kept and handed on unchanged.
    pub const fn extra(&self) -> &Map<String, Value> {
        &self.extra
    }

    /// Whether what it said was forgotten.
    pub const fn is_forgotten(&self) -> bool {
        self.forgotten
    }

    /// Whether the two are one fact: equal, or equal in all that is left where either was forgotten.
    pub fn is_same(&self, other: &Self) -> bool {
        let frame = |fact: &Self| (fact.id, fact.act, fact.by, fact.subject);
        if self.forgotten || other.forgotten {
            return frame(self) == frame(other) && self.field == other.field && self.over == other.over;
        }
        self == other
    }

    /// Drops what it said.
    pub(crate) fn forget(&mut self) {
        self.value = Value::Null;
        self.extra = Map::new();
        self.forgotten = true;
    }
}

fn sort_over(id: FactId, over: &mut Vec<FactId>) -> Result<(), FactFault> {
    over.sort_unstable();
    over.dedup();
    match over.last() {
        Some(&later) if later >= id => Err(FactFault::ReplacesLater { id, later }),
        _ => Ok(()),
    }
}

pub(crate) fn check_field(field: &str) -> Result<(), FactFault> {
    let right = |byte: u8| byte.is_ascii_alphanumeric() || matches!(byte, b'_' | b'-' | b'.');
    if field.is_empty() || field.len() > MAX_FIELD_BYTES || !field.bytes().all(right) {
        return Err(FactFault::FieldName { limit: MAX_FIELD_BYTES });
    }
    Ok(())
}

#[cfg(test)]
mod histories;

#[cfg(test)]
pub(crate) mod testing {
    //! Facts made by hand, for the tests of this module.

    use super::*;

    pub fn subject(number: u128) -> SubjectId {
        SubjectId::from_uuid(uuid::Uuid::from_u128(number))
    }

    pub fn author(number: u128) -> AuthorId {
        AuthorId::from_uuid(uuid::Uuid::from_u128(number))
    }

    pub fn act(number: u128) -> ActId {
        ActId::from_uuid(uuid::Uuid::from_u128(number))
    }

    /// A fact about field `field` of subject 1 by author 1, in an act of its own.
    pub fn fact(id: FactId, field: &str, value: &Value, over: &[FactId]) -> Fact {
        Fact::new(id, ActId::random(), author(1), subject(1), field, value, over.to_vec()).unwrap()
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::testing::*;
    use super::*;

    fn try_fact(field: &str, value: &Value) -> Result<Fact, FactFault> {
        Fact::new(FactId::at(1), act(1), author(1), subject(1), field, value, Vec::new())
    }

    #[test]
    fn a_value_of_8_kib_fits_and_one_byte_more_does_not() {
        let text = |bytes: usize| json!("x".repeat(bytes - 2));
        assert!(try_fact("note", &text(8192)).is_ok());
        assert_eq!(
            try_fact("note", &text(8193)),
            Err(FactFault::TooLong { field: "note".into(), bytes: 8193, limit: 8192 })
        );
    }

    #[test]
    fn field_names_are_plain() {
        assert!(try_fact("length", &json!(1)).is_ok());
        assert!(try_fact("leg.3-note_b", &json!(1)).is_ok());
        for wrong in ["", " ", "länge", "a b", "a\n", &"x".repeat(65)] {
            assert_eq!(try_fact(wrong, &json!(1)), Err(FactFault::FieldName { limit: 64 }), "{wrong:?}");
        }
    }

    #[test]
    fn a_fact_replaces_only_older_ones() {
        let (old, new) = (FactId::at(1), FactId::at(2));
        let make = |id, over| Fact::new(id, act(1), author(1), subject(1), "a", &json!(1), vec![over]);
        assert_eq!(make(new, old).unwrap().over(), [old]);
        assert_eq!(make(old, new), Err(FactFault::ReplacesLater { id: old, later: new }));
        assert_eq!(make(old, old), Err(FactFault::ReplacesLater { id: old, later: old }));
    }
}
