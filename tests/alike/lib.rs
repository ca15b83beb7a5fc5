//! Nothing. Each crate of the workspace names this one among its dev-dependencies, so that `cargo test -p ONE` asks of every
//! shared dependency the same features as `cargo test --workspace` does: cargo builds a dependency anew for each set of
//! features, and all that stands on it.
