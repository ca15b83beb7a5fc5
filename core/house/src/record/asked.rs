//! Names of questions whose answers no other field holds, as far as more than the guide reads them.
//!
//! A name is part of the file format (`asked.<name>`): it never changes its meaning.

/// Which adapters there are, asked of the survey: the answer `none` says that all are still to be bought.
pub const ADAPTERS: &str = "adapters";

/// Whether the adapters are placed, asked of the survey.
pub const ADAPTERS_PLACED: &str = "adapters-placed";
