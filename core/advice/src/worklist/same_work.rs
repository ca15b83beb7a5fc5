//! When two changes are one piece of work.

use house::record::ChangeKind;

/// Whether two changes are the same work: a part may be swapped for one of another size, and a room be laid a cable from
/// elsewhere.
pub(super) fn is_same_work(one: ChangeKind, other: ChangeKind) -> bool {
    let bare = |change| match change {
        ChangeKind::SwapSplitter { splitter, .. } => ChangeKind::SwapSplitter { splitter, legs: 0 },
        ChangeKind::MergeSplitters { upper, lower, .. } => {
            ChangeKind::MergeSplitters { upper, lower, legs: 0 }
        }
        ChangeKind::NewRun { room, .. } => ChangeKind::NewRun { room, from: room },
        other => other,
    };
    bare(one) == bare(other)
}
