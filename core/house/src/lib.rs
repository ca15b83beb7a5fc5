//! The typed document of a house, both ways: facts become records, and what changed in records becomes edits; what parts,
//! fields and values are called, as phrases.
//!
//! It knows what a part, a run or a room is. It does not know what follows from one, and no language.
//!
//! ```
//! use facts::fact::{ActId, AuthorId, Edit, FactClock, Ledger, SubjectId, SurveyId};
//! use house::record::{PartKind, edits_between, fold};
//!
//! # fn main() -> Result<(), facts::FactsError> {
//! let (mut ledger, mut clock, me) = (Ledger::new(), FactClock::system(), AuthorId::random());
//! let (id, part) = (SurveyId::random(), SubjectId::random());
//! let said = [Edit::new(part, "is", "part"), Edit::new(part, "kind", "tap"), Edit::new(part, "tag", "T1")];
//! for fact in ledger.plan(ActId::random(), me, &mut clock, &said)? {
//!     ledger.insert(fact)?;
//! }
//!
//! let before = fold(&ledger, id)?;
//! assert_eq!(before.parts[&part].kind, PartKind::Tap);
//!
//! let mut after = before.clone();
//! after.parts.get_mut(&part).unwrap().tag = Some("T2".into());
//! assert_eq!(edits_between(&before, &after, &ledger)?, [Edit::new(part, "tag", "T2")]);
//! # Ok(())
//! # }
//! ```
//!
//! From below upwards: `rating` (what a part is made for), `record` (the document), `naming` (what a part is called),
//! `story` (what was said, in phrases); beside them `printed` (the kind that a print tells of), `contradiction` (print against what was typed), `document` (a store as a document) and `label_seen`.

pub mod contradiction;
pub mod document;
pub mod label_seen;
pub mod naming;
pub mod printed;
pub mod rating;
pub mod record;
pub mod story;
