//! The numbers as they stand in the file, line by line.

use super::error::TouchstoneError;
use crate::model::Measured;

/// All numbers of the network data, and where their lines begin.
#[derive(Debug, Default)]
pub(super) struct Data {
    pub(super) numbers: Vec<f64>,
    lines: Vec<Line>,
}

/// A line of them.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line {
    /// Its place in the file, counted from 1.
    pub(super) number: usize,
    /// Its first number's place.
    pub(super) first: usize,
    pub(super) count: usize,
}

impl Data {
    pub(super) fn add_line(&mut self, line: &str, number: usize) -> Result<(), TouchstoneError> {
        let found = numbers(line, number)?;
        self.lines.push(Line { number, first: self.numbers.len(), count: found.len() });
        self.numbers.extend(found);
        Ok(())
    }

    /// The number of ports, from the first record of a version 1 file.
    pub(super) fn ports(&self) -> Option<usize> {
        let (first, more) = self.lines.split_first()?;
        let more: usize = more.iter().map(|line| line.count).take_while(|count| count % 2 == 0).sum();
        let values = first.count + more;
        (1..=Measured::MOST_PORTS).find(|ports| 1 + 2 * ports * ports == values)
    }

    /// The line on which a number stands.
    pub(super) fn line_of(&self, place: usize) -> Option<Line> {
        let after = self.lines.partition_point(|line| line.first <= place);
        after.checked_sub(1).and_then(|index| self.lines.get(index)).copied()
    }
}

/// The numbers of a line.
pub(super) fn numbers(line: &str, number: usize) -> Result<Vec<f64>, TouchstoneError> {
    line.split_whitespace()
        .map(|word| {
            let value = word.parse().ok().filter(|value: &f64| value.is_finite());
            value.ok_or_else(|| TouchstoneError::BadNumber { line: number, text: shortened(word) })
        })
        .collect()
}

/// Enough of a word to find it by.
pub(super) fn shortened(word: &str) -> String {
    word.chars().take(24).collect()
}
