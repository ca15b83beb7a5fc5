//! Text without anything that could steer a terminal: names, labels and notes come from other people's files. Whatever the
//! program prints passes here.

use std::fmt::Write as _;

/// The marks that turn the direction of text, and those that end a line or a paragraph (UAX #14, class BK).
const fn steers(c: char) -> bool {
    phrase::turns_direction(c) || matches!(c, '\u{2028}' | '\u{2029}')
}

/// Text of several lines, each harmless: nothing of it moves the cursor, colours, rings, or turns the direction of what
/// stands beside it.
pub fn lines(text: &str) -> String {
    text.chars()
        .map(|c| match c {
            '\n' => '\n',
            '\t' => ' ',
            c if c.is_control() || steers(c) => '\u{FFFD}',
            c => c,
        })
        .collect()
}

/// Text on one line, harmless.
pub fn one_line(text: &str) -> String {
    lines(text).replace('\n', " ")
}

/// JSON whose texts are the same to who reads it, and harmless to a terminal that shows it: what could steer is escaped
/// (RFC 8259, 7). Outside of texts JSON has no such sign but line feeds and tabs.
pub fn json(text: &str) -> String {
    let mut clean = String::with_capacity(text.len());
    for c in text.chars() {
        if c != '\n' && c != '\t' && (c.is_control() || steers(c)) {
            let mut units = [0; 2];
            for unit in c.encode_utf16(&mut units) {
                // Writing to a string does not fail.
                let _ = write!(clean, "\\u{unit:04x}");
            }
        } else {
            clean.push(c);
        }
    }
    clean
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_left_that_steers() {
        let text = "a\u{1b}[31mb\u{202e}c\rd\u{9b}2Je\u{7}\u{7f}\nf\tg";
        assert_eq!(lines(text), "a\u{FFFD}[31mb\u{FFFD}c\u{FFFD}d\u{FFFD}2Je\u{FFFD}\u{FFFD}\nf g");
        assert_eq!(one_line("a\nb"), "a b");
        let plain = "5–1002 MHz, Größe 7 µ, \u{5d0}\u{5d1}, é";
        assert_eq!(lines(plain), plain);
    }

    #[test]
    fn json_says_the_same_without_steering() {
        let said = serde_json::json!({"note": "a\u{9b}31m\u{202e}b\n\u{1f600}"});
        let text = json(&serde_json::to_string_pretty(&said).unwrap());
        assert!(!text.contains(['\u{9b}', '\u{202e}']));
        assert_eq!(serde_json::from_str::<serde_json::Value>(&text).unwrap(), said);
    }
}
