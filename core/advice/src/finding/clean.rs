//! Error ratios (MER) that were read, against what the service needs.

use facts::fact::SubjectId;
use house::naming;
use house::record::{Part, Survey};
use phrase::Arg;

use super::inspection::Inspection;
use super::{Finding, FindingKind, Place};
use crate::level::{self, CleanNeed, Served, served_outlets};

/// Cables do not take from the ratio, noise and echoes do: from so many decibels on the stretch between two readings has
/// one of these (common practice, no source).
const WORSE_DB: f64 = 3.0;

/// Readings at which a service arrives too noisy, or nearly so: the least at each place.
pub(super) fn ratios(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let served = served_outlets(survey);
    let entries = survey.parts.values().filter(|part| part.is_joined_entry());
    entries.flat_map(|entry| on_tree(inspection, entry, &served)).collect()
}

fn on_tree(inspection: &Inspection<'_>, entry: &Part, served: &[Served]) -> Vec<Finding> {
    let survey = inspection.survey;
    let here: Vec<_> = served.iter().filter(|served| served.entry == entry.id).collect();
    let of = |part: SubjectId| {
        let (mhz, db) = least_at(survey, part)?;
        // At a place without a device what comes by is that of the devices behind.
        let own = here.iter().find(|served| served.outlet == part).or(here.first())?;
        let need = level::clean_need_of(survey, own.service)?;
        let kind = kind_of(&need, db)?;
        Some(
            Finding::new(kind, vec![Place::Part(part)])
                .phrase("place", inspection.name(part))
                .phrase("service", naming::service(own.service))
                .with("ratio", Arg::Loss(db))
                .with("frequency", Arg::Frequency(mhz))
                .with("least", Arg::Loss(need.least_db))
                .with("recommended", Arg::Loss(need.recommended_db))
                .text("from", comes_from(survey, entry.id, part, (mhz, db))),
        )
    };
    survey.wiring.below(entry.id).into_iter().filter_map(of).collect()
}

fn kind_of(need: &CleanNeed, db: f64) -> Option<FindingKind> {
    match () {
        () if !need.holds(db) => Some(FindingKind::SignalNotClean),
        () if !need.has_margin(db) => Some(FindingKind::SignalHardlyClean),
        () => None,
    }
}

fn least_at(survey: &Survey, part: SubjectId) -> Option<(f64, f64)> {
    level::ratios_at(survey, part).into_iter().min_by(|a, b| a.1.total_cmp(&b.1))
}

/// Whether the noise comes in from outside or joins on the way, as far as the readings before a place tell.
fn comes_from(survey: &Survey, entry: SubjectId, part: SubjectId, (mhz, db): (f64, f64)) -> &'static str {
    if part == entry {
        return "outside";
    }
    let before = survey.wiring.way_up(part).into_iter().skip(1).find_map(|above| {
        let near = |read: &(f64, f64)| (read.0 - mhz).abs() <= level::NEIGHBOUR_MHZ;
        level::ratios_at(survey, above).into_iter().find(near)
    });
    match before {
        Some((_, above)) if above >= db + WORSE_DB => "way",
        Some(_) => "outside",
        None => "unknown",
    }
}
