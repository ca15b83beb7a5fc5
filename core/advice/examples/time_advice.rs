//! How long the forecast and the work list of a survey take with nothing kept: `time_advice SURVEY.legwork [TIMES]`.
//!
//! Prints the median of so many runs (5), in milliseconds, and a sum over all figures that the work list holds, so that two
//! versions of the program can be told apart by what they say as well.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a measuring tool stops at the first thing that is wrong"
)]

use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::Path;
use std::time::Instant;

use advice::forecast::{Options, forecast};
use advice::worklist::worklist;
use facts::fact::AuthorId;
use facts::store::Store;
use house::record::fold;

fn main() {
    let mut given = std::env::args().skip(1);
    let folder = given.next().unwrap_or_else(|| panic!("usage: time_advice SURVEY.legwork [TIMES]"));
    let times = given.next().map_or(5, |times| times.parse().unwrap());
    let store = Store::open_to_read(Path::new(&folder), AuthorId::random()).unwrap();
    let survey = fold(store.ledger(), store.survey_id()).unwrap();
    println!("{} parts, {} runs", survey.parts.len(), survey.runs.len());
    median("forecast", times, || format!("{:?}", forecast(&survey, &Options::default()).unwrap()));
    median("work list", times, || {
        format!("{:?}", worklist(&survey, &advice::worklist::Options::default()).unwrap().when_done)
    });
}

fn median(what: &str, times: usize, work: impl Fn() -> String) {
    let mut taken = Vec::new();
    let mut said = String::new();
    for _ in 0..times {
        let begun = Instant::now();
        said = work();
        taken.push(begun.elapsed().as_secs_f64() * 1e3);
    }
    taken.sort_by(f64::total_cmp);
    let mut sum = DefaultHasher::new();
    said.hash(&mut sum);
    println!("{what}: {:.1} ms (least {:.1}); says {:016x}", taken[taken.len() / 2], taken[0], sum.finish());
}
