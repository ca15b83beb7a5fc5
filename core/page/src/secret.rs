//! Random words that cannot be guessed.

use data_encoding::HEXLOWER;

use crate::error::PageError;

/// A word of 256 random bits, in 64 letters.
#[derive(Clone, PartialEq, Eq, Hash)]
pub(crate) struct Secret(String);

impl Secret {
    /// A new one.
    ///
    /// # Errors
    /// If the system gives no random numbers.
    pub(crate) fn new() -> Result<Self, PageError> {
        let mut bytes = [0_u8; 32];
        getrandom::fill(&mut bytes).map_err(PageError::Random)?;
        Ok(Self(HEXLOWER.encode(&bytes)))
    }

    /// Its letters.
    pub(crate) fn letters(&self) -> &str {
        &self.0
    }

    /// Whether these are its letters; how long that takes does not tell which of them are right.
    pub(crate) fn is(&self, letters: &str) -> bool {
        let differs =
            self.0.bytes().zip(letters.bytes()).fold(0, |differs, (one, other)| differs | (one ^ other));
        self.0.len() == letters.len() && differs == 0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_its_own_letters_are_it() {
        let (one, other) = (Secret::new().unwrap(), Secret::new().unwrap());
        assert!(one.is(one.letters()) && !one.is(other.letters()));
        assert!(!one.is("") && !one.is(&one.letters()[1..]) && !one.is(&format!("{}0", one.letters())));
        assert_eq!(one.letters().len(), 64);
    }
}
