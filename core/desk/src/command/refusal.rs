//! How an error is told: in sentences, or as one JSON object.

use facts::error::{FactsError, NotASurvey};
use phrase::{Arg, Phrase};
use serde_json::{Map, Value, json};
use telling::words::error::InWords;

use super::context::Context;
use crate::clean;
use crate::error::{DeskError, Unconfirmed};
use crate::printed::Page;
use crate::sheet::{MOST_LISTED, Problem, Problems, ValueFault};

/// What to write to standard error.
pub fn tell(error: &DeskError, context: &Context, as_json: bool) -> String {
    let problems = match error {
        DeskError::Sheet { problems, .. } => Some(problems),
        DeskError::NotSet { why, .. } => match &**why {
            ValueFault::Problems(problems) => Some(problems),
            _ => None,
        },
        _ => None,
    };
    if as_json { in_json(error, problems, context) } else { in_words(error, problems, context) }
}

fn in_words(error: &DeskError, problems: Option<&Problems>, context: &Context) -> String {
    let mut page = Page::new(crate::printed::WIDEST, false);
    page.paragraph(0, &format!("legwork: {}", context.say(&error.phrase())));
    for advice in advice(error) {
        page.paragraph(0, &context.say(&advice));
    }
    for problem in problems.into_iter().flat_map(Problems::listed) {
        page.title(&place(problem, matches!(error, DeskError::Sheet { .. }), context));
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
            &context.say(&Phrase::new("desk-more-problems").with("count", Arg::Count(more as u64))),
        );
    }
    page.into_text()
}

/// What else has to be said with an error: the warning before forgetting, the way out of damage.
fn advice(error: &DeskError) -> Vec<Phrase> {
    match error {
        DeskError::NotConfirmed(Unconfirmed::Forget { .. }) => {
            ["forget-warning", "forget-also"].map(Phrase::new).into()
        }
        DeskError::Facts(
            FactsError::Damaged { folder, .. }
            | FactsError::NotASurvey { folder, why: NotASurvey::NotSqlite },
        ) => vec![Phrase::new("desk-damaged").text("survey", folder.display().to_string())],
        DeskError::Facts(FactsError::Upheaval { .. }) => vec![Phrase::new("desk-upheaval")],
        _ => Vec::new(),
    }
}

/// `line 14, [[part]] S1, length`; of what was typed at the command, without a line.
fn place(problem: &Problem, has_lines: bool, context: &Context) -> String {
    let id = match (problem.field.is_some(), has_lines) {
        (true, true) => "desk-problem-field",
        (false, true) => "desk-problem",
        (true, false) => "desk-problem-of-value",
        (false, false) => "desk-problem-of-thing",
    };
    let place = Phrase::new(id)
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
    let phrase = error.phrase();
    let mut message = context.say(&phrase);
    for advice in advice(error) {
        message.push(' ');
        message.push_str(&context.say(&advice));
    }
    let object = json!({
        "error": {
            "name": error.name(),
            "kind": phrase.id,
            "args": args(&phrase),
            "exit_code": error.exit_code(),
            "message": message,
            "problem_count": problems.map(Problems::count),
            "problems": listed,
        }
    });
    clean::json(&format!("{object}\n"))
}

/// What a phrase speaks of, for programs: numbers as numbers, what is a phrase itself with its kind.
fn args(phrase: &Phrase) -> Map<String, Value> {
    phrase.args.iter().map(|(name, arg)| ((*name).to_owned(), arg_in_json(arg))).collect()
}

fn arg_in_json(arg: &Arg) -> Value {
    match arg {
        Arg::Text(text) | Arg::Typed(text) => json!(text),
        Arg::Count(count) | Arg::Minutes(count) | Arg::When(count) => json!(count),
        Arg::Number(number)
        | Arg::Length(number)
        | Arg::Loss(number)
        | Arg::Level(number)
        | Arg::Rate(number)
        | Arg::RateAsRead(number)
        | Arg::Frequency(number)
        | Arg::Milliseconds(number)
        | Arg::Share(number) => json!(number),
        Arg::LengthRange(span)
        | Arg::LossRange(span)
        | Arg::RateRange(span)
        | Arg::RateRangeBeside { range: span, .. }
        | Arg::MillisecondsRange(span) => {
            json!({ "likely": span.likely, "low": span.low, "high": span.high })
        }
        Arg::Band(from, to) => json!([from, to]),
        Arg::Phrase(phrase) => json!({ "kind": phrase.id, "args": args(phrase) }),
        Arg::Several(several) => several.iter().map(arg_in_json).collect(),
    }
}
