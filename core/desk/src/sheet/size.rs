//! How much of a sheet is taken in, counted before any of it is kept: read whole, a text of nothing but brackets takes a
//! hundred times its length in memory.

use std::ops::Range;

use phrase::{Arg, Phrase};
use toml_parser::lexer::TokenKind;

use super::problem::Place;
use super::table::Source;

/// The most names, values, signs, spaces, comments and line ends. 2,000 parts told in full have 150,000.
pub const MOST_PIECES: usize = 250_000;
/// The most tables and lists, counted by what opens one: a bracket, or the dot of a name. 2,000 parts told in full have
/// 14,000.
const MOST_OPENED: usize = 20_000;

/// Of how many pieces a sheet is made; one that is made of too much is noted.
pub fn pieces(source: &Source) -> Option<usize> {
    // Texts over many lines are one piece each.
    if source.lines() > MOST_PIECES {
        let end = source.text().len();
        return refuse(source, &(end..end), "sheet-pieces", MOST_PIECES);
    }
    let (mut pieces, mut opened) = (0, 0);
    for token in toml_parser::Source::new(source.text()).lex() {
        pieces += 1;
        opened += usize::from(matches!(
            token.kind(),
            TokenKind::Dot | TokenKind::LeftSquareBracket | TokenKind::LeftCurlyBracket
        ));
        let (message, most) = match () {
            () if pieces > MOST_PIECES => ("sheet-pieces", MOST_PIECES),
            () if opened > MOST_OPENED => ("sheet-opened", MOST_OPENED),
            () => continue,
        };
        return refuse(source, &(token.span().start()..token.span().end()), message, most);
    }
    Some(pieces)
}

fn refuse(source: &Source, span: &Range<usize>, message: &str, most: usize) -> Option<usize> {
    let expected = Phrase::new(message).with("most", Arg::Count(most as u64));
    source.refuse(span, &Place::Whole, None, source.slice(span), expected);
    None
}
