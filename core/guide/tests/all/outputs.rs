//! The outputs of a splitter: folded, one open at a time; and rooms in some order where nobody knows which cable is which.

use facts::fact::AuthorId;
use facts::store::Store;
use guide::screen::Block;
use guide::{Deed, Screen};
use house::record::{Asked, PartKind, Reply, Survey, fold};

use crate::described::{Described, Found, Person, five_outlets};
use crate::homeowner::{Walk, choices, outputs, pick, press};

fn survey(walk: &Walk) -> Survey {
    let store = Store::open(&walk.guide.open_folder().unwrap(), AuthorId::random()).unwrap();
    fold(store.ledger(), store.survey_id()).unwrap()
}

fn to_question(walk: &mut Walk, person: &mut Person, name: &str) {
    while walk.guide.screen().name != name {
        for deed in person.answer(walk, &walk.guide.screen()) {
            walk.act(&deed);
        }
    }
}

/// What the folded outputs say, and what is remarked of them.
fn rows(screen: &Screen) -> Vec<(String, String)> {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(&rows.rows),
        _ => None,
    });
    rows.flatten().map(|row| (row.says.clone(), row.remark.clone())).collect()
}

/// All that can be touched or read one under the other.
fn lines(screen: &Screen) -> usize {
    rows(screen).len() + choices(screen).map(|choice| choice.options.len()).sum::<usize>()
}

/// A splitter whose three first outputs are alike or not, by its print, and lead to the rooms; on the fourth is another one.
fn three_alike(print: &'static str) -> Described {
    Described {
        rooms: &["living", "office", "basement"],
        first: Found::Part(
            "splitter",
            print,
            vec![
                Found::Outlet("living", "modem"),
                Found::Outlet("office", "nothing"),
                Found::Outlet("basement", "nothing"),
            ],
        ),
        router: "living",
        ..five_outlets()
    }
}

const ALIKE: &str = "3-WAY SPLITTER 5-1000MHz 5.5dB";
const STRONG: &str = "3-WAY SPLITTER 5-1000MHz -3.5dB -7dB -7dB";

#[test]
fn one_output_stands_open_and_the_next_one_does_once_it_is_told() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::of(five_outlets());
    to_question(&mut walk, &mut person, "ask-outputs");
    let screen = walk.guide.screen();
    let most = choices(&screen).next().unwrap().options.len();
    assert_eq!((choices(&screen).count(), outputs(&screen)), (1, 4));
    assert_eq!(lines(&screen), most + 3, "three of the four are a row each");
    walk.act(&pick("port:1", &["splitter"]));
    let screen = walk.guide.screen();
    assert_eq!(choices(&screen).next().unwrap().key, "port:2");
    assert_eq!(rows(&screen)[0].0, walk.word("leads-splitter"));
    // Who goes on then is led to the next one, and not told off.
    walk.act(&press("next"));
    let said = walk.guide.screen().notices.iter().map(|notice| notice.words.clone()).collect::<Vec<_>>();
    assert_eq!(said, ["Output 2 comes next."]);
    // A touch opens the first again, and a slip is mended.
    walk.act(&press("port:1"));
    assert_eq!(choices(&walk.guide.screen()).next().unwrap().key, "port:1");
    walk.act(&pick("port:1", &["capped"]));
    assert_eq!(rows(&walk.guide.screen())[0].0, walk.word("leads-capped"));
    // Who goes on too early is told which output is open, and it stands open.
    walk.act(&press("port:3"));
    walk.act(&press("next"));
    let screen = walk.guide.screen();
    assert_eq!(screen.name, "ask-outputs");
    assert!(screen.notices.iter().any(|notice| notice.words.contains("Please say where output 2")));
    assert_eq!(choices(&screen).next().unwrap().key, "port:3");
    walk.act(&press("others-open"));
    assert_ne!(walk.guide.screen().name, "ask-outputs");
}

/// Rooms of which no outlet is known yet stand first: an output mostly leads to one of them.
#[test]
fn rooms_without_an_outlet_stand_first() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::of(five_outlets());
    to_question(&mut walk, &mut person, "ask-outputs");
    let of = |walk: &Walk| {
        let screen = walk.guide.screen();
        let options = &choices(&screen).next().unwrap().options;
        options.iter().find(|option| option.key.starts_with("room:")).unwrap().words.clone()
    };
    assert!(of(&walk).contains(&walk.word("room-bedroom")), "by name");
    for deed in person.answer(&walk, &walk.guide.screen()) {
        walk.act(&deed);
    }
    to_question(&mut walk, &mut person, "ask-outputs");
    assert!(of(&walk).contains(&walk.word("room-child")), "the bedroom has one by now: {}", of(&walk));
}

#[test]
fn rooms_in_some_order_have_a_figure_and_are_told_as_a_guess() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::blind(three_alike(ALIKE));
    to_question(&mut walk, &mut person, "enough");
    let enough = walk.guide.screen();
    assert_eq!(enough.title, walk.word("enough-forecast"), "{:?}", enough.spoken());
    let granted = "Which output of S1 (a 3-way splitter) leads to which room is a guess.";
    assert!(enough.spoken().join(" ").contains(granted), "{:?}", enough.spoken());
    let house = survey(&walk);
    let outlets: Vec<_> = house.parts.values().filter(|part| part.kind == PartKind::Outlet).collect();
    assert_eq!(outlets.len(), 3);
    assert!(outlets.iter().all(|outlet| house.is_feed_guessed(outlet.id)));
    assert!(advice::verdict::Lacking::of(&house).rooms.is_empty());
    let open = advice::unknown::unknowns(&house, &advice::forecast::forecast(&house, &FEW).unwrap());
    assert!(open.iter().any(|unknown| unknown.what.id == "unknown-order"));
    walk.act(&press("forecast"));
    let told = walk.guide.screen().spoken().join(" ");
    assert_eq!(told.matches("nine times in ten at least").count(), 2, "{told}");
}

const FEW: advice::forecast::Options =
    advice::forecast::Options { draws: 2, seed: 1, points: 12, settles: false };

#[test]
fn where_the_outputs_are_not_alike_no_order_is_guessed() {
    for (print, offered) in [(ALIKE, true), (STRONG, false)] {
        let mut walk = Walk::begun(guide::english);
        to_question(&mut walk, &mut Person::of(three_alike(print)), "ask-outputs");
        assert_eq!(walk.guide.screen().keys().contains(&"in-order"), offered, "{print}");
    }
    // The strong one told, the two others are alike.
    let mut walk = Walk::begun(guide::english);
    to_question(&mut walk, &mut Person::of(three_alike(STRONG)), "ask-outputs");
    walk.act(&pick("port:1", &["capped"]));
    assert!(walk.guide.screen().keys().contains(&"in-order"));
}

#[test]
fn a_guess_is_corrected_by_saying_what_each_output_leads_to_and_the_cables_go_along() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::blind(three_alike(ALIKE));
    to_question(&mut walk, &mut person, "ask-outputs");
    let place = walk.guide.screen().place;
    for deed in person.answer(&walk, &walk.guide.screen()) {
        walk.act(&deed);
    }
    let before = survey(&walk);
    let splitter = before.parts.values().find(|part| part.kind == PartKind::Splitter).unwrap().id;
    let on = |house: &Survey, port| house.wiring.on_port(splitter, port).next().unwrap();
    let (first, second) = (on(&before, 1), on(&before, 2));
    while walk.guide.screen().place != place {
        walk.act(&Deed::Back);
    }
    assert!(rows(&walk.guide.screen()).iter().all(|(_, remark)| *remark == walk.word("outputs-guessed")));
    let room = |outlet| format!("room:{}", before.parts[&outlet].room.unwrap());
    for (port, outlet) in [("port:1", second), ("port:2", first)] {
        walk.act(&press(port));
        walk.act(&pick(port, &[&room(outlet)]));
    }
    walk.act(&press("next"));
    let after = survey(&walk);
    assert_eq!((on(&after, 1), on(&after, 2)), (second, first), "the same outlets");
    let run = |house: &Survey, outlet| house.wiring.feed(outlet).unwrap().run;
    assert_eq!((run(&after, first), run(&after, second)), (run(&before, first), run(&before, second)));
    assert_eq!(after.parts[&first].room, before.parts[&first].room);
    assert_eq!(after.reply(first, Asked::FedBy), Some(Reply::Yes));
    assert!(after.is_feed_guessed(on(&after, 3)), "of the third nothing was said");
    assert_eq!(after.parts.len(), before.parts.len());
}
