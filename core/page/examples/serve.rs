//! Serves the surveys of a folder for the browser's tests: `serve HOME [FILL] [LANGUAGE]`. FILL is `-` for nothing, `whole`
//! for a home with one of everything, or a number of parts for one large house. LANGUAGE is `english`, `lengthened` or
//! `right-to-left`. It prints the address and ends when its standard input does.

#![expect(clippy::unwrap_used, reason = "it serves the tests, and a home that cannot be filled ends it")]

#[path = "../../guide/tests/all/whole_house.rs"]
#[expect(dead_code, reason = "the guide's tests use more of it")]
mod whole_house;

use std::io::Read;
use std::path::{Path, PathBuf};

use facts::fact::{AuthorId, Edit};
use facts::store::Store;
use telling::words::Figures;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut arguments = std::env::args().skip(1);
    let home = PathBuf::from(arguments.next().ok_or("serve HOME [FILL] [LANGUAGE]")?);
    match arguments.next().as_deref() {
        None | Some("-") => {}
        Some("whole") => drop(whole_house::fill(&home)),
        Some(parts) => large(&home, parts.parse()?)?,
    }
    let language = match arguments.next().as_deref() {
        Some("lengthened") => guide::lengthened,
        Some("right-to-left") => guide::right_to_left,
        _ => guide::english,
    };
    let mut guide = guide::Guide::at(&home, whole_house::ann(), language(Figures::default()))?;
    guide.work_out_with(whole_house::quick());
    let served = page::serve(guide, page::worded(language(Figures::default())))?;
    println!("{}", served.address());
    std::io::stdin().read_to_end(&mut Vec::new())?;
    Ok(served.stop()?)
}

/// One large house.
fn large(home: &Path, parts: usize) -> Result<(), Box<dyn std::error::Error>> {
    let mut store = Store::create(&home.join("large.legwork"), AuthorId::random())?;
    let survey = store.survey_id().subject();
    store.write(&[Edit::new(survey, "is", "survey"), Edit::new(survey, "name", "Large House")])?;
    store.write(&houses::large(parts).1)?;
    Ok(())
}
