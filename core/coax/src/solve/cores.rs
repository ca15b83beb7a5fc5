//! Work shared among the computer's cores.

use std::ops::Range;
use std::sync::OnceLock;
use std::thread;

/// Fewer waves than this, each of 64 frequencies, take less time than a thread does to begin.
const WORTH_A_THREAD: usize = 3_750;

/// More threads than this bring nothing: they then wait for the memory.
const MOST_THREADS: usize = 4;

/// Among how many of the computer's cores work on houses is shared, 1 to 4: more bring nothing, for they then wait for the memory.
pub fn cores() -> usize {
    // Asking the system takes as long as solving a small house: it is asked once.
    static CORES: OnceLock<usize> = OnceLock::new();
    let all = || thread::available_parallelism().map_or(1, std::num::NonZero::get);
    (*CORES.get_or_init(all)).min(MOST_THREADS)
}

/// Cuts so many groups, in which so many waves are worked out, into one row of neighbours for each core that is worth it.
pub(super) fn shares(groups: usize, waves: usize) -> Vec<Range<usize>> {
    let worth = waves / WORTH_A_THREAD;
    let count = if worth > 1 { worth.min(cores()) } else { 1 }.clamp(1, groups.max(1));
    (0..count).map(|share| share * groups / count..(share + 1) * groups / count).collect()
}

/// Does each piece of work, the first on the caller's own thread and each other on one of its own; what comes of them in order.
pub(super) fn each<W: Send, T: Send>(
    work: impl IntoIterator<Item = W>,
    done: impl Fn(W) -> T + Sync,
) -> Vec<T> {
    let mut work = work.into_iter();
    let Some(first) = work.next() else { return Vec::new() };
    let done = &done;
    thread::scope(|scope| {
        let others: Vec<_> = work.map(|work| scope.spawn(move || done(work))).collect();
        let mut all = vec![done(first)];
        for other in others {
            match other.join() {
                Ok(done) => all.push(done),
                Err(panic) => std::panic::resume_unwind(panic),
            }
        }
        all
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_are_neighbours_and_together_all() {
        for groups in [0, 1, 2, 7, 40] {
            let shares = shares(groups, usize::MAX);
            assert_eq!(shares.first().map(|share| share.start), Some(0));
            assert_eq!(shares.last().map(|share| share.end), Some(groups));
            assert!(shares.windows(2).all(|pair| pair[0].end == pair[1].start));
        }
        assert_eq!(shares(100, WORTH_A_THREAD).len(), 1);
    }

    #[test]
    fn what_is_done_stands_in_order() {
        assert_eq!(each(0..9, |number| number * number), (0..9).map(|n| n * n).collect::<Vec<_>>());
    }
}
