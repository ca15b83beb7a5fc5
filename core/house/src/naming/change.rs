//! What a change of the work list is called.

use coax::trade::FILTERS_PASS;
use facts::fact::SubjectId;
use phrase::{Arg, Phrase};

use super::{part, run_to};
use crate::record::{
    Before, ChangeKind, Incoming, Named, Part, PartKind, ServiceKind, Survey, Work, breaks_power,
};

impl ChangeKind {
    /// What is done, in words; the attributes `.why`, `.how`, `.check` and `.back` (how to put it back) of the
    /// same message say the rest.
    /// Names are those of `survey`, the house before the change.
    pub fn phrase(self, survey: &Survey) -> Phrase {
        let part = |id| part(survey, id);
        let power = if self.meets_power(survey) { "yes" } else { "no" };
        match self {
            Self::AddEntryFilter { behind } => {
                filter_behind(Phrase::new("change-add-entry-filter"), survey, behind)
                    .text("power", power)
                    .text("sure", if is_sure(survey, behind) { "yes" } else { "no" })
                    .text("ask", ask_provider(survey, behind))
            }
            Self::MoveEntryFilter { filter, behind } => {
                filter_behind(Phrase::new("change-move-entry-filter"), survey, behind)
                    .phrase("filter", part(filter))
            }
            Self::SwapEntryFilter { filter } => Phrase::new("change-swap-entry-filter")
                .phrase("filter", part(filter))
                .text("fault", if stops_all(survey, filter) { "power" } else { "band" })
                .text("power", power)
                .text("ask", ask_provider(survey, filter)),
            Self::SwapSplitter { splitter, legs } => Phrase::new("change-swap-splitter")
                .phrase("splitter", part(splitter))
                .text("power", power)
                .text("fault", if breaks_power(survey, splitter) { "power" } else { "band" })
                .with("legs", Arg::Count(u64::from(legs))),
            Self::RemoveSplitter { splitter } => {
                Phrase::new("change-remove-splitter").phrase("splitter", part(splitter))
            }
            Self::MergeSplitters { upper, lower, legs } => Phrase::new("change-merge-splitters")
                .phrase("upper", part(upper))
                .phrase("lower", part(lower))
                .text("power", power)
                .with("legs", Arg::Count(u64::from(legs))),
            Self::Cap { part: at, port } => {
                let outlet = survey.parts.get(&at).is_some_and(|part| part.kind == PartKind::Outlet);
                if outlet {
                    Phrase::new("change-cap-outlet").phrase("outlet", part(at))
                } else {
                    Phrase::new("change-cap").phrase("port", super::port(survey, at, port))
                }
                .text("power", power)
            }
            Self::SwapAmplifier { amplifier } => Phrase::new("change-swap-amplifier")
                .phrase("amplifier", part(amplifier))
                .text("bypass", by_pass(survey, amplifier)),
            Self::RemoveAmplifier { amplifier } => Phrase::new("change-remove-amplifier")
                .phrase("amplifier", part(amplifier))
                .text("bypass", by_pass(survey, amplifier)),
            Self::ReplaceRun { to } => Phrase::new("change-replace-run").phrase("run", run_to(survey, to)),
            Self::RenewConnectors { to } => {
                let ends = poor_ends(survey, to);
                Phrase::new("change-renew-connectors")
                    .with("count", Arg::Count(ends.len() as u64))
                    .with("ends", Arg::Several(ends))
                    .phrase("run", run_to(survey, to))
            }
            Self::FilterAtDevice { outlet } => {
                let modem = survey.has_modem_at(outlet);
                let (id, ask) = if modem {
                    ("change-filter-at-modem", ask_provider(survey, outlet))
                } else {
                    ("change-filter-at-tv", "no")
                };
                let drops = survey.services_of(ServiceKind::CableInternet).any(|service| service.drops_out);
                Phrase::new(id)
                    .phrase("outlet", part(outlet))
                    .text("ask", ask)
                    .text("drops", if drops { "yes" } else { "no" })
            }
            Self::ModemOwnLine { outlet } => {
                Phrase::new("change-modem-own-line").phrase("outlet", part(outlet))
            }
            Self::ShareOutlet { outlet } => {
                Phrase::new("change-share-outlet").phrase("outlet", part(outlet)).text("power", power)
            }
            Self::JoinLoose { part: loose, to, port } => Phrase::new("change-join-loose")
                .phrase("part", part(loose))
                .phrase("port", super::port(survey, to, port)),
            Self::MoveBridge { from, to } => {
                Phrase::new("change-move-bridge").phrase("from", part(from)).phrase("to", part(to))
            }
            Self::UseOutletNearby { room, outlet } => Phrase::new("change-use-outlet-nearby")
                .phrase("room", super::room(survey, room))
                .phrase("outlet", part(outlet)),
            Self::NewRun { room, from } => Phrase::new("change-new-run")
                .phrase("room", super::room(survey, room))
                .phrase("from", part(from)),
            Self::NewerAdapter { outlet } => newer_adapter(survey, outlet),
            Self::ExchangeAdapters { outlet, with } => exchange_adapters(survey, outlet, with),
            Self::LookAtPart { part: at, outlet } => Phrase::new("change-look-at-part")
                .phrase("part", part(at))
                .phrase("outlet", part(outlet))
                .text("splits", splits(survey, at)),
            Self::LookAtRun { to, outlet } => Phrase::new("change-look-at-run")
                .phrase("run", run_to(survey, to))
                .phrase("outlet", part(outlet)),
            Self::CheckAtOutlet { outlet, check } => {
                let id = format!("change-check-{}", check.name().replace('_', "-"));
                Phrase::new(id).phrase("outlet", part(outlet))
            }
        }
    }
}

/// For a message to choose by: whether a part is a splitter or tap, whose label says what it is made for.
fn splits(survey: &Survey, part: SubjectId) -> &'static str {
    let splits = |part: &Part| matches!(part.kind, PartKind::Splitter | PartKind::Tap);
    if survey.parts.get(&part).is_some_and(splits) { "yes" } else { "no" }
}

/// A newer adapter at an outlet, and at the start of the network where the one there is as old.
fn newer_adapter(survey: &Survey, outlet: SubjectId) -> Phrase {
    let phrase = Phrase::new("change-newer-adapter").phrase("outlet", part(survey, outlet));
    match survey.bridge_to_renew(outlet) {
        Some(bridge) => phrase.text("bridge", "yes").phrase("start", part(survey, bridge)),
        None => phrase.text("bridge", "no").text("start", ""),
    }
}

fn exchange_adapters(survey: &Survey, outlet: SubjectId, with: SubjectId) -> Phrase {
    let (outlet, other) = (part(survey, outlet), part(survey, with));
    Phrase::new("change-exchange-adapters").phrase("outlet", outlet).phrase("other", other)
}

impl Work {
    /// What it was, in the names of the house that it was proposed for; with the attributes of [`ChangeKind::phrase`].
    pub fn what(&self, survey: &Survey) -> Phrase {
        let Before { parts, runs } = &self.before;
        if parts.is_empty() && runs.is_empty() {
            return self.change.phrase(survey);
        }
        let mut house = survey.clone();
        house.parts.extend(parts.iter().map(|part| (part.id, part.clone())));
        house.runs.extend(runs.iter().map(|run| (run.id, run.clone())));
        self.change.phrase(&house)
    }
}

/// Where a filter goes, for a message to choose by, and what that is called: `line`, behind a part in the line from the
/// entry; `branch`, on the output that leads to one's own home.
pub fn filter_place(survey: &Survey, behind: SubjectId) -> (&'static str, Phrase) {
    let branches = survey.parts.get(&behind).is_some_and(|part| part.outputs() > 1);
    if branches {
        ("branch", super::port(survey, behind, survey.port_in_use(behind)))
    } else {
        ("line", part(survey, behind))
    }
}

fn filter_behind(phrase: Phrase, survey: &Survey, behind: SubjectId) -> Phrase {
    let (place, name) = filter_place(survey, behind);
    phrase.phrase("behind", name).text("place", place)
}

fn stops_all(survey: &Survey, filter: SubjectId) -> bool {
    survey.parts.get(&filter).is_some_and(|filter| filter.rating.stops_moca() != Some(false))
}

/// Whether it is known what comes in where a part gets its signal.
fn is_sure(survey: &Survey, at: SubjectId) -> bool {
    let incoming = Incoming::at(survey, survey.wiring.head_of(at));
    let by_entry = [ServiceKind::CableTv, ServiceKind::CableInternet, ServiceKind::AntennaTv];
    by_entry.into_iter().any(|kind| incoming.knows(kind))
}

/// Whether the provider is asked before a filter is screwed in at a part, for a message to choose by: cable internet comes
/// in there, and may reach above what such filters pass.
pub fn ask_provider(survey: &Survey, at: SubjectId) -> &'static str {
    let comes_in = Incoming::at(survey, survey.wiring.head_of(at)).may_bring(ServiceKind::CableInternet);
    if comes_in && survey.may_internet_reach_above(FILTERS_PASS.value()) { "yes" } else { "no" }
}

/// Whether an amplifier has a by-pass, for a message to choose by.
fn by_pass(survey: &Survey, amplifier: SubjectId) -> &'static str {
    match survey.parts.get(&amplifier).and_then(|part| part.rating.by_pass()) {
        Some(true) => "yes",
        Some(false) => "no",
        None => "unknown",
    }
}

/// The ends with a poor connector of the run that feeds a part.
pub fn poor_ends(survey: &Survey, to: SubjectId) -> Vec<Arg> {
    let run = survey.wiring.feed(to).and_then(|feed| survey.runs.get(&feed.run?));
    let ends = run.map(|run| [(run.connector_near, "run-end-near"), (run.connector_far, "run-end-far")]);
    let poor = ends.into_iter().flatten().filter(|(connector, _)| connector.is_poor());
    poor.map(|(_, end)| Arg::Phrase(Box::new(Phrase::new(end)))).collect()
}
