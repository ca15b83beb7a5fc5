//! What the report tells, handed in by whoever worked it out.

use advice::finding::Finding;
use advice::forecast::Forecast;
use advice::level::{self, LevelTold};
use advice::unknown::{Matters, Unknown, unknowns};
use advice::worklist::{
    CutShort, Gain, Options, OtherList, PartNeeded, Searched, Stake, Step, WorkList, chosen, stakes,
};
use house::naming;
use house::record::Survey;
use phrase::Phrase;

use super::provenance::Provenance;

/// Everything that a report tells.
#[derive(Debug, Clone)]
pub struct ReportInput<'a> {
    /// The house.
    pub survey: &'a Survey,
    /// What gets through.
    pub forecast: &'a Forecast,
    /// Where the network could start, while nobody has said where it does: each outlet with what the rooms would get.
    pub places: Vec<(Phrase, Phrase)>,
    /// What is wrong or at risk, what weighs most first.
    pub findings: Vec<FindingTold>,
    /// The same as it was found, for the flags of the map.
    pub flags: &'a [Finding],
    /// What to do, in order.
    pub steps: Vec<StepTold>,
    /// Why these steps are not all, where more may be worth doing.
    pub cut_short: Option<CutShort>,
    /// How far they were searched, where they were.
    pub searched: Option<Searched>,
    /// That some kind of work was left out of them, where that was chosen.
    pub chosen: Option<Phrase>,
    /// What else might be done instead.
    pub others: Vec<OtherTold>,
    /// Everything to get: for all steps, and the adapters where there are none yet.
    pub shopping: Vec<PartNeeded>,
    /// Each room whose test failed, with what comes next for it.
    pub failed: Vec<Phrase>,
    /// Changes that were left out, each with the reason.
    pub refused: Vec<Phrase>,
    /// The house and its forecast when all steps are done; `None` where no work list was made.
    pub when_done: Option<(&'a Survey, &'a Forecast)>,
    /// What is not known, what matters most first, each with what knowing it may change where that can be told.
    pub unknowns: Vec<(Unknown, Option<Stake>)>,
    /// What TV and modem get, and what all steps change of it.
    pub levels: Vec<LevelTold>,
    /// When, by whom, from which house, with which pictures.
    pub provenance: Provenance,
}

impl<'a> ReportInput<'a> {
    /// The input for a house of which everything was worked out.
    pub fn gathered(
        survey: &'a Survey,
        findings: &'a [Finding],
        work: &'a WorkList,
        provenance: Provenance,
    ) -> Self {
        let stakes = weighed_here(survey, &work.as_found);
        Self::weighed(survey, findings, (work, &stakes), provenance)
    }

    /// The same where it is known what is at stake with each of what is not known, in the order of [`unknowns`].
    pub fn weighed(
        survey: &'a Survey,
        findings: &'a [Finding],
        (work, stakes): (&'a WorkList, &[Option<Stake>]),
        provenance: Provenance,
    ) -> Self {
        let unknowns = ranked(survey, &work.as_found, stakes);
        Self { unknowns, ..Self::without_unknowns(survey, findings, work, provenance) }
    }

    /// The same with nothing told of what is not known, which alone takes forecasts of its own.
    pub fn without_unknowns(
        survey: &'a Survey,
        findings: &'a [Finding],
        work: &'a WorkList,
        provenance: Provenance,
    ) -> Self {
        let refused = work.refused.iter().map(|(change, refusal)| {
            Phrase::new("report-refused-change")
                .phrase("change", change.phrase(survey))
                .phrase("why", refusal.why(survey))
        });
        Self {
            survey,
            forecast: &work.as_found,
            places: work
                .places
                .iter()
                .map(|place| (naming::part(survey, place.outlet), place.phrase()))
                .collect(),
            findings: findings.iter().map(|finding| FindingTold::of(survey, finding)).collect(),
            flags: findings,
            steps: work.steps.iter().map(StepTold::from).collect(),
            cut_short: work.cut_short,
            searched: work.searched,
            chosen: chosen(survey),
            others: work.others.iter().map(|other| OtherTold::of(survey, work, other)).collect(),
            shopping: work.shopping(survey),
            failed: work.failed.iter().map(|room| room.phrase(survey, work)).collect(),
            refused: refused.collect(),
            when_done: Some((&work.house_when_done, &work.when_done)),
            unknowns: Vec::new(),
            levels: level::told(survey, &work.levels, &work.level_changes),
            provenance,
        }
    }
}

/// What is not known, weighed with few draws as the candidates of a work list are; what cannot be worked out is told by where
/// it is.
fn weighed_here(survey: &Survey, forecast: &Forecast) -> Vec<Option<Stake>> {
    let open = unknowns(survey, forecast);
    stakes(survey, forecast, &open, &Options::default().screening, &mut |_| true).unwrap_or_default()
}

/// What is not known, in the order in which it is worth going back for: what makes a rate most unsure comes first, then what may matter
/// but cannot be weighed, then the rest.
fn ranked(survey: &Survey, forecast: &Forecast, stakes: &[Option<Stake>]) -> Vec<(Unknown, Option<Stake>)> {
    let stakes = stakes.iter().copied().chain(std::iter::repeat(None));
    let mut weighed: Vec<_> = unknowns(survey, forecast).into_iter().zip(stakes).collect();
    let rank = |(unknown, stake): &(Unknown, Option<Stake>)| match stake {
        // What may be why a test failed goes before all forecasts.
        _ if unknown.is_on_failed_way() => f64::NEG_INFINITY,
        Some(stake) if stake.is_worth_going_back() => -stake.mbps,
        None if unknown.matters < Matters::Echo => 0.0,
        _ => 1.0,
    };
    weighed.sort_by(|a, b| rank(a).total_cmp(&rank(b)));
    weighed
}

/// A finding in words.
#[derive(Debug, Clone, PartialEq)]
pub struct FindingTold {
    /// How much it weighs.
    pub weight: Phrase,
    /// What is wrong.
    pub what: Phrase,
    /// Where.
    pub places: Vec<Phrase>,
    /// Why it matters.
    pub why: Phrase,
    /// What to do.
    pub todo: Phrase,
    /// Where this is known from.
    pub source: Phrase,
    /// What to mind, where the work can hurt someone or cut something off.
    pub cautions: Vec<Phrase>,
}

impl FindingTold {
    /// A finding on this house.
    pub fn of(survey: &Survey, finding: &Finding) -> Self {
        Self {
            weight: finding.weight().phrase(),
            what: finding.what(),
            places: finding.at.iter().filter_map(|place| place.phrase(survey)).collect(),
            why: finding.why(),
            todo: finding.todo(),
            source: finding.source(),
            cautions: finding.cautions_in(survey).iter().map(|caution| caution.phrase()).collect(),
        }
    }
}

/// Another list that may be chosen, in words.
#[derive(Debug, Clone, PartialEq)]
pub struct OtherTold {
    /// What it is called.
    pub name: Phrase,
    /// How many steps it has, how long they take, how many things there are to get.
    pub takes: Phrase,
    /// What differs from the list, sentence by sentence.
    pub differs: Vec<Phrase>,
}

impl OtherTold {
    fn of(survey: &Survey, work: &WorkList, other: &OtherList) -> Self {
        Self { name: other.name(), takes: other.takes(survey), differs: other.differs(work) }
    }
}

/// A step of the work list in words.
#[derive(Debug, Clone, PartialEq)]
pub struct StepTold {
    /// What to do; the message's attributes `.why`, `.how`, `.check` and `.back` say the rest.
    pub what: Phrase,
    /// What to mind.
    pub cautions: Vec<Phrase>,
    /// What it gains or costs the other services.
    pub services: Vec<Phrase>,
    /// Parts to get, with how many of each.
    pub parts: Vec<PartNeeded>,
    /// About how long it takes.
    pub minutes: u64,
    /// What each room gains.
    pub gains: Vec<Gain>,
}

impl From<&Step> for StepTold {
    fn from(step: &Step) -> Self {
        Self {
            what: step.change.phrase(&step.before),
            cautions: step.cautions().iter().map(|caution| caution.phrase()).collect(),
            services: step.service_words(),
            parts: step.effort.parts.clone(),
            minutes: step.effort.minutes,
            gains: step.gains.clone(),
        }
    }
}
