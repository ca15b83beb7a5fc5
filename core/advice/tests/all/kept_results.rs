//! What is kept of results: of which house, with which options, by whom; and the same when it is read.

use advice::forecast::Options as Draws;
use advice::kept::{Kept, mark};
use advice::worklist::{Options, worklist};
use facts::fact::SubjectId;
use house::record::{Note, PartKind, Survey};
use houses::{change_cases, good_house, part_id, refusal_cases};

fn few() -> Options {
    let draws = |draws| Draws { draws, seed: 1, points: 45, settles: false };
    Options { screening: draws(4), stating: draws(8), ..Options::default() }
}

#[test]
fn every_change_and_every_refusal_is_kept_as_it_is() {
    let changes = change_cases::cases().into_iter().map(|case| (case.name.to_owned(), case.there.survey()));
    let refusals = refusal_cases::cases().into_iter().map(|case| (case.name.to_owned(), case.there.survey()));
    let mut seen = 0;
    for (name, survey) in changes.chain(refusals) {
        let list = worklist(&survey, &few()).expect("a sound house");
        seen += list.steps.len() + list.refused.len();
        let kept = Kept { forecast: list.as_found.clone(), list: Some(list), stakes: None };
        let bytes = kept.to_bytes().expect("bytes");
        assert_eq!(Kept::of_bytes(&survey, &bytes), Some(kept), "{name}");
        for end in [0, 1, bytes.len() / 2, bytes.len() - 1] {
            assert_eq!(Kept::of_bytes(&survey, &bytes[..end]), None, "{name} cut at {end}");
        }
    }
    assert!(seen > 50, "{seen}");
}

/// One thing said otherwise.
type Says<'a> = (&'a str, &'a dyn Fn(&mut Survey));

#[test]
fn another_house_has_another_mark_and_another_name_has_none() {
    let survey = good_house().wish("Office", 300.0).survey();
    let here = mark(&survey, &few());
    assert_eq!(mark(&survey.clone(), &few()), here);
    assert_ne!(mark(&survey, &Options::default()), here, "other options");
    let splitter = part_id(&survey, "S1");
    let counts: [Says<'_>; 6] = [
        ("a kind", &|house| house.parts[&splitter].kind = PartKind::Barrel),
        ("a tag", &|house| house.parts[&splitter].tag = Some("S7".into())),
        ("a loss", &|house| house.parts[&splitter].rating.leg_losses_db = vec![3.5, 3.6]),
        ("a length", &|house| {
            let length = house.runs.values_mut().find_map(|run| run.length.as_mut()).expect("a length");
            length.metres += 1e-12;
        }),
        ("a wish", &|house| house.rooms.values_mut().for_each(|room| room.wish = None)),
        ("the adapters", &|house| house.network.version = "2.0".into()),
    ];
    for (what, says) in counts {
        let mut other = survey.clone();
        says(&mut other);
        assert!(other != survey, "{what}");
        assert_ne!(mark(&other, &few()), here, "{what}");
    }
    let counts_not: [Says<'_>; 3] = [
        ("whose house it is", &|house| (house.name, house.place) = (Some("A".into()), Some("B".into()))),
        ("where a part sits", &|house| house.parts[&splitter].place = Some("behind the shelf".into())),
        ("a note", &|house| {
            let id = SubjectId::random();
            house.notes.insert(id, Note { id, about: None, text: "The hatch sticks.".into() });
        }),
    ];
    for (what, says) in counts_not {
        let mut other = survey.clone();
        says(&mut other);
        assert!(other != survey, "{what}");
        assert_eq!(mark(&other, &few()), here, "{what}");
    }
}
