//! An author as JSON.

use facts::fact::{AuthorId, Ledger};
use serde::Serialize;

/// Who said something: a claim and no proof.
#[derive(Serialize)]
pub struct AuthorJson {
    id: AuthorId,
    name: Option<String>,
    /// Whether it is this computer.
    you: bool,
}

impl AuthorJson {
    /// The author as a survey knows them.
    pub fn of(ledger: &Ledger, id: AuthorId, me: AuthorId) -> Self {
        Self::named(id, facts::act::author_name(ledger, id).map(str::to_owned), me)
    }

    /// The author under this name.
    pub fn named(id: AuthorId, name: Option<String>, me: AuthorId) -> Self {
        Self { id, name, you: id == me }
    }
}
