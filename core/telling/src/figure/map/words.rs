//! What the map says of a part and of the cable that leads to it.

use advice::finding::{Finding, FindingKind, Place, Weight};
use advice::forecast::WeakWay;
use facts::fact::SubjectId;
use house::naming;
use house::record::{
    CableKind, EntryKind, EntryState, LengthKnown, LooseReason, Part, PartKind, Plugged, PortEnd, Run, Survey,
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

/// A house is not dug into deeper than this to find the provider's side: it lies next to the entry.
const STREET_SIDE: usize = 4;

impl Speaker<'_> {
    /// A part with all its words.
    pub(super) fn node(&self, id: SubjectId) -> Node {
        let name = self.say(&naming::part(self.survey, id));
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
            about: String::new(),
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
        node.tag = legible(part.tag.as_deref().unwrap_or_default()).trim().to_owned();
        node.names = self.names(part);
        let (wrong, is_wrong) = self.wrong(part);
        let (open, is_open) = self.open(part);
        node.state = match (is_wrong, is_open) {
            (true, _) => State::Weak,
            (false, true) => State::Unknown,
            (false, false) => State::Well,
        };
        let router = Vec::from_iter(node.bridge.then(|| self.word("map-bridge")));
        node.remarks = [wrong, open, router, self.on_way(id), self.plain(part)].concat();
        node.about = self.about(part, &node);
        node
    }

    fn say(&self, phrase: &Phrase) -> String {
        legible(&self.language.say(phrase)).into_owned()
    }

    fn word(&self, id: &str) -> String {
        self.say(&Phrase::new(id))
    }

    fn loss(&self, id: &str, db: f64) -> String {
        self.say(&Phrase::new(id).with("loss", Arg::Loss(db)))
    }

    /// What a part is called, the longest first.
    fn names(&self, part: &Part) -> Vec<String> {
        let room = self.survey.room_of(part).map(|room| legible(room.name.trim()).into_owned());
        if let Some(room) = room.filter(|room| !room.is_empty()) {
            return vec![room];
        }
        let kind = Phrase::new(kind_message(part.kind)).with("legs", Arg::Count(u64::from(part.rating.legs)));
        let short =
            self.language.say_if_known(&kind.attribute("short")).map(|short| legible(&short).into_owned());
        std::iter::once(self.say(&kind)).chain(short).collect()
    }

    /// What is wrong with a part or its cable, and whether there is anything.
    fn wrong(&self, part: &Part) -> (Vec<String>, bool) {
        let mut said = Vec::new();
        match self.survey.wiring.loose().get(&part.id) {
            None | Some(LooseReason::NotTraced) => {}
            Some(reason) => said.push(self.word(loose_message(*reason))),
        }
        let feed = self.survey.wiring.feed(part.id);
        if feed.is_some_and(|feed| self.survey.wiring.on_port(feed.part, feed.port).count() > 1) {
            said.push(self.word("map-shared-port"));
        }
        let weighs = |finding: &&Finding| finding.weight() <= Weight::Costly;
        for finding in self.findings.iter().filter(|finding| is_at(finding, part.id)).filter(weighs) {
            said.push(self.say(&because(finding)));
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
            said.push(self.word("map-poor-plug"));
        }
        let is_wrong = !said.is_empty();
        // The weakest room may get all that was wished for.
        let is_weakest = self.weak.is_some_and(|weak| weak.outlet == part.id);
        if is_weakest {
            said.push(self.word("map-weakest"));
        }
        (said, is_wrong)
    }

    /// What is to be found out about a part.
    fn open(&self, part: &Part) -> (Vec<String>, bool) {
        let mut said = Vec::new();
        if self.survey.wiring.loose().get(&part.id) == Some(&LooseReason::NotTraced) {
            said.push(self.word(loose_message(LooseReason::NotTraced)));
        }
        said.extend(self.ends(part, Some(PortEnd::LooseEnd), "map-end-loose"));
        if part.kind == PartKind::Entry {
            if part.entry_kind == EntryKind::Unknown {
                said.push(self.word("map-entry-kind-unknown"));
            }
            if part.entry_state == EntryState::Unknown {
                said.push(self.word("map-entry-unknown"));
            }
        }
        let is_open = !said.is_empty() || part.kind == PartKind::Unknown;
        (said, is_open)
    }

    /// What a part on the weakest way and the cable to it cost there.
    fn on_way(&self, id: SubjectId) -> Vec<String> {
        let Some(weak) = self.weak else { return Vec::new() };
        let part = weak.part_cost(id).map(|db| self.loss("map-loses", db));
        part.into_iter().chain(weak.run_cost(id).map(|db| self.loss("map-cable-loses", db))).collect()
    }

    /// What else there is to remark.
    fn plain(&self, part: &Part) -> Vec<String> {
        let mut said = Vec::new();
        match part.kind {
            PartKind::Entry => {
                if part.entry_kind != EntryKind::Unknown {
                    said.push(self.word(entry_kind_message(part.entry_kind)));
                }
                if part.entry_state == EntryState::CutOff {
                    said.push(self.word("map-entry-cut-off"));
                }
            }
            PartKind::Amplifier if part.rating.moca_bypass == Some(true) => {
                said.push(self.word("map-bypass"))
            }
            _ => {}
        }
        if part.adapter.as_ref().is_some_and(|adapter| !adapter.bridge) {
            said.push(self.word("map-adapter"));
        }
        match part.plugged.as_deref() {
            Some([]) if part.adapter.is_none() => said.push(self.word("map-plugged-nothing")),
            Some([]) | None => {}
            Some(plugged) => {
                let name = |thing: &Plugged| Arg::Phrase(Box::new(Phrase::new(plugged_message(*thing))));
                let things = Arg::Several(plugged.iter().map(name).collect());
                said.push(self.say(&Phrase::new("map-plugged").with("things", things)));
            }
        }
        if part.kind != PartKind::Outlet {
            said.extend(self.ends(part, Some(PortEnd::Open), "map-end-open"));
            said.extend(self.ends(part, None, "map-end-unknown"));
        }
        if self.survey.room_of(part).is_none() {
            said.extend(part.place.as_deref().map(|place| legible(place.trim()).into_owned()));
        }
        said.retain(|words| !words.is_empty());
        said
    }

    /// The free ports of a part that end so, in one remark.
    fn ends(&self, part: &Part, end: Option<PortEnd>, id: &str) -> Option<String> {
        // Whether anything leaves the one output of a part in the line is seen by what hangs on it.
        if end.is_none() && part.outputs() < 2 {
            return None;
        }
        let is_free =
            |port: &u8| part.end(*port) == end && self.survey.wiring.on_port(part.id, *port).next().is_none();
        let ports: Vec<_> = (1..=part.outputs()).filter(is_free).collect();
        let (first, last) = (*ports.first()?, *ports.last()?);
        let many = ports.len() as u64;
        let said = if many > 2 && usize::from(last - first) + 1 == ports.len() {
            let range = Phrase::new("map-port-range").with("first", Arg::Count(first.into()));
            Arg::Phrase(Box::new(range.with("last", Arg::Count(last.into()))))
        } else {
            Arg::Several(ports.iter().map(|port| Arg::Count(u64::from(*port))).collect())
        };
        Some(self.say(&Phrase::new(id).with("count", Arg::Count(many)).with("ports", said)))
    }

    fn run_to(&self, id: SubjectId) -> Option<&Run> {
        self.survey.runs.get(&self.survey.wiring.feed(id)?.run?)
    }

    /// The line of the cable that leads to a part.
    fn cable(&self, id: SubjectId) -> Cable {
        if self.changed.has_new_cable(id) {
            return Cable::New;
        }
        let near_street = self.survey.wiring.way_up(id).len() <= STREET_SIDE;
        if near_street && self.survey.is_street_side(id) {
            return Cable::Provider;
        }
        match self.run_to(id) {
            // What joins two parts side by side is what such pieces are made of, unless somebody saw otherwise.
            Some(run) if run.is_jumper() && run.cable == CableKind::Unknown => Cable::Six,
            Some(run) => Cable::of(run.cable),
            None => Cable::Unknown,
        }
    }

    /// All there is to say of a part and its cable, a line each.
    fn about(&self, part: &Part, node: &Node) -> String {
        let mut lines = node.names.first().cloned().into_iter().collect::<Vec<_>>();
        lines.extend(node.remarks.iter().cloned());
        lines.extend(self.ends(part, Some(PortEnd::Capped), "map-end-capped"));
        if let Some(room) = self.survey.room_of(part).filter(|room| !room.name.is_empty())
            && node.names.first().map(String::as_str) == Some(room.name.as_str())
            && let Some(place) = &part.place
        {
            lines.push(legible(place).into_owned());
        }
        if self.survey.wiring.feed(part.id).is_some() {
            lines.push(self.over(self.run_to(part.id)));
        }
        if let Some(step) = node.step {
            let said = Phrase::new("map-changed").with("step", Arg::Count(step as u64));
            lines.push(self.say(&said));
        }
        lines.retain(|line| !line.is_empty());
        lines.join("\n")
    }

    fn over(&self, run: Option<&Run>) -> String {
        let Some(run) = run else { return self.word("map-over-unnoted") };
        let cable = Phrase::new(cable_message(run.cable));
        match run.length {
            None => self.say(&Phrase::new("map-over-unmeasured").phrase("cable", cable)),
            Some(length) => {
                let metres = Arg::Length(length.metres);
                let said = match length.known {
                    LengthKnown::Measured => metres,
                    LengthKnown::Paced => {
                        Arg::Phrase(Box::new(Phrase::new("map-length-paced").with("length", metres)))
                    }
                    LengthKnown::Guessed => {
                        Arg::Phrase(Box::new(Phrase::new("map-length-guessed").with("length", metres)))
                    }
                };
                self.say(&Phrase::new("map-over").phrase("cable", cable).with("length", said))
            }
        }
    }
}

/// Whether a finding is at a part, or at the cable that leads to it, first of all.
fn is_at(finding: &Finding, part: SubjectId) -> bool {
    finding.at.first().and_then(|place: &Place| place.part()) == Some(part)
}

/// Why a part has its flag, in a few words.
fn because(finding: &Finding) -> Phrase {
    Phrase { id: format!("map-because-{}", finding.kind.id()), ..finding.what() }
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
