//! Reading a crop to a label on one core, and loading the model. The label is drawn by `tests/photos/make.py`; the model is made by
//! `core/print/model/make`: `LEGWORK_PRINT_MODEL` and `LEGWORK_PHOTOS` name their folders, by default those that `tests/rooms/print`
//! leaves. Says first how much memory a crop out of a photo of twelve million pixels takes, and fails above 160 MB.
#![expect(
    clippy::expect_used,
    clippy::unwrap_used,
    reason = "a bench stops at the first thing that is wrong"
)]

use std::hint::black_box;
use std::io::Cursor;
use std::path::{Path, PathBuf};

use criterion::{Criterion, criterion_group, criterion_main};
use facts::photo::{Area, Picture};
use image::{ImageFormat, RgbImage};
use print::Model;

#[global_allocator]
static MEMORY: peak_alloc::PeakAlloc = peak_alloc::PeakAlloc;

/// The most memory that reading may take, in megabytes.
const MOST_MEGABYTES: f32 = 160.0;

fn named(variable: &str, otherwise: &str) -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(otherwise);
    std::env::var_os(variable).map_or(here, PathBuf::from)
}

/// A photo of a camera in which the label's crop lies: four thousand by three thousand pixels.
fn within_a_large_photo(crop: &Picture) -> (Picture, Area) {
    let label = image::load_from_memory_with_format(crop.bytes(), ImageFormat::Jpeg).unwrap().into_rgb8();
    let mut photo = RgbImage::from_pixel(4_000, 3_000, image::Rgb([90, 92, 88]));
    image::imageops::replace(&mut photo, &label, 1_500, 1_200);
    let mut bytes = Cursor::new(Vec::new());
    photo.write_to(&mut bytes, ImageFormat::Jpeg).unwrap();
    let area = Area { left: 1_500, top: 1_200, width: label.width(), height: label.height() };
    (Picture::clean(&bytes.into_inner()).unwrap(), area)
}

fn crop(criterion: &mut Criterion) {
    let folder = named("LEGWORK_PRINT_MODEL", "target/print-model");
    let photo = named("LEGWORK_PHOTOS", "target/photos/one").join("0000-flat24.jpg");
    let picture = Picture::read(&photo).expect("a photo is there: tests/rooms/print makes it").unwrap();
    let (large, area) = within_a_large_photo(&picture);
    MEMORY.reset_peak_usage();
    let model = Model::load_for(&folder, 1).expect("the model is there: core/print/model/make");
    model.read(&large, Some(area), &mut |_| true).unwrap();
    let peak = MEMORY.peak_usage_as_mb();
    println!("a crop out of twelve million pixels: at most {peak:.0} MB");
    assert!(peak <= MOST_MEGABYTES, "more than {MOST_MEGABYTES} MB");
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
