//! No list leaves a grave finding unanswered without saying why.

use advice::finding::{Finding, FindingKind, Place, Weight};
use facts::fact::SubjectId;
use house::record::{ChangeKind, Survey};

use super::Seen;

/// What may answer a grave finding.
enum Answer {
    /// A change of one of these kinds, by its message, on the same tree: made, or refused with the reason.
    Change(&'static [&'static str]),
    /// A check, or that nothing is left to check there.
    Check,
    /// What the finding itself says to do, since it is no work on the wiring: a setting, other adapters, a question to the
    /// provider, a cable to be found first.
    Words,
    /// What the finding itself says to do, with its own cautions: work on the wiring that no change of the list does.
    WordsOfWiring,
}

/// The one table of answers; `None` for what is not grave.
fn answer(kind: FindingKind) -> Option<Answer> {
    use FindingKind as Kind;
    const FILTERS: &[&str] = &[
        "change-add-entry-filter",
        "change-move-entry-filter",
        "change-swap-entry-filter",
        "change-modem-own-line",
    ];
    Some(match kind {
        Kind::EntryFilterMissing | Kind::SharedBuildingOpen | Kind::FilterNotForBand => {
            Answer::Change(FILTERS)
        }
        Kind::AmplifierNoBypass => Answer::Change(&["change-swap-amplifier", "change-remove-amplifier"]),
        Kind::NoLink => Answer::Check,
        Kind::FilterCutsService
        | Kind::TwoBridges
        | Kind::SatelliteOnTree
        | Kind::TooManyAdapters
        | Kind::NodesMoreThanKnown
        | Kind::AmplifierBypassDecides
        | Kind::NoChannel => Answer::Words,
        Kind::FilterInSatelliteLine
        | Kind::OtherTree
        | Kind::OutletFedByNothing
        | Kind::DcBroken
        | Kind::AmplifierReturnNarrow
        | Kind::AmplifierEndsBelow => Answer::WordsOfWiring,
        _ => return None,
    })
}

#[test]
fn every_grave_finding_has_an_answer() {
    for kind in FindingKind::ALL {
        assert_eq!(kind.weight() == Weight::Grave, answer(*kind).is_some(), "{kind:?}");
    }
}

/// Whether two findings are the same, before and after the work. The bridge, which others name beside the place that they are
/// at, may have moved; and a room without network stays one, whatever keeps it from it.
fn same(a: &Finding, b: &Finding) -> bool {
    let no_network = |kind| matches!(kind, FindingKind::OtherTree | FindingKind::NoChannel);
    let alike = a.kind == b.kind || (no_network(a.kind) && no_network(b.kind));
    alike && a.at.first() == b.at.first()
}

fn head(survey: &Survey, place: Option<&Place>) -> Option<SubjectId> {
    place.and_then(|place| place.part()).map(|part| survey.wiring.head_of(part))
}

pub(super) fn broken(seen: &Seen) -> Vec<String> {
    let house = &seen.list.house_when_done;
    let left = seen.found_when_done.iter().filter(|finding| finding.weight() == Weight::Grave);
    let mut broken: Vec<_> = left
        .filter_map(|finding| {
            let kinds = match answer(finding.kind)? {
                Answer::Words | Answer::WordsOfWiring => return None,
                Answer::Check => {
                    let at = finding.at.first().and_then(|place| place.part());
                    let named = seen.list.failed.iter().any(|room| Some(room.outlet) == at);
                    return (!named).then(|| format!("answer: {} leads to no check", finding.kind.id()));
                }
                Answer::Change(kinds) => kinds,
            };
            let at = head(house, finding.at.first());
            let answers = |change: ChangeKind| {
                let there = Some(house.wiring.head_of(change.at())) == at
                    || Some(seen.survey.wiring.head_of(change.at())) == at;
                there && kinds.contains(&change.phrase(&seen.survey).id.as_str())
            };
            let refused = seen.list.refused.iter().any(|(change, _)| answers(*change));
            (!refused).then(|| format!("answer: {} is left, and nothing says why", finding.kind.id()))
        })
        .collect();
    let new = seen.found_when_done.iter().filter(|finding| finding.weight() == Weight::Grave);
    let new = new.filter(|finding| !seen.found.iter().any(|known| same(known, finding)));
    broken.extend(new.map(|finding| format!("answer: the work itself brings {}", finding.kind.id())));
    broken
}
