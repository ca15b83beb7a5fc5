//! Kinds of work that the people of a house do not want: a veto on all such changes, kept until they say otherwise.

use std::collections::BTreeSet;

use facts::fact::Edit;
use serde_json::Value;

use super::closed_list::closed_list;
use super::{Asked, Named, Reply, Survey};

closed_list! {
    /// A kind of work that is left out of the work list where somebody does not want it.
    pub enum Without {
        /// No cable is laid, replaced or traced.
        NewCable = "new-cable",
        /// Nothing that may need an attic, a ladder or a roof.
        Heights = "heights",
    }
}

impl Without {
    const fn reply(self) -> Reply {
        match self {
            Self::NewCable => Reply::NewCable,
            Self::Heights => Reply::Heights,
        }
    }
}

impl Survey {
    /// The kinds of work that are not wanted here.
    pub fn without(&self) -> BTreeSet<Without> {
        let replies = self.replies(self.id, Asked::Without);
        Without::ALL.iter().copied().filter(|without| replies.contains(&without.reply())).collect()
    }

    /// The edit by which these kinds of work, and no others, are not wanted any more; with none all may be done.
    pub fn set_without(&self, without: &BTreeSet<Without>) -> Edit {
        Asked::Without.set_all(self.id, &replies(without))
    }

    /// The same house where these kinds of work, and no others, are not wanted.
    #[must_use]
    pub fn where_not_wanted(&self, without: &BTreeSet<Without>) -> Self {
        let mut house = self.clone();
        let names = replies(without).into_iter().map(|reply| Value::from(reply.name()));
        house.asked.insert((self.id, Asked::Without), names.collect());
        if without.is_empty() {
            house.asked.remove(&(self.id, Asked::Without));
        }
        house
    }
}

/// That nothing is left out is an answer of its own.
fn replies(without: &BTreeSet<Without>) -> Vec<Reply> {
    if without.is_empty() {
        return vec![Reply::Nothing];
    }
    without.iter().map(|without| without.reply()).collect()
}

#[cfg(test)]
mod tests {
    use facts::fact::SubjectId;

    use super::*;

    #[test]
    fn what_is_not_wanted_is_read_as_it_was_said() {
        let survey = Survey::new(SubjectId::from_uuid(uuid::Uuid::from_u128(1)));
        assert!(survey.without().is_empty());
        for wanted in [vec![], vec![Without::NewCable], vec![Without::NewCable, Without::Heights]] {
            let wanted: BTreeSet<_> = wanted.into_iter().collect();
            assert_eq!(survey.where_not_wanted(&wanted).without(), wanted);
            let Edit { value, field, .. } = survey.set_without(&wanted);
            assert_eq!(Asked::of_field(&field), Some(Asked::Without));
            let mut told = survey.clone();
            told.asked.insert((survey.id, Asked::Without), value);
            assert_eq!(told.without(), wanted);
        }
        let both = Without::ALL.iter().copied().collect();
        assert_eq!(survey.where_not_wanted(&both).where_not_wanted(&BTreeSet::new()), survey);
    }

    #[test]
    fn a_word_of_a_later_release_leaves_nothing_out() {
        let mut survey = Survey::new(SubjectId::from_uuid(uuid::Uuid::from_u128(1)));
        survey.asked.insert((survey.id, Asked::Without), serde_json::json!(["noise", "new-cable"]));
        assert_eq!(survey.without(), BTreeSet::from([Without::NewCable]));
    }
}
