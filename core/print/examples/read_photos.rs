//! Reads photos and writes what was read, a line of JSON a photo:
//!
//!     read_photos MODEL FOLDER OUT [PLACE COUNT]
//!
//! Of the photos of the folder (`*.jpg`) in the order of their names, those at PLACE, PLACE + COUNT and so on. At the end it
//! says how long a photo took, and the most memory.

use std::error::Error;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::time::Instant;

use facts::photo::Picture;
use print::{Line, Model};
use serde_json::{Value, json};

#[global_allocator]
static MEMORY: peak_alloc::PeakAlloc = peak_alloc::PeakAlloc;

fn line(line: &Line) -> Value {
    let letters: Vec<Value> =
        line.letters.iter().map(|letter| json!([letter.sign, letter.certainty, letter.at])).collect();
    json!({ "letters": letters, "corners": line.corners.0, "is_cut": line.is_cut })
}

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [model, folder, out, share @ ..] = &arguments[..] else {
        return Err("read_photos MODEL FOLDER OUT [PLACE COUNT]".into());
    };
    let (place, count): (usize, usize) = match share {
        [place, count] => (place.parse()?, count.parse()?),
        _ => (0, 1),
    };
    let started = Instant::now();
    let model = Model::load_for(Path::new(model), 1)?;
    let loaded = started.elapsed();
    let mut photos: Vec<PathBuf> =
        std::fs::read_dir(folder)?.map(|entry| entry.map(|entry| entry.path())).collect::<Result<_, _>>()?;
    photos.retain(|path| path.extension().is_some_and(|ending| ending == "jpg"));
    photos.sort();
    let mut out = std::io::BufWriter::new(std::fs::File::create(out)?);
    let (mut sum, mut longest, mut read) = (0.0, 0.0_f64, 0.0);
    for path in photos.iter().skip(place).step_by(count) {
        let started = Instant::now();
        let picture = Picture::read(path)??;
        let rows: Vec<Value> = match model.read(&picture, None, &mut |_| true) {
            Ok(print) => print
                .rows
                .iter()
                .map(|row| json!(row.looks.each_ref().map(|look| look.as_ref().map(line))))
                .collect(),
            Err(print::PrintError::NoText) => vec![],
            Err(error) => return Err(error.into()),
        };
        let took = started.elapsed().as_secs_f64();
        (sum, longest, read) = (sum + took, longest.max(took), read + 1.0);
        let file = path.file_name().and_then(|name| name.to_str()).ok_or("a name that is no text")?;
        serde_json::to_writer(&mut out, &json!({ "file": file, "seconds": took, "rows": rows }))?;
        out.write_all(b"\n")?;
    }
    out.flush()?;
    println!(
        "{read} photos, {:.0} ms each on one core, at most {:.0} ms; loaded in {:.0} ms; at most {:.0} MB of memory",
        sum / read * 1e3,
        longest * 1e3,
        loaded.as_secs_f64() * 1e3,
        MEMORY.peak_usage_as_mb()
    );
    Ok(())
}
