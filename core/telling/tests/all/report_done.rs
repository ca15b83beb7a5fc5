//! The report after the work: what was done, how it stands, and what is left. Every house here is invented.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::forecast::Options as Draws;
use advice::unknown::unknowns;
use advice::worklist::{Options, worklist};
use facts::fact::SubjectId;
use house::record::{
    Asked, Before, CableKind, ChangeKind, Connector, LengthKnown, Outcome, OutcomeKind, RunLength, Sharing,
    Survey, Work,
};
use houses::{House, good_house, part_id};
use serde_json::Value;
use telling::report::{Provenance, html};
use telling::words::{Figures, Language};

fn page(survey: &Survey) -> String {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    let options = Options { screening: draws, stating: draws, most_steps: 4, ..Options::default() };
    let list = worklist(survey, &options).expect("a sound survey");
    html(survey, &list, Provenance::default(), &Language::english(Figures::default()))
}

fn worked(house: House, ends: &[(OutcomeKind, Option<bool>)]) -> Survey {
    let mut survey = house.survey();
    let part = part_id(&survey, "S1");
    for (end, others_fine) in ends {
        let id = SubjectId::random();
        let change = ChangeKind::Cap { part, port: 2 };
        let outcome = Outcome { end: *end, others_fine: *others_fine };
        survey.works.insert(id, Work { id, change, outcome, before: Before::default() });
    }
    survey
}

#[test]
fn what_became_of_each_change_is_told() {
    let cases = [
        ((OutcomeKind::Done, Some(true)), "terminator. TV and internet were fine afterwards."),
        ((OutcomeKind::Done, Some(false)), "Something was worse afterwards."),
        ((OutcomeKind::Done, None), "Nobody said whether TV and internet were fine"),
        ((OutcomeKind::CouldNot, None), "Could not be done"),
        ((OutcomeKind::PutBack, None), "Put back as it was"),
    ];
    for (end, words) in cases {
        let page = page(&worked(good_house(), &[end]));
        assert!(page.contains(words), "{words}");
        for (other, not) in cases {
            assert!(other == end || !page.contains(not), "{words}: {not}");
        }
    }
    assert!(page(&good_house().survey()).contains("No change was made yet."));
}

#[test]
fn the_answers_about_the_whole_house_are_told() {
    let told_of = |mut survey: Survey, question: Asked, answer: &str| {
        survey.asked.insert((survey.id, question), Value::from(answer));
        page(&survey)
    };
    let told = |question, answer: &str| told_of(good_house().survey(), question, answer);
    assert!(told(Asked::PrivatePassword, "yes").contains("Private: all adapters have the same"));
    assert!(told(Asked::PrivatePassword, "no").contains("Not private yet"));
    assert!(told(Asked::StillFine, "no").contains("something is worse than before"));
    // An answer of a later version is not taken for another.
    let open = "Whether the adapters have a privacy password is not known yet";
    let after_work = || worked(good_house(), &[(OutcomeKind::Done, Some(true))]);
    assert!(told_of(after_work(), Asked::PrivatePassword, "by magic").contains(open));
    assert!(told(Asked::PrivatePassword, "by magic").contains(open));
    // What nobody can have said yet is not called open: of adapters that are still to come, of work that was not done.
    let to_come = |mut survey: Survey, placed: &str| {
        survey.asked.insert((survey.id, Asked::Adapters), Value::from("none"));
        told_of(survey, Asked::AdaptersPlaced, placed).contains(open)
    };
    assert!(!to_come(good_house().survey(), "no"));
    assert!(to_come(good_house().survey(), "yes") && to_come(after_work(), "no"));
    let still_fine = "Whether TV and internet work as before is not known yet";
    assert!(page(&after_work()).contains(still_fine) && !page(&good_house().survey()).contains(still_fine));
}

#[test]
fn with_the_work_done_nothing_more_is_worth_it() {
    let nothing = "No change was found that is worth the work.";
    let more = "nothing more is worth it";
    // The modem shares its outlet through the adapter already, so nothing is left to do.
    let settled = || good_house().at("O1").with(|outlet| outlet.sharing = Some(Sharing::ThroughPort));
    let (before, after) =
        (page(&settled().survey()), page(&worked(settled(), &[(OutcomeKind::Done, Some(true))])));
    assert!(before.contains(nothing) && !before.contains(more));
    assert!(after.contains(more) && !after.contains(nothing));
}

/// Nobody measured or guessed what only joins two parts side by side.
#[test]
fn a_jumper_is_neither_measured_nor_guessed_nor_unknown() {
    let house = |metres: f64, high_metres: f64| {
        let length = RunLength { metres, low_metres: 0.1, high_metres, known: LengthKnown::Guessed };
        good_house()
            .at("S1")
            .over(CableKind::Unknown, 0.3)
            .run(move |run| {
                run.length = Some(length);
                (run.connector_near, run.connector_far) = (Connector::Compression, Connector::Compression);
            })
            .survey()
    };
    let asked = |survey: &Survey| {
        let forecast =
            advice::forecast::forecast(survey, &Draws { draws: 8, seed: 1, points: 89, settles: false });
        let about = part_id(survey, "S1");
        let open = unknowns(survey, &forecast.expect("a sound survey"));
        open.into_iter().filter(|unknown| unknown.about == about).count()
    };
    let (short, long) = (house(0.3, 1.0), house(4.0, 6.0));
    assert_eq!((asked(&short), asked(&long)), (0, 2));
    let page = page(&short);
    // Among the figures that are estimated for any house stands that of a jumper.
    let (of_the_house, _) = page.split_once("id=\"sources\"").expect("the section of sources");
    assert!(
        of_the_house.contains("assumed short") && !of_the_house.contains("0.3 m"),
        "no figure for a jumper"
    );
}

/// The rule of the guide: what changes no rate by 15 Mb/s hardly changes the forecast, wherever it is.
#[test]
fn what_hardly_changes_the_forecast_is_not_called_weighty() {
    let page = page(&good_house().at("O2").over_guessed(CableKind::Six, 4.0, LengthKnown::Guessed).survey());
    assert!(page.contains("it hardly changes the forecast"));
    assert!(!page.contains("on the way to the weakest room"));
}
