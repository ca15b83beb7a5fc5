//! How wide text may come out on a screen whose fonts are not known: an upper bound, so that nothing ever overlaps.

use std::borrow::Cow;

/// What heavier type adds to the width.
const STRONG: f64 = 1.12;

/// The widest that one line of text may be, in the unit of `size`. Held against `DejaVu Sans`, one of the widest
/// common faces for running text.
pub fn text_width(text: &str, size: f64, strong: bool) -> f64 {
    text.chars().map(advance).sum::<f64>() * size * if strong { STRONG } else { 1.0 }
}

/// The width of a letter in type of one width, in ems: 1233 of 2048 in `DejaVu Sans Mono`, 0.6 in most others.
const EVEN: f64 = 0.62;

/// The widest that one line of type of one width may be, in the unit of `size`.
pub fn even_width(text: &str, size: f64) -> f64 {
    let letter = |letter: char| if letter.is_ascii() { EVEN } else { advance(letter).max(EVEN) };
    text.chars().map(letter).sum::<f64>() * size
}

/// The text, cut with an ellipsis if it would be wider than `room`.
pub fn fitted(text: &str, size: f64, strong: bool, room: f64) -> String {
    cut(text, room, |text| text_width(text, size, strong))
}

/// The text, cut with an ellipsis if it would be wider than `room`; `width` is that of any piece of it.
pub(super) fn cut(text: &str, room: f64, width: impl Fn(&str) -> f64) -> String {
    if width(text) <= room {
        return text.to_owned();
    }
    let mut kept = String::new();
    let mut used = width("…");
    for letter in text.chars() {
        used += width(letter.encode_utf8(&mut [0; 4]));
        if used > room {
            break;
        }
        kept.push(letter);
    }
    format!("{}…", kept.trim_end())
}

/// The text broken at spaces into lines no wider than `room`; what does not fit into `most` lines is cut.
pub fn wrapped(text: &str, size: f64, strong: bool, room: f64, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut words = text.split_whitespace().peekable();
    while words.peek().is_some() {
        let mut line = String::new();
        if lines.len() + 1 >= most {
            // The last line takes all that is left, and is cut where it must be.
            for word in words.by_ref() {
                push_word(&mut line, word);
                if text_width(&line, size, strong) > room {
                    break;
                }
            }
        } else {
            while let Some(word) = words.peek() {
                let mut longer = line.clone();
                push_word(&mut longer, word);
                if !line.is_empty() && text_width(&longer, size, strong) > room {
                    break;
                }
                line = longer;
                words.next();
            }
        }
        lines.push(fitted(&line, size, strong, room));
        if lines.len() >= most {
            break;
        }
    }
    lines
}

fn push_word(line: &mut String, word: &str) {
    if !line.is_empty() {
        line.push(' ');
    }
    line.push_str(word);
}

/// The text without what XML 1.0 (clause 2.2, `Char`) and HTML forbid, and without the marks that turn the direction
/// of all that follows (Unicode Bidirectional Algorithm, UAX #9, explicit embeddings, overrides and isolates).
pub fn legible(text: &str) -> Cow<'_, str> {
    if text.chars().all(is_legible) {
        Cow::Borrowed(text)
    } else {
        Cow::Owned(text.chars().filter(|letter| is_legible(*letter)).collect())
    }
}

fn is_legible(letter: char) -> bool {
    let code = u32::from(letter);
    let control = matches!(code, 0..=8 | 0x0B..=0x1F | 0x7F..=0x9F) && code != 0x0D;
    let turns = phrase::turns_what_follows(letter);
    let no_character = matches!(code, 0xFDD0..=0xFDEF) || code & 0xFFFE == 0xFFFE;
    !(control || turns || no_character || code == 0x0D)
}

/// The widest advance of a letter, in ems.
fn advance(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | 'I' | 'J' | '\'' | '|' | ' ' | '.' | ',' | ':' | ';' => 0.36,
        '!' | '(' | ')' | '[' | ']' | '/' | '-' | 'f' | 'r' | 't' | '·' => 0.42,
        'm' | 'w' | 'M' | 'W' | '%' | '@' | '\u{2010}'..='\u{203f}' => 1.0,
        'a'..='z' | '0'..='9' => 0.64,
        'A'..='Z' => 0.79,
        '\0'..='\u{7f}' => 0.84,
        // Combining marks stand over the letter before them.
        '\u{300}'..='\u{36f}' => 0.1,
        '\u{80}'..='\u{52f}' => 1.1,
        // Ligatures of whole words.
        '\u{fdf0}'..='\u{fdff}' => 12.0,
        _ => 1.4,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Advances of `DejaVu Sans` 2.37 (its `hmtx` table, 2048 units an em): "Study" is S 1300, t 803, u 1298, d 1300,
    /// y 1212; "MHz" is M 1767, H 1540, z 1075; "12 m" is 1303 twice, space 651, m 1995.
    #[test]
    fn no_wide_face_is_wider_than_we_say() {
        for (text, units) in [("Study", 5913.0), ("MHz", 4382.0), ("12 m", 5252.0)] {
            assert!(text_width(text, 2048.0, false) >= units, "{text}");
        }
    }

    #[test]
    fn cut_text_fits() {
        let long = "W".repeat(10_000);
        let cut = fitted(&long, 10.0, true, 80.0);
        assert!(text_width(&cut, 10.0, true) <= 80.0);
        assert!(cut.ends_with('…') && cut.len() > 3);
        assert_eq!(fitted("Study", 10.0, false, 80.0), "Study");
    }

    #[test]
    fn wrapped_text_keeps_every_word_while_there_are_lines() {
        let lines = wrapped("a 4-way splitter in the cellar", 10.0, false, 80.0, 9);
        assert_eq!(lines.join(" "), "a 4-way splitter in the cellar");
        assert!(lines.len() > 1);
        assert!(lines.iter().all(|line| text_width(line, 10.0, false) <= 80.0));
        assert_eq!(wrapped("a 4-way splitter in the cellar", 10.0, false, 80.0, 2).len(), 2);
    }

    #[test]
    fn what_turns_the_text_round_is_left_out() {
        assert_eq!(legible("a\u{202E}b\u{0}c\u{FFFF}d\u{200F}"), "abcd\u{200F}");
    }
}
