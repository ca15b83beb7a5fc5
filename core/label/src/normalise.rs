//! Brings a label's characters into one plain form, keeping where each came from.
//!
//! Letters become small; wide digits and letters become plain; all dashes and minus signs become `-`; all range
//! signs `~`; ligatures such as the one sign for MHz are spelled out; blanks and quotation marks become a space. Nothing is
//! dropped: a sign that means nothing here still keeps apart what it stands between.

/// The longest text that is read, in bytes. A label holds a few dozen words; a sheet may hold two thousand labels of
/// any length, and is to be read in two seconds.
pub const LONGEST_TEXT: usize = 1024;

/// One plain character and the bytes of the text that it stands for.
#[derive(Debug, Clone, Copy)]
pub(super) struct Mark {
    /// The plain character.
    pub ch: char,
    /// First byte in the text.
    pub start: usize,
    /// One past the last byte in the text.
    pub end: usize,
}

/// The text cut to [`LONGEST_TEXT`] at a character's boundary, and whether anything was cut off.
pub(super) fn within_limit(text: &str) -> (&str, bool) {
    if text.len() <= LONGEST_TEXT {
        return (text, false);
    }
    let end = (0..=LONGEST_TEXT).rev().find(|&end| text.is_char_boundary(end)).unwrap_or(0);
    (text.get(..end).unwrap_or_default(), true)
}

/// The text as plain characters.
pub(super) fn marks(text: &str) -> Vec<Mark> {
    let mut marks = Vec::with_capacity(text.len());
    for (start, ch) in text.char_indices() {
        let end = start + ch.len_utf8();
        if let Some(spelled) = spelled_out(ch) {
            marks.extend(spelled.chars().map(|ch| Mark { ch, start, end }));
        } else {
            marks.extend(plain(ch).to_lowercase().map(|ch| Mark { ch, start, end }));
        }
    }
    marks
}

/// Signs that stand for several characters.
fn spelled_out(ch: char) -> Option<&'static str> {
    Some(match ch {
        '\u{33C8}' => "db",
        '\u{3392}' => "mhz",
        '\u{3393}' => "ghz",
        '\u{2126}' | '\u{03A9}' | '\u{03C9}' => "ohm",
        '\u{2026}' => "..",
        '\u{2103}' => "°c",
        _ => return None,
    })
}

/// One character's plain form.
fn plain(ch: char) -> char {
    match ch {
        '\n' | '\r' | '\u{0B}' | '\u{0C}' | '\u{85}' | '\u{2028}' | '\u{2029}' => '\n',
        '"'
        | '\u{201C}'..='\u{201F}'
        | '\u{AB}'
        | '\u{BB}'
        | '\u{200B}'..='\u{200F}'
        | '\u{2060}'
        | '\u{FEFF}' => ' ',
        ch if ch.is_whitespace() || ch.is_control() => ' ',
        '\u{AD}'
        | '\u{2010}'..='\u{2015}'
        | '\u{2043}'
        | '\u{2212}'
        | '\u{FE58}'
        | '\u{FE63}'
        | '\u{FF0D}' => '-',
        '\u{223C}' | '\u{301C}' | '\u{FF5E}' | '\u{2248}' | '\u{F7}' | '\u{2192}' | '\u{2194}' => '~',
        '\u{2264}' => '<',
        '\u{2265}' => '>',
        '\u{2044}' | '\u{2215}' => '/',
        '\u{2019}' | '\u{2018}' | '\u{2032}' => '\'',
        '\u{D7}' => 'x',
        '\u{B5}' | '\u{3BC}' => 'u',
        '\u{FF01}'..='\u{FF5E}' => {
            // The block of wide forms runs in step with the printable characters of ASCII.
            char::from_u32(u32::from(ch) - 0xFEE0).unwrap_or(ch)
        }
        // Cyrillic letters that look just like Latin ones.
        '\u{041E}' | '\u{043E}' => 'o',
        _ => ch,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_text_is_cut_between_characters() {
        let text = "é".repeat(LONGEST_TEXT);
        let (kept, cut) = within_limit(&text);
        assert!(cut);
        assert_eq!(kept.len(), LONGEST_TEXT);
        let shifted = format!("x{text}");
        assert_eq!(within_limit(&shifted).0.len(), LONGEST_TEXT - 1);
    }

    #[test]
    fn signs_of_many_alphabets_become_plain() {
        let plain: String = marks("−７ｄＢ 5–1000㎒ ≥40㏈").iter().map(|mark| mark.ch).collect();
        assert_eq!(plain, "-7db 5-1000mhz >40db");
    }
}
