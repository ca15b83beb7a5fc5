//! What authors are called: a fact about them, a claim and no proof.

use crate::fact::{AuthorId, Edit, Ledger, reserved};

/// The display name of an author, if one was said.
pub fn author_name(ledger: &Ledger, author: AuthorId) -> Option<&str> {
    let name = ledger.shown(author.subject(), reserved::NAME)?.value().as_str()?;
    (!name.is_empty()).then_some(name)
}

/// The edit that names an author.
pub fn name_author(author: AuthorId, name: &str) -> Edit {
    Edit::new(author.subject(), reserved::NAME, name)
}
