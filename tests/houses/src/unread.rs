//! A house of unread splitters with few adapters: much may be swapped, and every pair of splitters between two adapters counts.

use house::record::{CableKind, EntryKind, Survey};

use crate::House;

/// Legs of each splitter.
const LEGS: u8 = 4;
/// Adapters in the house: with so many every pair of splitters between them counts.
const ADAPTERS: usize = 8;
/// What every room with an adapter is wished.
const WISH: f64 = 500.0;

/// An entry, splitters of which nothing is known, each on the next free leg, an outlet on every leg that is left until there are so
/// many parts; some of those with an adapter.
///
/// # Panics
/// If it has no eight outlets.
pub fn unread(parts: usize) -> Survey {
    let splitters = parts.saturating_sub(2).div_ceil(LEGS.into()).max(1);
    let outlets = parts.saturating_sub(1 + splitters);
    assert!(outlets >= ADAPTERS, "a house of {parts} parts has no {ADAPTERS} outlets");
    let metres = |number: usize| 4.0 + (number * 7 % 17) as f64;
    let mut house = House::new().entry("E1", EntryKind::Cable);
    let mut free = std::collections::VecDeque::from([("E1".to_owned(), 1_u8)]);
    for number in 1..=splitters {
        let (feed, port) = free.pop_front().expect("a free leg");
        let tag = format!("S{number}");
        house = house.splitter(&tag, LEGS).from(&feed, port).over(CableKind::Six, metres(number));
        free.extend((1..=LEGS).map(|leg| (tag.clone(), leg)));
    }
    let every = outlets / ADAPTERS;
    for number in 0..outlets {
        let (feed, port) = free.pop_front().expect("a free leg");
        let room = format!("Room {number}");
        house = house.outlet(&format!("O{number}"), &room).from(&feed, port);
        house = house.over(CableKind::Six, metres(number));
        if number % every == 0 && number / every < ADAPTERS {
            house = house.adapter("2.5");
            house = if number == 0 { house.bridge() } else { house.wish(&room, WISH) };
        }
    }
    house.survey()
}
