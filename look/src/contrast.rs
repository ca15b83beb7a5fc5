//! The contrast of inks on what they lie.

use crate::tokens::{Ink, Tokens};

/// The contrast of two inks, 1 to 21: (L1 + 0.05) / (L2 + 0.05) with L the relative luminance (W3C, WCAG 2.2, "contrast
/// ratio" and "relative luminance"; the threshold 0.04045 is that of sRGB, IEC 61966-2-1, which that text takes too).
pub fn contrast(one: &Ink, other: &Ink) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

fn luminance(ink: &Ink) -> f64 {
    let [red, green, blue] = ink.parts().map(|part| {
        let part = f64::from(part) / 255.0;
        if part <= 0.040_45 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
    });
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/// The contrast that words should have, and the least that they must.
const WORDS: (f64, f64) = (4.5, 7.0);
/// The contrast of marks and edges.
const MARKS: (f64, f64) = (3.0, 3.0);

/// Which inks lie on which, with the least and the wanted contrast.
const MEETINGS: &[(&str, &str, (f64, f64))] = &[
    ("text", "surface raised sunk accent_wash caution_wash weak_wash", WORDS),
    ("quiet", "surface raised sunk accent_wash", WORDS),
    ("accent", "surface raised sunk accent_wash", WORDS),
    ("on_fill", "fill", WORDS),
    ("on_accent", "accent", WORDS),
    ("caution", "caution_wash surface", WORDS),
    ("caution_line", "caution_wash surface", MARKS),
    ("weak", "surface raised weak_wash", WORDS),
    ("good", "surface raised", WORDS),
    ("measured", "surface raised sunk", WORDS),
    ("edge", "surface raised sunk", MARKS),
    ("pencil", "surface raised", MARKS),
];

/// An ink on a ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Pair {
    /// The ink.
    pub ink: &'static str,
    /// What it lies on.
    pub ground: &'static str,
    /// When: `light`, `dark` or `print`.
    pub when: &'static str,
    /// The contrast; `None` where one of the two is missing.
    pub contrast: Option<f64>,
    /// The least that it must be.
    pub least: f64,
    /// What it should be.
    pub wanted: f64,
}

/// Every ink on everything that it may lie on, by day, by night and on paper.
pub fn pairs(tokens: &Tokens) -> Vec<Pair> {
    let mut pairs = Vec::new();
    for (when, inks) in
        [("light", &tokens.ink.light), ("dark", &tokens.ink.dark), ("print", &tokens.ink.print)]
    {
        for (ink, grounds, (least, wanted)) in MEETINGS.iter().copied() {
            for ground in grounds.split(' ') {
                let contrast = inks.get(ink).zip(inks.get(ground)).map(|(ink, ground)| contrast(ink, ground));
                pairs.push(Pair { ink, ground, when, contrast, least, wanted });
            }
        }
    }
    pairs
}
