//! Looking writes nothing: whatever screen one opens, "go on" over an answer that stands, the same answer given once more,
//! and back leave the facts as they are. In a house with one of everything, and in houses made at random in which two
//! people disagree.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use facts::fact::{ActId, AuthorId, Edit, FactClock, FactId};
use facts::store::Store;
use guide::screen::{Block, PressWeight};
use guide::{Deed, Guide, Screen};
use house::record::{
    Asked, CableKind, Connector, LengthKnown, PartKind, Plugged, Reply, RunLength, Survey, Wish, field,
};
use houses::random::{self, seeds};
use uuid::Uuid;

use crate::whole_house::{ann, edits_of, fill, guide_at};

/// Main presses that do what they say, each on its screen: what they write was asked for in so many words.
const ACTS: [(&str, &str); 3] = [
    // The print was read aright.
    ("ask-label-read", "keep"),
    // Adapters are placed, work is done: only once something is picked there.
    ("free-services", "add"),
    ("free-rooms", "add"),
];

fn facts(folder: &Path) -> BTreeSet<FactId> {
    let store = Store::open(folder, ann()).unwrap();
    store.ledger().facts().map(facts::fact::Fact::id).collect()
}

fn act(guide: &mut Guide, deed: &Deed) {
    guide.act(deed).unwrap();
    guide.settle_long_work();
}

fn press(guide: &mut Guide, key: &str) {
    act(guide, &Deed::Press { key: key.into() });
}

fn main_press(screen: &Screen) -> Option<String> {
    screen.blocks.iter().find_map(|block| match block {
        Block::Press(press) if press.weight == PressWeight::Main => Some(press.key.clone()),
        _ => None,
    })
}

/// What a screen shows in its inputs, given to it once more.
fn as_shown(screen: &Screen) -> Vec<Deed> {
    let again = |block: &Block| match block {
        Block::Choice(choice) => {
            let picked: Vec<_> = choice.options.iter().filter(|option| option.picked).collect();
            (!picked.is_empty()).then(|| Deed::Pick {
                key: choice.key.clone(),
                picked: picked.into_iter().map(|option| option.key.clone()).collect(),
            })
        }
        Block::Writing(writing) => {
            Some(Deed::Write { key: writing.key.clone(), words: writing.text.clone() })
        }
        Block::Number(number) => Some(Deed::Measure {
            key: number.key.clone(),
            typed: number.text.clone(),
            unit: number.unit.clone(),
        }),
        _ => None,
    };
    screen.blocks.iter().filter_map(again).collect()
}

/// Somebody who only looks, and what was there before they did.
struct Looker {
    guide: Guide,
    folder: PathBuf,
    before: BTreeSet<FactId>,
    seen: BTreeSet<String>,
}

impl Looker {
    fn at(guide: Guide, folder: PathBuf) -> Self {
        let before = facts(&folder);
        Self { guide, folder, before, seen: BTreeSet::new() }
    }

    fn said_nothing(&self, what: &str, screen: &Screen) {
        let now = facts(&self.folder);
        let new = now.difference(&self.before).count();
        assert_eq!(new, 0, "{what} on {} ({}) wrote {new} facts: {screen:#?}", screen.name, screen.title);
    }

    /// Looks at the screen that `lead` leads to from the overview: on, the same once more, and back.
    fn look(&mut self, lead: &[String]) {
        for given_again in [false, true] {
            self.go(lead);
            let screen = self.guide.screen();
            self.seen.insert(screen.name.clone());
            if given_again {
                for deed in as_shown(&screen) {
                    act(&mut self.guide, &deed);
                }
                self.said_nothing("the same given once more", &screen);
            }
            // Where a choice led on by itself, one is somewhere else by now.
            let key = main_press(&screen).filter(|_| self.guide.screen().place == screen.place);
            let is_act = |key: &String| ACTS.contains(&(screen.name.as_str(), key.as_str()));
            if let Some(key) = key.filter(|key| !is_act(key)) {
                press(&mut self.guide, &key);
                self.said_nothing("going on", &screen);
            }
            act(&mut self.guide, &Deed::Back);
            self.said_nothing("back", &screen);
        }
    }

    /// From the overview, one press after the other.
    fn go(&mut self, lead: &[String]) {
        for _ in 0..80 {
            if self.guide.screen().name == "overview" {
                break;
            }
            act(&mut self.guide, &Deed::Back);
        }
        assert_eq!(self.guide.screen().name, "overview");
        for key in lead {
            press(&mut self.guide, key);
        }
    }

    fn keys(&mut self, lead: &[String], begins: &[&str]) -> Vec<String> {
        self.go(lead);
        let screen = self.guide.screen();
        let of = |key: &&str| begins.iter().any(|begin| key.starts_with(begin));
        screen.keys().into_iter().filter(of).map(str::to_owned).collect()
    }

    /// Every question of every stage, every part, cable, room and service with its questions, and what else has inputs.
    fn look_everywhere(&mut self) {
        for stage in ["house", "way-in", "splits", "cables", "outlets", "router"] {
            let list = vec![stage.to_owned()];
            for key in self.keys(&list, &["ask:"]) {
                self.look(&[stage.to_owned(), key]);
            }
        }
        let lists = [("free-parts", "part:"), ("free-runs", "run:"), ("free-rooms", "room:")];
        for (list, begins) in lists.into_iter().chain([("free-services", "service:")]) {
            let list =
                if list == "free-parts" { vec![list.to_owned()] } else { vec!["more".into(), list.into()] };
            for key in self.keys(&list, &[begins]) {
                let thing = [list.clone(), vec![key]].concat();
                self.look(&thing);
                for key in self.keys(&thing, &["ask:", "edit", "meter", "wish"]) {
                    self.look(&[thing.clone(), vec![key]].concat());
                }
            }
        }
        for key in ["private", "tests", "compare", "handover", "pack", "work", "findings", "forecast"] {
            self.look(&[key.to_owned()]);
        }
        for key in self.keys(&["tests".into()], &["test:"]) {
            for kind in ["house", "house-radio", "internet", "page", "link"] {
                let test = vec!["tests".to_owned(), key.clone()];
                self.go(&test);
                act(&mut self.guide, &Deed::Pick { key: "kind".into(), picked: vec![kind.into()] });
                let screen = self.guide.screen();
                assert_eq!(screen.name, "test-numbers");
                for deed in as_shown(&screen) {
                    act(&mut self.guide, &deed);
                }
                press(&mut self.guide, &main_press(&screen).unwrap());
                self.said_nothing("a test without a figure", &screen);
            }
        }
    }
}

#[test]
fn looking_at_everything_writes_nothing() {
    let home = tempfile::tempdir().unwrap();
    let folder = fill(home.path());
    let mut guide = guide_at(home.path());
    guide.open(&folder).unwrap();
    let mut looker = Looker::at(guide, folder);
    looker.look_everywhere();
    for name in ["ask-cable", "ask-label-read", "ask-plan", "free-edit-part", "free-service", "free-run"] {
        assert!(looker.seen.contains(name), "{name} was not seen: {:?}", looker.seen);
    }
}

/// The row of a list that says so, and its key.
fn row(screen: &Screen, head: &str) -> (String, String) {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    let found = rows.flatten().find(|row| row.head.contains(head));
    let found = found.unwrap_or_else(|| panic!("{head}: {screen:#?}"));
    (found.says.clone(), found.key.clone().unwrap())
}

#[test]
fn a_list_shows_each_answer_and_what_is_corrected_there_leads_back_to_it() {
    let home = tempfile::tempdir().unwrap();
    let folder = fill(home.path());
    let mut guide = guide_at(home.path());
    guide.open(&folder).unwrap();
    let mut looker = Looker::at(guide, folder);
    let list = vec!["cables".to_owned()];
    looker.go(&list);
    let (says, length) = row(&looker.guide.screen(), "The cable from S1 to A1: kind and length");
    assert!(says.contains("8 m") && says.contains("7.8 to 8.2") && says.contains("measured"), "{says}");
    press(&mut looker.guide, &length);
    act(&mut looker.guide, &Deed::Measure { key: "length".into(), typed: "11".into(), unit: "m".into() });
    press(&mut looker.guide, "next");
    let screen = looker.guide.screen();
    assert_eq!(screen.name, "stage");
    assert!(row(&screen, "The cable from S1 to A1: kind and length").0.contains("11 m"), "{screen:#?}");
    // Who leaves it for later comes back to the list too.
    press(&mut looker.guide, &length);
    press(&mut looker.guide, "later");
    assert_eq!(looker.guide.screen().name, "stage");
    looker.go(&["put-off".to_owned()]);
    let (says, key) = row(&looker.guide.screen(), "The cable from S1 to A1: kind and length");
    assert!(says.contains("11 m"), "{says}");
    press(&mut looker.guide, &key);
    press(&mut looker.guide, "next");
    assert_eq!(looker.guide.screen().name, "put-off");
}

#[test]
fn what_is_touched_is_taken_and_the_rest_of_the_answer_stays() {
    let home = tempfile::tempdir().unwrap();
    let folder = disputed(home.path(), 1);
    let mut guide = guide_at(home.path());
    guide.open(&folder).unwrap();
    let mut looker = Looker::at(guide, folder.clone());
    looker.go(&["cables".to_owned()]);
    let (_, key) = row(&looker.guide.screen(), "length");
    press(&mut looker.guide, &key);
    act(&mut looker.guide, &Deed::Pick { key: "known".into(), picked: vec!["guessed".into()] });
    press(&mut looker.guide, "next");
    let store = Store::open(&folder, ann()).unwrap();
    let new: Vec<_> = store.ledger().facts().filter(|fact| !looker.before.contains(&fact.id())).collect();
    // One fact: how the length is known. The figure and its range are what somebody else said.
    assert!(matches!(new.as_slice(), [fact] if fact.field() == field::LENGTH), "{new:?}");
    let said: RunLength = serde_json::from_value(new[0].value().clone()).unwrap();
    let (metres, known) = (said.metres, LengthKnown::Guessed);
    // Whichever of the two is shown.
    assert!([5.5, 8.25].contains(&metres), "{said:?}");
    assert_eq!(said, RunLength { metres, low_metres: metres - 1.5, high_metres: metres + 6.0, known });
}

/// What one of two people says of a house; told by `first`, one thing, and by the other another.
fn differing(survey: &Survey, id: facts::fact::SubjectId, first: bool) -> Vec<Edit> {
    let mut edits = vec![
        Asked::Cables.set(id, if first { Reply::Six } else { Reply::Differ }),
        Asked::Connectors.set(id, if first { Reply::Good } else { Reply::Some }),
        Asked::Uses.set(id, if first { Reply::Yes } else { Reply::Unsure }),
    ];
    for (place, run) in survey.runs.values().enumerate() {
        let far = if first { 5.5 } else { 8.25 };
        // A range that no single number would be written as.
        let length = RunLength {
            metres: far,
            low_metres: far - 1.5,
            high_metres: far + 6.0,
            known: LengthKnown::Paced,
        };
        edits.push(field::run::LENGTH.set(run.id, &length));
        if place % 2 == 0 {
            let (cable, plug) = if first {
                (CableKind::Six, Connector::Crimp)
            } else {
                (CableKind::FiftyNine, Connector::TwistOn)
            };
            edits.push(field::run::CABLE.set(run.id, &cable));
            edits.push(field::run::CONNECTOR_FAR.set(run.id, &plug));
        }
    }
    for room in survey.rooms.values() {
        let wish = Wish { down_mbps: if first { 120.0 } else { 345.5 }, up_mbps: 33.0 };
        edits.push(field::room::WISH.set(room.id, &wish));
    }
    for part in survey.parts.values().filter(|part| part.kind == PartKind::Outlet) {
        let devices = if first { vec![Plugged::Tv] } else { vec![Plugged::Modem, Plugged::Tv] };
        edits.push(field::part::PLUGGED.set(part.id, &devices));
    }
    edits
}

/// A house made at random, on which two people wrote apart.
fn disputed(home: &Path, seed: u64) -> PathBuf {
    let folder = home.join("random.legwork");
    let mut store = Store::create(&folder, ann()).unwrap();
    let id = store.survey_id().subject();
    let survey = random::survey(seed);
    let edits = edits_of(&survey, id, &store);
    store.write(&edits).unwrap();
    let bo = AuthorId::from_uuid(Uuid::from_u128(0xb0b));
    let mut clock = FactClock::system();
    for fact in store.ledger().facts() {
        clock.raise(fact.id());
    }
    let theirs =
        store.ledger().plan(ActId::random(), bo, &mut clock, &differing(&survey, id, false)).unwrap();
    store.write(&differing(&survey, id, true)).unwrap();
    store.write_facts(theirs).unwrap();
    assert!(store.ledger().disagreements().len() > 3, "nobody disagrees");
    folder
}

/// `LEGWORK_HOUSES` looks at more of them, `LEGWORK_SEED` at others.
#[test]
fn looking_at_random_houses_of_two_people_writes_nothing() {
    let first = seeds::asked("LEGWORK_SEED", 1);
    for seed in first..first + seeds::asked("LEGWORK_HOUSES", 2) {
        let home = tempfile::tempdir().unwrap();
        let folder = disputed(home.path(), seed);
        let mut guide = guide_at(home.path());
        guide.open(&folder).unwrap();
        Looker::at(guide, folder).look_everywhere();
    }
}

#[test]
fn what_hangs_on_a_thing_is_said_before_it_is_removed() {
    let home = tempfile::tempdir().unwrap();
    let folder = fill(home.path());
    let mut guide = guide_at(home.path());
    guide.open(&folder).unwrap();
    let mut looker = Looker::at(guide, folder);
    let list = vec!["free-parts".to_owned()];
    let mut asked = |head: &str| {
        looker.go(&list);
        let (_, key) = row(&looker.guide.screen(), head);
        press(&mut looker.guide, &key);
        let screen = looker.guide.screen();
        let question = screen.blocks.iter().find_map(|block| match block {
            Block::Confirm(confirm) if confirm.key == "remove" => Some(confirm.question.clone()),
            _ => None,
        });
        question.unwrap()
    };
    // Behind S1: O1, O2, A1 and, behind that, O3, of which the last has no cable yet; a photo of its print and a note.
    let splitter = asked("S1 (a 4-way splitter)");
    for says in ["4 parts", "3 cables", "1 photo", "1 note"] {
        assert!(splitter.contains(says), "{splitter}");
    }
    assert!(asked("O4").contains("Nothing else belongs to it"));
}
