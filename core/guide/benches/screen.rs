//! The screen after a deed in a survey of 300 parts: typing, answering with a write to the disk, and the overview.
#![allow(missing_docs, reason = "criterion's macros make items without docs")]
#![allow(clippy::unwrap_used, reason = "a bench that cannot begin stops")]

use std::hint::black_box;
use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use facts::fact::{AuthorId, Edit};
use facts::store::Store;
use guide::{Deed, Guide};
use tempfile::TempDir;

const PARTS: usize = 300;

fn large() -> (TempDir, Guide) {
    let home = tempfile::tempdir().unwrap();
    let author = AuthorId::random();
    let folder = home.path().join("large.legwork");
    let mut store = Store::create(&folder, author).unwrap();
    let survey = store.survey_id().subject();
    let told = [Edit::new(survey, "is", "survey"), Edit::new(survey, "name", "Large")];
    store.write(&told).unwrap();
    store.write(&houses::large(PARTS).1).unwrap();
    drop(store);
    let mut guide =
        Guide::at(home.path(), author, guide::english(telling::words::Figures::default())).unwrap();
    guide.open(&folder).unwrap();
    (home, guide)
}

fn press(guide: &mut Guide, key: &str) {
    guide.act(&Deed::Press { key: key.into() }).unwrap();
}

fn screens(criterion: &mut Criterion) {
    let (_home, mut guide) = large();
    let mut group = criterion.benchmark_group("screen");
    group.sample_size(20);

    press(&mut guide, "overview");
    group.bench_function("overview", |bench| bench.iter(|| black_box(guide.screen())));

    press(&mut guide, "cables");
    press(&mut guide, "ask:1");
    assert_eq!(guide.screen().name, "ask-cable");
    let mut typed = 0_u32;
    group.bench_function("typing", |bench| {
        bench.iter(|| {
            typed = (typed + 1) % 100;
            let deed = Deed::Measure { key: "length".into(), typed: typed.to_string(), unit: "m".into() };
            guide.act(&deed).unwrap();
            black_box(guide.screen())
        });
    });

    let mut own = true;
    group.bench_function("answering", |bench| {
        bench.iter_custom(|times| {
            let mut spent = Duration::ZERO;
            for _ in 0..times {
                for key in ["overview", "house", "ask:0"] {
                    press(&mut guide, key);
                }
                own = !own;
                let picked = vec![if own { "own" } else { "rented" }.to_owned()];
                let begun = Instant::now();
                guide.act(&Deed::Pick { key: "whose".into(), picked }).unwrap();
                black_box(guide.screen());
                spent += begun.elapsed();
            }
            spent
        });
    });
    group.finish();
}

criterion_group!(benches, screens);
criterion_main!(benches);
