//! Marks that turn the direction of text: Unicode's property `Bidi_Control` (UAX #9, table 2; Unicode 16,
//! `PropList.txt`).

/// Whether a sign turns the direction of all that follows it: explicit embeddings, overrides and isolates, and what ends
/// them.
pub const fn turns_what_follows(sign: char) -> bool {
    matches!(sign, '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

/// Whether a sign turns the direction of text at all: those, and the marks that only tell which way they read themselves.
pub const fn turns_direction(sign: char) -> bool {
    turns_what_follows(sign) || matches!(sign, '\u{061C}' | '\u{200E}' | '\u{200F}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_mark_turns_and_its_neighbours_do_not() {
        let turning: Vec<u32> =
            (0..0x3000).filter(|&code| char::from_u32(code).is_some_and(turns_direction)).collect();
        // Unicode 16, `PropList.txt`, `Bidi_Control`: 061C, 200E..200F, 202A..202E, 2066..2069.
        let listed = [0x61C].into_iter().chain(0x200E..=0x200F).chain(0x202A..=0x202E).chain(0x2066..=0x2069);
        assert_eq!(turning, listed.collect::<Vec<_>>());
        assert!(!turns_what_follows('\u{200F}') && turns_what_follows('\u{202E}'));
    }
}
