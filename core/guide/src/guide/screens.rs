//! The one table of all screens: where one is, what the screen is called, what draws it, what does its deeds.

use crate::done::Done;
use crate::error::Result;
use crate::page::{
    ask, enough, field, mend, more, new_survey, one_survey, order, other_name, overview, photo_part, put_off,
    result, sent, sent_work, set_aside, share, stage, surveys, this_device,
};
use crate::place::{FieldPlace, Move, Outside, Place, Question, ResultPlace, SharePlace};
use crate::screen::{FigureDrawn, Screen};
use crate::session::{SentWork, Session, SurveySnapshot};
use crate::view::{picture, trail};

/// The name of the screen that is shown while a file is read or written, wherever one is.
const LONG_WORK: &str = "long-work";

/// The drawings of the screen of a place.
pub(super) fn figures(snapshot: &SurveySnapshot<'_>, place: &Place) -> Vec<FigureDrawn> {
    match place {
        Place::Ask(question) => picture::of(question, snapshot).into_iter().map(|(_, drawn)| drawn).collect(),
        Place::Result(ResultPlace::Map) => result::map::figures(snapshot),
        _ => Vec::new(),
    }
}

/// One of them, by its name; no other is drawn.
pub(super) fn figure(snapshot: &SurveySnapshot<'_>, place: &Place, name: &str) -> Option<FigureDrawn> {
    match place {
        Place::Ask(question) => picture::named(question, snapshot, name),
        Place::Result(ResultPlace::Map) => result::map::figure(snapshot, name),
        _ => None,
    }
}

/// Makes the functions of the table out of its lines.
macro_rules! screens {
    (
        within ($snapshot:ident, $session:ident, $done:ident) {
            $($place:pat => $name:literal, $show:expr, $take:expr;)*
        }
        outside ($at:ident, $of:ident, $did:ident) {
            $($outside:pat => $outside_name:literal, $outside_show:expr, $outside_take:expr;)*
        }
    ) => {
        /// The names of the screens of the table.
        const NAMES: &[&str] = &[LONG_WORK, $($name,)* $($outside_name,)*];

        #[expect(unused_variables, reason = "not every screen shows what its deeds are about")]
        fn drawn($snapshot: &SurveySnapshot<'_>, place: &Place) -> (String, Screen) {
            match place {
                Place::Ask(question) => (name_of_question(question.name()), ask::show($snapshot, question)),
                $($place => ($name.into(), $show),)*
            }
        }

        #[expect(unused_variables, reason = "not every deed needs what its screen is about")]
        fn act_within($session: &mut Session, place: &Place, $done: &Done) -> Result<Move> {
            match place {
                Place::Ask(question) => ask::take($session, question, $done),
                $($place => $take,)*
            }
        }

        #[expect(unused_variables, reason = "not every screen shows what its deeds are about")]
        fn drawn_outside($at: &Session, outside: &Outside) -> (&'static str, Screen) {
            match outside {
                $($outside => ($outside_name, $outside_show),)*
            }
        }

        fn act_outside($of: &mut Session, outside: &Outside, $did: &Done) -> Result<Move> {
            match outside {
                $($outside => $outside_take,)*
            }
        }
    };
}

screens! {
    within (snapshot, session, done) {
        Place::Overview => "overview", overview::show(snapshot), Ok(overview::take(done));
        Place::More => "more", more::show(snapshot), Ok(more::take(done));
        Place::Stage(of) => "stage", stage::show(snapshot, *of), stage::take(session, *of, done);
        Place::PutOff => "put-off", put_off::show(snapshot), put_off::take(session, done);
        Place::PhotoPart(photo) =>
            "photo-part", photo_part::show(snapshot, *photo), photo_part::take(session, *photo, done);
        Place::Enough(round) => "enough", enough::show(snapshot, *round), enough::take(session, *round, done);

        Place::Result(ResultPlace::Forecast) => "forecast", result::forecast::show(snapshot),
            result::keys::take(session, done, |session| result::forecast::take(session, done));
        Place::Result(ResultPlace::Room(outlet)) =>
            "forecast-room", result::room::show(snapshot, *outlet), leads_on(session, done);
        Place::Result(ResultPlace::Map) => "map", result::map::show(snapshot),
            result::keys::take(session, done, |session| result::map::take(session, done));
        Place::Result(ResultPlace::Part(part)) => "part", result::part::show(snapshot, *part), leads_on(session, done);
        Place::Result(ResultPlace::Unknowns) => "unknowns", result::unknowns::show(snapshot), leads_on(session, done);
        Place::Result(ResultPlace::Findings) => "findings", result::findings::show(snapshot), leads_on(session, done);
        Place::Result(ResultPlace::Finding(finding)) =>
            "finding", result::finding::show(snapshot, finding), leads_on(session, done);
        Place::Result(ResultPlace::Work) => "work", result::work::show(snapshot),
            result::keys::take(session, done, |session| result::work::take(session, done));
        Place::Result(ResultPlace::Step(change)) => "step", result::step::show(snapshot, *change),
            result::keys::take(session, done, |session| result::step::take(session, *change, done));
        Place::Result(ResultPlace::After(work)) => "after", result::after::show(snapshot, *work),
            result::keys::take(session, done, |session| result::after::take(session, *work, done));
        Place::Result(ResultPlace::Ended(work)) => "ended", result::ended::show(snapshot, *work),
            result::keys::take(session, done, |session| result::ended::take(session, *work, done));
        Place::Result(ResultPlace::Placing) => "placing", result::placing::show(snapshot),
            result::keys::take(session, done, |session| result::placing::take(session, done));
        Place::Result(ResultPlace::Private) => "private", result::private::show(snapshot),
            result::keys::take(session, done, |session| result::private::take(session, done));
        Place::Result(ResultPlace::Tests) => "tests", result::outlet_tests::show(snapshot), leads_on(session, done);
        Place::Result(ResultPlace::Test(outlet)) => "test", result::outlet_test::show(snapshot, *outlet),
            result::keys::take(session, done, |session| result::outlet_test::take(session, *outlet, done));
        Place::Result(ResultPlace::Numbers(outlet, kind)) =>
            "test-numbers", result::numbers::show(snapshot, *outlet, *kind),
            result::keys::take(session, done, |session| result::numbers::take(session, *outlet, *kind, done));
        Place::Result(ResultPlace::Reading(reading)) => "reading", result::reading::show(snapshot, *reading),
            result::keys::take(session, done, |session| result::reading::take(session, *reading, done));
        Place::Result(ResultPlace::StillFine) => "still-fine", result::outlet_tests::show_still_fine(snapshot),
            result::keys::take(session, done, |session| result::outlet_tests::take_still_fine(session, done));
        Place::Result(ResultPlace::Compare) => "compare", result::compare::show(snapshot), leads_on(session, done);
        Place::Result(ResultPlace::Handover) => "handover", result::handover::show(snapshot),
            result::keys::take(session, done, |session| result::handover::take(session, done));

        Place::Field(at @ FieldPlace::Parts) =>
            "free-parts", field::frame::show(snapshot, field::part::show_all(snapshot)),
            field::frame::take(session, at, done, |_, key| Ok(field::part::pressed_all(key)));
        Place::Field(at @ FieldPlace::Part(part)) =>
            "free-part", field::frame::show(snapshot, field::part::show(snapshot, *part)),
            field::frame::take(session, at, done, |session, key| field::part::pressed(session, *part, key));
        Place::Field(at @ FieldPlace::Edit(part)) =>
            "free-edit-part", field::frame::show(snapshot, field::edit::show(snapshot, *part)),
            field::frame::take(session, at, done, |session, key| field::edit::pressed(session, *part, key));
        Place::Field(at @ FieldPlace::Add(None)) =>
            "free-new-part", field::frame::show(snapshot, field::add::show(snapshot, None)),
            field::frame::take(session, at, done, |session, key| field::add::pressed(session, None, key));
        Place::Field(at @ FieldPlace::Add(behind)) =>
            "free-new-behind", field::frame::show(snapshot, field::add::show(snapshot, *behind)),
            field::frame::take(session, at, done, |session, key| field::add::pressed(session, *behind, key));
        Place::Field(at @ FieldPlace::Runs) =>
            "free-runs", field::frame::show(snapshot, field::run::show_all(snapshot)),
            field::frame::take(session, at, done, field::run::pressed_all);
        Place::Field(at @ FieldPlace::Run(run)) =>
            "free-run", field::frame::show(snapshot, field::run::show(snapshot, *run)),
            field::frame::take(session, at, done, |session, key| field::run::pressed(session, *run, key));
        Place::Field(at @ FieldPlace::Rooms) =>
            "free-rooms", field::frame::show(snapshot, field::room::show_all(snapshot)),
            field::frame::take(session, at, done, field::room::pressed_all);
        Place::Field(at @ FieldPlace::Room(room)) =>
            "free-room", field::frame::show(snapshot, field::room::show(snapshot, *room)),
            field::frame::take(session, at, done, |session, key| field::room::pressed(session, *room, key));
        Place::Field(at @ FieldPlace::Services) =>
            "free-services", field::frame::show(snapshot, field::service::show_all(snapshot)),
            field::frame::take(session, at, done, field::service::pressed_all);
        Place::Field(at @ FieldPlace::Service(service)) =>
            "free-service", field::frame::show(snapshot, field::service::show(snapshot, *service)),
            field::frame::take(session, at, done, |session, key| field::service::pressed(session, *service, key));
        Place::Field(at @ FieldPlace::Burst) =>
            "free-burst", field::frame::show(snapshot, field::burst::show(snapshot)),
            field::frame::take(session, at, done, |_, key| Ok(field::burst::pressed(key)));
        Place::Field(at @ FieldPlace::Assign) =>
            "free-assign", field::frame::show(snapshot, field::assign::show(snapshot)),
            field::frame::take(session, at, done, field::assign::pressed);
        Place::Field(at @ FieldPlace::Photo(photo)) =>
            "free-photo", field::frame::show(snapshot, field::photo::show(snapshot, *photo)),
            field::frame::take(session, at, done, |session, key| field::photo::pressed(session, *photo, key));
        Place::Field(at @ FieldPlace::MeterAt) =>
            "free-meter", field::frame::show(snapshot, field::meter::show_places(snapshot)),
            field::frame::take(session, at, done, |_, key| Ok(field::meter::pressed_place(key)));
        Place::Field(at @ FieldPlace::Meter(part)) =>
            "free-meter-at", field::frame::show(snapshot, field::meter::show(snapshot, *part)),
            field::frame::take(session, at, done, |session, key| field::meter::pressed(session, *part, key));
        Place::Field(at @ FieldPlace::Here) =>
            "free-here", field::frame::show(snapshot, field::here::show(snapshot)),
            field::frame::take(session, at, done, field::here::pressed);
        Place::Field(at @ FieldPlace::Stand(part)) =>
            "free-stand", field::frame::show(snapshot, field::here::show_stand(snapshot, *part)),
            field::frame::take(session, at, done, |session, key| field::here::pressed_stand(session, *part, key));

        Place::Share(SharePlace::Pack) => "share-pack", share::pack::show(snapshot),
            share::frame::take(session, done, |session| share::pack::take(session, done));
        Place::Share(SharePlace::TakeIn) => "share-take-in", share::take_in::show(snapshot),
            share::frame::take(session, done, |session| share::take_in::take(session, done));
        Place::Share(SharePlace::Disagreements) => "share-disagreements", share::disagreements::show(snapshot),
            share::frame::take(session, done, |session| share::disagreements::take(session, done));
        Place::Share(SharePlace::Disagreement(subject, field)) =>
            "share-disagreement", share::disagreement::show(snapshot, *subject, field),
            share::frame::take(session, done, |session| share::disagreement::take(session, *subject, field, done));
        Place::Share(SharePlace::Wishes) => "share-wishes", share::wishes::show(snapshot),
            share::frame::take(session, done, |session| share::wishes::take(session, done));
        Place::Share(SharePlace::Acts) => "share-acts", share::acts::show(snapshot),
            share::frame::take(session, done, |_| Ok(share::acts::take(done)));
        Place::Share(SharePlace::Act(act)) => "share-act", share::act::show(snapshot, *act),
            share::frame::take(session, done, |session| share::act::take(session, *act, done));
        Place::Share(SharePlace::Things) => "share-things", share::things::show(snapshot),
            share::frame::take(session, done, |_| Ok(share::things::take(done)));
        Place::Share(SharePlace::Thing(subject)) => "share-thing", share::thing_story::show(snapshot, *subject),
            share::frame::take(session, done, |_| Ok(share::thing_story::take(*subject, done)));
        Place::Share(SharePlace::Field(subject, field)) =>
            "share-field", share::field_story::show(snapshot, *subject, field),
            share::frame::take(session, done, |_| Ok(share::field_story::take(*subject, field, done)));
        Place::Share(SharePlace::Removed) => "share-removed", share::removed::show(snapshot),
            share::frame::take(session, done, |_| Ok(share::removed::take(done)));
        Place::Share(SharePlace::RemovedThing(subject)) =>
            "share-removed-thing", share::removed_thing::show(snapshot, *subject),
            share::frame::take(session, done, |session| share::removed_thing::take(session, *subject, done));
        Place::Share(SharePlace::Forget(subject, field)) =>
            "share-forget", share::forget::show(snapshot, *subject, field.as_deref()),
            share::frame::take(session, done, |_| Ok(share::forget::take(*subject, field.as_deref(), done)));
        Place::Share(SharePlace::ForgetForOthers(subject, field)) =>
            "share-forget-for-others", share::forget::show_for_others(snapshot, *subject, field.as_deref()),
            share::frame::take(session, done, |session| {
                share::forget::take_for_others(session, *subject, field.as_deref(), done)
            });
    }
    outside (at, session, done) {
        Outside::Surveys => "surveys", surveys::show(at), Ok(surveys::take(session, done));
        Outside::NewSurvey => "new-survey", new_survey::show(at), new_survey::take(session, done);
        Outside::Order => "surveys-order", order::show(at), Ok(order::take(session, done));
        Outside::SetAside => "surveys-aside", set_aside::show(at), Ok(set_aside::take(session, done));
        Outside::Survey(folder) => "one-survey", one_survey::show(at, folder), one_survey::take(session, folder, done);
        Outside::Rename(folder) =>
            "survey-rename", other_name::show_rename(at, folder), other_name::take_rename(session, folder, done);
        Outside::Copy(folder) =>
            "survey-copy", other_name::show_copy(at, folder), other_name::take_copy(session, folder, done);
        Outside::Mend { folder, found_damaged, has_lost } =>
            "survey-mend", mend::show(at, *has_lost), Ok(mend::take(session, folder, (*found_damaged, *has_lost), done));
        Outside::Sent => "sent", sent::show(at), sent::take(session, done);
        Outside::Device => "device", this_device::show(at), this_device::take(session, done);
    }
}

/// What a screen of results does that only leads on.
fn leads_on(session: &mut Session, done: &Done) -> Result<Move> {
    result::keys::take(session, done, |_| Ok(Move::Stay))
}

/// The name of a question's screen.
fn name_of_question(name: &str) -> String {
    format!("ask-{name}")
}

/// The names of all screens that there are, each the same in every language.
pub fn names() -> Vec<String> {
    let questions = Question::NAMES.iter().map(|name| name_of_question(name));
    NAMES.iter().map(|name| (*name).to_owned()).chain(questions).collect()
}

/// Draws a screen within a survey.
pub(super) fn show(snapshot: &SurveySnapshot<'_>, place: &Place) -> Screen {
    let (name, screen) = drawn(snapshot, place);
    Screen { name, trail: trail(snapshot, place), ..screen }
}

/// Does what was done on a screen within a survey.
pub(super) fn take(session: &mut Session, place: &Place, done: &Done) -> Result<Move> {
    act_within(session, place, done)
}

/// Draws a screen outside any survey.
pub(super) fn show_outside(session: &Session, outside: &Outside) -> Screen {
    let (name, screen) = drawn_outside(session, outside);
    Screen { name: name.into(), ..screen }
}

/// Does what was done on a screen outside any survey.
pub(super) fn take_outside(session: &mut Session, outside: &Outside, done: &Done) -> Result<Move> {
    act_outside(session, outside, done)
}

/// Draws the screen that is shown while a file is read or written, and when that is over.
pub(super) fn show_sent_work(session: &Session, of: &SentWork) -> Screen {
    Screen { name: LONG_WORK.into(), ..sent_work::show(session, of) }
}
