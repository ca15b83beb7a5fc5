//! Where the model that reads print lies on this computer.

use std::path::{Path, PathBuf};

/// Names its folder, where it is not the one beside the program.
const NAMED: &str = "LEGWORK_PRINT_MODEL";
/// The folder beside the program.
const BESIDE_PROGRAM: &str = "print-model";

/// The folder that is named, or else the one beside the program, whether it is there or not.
pub fn folder() -> PathBuf {
    if let Some(named) = std::env::var_os(NAMED).filter(|named| !named.is_empty()) {
        return named.into();
    }
    let program = std::env::current_exe().ok();
    let beside = program.as_deref().and_then(Path::parent).map(|folder| folder.join(BESIDE_PROGRAM));
    beside.unwrap_or_else(|| BESIDE_PROGRAM.into())
}
