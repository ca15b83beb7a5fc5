//! Every kind of finding and every caution stands on a screen that a person comes to and that explains it.

use std::collections::BTreeSet;

use crate::whole_house::{edits_of, guide_at, quick};
use advice::finding::{Caution, FindingKind, findings};
use advice::forecast::forecast;
use facts::fact::{AuthorId, Edit};
use facts::store::Store;
use guide::screen::{Block, CautionBlock};
use guide::{Deed, Guide, Screen};
use house::rating::{Band, PartRating};
use house::record::{
    CableKind, HowMeasured, OtherNetwork, Part, ReadingKind, ServiceKind, Survey, TestReach, field, take_in,
};
use houses::{House, good_house};
use phrase::Phrase;
use telling::words::{Figures, Language};
use tempfile::TempDir;

/// A guide over one house, on its findings.
struct Found {
    guide: Guide,
    _home: TempDir,
}

impl Found {
    fn of(house: &Survey) -> Self {
        let home = tempfile::tempdir().unwrap();
        let folder = home.path().join("house.legwork");
        let mut store = Store::create(&folder, AuthorId::random()).unwrap();
        let survey = store.survey_id().subject();
        let mut edits = edits_of(house, survey, &store);
        edits.push(Edit::new(survey, field::NAME, "An invented house"));
        let asked = house.asked.iter();
        edits.extend(asked.map(|((about, question), answer)| {
            let about = if *about == house.id { survey } else { *about };
            Edit::new(about, question.field(), answer.clone())
        }));
        edits.extend(house.parts.values().flat_map(measurement_of));
        store.write(&edits).unwrap();
        drop(store);
        let mut guide = guide_at(home.path());
        guide.open(&folder).unwrap();
        let mut found = Self { guide, _home: home };
        found.press("findings");
        found
    }

    fn press(&mut self, key: &str) -> Screen {
        let screen = self.guide.screen();
        assert!(screen.keys().contains(&key), "no {key} on {}: {:?}", screen.name, screen.keys());
        self.guide.act(&Deed::Press { key: key.into() }).unwrap();
        self.guide.settle_long_work();
        self.guide.screen()
    }

    /// The rows of the findings, each with the kind that its key begins with.
    fn rows(&self) -> Vec<String> {
        let screen = self.guide.screen();
        assert_eq!(screen.name, "findings");
        screen.keys().into_iter().filter(|key| key.starts_with("finding:")).map(str::to_owned).collect()
    }
}

/// A part measured over as many ports and as far, as a file brings it.
fn measurement_of(part: &Part) -> Vec<Edit> {
    let Some(measured) = &part.measured else { return Vec::new() };
    let row = vec!["0 0"; measured.ports()].join(" ");
    let matrix = vec![row; measured.ports()].join("\n");
    let (low, high) = measured.range();
    let text = format!("# MHz S RI R 75\n{} {matrix}\n{} {matrix}\n", low.value(), high.value());
    let taken = take_in(&format!("part.s{}p", measured.ports()), text.as_bytes()).unwrap();
    let mut edits = taken.edits;
    edits.push(Edit::new(part.id, field::MEASUREMENT, taken.id.to_string()));
    edits
}

fn english() -> Language {
    guide::english(Figures::default())
}

fn cautions_of(screen: &Screen) -> BTreeSet<String> {
    let cautions = screen.blocks.iter().filter_map(|block| match block {
        Block::Caution(CautionBlock { words, .. }) => Some(words.clone()),
        _ => None,
    });
    cautions.collect()
}

/// Whether a screen says this; a sentence of its own begins with a capital letter.
fn says(screen: &Screen, language: &Language, phrase: &Phrase) -> bool {
    let wanted = language.say(phrase).to_lowercase();
    screen.spoken().iter().any(|said| said.to_lowercase().contains(&wanted))
}

/// Where the cases of the survey bring a forecast that they made up: a house in which the guide's own finds the same.
fn house_of(kind: FindingKind, there: &Survey) -> Survey {
    match kind {
        FindingKind::MeasuredAboveForecast => {
            let measured = ReadingKind::Throughput { down_mbps: 2400.0, up_mbps: 2400.0 };
            let how = HowMeasured::new(TestReach::House, false);
            good_house()
                .at("S1")
                .with(|splitter| splitter.rating = PartRating::of_label("2-WAY 5-900MHz 3.5dB"))
                .at("O2")
                .over(CableKind::FiftyNine, 150.0)
                .reads_how(measured, Some(how))
                .survey()
        }
        FindingKind::NoChannel => good_house()
            .about_service(ServiceKind::ProviderNetwork, |service| {
                let bands = vec![Band { low_mhz: 1000.0, high_mhz: 1700.0 }];
                service.network = Some(OtherNetwork { version: None, bands, nodes: 2 });
            })
            .survey(),
        FindingKind::WishesDoNotFit => {
            let more = |house: House, number: u8| {
                let [tag, room] = ["O", "Room "].map(|word| format!("{word}{number}"));
                house
                    .outlet(&tag, &room)
                    .from("S1", number)
                    .over(CableKind::Six, 10.0)
                    .plugged(&[])
                    .adapter("2.5")
                    .wish(&room, 900.0)
            };
            let house = good_house().at("S1").with(|splitter| splitter.rating.legs = 5);
            (3..=5).fold(house.wish("Office", 900.0), more).survey()
        }
        // Over the real forecast of this house a PHY rate of 2,350 Mb/s is no longer that of a coax that is well.
        FindingKind::HundredSomewhere => {
            let measured = ReadingKind::Throughput { down_mbps: 80.0, up_mbps: 80.0 };
            good_house().at("O2").reads(measured).survey()
        }
        _ => there.clone(),
    }
}

#[test]
fn every_finding_is_explained_on_a_screen_of_its_own() {
    let language = english();
    let mut missing = BTreeSet::new();
    let mut cautions = BTreeSet::new();
    for case in houses::finding_cases::cases() {
        let house = house_of(case.kind, &case.there.survey);
        let mut found = Found::of(&house);
        let begins = format!("finding:{} ", case.kind.id());
        let Some(row) = found.rows().into_iter().find(|row| row.starts_with(&begins)) else {
            missing.insert(case.kind.id());
            continue;
        };
        let screen = found.press(&row);
        assert_eq!(screen.name, "finding", "{row}");
        // The same past the guide, over a forecast of as many draws.
        let told = forecast(&house, &quick().stating).unwrap();
        let told = findings(&house, Some(&told));
        let finding = told.iter().find(|finding| finding.kind == case.kind).unwrap();
        for phrase in [finding.what(), finding.why(), finding.todo(), finding.source()] {
            assert!(says(&screen, &language, &phrase), "{row} lacks {phrase:?}: {:#?}", screen.spoken());
        }
        let shown = cautions_of(&screen);
        for caution in finding.cautions() {
            assert!(shown.contains(&language.say(&caution.phrase())), "{row} lacks {caution:?}");
        }
        cautions.extend(cautions_of(&screen));
    }
    assert!(missing.is_empty(), "no screen of {missing:?}");
    // Some cautions belong to work, not to a finding: a cable to a room that has none.
    let mut found = Found::of(&good_house().wish("Attic", 900.0).survey());
    found.press("work");
    let steps: Vec<String> = {
        let screen = found.guide.screen();
        screen.keys().into_iter().filter(|key| key.starts_with("step:")).map(str::to_owned).collect()
    };
    for step in steps {
        cautions.extend(cautions_of(&found.press(&step)));
        found.guide.act(&Deed::Back).unwrap();
    }
    let silent: Vec<_> = Caution::ALL
        .into_iter()
        .filter(|caution| !cautions.contains(&language.say(&caution.phrase())))
        .collect();
    assert!(silent.is_empty(), "on no screen: {silent:?}");
}
