//! Parts in rows, a page at a time, with a way to find one by tag, room or place.

use house::record::{Part, Survey, tag_order};
use phrase::{Arg, Phrase};

use crate::place::Key;
use crate::screen::{RowEntry, WritingKind};
use crate::session::SurveySnapshot;
use crate::view::{ScreenBuilder, paging};

/// Rows of one page.
pub(super) const ROWS: usize = 90;

/// All parts in the order of their tags: S2 before S10, those without a tag last.
pub(super) fn by_tag(survey: &Survey) -> Vec<&Part> {
    let mut parts: Vec<_> = survey.parts.values().collect();
    parts.sort_by_cached_key(|part| tag_order(part.tag.as_deref()));
    parts
}

/// A place to write what is looked for, and the parts that fit, each with the key `part:<id>`. `none` is said where no part fits,
/// by itself that nothing does.
pub(super) fn draw(
    snapshot: &SurveySnapshot<'_>,
    builder: &mut ScreenBuilder<'_>,
    name: &Phrase,
    none: Option<&Phrase>,
    fits: impl Fn(&Part) -> bool,
) {
    let wanted = snapshot.pending().written(&Key::Find).unwrap_or_default().to_lowercase();
    let parts: Vec<_> = by_tag(snapshot.survey).into_iter().filter(|part| fits(part)).collect();
    let found: Vec<_> = parts.iter().filter(|part| matches(snapshot, part, &wanted)).collect();
    if parts.len() > 10 || !wanted.is_empty() {
        builder.writing(
            &Key::Find,
            &Phrase::new("free-find"),
            Some(&Phrase::new("free-find.hint")),
            WritingKind::Search,
            "",
        );
    }
    let page = paging::page(snapshot.pending()).min(found.len().saturating_sub(1) / ROWS);
    let shown = found.iter().skip(page * ROWS).take(ROWS);
    let rows: Vec<_> = shown.map(|part| row(snapshot, builder, part)).collect();
    if rows.is_empty() {
        let usual = Phrase::new(if parts.is_empty() { "free-parts-none" } else { "free-find-none" });
        let told = none.filter(|_| !parts.is_empty()).unwrap_or(&usual);
        builder.words(crate::screen::WordsRole::Plain, told);
    }
    builder.rows(name, rows);
    paging::presses_of(builder, page, found.len(), ROWS);
}

fn matches(snapshot: &SurveySnapshot<'_>, part: &Part, wanted: &str) -> bool {
    let holds = |words: &str| words.to_lowercase().contains(wanted);
    wanted.is_empty()
        || holds(&snapshot.language.say(&house::naming::of_part(snapshot.survey, part)))
        || part.place.as_deref().is_some_and(holds)
}

fn row(snapshot: &SurveySnapshot<'_>, builder: &ScreenBuilder<'_>, part: &Part) -> RowEntry {
    let photos = snapshot.survey.photos_of(Some(part.id)).count() as u64;
    let loose = snapshot.survey.wiring.loose().contains_key(&part.id);
    let remark = Phrase::new("free-part-remark")
        .with("photos", Arg::Count(photos))
        .text("loose", if loose { "yes" } else { "no" });
    let place = part.place.as_deref().map(super::text);
    let head = house::naming::of_part(snapshot.survey, part);
    builder.row(Some(Key::Part(part.id)), &head, place.as_ref(), Some(&remark))
}
