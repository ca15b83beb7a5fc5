//! The tokens as resources of Android.

use std::collections::BTreeMap;

use crate::tokens::{Ink, Tokens};

/// What holds by day, and whatever is the same by night.
pub(crate) fn by_day(tokens: &Tokens) -> String {
    let mut out = inks(&tokens.ink.light);
    for (name, kind) in &tokens.types.screen {
        out += &format!("    <dimen name=\"type_{name}\">{}sp</dimen>\n", kind.0);
        out += &format!("    <dimen name=\"line_{name}\">{}sp</dimen>\n", kind.1);
        out += &format!("    <integer name=\"weight_{name}\">{}</integer>\n", kind.2);
    }
    for (name, size) in tokens.space.iter().chain(&tokens.size) {
        out += &format!("    <dimen name=\"{name}\">{size}dp</dimen>\n");
    }
    for (name, size) in &tokens.radius {
        out += &format!("    <dimen name=\"radius_{name}\">{size}dp</dimen>\n");
    }
    for (name, width) in &tokens.line {
        out += &format!("    <dimen name=\"stroke_{name}\">{width}dp</dimen>\n");
    }
    for (name, time) in &tokens.motion {
        out += &format!("    <integer name=\"motion_{name}\">{time}</integer>\n");
    }
    framed(&out)
}

/// The inks by night.
pub(crate) fn by_night(tokens: &Tokens) -> String {
    framed(&inks(&tokens.ink.dark))
}

fn inks(inks: &BTreeMap<String, Ink>) -> String {
    inks.iter().map(|(name, ink)| format!("    <color name=\"{name}\">{}</color>\n", ink.written())).collect()
}

fn framed(lines: &str) -> String {
    format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<!-- Made from look/tokens.toml by `cargo run -p look`. -->\n\
         <resources>\n{lines}</resources>\n"
    )
}
