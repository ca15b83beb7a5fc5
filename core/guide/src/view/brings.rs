//! What a file would bring, in words.

use facts::fact::{AuthorId, SubjectId};
use facts::file::{AuthorShare, LeftOut, Look};
use house::story;
use phrase::{Arg, Phrase};

use super::teller::{StoryTeller, wished_by};
use crate::screen::{RowEntry, WordsRole};
use crate::view::ScreenBuilder;

/// How many fields or authors of one kind are named.
const MOST_NAMED: usize = 20;

/// How many characters of an id stand for somebody without a name.
const SHORT: usize = 8;

/// Tells what a look into a file showed, with the names that things have here and in the file.
pub(crate) fn tell(builder: &mut ScreenBuilder<'_>, look: &Look, me: AuthorId) {
    let teller = look.names.as_deref().and_then(|ledger| StoryTeller::folded(ledger, look.survey, me).ok());
    let teller = teller.as_ref();
    let count = |count: usize| Arg::Count(count as u64);
    let name = match look.name.as_deref().filter(|name| !name.trim().is_empty()) {
        Some(name) => Phrase::new("text").text("text", name),
        None => Phrase::new("home-untitled"),
    };
    let of = Phrase::new("share-look-of")
        .phrase("name", name)
        .with("facts", count(look.facts))
        .with("photos", count(look.photos));
    builder.words(WordsRole::Lead, &of);
    for what in &look.left_out {
        builder.words(WordsRole::Aside, &Phrase::new(without(*what)));
    }
    if look.same_survey {
        let brings = Phrase::new("share-look-brings")
            .with("facts", count(look.new_facts))
            .with("photos", count(look.new_photos))
            .with("disagreements", count(look.new_disagreements.len()))
            .with("forgotten", count(look.forgotten.len()));
        builder.words(WordsRole::Plain, &brings);
    }
    let authors: Vec<RowEntry> =
        look.authors.iter().take(MOST_NAMED).map(|one| share(builder, one, me)).collect();
    builder.rows(&Phrase::new("share-look-from"), authors);
    more(builder, look.authors.len());
    for (title, fields) in
        [("share-look-disagreements", &look.new_disagreements), ("share-look-settles", &look.settled)]
    {
        let rows: Vec<RowEntry> = fields
            .iter()
            .take(MOST_NAMED)
            .map(|(subject, field)| builder.row(None, &named(teller, *subject, field), None, None))
            .collect();
        builder.rows(&Phrase::new(title), rows);
        more(builder, fields.len());
    }
    let rows: Vec<RowEntry> = look
        .forgotten
        .iter()
        .take(MOST_NAMED)
        .map(|wish| {
            let by = teller.and_then(|teller| wished_by(teller, wish));
            builder.row(None, &named(teller, wish.subject, &wish.field), by.as_ref(), None)
        })
        .collect();
    builder.rows(&Phrase::new("share-look-forgets"), rows);
    more(builder, look.forgotten.len());
}

/// The message that says what was left out.
const fn without(what: LeftOut) -> &'static str {
    match what {
        LeftOut::Notes => "share-without-notes",
        LeftOut::Owner => "share-without-owner",
        LeftOut::Photos => "share-without-photos",
        LeftOut::Places => "share-without-places",
        LeftOut::PhotoRecords => "share-without-photo-records",
    }
}

fn share(builder: &ScreenBuilder<'_>, share: &AuthorShare, me: AuthorId) -> RowEntry {
    let author = match &share.name {
        _ if share.author == me => Phrase::new("author-you"),
        Some(name) => Phrase::new("author-named").text("name", name),
        None => {
            let short: String = share.author.to_string().chars().take(SHORT).collect();
            Phrase::new("author-unnamed").text("id", short)
        }
    };
    let says = Phrase::new("share-records").with("count", Arg::Count(share.new_facts as u64));
    builder.row(None, &author, Some(&says), None)
}

fn named(teller: Option<&StoryTeller<'_>>, subject: SubjectId, field: &str) -> Phrase {
    match teller {
        Some(teller) => teller.about(subject, field),
        None => Phrase::new("told-field-of")
            .phrase("field", story::field_name(field))
            .phrase("thing", Phrase::new("told-thing-new")),
    }
}

fn more(builder: &mut ScreenBuilder<'_>, all: usize) {
    if let Some(count) = all.checked_sub(MOST_NAMED).filter(|count| *count > 0) {
        builder
            .words(WordsRole::Aside, &Phrase::new("share-and-more").with("count", Arg::Count(count as u64)));
    }
}
