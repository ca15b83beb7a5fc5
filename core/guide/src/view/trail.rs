//! Where we are, from the whole to the part.

use phrase::Phrase;

use crate::place::Place;
use crate::session::SurveySnapshot;

/// Where we are: the survey's name, and the stage of a question.
pub(crate) fn trail(snapshot: &SurveySnapshot<'_>, place: &Place) -> Vec<String> {
    let name = snapshot.survey.name.clone().filter(|name| !name.trim().is_empty());
    let mut trail = vec![name.unwrap_or_else(|| snapshot.language.say(&Phrase::new("survey-untitled")))];
    if let Place::Ask(question) = place {
        trail.push(snapshot.language.say(&question.stage().phrase()));
    }
    trail
}
