//! Numbers with either decimal mark.

/// What a number may be whose one mark may part thousands or decimals, each as it is typed without a doubt.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Doubt {
    /// With its thousands not parted.
    pub thousands: String,
    /// With a point before its decimals.
    pub decimal: String,
}

/// The digits and marks of a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Numeral<'t> {
    /// The sign, as typed.
    sign: Option<char>,
    /// Digits, points, commas, and spaces between groups of three digits.
    digits: &'t str,
}

/// Spaces that part groups of digits.
const SPACES: [char; 4] = [' ', '\u{a0}', '\u{2009}', '\u{202f}'];

impl<'t> Numeral<'t> {
    /// The number that a text begins with, and what follows; `None` where it begins otherwise.
    pub fn leading(text: &'t str) -> Option<(Self, &'t str)> {
        let text = text.trim_start();
        let sign = text.chars().next().filter(|sign| *sign == '+' || is_dash(*sign));
        let rest = text.get(sign.map_or(0, char::len_utf8)..)?;
        let end = end_of_digits(rest);
        let (digits, rest) = rest.split_at_checked(end)?;
        digits.contains(|sign: char| sign.is_ascii_digit()).then_some((Self { sign, digits }, rest))
    }

    /// Whether a sign stands before it.
    pub fn has_sign(&self) -> bool {
        self.sign.is_some()
    }

    /// Its value; `None` if its marks stand where no number has them.
    ///
    /// # Errors
    /// If it can be read two ways: one comma before three digits, as in `1,000`.
    pub fn value(&self) -> Result<Option<f64>, Doubt> {
        let is_parted = self.digits.contains(SPACES);
        let digits: String = self.digits.chars().filter(|sign| !SPACES.contains(sign)).collect();
        let plain = match (digits.matches(',').count(), digits.matches('.').count()) {
            (0, 0 | 1) => Some(digits.clone()),
            (1, 0) => {
                let (whole, after) = digits.split_once(',').unwrap_or((&digits, ""));
                let is_group = after.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0');
                if is_group && !is_parted {
                    return Err(self.doubt(whole, after));
                }
                Some(format!("{whole}.{after}"))
            }
            (_, 0) => ungrouped(&digits, ','),
            (0, _) => ungrouped(&digits, '.'),
            // The mark that stands last parts the decimals.
            (1, _) if digits.rfind(',') > digits.rfind('.') => with_decimals(&digits, ',', '.'),
            (_, 1) if digits.rfind('.') > digits.rfind(',') => with_decimals(&digits, '.', ','),
            _ => None,
        };
        let value = plain.and_then(|plain| plain.parse::<f64>().ok()).filter(|value| value.is_finite());
        let is_negative = self.sign.is_some_and(is_dash);
        Ok(value.map(|value| if is_negative { -value } else { value }))
    }

    fn doubt(&self, whole: &str, after: &str) -> Doubt {
        let sign = if self.sign.is_some_and(is_dash) { "-" } else { "" };
        let decimals = after.trim_end_matches('0');
        let decimals = if decimals.is_empty() { "0" } else { decimals };
        Doubt { thousands: format!("{sign}{whole}{after}"), decimal: format!("{sign}{whole}.{decimals}") }
    }
}

/// Whether a sign is one of those that are typed for a minus.
pub(super) fn is_dash(sign: char) -> bool {
    matches!(sign, '-' | '\u{2010}'..='\u{2015}' | '\u{2212}')
}

/// Where the digits end. A space belongs to them where a group of three follows it and at most three stand before.
fn end_of_digits(text: &str) -> usize {
    let run = |text: &str| text.chars().take_while(char::is_ascii_digit).count();
    let first = run(text);
    let mut end = first;
    if (1..=3).contains(&first) {
        while let Some(rest) = text.get(end..).and_then(|rest| rest.strip_prefix(SPACES)) {
            if run(rest) != 3 {
                break;
            }
            end = text.len() - rest.len() + 3;
        }
    }
    let marks = text.get(end..).unwrap_or_default();
    end + marks.find(|sign: char| !(sign.is_ascii_digit() || ".,".contains(sign))).unwrap_or(marks.len())
}

/// Digits in groups of three, put together.
fn ungrouped(digits: &str, mark: char) -> Option<String> {
    let mut groups = digits.split(mark);
    let first = groups.next()?;
    let is_right = (1..=3).contains(&first.len()) && groups.all(|group| group.len() == 3);
    is_right.then(|| digits.replace(mark, ""))
}

/// The same with decimals behind the last mark.
fn with_decimals(digits: &str, decimal: char, group: char) -> Option<String> {
    let (whole, after) = digits.split_once(decimal)?;
    Some(format!("{}.{after}", ungrouped(whole, group)?))
}
