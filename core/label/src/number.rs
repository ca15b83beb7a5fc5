//! Numbers as they stand on labels: decimal commas, thousands, letters that look like digits.

/// A number as written, and what it may mean.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Numeral {
    /// The number with plain digits and a decimal point.
    plain: String,
    /// The same digits as a whole number, where the sign in them may part thousands: `1.000`, `1,218`.
    thousands: Option<String>,
    /// Whether a letter was read as the digit it looks like.
    pub has_letters: bool,
    /// Whether its decimals stand after a comma, which may also part two numbers.
    has_comma: bool,
}

impl Numeral {
    /// Reads a number: 1 to 5 digits, or 1 to 4 digits, a dot or comma, and 1 to 3 more. Letters that look like
    /// digits are read as those, but at least one must be a digit. Anything else is no number.
    pub fn parse(text: &str) -> Option<Self> {
        let mut whole = String::new();
        let mut part: Option<(char, String)> = None;
        let (mut has_letters, mut has_digits) = (false, false);
        for ch in text.chars() {
            let digit = match ch {
                '0'..='9' => {
                    has_digits = true;
                    ch
                }
                '.' | ',' | '\'' if part.is_none() && !whole.is_empty() => {
                    part = Some((ch, String::new()));
                    continue;
                }
                _ => {
                    has_letters = true;
                    digit_like(ch)?
                }
            };
            match &mut part {
                Some((_, digits)) => digits.push(digit),
                None => whole.push(digit),
            }
        }
        if !has_digits {
            return None;
        }
        match part {
            None => (whole.len() <= 5).then_some(Self {
                plain: whole,
                thousands: None,
                has_letters,
                has_comma: false,
            }),
            Some((sign, digits)) => {
                let groups = digits.len() == 3 && whole.len() <= 3 && !whole.starts_with('0');
                let grouped = groups.then(|| format!("{whole}{digits}"));
                if sign == '\'' {
                    let plain = grouped.clone()?;
                    return Some(Self { plain, thousands: grouped, has_letters, has_comma: false });
                }
                ((1..=3).contains(&digits.len()) && whole.len() <= 4).then(|| Self {
                    plain: format!("{whole}.{digits}"),
                    thousands: grouped,
                    has_letters,
                    has_comma: sign == ',',
                })
            }
        }
    }

    /// The number whose leading nought was left off: `.5` from `5`.
    pub fn below_one(&self) -> Option<Self> {
        self.is_whole().then(|| Self { plain: format!("0.{}", self.plain), ..self.clone() })
    }

    /// Two groups of digits parted by a space, `1` and `000`, as one number.
    pub fn joined(&self, group: &Self) -> Option<Self> {
        let fits = self.is_whole() && self.plain.len() <= 2 && group.is_whole() && group.plain.len() == 3;
        fits.then(|| {
            let plain = format!("{}{}", self.plain, group.plain);
            let has_letters = self.has_letters || group.has_letters;
            Self { thousands: Some(plain.clone()), plain, has_letters, has_comma: false }
        })
    }

    /// The value with its sign taken as a decimal point.
    pub fn value(&self) -> f64 {
        self.plain.parse().unwrap_or(f64::NAN)
    }

    /// The value with its sign taken as parting thousands.
    pub fn value_in_thousands(&self) -> Option<f64> {
        self.thousands.as_deref().and_then(|digits| digits.parse().ok())
    }

    /// A thousand times the value, rounded only once.
    pub fn times_thousand(&self) -> f64 {
        format!("{}e3", self.plain).parse().unwrap_or(f64::NAN)
    }

    /// The number with plain digits.
    pub fn plain(&self) -> &str {
        &self.plain
    }

    /// Whether it has no decimals.
    pub fn is_whole(&self) -> bool {
        !self.plain.contains('.')
    }

    /// Two counts that follow each other with a comma between, such as outputs `1,2`.
    pub fn pair(&self) -> Option<(u8, u8)> {
        let (first, second) = self.plain.split_once('.').filter(|_| self.has_comma && !self.has_letters)?;
        let (first, second): (u8, u8) = (first.parse().ok()?, second.parse().ok()?);
        (first > 0 && first.checked_add(1) == Some(second)).then_some((first, second))
    }

    /// The value as a small count, such as a number of legs.
    pub fn count(&self) -> Option<u8> {
        self.plain.parse().ok()
    }
}

/// The digit that a small letter looks like, worn or to a reading machine.
pub(super) fn digit_like(ch: char) -> Option<char> {
    Some(match ch {
        'o' => '0',
        'l' | 'i' => '1',
        'z' => '2',
        's' => '5',
        'b' => '8',
        _ => return None,
    })
}

/// Whether all of it is letters that look like digits: perhaps a number, never read as one.
pub(super) fn looks_like_digits(text: &str) -> bool {
    !text.is_empty() && text.len() <= 5 && text.chars().all(|ch| digit_like(ch).is_some())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_pass_for_digits_only_beside_a_digit() {
        assert_eq!(Numeral::parse("1ooo").map(|n| (n.value(), n.has_letters)), Some((1000.0, true)));
        assert_eq!(Numeral::parse("looo"), None);
        assert_eq!(Numeral::parse("10g0"), None);
    }

    #[test]
    fn a_dot_before_three_digits_may_part_thousands() {
        let numeral = Numeral::parse("1.218").expect("a number");
        assert_eq!((numeral.value(), numeral.value_in_thousands()), (1.218, Some(1218.0)));
        assert_eq!(numeral.times_thousand().to_bits(), 1218.0_f64.to_bits());
        assert_eq!(Numeral::parse("0.005").and_then(|n| n.value_in_thousands()), None);
        assert_eq!(Numeral::parse("1.2.3"), None);
    }
}
