//! An old house of many parts in which much may be done: splitters of which nobody knows what they are made for, thin cable
//! with poor connectors to every one of them and to every room. Every fourth outlet is to have an adapter, the first sixteen of these:
//! as many as a network takes (MoCA 2.0 and 2.5, from memory).

use house::record::{CableKind, Connector, EntryKind, Survey};

use crate::House;

/// Outputs of each splitter.
const LEGS: u8 = 8;

/// Adapters in one network.
const MOST_ADAPTERS: usize = 16;

/// A house of so many parts, at most 578 (the entry, a splitter, eight splitters below each of eight of it, and outlets).
pub fn old(parts: usize) -> Survey {
    let rooms_of = |splitters: usize| splitters * usize::from(LEGS) - (splitters - 1);
    let splitters = (1..=73).find(|splitters| 1 + splitters + rooms_of(*splitters) >= parts).unwrap_or(73);
    let mut house = House::new().entry("E1", EntryKind::Cable);
    let mut free = std::collections::VecDeque::from([("E1".to_owned(), 1)]);
    for number in 1..=splitters {
        let tag = format!("S{number}");
        house = hung(house.splitter(&tag, LEGS), &mut free, 4.0 + (number % 5) as f64);
        free.extend((1..=LEGS).map(|leg| (tag.clone(), leg)));
    }
    for number in 1..parts - splitters {
        let (tag, room) = (format!("O{number}"), format!("Room {number}"));
        house = hung(house.outlet(&tag, &room), &mut free, 6.0 + (number % 7) as f64);
        if number % 4 == 1 && number < 4 * MOST_ADAPTERS {
            house = house.adapter("2.5").wish(&room, if number % 3 == 0 { 900.0 } else { 300.0 });
        }
        house = if number == 1 { house.bridge() } else { house };
    }
    house.survey()
}

/// The part named last on the next free output, over old cable.
fn hung(house: House, free: &mut std::collections::VecDeque<(String, u8)>, metres: f64) -> House {
    let Some((feeder, port)) = free.pop_front() else { return house };
    house.from(&feeder, port).over(CableKind::FiftyNine, metres).run(|run| {
        run.connector_near = Connector::TwistOn;
        run.connector_far = Connector::TwistOn;
    })
}
