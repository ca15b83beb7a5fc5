//! How long the forecast and the work list of a large house take, with nothing kept, and how much memory.

use advice::forecast::{Options as Draws, forecast};
use advice::worklist::{Options, worklist};
use house::record::{CableKind, EntryKind, Survey};
use houses::House;

use super::{median, seconds};
use crate::Outcome;

/// Legs of each splitter.
const LEGS: u8 = 4;
/// Adapters in the house: with so many every pair of splitters between them counts.
const ADAPTERS: usize = 8;
/// What every room with an adapter is wished.
const WISH: f64 = 500.0;

/// Times an invented house of so many parts.
pub fn run(parts: usize, rounds: usize) -> Outcome {
    let survey = house(parts)?;
    let adapters = survey.parts.values().filter(|part| part.adapter.is_some()).count();
    println!("house: {} parts, {} cables, {adapters} adapters", survey.parts.len(), survey.runs.len());
    let mut times = Vec::new();
    for _ in 0..rounds {
        times.push(seconds(|| {
            forecast(&survey, &Draws::default())?;
            Ok(())
        })?);
    }
    println!("forecast: {:.1} ms", median(times) * 1e3);
    let (mut times, mut said) = (Vec::new(), String::new());
    for _ in 0..rounds {
        times.push(seconds(|| {
            let list = worklist(&survey, &Options::default())?;
            let cut = list.cut_short.map_or_else(String::new, |cut| format!(", cut short: {cut:?}"));
            let searched = list.searched.map_or(0, |searched| searched.houses);
            said = format!("{} steps, {searched} choices weighed against each other{cut}", list.steps.len());
            Ok(())
        })?);
    }
    println!("work list: {:.1} ms; {said}", median(times) * 1e3);
    if let Some(peak) = peak_megabytes() {
        println!("memory: {peak:.1} MB at its peak");
    }
    Ok(())
}

/// An entry, splitters of which nothing is known, each on the next free leg, an outlet on every leg that is left until there are so
/// many parts; some of those with an adapter.
fn house(parts: usize) -> Outcome<Survey> {
    let splitters = parts.saturating_sub(2).div_ceil(LEGS.into()).max(1);
    let outlets = parts.saturating_sub(1 + splitters);
    if outlets < ADAPTERS {
        return Err(format!("a house of {parts} parts has no {ADAPTERS} outlets").into());
    }
    let metres = |number: usize| 4.0 + (number * 7 % 17) as f64;
    let mut house = House::new().entry("E1", EntryKind::Cable);
    let mut free = std::collections::VecDeque::from([("E1".to_owned(), 1_u8)]);
    for number in 1..=splitters {
        let (feed, port) = free.pop_front().ok_or("no leg is free")?;
        let tag = format!("S{number}");
        house = house.splitter(&tag, LEGS).from(&feed, port).over(CableKind::Six, metres(number));
        free.extend((1..=LEGS).map(|leg| (tag.clone(), leg)));
    }
    let every = outlets / ADAPTERS;
    for number in 0..outlets {
        let (feed, port) = free.pop_front().ok_or("no leg is free")?;
        let room = format!("Room {number}");
        house = house.outlet(&format!("O{number}"), &room).from(&feed, port);
        house = house.over(CableKind::Six, metres(number));
        if number % every == 0 && number / every < ADAPTERS {
            house = house.adapter("2.5");
            house = if number == 0 { house.bridge() } else { house.wish(&room, WISH) };
        }
    }
    Ok(house.survey())
}

/// What the system says this program took at its peak; none where it does not say.
fn peak_megabytes() -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    let kilobytes: f64 = line.split_whitespace().next()?.parse().ok()?;
    Some(kilobytes / 1024.0)
}
