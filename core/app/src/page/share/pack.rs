//! Writing one file for the next person. Half done is fine.

use std::path::{Path, PathBuf};

use facts::error::FactsError;
use facts::fact::FactId;
use facts::file::{FILE_EXTENSION, LeftOut, PackOptions, Packed};
use facts::store::Store;
use house::record::Survey;
use phrase::{Arg, Phrase};
use telling::report::report_page;
use telling::words::{Figures, Language};

use crate::deed::Deed;
use crate::errand::{After, Doing};
use crate::error::{GuideError, Result};
use crate::guide::{Guide, folder_name};
use crate::place::Move;
use crate::scene::Scene;
use crate::screen::{Ability, FileAsked, PressWeight, Screen, WordsRole};
use crate::sketch::{Offer, Sketch};

/// What can be left out, by the key of its option.
const LEFT_OUT: [(&str, LeftOut); 3] =
    [("owner", LeftOut::Owner), ("notes", LeftOut::Notes), ("photos", LeftOut::Photos)];

/// Where it is kept that a file of that name is there already.
const THERE: &str = "there";

pub(super) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), "share-pack", &Phrase::new("share-pack"));
    sketch.able(Ability::Share);
    if let Some(there) = scene.pending().written(THERE).filter(|there| !there.is_empty()) {
        sketch.words(WordsRole::Lead, &Phrase::new("share-pack-there").text("file", there));
        sketch.confirm("replace", &Phrase::new("share-pack-replace"));
        sketch.press(&place(scene), &Phrase::new("share-pack-elsewhere"), PressWeight::Main);
        sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
        return sketch.screen;
    }
    sketch.words(WordsRole::Lead, &Phrase::new("share-pack-lead"));
    let offers = LEFT_OUT.map(|(key, _)| {
        let words = Phrase::new(format!("share-leave-out-{key}"));
        let about = words.attribute("about");
        Offer::new(key, words).about(about)
    });
    sketch.choice("without", &Phrase::new("share-leave-out"), true, offers.into(), &[]);
    sketch.press(&place(scene), &Phrase::new("share-pack-do"), PressWeight::Main);
    sketch.press("overview", &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

/// The press that asks for the file's place. Its proposed name says whose house it is only if the file does.
fn place(scene: &Scene<'_>) -> String {
    let is_private = left_out(scene).contains(&LeftOut::Owner);
    let name = scene.survey.name.as_deref().filter(|_| !is_private).unwrap_or_default();
    FileAsked::ToWrite { name: format!("{}.{FILE_EXTENSION}", folder_name(name)) }.key()
}

fn left_out(scene: &Scene<'_>) -> Vec<LeftOut> {
    let picked = scene.pending().picked("without").unwrap_or_default();
    LEFT_OUT.iter().filter(|(key, _)| picked.iter().any(|one| one == key)).map(|(_, what)| *what).collect()
}

pub(super) fn take(guide: &mut Guide, deed: &Deed) -> Result<Move> {
    match deed {
        Deed::File { key, file } => match FileAsked::of(key) {
            Some(FileAsked::ToWrite { name }) => {
                let mut file = PathBuf::from(file);
                if file.is_dir() {
                    file.push(name);
                }
                pack(guide, file, false)
            }
            _ => Ok(Move::Stay),
        },
        Deed::Press { key } if key == "replace" => {
            let there = guide.open_survey()?.memory.pending.written(THERE).map(PathBuf::from);
            there.map_or(Ok(Move::Stay), |file| pack(guide, file, true))
        }
        Deed::Press { key } if FileAsked::of(key).is_some() => {
            guide.tell(Phrase::new("share-needs-place"));
            Ok(Move::Stay)
        }
        Deed::Pick { .. } => {
            guide.open_survey()?.memory.pending.keep(deed);
            Ok(Move::Stay)
        }
        _ => Ok(Move::Stay),
    }
}

fn pack(guide: &mut Guide, file: PathBuf, replace: bool) -> Result<Move> {
    if !replace && is_there(&file) {
        let there = file.display().to_string();
        let pending = &mut guide.open_survey()?.memory.pending;
        pending.keep(&Deed::Write { key: THERE.into(), words: there });
        return Ok(Move::Stay);
    }
    let left_out = guide.with_scene(left_out)?.into_iter().collect();
    send(guide, PackOptions { left_out, replace }, file, |guide| {
        // The choice of what is left out stays: written again, the file must not bring back a name by itself.
        guide.open_survey()?.memory.pending.keep(&Deed::Write { key: THERE.into(), words: String::new() });
        Ok(())
    })?;
    Ok(Move::Stay)
}

fn is_there(file: &Path) -> bool {
    file.symlink_metadata().is_ok()
}

/// Sends the errand that packs the open survey. `then` is done in the guide once the file is there.
pub(in crate::page) fn send(
    guide: &mut Guide,
    options: PackOptions,
    file: PathBuf,
    then: fn(&mut Guide) -> Result<()>,
) -> Result<()> {
    if !options.replace && is_there(&file) {
        return Err(FactsError::FileThere { file }.into());
    }
    let open = guide.open_survey()?;
    let said = open.store.ledger().len();
    let has_written = open.store.ledger().facts().any(|fact| fact.by() == open.store.author());
    if has_written {
        open.introduce()?;
    }
    if open.store.ledger().len() != said {
        open.read()?;
    }
    let (folder, author) = (open.store.folder().to_owned(), open.store.author());
    guide.send(Doing::Pack, move |work| {
        let mut store = Store::open(&folder, author)?;
        // Units and words are the same whatever this device has, so that the same facts give the same bytes.
        let words = Language::english(Figures::default());
        let report = |survey: &Survey, _: Option<FactId>| {
            report_page(survey, &words, &|| !work.is_stopped()).map_err(GuideError::from)
        };
        let packed = house::document::pack(&mut store, &options, &report, &file, &mut work.watch_file())?;
        Ok(After::new(move |guide| {
            // Packing looks what others wrote meanwhile.
            guide.open_survey()?.refresh()?;
            tell(guide, &file, &packed);
            then(guide)?;
            Ok(Move::Stay)
        }))
    });
    Ok(())
}

fn tell(guide: &mut Guide, file: &Path, packed: &Packed) {
    let done = Phrase::new("share-packed")
        .text("file", file.display().to_string())
        .with("facts", Arg::Count(packed.facts as u64))
        .with("photos", Arg::Count(packed.photos as u64))
        .phrase("size", size(packed.bytes));
    guide.tell_done(done);
    if !packed.lost_photos.is_empty() {
        let lost = Arg::Count(packed.lost_photos.len() as u64);
        guide.tell(Phrase::new("photo-missing").with("count", lost));
    }
}

/// A file's length for people, in powers of ten.
fn size(bytes: u64) -> Phrase {
    let (id, size) = match bytes {
        0..1_000_000 => ("share-size-kb", format!("{:.0}", (bytes as f64 / 1e3).max(1.0))),
        1_000_000..1_000_000_000 => ("share-size-mb", format!("{:.1}", bytes as f64 / 1e6)),
        _ => ("share-size-gb", format!("{:.2}", bytes as f64 / 1e9)),
    };
    Phrase::new(id).text("size", size)
}
