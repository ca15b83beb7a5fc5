//! What differs between two records, as the edits that make one into the other.

use super::member::Member;
use super::table::every_field;
use super::{Note, Part, Photo, Reading, Room, Run, Service, Survey, Work, field};
use facts::fact::Edit;

/// A record whose fields can be compared one by one.
pub trait Differs {
    /// The edits that make `was` into this record. Where there was none, every field is said, also the empty ones: what
    /// was taken out once and comes again may have been something else then.
    fn edits_from(&self, was: Option<&Self>) -> Vec<Edit>;

    /// The edits that say what this record holds, and nothing of what it leaves open: for one that never was.
    fn stated(&self) -> Vec<Edit> {
        let mut edits = self.edits_from(None);
        edits.retain(|edit| !edit.value.is_null());
        edits
    }
}

/// A record with the members that the table names.
trait Members {
    fn member_edits_from(&self, was: Option<&Self>) -> Vec<Edit>;
}

macro_rules! members {
    ($($record:ident $Record:ident {
        $($(#[$about:meta])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        $(impl Members for $Record {
            fn member_edits_from(&self, was: Option<&Self>) -> Vec<Edit> {
                let mut edits = Vec::new();
                $($({
                    let now = Member::<$value>::told(&self.$member);
                    let differs = was.is_none_or(|was| Member::<$value>::told(&was.$member) != now);
                    if differs $(&& self.$only())? {
                        edits.push(field::$record::$NAME.put(self.id, now));
                    }
                })?)+
                edits
            }
        })+
    };
}

every_field!(members);

macro_rules! by_members {
    ($($Record:ty),+) => {
        $(impl Differs for $Record {
            fn edits_from(&self, was: Option<&Self>) -> Vec<Edit> {
                self.member_edits_from(was)
            }
        })+
    };
}

by_members!(Survey, Run, Room, Service, Reading, Note, Photo, Work);

impl Differs for Part {
    fn edits_from(&self, was: Option<&Self>) -> Vec<Edit> {
        let mut edits = self.member_edits_from(was);
        // A measurement comes from a file, never from a change; a change can only take it away.
        if was.is_some_and(|was| was.measured.is_some()) && self.measured.is_none() {
            edits.push(field::part::MEASUREMENT.clear(self.id));
        }
        for (port, end) in &self.ends {
            if was.is_none_or(|was| was.end(*port) != Some(*end)) {
                edits.push(field::END.set(self.id, *port, end));
            }
        }
        let gone = was.iter().flat_map(|was| was.ends.keys()).filter(|port| !self.ends.contains_key(port));
        edits.extend(gone.map(|port| field::END.clear(self.id, *port)));
        edits
    }
}
