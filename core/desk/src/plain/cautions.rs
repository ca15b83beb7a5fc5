//! Every caution of a screen in full, where only heads stand on it.

use guide::screen::{Block, Screen};

/// The sign that shows every caution of a screen in full.
pub const CAUTIONS: &str = "!";

/// Every caution of a screen in full; nothing where it has none.
pub fn cautions(screen: &Screen) -> Option<String> {
    let caution = |block: &Block| match block {
        Block::Caution(caution) => Some(format!("! {}: {}", caution.name, caution.words)),
        _ => None,
    };
    let said: Vec<_> = screen.blocks.iter().filter_map(caution).collect();
    (!said.is_empty()).then(|| crate::clean::lines(&said.join("\n\n")))
}
