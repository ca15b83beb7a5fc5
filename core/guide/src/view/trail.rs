//! Where we are, from the whole to the part.

use phrase::Phrase;

use crate::place::Place;
use crate::session::Scene;

/// Where we are: the survey's name, and the stage of a question.
pub(crate) fn trail(scene: &Scene<'_>, place: &Place) -> Vec<String> {
    let name = scene.survey.name.clone().filter(|name| !name.trim().is_empty());
    let mut trail = vec![name.unwrap_or_else(|| scene.language.say(&Phrase::new("survey-untitled")))];
    if let Place::Ask(question) = place {
        trail.push(scene.language.say(&question.stage().phrase()));
    }
    trail
}
