//! What the model and reading with it take at most: bytes on the disk of a phone, and memory.
#![expect(clippy::unwrap_used, reason = "a failed test is what is wanted")]

use std::io::Cursor;
use std::process::Command;

use facts::photo::{Area, Picture};
use image::{ImageFormat, RgbImage};
use print::Model;

use crate::with_model::{folder, photo};

/// An app carries the model: so many bytes at most.
const MOST_BYTES: u64 = 12_000_000;
/// The most memory that reading a crop may take, in megabytes, the model along with it.
const MOST_MEGABYTES: f32 = 160.0;
/// The same where nobody crops: all of the photo's pixels are held along.
const MOST_WHOLE_MEGABYTES: f32 = 180.0;
/// Says that no other test runs in this process.
const ALONE: &str = "LEGWORK_TEST_ALONE";
const THIS: &str = "memory::a_crop_out_of_a_large_photo_takes_little_memory";

#[test]
#[ignore = "needs the model"]
fn the_model_is_small_enough_to_be_carried() {
    let names = include_str!("../../model/sums").lines().filter_map(|line| line.split_once("  "));
    let sizes: Vec<u64> = names.map(|(_, name)| folder().join(name).metadata().unwrap().len()).collect();
    let whole: u64 = sizes.iter().sum();
    assert!(sizes.len() == 5 && whole <= MOST_BYTES, "{sizes:?}: {whole} of {MOST_BYTES}");
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

#[test]
#[ignore = "needs the model and photos"]
fn a_crop_out_of_a_large_photo_takes_little_memory() {
    if std::env::var_os(ALONE).is_none() {
        // What other tests of this process hold meanwhile would count along.
        let program = std::env::current_exe().unwrap();
        let mut again = Command::new(program);
        again.args(["--exact", THIS, "--include-ignored", "--nocapture"]).env(ALONE, "yes");
        let run = again.output().unwrap();
        let said = String::from_utf8_lossy(&run.stdout);
        print!("{said}");
        assert!(run.status.success() && said.contains("1 passed"), "{said}");
        return;
    }
    let (large, area) = within_a_large_photo(&photo().0);
    let model = Model::load_for(&folder(), 4).unwrap();
    let most = |what: &str, part: Option<Area>| {
        crate::MEMORY.reset_peak_usage();
        model.read(&large, part, &mut |_| true).unwrap();
        let peak = crate::MEMORY.peak_usage_as_mb();
        println!("{what}: at most {peak:.0} MB");
        peak
    };
    let crop = most("a crop", Some(area));
    // Print that is small in its crop is looked at closer.
    let around = Area {
        left: area.left - 400,
        top: area.top - 400,
        width: area.width + 800,
        height: area.height + 800,
    };
    let small = most("a crop of small print", Some(around));
    let whole = most("all of the photo", None);
    // Less than its weights take would say that nothing was counted.
    assert!(crop >= 30.0 && crop < small && small <= MOST_MEGABYTES, "{crop} and {small} MB");
    assert!(whole <= MOST_WHOLE_MEGABYTES, "{whole} MB");
}
