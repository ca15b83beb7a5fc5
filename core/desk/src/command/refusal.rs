//! How an error is told: in sentences, or as one JSON object.

use facts::error::{FactsError, NotASurvey};
use phrase::Phrase;
use serde_json::json;

use super::Context;
use crate::error::{DeskError, Unconfirmed};
use crate::page::Page;
use crate::sheet::{MOST_LISTED, Problem, Problems};

/// What to write to standard error.
pub fn tell(error: &DeskError, context: &Context, as_json: bool) -> String {
    let problems = match error {
        DeskError::Sheet { problems, .. } => Some(problems),
        _ => None,
    };
    if as_json { in_json(error, problems, context) } else { in_words(error, problems, context) }
}

fn in_words(error: &DeskError, problems: Option<&Problems>, context: &Context) -> String {
    let mut page = Page::new(crate::page::WIDEST, false);
    page.paragraph(0, &format!("legwork: {error}"));
    for advice in advice(error) {
        page.paragraph(0, &context.word(advice));
    }
    for problem in problems.into_iter().flat_map(Problems::listed) {
        page.title(&place(problem, context));
        let mut rows =
            vec![(context.word("desk-expected"), context.say(&problem.expected)), to_do(problem, context)];
        if !problem.found.is_empty() {
            rows.insert(0, (context.word("desk-found"), problem.found.clone()));
        }
        page.rows(2, &rows);
    }
    let more = problems.map_or(0, Problems::count).saturating_sub(MOST_LISTED);
    if more > 0 {
        page.gap();
        page.paragraph(
            0,
            &context.say(&Phrase::new("desk-more-problems").with("count", phrase::Arg::Count(more as u64))),
        );
    }
    page.into_text()
}

/// What else has to be said with an error: the warning before forgetting, the way out of damage.
fn advice(error: &DeskError) -> &'static [&'static str] {
    match error {
        DeskError::NotConfirmed(Unconfirmed::Forget { .. }) => &["forget-warning", "forget-also"],
        DeskError::Facts(
            FactsError::Damaged { .. } | FactsError::NotASurvey { why: NotASurvey::NotSqlite, .. },
        ) => &["desk-damaged"],
        _ => &[],
    }
}

/// `line 14, [[part]] S1, length`
fn place(problem: &Problem, context: &Context) -> String {
    let place = Phrase::new(if problem.field.is_some() { "desk-problem-field" } else { "desk-problem" })
        .text("line", problem.line.to_string())
        .phrase("place", problem.place.phrase())
        .text("field", problem.field.clone().unwrap_or_default());
    context.say(&place)
}

fn to_do(problem: &Problem, context: &Context) -> (String, String) {
    (context.word("desk-to-do"), context.say(&problem.expected.attribute("do")))
}

fn in_json(error: &DeskError, problems: Option<&Problems>, context: &Context) -> String {
    let listed = problems.map(|problems| {
        let one = |problem: &Problem| {
            json!({
                "line": problem.line,
                "column": problem.column,
                "place": context.say(&problem.place.phrase()),
                "field": problem.field,
                "found": problem.found,
                "expected": context.say(&problem.expected),
                "to_do": to_do(problem, context).1,
            })
        };
        problems.listed().map(one).collect::<Vec<_>>()
    });
    let mut message = error.to_string();
    for advice in advice(error) {
        message.push(' ');
        message.push_str(&context.word(advice));
    }
    let object = json!({
        "error": {
            "name": error.name(),
            "exit_code": error.exit_code(),
            "message": message,
            "problem_count": problems.map(Problems::count),
            "problems": listed,
        }
    });
    format!("{object}\n")
}
