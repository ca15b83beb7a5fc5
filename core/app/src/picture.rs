//! Our own drawings of what to look for, as marks.

use survey::words::Language;

use crate::ask::Question;
use crate::screen::FigureBlock;

/// The drawings that go with a question.
pub(crate) fn of(question: &Question, language: &Language) -> Vec<FigureBlock> {
    let _ = (question, language);
    Vec::new()
}
