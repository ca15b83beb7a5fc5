//! `legwork levels`: what each TV and modem gets, and what the work list changes of it.

use advice::forecast::MeteredAt;
use advice::level::{
    BandChange, DoneLevel, LevelTold, Missed, OutletChange, OutletDone, OutletLevels, Window,
    european_windows_of, told,
};
use advice::worklist::WorkList;
use coax::Backing;
use house::naming;
use house::record::{ServiceKind, Survey};
use phrase::{Arg, Phrase};
use serde::Serialize;

use super::context::Context;
use super::json::{PartJson, SpanJson, part, rounded, span};
use super::worked::Opened;
use crate::error::DeskError;
use crate::printed::Page;

/// Works the levels out and tells them.
pub fn run(context: &Context, opened: &Opened) -> Result<(), DeskError> {
    let (list, survey) = (opened.work_list(context)?, &opened.survey);
    context.answer(&as_json(survey, &list), |page| tell(context, survey, &list, page))
}

/// Tells levels in words.
pub(super) fn tell(context: &Context, survey: &Survey, list: &WorkList, page: &mut Page) {
    page.heading(&context.word("desk-levels"));
    let rows = told(survey, &list.levels, &list.level_changes);
    if rows.is_empty() {
        page.paragraph(0, &context.word("desk-levels-none"));
        return;
    }
    page.paragraph(0, &context.word("levels-how"));
    for row in &rows {
        tell_outlet(context, survey, row, page);
    }
}

fn tell_outlet(context: &Context, survey: &Survey, row: &LevelTold, page: &mut Page) {
    let several = |phrases: &[Phrase]| {
        let phrases = phrases.iter().cloned().map(|phrase| Arg::Phrase(Box::new(phrase))).collect();
        context.say(&Phrase::new("desk-list").with("items", Arg::Several(phrases)))
    };
    let title = Phrase::new("desk-levels-outlet")
        .phrase("outlet", naming::part(survey, row.outlet))
        .phrase("service", naming::service(row.service));
    page.gap();
    page.title(&context.say(&title));
    let mut rows = vec![(context.word("desk-levels-now"), several(&row.now))];
    if !row.needs.is_empty() {
        rows.push((context.word("desk-levels-needs"), several(&row.needs)));
        rows.push((context.word("desk-levels-fits"), context.say(&row.fits_phrase())));
    }
    let then: Vec<_> = row.change.iter().chain(&row.then).cloned().collect();
    if !then.is_empty() {
        rows.push((context.word("desk-levels-then"), several(&then)));
    }
    if let (Some(fits), true) = (row.fits_then, row.fits_then_phrase().is_some()) {
        rows.push((context.word("desk-levels-fits"), context.say(&fits.phrase())));
    }
    page.rows(3, &rows);
}

/// Levels as JSON.
#[derive(Serialize)]
pub(super) struct LevelsJson {
    outlets: Vec<OutletJson>,
}

#[derive(Serialize)]
struct OutletJson {
    outlet: PartJson,
    entry: PartJson,
    service: ServiceKind,
    fits: &'static str,
    down: Vec<DownJson>,
    down_window: Option<WindowJson>,
    european_windows: Vec<WindowJson>,
    up: Vec<UpJson>,
    modem_sends_dbmv: Option<f64>,
    up_window: Option<WindowJson>,
    error_ratios: Vec<RatioJson>,
    missing: Vec<MissedJson>,
    broken: Option<BrokenJson>,
    change: Option<ChangeJson>,
    when_done: Option<DoneJson>,
}

/// What is known, as it will be when the work list is done.
#[derive(Serialize)]
struct DoneJson {
    fits: &'static str,
    down: Vec<DoneLevelJson>,
    modem_sends_dbmv: Option<SpanJson>,
}

#[derive(Serialize)]
struct DoneLevelJson {
    mhz: f64,
    level_dbmv: SpanJson,
}

#[derive(Serialize)]
struct DownJson {
    mhz: f64,
    gain_db: SpanJson,
    level_dbmv: Option<SpanJson>,
    measured_dbmv: Option<f64>,
}

#[derive(Serialize)]
struct UpJson {
    mhz: f64,
    gain_db: SpanJson,
}

/// Where nothing gets through.
#[derive(Serialize)]
struct BrokenJson {
    way: &'static str,
    mhz: f64,
    loss_db: f64,
    amplifier: Option<PartJson>,
    stated: bool,
    reach_stated: bool,
}

/// What is counted as lost on the way.
#[derive(Serialize)]
struct MissedJson {
    loss_db: f64,
    chance: f64,
    measured_at: Vec<PlaceJson>,
}

#[derive(Serialize)]
struct PlaceJson {
    part: PartJson,
    port: Option<u8>,
}

/// How clean a digital signal arrives.
#[derive(Serialize)]
struct RatioJson {
    mhz: f64,
    db: f64,
    least_db: Option<f64>,
    recommended_db: Option<f64>,
}

#[derive(Serialize)]
struct WindowJson {
    name: String,
    low_dbmv: Option<f64>,
    high_dbmv: Option<f64>,
    grounds: &'static str,
    recommended: Option<RecommendedJson>,
}

/// The narrower range that is recommended.
#[derive(Serialize)]
struct RecommendedJson {
    low_dbmv: f64,
    high_dbmv: f64,
    grounds: &'static str,
}

/// What all steps of the work list change, dB: more signal is positive.
#[derive(Serialize)]
struct ChangeJson {
    cut_off: bool,
    down: Vec<BandJson>,
    up: Vec<BandJson>,
}

#[derive(Serialize)]
struct BandJson {
    mhz: f64,
    change_db: SpanJson,
}

pub(super) fn as_json(survey: &Survey, list: &WorkList) -> LevelsJson {
    let outlet = |found: &OutletLevels| {
        let same = |change: &&OutletChange| change.outlet == found.outlet && change.service == found.service;
        outlet_as_json(survey, found, list.level_changes.iter().find(same))
    };
    LevelsJson { outlets: list.levels.outlets.iter().map(outlet).collect() }
}

fn outlet_as_json(survey: &Survey, found: &OutletLevels, change: Option<&OutletChange>) -> OutletJson {
    let down = found.down.iter().map(|down| DownJson {
        mhz: rounded(down.mhz, 1),
        gain_db: span(down.gain, 1),
        level_dbmv: down.level.map(|level| span(level, 1)),
        measured_dbmv: down.measured.map(|dbmv| rounded(dbmv, 1)),
    });
    let up = found.up.iter().map(|up| UpJson { mhz: rounded(up.mhz, 1), gain_db: span(up.gain, 1) });
    OutletJson {
        outlet: part(survey, found.outlet),
        entry: part(survey, found.entry),
        service: found.service,
        fits: found.fits().name(),
        down: down.collect(),
        down_window: found.down.iter().find_map(|down| down.window).map(window_as_json),
        up: up.collect(),
        modem_sends_dbmv: found.sends().map(|dbmv| rounded(dbmv, 1)),
        up_window: found.up.first().map(|up| window_as_json(up.window)),
        european_windows: european_windows_of(survey, found.service)
            .iter()
            .copied()
            .map(window_as_json)
            .collect(),
        broken: found.broken.map(|broken| BrokenJson {
            way: if broken.back { "up" } else { "down" },
            mhz: rounded(broken.mhz, 1),
            loss_db: rounded(broken.loss_db, 1),
            amplifier: broken.amplifier.map(|amplifier| part(survey, amplifier)),
            stated: broken.stated,
            reach_stated: broken.reach_stated,
        }),
        error_ratios: found.ratios.iter().map(|(mhz, db)| ratio_as_json(found, *mhz, *db)).collect(),
        missing: found.missing.iter().map(|missed| missed_as_json(survey, missed)).collect(),
        change: change.map(|change| ChangeJson {
            cut_off: change.cut_off,
            down: change.down.iter().map(band_as_json).collect(),
            up: change.up.iter().map(band_as_json).collect(),
        }),
        when_done: change.map(|change| done_as_json(&found.when_done(change))),
    }
}

fn missed_as_json(survey: &Survey, missed: &Missed) -> MissedJson {
    let place = |at: &MeteredAt| PlaceJson { part: part(survey, at.part), port: at.port };
    MissedJson {
        loss_db: rounded(missed.db, 1),
        chance: rounded(missed.chance, 3),
        measured_at: missed.measured_at.iter().map(place).collect(),
    }
}

fn done_as_json(done: &OutletDone) -> DoneJson {
    let level =
        |level: &DoneLevel| DoneLevelJson { mhz: rounded(level.mhz, 1), level_dbmv: span(level.level, 1) };
    DoneJson {
        fits: done.fits().name(),
        down: done.down.iter().map(level).collect(),
        modem_sends_dbmv: done.sends.map(|sends| span(sends.level, 1)),
    }
}

fn ratio_as_json(found: &OutletLevels, mhz: f64, db: f64) -> RatioJson {
    RatioJson {
        mhz: rounded(mhz, 1),
        db: rounded(db, 1),
        least_db: found.clean_need.map(|need| need.least_db),
        recommended_db: found.clean_need.map(|need| need.recommended_db),
    }
}

fn band_as_json(band: &BandChange) -> BandJson {
    BandJson { mhz: rounded(band.mhz, 1), change_db: span(band.db, 1) }
}

fn window_as_json(window: Window) -> WindowJson {
    WindowJson {
        name: window.name.replace('-', "_"),
        low_dbmv: window.low_dbmv,
        high_dbmv: window.high_dbmv,
        grounds: grounds(window.backing),
        recommended: window.recommended.map(|recommended| RecommendedJson {
            low_dbmv: recommended.low_dbmv,
            high_dbmv: recommended.high_dbmv,
            grounds: grounds(recommended.backing),
        }),
    }
}

fn grounds(backing: Backing) -> &'static str {
    match backing {
        Backing::Published(_) => "published",
        Backing::Derived(_) => "derived",
        Backing::CommonPractice => "common_practice",
        Backing::FromMemory => "from_memory",
        Backing::Estimate(_) => "estimate",
    }
}
