//! What gets through to one outlet: both ways, what limits it, where the loss arises.

use advice::forecast::{CostAt, PathForecast, Reach, told};
use advice::verdict::{Wished, doubt_of_link};
use facts::fact::SubjectId;
use phrase::{Arg, Phrase};

use super::{telling, waiting};
use crate::place::Key;
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::{ScreenBuilder, shown};

pub(crate) fn show(snapshot: &SurveySnapshot<'_>, outlet: SubjectId) -> Screen {
    let survey = snapshot.survey;
    let title = Phrase::new("room-title").phrase("outlet", shown::outlet(survey, outlet));
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &title);
    let Some(worked) = waiting::worked(snapshot, &mut builder) else { return builder.screen };
    let mut mended = false;
    let room = worked.forecast().room(outlet);
    match room.map(|room| &room.reach) {
        None => builder.words(WordsRole::Problem, &Phrase::new("gone")),
        Some(Reach::Estimated(path)) => {
            let doubt = room.and_then(|room| doubt_of_link(survey, room));
            draw(snapshot, &mut builder, outlet, path, doubt.as_ref());
        }
        Some(reach) => {
            builder.words(WordsRole::Lead, &telling::reach(survey, outlet, reach));
            if let Some(question) = telling::mending(survey, outlet, reach) {
                builder.words(WordsRole::How, &Phrase::new("room-mend"));
                let title = question.phrase(snapshot).attribute("title");
                builder.press(&Key::Ask(question.clone()), &title, PressWeight::Main);
                mended = true;
            }
        }
    }
    if let Some(wished) = room.and_then(|room| Wished::at(survey, room)) {
        builder.words(WordsRole::Plain, &wished.phrase());
    }
    let weight = if mended { PressWeight::Other } else { PressWeight::Main };
    builder.press(&Key::Forecast, &Phrase::new("to-forecast"), weight);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

fn draw(
    snapshot: &SurveySnapshot<'_>,
    builder: &mut ScreenBuilder<'_>,
    outlet: SubjectId,
    path: &PathForecast,
    doubt: Option<&Phrase>,
) {
    let survey = snapshot.survey;
    let way = |id: &str, span| Phrase::new(id).phrase("rate", told::rate(span));
    builder.words(WordsRole::Lead, &way("room-down", path.down));
    builder.words(WordsRole::Lead, &way("room-up", path.up));
    let limit = telling::limit(survey, outlet, path);
    builder.words(WordsRole::Why, &Phrase::new("room-limit").phrase("limit", limit));
    if let Some(doubt) = doubt {
        builder.words(WordsRole::Plain, doubt);
    }
    let mut costs: Vec<_> = path.costs.iter().filter(|cost| cost.db >= 0.05).collect();
    costs.sort_by(|a, b| b.db.total_cmp(&a.db));
    let whole: f64 = costs.iter().map(|cost| cost.db).sum();
    let rows = costs
        .into_iter()
        .take(shown::ROWS)
        .map(|cost| {
            let (CostAt::Part(id) | CostAt::RunTo(id)) = cost.at;
            let loss = Phrase::new("room-loss").with("loss", Arg::Loss(cost.db));
            let place = told::place(survey, cost.at);
            builder.row(Some(Key::Part(id)), &place, Some(&loss), None).share(cost.db / whole)
        })
        .collect();
    builder.rows(&Phrase::new("room-costs"), rows);
    if path.costs.iter().any(|cost| telling::is_splitter(survey, cost.at)) {
        builder.words(WordsRole::Aside, &Phrase::new("splitter-above-print"));
    }
}
