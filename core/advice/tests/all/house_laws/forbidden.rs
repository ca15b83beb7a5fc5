//! No list proposes what a refusal or a caution forbids. What the trade forbids is said here anew, from the records
//! alone, not asked of what makes the list.

use advice::level::{self, levels};
use advice::worklist::{Refusal, Step, applied, refusal};
use facts::fact::SubjectId;
use house::record::{
    ChangeKind, EntryKind, Ownership, Part, PartKind, Plugged, PortEnd, ServiceKind, Survey, power_paths,
};

use super::Seen;

pub(super) fn broken(seen: &Seen) -> Vec<String> {
    let first = |place: usize| place == 0;
    seen.list.steps.iter().enumerate().flat_map(|(place, step)| of_step(step, first(place))).collect()
}

/// What forbids a step. The guard on levels adds up over the steps: only of the first can it be asked by itself.
pub(super) fn of_step(step: &Step, is_first: bool) -> Vec<String> {
    let (before, after) = (&step.before, applied(step.change, &step.before));
    // A level that a step moves out is said at the step, where what it gives is worth that.
    let said = |why: &Refusal| {
        let of_level = matches!(why, Refusal::LevelOut { .. } | Refusal::SendsTooMuch { .. });
        of_level && (!is_first || !step.moves_out.is_empty())
    };
    let refused = refusal(step.change, before).filter(|why| !said(why));
    let refused = refused.map(|why| format!("it is refused: {why:?}"));
    let rules: [(&str, bool); 13] = [
        ("a filter in a line that carries satellite", cuts_satellite(step.change, before)),
        ("a part not made for satellite in front of a receiver", narrows_satellite(before, &after)),
        ("DC no longer arrives", cuts_power(before, &after)),
        ("a filter in front of the mast amplifier", before_mast(step.change, before, &after)),
        ("work on the street's side", street_side(step.change, before)),
        ("work that needs the owner", not_own(step.change, before)),
        ("an amplifier goes, and nobody measured below it", unmeasured(step.change, before)),
        ("a cap where something hangs", caps_in_use(step.change, before)),
        ("a ground block goes", loses_ground_block(before, &after)),
        ("an output that nobody looked at goes", drops_unknown_output(step.change, before, &after)),
        ("a filter at a fibre box", filters_fibre(step.change, before)),
        ("a plain cap where DC stands", shorts_power(step)),
        ("work on what another home gets its signal through", touches_another_home(step.change, before)),
    ];
    let broken = rules.into_iter().filter(|(_, broken)| *broken).map(|(rule, _)| rule.to_owned());
    broken.chain(refused).map(|rule| format!("forbidden: {:?}: {rule}", step.change)).collect()
}

fn has(part: &Part, device: Plugged) -> bool {
    part.plugged.as_ref().is_some_and(|plugged| plugged.contains(&device))
}

fn is_filter_step(change: ChangeKind) -> bool {
    matches!(
        change,
        ChangeKind::AddEntryFilter { .. }
            | ChangeKind::MoveEntryFilter { .. }
            | ChangeKind::SwapEntryFilter { .. }
    )
}

/// Whether satellite comes in at the head of a tree, by its type, by a service, or by what hangs below.
fn carries_satellite(survey: &Survey, head: SubjectId) -> bool {
    let typed = survey.parts.get(&head).is_some_and(|part| part.entry_kind == EntryKind::Satellite);
    let stated = survey.services_of(ServiceKind::SatelliteTv).any(|service| service.entry == Some(head));
    let received = || {
        let below = survey.wiring.below(head);
        below.iter().filter_map(|id| survey.parts.get(id)).any(|part| has(part, Plugged::SatelliteReceiver))
    };
    typed || stated || received()
}

fn cuts_satellite(change: ChangeKind, before: &Survey) -> bool {
    let receiver =
        |outlet| before.parts.get(&outlet).is_some_and(|part| has(part, Plugged::SatelliteReceiver));
    match change {
        ChangeKind::FilterAtDevice { outlet } => receiver(outlet),
        change if is_filter_step(change) => carries_satellite(before, before.wiring.head_of(change.at())),
        _ => false,
    }
}

/// A dish's line goes to 2,150 MHz (EN 50494:2007): what a change brings into it must pass that.
fn narrows_satellite(before: &Survey, after: &Survey) -> bool {
    let receivers = before.parts.values().filter(|part| has(part, Plugged::SatelliteReceiver));
    receivers.into_iter().any(|outlet| {
        let head = before.wiring.head_of(outlet.id);
        if before.parts.get(&head).is_none_or(|part| part.entry_kind != EntryKind::Satellite) {
            return false;
        }
        let way = after.wiring.way_up(outlet.id);
        let split_here = after.parts.get(&outlet.id).is_some_and(|part| part.sharing != outlet.sharing);
        let narrow = way.iter().filter_map(|id| after.parts.get(id)).any(|part| {
            let of_old = before.parts.get(&part.id).map(|old| (old.kind, old.rating.band));
            let new = of_old != Some((part.kind, part.rating.band));
            new && part.rating.band.is_some_and(|band| band.high_mhz < 2150.0)
        });
        narrow || split_here
    })
}

/// DC that arrived arrives still, over parts that are as they were or that are known to pass it.
fn cuts_power(before: &Survey, after: &Survey) -> bool {
    power_paths(before).iter().filter(|path| path.broken_at(before).is_none()).any(|path| {
        let Some(way) = after.wiring.way_between(path.feed.from, path.feed.to) else { return true };
        way.iter().filter_map(|id| after.parts.get(id)).any(|part| {
            let as_it_was = path.passes(part.id)
                && before.parts.get(&part.id).is_some_and(|old| {
                    old.kind == part.kind
                        && old.rating.legs == part.rating.legs
                        && old.rating.band == part.rating.band
                });
            let ends = part.id == path.feed.from || part.id == path.feed.to;
            !as_it_was && !ends && part.kind != PartKind::Barrel && part.rating.power_pass != Some(true)
        })
    })
}

/// The preamplifier stands at the antenna: what is put between the two costs noise, and nothing may hold its DC back.
fn before_mast(change: ChangeKind, before: &Survey, after: &Survey) -> bool {
    if !is_filter_step(change) {
        return false;
    }
    let head = before.wiring.head_of(change.at());
    let antenna = before.parts.get(&head).is_some_and(|part| part.entry_kind == EntryKind::Antenna);
    let new: Vec<_> = after
        .parts
        .values()
        .filter(|part| part.is_entry_filter() && after.wiring.head_of(part.id) == head)
        .filter(|part| before.wiring.feed(part.id) != after.wiring.feed(part.id))
        .collect();
    let in_a_row = |from: SubjectId| {
        let mut at = from;
        while let [only] = after.wiring.fed_from(at) {
            // A second output that is not amplified is a way out that no filter behind the amplifier closes.
            let amplifies = |part: &Part| part.kind == PartKind::Amplifier && part.outputs() == 1;
            if after.parts.get(only).is_some_and(amplifies) {
                return true;
            }
            at = *only;
        }
        false
    };
    let amplified = |id: SubjectId| {
        let above = after.wiring.way_up(id);
        above.iter().filter_map(|id| after.parts.get(id)).any(|part| part.kind == PartKind::Amplifier)
    };
    antenna && new.iter().any(|filter| in_a_row(filter.id) && !amplified(filter.id))
}

fn street_side(change: ChangeKind, before: &Survey) -> bool {
    match change {
        ChangeKind::ReplaceRun { to } | ChangeKind::RenewConnectors { to } => before.is_street_side(to),
        _ => false,
    }
}

fn not_own(change: ChangeKind, before: &Survey) -> bool {
    let rented = before.building.is_some_and(|building| building.ownership == Ownership::Rented);
    rented && matches!(change, ChangeKind::ReplaceRun { .. } | ChangeKind::NewRun { .. })
}

/// Whether nobody knows, measured or worked out from what was measured elsewhere, what a device below an amplifier gets.
fn unmeasured(change: ChangeKind, before: &Survey) -> bool {
    let ChangeKind::RemoveAmplifier { amplifier } = change else { return false };
    let known = levels(before, &level::Options::default()).unwrap_or_default();
    let is_known = |outlet| {
        let here = known.outlets.iter().filter(|levels| levels.outlet == outlet);
        here.flat_map(|levels| &levels.down).any(|down| down.level.is_some() || down.measured.is_some())
    };
    let below = before.wiring.below(amplifier);
    below.iter().filter_map(|id| before.parts.get(id)).any(|part| {
        let needs = [Plugged::Tv, Plugged::TvBox, Plugged::Modem].into_iter().any(|device| has(part, device));
        needs && !is_known(part.id)
    })
}

fn caps_in_use(change: ChangeKind, before: &Survey) -> bool {
    let ChangeKind::Cap { part, port } = change else { return false };
    let fed = before.wiring.on_port(part, port).next().is_some();
    let found = before.parts.get(&part);
    fed || found.is_some_and(|part| part.plugged.as_ref().is_some_and(|plugged| !plugged.is_empty()))
}

fn loses_ground_block(before: &Survey, after: &Survey) -> bool {
    let blocks = before.parts.values().filter(|part| part.kind == PartKind::GroundBlock);
    blocks.into_iter().any(|block| {
        after.parts.get(&block.id).is_none_or(|part| {
            part.kind != PartKind::GroundBlock
                || before.wiring.feed(block.id).is_some() != after.wiring.feed(block.id).is_some()
        })
    })
}

/// What nobody looked at is not known, never not used: no smaller splitter, and no removal, rests on it.
fn drops_unknown_output(change: ChangeKind, before: &Survey, after: &Survey) -> bool {
    let gone: Vec<SubjectId> = match change {
        ChangeKind::SwapSplitter { splitter, .. } | ChangeKind::RemoveSplitter { splitter } => vec![splitter],
        ChangeKind::MergeSplitters { upper, lower, .. } => vec![upper, lower],
        _ => return false,
    };
    let outputs = |survey: &Survey| -> u32 {
        gone.iter().filter_map(|id| survey.parts.get(id)).map(|part| u32::from(part.outputs())).sum()
    };
    let unknown = gone.iter().filter_map(|id| before.parts.get(id)).any(|part| {
        let free = |port: &u8| before.wiring.on_port(part.id, *port).next().is_none();
        let stated = part.rating.legs > 0;
        let open = |port: u8| matches!(part.end(port), None | Some(PortEnd::LooseEnd));
        stated && (1..=part.outputs()).filter(free).any(open)
    });
    unknown && outputs(after) < outputs(before)
}

fn filters_fibre(change: ChangeKind, before: &Survey) -> bool {
    let ChangeKind::FilterAtDevice { outlet } = change else { return false };
    before.parts.get(&outlet).is_some_and(|part| has(part, Plugged::FibreBox))
}

/// A plain cap shorts DC that stands on the output it is screwed to.
fn shorts_power(step: &Step) -> bool {
    let places = match step.change {
        ChangeKind::Cap { part, .. } => vec![part],
        ChangeKind::SwapSplitter { splitter, .. } => vec![splitter],
        ChangeKind::MergeSplitters { upper, lower, .. } => vec![upper, lower],
        _ => return false,
    };
    let holds_back = |part: &SubjectId| {
        step.before.parts.get(part).is_some_and(|part| part.rating.power_pass == Some(false))
    };
    let carries = power_paths(&step.before)
        .iter()
        .any(|path| path.between().any(|id| places.contains(&id) && !holds_back(&id)));
    carries && step.effort.parts.iter().any(|needed| needed.what.id == "need-cap")
}

/// Whatever is unscrewed above another home's leg leaves other people without signal meanwhile, and a filter in front of it
/// for good.
fn touches_another_home(change: ChangeKind, before: &Survey) -> bool {
    let leads_there = |part: &SubjectId| {
        let part = before.parts.get(part);
        part.is_some_and(|part| part.ends.values().any(|end| *end == PortEnd::AnotherHome))
    };
    let below = |part| before.wiring.below(part).iter().any(leads_there);
    match change {
        ChangeKind::Cap { part, port } => {
            before.parts.get(&part).is_some_and(|part| part.end(port) == Some(PortEnd::AnotherHome))
        }
        ChangeKind::AddEntryFilter { behind } | ChangeKind::MoveEntryFilter { behind, .. } => {
            before.wiring.fed_from(behind).iter().any(|child| below(*child))
        }
        ChangeKind::SwapEntryFilter { filter } => below(filter),
        ChangeKind::SwapSplitter { splitter, .. } | ChangeKind::RemoveSplitter { splitter } => {
            below(splitter)
        }
        ChangeKind::MergeSplitters { upper, .. } => below(upper),
        ChangeKind::SwapAmplifier { amplifier } | ChangeKind::RemoveAmplifier { amplifier } => {
            below(amplifier)
        }
        ChangeKind::ReplaceRun { to } | ChangeKind::RenewConnectors { to } => below(to),
        ChangeKind::NewRun { from, .. } => below(from),
        _ => false,
    }
}
