//! Houses for drawings, from three parts to three hundred: what a map of each size has to show.

use house::record::{CableKind, Connector, EntryKind, Plugged, Survey};

use crate::House;

/// The smallest: entry, splitter, outlet.
pub fn three() -> Survey {
    House::new()
        .entry("E1", EntryKind::Cable)
        .splitter("S1", 2)
        .from("E1", 1)
        .over(CableKind::Six, 6.0)
        .outlet("O1", "Study")
        .from("S1", 1)
        .over(CableKind::Six, 9.0)
        .adapter("2.5")
        .bridge()
        .survey()
}

/// Nine parts: a thin cable, a splitter that is not made for the band, two parts that nobody traced.
pub fn nine() -> Survey {
    House::new()
        .entry("E1", EntryKind::Cable)
        .part("G1", house::record::PartKind::GroundBlock)
        .from("E1", 1)
        .over(CableKind::Six, 2.0)
        .splitter("S1", 4)
        .made_for(5.0, 1000.0)
        .open(4)
        .from("G1", 1)
        .over(CableKind::Six, 6.0)
        .outlet("O1", "Study")
        .from("S1", 1)
        .over(CableKind::Six, 9.0)
        .adapter("2.5")
        .bridge()
        .outlet("O2", "Office")
        .from("S1", 2)
        .over(CableKind::FiftyNine, 30.0)
        .adapter("2.5")
        .wish("Office", 900.0)
        .amplifier("A1", 2)
        .from("S1", 3)
        .over(CableKind::Six, 4.0)
        .outlet("O3", "Bedroom")
        .from("A1", 1)
        .over(CableKind::Six, 12.0)
        .plugged(&[Plugged::Tv])
        .splitter("S2", 2)
        .made_for(5.0, 1675.0)
        .outlet("O4", "Hall")
        .from("S2", 1)
        .survey()
}

/// Thirty-nine parts on three floors and in a stable.
pub fn thirty_nine() -> Survey {
    let mut house = House::new()
        .entry("E1", EntryKind::Cable)
        .part("G1", house::record::PartKind::GroundBlock)
        .from("E1", 1)
        .over(CableKind::Six, 2.0)
        .filter("F1")
        .from("G1", 1)
        .over(CableKind::Six, 0.3);
    house = good_splitter(house, "S1", 4, ("F1", 1), CableKind::Six);
    house = good_splitter(house, "S2", 8, ("S1", 1), CableKind::Eleven);
    house = outlets(house, "S2", 1, &["Study", "Kitchen", "Dining room", "Hall", "Parlour"], 1);
    house = house.at("O1").adapter("2.5").bridge();
    house = house.outlet("O6", "Workshop").from("S2", 6).over(CableKind::FiftyNine, 8.0);
    house = good_splitter(house, "S3", 8, ("S1", 2), CableKind::Six);
    let rooms = ["Bedroom 1", "Bedroom 2", "Bedroom 3", "Landing", "Nursery", "Bath"];
    house = outlets(house, "S3", 1, &rooms, 7);
    house = house.amplifier("A1", 1).from("S1", 3).over(CableKind::Six, 5.0).with(|part| {
        part.rating.moca_bypass = Some(false);
    });
    house = good_splitter(house, "S4", 4, ("A1", 1), CableKind::Six);
    house = good_splitter(house, "S5", 4, ("S4", 1), CableKind::Six);
    house = outlets(house, "S5", 1, &["Attic east", "Store", "Guest room", "Guest bath"], 13);
    house = good_splitter(house, "S6", 2, ("S4", 2), CableKind::FiftyNine)
        .run(|run| run.connector_far = Connector::TwistOn);
    house = house.outlet("O21", "Attic west").from("S6", 1).over(CableKind::FiftyNine, 25.0);
    house = house.adapter("2.5").wish("Attic west", 500.0);
    house = house.outlet("O22", "Loft").from("S6", 2);
    house = house.part("T1", house::record::PartKind::Tap).from("S1", 4).over(CableKind::Six, 30.0);
    house = good_splitter(house, "S7", 4, ("T1", 2), CableKind::Eleven);
    house = outlets(house, "S7", 1, &["Stable", "Tack room", "Cart shed", "Hay loft"], 23);
    house = house.outlet("O27", "Cider house").from("T1", 1).over(CableKind::Six, 9.0);
    house = house.splitter("S8", 3).made_for(5.0, 1675.0);
    house = outlets(house, "S8", 1, &["Cellar", "Wine store"], 28);
    house.outlet("O30", "Porch").survey()
}

/// A house of so many floors, each with a splitter for seven rooms and one for four more behind it; every sixteenth cable
/// is thin, two floors hang on amplifiers. Thirteen parts a floor, and six more.
pub fn floors(many: u8) -> Survey {
    let mut house = House::new()
        .entry("E1", EntryKind::Cable)
        .part("G1", house::record::PartKind::GroundBlock)
        .from("E1", 1)
        .over(CableKind::Six, 2.0);
    house = good_splitter(house, "S1", many.max(2), ("G1", 1), CableKind::Six);
    let mut outlet = 0_u16;
    for floor in 1..=many {
        let mut up = ("S1".to_owned(), floor);
        if floor == 3 || floor == 6 {
            let tag = format!("A{floor}");
            house = house.amplifier(&tag, 1).from(&up.0, up.1).over(CableKind::Six, 3.0).with(|part| {
                part.rating.moca_bypass = Some(floor == 3);
            });
            up = (tag, 1);
        }
        let (near, far) = (format!("S{}", 10 * u16::from(floor)), format!("S{}", 10 * u16::from(floor) + 1));
        house = good_splitter(house, &near, 8, (&up.0, up.1), CableKind::Six);
        for port in 1..=7 {
            outlet += 1;
            let cable = if outlet.is_multiple_of(16) { CableKind::FiftyNine } else { CableKind::Six };
            let (tag, room) = (format!("O{outlet}"), format!("Room {outlet}"));
            house = house.outlet(&tag, &room).from(&near, port).over(cable, 10.0 + f64::from(port));
        }
        house = good_splitter(house, &far, 4, (&near, 8), CableKind::Six);
        for port in 1..=4 {
            outlet += 1;
            let (tag, room) = (format!("O{outlet}"), format!("Room {outlet}"));
            house = house.outlet(&tag, &room).from(&far, port).over(CableKind::Six, 12.0);
        }
    }
    let last = format!("O{}", outlet.saturating_sub(20));
    house = house
        .at("O1")
        .adapter("2.5")
        .bridge()
        .at(&last)
        .adapter("2.5")
        .wish(&format!("Room {}", outlet.saturating_sub(20)), 2000.0);
    house.splitter("S900", 2).outlet("O900", "Porch").survey()
}

fn good_splitter(house: House, tag: &str, legs: u8, from: (&str, u8), cable: CableKind) -> House {
    house.splitter(tag, legs).made_for(5.0, 1675.0).from(from.0, from.1).over(cable, 4.0)
}

fn outlets(mut house: House, from: &str, port: u8, rooms: &[&str], first: u16) -> House {
    for ((room, number), port) in rooms.iter().zip(first..).zip(port..) {
        house = house.outlet(&format!("O{number}"), room).from(from, port).over(CableKind::Six, 9.0);
    }
    house
}
