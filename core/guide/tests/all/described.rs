//! Invented houses as a person finds them who walks through with the guide, and what that person answers.
//!
//! An answer is one thing that a person gives: each option picked, each value typed, each press that answers by itself
//! ("as the last one", "all the others too"). Going on, looking and reading give nothing.

use std::collections::BTreeMap;

use guide::Deed;
use guide::screen::{ChoiceBlock, Screen};

use crate::homeowner::{Walk, choices, measure, outputs, pick, press, room_in};

/// What hangs on a cable.
#[derive(Debug, Clone)]
pub enum Found {
    /// An outlet in a room, and what is plugged in.
    Outlet(&'static str, &'static str),
    /// Nothing, or a cable of which nobody knows, by the option that says so.
    End(&'static str),
    /// A part by the option that names it, what is printed on it, and what hangs on its outputs. Where nothing is printed,
    /// the outputs are counted.
    Part(&'static str, &'static str, Vec<Self>),
}

/// A house as it is found.
pub struct Described {
    /// The rooms by their options.
    pub rooms: &'static [&'static str],
    /// What uses the cable.
    pub uses: &'static [&'static str],
    /// What the cable from the street reaches first.
    pub first: Found,
    /// The room of the router.
    pub router: &'static str,
    /// Which adapters there are.
    pub adapters: &'static str,
    /// Lengths of cables in metres, as they are asked for.
    pub lengths: Vec<&'static str>,
    /// What is printed on the jackets.
    pub series: &'static str,
}

/// A person in such a house.
pub struct Person {
    house: Described,
    /// Parts that were found, by their tags.
    tags: BTreeMap<String, Found>,
    /// How many cables were answered.
    cables: usize,
    /// Whether nothing can be told but what stands before one's eyes.
    unsure: bool,
    /// Whether nobody knows which cable goes to which room, but how many do.
    blind: bool,
}

/// The letter of a part's tag.
fn letter(option: &str) -> &'static str {
    match option {
        "splitter" => "S",
        "amplifier" => "A",
        "tap" => "T",
        "filter" => "F",
        _ => "P",
    }
}

impl Person {
    pub fn of(house: Described) -> Self {
        Self { house, tags: BTreeMap::new(), cables: 0, unsure: false, blind: false }
    }

    /// One who can tell nothing that has to be looked at.
    pub fn unsure(house: Described) -> Self {
        Self { unsure: true, ..Self::of(house) }
    }

    /// One who knows which rooms a splitter leads to, but not by which of its outputs.
    pub fn blind(house: Described) -> Self {
        Self { blind: true, ..Self::of(house) }
    }

    /// What is answered on a question's screen. A panic names a screen that nobody here knows an answer to.
    pub fn answer(&mut self, walk: &Walk, screen: &Screen) -> Vec<Deed> {
        if self.unsure
            && let Some(deeds) = Self::not_sure(screen)
        {
            return deeds;
        }
        let next = || press("next");
        match screen.name.as_str() {
            "ask-whose" => vec![pick("whose", &["own"])],
            "ask-depends" => vec![pick("depends", &["nothing"]), next()],
            "ask-rooms" => vec![pick("rooms", self.house.rooms), pick("wish", &["work"]), next()],
            "ask-ways-in" => vec![pick("ways", &["cable"]), next()],
            "ask-leads-to" => {
                let found = self.found_behind(screen);
                let option = self.option(walk, choices(screen).next().unwrap(), &found);
                vec![pick("leads", &[&option])]
            }
            "ask-outputs" => self.outputs(walk, screen),
            "ask-label" => match self.part(screen) {
                Found::Part(_, "", _) => vec![press("unsure")],
                Found::Part(_, print, _) => {
                    vec![Deed::Write { key: "text".into(), words: print.into() }, next()]
                }
                other @ (Found::Outlet(..) | Found::End(_)) => panic!("{other:?} has no print"),
            },
            "ask-label-read" => vec![next()],
            "ask-legs" => match self.part(screen) {
                Found::Part(_, _, hangs) => vec![measure("legs", &hangs.len().to_string(), "count"), next()],
                other @ (Found::Outlet(..) | Found::End(_)) => panic!("{other:?} has no outputs"),
            },
            "ask-by-pass" => vec![pick("by-pass", &["no"])],
            "ask-powered" => vec![pick("powered", &["plug"])],
            "ask-adapters" => vec![pick("adapters", &[self.house.adapters])],
            "ask-router-at" => {
                let choice = choices(screen).next().unwrap();
                vec![pick("outlet", &[&room_in(walk, choice, &room(self.house.router))])]
            }
            "ask-joined" => vec![pick("joined", &["connected"])],
            "ask-ground-block" => vec![pick("seen", &["yes"])],
            "ask-entry-filter" => vec![pick("seen", &["no"])],
            "ask-uses" => vec![pick("uses", self.house.uses), next()],
            "ask-modem-age" => vec![pick("modem", &["31"])],
            "ask-plugged" => vec![pick("plugged", &[self.plugged(walk, screen)]), next()],
            "ask-connectors" => vec![pick("connectors", &["good"])],
            "ask-cable" => self.cable(screen),
            "ask-router-speaks" => vec![pick("speaks", &["no"])],
            "ask-drops-out" => vec![pick("drops", &["no"])],
            "ask-ports" => {
                let mut deeds = vec![pick("behind-rate", &["1g"])];
                if self.house.adapters != "none" {
                    deeds.extend([pick("socket", &["2.5g"]), pick("placed", &["no"]), next()]);
                }
                deeds
            }
            "ask-plan" => vec![measure("down", "500", "mbps"), next()],
            "ask-more-outlets" => vec![pick("more", &["no"]), next()],
            other => panic!("no answer to {other}"),
        }
    }

    /// "I am not sure", wherever that is offered, in whatever way.
    fn not_sure(screen: &Screen) -> Option<Vec<Deed>> {
        if screen.name == "ask-rooms" {
            return None;
        }
        let keys = screen.keys();
        if keys.contains(&"unsure") {
            return Some(vec![press("unsure")]);
        }
        let unsure = |choice: &ChoiceBlock| {
            choice.options.iter().find(|option| option.unsure).map(|option| option.key.clone())
        };
        let mut with = choices(screen).filter_map(|choice| Some((choice, unsure(choice)?)));
        if let Some((choice, option)) = with.next() {
            let picked = pick(&choice.key, &[&option]);
            return Some(match screen.name.as_str() {
                "ask-cable" if keys.contains(&"others-too") => vec![picked, press("others-too")],
                _ if keys.contains(&"next") => vec![picked, press("next")],
                _ => vec![picked],
            });
        }
        match screen.name.as_str() {
            "ask-outputs" => Some(vec![press("others-too")]),
            "ask-leads-to" => Some(vec![pick("leads", &["splitter"])]),
            _ => None,
        }
    }

    /// The part that a screen asks about, by the tag in its title.
    fn part(&self, screen: &Screen) -> Found {
        let of_title = |tag: &&String| {
            screen.title.split(|sign: char| !sign.is_ascii_alphanumeric()).any(|word| word == tag.as_str())
        };
        let tag = self.tags.keys().find(of_title).unwrap_or_else(|| panic!("whose is {}?", screen.title));
        self.tags[tag].clone()
    }

    /// What the one cable of a part leads to; from the street, what is reached first.
    fn found_behind(&self, screen: &Screen) -> Found {
        let is_of_entry = screen.title.contains("E1") || screen.title.contains("G1");
        if is_of_entry {
            return self.house.first.clone();
        }
        match self.part(screen) {
            Found::Part(_, _, hangs) => hangs.into_iter().next().unwrap(),
            other @ (Found::Outlet(..) | Found::End(_)) => panic!("nothing is behind {other:?}"),
        }
    }

    fn outputs(&mut self, walk: &Walk, screen: &Screen) -> Vec<Deed> {
        let Found::Part(_, _, hangs) = self.part(screen) else { panic!("{} has no outputs", screen.title) };
        let mut deeds = Vec::new();
        // One output stands open; the next one does once this one is told, and offers the same.
        let open = choices(screen).next().unwrap();
        assert_eq!(outputs(screen), hangs.len(), "{}", screen.title);
        let is_outlet = |found: &&Found| matches!(found, Found::Outlet(..));
        let in_order = self.blind && hangs.iter().filter(is_outlet).count() > 1;
        let mut rooms = Vec::new();
        for (port, found) in (1..).zip(&hangs) {
            let option = self.option(walk, open, found);
            if in_order && is_outlet(&found) {
                rooms.push(option);
            } else {
                deeds.push(press(&format!("port:{port}")));
                deeds.push(pick(&format!("port:{port}"), &[&option]));
            }
        }
        if in_order {
            let rooms: Vec<_> = rooms.iter().map(String::as_str).collect();
            deeds.extend([press("in-order"), pick("in-order", &rooms)]);
        }
        deeds.push(press("next"));
        deeds
    }

    /// The option for what was found; a part takes the next tag of its kind.
    fn option(&mut self, walk: &Walk, choice: &ChoiceBlock, found: &Found) -> String {
        match found {
            Found::Outlet(of, _) => room_in(walk, choice, &room(of)),
            Found::End(option) => (*option).to_owned(),
            Found::Part(option, _, _) => {
                let letter = letter(option);
                let number = 1 + self.tags.keys().filter(|tag| tag.starts_with(letter)).count();
                self.tags.insert(format!("{letter}{number}"), found.clone());
                (*option).to_owned()
            }
        }
    }

    fn plugged(&self, walk: &Walk, screen: &Screen) -> &'static str {
        fn outlets(found: &Found) -> Vec<(&'static str, &'static str)> {
            match found {
                Found::Outlet(room, plugged) => vec![(room, plugged)],
                Found::End(_) => Vec::new(),
                Found::Part(_, _, hangs) => hangs.iter().flat_map(outlets).collect(),
            }
        }
        let title = screen.title.to_lowercase();
        let outlets = outlets(&self.house.first);
        let here = outlets.iter().find(|(of, _)| title.contains(&walk.word(&room(of)).to_lowercase()));
        here.unwrap_or_else(|| panic!("which outlet is {title}?")).1
    }

    /// The first cable tells of the others what can be told of all; of each there is a length.
    fn cable(&mut self, screen: &Screen) -> Vec<Deed> {
        let length = self.house.lengths.get(self.cables).copied().unwrap_or("9");
        let is_first = self.cables == 0;
        self.cables += 1;
        if is_first {
            let all = if screen.keys().contains(&"others-too") { "others-too" } else { "next" };
            let series = pick("series", &[self.house.series]);
            return vec![series, measure("length", length, "m"), pick("known", &["paced"]), press(all)];
        }
        vec![measure("length", length, "m"), press("next")]
    }
}

/// The word of a room's option.
fn room(option: &str) -> String {
    format!("room-{option}")
}

/// How many answers a deed gives.
pub fn answers(deed: &Deed) -> usize {
    match deed {
        Deed::Pick { picked, .. } => picked.len(),
        Deed::Write { .. } | Deed::Measure { .. } => 1,
        // What opens an output gives nothing.
        Deed::Press { key } => usize::from(key != "next" && key != "in-order" && !key.starts_with("port:")),
        _ => 0,
    }
}

/// A homeowner's house of five outlets and seven cables: two splitters, a modem with a router in the office, TVs.
pub fn five_outlets() -> Described {
    Described {
        rooms: &["living", "office", "bedroom", "child", "guest"],
        uses: &["cable_tv", "cable_internet"],
        first: Found::Part(
            "splitter",
            "4-WAY SPLITTER 5-1000MHz 7dB",
            vec![
                Found::Outlet("living", "tv"),
                Found::Outlet("office", "modem"),
                Found::Outlet("bedroom", "tv"),
                Found::Part(
                    "splitter",
                    "2-WAY 5-1000MHz 3.5dB",
                    vec![Found::Outlet("child", "nothing"), Found::Outlet("guest", "nothing")],
                ),
            ],
        ),
        router: "office",
        adapters: "none",
        lengths: vec!["4", "12", "15", "9", "6", "14", "22"],
        series: "six",
    }
}

/// A house of three outlets on one splitter.
pub fn three_outlets() -> Described {
    Described {
        rooms: &["living", "office", "bedroom"],
        uses: &["cable_internet"],
        first: Found::Part(
            "splitter",
            "3-WAY SPLITTER 5-1000MHz 5.5dB",
            vec![
                Found::Outlet("living", "modem"),
                Found::Outlet("office", "nothing"),
                Found::Outlet("bedroom", "nothing"),
            ],
        ),
        router: "living",
        adapters: "25",
        lengths: vec!["8", "6", "15", "18"],
        series: "six",
    }
}

/// A technician's house: an amplifier behind the way in, a tap, a splitter, and parts on which nothing can be read.
pub fn amplified() -> Described {
    Described {
        rooms: &["living", "office", "bedroom", "kitchen", "basement", "attic"],
        uses: &["cable_tv", "cable_internet"],
        first: Found::Part(
            "amplifier",
            "",
            vec![Found::Part(
                "splitter",
                "4-WAY SPLITTER 5-1000MHz 7dB",
                vec![
                    Found::Part(
                        "tap",
                        "TAP 12 dB 5-1000 MHz",
                        vec![Found::Outlet("basement", "tv"), Found::Outlet("office", "modem")],
                    ),
                    Found::Outlet("living", "tv"),
                    Found::Part(
                        "splitter",
                        "",
                        vec![Found::Outlet("bedroom", "tv"), Found::Outlet("attic", "nothing")],
                    ),
                    Found::Outlet("kitchen", "nothing"),
                ],
            )],
        ),
        router: "office",
        adapters: "25",
        lengths: vec!["2", "3", "5", "11", "19", "12", "7", "9", "13", "16"],
        series: "six",
    }
}

/// The house of the fifth trial (`docs/trials/house-5.md`), as far as its homeowner knows it: two splitters, the router in a
/// room of its own, and nobody knows which of three like cables goes to which room.
pub fn which_is_which() -> Described {
    Described {
        rooms: &["bedroom", "living", "office", "basement"],
        uses: &["cable_tv", "cable_internet"],
        first: Found::Part(
            "splitter",
            "5-1000 MHz 4-WAY, -7dB by each",
            vec![
                Found::Outlet("bedroom", "modem"),
                Found::Outlet("living", "tv"),
                Found::Outlet("office", "nothing"),
                Found::Part(
                    "splitter",
                    "2 WAY SPLITTER 5-2400MHZ 3.5 dB",
                    vec![Found::Outlet("basement", "nothing"), Found::End("open")],
                ),
            ],
        ),
        router: "bedroom",
        adapters: "25",
        lengths: vec!["15", "3", "12", "9", "6", "4"],
        series: "six",
    }
}
