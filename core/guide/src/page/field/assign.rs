//! Saying of photos what they show: one or many at once, of a part that is there or of a new one.
//!
//! Choose the photos, choose the part: two touches for one photo, three with another role than the print.

use std::collections::{BTreeMap, BTreeSet};

use facts::fact::SubjectId;
use house::naming;
use house::record::{Asked, Part, PartKind, Photo, PhotoRole, field};
use phrase::{Arg, Phrase};

use super::{add, builder, card, finder, write};
use crate::error::Result;
use crate::place::{Choice, Key, Move, Place, Question};
use crate::question::cable::laid;
use crate::question::{Answer, Told};
use crate::screen::{PhotoShown, PressWeight, WordsRole};
use crate::session::{PrintRead, Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// The most photos of one page, and the most prints to be typed.
const PHOTOS: usize = 50;
const PRINTS: usize = 20;

/// The most cables of one page: the rest is looked for.
const CABLES: usize = 30;

/// So many letters of what a photo says stand beside it.
const MOST_LETTERS: usize = 60;

/// New parts that a photo may show.
const NEW: [PartKind; 6] = [
    PartKind::Splitter,
    PartKind::Amplifier,
    PartKind::Tap,
    PartKind::EntryFilter,
    PartKind::Outlet,
    PartKind::Unknown,
];

const ROLES: [PhotoRole; 4] = [PhotoRole::Label, PhotoRole::Place, PhotoRole::Before, PhotoRole::After];

/// The roles of a photo as options.
pub(super) fn role_offers() -> Vec<Offer> {
    let words = |role: &PhotoRole| Phrase::new(format!("free-role-{}", role.key()));
    ROLES.iter().map(|role| Offer::new(role, words(role))).collect()
}

/// Photos that nobody assigned yet, in the order in which they were taken.
pub(super) fn waiting<'a>(snapshot: &SurveySnapshot<'a>) -> Vec<&'a Photo> {
    let mut photos: Vec<_> = snapshot.survey.photos_of(None).collect();
    photos.sort_by_cached_key(|photo| (card::born_ms(snapshot, photo.id), photo.id));
    photos
}

/// The number of every photo that was ever taken in, oldest first: it stays whatever is assigned or removed.
pub(super) fn numbers(snapshot: &SurveySnapshot<'_>) -> BTreeMap<SubjectId, u64> {
    let is_photo =
        |id: &SubjectId| snapshot.ledger.shown(*id, field::IS).is_some_and(|fact| fact.value() == "photo");
    let mut photos: Vec<_> = snapshot.ledger.subjects().filter(is_photo).collect();
    photos.sort_by_cached_key(|photo| (card::born_ms(snapshot, *photo), *photo));
    photos.into_iter().zip(1..).collect()
}

/// A photo by its number, what its file was called, and when it was taken or else added.
pub(super) fn photo_name(
    snapshot: &SurveySnapshot<'_>,
    numbers: &BTreeMap<SubjectId, u64>,
    photo: &Photo,
) -> Phrase {
    let number = Arg::Count(numbers.get(&photo.id).copied().unwrap_or_default());
    let added = || telling::words::date_and_time(card::born_ms(snapshot, photo.id));
    let name = match (&photo.file_name, photo.taken) {
        (None, None) => Phrase::new("free-photo-name").text("when", added()),
        (Some(name), None) => Phrase::new("free-photo-name-own").text("name", name).text("when", added()),
        (None, Some(taken)) => Phrase::new("free-photo-name-taken").text("taken", taken.to_minute()),
        (Some(name), Some(taken)) => {
            Phrase::new("free-photo-name-both").text("name", name).text("taken", taken.to_minute())
        }
    };
    name.with("number", number)
}

/// A photo's name with what is printed in it, as far as that was read: it says which part it shows.
fn with_print(snapshot: &SurveySnapshot<'_>, photo: &Photo, name: Phrase) -> Phrase {
    match snapshot.print_of(photo) {
        Some(PrintRead::Read(read)) => {
            let words = read.suggestion.text.lines().collect::<Vec<_>>().join(", ");
            Phrase::new("free-photo-reads").phrase("name", name).text("words", shortened(&words))
        }
        Some(PrintRead::Waits(_) | PrintRead::Failed(_) | PrintRead::Lost) | None => name,
    }
}

/// The beginning of a text that is longer than a line.
fn shortened(text: &str) -> String {
    match text.char_indices().nth(MOST_LETTERS) {
        Some((end, _)) => format!("{} …", text.get(..end).unwrap_or(text).trim_end()),
        None => text.to_owned(),
    }
}

fn chosen(snapshot: &SurveySnapshot<'_>) -> BTreeSet<SubjectId> {
    let waiting: BTreeSet<_> = snapshot.survey.photos_of(None).map(|photo| photo.id).collect();
    let picked: Vec<Key> = snapshot.pending().picked(&Key::Chosen).unwrap_or_default();
    let photo = |key: Key| match key {
        Key::Photo(photo) => Some(photo).filter(|id| waiting.contains(id)),
        _ => None,
    };
    picked.into_iter().filter_map(photo).collect()
}

pub(crate) fn show<'a>(snapshot: &SurveySnapshot<'a>) -> ScreenBuilder<'a> {
    let mut builder = builder(snapshot, &Phrase::new("free-assign"));
    let waiting = waiting(snapshot);
    let chosen = chosen(snapshot);
    let lead = if waiting.is_empty() { "free-assign-none" } else { "free-assign-lead" };
    builder.words(WordsRole::Lead, &Phrase::new(lead));
    let numbers = numbers(snapshot);
    let shown = waiting.iter().take(PHOTOS).map(|photo| {
        let name = with_print(snapshot, photo, photo_name(snapshot, &numbers, photo));
        let picked = Some(chosen.contains(&photo.id));
        PhotoShown { picked, ..builder.photo(photo.id, &name, Some(Key::Photo(photo.id))) }
    });
    let photos = shown.collect();
    builder.photo_slot(&Key::PhotoSlot, &Phrase::new("free-burst-photo"), photos, true);
    if waiting.len() > PHOTOS {
        let rest = Arg::Count((waiting.len() - PHOTOS) as u64);
        builder.words(WordsRole::Aside, &Phrase::new("free-photos-rest").with("rest", rest));
    }
    prints(snapshot, &mut builder);
    if waiting.is_empty() {
        return builder;
    }
    builder.press(&Key::All, &Phrase::new("free-choose-all"), PressWeight::Other);
    if !chosen.is_empty() {
        builder.press(&Key::None, &Phrase::new("free-choose-none"), PressWeight::Other);
    }
    builder.choice(&Key::Role, &Phrase::new("free-role"), false, role_offers(), &[PhotoRole::Label]);
    let count = Arg::Count(chosen.len() as u64);
    let new = |kind: &PartKind| {
        let named = naming::kind(&Part::new(SubjectId::random(), *kind));
        builder.row(
            Some(Key::NewPart(*kind)),
            &Phrase::new("free-assign-new").phrase("part", named),
            None,
            None,
        )
    };
    let rows = NEW.iter().map(new).collect();
    builder.rows(&Phrase::new("free-assign-to-new").with("count", count.clone()), rows);
    let to = Phrase::new("free-assign-to").with("count", count.clone());
    let runs = runs(snapshot);
    let no_part = Phrase::new("free-find-no-part");
    finder::draw(snapshot, &mut builder, &to, (!runs.is_empty()).then_some(&no_part), |_| true);
    let row =
        |run: &SubjectId| builder.row(Some(Key::Run(*run)), &naming::run(snapshot.survey, *run), None, None);
    let rows = runs.iter().take(CABLES).map(row).collect();
    builder.rows(&Phrase::new("free-assign-to-cable").with("count", count), rows);
    if runs.len() > CABLES {
        let rest = Arg::Count((runs.len() - CABLES) as u64);
        builder.words(WordsRole::Aside, &Phrase::new("free-cables-rest").with("rest", rest));
    }
    builder
}

/// The cables whose jacket a photo may show: those that fit what is looked for.
fn runs(snapshot: &SurveySnapshot<'_>) -> Vec<SubjectId> {
    let wanted = snapshot.pending().written(&Key::Find).unwrap_or_default().to_lowercase();
    let is_found = |run: &SubjectId| {
        let name = snapshot.language.say(&naming::run(snapshot.survey, *run));
        name.to_lowercase().contains(&wanted)
    };
    laid(snapshot.survey).into_iter().map(|run| run.id).filter(is_found).collect()
}

/// Parts whose print was photographed and is still to be typed.
fn unread<'a>(snapshot: &SurveySnapshot<'a>) -> Vec<&'a Part> {
    let survey = snapshot.survey;
    let pictured: BTreeSet<_> = survey
        .photos
        .values()
        .filter(|photo| photo.role == Some(PhotoRole::Label))
        .filter_map(|photo| photo.of)
        .collect();
    let open = |part: &&Part| {
        pictured.contains(&part.id) && part.label.is_none() && survey.answer(part.id, Asked::Label).is_none()
    };
    finder::by_tag(survey).into_iter().filter(open).collect()
}

fn prints(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    let row = |part: &&Part| {
        builder.row(Some(Key::Print(part.id)), &naming::of_part(snapshot.survey, part), None, None)
    };
    let rows = unread(snapshot).iter().take(PRINTS).map(row).collect();
    builder.rows(&Phrase::new("free-prints"), rows);
}

pub(crate) fn pressed(session: &mut Session, key: &Key) -> Result<Move> {
    let mut now = session.with_snapshot(chosen)?;
    match key {
        Key::Print(part) => return Ok(Move::Go(Place::Ask(Question::Label(*part)))),
        Key::Photo(photo) => {
            if !now.remove(photo) {
                now.insert(*photo);
            }
            return choose(session, now);
        }
        Key::None => return choose(session, BTreeSet::new()),
        Key::All => {
            let all = session.with_snapshot(|snapshot| {
                waiting(snapshot).iter().take(PHOTOS).map(|photo| photo.id).collect()
            });
            return choose(session, all?);
        }
        _ => {}
    }
    let told = session.with_snapshot(|snapshot| assign(snapshot, key, now))?;
    let Some(told) = told else { return Ok(Move::Stay) };
    if write(session, told)? {
        choose(session, BTreeSet::new())?;
        // What the last photos showed says nothing of the next ones.
        session.open_survey()?.memory.pending.pick(&Key::Role, [PhotoRole::Label]);
    }
    Ok(Move::Stay)
}

fn choose(session: &mut Session, chosen: BTreeSet<SubjectId>) -> Result<Move> {
    session.open_survey()?.memory.pending.pick(&Key::Chosen, chosen.into_iter().map(Key::Photo));
    Ok(Move::Stay)
}

/// Says that the chosen photos show a part or a cable; the only photo there is needs no choosing. `None` if the key names none.
fn assign(snapshot: &SurveySnapshot<'_>, key: &Key, mut chosen: BTreeSet<SubjectId>) -> Option<Told<Answer>> {
    if chosen.is_empty()
        && let [only] = waiting(snapshot).as_slice()
    {
        chosen.insert(only.id);
    }
    let role = snapshot.pending().one(&Key::Role).unwrap_or(PhotoRole::Label);
    let (mut answer, of) = match key {
        Key::Part(part) if snapshot.survey.parts.contains_key(part) => (Answer::new(), *part),
        Key::Run(run) if snapshot.survey.runs.contains_key(run) => (Answer::new(), *run),
        Key::NewPart(kind) if NEW.contains(kind) => add::loose(snapshot, *kind),
        _ => return None,
    };
    if chosen.is_empty() {
        return Some(Err(Phrase::new("free-choose-first")));
    }
    for photo in chosen {
        answer = answer.says(photo, field::photo::OF, &of).says(photo, field::photo::ROLE, &role);
    }
    Some(Ok(answer))
}
