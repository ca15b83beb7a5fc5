//! Edits: what a person decided, before it becomes facts.

use std::collections::BTreeMap;

use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

use super::canonical::value_of;
use super::clock::FactClock;
use super::fault::FactFault;
use super::id::{ActId, AuthorId, FactId, SubjectId};
use super::{Fact, Ledger, canonical};

/// A new value for one field of one subject: one decision.
#[derive(Debug, Clone, PartialEq)]
pub struct Edit {
    /// What it speaks of.
    pub subject: SubjectId,
    /// Which field.
    pub field: String,
    /// The whole new value; null empties the field.
    pub value: Value,
    /// Why the value cannot be kept as JSON, if so: the edit is refused when it is written.
    pub fault: Option<FactFault>,
}

impl Edit {
    /// An edit.
    pub fn new(subject: SubjectId, field: impl Into<String>, value: impl Into<Value>) -> Self {
        Self { subject, field: field.into(), value: value.into(), fault: None }
    }

    /// An edit that gives a field a value of a type of its own.
    pub fn stating<T>(subject: SubjectId, field: impl Into<String>, value: &T) -> Self
    where
        T: ?Sized + Serialize + ToOwned<Owned: DeserializeOwned> + PartialEq,
    {
        let (value, fault) = match value_of(value) {
            Ok(value) => (value, None),
            Err(fault) => (Value::Null, Some(fault)),
        };
        Self { subject, field: field.into(), value, fault }
    }
}

impl Ledger {
    /// The facts that say what the edits want, each over the live facts of its field in this ledger, which are
    /// those that the author has seen. The ledger itself is not changed.
    ///
    /// An edit to a value that already stands alone gives no fact, nor does emptying a field that nobody ever
    /// wrote. Of several edits to one field only the last counts.
    ///
    /// # Errors
    /// What [`Fact::new`] refuses.
    pub fn plan(
        &self,
        act: ActId,
        by: AuthorId,
        clock: &mut FactClock,
        edits: &[Edit],
    ) -> Result<Vec<Fact>, FactFault> {
        let last: BTreeMap<(SubjectId, &str), usize> = edits
            .iter()
            .enumerate()
            .map(|(place, edit)| ((edit.subject, edit.field.as_str()), place))
            .collect();
        let mut facts = Vec::new();
        for (place, edit) in edits.iter().enumerate() {
            if last.get(&(edit.subject, edit.field.as_str())) != Some(&place) {
                continue;
            }
            if let Some(fault) = &edit.fault {
                return Err(fault.clone());
            }
            let (text, value) = canonical::normal(&edit.value)?;
            let live = self.live(edit.subject, &edit.field);
            let stands = if live.is_empty() {
                value.is_null()
            } else {
                live.iter().all(|fact| *fact.value() == value)
            };
            if stands {
                continue;
            }
            let over: Vec<FactId> = live.into_iter().map(Fact::id).collect();
            for &seen in &over {
                clock.raise(seen);
            }
            let normal = (text.as_str(), value);
            facts.push(Fact::of_normal(clock.next_id(), act, by, edit.subject, &edit.field, normal, over)?);
        }
        Ok(facts)
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::super::testing::*;
    use super::*;

    fn plan(ledger: &Ledger, edits: &[Edit]) -> Vec<Fact> {
        ledger.plan(act(1), author(1), &mut FactClock::with_wall(|| 5), edits).unwrap()
    }

    fn length(value: impl Into<Value>) -> Edit {
        Edit::new(subject(1), "length", value)
    }

    #[test]
    fn a_new_fact_replaces_all_live_ones_and_has_a_greater_id() {
        let mut ledger = Ledger::new();
        let one = fact(FactId::at(1000), "length", &json!(15), &[]);
        let two = fact(FactId::at(2000), "length", &json!(16), &[]);
        ledger.insert(one.clone()).unwrap();
        ledger.insert(two.clone()).unwrap();
        let planned = plan(&ledger, &[length(15)]);
        assert_eq!(planned.len(), 1);
        assert_eq!(planned[0].over(), [one.id(), two.id()]);
        assert_eq!((planned[0].act(), planned[0].by()), (act(1), author(1)));
        ledger.insert(planned[0].clone()).unwrap();
        assert!(ledger.disagreements().is_empty());
    }

    #[test]
    fn a_value_that_already_stands_alone_gives_nothing() {
        let mut ledger = Ledger::new();
        ledger.insert(fact(FactId::at(1), "length", &json!({"likely_m": 15}), &[])).unwrap();
        assert_eq!(plan(&ledger, &[length(json!({"likely_m": 15.0}))]), []);
        assert_eq!(plan(&ledger, &[length(json!({"likely_m": 16}))]).len(), 1);
        assert_eq!(plan(&ledger, &[Edit::new(subject(1), "note", Value::Null)]), []);
        assert_eq!(plan(&ledger, &[length(Value::Null)]).len(), 1);
    }

    #[test]
    fn only_the_last_of_several_edits_to_a_field_counts() {
        let planned =
            plan(&Ledger::new(), &[length(1), Edit::new(subject(2), "length", 7), length(2), length(3)]);
        let said: Vec<_> = planned.iter().map(|fact| (fact.subject(), fact.value().clone())).collect();
        assert_eq!(said, [(subject(2), json!(7)), (subject(1), json!(3))]);
        assert!(planned[0].id() < planned[1].id());
    }

    #[test]
    fn an_edit_that_does_not_fit_gives_no_fact_at_all() {
        let mut clock = FactClock::with_wall(|| 5);
        let edits = [length(1), Edit::new(subject(1), "no name", 1)];
        let planned = Ledger::new().plan(act(1), author(1), &mut clock, &edits);
        assert_eq!(planned, Err(FactFault::FieldName { limit: 64 }));
        let edits = [length(1), Edit::stating(subject(1), "top_mhz", &f64::INFINITY)];
        let planned = Ledger::new().plan(act(1), author(1), &mut clock, &edits);
        assert_eq!(planned, Err(FactFault::NotJson));
    }
}
