//! A work list as JSON.

use std::collections::BTreeSet;

use advice::adapters::{adapters_to_come, are_adapters_to_place};
use advice::level::{self, BandChange, LevelTold, MovedOut, OutletChange};
use advice::verdict::Lacking;
use advice::worklist::{CutShort, FailedRoom, OtherList, OtherStep, PartNeeded, Step, WorkList};
use house::naming;
use house::record::{ChangeKind, Named, Room, ServiceKind, Survey, Without};
use phrase::Phrase;
use serde::Serialize;

use super::words::adapter_in_words;
use crate::command::context::Context;
use crate::command::forecast::{self, ForecastJson, Of};
use crate::command::json::{PartJson, part, rounded};

/// How far the changes were searched.
#[derive(Serialize)]
struct SearchedJson {
    houses: u64,
    is_best: bool,
    better_by_mbps: f64,
}

/// A work list as JSON.
#[derive(Serialize)]
pub struct WorkListJson {
    steps: Vec<StepJson>,
    cut_short: Option<&'static str>,
    searched: Option<SearchedJson>,
    failed: Vec<FailedJson>,
    lacking: Vec<LackingJson>,
    without: Vec<&'static str>,
    others: Vec<OtherJson>,
    shopping: Vec<NeededJson>,
    adapters: Vec<AdapterJson>,
    refused: Vec<RefusedJson>,
    as_found: ForecastJson,
    when_done: ForecastJson,
    levels: Vec<FitsJson>,
}

/// How the level of one service at one outlet lies to what the device needs.
#[derive(Serialize)]
struct FitsJson {
    outlet: PartJson,
    service: ServiceKind,
    fits: &'static str,
    fits_when_done: &'static str,
}

#[derive(Serialize)]
struct StepJson {
    change: &'static str,
    outlet_check: Option<&'static str>,
    at: PartJson,
    what: String,
    why: Option<String>,
    how: Option<String>,
    cautions: Vec<String>,
    check: Option<String>,
    back: Option<String>,
    services: Vec<ServiceChangeJson>,
    moves_out: Vec<MovedOutJson>,
    narrows: Vec<MovedOutJson>,
    gains: Vec<GainJson>,
    minutes: u64,
    needs: Vec<NeededJson>,
}

/// A room whose test failed: what is wrong on the way, and which step comes next for it, from 1.
#[derive(Serialize)]
struct FailedJson {
    outlet: PartJson,
    faults: Vec<&'static str>,
    next: Option<usize>,
    what: String,
}

/// An adapter that is to be placed once the cables are done.
#[derive(Serialize)]
struct AdapterJson {
    outlet: Option<PartJson>,
    at_router: bool,
    what: String,
}

/// A room of which nothing can be told yet, and what is missing.
#[derive(Serialize)]
struct LackingJson {
    room: String,
    lack: &'static str,
    what: String,
}

#[derive(Serialize)]
struct GainJson {
    outlet: PartJson,
    before_mbps: f64,
    after_mbps: f64,
    before_low_mbps: f64,
    after_low_mbps: f64,
    before_phy_mbps: f64,
    after_phy_mbps: f64,
}

/// What a step does to one service at one outlet, dB: more signal is positive.
#[derive(Serialize)]
struct ServiceChangeJson {
    outlet: PartJson,
    service: ServiceKind,
    cut_off: bool,
    down: Vec<BandChangeJson>,
    up: Vec<BandChangeJson>,
}

/// A level that a step moves out of what the device needs.
#[derive(Serialize)]
struct MovedOutJson {
    outlet: PartJson,
    service: ServiceKind,
    modem_sends: bool,
    mhz: f64,
    as_found_dbmv: f64,
    after_dbmv: f64,
    what: String,
}

#[derive(Serialize)]
struct BandChangeJson {
    mhz: f64,
    low_db: f64,
    likely_db: f64,
    high_db: f64,
}

#[derive(Serialize)]
struct NeededJson {
    what: String,
    count: u64,
}

#[derive(Serialize)]
struct RefusedJson {
    change: &'static str,
    outlet_check: Option<&'static str>,
    at: PartJson,
    what: String,
    why: String,
}

/// Another list that may be chosen, beside the one that is told.
#[derive(Serialize)]
struct OtherJson {
    without: Vec<&'static str>,
    what: String,
    differs: Vec<String>,
    steps: Vec<OtherStepJson>,
    minutes: u64,
    shopping: Vec<NeededJson>,
    not_met: Vec<String>,
    met: Vec<String>,
    when_done: ForecastJson,
}

#[derive(Serialize)]
struct OtherStepJson {
    change: &'static str,
    at: PartJson,
    what: String,
    minutes: u64,
}

/// What is checked, of a change that is a check at an outlet.
fn outlet_check(change: ChangeKind) -> Option<&'static str> {
    match change {
        ChangeKind::CheckAtOutlet { check, .. } => Some(check.name()),
        _ => None,
    }
}

/// A work list as JSON.
pub fn as_json(context: &Context, survey: &Survey, list: &WorkList) -> WorkListJson {
    let refused = |change: &ChangeKind, why: Phrase| {
        let phrase = change.phrase(survey);
        RefusedJson {
            change: change.name(),
            outlet_check: outlet_check(*change),
            at: part(survey, change.at()),
            what: context.say(&phrase),
            why: context.say(&why),
        }
    };
    let fits = |row: &LevelTold| FitsJson {
        outlet: part(survey, row.outlet),
        service: row.service,
        fits: row.fits.name(),
        fits_when_done: row.fits_then.unwrap_or(row.fits).name(),
    };
    WorkListJson {
        steps: list.steps.iter().map(|step| step_as_json(context, step)).collect(),
        cut_short: list.cut_short.map(CutShort::name),
        searched: list.searched.map(|searched| SearchedJson {
            houses: searched.houses,
            is_best: searched.is_best(),
            better_by_mbps: searched.better_by_mbps.round(),
        }),
        failed: list.failed.iter().map(|room| failed_as_json(context, survey, list, room)).collect(),
        lacking: lacking_as_json(context, survey),
        without: names(&survey.without()),
        others: list.others.iter().map(|other| other_as_json(context, survey, list, other)).collect(),
        shopping: needed(context, &list.shopping(survey)),
        adapters: adapters_as_json(context, list),
        refused: list.refused.iter().map(|(change, why)| refused(change, why.why(survey))).collect(),
        as_found: forecast::as_json(survey, &list.as_found, Of::AsFound),
        when_done: forecast::as_json(&list.house_when_done, &list.when_done, Of::ToCome),
        levels: level::told(survey, &list.levels, &list.level_changes).iter().map(fits).collect(),
    }
}

fn names(without: &BTreeSet<Without>) -> Vec<&'static str> {
    without.iter().map(|kind| kind.name()).collect()
}

fn needed(context: &Context, parts: &[PartNeeded]) -> Vec<NeededJson> {
    let one = |needed: &PartNeeded| NeededJson { what: context.say(&needed.what), count: needed.count };
    parts.iter().map(one).collect()
}

fn other_as_json(context: &Context, survey: &Survey, list: &WorkList, other: &OtherList) -> OtherJson {
    let rooms = |rooms: Vec<&Room>| -> Vec<String> {
        rooms.iter().map(|room| context.say(&naming::of_room(&other.house_when_done, room))).collect()
    };
    let step = |step: &OtherStep| OtherStepJson {
        change: step.change.name(),
        at: part(&step.before, step.change.at()),
        what: context.say(&step.what()),
        minutes: step.effort.minutes,
    };
    OtherJson {
        without: names(&other.without),
        what: context.say(&other.name()),
        differs: other.differs(list).iter().map(|differs| context.say(differs)).collect(),
        steps: other.steps.iter().map(step).collect(),
        minutes: other.minutes(),
        shopping: needed(context, &other.shopping(survey)),
        not_met: rooms(other.not_met(list)),
        met: rooms(other.met(list)),
        when_done: forecast::as_json(&other.house_when_done, &other.when_done, Of::ToCome),
    }
}

fn moved_as_json(context: &Context, step: &Step, moved: &MovedOut, what: &Phrase) -> MovedOutJson {
    MovedOutJson {
        outlet: part(&step.before, moved.outlet),
        service: moved.service,
        modem_sends: moved.sends,
        mhz: rounded(moved.level.mhz, 1),
        as_found_dbmv: rounded(moved.level.now_dbmv, 1),
        after_dbmv: rounded(moved.level.level.likely, 1),
        what: context.say(what),
    }
}

fn failed_as_json(context: &Context, survey: &Survey, list: &WorkList, room: &FailedRoom) -> FailedJson {
    let next = list.steps.iter().position(|step| Some(step.change) == room.next);
    FailedJson {
        outlet: part(survey, room.outlet),
        faults: room.faults.iter().map(|fault| fault.name()).collect(),
        next: next.map(|place| place + 1),
        what: context.say(&room.phrase(survey, list)),
    }
}

fn adapters_as_json(context: &Context, list: &WorkList) -> Vec<AdapterJson> {
    let house = &list.house_when_done;
    let to_place = if are_adapters_to_place(house) { adapters_to_come(house) } else { Vec::new() };
    let told = to_place.iter().map(|adapter| AdapterJson {
        outlet: adapter.outlet.map(|outlet| part(house, outlet)),
        at_router: adapter.at_router,
        what: adapter_in_words(context, house, adapter),
    });
    told.collect()
}

fn lacking_as_json(context: &Context, survey: &Survey) -> Vec<LackingJson> {
    let lacking = Lacking::of(survey);
    let rooms = lacking.rooms.iter().filter_map(|(room, lack)| Some((survey.rooms.get(room)?, lack)));
    rooms
        .map(|(room, lack)| LackingJson {
            room: context.say(&naming::of_room(survey, room)),
            lack: lack.name(),
            what: context.say(&lack.phrase(survey)),
        })
        .collect()
}

fn service_as_json(step: &Step, change: &OutletChange) -> ServiceChangeJson {
    let band = |band: &BandChange| BandChangeJson {
        mhz: rounded(band.mhz, 1),
        low_db: rounded(band.db.low, 1),
        likely_db: rounded(band.db.likely, 1),
        high_db: rounded(band.db.high, 1),
    };
    ServiceChangeJson {
        outlet: part(&step.before, change.outlet),
        service: change.service,
        cut_off: change.cut_off,
        down: change.down.iter().map(band).collect(),
        up: change.up.iter().map(band).collect(),
    }
}

fn step_as_json(context: &Context, step: &Step) -> StepJson {
    let phrase = step.change.phrase(&step.before);
    let attribute = |name: &str| context.language.say_if_known(&phrase.attribute(name));
    StepJson {
        change: step.change.name(),
        outlet_check: outlet_check(step.change),
        at: part(&step.before, step.change.at()),
        what: context.say(&phrase),
        why: attribute("why"),
        how: attribute("how"),
        cautions: step.cautions().iter().map(|caution| context.say(&caution.phrase())).collect(),
        check: attribute("check"),
        back: attribute("back"),
        services: step.service_changes.iter().map(|change| service_as_json(step, change)).collect(),
        moves_out: step
            .moves_out
            .iter()
            .map(|moved| moved_as_json(context, step, moved, &moved.phrase(&step.before)))
            .collect(),
        narrows: step
            .narrows
            .iter()
            .map(|moved| moved_as_json(context, step, moved, &moved.narrowed_phrase(&step.before)))
            .collect(),
        gains: step
            .gains
            .iter()
            .map(|gain| GainJson {
                outlet: part(&step.before, gain.outlet),
                before_mbps: rounded(gain.before.likely_mbps, 0),
                after_mbps: rounded(gain.after.likely_mbps, 0),
                before_low_mbps: rounded(gain.before.low_mbps, 0),
                after_low_mbps: rounded(gain.after.low_mbps, 0),
                before_phy_mbps: rounded(gain.before.phy_mbps, 0),
                after_phy_mbps: rounded(gain.after.phy_mbps, 0),
            })
            .collect(),
        minutes: step.effort.minutes,
        needs: needed(context, &step.effort.parts),
    }
}
