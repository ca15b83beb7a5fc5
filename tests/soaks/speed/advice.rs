//! How long the forecast and the work list of a large house take, with nothing kept, and how much memory.

use advice::forecast::{Options as Draws, forecast};
use advice::worklist::{Options, worklist};

use super::{median, seconds};
use crate::Outcome;

/// Times an invented house of so many parts.
pub fn run(parts: usize, rounds: usize) -> Outcome {
    let survey = houses::unread(parts);
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

/// What the system says this program took at its peak; none where it does not say.
fn peak_megabytes() -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    let kilobytes: f64 = line.split_whitespace().next()?.parse().ok()?;
    Some(kilobytes / 1024.0)
}
