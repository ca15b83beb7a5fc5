//! The layout of the database, and how an older one becomes the newest.

use rusqlite::{Connection, Result, TransactionBehavior};

/// Marks the database as ours: "Lgwk".
pub(super) const APPLICATION_ID: i32 = 0x4C67_776B;

/// The steps from nothing to the newest layout. The first one makes layout 1; each is frozen once released.
const STEPS: [&str; 4] = [
    include_str!("schema/v1.sql"),
    include_str!("schema/v2.sql"),
    include_str!("schema/v3.sql"),
    include_str!("schema/v4.sql"),
];

/// The first layout whose rows carry sums.
pub(super) const WITH_SUMS: u32 = 4;

/// The newest layout, as SQLite's `user_version`.
pub(super) const NEWEST: u32 = 4;

const _: () = assert!(STEPS.len() == NEWEST as usize);

/// Brings the database to the newest layout in one transaction, whatever layout it has; `fill` runs in the same
/// transaction, and is told which that was.
pub(super) fn bring_up(
    connection: &mut Connection,
    fill: impl FnOnce(&Connection, u32) -> Result<()>,
) -> Result<()> {
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    // Read inside the transaction: another process may just have done it.
    let found: u32 = version(&transaction)?;
    for (step, number) in STEPS.iter().zip(1..).skip_while(|&(_, number)| number <= found) {
        transaction.execute_batch(step)?;
        transaction.pragma_update(None, "user_version", number)?;
    }
    transaction.pragma_update(None, "application_id", APPLICATION_ID)?;
    fill(&transaction, found)?;
    transaction.commit()
}

/// The layout that the database has; 0 if none. It is asked for at every edit, so the question is kept ready.
pub(super) fn version(connection: &Connection) -> Result<u32> {
    connection.prepare_cached("PRAGMA user_version")?.query_row((), |row| row.get(0))
}

/// Whose database it says it is.
pub(super) fn application_id(connection: &Connection) -> Result<i32> {
    connection.pragma_query_value(None, "application_id", |row| row.get(0))
}
