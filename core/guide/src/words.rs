//! The guide's words: English, and two pseudo-languages that show what is forgotten or too narrow.

use std::borrow::Cow;

use telling::words::{Figures, Language};

/// The English messages of the guide, one file a subject.
const ENGLISH: &[&str] = &[
    include_str!("../words/en/guide.ftl"),
    include_str!("../words/en/ask.ftl"),
    include_str!("../words/en/pictures.ftl"),
    include_str!("../words/en/result.ftl"),
    include_str!("../words/en/field.ftl"),
    include_str!("../words/en/share.ftl"),
];

/// English with the guide's words.
pub fn english(figures: Figures) -> Language {
    Language::english(figures).with(ENGLISH)
}

/// The language for a tag that a system gives for its user (RFC 5646, such as `en-GB`): numbers and dates as its region
/// writes them. What has no words yet is said in plain English. `en-XA` and `ar-XB` are the pseudo-languages.
pub fn language_of(tag: &str, figures: Figures) -> Language {
    match tag {
        "en-XA" => lengthened(figures),
        "ar-XB" => right_to_left(figures),
        _ if tag == "en" || tag.starts_with("en-") => english_under(tag, figures),
        _ => english(figures),
    }
}

/// English with an accent on every letter and every vowel twice: about 40 % longer, as many languages are. What has no
/// accent on a screen is not a message; what does not fit would not fit in those languages either.
pub fn lengthened(figures: Figures) -> Language {
    english_under("en-XA", figures).changed_by(lengthen)
}

/// English with an accent on every letter, read from right to left. What is drawn from the left all the same shows a
/// shell that forgot the direction.
pub fn right_to_left(figures: Figures) -> Language {
    english_under("ar-XB", figures).changed_by(turn).reading_right_to_left()
}

/// English under another locale: of one of its regions, or one that the Unicode CLDR sets aside for pseudo-languages.
fn english_under(locale: &str, figures: Figures) -> Language {
    Language::of(&locale.parse().unwrap_or_default(), figures.length_unit).with(ENGLISH)
}

fn lengthen(text: &str) -> Cow<'_, str> {
    let twice = |sign: char| if "aeiouyAEIOUY".contains(sign) { 2 } else { 1 };
    text.chars().flat_map(|sign| std::iter::repeat_n(accented(sign), twice(sign))).collect()
}

/// Right-to-left mark and override around the letters, so that they run the other way in any text.
fn turn(text: &str) -> Cow<'_, str> {
    if !text.contains(|sign: char| sign.is_ascii_alphabetic()) {
        return Cow::Borrowed(text);
    }
    let letters: String = text.chars().map(accented).collect();
    Cow::Owned(format!("\u{200f}\u{202e}{letters}\u{202c}"))
}

/// The letter with an accent or a bar; every other sign as it is.
fn accented(sign: char) -> char {
    const PLAIN: &str = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
    const MARKED: &str = "áƀćđéƒğĥíĵķľḿńóṕɋŕśţúṽŵẋýžÁƁĆĐÉƑĞĤÍĴĶĽḾŃÓṔɊŔŚŢÚṼŴẊÝŽ";
    PLAIN.chars().zip(MARKED.chars()).find(|(plain, _)| *plain == sign).map_or(sign, |(_, marked)| marked)
}

#[cfg(test)]
mod tests {
    use phrase::{Arg, Phrase};

    use super::*;

    #[test]
    fn texts_grow_by_about_two_fifths_and_what_they_speak_of_stays() {
        let (plain, longer) = (english(Figures::default()), lengthened(Figures::default()));
        let length = |language: &Language| {
            let ids = ENGLISH.concat();
            let ids = ids.lines().filter_map(|line| line.split_once(" = "));
            let ids = ids.filter(|(id, _)| !id.starts_with([' ', '#', '.']));
            ids.map(|(id, _)| language.say(&Phrase::new(id)).chars().count()).sum::<usize>()
        };
        let growth = f64::from(u32::try_from(length(&longer)).unwrap())
            / f64::from(u32::try_from(length(&plain)).unwrap());
        assert!((1.25..1.5).contains(&growth), "{growth}");
        let named = Phrase::new("ask-joined").text("part", "the entry E1");
        assert!(longer.say(&named).contains("the entry E1"));
        let count = Phrase::new("stage-how-far").with("done", Arg::Count(3)).with("of", Arg::Count(50));
        assert_eq!(longer.say(&count), "3 óóƒ 50 ááńśŵééŕééđ");
    }

    #[test]
    fn right_to_left_sets_names_apart_and_keeps_no_plain_letter() {
        let language = right_to_left(Figures::default());
        assert!(language.is_right_to_left());
        let said = language.say(&Phrase::new("ask-joined").text("part", "E1"));
        assert!(said.contains("\u{2068}E1\u{2069}"), "{said}");
        let of_messages = said.replace("E1", "");
        assert!(!of_messages.contains(|sign: char| sign.is_ascii_alphabetic()), "{said}");
    }
}
