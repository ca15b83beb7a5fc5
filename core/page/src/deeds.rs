//! From a form to deeds.

use std::path::{Path, PathBuf};

use guide::screen::{Block, Need, Screen};
use guide::{Deed, Guide, GuideError};

use crate::draw::TOUCHED_WIDTHS;
use crate::form::{Field, Given};

/// Why a form was not done to its end.
#[derive(Debug)]
pub(crate) enum Undone {
    /// There is no place for the file that it asks for.
    NoRoom(std::io::Error),
    /// A fault of this release.
    Fault,
}

impl From<GuideError> for Undone {
    fn from(_: GuideError) -> Self {
        // What a person can act on stands on the screen already.
        Self::Fault
    }
}

/// A file that a deed asked to be written.
#[derive(Debug, Clone)]
pub(crate) struct Asked {
    /// The name to save it under.
    pub(crate) name: String,
    /// Where it is written.
    pub(crate) path: PathBuf,
}

/// Does what a form says: first what was written, typed and marked and differs from what is shown, then photos and files,
/// then the press. As soon as that leads to another place the rest is left: it was meant for the screen that is gone. `room`
/// makes a folder of its own for a file to be written, where one is asked for; `screen` is what is shown.
///
/// # Errors
/// If there is no room for a file that is asked for; a fault of this release.
pub(crate) fn act(
    guide: &mut Guide,
    screen: &Screen,
    given: &Given,
    room: impl FnOnce() -> std::io::Result<PathBuf>,
) -> Result<Option<Asked>, Undone> {
    let inputs = screen.blocks.iter().filter_map(|block| changed(block, given));
    for deed in inputs.chain(photos(screen, given)) {
        guide.act(&deed)?;
        // Photos that come while one is taken in wait in line.
        let waits = matches!(deed, Deed::Photo { .. });
        if !waits && guide.screen().place != screen.place {
            return Ok(None);
        }
    }
    if given.text("back").is_some() {
        guide.act(&Deed::Back)?;
    } else if let Some((key, option)) = given.picked() {
        guide.act(&Deed::Pick { key: key.into(), picked: vec![option.into()] })?;
    } else if let Some(touch) = touched(guide, screen, given) {
        guide.act(&touch)?;
    } else if let Some(key) = given.text("press") {
        return press(guide, screen, given, key, room);
    }
    Ok(None)
}

/// What an input gives, if that is not what it shows already.
fn changed(block: &Block, given: &Given) -> Option<Deed> {
    match block {
        Block::Writing(writing) => {
            // Browsers send lines with both signs of their end (HTML, "Constructing the entry list").
            let words = given.text(&Field::Written(&writing.key).name())?.replace("\r\n", "\n");
            (words != writing.text).then(|| Deed::Write { key: writing.key.clone(), words })
        }
        Block::Number(number) => {
            let typed = given.text(&Field::Typed(&number.key).name())?;
            let unit = given.text(&Field::Unit(&number.key).name()).unwrap_or(&number.unit);
            let same = typed == number.text && (unit == number.unit || typed.is_empty());
            (!same).then(|| Deed::Measure { key: number.key.clone(), typed: typed.into(), unit: unit.into() })
        }
        Block::Choice(choice) => {
            let name = Field::Chosen(&choice.key).name();
            given.text(&name)?;
            let mut picked: Vec<&str> = given.all(&name).filter(|option| !option.is_empty()).collect();
            let shown: Vec<&str> = choice
                .options
                .iter()
                .filter(|option| option.picked)
                .map(|option| option.key.as_str())
                .collect();
            if choice.several {
                one_of_both(choice, &shown, &mut picked);
            }
            (picked != shown).then(|| Deed::Pick {
                key: choice.key.clone(),
                picked: picked.into_iter().map(str::to_owned).collect(),
            })
        }
        _ => None,
    }
}

/// A touch on a photo of which a part is chosen. The browser says where in pixels of what it shows: how high that is follows from
/// the photo.
fn touched(guide: &Guide, screen: &Screen, given: &Given) -> Option<Deed> {
    screen.blocks.iter().find_map(|block| {
        let Block::PhotoPart(part) = block else { return None };
        TOUCHED_WIDTHS.iter().find_map(|wide| {
            let name = Field::Touch(&part.key, *wide).name();
            let at = |axis: &str| given.text(&format!("{name}.{axis}"))?.parse::<u32>().ok();
            let (x, y) = (at("x")?, at("y")?);
            let (width, height) = guide.photo_size(&part.photo.photo).ok()?;
            let shown_high = f64::from(*wide) * f64::from(height) / f64::from(width.max(1));
            let share = |at: u32, side: f64| {
                #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 10,000")]
                let parts = (f64::from(at) / side.max(1.0) * 10_000.0).round().clamp(0.0, 10_000.0) as u32;
                parts
            };
            let (across, down) = (share(x, f64::from(*wide)), share(y, shown_high));
            Some(Deed::Touch { key: part.key.clone(), across, down })
        })
    })
}

/// “Not sure” excludes all others: of the two, what was marked now counts.
fn one_of_both(choice: &guide::screen::ChoiceBlock, shown: &[&str], picked: &mut Vec<&str>) {
    let alone = |key: &str| choice.options.iter().any(|option| option.unsure && option.key == key);
    if picked.iter().any(|key| alone(key)) && picked.iter().any(|key| !alone(key)) {
        let was_unsure = shown.iter().any(|key| alone(key));
        picked.retain(|key| alone(key) != was_unsure);
    }
}

/// The photos that came with a form.
fn photos<'a>(screen: &'a Screen, given: &'a Given) -> impl Iterator<Item = Deed> + 'a {
    let slots = screen.blocks.iter().filter_map(|block| match block {
        Block::PhotoSlot(slot) => Some(&slot.key),
        _ => None,
    });
    slots.flat_map(|key| {
        let name = Field::Photo(key).name();
        let files: Vec<_> = given.files_of(&name).cloned().collect();
        files.into_iter().map(|file| Deed::Photo { key: key.clone(), file: file.display().to_string() })
    })
}

fn press(
    guide: &mut Guide,
    screen: &Screen,
    given: &Given,
    key: &str,
    room: impl FnOnce() -> std::io::Result<PathBuf>,
) -> Result<Option<Asked>, Undone> {
    let need = screen.blocks.iter().find_map(|block| match block {
        Block::Press(press) if press.key == key => press.need.as_ref(),
        _ => None,
    });
    match need {
        Some(Need::FileToRead { .. }) => {
            let name = Field::File(key).name();
            if let Some(file) = given.files_of(&name).next() {
                guide.act(&Deed::File { key: key.into(), file: file.display().to_string() })?;
            }
            Ok(None)
        }
        Some(Need::FileToWrite { name, .. } | Need::FileToShare { name, .. }) => {
            let name =
                Path::new(name).file_name().map_or_else(|| "file".into(), |name| name.display().to_string());
            let path = room().map_err(Undone::NoRoom)?.join(&name);
            guide.act(&Deed::File { key: key.into(), file: path.display().to_string() })?;
            Ok(Some(Asked { name, path }))
        }
        Some(Need::Photo { .. }) | None => {
            guide.act(&Deed::Press { key: key.into() })?;
            Ok(None)
        }
    }
}
