//! What the map says of a part and of the cable that leads to it.

use advice::finding::{Finding, FindingKind, Place, Weight};
use advice::forecast::WeakWay;
use advice::{EntryFilter, entry_filter};
use facts::fact::SubjectId;
use house::naming;
use house::record::{
    CableKind, ChangeKind, EntryKind, EntryState, LengthKnown, LooseReason, Part, PartKind, Plugged, PortEnd,
    Run, Survey,
};
use phrase::{Arg, Phrase};

use super::changed::Changed;
use super::node::{Cable, Node, State};
use crate::figure::measure::legible;
use crate::words::Language;

/// Says what the map needs said.
pub(super) struct Speaker<'a> {
    /// The house.
    pub survey: &'a Survey,
    /// The weakest way, if there is one.
    pub weak: Option<&'a WeakWay>,
    /// What is wrong or at risk in it.
    pub findings: &'a [Finding],
    /// What the work changed in it.
    pub changed: &'a Changed,
    /// The reader's language.
    pub language: &'a Language,
}

impl Speaker<'_> {
    /// A part with all its words.
    pub(super) fn node(&self, id: SubjectId) -> Node {
        let name = naming::part(self.survey, id);
        let on_way = self.weak.is_some_and(|weak| weak.passes(id));
        let cable_on_way = self.weak.is_some_and(|weak| weak.passes_run_to(id));
        let mut node = Node {
            id,
            kind: PartKind::Unknown,
            bridge: false,
            tag: String::new(),
            names: vec![name.clone()],
            remarks: Vec::new(),
            name,
            about: Vec::new(),
            state: State::Well,
            cable: self.cable(id),
            step: self.changed.step(id),
            on_way,
            cable_on_way,
            feeds: Vec::new(),
            root: None,
        };
        let Some(part) = self.survey.parts.get(&id) else { return node };
        node.kind = part.kind;
        node.bridge = part.adapter.as_ref().is_some_and(|adapter| adapter.bridge);
        legible(part.tag.as_deref().unwrap_or_default()).trim().clone_into(&mut node.tag);
        node.names = self.names(part);
        let (wrong, is_wrong) = self.wrong(part);
        let (open, is_open) = self.open(part);
        node.state = match (is_wrong, is_open) {
            (true, _) => State::Weak,
            (false, true) => State::Unknown,
            (false, false) => State::Well,
        };
        let thin = Vec::from_iter(self.is_thin_untold(id).then(|| Phrase::new("map-thin")));
        let router = Vec::from_iter(node.bridge.then(|| Phrase::new("map-bridge")));
        node.remarks = [wrong, open, thin, router, self.on_way(id), self.plain(part)].concat();
        node.about = self.about(part, &node);
        node
    }

    /// What a part is called, the longest first.
    fn names(&self, part: &Part) -> Vec<Phrase> {
        let room = self.survey.room_of(part).map(|room| room.name.trim());
        if let Some(room) = room.filter(|room| part.kind == PartKind::Outlet && !room.is_empty()) {
            return vec![own(room)];
        }
        let kind = Phrase::new(kind_message(part.kind)).with("legs", Arg::Count(u64::from(part.rating.legs)));
        let short = kind.attribute("short");
        if self.language.knows(&short.id) { vec![kind, short] } else { vec![kind] }
    }

    /// Whether the cable that leads to a part is thin, and no finding says so.
    fn is_thin_untold(&self, id: SubjectId) -> bool {
        let told = |finding: &Finding| finding.kind == FindingKind::RunThinAndLong && is_at(finding, id);
        self.run_to(id).is_some_and(|run| run.cable == CableKind::FiftyNine)
            && !self.findings.iter().any(told)
    }

    /// What is wrong with a part or its cable, and whether there is anything.
    fn wrong(&self, part: &Part) -> (Vec<Phrase>, bool) {
        let mut said = Vec::new();
        match self.survey.wiring.loose().get(&part.id) {
            None | Some(LooseReason::NotTraced) => {}
            Some(reason) => said.push(Phrase::new(loose_message(*reason))),
        }
        let feed = self.survey.wiring.feed(part.id);
        if feed.is_some_and(|feed| self.survey.wiring.on_port(feed.part, feed.port).count() > 1) {
            said.push(Phrase::new("map-shared-port"));
        }
        let weighs = |finding: &&Finding| finding.weight() <= Weight::Costly;
        for finding in self.findings.iter().filter(|finding| is_at(finding, part.id)).filter(weighs) {
            said.push(self.because(finding));
        }
        if self.lacks_filter_untold(part) {
            said.push(Phrase::new("map-because-entry-filter-missing"));
        }
        let run = self.run_to(part.id);
        let told = self.findings.iter().any(|finding| {
            is_at(finding, part.id)
                && matches!(
                    finding.kind,
                    FindingKind::ConnectorPoor | FindingKind::ConnectorStreetSide | FindingKind::JointBad
                )
        });
        if !told && run.is_some_and(Run::has_poor_connector) {
            said.push(Phrase::new("map-poor-plug"));
        }
        let is_wrong = !said.is_empty();
        // The weakest room may get all that was wished for.
        let is_weakest = self.weak.is_some_and(|weak| weak.outlet == part.id);
        if is_weakest {
            said.push(Phrase::new("map-weakest"));
        }
        (said, is_wrong)
    }

    /// Why a part has its flag, in a few words.
    fn because(&self, finding: &Finding) -> Phrase {
        let id = format!("map-because-{}", finding.kind.id());
        let id = if self.language.knows(&id) { id } else { "map-because-other".into() };
        Phrase { id, ..finding.what() }
    }

    /// Whether an entry wants a filter, and no finding says so: before findings are worked out.
    fn lacks_filter_untold(&self, part: &Part) -> bool {
        let told = |finding: &Finding| {
            is_at(finding, part.id)
                && matches!(
                    finding.kind,
                    FindingKind::EntryFilterMissing
                        | FindingKind::SharedBuildingOpen
                        | FindingKind::EntryFilterIfConnected
                        | FindingKind::EntryFilterNotSeen
                )
        };
        let wants = || {
            let filter = entry_filter(self.survey, part.id);
            matches!(filter, EntryFilter::Wanted { change: ChangeKind::AddEntryFilter { .. }, .. })
        };
        part.kind == PartKind::Entry && !self.findings.iter().any(told) && wants()
    }

    /// What is to be found out about a part.
    fn open(&self, part: &Part) -> (Vec<Phrase>, bool) {
        let mut said = Vec::new();
        if self.survey.wiring.loose().get(&part.id) == Some(&LooseReason::NotTraced) {
            said.push(Phrase::new(loose_message(LooseReason::NotTraced)));
        }
        said.extend(self.ends(part, Some(PortEnd::LooseEnd), "map-end-loose"));
        if part.kind == PartKind::Entry {
            if part.entry_kind == EntryKind::Unknown {
                said.push(Phrase::new("map-entry-kind-unknown"));
            }
            if part.entry_state == EntryState::Unknown {
                said.push(Phrase::new("map-entry-unknown"));
            }
        }
        let is_open = !said.is_empty() || part.kind == PartKind::Unknown;
        (said, is_open)
    }

    /// What a part on the weakest way and the cable to it cost there.
    fn on_way(&self, id: SubjectId) -> Vec<Phrase> {
        let Some(weak) = self.weak else { return Vec::new() };
        let part = weak.part_cost(id).map(|db| loss("map-loses", db));
        part.into_iter().chain(weak.run_cost(id).map(|db| loss("map-cable-loses", db))).collect()
    }

    /// What else there is to remark.
    fn plain(&self, part: &Part) -> Vec<Phrase> {
        let mut said = Vec::new();
        match part.kind {
            PartKind::Entry => {
                if part.entry_kind != EntryKind::Unknown {
                    said.push(Phrase::new(entry_kind_message(part.entry_kind)));
                }
                if part.entry_state == EntryState::CutOff {
                    said.push(Phrase::new("map-entry-cut-off"));
                }
            }
            PartKind::Amplifier if part.rating.by_pass() == Some(true) => {
                said.push(Phrase::new("map-bypass"));
            }
            _ => {}
        }
        if part.adapter.as_ref().is_some_and(|adapter| !adapter.bridge) {
            said.push(Phrase::new("map-adapter"));
        }
        match part.plugged.as_deref() {
            Some([]) if part.adapter.is_none() => said.push(Phrase::new("map-plugged-nothing")),
            Some([]) | None => {}
            Some(plugged) => {
                let name = |thing: &Plugged| Arg::Phrase(Box::new(Phrase::new(plugged_message(*thing))));
                let things = Arg::Several(plugged.iter().map(name).collect());
                said.push(Phrase::new("map-plugged").with("things", things));
            }
        }
        if part.kind != PartKind::Outlet {
            said.extend(self.ends(part, Some(PortEnd::AnotherHome), "map-end-another-home"));
            said.extend(self.ends(part, Some(PortEnd::Open), "map-end-open"));
            said.extend(self.ends(part, None, "map-end-unknown"));
        }
        if self.survey.room_of(part).is_none() {
            said.extend(part.place.as_deref().filter(|place| !place.trim().is_empty()).map(own));
        }
        said
    }

    /// The free ports of a part that end so, in one remark.
    fn ends(&self, part: &Part, end: Option<PortEnd>, id: &str) -> Option<Phrase> {
        // Whether anything leaves the one output of a part in the line is seen by what hangs on it.
        if end.is_none() && part.outputs() < 2 {
            return None;
        }
        let is_free =
            |port: &u8| part.end(*port) == end && self.survey.wiring.on_port(part.id, *port).next().is_none();
        let ports: Vec<_> = (1..=part.outputs()).filter(is_free).collect();
        ports.first()?;
        let count = Arg::Count(ports.len() as u64);
        Some(Phrase::new(id).with("count", count).phrase("ports", naming::ports(part, &ports)))
    }

    fn run_to(&self, id: SubjectId) -> Option<&Run> {
        self.survey.runs.get(&self.survey.wiring.feed(id)?.run?)
    }

    /// The line of the cable that leads to a part.
    fn cable(&self, id: SubjectId) -> Cable {
        if self.changed.has_new_cable(id) {
            return Cable::New;
        }
        if self.survey.is_street_side(id) {
            return Cable::Provider;
        }
        match self.run_to(id) {
            // What joins two parts side by side is what such pieces are made of, unless somebody saw otherwise.
            Some(run) if run.is_jumper() && run.cable == CableKind::Unknown => Cable::Six,
            Some(run) => Cable::of(run.cable),
            None => Cable::Unknown,
        }
    }

    /// All there is to say of a part and its cable besides its remarks.
    fn about(&self, part: &Part, node: &Node) -> Vec<Phrase> {
        let mut lines: Vec<_> =
            self.ends(part, Some(PortEnd::Capped), "map-end-capped").into_iter().collect();
        if self.survey.room_of(part).is_some() {
            lines.extend(part.place.as_deref().filter(|place| !place.trim().is_empty()).map(own));
        }
        if self.survey.wiring.feed(part.id).is_some() {
            lines.push(over(self.run_to(part.id)));
        }
        lines.extend(node.step.map(|step| Phrase::new("map-changed").with("step", Arg::Count(step as u64))));
        lines
    }
}

/// The cable that leads to a part.
fn over(run: Option<&Run>) -> Phrase {
    let Some(run) = run else { return Phrase::new("map-over-unnoted") };
    let cable = Phrase::new(cable_message(run.cable));
    let Some(length) = run.length else {
        return Phrase::new("map-over-unmeasured").phrase("cable", cable);
    };
    if run.is_jumper() {
        return Phrase::new("map-over-jumper").phrase("cable", cable);
    }
    let metres = Arg::Length(length.metres);
    let known = |id: &str, metres| Arg::Phrase(Box::new(Phrase::new(id).with("length", metres)));
    let said = match length.known {
        LengthKnown::Measured => metres,
        LengthKnown::Paced => known("map-length-paced", metres),
        LengthKnown::Guessed => known("map-length-guessed", metres),
    };
    Phrase::new("map-over").phrase("cable", cable).with("length", said)
}

fn loss(id: &str, db: f64) -> Phrase {
    Phrase::new(id).with("loss", Arg::Loss(db))
}

/// What somebody wrote, as it is.
fn own(text: &str) -> Phrase {
    Phrase::new("map-own-words").text("text", text.trim())
}

/// Whether a finding is at a part, or at the cable that leads to it, first of all.
fn is_at(finding: &Finding, part: SubjectId) -> bool {
    finding.at.first().and_then(|place: &Place| place.part()) == Some(part)
}

fn kind_message(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Entry => "map-entry",
        PartKind::GroundBlock => "map-ground-block",
        PartKind::EntryFilter => "map-entry-filter",
        PartKind::Splitter => "map-splitter",
        PartKind::Tap => "map-tap",
        PartKind::Amplifier => "map-amplifier",
        PartKind::Barrel => "map-barrel",
        PartKind::Outlet => "map-outlet",
        PartKind::Terminator => "map-terminator",
        PartKind::HighPassFilter => "map-high-pass-filter",
        PartKind::SatelliteCombiner => "map-satellite-combiner",
        PartKind::Pad => "map-pad",
        PartKind::PowerInserter => "map-power-inserter",
        PartKind::Unknown => "map-unknown",
    }
}

fn loose_message(reason: LooseReason) -> &'static str {
    match reason {
        LooseReason::NotTraced => "map-loose-not-traced",
        LooseReason::Loop => "map-loose-loop",
        LooseReason::TooDeep => "map-loose-too-deep",
        LooseReason::NoSuchPort => "map-loose-no-such-port",
        LooseReason::FeederGone => "map-loose-feeder-gone",
    }
}

fn entry_kind_message(kind: EntryKind) -> &'static str {
    match kind {
        EntryKind::Cable => "map-entry-cable",
        EntryKind::Antenna => "map-entry-antenna",
        EntryKind::Satellite => "map-entry-satellite",
        EntryKind::FibreBox => "map-entry-fibre-box",
        EntryKind::Unknown => "map-entry-kind-unknown",
    }
}

fn cable_message(cable: CableKind) -> &'static str {
    match cable {
        CableKind::Six => "map-cable-6",
        CableKind::FiftyNine => "map-cable-59",
        CableKind::Seven => "map-cable-7",
        CableKind::Eleven => "map-cable-11",
        CableKind::Unknown => "map-cable-unknown",
    }
}

fn plugged_message(thing: Plugged) -> &'static str {
    match thing {
        Plugged::Tv => "plugged-tv",
        Plugged::TvBox => "plugged-tv-box",
        Plugged::Modem => "plugged-modem",
        Plugged::MocaGateway => "plugged-moca-gateway",
        Plugged::SatelliteReceiver => "plugged-satellite-receiver",
        Plugged::FibreBox => "plugged-fibre-box",
        Plugged::PowerSupply => "plugged-power-supply",
        Plugged::Other => "plugged-other",
    }
}
