//! The tokens as constants of Swift. Only numbers: what a colour or a font is says the app.

use crate::tokens::Tokens;

/// The tokens as constants.
pub(crate) fn swift(tokens: &Tokens) -> String {
    let mut out = String::from(
        "// Made from look/tokens.toml by `cargo run -p look`.\n\n\
         /// An ink by day and by night, as 0xRRGGBB.\npublic struct LookInk: Sendable {\n    \
         public let light: UInt32\n    public let dark: UInt32\n}\n\n\
         /// Size, line height and weight of a kind of type, points.\npublic struct LookType: Sendable {\n    \
         public let size: Double\n    public let line: Double\n    public let weight: Int\n}\n\n\
         /// The look as numbers, points.\npublic enum Look {\n",
    );
    for (name, light) in &tokens.ink.light {
        let dark = tokens.ink.dark.get(name).unwrap_or(light);
        let [light, dark] = [light, dark].map(|ink| ink.written().replace('#', "0x"));
        out += &format!(
            "    public static let {} = LookInk(light: {light}, dark: {dark})\n",
            camel("ink", name)
        );
    }
    for (name, kind) in &tokens.types.screen {
        out += &format!(
            "    public static let {} = LookType(size: {}, line: {}, weight: {})\n",
            camel("type", name),
            kind.0,
            kind.1,
            kind.2
        );
    }
    let whole = |sizes: &std::collections::BTreeMap<String, u32>, before: &str| {
        sizes.iter().map(|(name, size)| (camel(before, name), f64::from(*size))).collect::<Vec<_>>()
    };
    let mut sizes = whole(&tokens.space, "space");
    sizes.extend(whole(&tokens.size, "size"));
    sizes.extend(whole(&tokens.radius, "radius"));
    sizes.extend(tokens.line.iter().map(|(name, width)| (camel("line", name), *width)));
    for (name, size) in sizes {
        out += &format!("    public static let {name}: Double = {size}\n");
    }
    for (name, time) in &tokens.motion {
        out += &format!(
            "    public static let {}: Double = {}\n",
            camel("seconds", name),
            f64::from(*time) / 1000.0
        );
    }
    out + "}\n"
}

/// `accent_wash` after `ink`: `inkAccentWash`; after nothing: `accentWash`.
pub(crate) fn camel(before: &str, name: &str) -> String {
    name.split('_').fold(before.to_owned(), |mut out, word| {
        let mut letters = word.chars();
        let is_first = out.is_empty();
        out.extend(letters.next().map(|first| if is_first { first } else { first.to_ascii_uppercase() }));
        out.extend(letters);
        out
    })
}
