//! The signs with which a locale writes numbers: decimal mark, groups, minus, digits.

use icu_decimal::provider::{Baked, DecimalDigitsV1, DecimalSymbolsV1};
use icu_locale_core::Locale;
use icu_provider::prelude::*;
use unic_langid::LanguageIdentifier;

/// The most signs of one mark: a minus may have a mark of direction before it.
const LONGEST: usize = 3;

/// A mark of one to three signs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Mark {
    signs: [char; LONGEST],
    length: u8,
}

impl Mark {
    const fn one(sign: char) -> Self {
        Self { signs: [sign, '\0', '\0'], length: 1 }
    }

    /// `None` if it is longer than any mark that is known.
    fn of(text: &str) -> Option<Self> {
        let mut mark = Self { signs: ['\0'; LONGEST], length: 0 };
        for sign in text.chars() {
            *mark.signs.get_mut(usize::from(mark.length))? = sign;
            mark.length += 1;
        }
        Some(mark)
    }

    fn signs(&self) -> impl Iterator<Item = char> {
        self.signs.iter().copied().take(usize::from(self.length))
    }

    /// The sign that stands for the mark when it is typed: its last, behind any mark of direction.
    fn typed(&self) -> Option<char> {
        self.signs().last()
    }
}

/// How a locale writes numbers, from the data of the Unicode CLDR.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Marks {
    decimal: Mark,
    group: Mark,
    minus: Mark,
    plus: Mark,
    digits: [char; 10],
    /// Digits of the group next to the decimal mark, and of the groups before it; none is ever parted if 0.
    group_sizes: (u8, u8),
    /// Digits that must stand before the first group for any group to be parted.
    least_before_group: u8,
}

impl Default for Marks {
    /// Those of English.
    fn default() -> Self {
        Self {
            decimal: Mark::one('.'),
            group: Mark::one(','),
            minus: Mark::one('-'),
            plus: Mark::one('+'),
            digits: ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9'],
            group_sizes: (3, 3),
            least_before_group: 1,
        }
    }
}

impl Marks {
    /// The marks of a locale; those of English where it is not known.
    pub fn of(locale: &LanguageIdentifier) -> Self {
        Self::known(locale).unwrap_or_default()
    }

    fn known(locale: &LanguageIdentifier) -> Option<Self> {
        let locale: Locale = locale.to_string().parse().ok()?;
        let locale = DataLocale::from(&locale);
        let request = DataRequest { id: DataIdentifierBorrowed::for_locale(&locale), ..Default::default() };
        let found: DataResponse<DecimalSymbolsV1> = Baked.load(request).ok()?;
        let symbols = found.payload.get();
        let sizes = symbols.grouping_sizes;
        let secondary = if sizes.secondary == 0 { sizes.primary } else { sizes.secondary };
        Some(Self {
            decimal: Mark::of(symbols.decimal_separator())?,
            group: Mark::of(symbols.grouping_separator())?,
            minus: Mark::of(symbols.minus_sign_prefix()).filter(|minus| minus.length > 0)?,
            plus: Mark::of(symbols.plus_sign_prefix()).filter(|plus| plus.length > 0)?,
            digits: digits(symbols.numsys())?,
            group_sizes: (sizes.primary, secondary),
            least_before_group: sizes.min_grouping,
        })
    }

    /// A number written plainly (`-1234.5`) as the locale writes it; its thousands parted if `grouped`.
    pub fn written(self, plain: &str, grouped: bool) -> String {
        let (negative, plain) = plain.strip_prefix('-').map_or((false, plain), |rest| (true, rest));
        let (whole, fraction) = plain.split_once('.').map_or((plain, None), |(w, f)| (w, Some(f)));
        let mut text = String::new();
        if negative {
            text.extend(self.minus.signs());
        }
        let length = whole.chars().count();
        for (place, sign) in whole.chars().enumerate() {
            if grouped && place > 0 && self.parts_before(length - place, length) {
                text.extend(self.group.signs());
            }
            text.push(self.digit(sign));
        }
        if let Some(fraction) = fraction {
            text.extend(self.decimal.signs());
            text.extend(fraction.chars().map(|sign| self.digit(sign)));
        }
        text
    }

    /// The sign before a number above zero, where one is wanted.
    pub fn plus(self) -> String {
        self.plus.signs().collect()
    }

    /// Whether a group ends before the digit with `left` digits up to the decimal mark, of `length` in all.
    fn parts_before(self, left: usize, length: usize) -> bool {
        let (first, others) = (usize::from(self.group_sizes.0), usize::from(self.group_sizes.1));
        if first == 0 || length < first + usize::from(self.least_before_group) || left < first {
            return false;
        }
        left == first || (others > 0 && (left - first).is_multiple_of(others))
    }

    fn digit(self, sign: char) -> char {
        let digit = sign.to_digit(10).and_then(|digit| usize::try_from(digit).ok());
        digit.and_then(|digit| self.digits.get(digit).copied()).unwrap_or(sign)
    }

    /// What somebody typed with these marks, as it would be typed in English: `1.234,5` becomes `1,234.5`. What is no
    /// number, a unit beside it for one, stays as it is; [`Marks::as_typed`] turns it back.
    pub fn plainly(self, typed: &str) -> String {
        self.exchanged(typed, self, Self::default())
    }

    /// The other way: what would be typed in English, as it is typed with these marks.
    pub fn as_typed(self, plain: &str) -> String {
        self.exchanged(plain, Self::default(), self)
    }

    /// Each mark of `from` put by that of `to`, where it stands beside a digit.
    fn exchanged(self, text: &str, from: Self, to: Self) -> String {
        if self == Self::default() {
            return text.to_owned();
        }
        let signs: Vec<char> = text.chars().collect();
        let digit = |sign: char| from.digits.iter().position(|digit| *digit == sign);
        let is_digit = |place: Option<usize>| {
            place.and_then(|place| signs.get(place)).is_some_and(|sign| digit(*sign).is_some())
        };
        let exchange = |(place, sign): (usize, &char)| {
            if let Some(digit) = digit(*sign) {
                return to.digits.get(digit).copied().unwrap_or(*sign);
            }
            if !is_digit(place.checked_sub(1)) && !is_digit(place.checked_add(1)) {
                return *sign;
            }
            [(from.decimal, to.decimal), (from.group, to.group), (from.minus, to.minus)]
                .into_iter()
                .find(|(from, _)| from.typed() == Some(*sign))
                .and_then(|(_, to)| to.typed())
                .unwrap_or(*sign)
        };
        signs.iter().enumerate().map(exchange).collect()
    }
}

/// The ten digits of a numbering system.
fn digits(system: &str) -> Option<[char; 10]> {
    let attributes = DataMarkerAttributes::try_from_str(system).ok()?;
    let locale = DataLocale::default();
    let id = DataIdentifierBorrowed::for_marker_attributes_and_locale(attributes, &locale);
    let found: DataResponse<DecimalDigitsV1> = Baked.load(DataRequest { id, ..Default::default() }).ok()?;
    Some(*found.payload.get())
}

#[cfg(test)]
mod tests {
    use icu_decimal::DecimalFormatter;
    use icu_decimal::input::Decimal;
    use icu_decimal::options::{DecimalFormatterOptions, GroupingStrategy};
    use proptest::prelude::*;

    use super::*;

    /// Locales that differ in marks, in sizes of groups, in digits, and in when they part groups at all.
    const LOCALES: [&str; 12] =
        ["en", "de", "fr", "de-CH", "es", "pl", "hi", "fa", "ar-EG", "he", "sv", "bn"];

    fn marks(locale: &str) -> Marks {
        Marks::known(&locale.parse().unwrap()).unwrap()
    }

    #[test]
    fn what_stands_for_an_unknown_locale_is_english() {
        assert_eq!(marks("en"), Marks::default());
        assert_eq!(Marks::of(&"qqx".parse().unwrap()).written("1234.5", true), "1,234.5");
    }

    #[test]
    fn typed_either_way_and_back() {
        // Decimal comma and points between thousands (CLDR 48, de); digits of their own (CLDR 48, fa).
        let german = marks("de");
        assert_eq!(german.plainly("1.234,5 m"), "1,234.5 m");
        assert_eq!(german.plainly("12 ft. 6 in."), "12 ft. 6 in.");
        assert_eq!(german.as_typed("12.5"), "12,5");
        assert_eq!(marks("fa").plainly("۱۲٫۵"), "12.5");
        assert_eq!(marks("sv").plainly("\u{2212}6"), "-6");
    }

    proptest! {
        /// Against the library's own way to write numbers.
        #[test]
        fn numbers_as_the_library_writes_them(
            whole in -9_999_999_999_i64..9_999_999_999,
            tenths in proptest::option::of(0..10_u8),
            locale in 0..LOCALES.len(),
            grouped: bool,
        ) {
            let locale = LOCALES[locale];
            let plain = tenths.map_or_else(|| whole.to_string(), |tenths| format!("{whole}.{tenths}"));
            let number: Decimal = plain.parse().unwrap();
            let mut options = DecimalFormatterOptions::default();
            options.grouping_strategy =
                Some(if grouped { GroupingStrategy::Auto } else { GroupingStrategy::Never });
            let library =
                DecimalFormatter::try_new(locale.parse::<Locale>().unwrap().into(), options).unwrap();
            prop_assert_eq!(marks(locale).written(&plain, grouped), library.format(&number).to_string());
        }

        #[test]
        fn what_was_typed_stands_there_again(
            typed in "[0-9]{1,7}([.,][0-9]{0,4}){0,3}( ?(m|ft|Mb/s))?", locale in 0..4_usize,
        ) {
            // Locales whose decimal and group marks are English's, changed about or not.
            let marks = marks(["en", "de", "es", "hi"][locale]);
            prop_assert_eq!(marks.as_typed(&marks.plainly(&typed)), typed);
        }
    }
}
