//! Facts, things and authors in words, as the shown survey has them.

use std::borrow::Cow;

use facts::fact::Wish;
use house::story::Stands;
use phrase::Phrase;
use telling::words::date_and_time;

use crate::session::SurveySnapshot;

pub(crate) use house::story::StoryTeller;

impl<'a> From<&SurveySnapshot<'a>> for Stands<'a> {
    fn from(snapshot: &SurveySnapshot<'a>) -> Self {
        Self { survey: Cow::Borrowed(snapshot.survey), ledger: snapshot.ledger, me: snapshot.me }
    }
}

/// By whose word something is to be forgotten; `None` if that did not come along.
pub(crate) fn wished_by(teller: &StoryTeller<'_>, wish: &Wish) -> Option<Phrase> {
    wish.by.map(|author| Phrase::new("wish-by").phrase("author", teller.author(author)))
}

/// The day of a time in milliseconds since 1970, of UTC.
pub(crate) fn day(ms: u64) -> String {
    date_and_time(ms).split(' ').next().unwrap_or_default().to_owned()
}
