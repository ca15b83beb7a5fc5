//! The draws, on as many of the computer's cores as there are.

use std::ops::Range;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::thread;

use crate::error::AdviceError;

/// What `work` gives for each of these numbers, in order: the same on any number of threads. Each thread has tools of its own
/// for it. `goes_on` is asked on the caller's own thread, in all once for each number.
///
/// # Errors
/// [`AdviceError::Stopped`] once `goes_on` says no; else the error of a number that fails.
pub(super) fn each<Tools, T: Send>(
    numbers: Range<u64>,
    tools: impl Fn() -> Tools + Sync,
    work: impl Fn(&mut Tools, u64) -> Result<T, AdviceError> + Sync,
    goes_on: &mut dyn FnMut() -> bool,
) -> Result<Vec<T>, AdviceError> {
    let cores = coax::cores();
    let count = numbers.end.saturating_sub(numbers.start);
    let next = AtomicU64::new(0);
    let is_over = AtomicBool::new(false);
    let take = || {
        let number = next.fetch_add(1, Ordering::Relaxed);
        (number < count && !is_over.load(Ordering::Relaxed)).then_some(number)
    };
    let one = |tools: &mut Tools, number| {
        let made = work(tools, numbers.start + number);
        if made.is_err() {
            is_over.store(true, Ordering::Relaxed);
        }
        (number, made)
    };
    let mut made: Vec<(u64, Result<T, AdviceError>)> = Vec::new();
    let is_stopped = thread::scope(|scope| {
        let beside: Vec<_> = (1..cores.min(usize::try_from(count).unwrap_or(cores)))
            // Where the system gives no thread, the others do all the work.
            .filter_map(|_| {
                let all = || {
                    let mut tools = tools();
                    std::iter::from_fn(take).map(|number| one(&mut tools, number)).collect::<Vec<_>>()
                };
                thread::Builder::new().name("draws".into()).spawn_scoped(scope, all).ok()
            })
            .collect();
        let mut told = 0;
        let mut may_go_on = |until: u64| {
            let goes_on = (told..until.min(count)).all(|_| goes_on());
            told = until.min(count);
            if !goes_on {
                is_over.store(true, Ordering::Relaxed);
            }
            goes_on
        };
        let mut is_stopped = false;
        let mut tools = tools();
        while let Some(number) = take() {
            is_stopped = !may_go_on(next.load(Ordering::Relaxed));
            if is_stopped {
                break;
            }
            made.push(one(&mut tools, number));
        }
        for thread in beside {
            match thread.join() {
                Ok(theirs) => made.extend(theirs),
                Err(panic) => std::panic::resume_unwind(panic),
            }
        }
        let is_failed = is_over.load(Ordering::Relaxed);
        is_stopped || (!is_failed && !may_go_on(count))
    });
    if is_stopped {
        return Err(AdviceError::Stopped);
    }
    made.sort_by_key(|(number, _)| *number);
    made.into_iter().map(|(_, made)| made).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_are_made_once_and_stand_in_order() {
        let asked = AtomicU64::new(0);
        let work = |(): &mut (), number| {
            asked.fetch_add(1, Ordering::Relaxed);
            // The first ones take longest.
            thread::sleep(std::time::Duration::from_micros(200_u64.saturating_sub(number * 4)));
            Ok(number * number)
        };
        let mut told = 0;
        let mut goes_on = || {
            told += 1;
            true
        };
        let made = each(0..100, || (), work, &mut goes_on).unwrap();
        assert_eq!(told, 100);
        assert_eq!(made, (0..100).map(|number| number * number).collect::<Vec<_>>());
        assert_eq!(asked.into_inner(), 100);
        let later = each(40..43, || (), |(): &mut (), number| Ok(number), &mut || true).unwrap();
        assert_eq!(later, [40, 41, 42]);
        assert!(each(7..7, || (), |(), _| Ok(()), &mut || true).unwrap().is_empty());
    }

    #[test]
    fn a_no_stops_and_a_failure_is_told() {
        let mut left = 3;
        let mut goes_on = || {
            left -= 1;
            left > 0
        };
        let slow = |(): &mut (), number: u64| {
            thread::sleep(std::time::Duration::from_millis(1));
            Ok(number)
        };
        assert!(matches!(each(0..1_000_000, || (), slow, &mut goes_on), Err(AdviceError::Stopped)));
        let fails =
            |(): &mut (), number| if number == 7 { Err(AdviceError::Inner("planted")) } else { Ok(number) };
        assert!(matches!(each(0..10_000, || (), fails, &mut || true), Err(AdviceError::Inner("planted"))));
    }
}
