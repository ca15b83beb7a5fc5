//! Numbers that a message itself holds or counts by, written with the marks of its locale.

use fluent_bundle::FluentValue;
use intl_memoizer::Memoizable;
use intl_memoizer::concurrent::IntlLangMemoizer;
use unic_langid::LanguageIdentifier;

use super::Marks;

impl Memoizable for Marks {
    type Args = ();
    type Error = std::convert::Infallible;

    fn construct(language: LanguageIdentifier, (): ()) -> Result<Self, Self::Error> {
        Ok(Self::of(&language))
    }
}

/// A number in a message; `None` for what is none.
pub(super) fn written(value: &FluentValue<'_>, memoizer: &IntlLangMemoizer) -> Option<String> {
    let FluentValue::Number(number) = value else { return None };
    let plain = number.as_string();
    let write = |marks: &Marks| marks.written(&plain, false);
    memoizer.with_try_get::<Marks, _, _>((), write).ok()
}
