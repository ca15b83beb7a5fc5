//! What stands in a box of the map, and beside a cable.

use advice::forecast::WeakWay;
use advice::{EntryFilter, entry_filter};
use facts::fact::SubjectId;
use house::naming;
use house::record::{
    CableKind, ChangeKind, EntryKind, EntryState, LengthKnown, LooseReason, Part, PartKind, Plugged, PortEnd,
    Run, Stands, Survey,
};
use phrase::{Arg, Phrase};

use crate::words::Language;

/// Says what the map needs said.
pub(super) struct Speaker<'a> {
    /// The house.
    pub survey: &'a Survey,
    /// The weakest way, if there is one.
    pub weak: Option<&'a WeakWay>,
    /// The reader's language.
    pub language: &'a Language,
}

/// The words of one box: heading, then further lines.
pub(super) struct BoxWords {
    /// Tag, or what it is.
    pub heading: String,
    /// The rest.
    pub lines: Vec<String>,
    /// All of it in one sentence.
    pub name: String,
}

/// The words along one cable.
#[derive(Default)]
pub(super) struct RunWords {
    /// Over the line.
    pub above: Vec<String>,
    /// Under the line.
    pub below: Vec<String>,
}

impl Speaker<'_> {
    /// Says a message without arguments.
    pub(super) fn say(&self, id: &str) -> String {
        self.language.say(&Phrase::new(id))
    }

    fn say_loss(&self, id: &str, db: f64) -> String {
        self.language.say(&Phrase::new(id).with("loss", Arg::Loss(db)))
    }

    /// The words of a part's box.
    pub(super) fn part(&self, id: SubjectId) -> BoxWords {
        let name = self.language.say(&naming::part(self.survey, id));
        let Some(part) = self.survey.parts.get(&id) else {
            return BoxWords { heading: name.clone(), lines: Vec::new(), name };
        };
        let kind = self
            .language
            .say(&Phrase::new(kind_message(part.kind)).with("legs", Arg::Count(u64::from(part.rating.legs))));
        let mut lines = Vec::new();
        let room = self.survey.room_of(part).map(|room| room.name.clone()).filter(|name| !name.is_empty());
        let heading = match (&part.tag, room) {
            (Some(tag), Some(room)) => {
                self.language.say(&Phrase::new("map-tag-and-room").text("tag", tag).text("room", room))
            }
            (Some(tag), None) => tag.clone(),
            (None, Some(room)) => room,
            (None, None) => String::new(),
        };
        let heading = if heading.is_empty() {
            kind
        } else {
            lines.push(kind);
            heading
        };
        if let Some(reason) = self.survey.wiring.loose().get(&id) {
            lines.push(self.say(loose_message(*reason)));
        }
        self.push_details(part, &mut lines);
        if let Some(weak) = self.weak {
            if let Some(db) = weak.part_cost(id) {
                lines.push(self.say_loss("map-loses", db));
            }
            if weak.outlet == id {
                lines.push(self.say("map-weakest"));
            }
        }
        BoxWords { heading, lines, name }
    }

    fn push_details(&self, part: &Part, lines: &mut Vec<String>) {
        match part.kind {
            PartKind::Entry => {
                lines.push(self.say(entry_kind_message(part.entry_kind)));
                lines.push(self.say(match part.entry_state {
                    EntryState::Connected => "map-entry-connected",
                    EntryState::CutOff => "map-entry-cut-off",
                    EntryState::Unknown => "map-entry-unknown",
                }));
                if matches!(
                    entry_filter(self.survey, part.id),
                    EntryFilter::Wanted { change: ChangeKind::AddEntryFilter { .. }, .. }
                ) {
                    lines.push(self.say("map-no-entry-filter"));
                }
            }
            PartKind::Outlet => self.push_plugged(part, lines),
            PartKind::Splitter | PartKind::Tap | PartKind::Amplifier | PartKind::EntryFilter => {
                if let Some(band) = part.rating.band {
                    let band = Phrase::new("map-band").with("band", Arg::Band(band.low_mhz, band.high_mhz));
                    lines.push(self.language.say(&band));
                } else if part.rating.says_moca {
                    lines.push(self.say("map-says-moca"));
                } else if part.label.is_none() {
                    lines.push(self.say("map-label-unread"));
                }
                if part.kind == PartKind::Amplifier {
                    lines.push(self.say(match part.rating.moca_bypass {
                        Some(true) => "map-bypass",
                        Some(false) => "map-no-bypass",
                        None => "map-bypass-unknown",
                    }));
                }
            }
            _ => {}
        }
    }

    fn push_plugged(&self, part: &Part, lines: &mut Vec<String>) {
        match &part.adapter {
            Some(adapter) if adapter.bridge => lines.push(self.say("map-bridge")),
            Some(_) => lines.push(self.say("map-adapter")),
            None => {}
        }
        match &part.plugged {
            None if part.adapter.is_none() => lines.push(self.say("map-plugged-unknown")),
            Some(plugged) if plugged.is_empty() && part.adapter.is_none() => {
                lines.push(self.say("map-plugged-nothing"));
            }
            Some(plugged) if !plugged.is_empty() => {
                let names =
                    plugged.iter().map(|thing| Arg::Phrase(Box::new(Phrase::new(plugged_message(*thing)))));
                lines.push(
                    self.language
                        .say(&Phrase::new("map-plugged").with("things", Arg::Several(names.collect()))),
                );
            }
            _ => {}
        }
    }

    /// The words along the cable that feeds a part.
    pub(super) fn run_to(&self, id: SubjectId) -> RunWords {
        let mut words = RunWords::default();
        let Some(feed) = self.survey.wiring.feed(id) else { return words };
        let outputs = self.survey.parts.get(&feed.part).map_or(1, Part::outputs);
        if outputs > 1 {
            let message = Phrase::new("map-leg").with("port", Arg::Count(u64::from(feed.port)));
            words.above.push(self.language.say(&message));
        }
        if self.survey.wiring.on_port(feed.part, feed.port).count() > 1 {
            words.above.push(self.say("map-shared-port"));
        }
        match feed.run.and_then(|run| self.survey.runs.get(&run)) {
            None => words.below.push(self.say("map-run-unknown")),
            Some(run) => self.push_run(run, &mut words),
        }
        if let Some(db) = self.weak.and_then(|weak| weak.run_cost(id)) {
            words.below.push(self.say_loss("map-loses", db));
        }
        words
    }

    /// Whether the run that feeds a part is thin, old cable.
    pub(super) fn is_thin(&self, id: SubjectId) -> bool {
        let run = self.survey.wiring.feed(id).and_then(|feed| self.survey.runs.get(&feed.run?));
        run.is_some_and(|run| run.cable == CableKind::FiftyNine)
    }

    fn push_run(&self, run: &Run, words: &mut RunWords) {
        if let Some(tag) = &run.tag {
            words.above.push(tag.clone());
        }
        words.above.push(self.say(cable_message(run.cable)));
        match run.length {
            Some(_) if run.is_jumper() => words.below.push(self.say("map-length-short")),
            None => words.below.push(self.say("map-length-unknown")),
            Some(length) => {
                words.below.push(
                    self.language.say(&Phrase::new("map-length").with("length", Arg::Length(length.metres))),
                );
                match length.known {
                    LengthKnown::Measured => {}
                    LengthKnown::Paced => words.below.push(self.say("map-length-paced")),
                    LengthKnown::Guessed => words.below.push(self.say("map-length-guessed")),
                }
            }
        }
        if run.has_poor_connector() {
            words.below.push(self.say("map-poor-connector"));
        }
    }

    /// The words at the free ports of a part.
    pub(super) fn free(&self, feeder: Option<SubjectId>, stands: &Stands) -> String {
        let Stands::Free { first, last, end } = *stands else { return String::new() };
        let outputs = feeder.and_then(|id| self.survey.parts.get(&id)).map_or(1, Part::outputs);
        let ports = if outputs == 1 {
            Phrase::new("map-output")
        } else if first == last {
            Phrase::new("map-leg").with("port", Arg::Count(u64::from(first)))
        } else {
            let first = Phrase::new("map-legs").with("first", Arg::Count(u64::from(first)));
            first.with("last", Arg::Count(u64::from(last)))
        };
        let id = match end {
            Some(PortEnd::Capped) => "map-end-capped",
            Some(PortEnd::Open) => "map-end-open",
            Some(PortEnd::LooseEnd) => "map-end-loose",
            Some(PortEnd::AnotherHome) => "map-end-another-home",
            None => "map-end-unknown",
        };
        self.language.say(&Phrase::new(id).phrase("ports", ports))
    }
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
