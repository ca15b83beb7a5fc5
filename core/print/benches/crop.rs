//! Reading a crop to a label on one core, and loading the model. The label is drawn by `tests/photos/make.py`; the model is made by
//! `core/print/model/make`: `LEGWORK_PRINT_MODEL` and `LEGWORK_PHOTOS` name their folders, by default those that `tests/rooms/print`
//! leaves. How much memory it takes is held by `tests/all/memory.rs`.
#![expect(
    clippy::expect_used,
    clippy::unwrap_used,
    reason = "a bench stops at the first thing that is wrong"
)]

use std::hint::black_box;
use std::path::{Path, PathBuf};

use criterion::{Criterion, criterion_group, criterion_main};
use facts::photo::Picture;
use print::Model;

fn named(variable: &str, otherwise: &str) -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(otherwise);
    std::env::var_os(variable).map_or(here, PathBuf::from)
}

fn crop(criterion: &mut Criterion) {
    let folder = named("LEGWORK_PRINT_MODEL", "target/print-model");
    let photo = named("LEGWORK_PHOTOS", "target/photos/one").join("0000-flat24.jpg");
    let picture = Picture::read(&photo).expect("a photo is there: tests/rooms/print makes it").unwrap();
    let model = Model::load_for(&folder, 1).expect("the model is there: core/print/model/make");
    let pixels = picture.pixels(None).unwrap();
    let mut group = criterion.benchmark_group("print");
    group.sample_size(10);
    group.bench_function("crop_on_one_core", |bencher| {
        bencher.iter(|| black_box(model.read_pixels(&pixels, &mut |_| true).unwrap()));
    });
    group.bench_function("load", |bencher| bencher.iter(|| black_box(Model::load_for(&folder, 1).unwrap())));
    group.finish();
}

criterion_group!(benches, crop);
criterion_main!(benches);
