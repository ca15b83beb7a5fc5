//! What a change takes: parts by specification and minutes.

use facts::fact::SubjectId;
use house::naming::{ask_provider, poor_ends};
use house::record::{
    ChangeKind, NEWEST_PORT_MBPS, NEWEST_VERSION, OutletCheck, Part, PortEnd, Survey, may_carry_power,
    power_paths,
};
use phrase::{Arg, Phrase};

use super::to_buy::larger_than;

/// A part to buy, by what it must be, never by who makes it.
#[derive(Debug, Clone, PartialEq)]
pub struct PartNeeded {
    /// What it must be.
    pub what: Phrase,
    /// How many.
    pub count: u64,
}

/// What a change takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Effort {
    /// Minutes for somebody who has not done it before (common practice, no source).
    pub minutes: u64,
    /// What to buy.
    pub parts: Vec<PartNeeded>,
}

fn needed(what: Phrase, count: u64) -> PartNeeded {
    PartNeeded { what, count }
}

fn connectors(count: u64) -> PartNeeded {
    needed(Phrase::new("need-connector"), count)
}

fn entry_filter(ask: &str, power: bool) -> PartNeeded {
    let what = Phrase::new("need-entry-filter").text("power", if power { "yes" } else { "no" });
    needed(what.text("ask", ask), 1)
}

fn splitter(legs: u8) -> PartNeeded {
    needed(Phrase::new("need-splitter").with("legs", Arg::Count(u64::from(legs))), 1)
}

/// A splitter in place of others: it passes DC where they do and something needs it.
fn splitter_at(survey: &Survey, places: &[SubjectId], legs: u8) -> PartNeeded {
    let carries = power_paths(survey).iter().any(|path| places.iter().any(|place| path.passes(*place)));
    if carries {
        needed(Phrase::new("need-splitter-power").with("legs", Arg::Count(u64::from(legs))), 1)
    } else {
        splitter(legs)
    }
}

/// Parts and minutes.
pub fn effort(change: ChangeKind, survey: &Survey) -> Effort {
    let power = change.meets_power(survey);
    let (minutes, parts) = match change {
        ChangeKind::AddEntryFilter { .. } | ChangeKind::SwapEntryFilter { .. } => {
            (15, vec![entry_filter(ask_provider(survey, change.at()), power)])
        }
        ChangeKind::MoveEntryFilter { .. } | ChangeKind::LookAtRun { .. } => (15, Vec::new()),
        ChangeKind::SwapSplitter { splitter: id, legs } => {
            let part = survey.parts.get(&id);
            let free = match part.filter(|part| !is_known_throughout(survey, part)) {
                Some(part) => idle_outputs(survey, part),
                None => u64::from(legs).saturating_sub(survey.wiring.fed_from(id).len() as u64),
            };
            (15, std::iter::once(splitter_at(survey, &[id], legs)).chain(caps(free, power)).collect())
        }
        ChangeKind::RemoveSplitter { .. } => (10, vec![needed(Phrase::new("need-barrel"), 1)]),
        ChangeKind::MergeSplitters { upper, lower, legs } => {
            let used = (survey.wiring.fed_from(upper).len() + survey.wiring.fed_from(lower).len()) as u64;
            let free = (u64::from(legs) + 1).saturating_sub(used);
            (
                25,
                std::iter::once(splitter_at(survey, &[upper, lower], legs))
                    .chain(caps(free, power))
                    .collect(),
            )
        }
        ChangeKind::Cap { .. } => (5, caps(1, power).into_iter().collect()),
        ChangeKind::SwapAmplifier { amplifier } => {
            let outputs = survey.parts.get(&amplifier).map_or(1, |part| part.rating.legs.max(1));
            let what = Phrase::new("need-amplifier").with("outputs", Arg::Count(u64::from(outputs)));
            (30, vec![needed(what, 1)])
        }
        ChangeKind::RemoveAmplifier { amplifier } => {
            let joined = match u8::try_from(survey.wiring.fed_from(amplifier).len()).unwrap_or(u8::MAX) {
                0 | 1 => needed(Phrase::new("need-barrel"), 1),
                several => splitter(several),
            };
            (15, vec![joined])
        }
        ChangeKind::ReplaceRun { to } => {
            let run = survey.wiring.feed(to).and_then(|feed| survey.runs.get(&feed.run?));
            let cable = match run.and_then(|run| run.length) {
                Some(length) => Phrase::new("need-cable").with("length", Arg::Length(length.high_metres)),
                None => Phrase::new("need-cable-unmeasured"),
            };
            (120, vec![needed(cable, 1), connectors(2)])
        }
        ChangeKind::RenewConnectors { to } => (20, vec![connectors(poor_ends(survey, to).len() as u64)]),
        ChangeKind::FilterAtDevice { outlet } => {
            let ask = if survey.has_modem_at(outlet) { ask_provider(survey, outlet) } else { "no" };
            (10, vec![needed(Phrase::new("need-device-filter").text("ask", ask), 1)])
        }
        // Nothing of the service passes this filter.
        ChangeKind::ModemOwnLine { outlet } => {
            let of = |what, count| needed(Phrase::new(what), count);
            let freed = survey.wiring.feed(outlet).is_some_and(|feed| may_carry_power(survey, feed.part));
            let caps = caps(1, freed).into_iter().chain(caps(1, false));
            (30, [of("need-barrel", 1), entry_filter("no", false)].into_iter().chain(caps).collect())
        }
        ChangeKind::ShareOutlet { outlet } => {
            let onward = !survey.wiring.fed_from(outlet).is_empty();
            let id = if power { "need-share-power" } else { "need-share" };
            let legs = Phrase::new(id).with("legs", Arg::Count(2 + u64::from(onward)));
            (10, vec![needed(legs, 1)])
        }
        ChangeKind::JoinLoose { .. } => (40, vec![connectors(2), needed(Phrase::new("need-barrel"), 1)]),
        ChangeKind::MoveBridge { .. } => (30, Vec::new()),
        ChangeKind::UseOutletNearby { .. } => (30, vec![needed(Phrase::new("need-network-cable"), 1)]),
        ChangeKind::NewRun { from, .. } => {
            let full = survey
                .parts
                .get(&from)
                .filter(|part| idle_outputs(survey, part) == 0)
                .map(|part| splitter(larger_than(part.outputs())));
            let cable = needed(Phrase::new("need-cable-unmeasured"), 1);
            let new = [cable, connectors(2), needed(Phrase::new("need-wall-plate"), 1)];
            (240, new.into_iter().chain(full).collect())
        }
        ChangeKind::NewerAdapter { outlet } => {
            let adapter = Phrase::new("need-adapter")
                .text("version", NEWEST_VERSION)
                .with("port", Arg::RateAsRead(f64::from(NEWEST_PORT_MBPS)));
            (15, vec![needed(adapter, 1 + u64::from(survey.bridge_to_renew(outlet).is_some()))])
        }
        ChangeKind::ExchangeAdapters { .. } => (20, Vec::new()),
        ChangeKind::LookAtPart { .. } => (10, Vec::new()),
        ChangeKind::CheckAtOutlet { check, .. } => (check_minutes(check), Vec::new()),
    };
    Effort { minutes, parts }
}

/// Minutes of a check, the test after it included (common practice, no source).
const fn check_minutes(check: OutletCheck) -> u64 {
    match check {
        OutletCheck::Adapter => 5,
        OutletCheck::ShortCable => 10,
        OutletCheck::NetworkCable => 15,
        OutletCheck::OtherAdapter => 20,
        OutletCheck::Measure => 60,
    }
}

/// Outputs that somebody saw free.
fn idle_outputs(survey: &Survey, part: &Part) -> u64 {
    let free = |port: &u8| {
        survey.wiring.on_port(part.id, *port).next().is_none()
            && matches!(part.end(*port), Some(PortEnd::Open | PortEnd::Capped))
    };
    (1..=part.outputs()).filter(free).count() as u64
}

/// Whether it is known of every output of a splitter whether it is used and where its cable leads.
pub(super) fn is_known_throughout(survey: &Survey, part: &Part) -> bool {
    let loose = part.ends.values().any(|end| *end == PortEnd::LooseEnd);
    !loose && survey.unseen_outputs(part) == 0
}

/// Caps: such as hold DC back where it may stand on the output.
fn caps(count: u64, power: bool) -> Option<PartNeeded> {
    let id = if power { "need-cap-power" } else { "need-cap" };
    (count > 0).then(|| needed(Phrase::new(id), count))
}
