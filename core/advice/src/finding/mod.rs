//! What is wrong or at risk in a house: what, where, why it matters, what to do, on what grounds, with which caution.
//!
//! A finding says only what the records show. What nobody has looked at becomes a note ("not yet known"), never an
//! assertion. This folder does not change anything (work list) and does not show anything (report, screens).
//!
//! To add a finding: one line in the table of `kind.rs`; one detector, a function from `Inspection` to findings, in
//! the file of its theme or in a file of its own, listed in `DETECTORS` (or `SOLVING_DETECTORS`); one message `finding-<id>` with `.why`,
//! `.do` and `.source` in telling's `findings.ftl`; and in `tests/houses/src/finding_cases.rs` one house where it appears
//! and one where it must not. The tests name every kind that lacks one of these.

mod adapters;
mod amplifiers;
mod caution;
pub(crate) mod cautions;
mod clean;
mod entry;
mod filters;
mod forecasts;
mod inspection;
mod kind;
mod legs;
mod levels;
mod levels_worked_out;
mod measured_parts;
mod networks;
mod outlet_test;
mod place;
mod power;
mod runs;
mod satellite;
mod services;
mod splits;
mod splitters;
mod tags;
mod trees;

use house::record::{OtherHomesLeg, Sureness, Survey, other_homes_leg};
use phrase::{Arg, Phrase};

use crate::forecast::Forecast;
use crate::level::Levels;

pub use caution::Caution;
use inspection::Inspection;
pub use kind::{FindingKind, Grounds, Weight};
pub use place::Place;
pub(crate) use services::drops_out_beside_adapter;
pub use services::is_modem_beside_adapter;

/// Looks at a house for one kind of finding, or a few of one theme.
type Detector = fn(&Inspection<'_>) -> Vec<Finding>;

/// Every detector. Their order does not matter: findings are sorted.
const DETECTORS: &[Detector] = &[
    entry::filters,
    entry::ground_block,
    entry::shared_building,
    filters::stop_band,
    filters::passed_services,
    filters::return_path,
    filters::satellite_line,
    splitters::band,
    splitters::for_satellite,
    splitters::doubtful_labels,
    splits::sizes,
    splits::cascades,
    splits::many,
    legs::free_legs,
    legs::empty_outlets,
    legs::crowded_ports,
    amplifiers::by_pass,
    amplifiers::return_band,
    amplifiers::forward_band,
    runs::long_or_thin,
    runs::connectors,
    trees::loose_parts,
    trees::bridges,
    tags::used_twice,
    satellite::on_the_tree,
    satellite::combiners,
    services::in_the_band,
    services::other_networks,
    services::modems,
    services::drop_outs,
    services::reach_unknown,
    networks::channels,
    networks::nodes_seen,
    power::feeds,
    levels::measured,
    measured_parts::not_used,
    levels::modem_sends,
    levels::before_work,
    clean::ratios,
    outlet_test::against_forecast,
    outlet_test::by_itself,
    adapters::number,
    adapters::ports,
    forecasts::no_channel,
    forecasts::wishes,
];

/// Detectors that solve circuits for what they find, none of which is grave: whoever asks again and again what is grave does
/// without them.
const SOLVING_DETECTORS: &[Detector] =
    &[levels_worked_out::outside, levels::against_wiring, adapters::versions];

/// Something wrong or at risk, or not yet known.
///
/// What it speaks of (names, lengths, bands) is held as typed [`Arg`]s rather than in the kind, so that kinds can be
/// listed, compared and proved one by one.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// What kind of thing it is.
    pub kind: FindingKind,
    /// Where: the place to go to first, then what else it concerns. Never empty.
    pub at: Vec<Place>,
    args: Vec<(&'static str, Arg)>,
    /// A leg of another home that hangs on what it is about: then nobody touches it.
    others: Option<OtherHomesLeg>,
}

impl Finding {
    fn new(kind: FindingKind, at: Vec<Place>) -> Self {
        Self { kind, at, args: Vec::new(), others: None }
    }

    fn with(mut self, name: &'static str, arg: Arg) -> Self {
        self.args.push((name, arg));
        self
    }

    fn text(self, name: &'static str, text: &str) -> Self {
        self.with(name, Arg::Text(text.to_owned()))
    }

    fn phrase(self, name: &'static str, phrase: Phrase) -> Self {
        self.with(name, Arg::Phrase(Box::new(phrase)))
    }

    /// How much it matters.
    pub fn weight(&self) -> Weight {
        self.kind.weight()
    }

    /// What was found, and where.
    pub fn what(&self) -> Phrase {
        Phrase { id: format!("finding-{}", self.kind.id()), args: self.args.clone() }
    }

    /// Why it matters.
    pub fn why(&self) -> Phrase {
        self.what().attribute("why")
    }

    /// What to do about it. What another home gets its signal by stays as it is, and who looks after it is asked.
    pub fn todo(&self) -> Phrase {
        let Some(leg) = self.others else { return self.what().attribute("do") };
        let id = if leg.sureness == Sureness::Known { "another-home-ask" } else { "another-home-may-be-ask" };
        match self.args.iter().find(|(name, _)| *name == OTHERS) {
            Some((_, name)) => Phrase::new(id).with("port", name.clone()),
            None => Phrase::new(id),
        }
    }

    /// Where the claim comes from, in words; [`FindingKind::grounds`] says it as data.
    pub fn source(&self) -> Phrase {
        self.what().attribute("source")
    }

    /// What to take care of while doing it, most important first; empty where nothing is touched.
    pub fn cautions(&self) -> &'static [Caution] {
        if self.others.is_some() { cautions::LOOK } else { self.kind.cautions() }
    }

    /// Those of them that this house leaves open.
    pub fn cautions_in(&self, survey: &Survey) -> Vec<Caution> {
        self.cautions().iter().copied().filter(|caution| caution.is_open_in(survey)).collect()
    }

    /// Marks it where what it bids to unscrew carries another home's signal. What is decided of an entry filter says so
    /// itself, and a cap goes on an output that is free.
    fn beside_other_homes(self, survey: &Survey) -> Self {
        let decided = matches!(
            self.kind,
            FindingKind::EntryFilterMissing
                | FindingKind::EntryFilterIfConnected
                | FindingKind::EntryFilterNotSeen
                | FindingKind::SharedBuildingOpen
                | FindingKind::FilterAfterSplit
                | FindingKind::FilterNotForBand
                | FindingKind::LegOpen
        );
        let unscrews = self.kind.cautions().contains(&Caution::WhoDependsOnIt);
        let part = self.at.first().and_then(|place| place.part()).filter(|_| unscrews && !decided);
        match part.and_then(|part| other_homes_leg(survey, part)) {
            Some(leg) => Self { others: Some(leg), ..self }
                .phrase(OTHERS, house::naming::port(survey, leg.part, leg.port)),
            None => self,
        }
    }
}

/// What another home's leg is called among the arguments of a finding.
const OTHERS: &str = "others";

/// All findings on a house: most serious first, then by kind, then by tag. A forecast adds what follows from it.
pub fn findings(survey: &Survey, forecast: Option<&Forecast>) -> Vec<Finding> {
    found(&Inspection::new(survey, forecast, None))
}

/// The same beside a work list, which holds the forecast and the levels as found: neither is worked out anew.
pub fn findings_beside(survey: &Survey, forecast: &Forecast, levels: &Levels) -> Vec<Finding> {
    found(&Inspection::new(survey, Some(forecast), Some(levels)))
}

fn found(inspection: &Inspection<'_>) -> Vec<Finding> {
    let survey = inspection.survey;
    let solved: Vec<_> = SOLVING_DETECTORS.iter().flat_map(|detector| detector(inspection)).collect();
    debug_assert!(solved.iter().all(|finding| finding.weight() != Weight::Grave), "see SOLVING_DETECTORS");
    let mut found: Vec<_> = DETECTORS
        .iter()
        .flat_map(|detector| detector(inspection))
        .chain(solved)
        .map(|finding| finding.beside_other_homes(survey))
        .collect();
    found.sort_by_cached_key(|finding| {
        let tag = finding.at.first().map(|place| place.tag_order(survey));
        let in_order: Vec<_> = finding.at.iter().map(|place| place.in_order(survey)).collect();
        (finding.weight(), finding.kind, tag, in_order)
    });
    found
}

/// What is grave in a house as its records alone say, in no order.
pub(crate) fn grave_findings(survey: &Survey) -> impl Iterator<Item = Finding> {
    let inspection = Inspection::new(survey, None, None);
    let found: Vec<_> = DETECTORS.iter().flat_map(|detector| detector(&inspection)).collect();
    found.into_iter().filter(|finding| finding.weight() == Weight::Grave)
}
