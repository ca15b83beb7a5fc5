//! A step that is done takes away what it was for: no finding asks for what has just been done.

use std::collections::BTreeSet;

use advice::finding::FindingKind::{
    AmplifierNoBypass, ConnectorPoor, EntryFilterIfConnected, EntryFilterMissing, EntryFilterNotSeen,
    FilterAfterSplit, FilterNotForBand, JointBad, LegOpen, LooseEnd, ModemMayReachBand, OutletOpen,
    PartLoose, RunThinAndLong, SplitterNeedless, SplitterNotForBand, SplitterTooLarge, SplittersInCascade,
    VersionTooSlow,
};
use advice::finding::{FindingKind, Place, findings};
use advice::forecast::Options as Draws;
use advice::worklist::{Options, applied, worklist};
use facts::fact::SubjectId;
use house::record::{ChangeKind, Survey};
use houses::{change_cases, finding_cases};

/// What each change is for, and where it stands.
fn answers(change: ChangeKind) -> (&'static [FindingKind], SubjectId) {
    match change {
        ChangeKind::AddEntryFilter { behind } => {
            (&[EntryFilterMissing, EntryFilterIfConnected, EntryFilterNotSeen], behind)
        }
        ChangeKind::MoveEntryFilter { filter, .. } => (&[FilterAfterSplit], filter),
        ChangeKind::SwapEntryFilter { filter } => (&[FilterNotForBand], filter),
        ChangeKind::SwapSplitter { splitter, .. } => (&[SplitterNotForBand, SplitterTooLarge], splitter),
        ChangeKind::RemoveSplitter { splitter } => (&[SplitterNeedless], splitter),
        ChangeKind::MergeSplitters { lower, .. } => (&[SplittersInCascade], lower),
        ChangeKind::Cap { part, .. } => (&[LegOpen, OutletOpen], part),
        ChangeKind::SwapAmplifier { amplifier } | ChangeKind::RemoveAmplifier { amplifier } => {
            (&[AmplifierNoBypass], amplifier)
        }
        ChangeKind::ReplaceRun { to } => (&[RunThinAndLong], to),
        ChangeKind::RenewConnectors { to } => (&[ConnectorPoor, JointBad], to),
        ChangeKind::FilterAtDevice { outlet } => (&[ModemMayReachBand], outlet),
        ChangeKind::JoinLoose { part, .. } => (&[PartLoose, LooseEnd], part),
        ChangeKind::ModemOwnLine { outlet }
        | ChangeKind::ShareOutlet { outlet }
        | ChangeKind::UseOutletNearby { outlet, .. } => (&[], outlet),
        ChangeKind::NewerAdapter { outlet } | ChangeKind::ExchangeAdapters { outlet, .. } => {
            (&[VersionTooSlow], outlet)
        }
        // What is checked is not mended yet.
        ChangeKind::LookAtPart { part: at, .. }
        | ChangeKind::LookAtRun { to: at, .. }
        | ChangeKind::CheckAtOutlet { outlet: at, .. } => (&[], at),
        ChangeKind::MoveBridge { to, .. } => (&[], to),
        ChangeKind::NewRun { from, .. } => (&[], from),
    }
}

/// Findings of some kinds at a part; of a cap, at its port alone.
fn at(survey: &Survey, change: ChangeKind) -> BTreeSet<FindingKind> {
    let (kinds, part) = answers(change);
    let stands = |place: &Place| match (change, place) {
        (ChangeKind::Cap { port, .. }, Place::Port { port: of, .. }) => *of == port,
        _ => true,
    };
    findings(survey, None)
        .into_iter()
        .filter(|finding| kinds.contains(&finding.kind))
        .filter(|finding| finding.at.iter().any(|place| place.part() == Some(part) && stands(place)))
        .map(|finding| finding.kind)
        .collect()
}

#[test]
fn a_step_done_takes_its_finding_away() {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    let options = Options { screening: draws, stating: draws, most_steps: 12, ..Options::default() };
    let houses = change_cases::cases()
        .into_iter()
        .map(|case| case.there.survey())
        .chain(finding_cases::cases().into_iter().map(|case| case.there.survey));
    let mut answered = BTreeSet::new();
    for survey in houses {
        for step in worklist(&survey, &options).expect("a sound survey").steps {
            let left = at(&applied(step.change, &step.before), step.change);
            assert_eq!(left, BTreeSet::new(), "{:?} is done", step.change);
            answered.extend(at(&step.before, step.change));
        }
    }
    // The law was put to work: on caps at outlets and at legs, filters, splitters, amplifiers, connectors.
    for kind in [OutletOpen, LegOpen, EntryFilterMissing, SplitterTooLarge, AmplifierNoBypass, ConnectorPoor]
    {
        assert!(answered.contains(&kind), "{kind:?}");
    }
}
