//! Canonical JSON (RFC 8785): one value, one text.
//!
//! Facts are compared, hashed and exchanged by their text, so a value must have exactly one, the same in every
//! program and for ever.

use std::borrow::Borrow;

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::fault::FactFault;

/// The longest value of a fact, in bytes of its canonical form.
pub const MAX_VALUE_BYTES: usize = 8 * 1024;

/// The deepest nesting of a value. A bare number has depth 0, a list of numbers 1.
pub const MAX_DEPTH: usize = 32;

/// The greatest whole number below which a double holds every other: 2^53.
const EXACT: u64 = 1 << 53;

/// The canonical text of a value.
///
/// # Errors
/// [`FactFault::TooDeep`]; [`FactFault::NumberInexact`] for a whole number whose digits RFC 8785, which knows
/// only doubles, would change.
pub fn canonical(value: &Value) -> Result<String, FactFault> {
    check(value)?;
    serde_json_canonicalizer::to_string(value).map_err(|_| FactFault::NotJson)
}

/// The canonical text of a value, and the value that this text reads back as. Only such values are kept in
/// facts, so that 1.0 and 1 are one value everywhere.
///
/// # Errors
/// As [`canonical`].
pub(crate) fn normal(value: &Value) -> Result<(String, Value), FactFault> {
    let text = canonical(value)?;
    let read = serde_json::from_str(&text).map_err(|_| FactFault::NotJson)?;
    Ok((text, read))
}

/// The value of a typed decision, for use in a fact. It must read back as it is, so an infinite number, which
/// would turn into null on the way without a word, is refused, and so is a type that leaves something out.
///
/// # Errors
/// As [`canonical`], and [`FactFault::NotJson`] for what does not read back the same.
///
/// ```
/// # use facts::fact::value_of;
/// assert_eq!(value_of(&[20.0, 2.5])?, serde_json::json!([20, 2.5]));
/// assert!(value_of(&[f64::INFINITY]).is_err());
/// # Ok::<(), facts::fact::FactFault>(())
/// ```
pub fn value_of<T>(decision: &T) -> Result<Value, FactFault>
where
    T: ?Sized + Serialize + ToOwned<Owned: DeserializeOwned> + PartialEq,
{
    let json = serde_json::to_value(decision).map_err(|_| FactFault::NotJson)?;
    let (_, value) = normal(&json)?;
    match T::Owned::deserialize(&value) {
        Ok(read) if Borrow::<T>::borrow(&read) == decision => Ok(value),
        Ok(_) | Err(_) => Err(FactFault::NotJson),
    }
}

/// Depth and numbers, with a stack of our own: a value made in memory may be deeper than the thread's.
fn check(value: &Value) -> Result<(), FactFault> {
    let mut left = vec![(value, 0)];
    while let Some((value, depth)) = left.pop() {
        let inner = depth + 1;
        match value {
            Value::Array(items) if depth < MAX_DEPTH => left.extend(items.iter().map(|item| (item, inner))),
            Value::Object(members) if depth < MAX_DEPTH => {
                left.extend(members.values().map(|member| (member, inner)));
            }
            Value::Array(_) | Value::Object(_) => return Err(FactFault::TooDeep { limit: MAX_DEPTH }),
            // Up to here each is a double of its own, whose digits are its shortest text.
            Value::Number(number) if number.as_i64().is_some_and(|number| number.unsigned_abs() <= EXACT) => {
            }
            Value::Number(number) if !number.is_f64() => {
                let digits = number.to_string();
                let shown = serde_json_canonicalizer::to_string(number).map_err(|_| FactFault::NotJson)?;
                if digits != shown {
                    return Err(FactFault::NumberInexact { number: digits });
                }
            }
            Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    fn canonical_text(text: &str) -> String {
        canonical(&serde_json::from_str(text).unwrap()).unwrap()
    }

    /// RFC 8785, 3.2.2 and 3.2.4: the sample input and the bytes it must give.
    #[test]
    fn rfc_8785_sample() {
        let input = r#"{
            "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
            "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
            "literals": [null, true, false]
        }"#;
        let bytes = "7b 22 6c 69 74 65 72 61 6c 73 22 3a 5b 6e 75 6c 6c 2c 74 72 75 65 2c 66 61 6c 73 65 5d 2c 22 6e \
                     75 6d 62 65 72 73 22 3a 5b 33 33 33 33 33 33 33 33 33 2e 33 33 33 33 33 33 33 2c 31 65 2b 33 30 \
                     2c 34 2e 35 2c 30 2e 30 30 32 2c 31 65 2d 32 37 5d 2c 22 73 74 72 69 6e 67 22 3a 22 e2 82 ac 24 \
                     5c 75 30 30 30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22 7d";
        let expected: Vec<u8> =
            bytes.split_whitespace().map(|b| u8::from_str_radix(b, 16).unwrap()).collect();
        assert_eq!(canonical_text(input).into_bytes(), expected);
    }

    /// RFC 8785, 3.2.3: members are sorted by the UTF-16 units of their names.
    #[test]
    fn rfc_8785_order_of_members() {
        let input = r#"{"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh",
            "1":"One","\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control",
            "\u00f6":"Latin Small Letter O With Diaeresis"}"#;
        let text = canonical_text(input);
        let order = ["Carriage Return", "One", "Control", "Latin Small", "Euro Sign", "Emoji", "Hebrew"];
        let places: Vec<usize> = order.iter().map(|name| text.find(name).unwrap()).collect();
        assert!(places.is_sorted(), "{text}");
    }

    /// RFC 8785, appendix B: doubles by their bits, and the text of each.
    #[test]
    fn rfc_8785_numbers() {
        let samples: [(u64, &str); 24] = [
            (0x0000_0000_0000_0000, "0"),
            (0x8000_0000_0000_0000, "0"),
            (0x0000_0000_0000_0001, "5e-324"),
            (0x8000_0000_0000_0001, "-5e-324"),
            (0x7fef_ffff_ffff_ffff, "1.7976931348623157e+308"),
            (0xffef_ffff_ffff_ffff, "-1.7976931348623157e+308"),
            (0x4340_0000_0000_0000, "9007199254740992"),
            (0xc340_0000_0000_0000, "-9007199254740992"),
            (0x4430_0000_0000_0000, "295147905179352830000"),
            (0x44b5_2d02_c7e1_4af5, "9.999999999999997e+22"),
            (0x44b5_2d02_c7e1_4af6, "1e+23"),
            (0x44b5_2d02_c7e1_4af7, "1.0000000000000001e+23"),
            (0x444b_1ae4_d6e2_ef4e, "999999999999999700000"),
            (0x444b_1ae4_d6e2_ef4f, "999999999999999900000"),
            (0x444b_1ae4_d6e2_ef50, "1e+21"),
            (0x3eb0_c6f7_a0b5_ed8c, "9.999999999999997e-7"),
            (0x3eb0_c6f7_a0b5_ed8d, "0.000001"),
            (0x41b3_de43_5555_5553, "333333333.3333332"),
            (0x41b3_de43_5555_5554, "333333333.33333325"),
            (0x41b3_de43_5555_5555, "333333333.3333333"),
            (0x41b3_de43_5555_5556, "333333333.3333334"),
            (0x41b3_de43_5555_5557, "333333333.33333343"),
            (0xbecb_f647_612f_3696, "-0.0000033333333333333333"),
            (0x4314_3ff3_c1cb_0959, "1424953923781206.2"),
        ];
        for (bits, expected) in samples {
            let value = value_of(&f64::from_bits(bits)).unwrap();
            assert_eq!(canonical(&json!(f64::from_bits(bits))).unwrap(), expected, "{bits:016x}");
            assert_eq!(canonical(&value).unwrap(), expected, "read back, {bits:016x}");
            // Equal as numbers: minus zero is written as zero.
            assert_eq!(value.as_f64(), Some(f64::from_bits(bits)), "{bits:016x}");
        }
        for bits in [0x7fff_ffff_ffff_ffff_u64, 0x7ff0_0000_0000_0000] {
            assert_eq!(value_of(&f64::from_bits(bits)), Err(FactFault::NotJson), "{bits:016x}");
            assert_eq!(value_of(&vec![f64::from_bits(bits)]), Err(FactFault::NotJson), "{bits:016x}");
            assert_eq!(value_of(&Some(f64::from_bits(bits))), Err(FactFault::NotJson), "{bits:016x}");
        }
    }

    #[test]
    fn one_and_one_point_nought_are_one_value() {
        assert_eq!(value_of(&vec![20.0]).unwrap(), json!([20]));
        assert_eq!(normal(&json!({"length": 20.0})).unwrap().1, json!({"length": 20}));
    }

    /// 2^53 + 1 is the first whole number that a double cannot hold (IEEE 754).
    #[test]
    fn a_whole_number_that_would_change_is_refused() {
        let number = 9_007_199_254_740_993_u64;
        assert_eq!(value_of(&number), Err(FactFault::NumberInexact { number: number.to_string() }));
        assert!(value_of(&(number - 1)).is_ok());
        let below = -i64::try_from(number).unwrap();
        assert_eq!(value_of(&below), Err(FactFault::NumberInexact { number: below.to_string() }));
        assert!(value_of(&(below + 1)).is_ok());
    }

    #[test]
    fn nesting_is_bounded_and_a_very_deep_value_does_not_overflow() {
        let nested = |depth: usize| (0..depth).fold(json!(1), |inner, _| json!([inner]));
        assert!(canonical(&nested(MAX_DEPTH)).is_ok());
        assert_eq!(canonical(&nested(MAX_DEPTH + 1)), Err(FactFault::TooDeep { limit: MAX_DEPTH }));
    }
}
