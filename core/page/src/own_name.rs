//! The name that a file had where it came from, as a name of a file here.

/// The most letters of it that are kept: with four bytes a letter still within the 255 of a name on common file systems.
const MOST: usize = 60;
/// So many of them are its end.
const ENDING: usize = 20;

/// What a browser gives as a file's name (RFC 7578, 4.2: "SHOULD NOT be used blindly"), as the plain name of one file:
/// no folder, no control character, no name that hides. What names nothing is called `upload`.
pub(crate) fn own_name(given: &str) -> String {
    let last = given.rsplit(['/', '\\']).next().unwrap_or_default();
    let plain: String = last.chars().filter(|sign| !sign.is_control()).collect();
    let plain = plain.trim().trim_start_matches('.').trim_start();
    match plain.chars().count() {
        0 => "upload".into(),
        letters if letters <= MOST => plain.into(),
        // The ending says what it is: of a long name the middle goes.
        letters => {
            let ending = plain.chars().skip(letters - ENDING);
            plain.chars().take(MOST - ENDING).chain(ending).collect()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_stays_and_what_is_none_or_a_way_out_does_not() {
        assert_eq!(own_name("IMG 0042.JPG"), "IMG 0042.JPG");
        assert_eq!(own_name("Ä Keller.png"), "Ä Keller.png");
        assert_eq!(own_name("C:\\Photos\\cellar.jpg"), "cellar.jpg");
        for hostile in ["", "..", "../..", "/etc/passwd/", ".", "a/..", "\u{0}\n", "...  "] {
            assert_eq!(own_name(hostile), "upload", "{hostile:?}");
        }
        assert_eq!(own_name("../../.ssh/id"), "id");
        assert_eq!(own_name(".hidden.jpg"), "hidden.jpg");
    }

    #[test]
    fn a_long_name_keeps_its_beginning_and_its_ending() {
        let long = format!("{}.jpg", "\u{1f4f7}".repeat(500));
        let short = own_name(&long);
        let ending = std::path::Path::new(&short).extension();
        assert!(
            ending.is_some_and(|end| end == "jpg") && short.len() <= 255,
            "{} bytes: {short}",
            short.len()
        );
        assert!(short.starts_with('\u{1f4f7}'));
        assert_eq!(short.chars().count(), MOST);
    }
}
