//! How long the forecast and the work list of a survey take with nothing kept: `time_advice SURVEY.legwork [TIMES]`; or of an old
//! house of so many parts in which much may be done: `time_advice --old=60 [TIMES]`; or of one whose splitters nobody has read: `--unread=60`.
//!
//! Run on one core (`taskset -c 1`). Prints the median of so many runs (5), in milliseconds, and a sum over all figures that the work list holds, so that two
//! versions of the program can be told apart by what they say as well.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a measuring tool stops at the first thing that is wrong"
)]

use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::Path;
use std::sync::LazyLock;
use std::time::Instant;

use advice::forecast::{Options, forecast};
use advice::worklist::worklist;
use facts::fact::AuthorId;
use facts::store::Store;
use house::record::fold;

fn main() {
    let mut given = std::env::args().skip(1);
    let folder = given
        .next()
        .unwrap_or_else(|| panic!("usage: time_advice SURVEY.legwork|--old=PARTS|--unread=PARTS [TIMES]"));
    let times = given.next().map_or(5, |times| times.parse().unwrap());
    let survey = if let Some(parts) = folder.strip_prefix("--old=") {
        houses::old(parts.parse().unwrap())
    } else if let Some(parts) = folder.strip_prefix("--unread=") {
        houses::unread(parts.parse().unwrap())
    } else {
        let store = Store::open_to_read(Path::new(&folder), AuthorId::random()).unwrap();
        fold(store.ledger(), store.survey_id()).unwrap()
    };
    println!("{} parts, {} runs", survey.parts.len(), survey.runs.len());
    median("forecast", times, || format!("{:?}", forecast(&survey, &Options::default()).unwrap()));
    let mut told = String::new();
    median("work list", times, || {
        let list = worklist(&survey, &advice::worklist::Options::default()).unwrap();
        told = format!("{} steps, {} refused, {:?}", list.steps.len(), list.refused.len(), list.searched);
        format!("{:?}", list.when_done)
    });
    println!("{told}");
}

/// Seconds that this thread was on a core, where the system tells them (so that other work beside it does not count), else the
/// clock's.
fn own_time() -> f64 {
    static BEGUN: LazyLock<Instant> = LazyLock::new(Instant::now);
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").ok();
    let nanoseconds = told.as_deref().and_then(|told| told.split(' ').next()?.parse::<f64>().ok());
    nanoseconds.map_or_else(|| BEGUN.elapsed().as_secs_f64(), |nanoseconds| nanoseconds * 1e-9)
}

fn median(what: &str, times: usize, mut work: impl FnMut() -> String) {
    let mut taken = Vec::new();
    let mut said = String::new();
    for _ in 0..times {
        let begun = own_time();
        said = work();
        taken.push((own_time() - begun) * 1e3);
    }
    taken.sort_by(f64::total_cmp);
    let mut sum = DefaultHasher::new();
    said.hash(&mut sum);
    println!("{what}: {:.1} ms (least {:.1}); says {:016x}", taken[taken.len() / 2], taken[0], sum.finish());
}
