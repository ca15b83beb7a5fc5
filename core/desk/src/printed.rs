//! Text for a terminal: headings, paragraphs and aligned rows, wrapped to the width there is.
//!
//! Colour only repeats what the words say, and is left out unless the output is a terminal that wants it.

use textwrap::core::display_width;

use crate::clean::one_line as plain;

/// The widest text written, columns.
pub const WIDEST: usize = 80;
/// The narrowest width that text is wrapped to.
const NARROWEST: usize = 30;

/// Text being laid out.
pub struct Page {
    text: String,
    width: usize,
    colour: bool,
}

impl Page {
    /// An empty page of this width, at most [`WIDEST`].
    pub fn new(width: usize, colour: bool) -> Self {
        Self { text: String::new(), width: width.clamp(NARROWEST, WIDEST), colour }
    }

    /// A page for standard output as it is: its width if it is a terminal, colour if the user wants it
    /// (`NO_COLOR` set to anything but nothing turns it off: no-color.org).
    pub fn for_output() -> Self {
        use std::io::IsTerminal;
        let terminal = std::io::stdout().is_terminal();
        let width = terminal.then(terminal_size::terminal_size).flatten();
        let wanted = std::env::var_os("NO_COLOR").is_none_or(|value| value.is_empty());
        let able = std::env::var_os("TERM").is_none_or(|term| term != "dumb");
        Self::new(width.map_or(WIDEST, |(width, _)| usize::from(width.0)), terminal && wanted && able)
    }

    /// The finished text.
    pub fn into_text(self) -> String {
        self.text
    }

    /// A heading, with an empty line before it unless it is the first thing on the page.
    pub fn heading(&mut self, text: &str) {
        self.gap();
        let underline = "=".repeat(display_width(&plain(text)).min(self.width));
        self.styled(text, "1", "", "");
        self.line(&underline);
    }

    /// A smaller heading.
    pub fn title(&mut self, text: &str) {
        self.gap();
        self.styled(text, "1", "", "");
    }

    /// A smaller heading with a number before it.
    pub fn numbered(&mut self, number: usize, text: &str) {
        self.gap();
        let number = format!("{number}. ");
        let indent = " ".repeat(number.len());
        self.styled(text, "1", &number, &indent);
    }

    /// A paragraph, indented by so many columns.
    pub fn paragraph(&mut self, indent: usize, text: &str) {
        let indent = " ".repeat(indent);
        self.styled(text, "", &indent, &indent);
    }

    /// A line that is not wrapped, such as an address.
    pub fn whole(&mut self, text: &str) {
        let text = plain(text);
        self.line(&text);
    }

    /// An item of a list.
    pub fn item(&mut self, indent: usize, text: &str) {
        let first = format!("{}- ", " ".repeat(indent));
        let next = " ".repeat(indent + 2);
        self.styled(text, "", &first, &next);
    }

    /// Rows of a name and what it is, the names in one column.
    pub fn rows(&mut self, indent: usize, rows: &[(String, String)]) {
        let widest = rows.iter().map(|(name, _)| display_width(&plain(name))).max().unwrap_or(0);
        let column = widest.min(self.width / 3);
        for (name, value) in rows {
            let name = plain(name);
            let pad = " ".repeat(column.saturating_sub(display_width(&name)));
            let first = format!("{}{name}{pad}  ", " ".repeat(indent));
            let next = " ".repeat(indent + column + 2);
            self.styled(value, "", &first, &next);
        }
    }

    /// An empty line, unless the page is empty or just had one.
    pub fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }

    fn styled(&mut self, text: &str, style: &str, first: &str, next: &str) {
        let text = plain(text);
        let options = textwrap::Options::new(self.width)
            .initial_indent(first)
            .subsequent_indent(next)
            .word_separator(textwrap::WordSeparator::AsciiSpace)
            // "4-way" and "6-series" stay whole.
            .word_splitter(textwrap::WordSplitter::NoHyphenation);
        for line in textwrap::wrap(&text, options) {
            if self.colour && !style.is_empty() {
                self.line(&format!("\u{1b}[{style}m{}\u{1b}[0m", line.trim_end()));
            } else {
                self.line(&line);
            }
        }
    }

    fn line(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_aligned_and_wrapped_under_themselves() {
        let mut page = Page::new(40, false);
        let rows = [
            ("to".to_owned(), "one two three four five six seven eight".to_owned()),
            ("from it".into(), "x".into()),
        ];
        page.rows(2, &rows);
        let expected = "  to       one two three four five six\n           seven eight\n  from it  x\n";
        assert_eq!(page.into_text(), expected);
    }

    #[test]
    fn nothing_in_a_name_steers_the_terminal() {
        let mut page = Page::new(80, false);
        page.paragraph(0, "a\u{1b}[31mb\u{202e}c\rd");
        assert_eq!(page.into_text(), "a\u{FFFD}[31mb\u{FFFD}c\u{FFFD}d\n");
    }

    #[test]
    fn colour_adds_nothing_to_the_words() {
        let [bare, coloured] = [false, true].map(|colour| {
            let mut page = Page::new(80, colour);
            page.heading("One");
            page.numbered(1, "two");
            page.into_text()
        });
        assert_eq!(coloured.replace("\u{1b}[1m", "").replace("\u{1b}[0m", ""), bare);
        assert_ne!(coloured, bare);
    }

    #[test]
    fn headings_stand_apart_without_colour_too() {
        let mut page = Page::new(80, false);
        page.heading("One");
        page.paragraph(0, "x");
        page.heading("Two");
        assert_eq!(page.into_text(), "One\n===\nx\n\nTwo\n===\n");
    }
}
