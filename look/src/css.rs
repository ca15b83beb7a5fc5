//! The tokens as custom properties of CSS.

use std::collections::BTreeMap;

use crate::tokens::{Ink, Tokens};

/// Pixels of a browser's text of usual size, to which all sizes of type are in proportion.
const ROOT: f64 = 16.0;

/// The tokens as custom properties: by day, by night where the reader's device asks for it, on paper.
pub fn css(tokens: &Tokens) -> String {
    let mut out = String::from("/* Made from look/tokens.toml by `cargo run -p look`. */\n:root {\n");
    for (name, family) in &tokens.font {
        out += &format!("  --f-{name}: {family};\n");
    }
    for (name, kind) in &tokens.types.screen {
        let (size, leading) = (f64::from(kind.0), f64::from(kind.1));
        out += &format!("  --{name}-size: {}rem;\n", round(size / ROOT));
        out += &format!("  --{name}-lead: {};\n", round(leading / size));
        out += &format!("  --{name}-weight: {};\n", kind.2);
    }
    let print = &tokens.types.print;
    for (name, size) in
        [("text", &print.text), ("says", &print.says), ("head", &print.head), ("lead", &print.lead)]
    {
        out += &format!("  --print-{name}: {size};\n");
    }
    out += &format!("  --print-leading: {};\n", print.leading);
    pixels(&mut out, "", &tokens.space);
    pixels(&mut out, "", &tokens.size);
    pixels(&mut out, "r-", &tokens.radius);
    for (name, width) in &tokens.line {
        out += &format!("  --l-{name}: {width}px;\n");
    }
    for (name, cable) in tokens.cable.iter().filter(|(_, cable)| !cable.dash.is_empty()) {
        out += &format!("  --c-{name}-dash: {};\n", cable.dashes());
    }
    for (name, time) in &tokens.motion {
        out += &format!("  --m-{name}: {time}ms;\n");
    }
    out += "  color-scheme: light dark;\n";
    inks(&mut out, "  ", &tokens.ink.light);
    out += "}\n@media (prefers-color-scheme: dark) {\n  :root {\n";
    inks(&mut out, "    ", &tokens.ink.dark);
    out += "  }\n}\n@media print {\n  :root {\n    color-scheme: light;\n";
    inks(&mut out, "    ", &tokens.ink.print);
    out + "  }\n}\n"
}

fn pixels(out: &mut String, before: &str, sizes: &BTreeMap<String, u32>) {
    for (name, size) in sizes {
        *out += &format!("  --{before}{name}: {size}px;\n");
    }
}

fn inks(out: &mut String, indent: &str, inks: &BTreeMap<String, Ink>) {
    for (name, ink) in inks {
        *out += &format!("{indent}--{name}: {};\n", ink.written());
    }
}

/// With at most four decimals, so that the same tokens give the same bytes on every machine.
fn round(value: f64) -> f64 {
    (value * 10_000.0).round() / 10_000.0
}
