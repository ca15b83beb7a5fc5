//! Every question that this house asks for now, from the street to the router, in which round, and whether it is answered.
//!
//! The list is worked out anew from the survey each time, so it grows and shrinks with what is found, and it does not
//! matter where one began.

use std::collections::BTreeSet;

use advice::finding::is_modem_beside_adapter;
use facts::fact::SubjectId;
use house::rating::PartRating;
use house::record::{
    Asked, Connector, EntryState, Part, PartKind, Plugged, Reply, Run, ServiceKind, Survey, reading_order,
};

use super::cable::{is_length_told, is_series_told, laid};
use super::outputs;
use super::ports;
use super::round::round;
use crate::place::{Question, Round};
use crate::question::entry::behind;
use crate::question::router::bridge;
use crate::session::SurveySnapshot;

/// A question of the journey.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct OnTheWay {
    /// What is asked.
    pub(crate) question: Question,
    /// Whether it is answered, if only by "not sure".
    pub(crate) answered: bool,
    /// In which round it is asked.
    pub(crate) round: Round,
}

/// Every question of this house in the order of the wiring.
pub(crate) fn journey(snapshot: &SurveySnapshot<'_>) -> Vec<OnTheWay> {
    let order = reading_order(snapshot.survey);
    let mut way = Way { snapshot, order, questions: Vec::new(), seen: BTreeSet::new() };
    way.house();
    way.ways_in();
    way.loose();
    way.outlets();
    way.cables();
    way.router();
    way.questions
}

struct Way<'a, 'b> {
    snapshot: &'b SurveySnapshot<'a>,
    /// The parts as the map and the lists show them, so that the questions come in the same order on every device.
    order: Vec<SubjectId>,
    questions: Vec<OnTheWay>,
    seen: BTreeSet<SubjectId>,
}

impl Way<'_, '_> {
    fn survey(&self) -> &Survey {
        self.snapshot.survey
    }

    /// The parts of a kind, in order.
    fn parts(&self, kind: PartKind) -> impl Iterator<Item = &Part> {
        self.order.iter().filter_map(|id| self.survey().parts.get(id)).filter(move |part| part.kind == kind)
    }

    fn ask(&mut self, question: Question, answered: bool) {
        let round = round(self.snapshot, &question, answered);
        self.questions.push(OnTheWay { question, answered, round });
    }

    /// Whether a question about a subject was answered in words of its own.
    fn told(&self, subject: SubjectId, question: Asked) -> bool {
        self.survey().answer(subject, question).is_some()
    }

    fn told_of_house(&self, question: Asked) -> bool {
        self.told(self.survey().id, question)
    }

    fn house(&mut self) {
        let survey = self.survey();
        let whose = survey.building.is_some();
        let modem = survey.services_of(ServiceKind::CableInternet).next();
        let modem =
            modem.map(|service| (service.id, service.modem.is_some_and(|bands| bands.generation.is_some())));
        let plan = survey.internet.is_some() || self.told_of_house(Asked::Plan);
        let rooms: Vec<_> =
            survey.rooms.values().map(|room| (room.id, room.wish.is_some(), room.name.clone())).collect();
        self.ask(Question::Whose, whose);
        let uses = self.told_of_house(Asked::Uses) || !self.survey().services.is_empty();
        self.ask(Question::Uses, uses);
        if let Some((service, known)) = modem {
            let told = known || self.told(service, Asked::ModemAge);
            self.ask(Question::ModemAge, told);
        }
        let depends = self.told_of_house(Asked::Depends);
        self.ask(Question::Depends, depends);
        self.ask(Question::Plan, plan);
        let named = self.told_of_house(Asked::Rooms) || !rooms.is_empty();
        self.ask(Question::Rooms, named);
        let mut rooms = rooms;
        // From the router's outlet the network starts: it is asked for as soon as there are rooms to name.
        if !rooms.is_empty() {
            self.router_at();
        }
        let at_router = bridge(self.snapshot).and_then(|outlet| outlet.room);
        rooms.sort_by(|a, b| (&a.2, a.0).cmp(&(&b.2, b.0)));
        for (room, wished, _) in rooms {
            let told = wished || self.told(room, Asked::Wish);
            // Whoever is at the router needs no way to it.
            if told || Some(room) != at_router {
                self.ask(Question::Wish(room), told);
            }
        }
    }

    fn router_at(&mut self) {
        let told = bridge(self.snapshot).is_some() || self.told_of_house(Asked::RouterAt);
        self.ask(Question::RouterAt, told);
    }

    fn ways_in(&mut self) {
        let entries: Vec<_> = self.parts(PartKind::Entry).map(|part| part.id).collect();
        let told = self.told_of_house(Asked::WaysIn) || !entries.is_empty();
        self.ask(Question::WaysIn, told);
        for entry in entries {
            let state = self.survey().parts.get(&entry).map(|part| part.entry_state);
            let joined = state != Some(EntryState::Unknown) || self.told(entry, Asked::Joined);
            self.ask(Question::Joined(entry), joined);
            let ground = behind(self.snapshot, entry, PartKind::GroundBlock).is_some();
            let ground = ground || self.told(entry, Asked::GroundBlock);
            self.ask(Question::GroundBlock(entry), ground);
            if state != Some(EntryState::CutOff) {
                let filter = behind(self.snapshot, entry, PartKind::EntryFilter).is_some();
                let filter = filter || self.told(entry, Asked::EntryFilter);
                self.ask(Question::EntryFilter(entry), filter);
            }
            self.part(entry);
        }
    }

    /// A part and all that hangs on it.
    fn part(&mut self, id: SubjectId) {
        if !self.seen.insert(id) {
            return;
        }
        let Some(part) = self.survey().parts.get(&id).cloned() else { return };
        self.label(&part);
        if part.kind == PartKind::Amplifier {
            let told = part.rating.by_pass().is_some() || self.told(id, Asked::ByPass);
            self.ask(Question::ByPass(id), told);
            let told = self.told(id, Asked::Powered);
            self.ask(Question::Powered(id), told);
        }
        let together = outputs::are_asked_together(self.snapshot, &part);
        if together {
            let told = (1..=part.outputs()).all(|port| outputs::is_told(self.snapshot, &part, port));
            self.ask(Question::Outputs(id), told);
        }
        for port in 1..=part.outputs() {
            let child = self.survey().wiring.on_port(id, port).next();
            // A barrel, a filter or a ground block asks where it leads; an outlet that passes nothing on does not.
            let leads = part.kind != PartKind::Outlet || child.is_some();
            if leads && !together {
                self.ask(Question::LeadsTo(id, port), child.is_some() || part.end(port).is_some());
            }
            if let Some(child) = child {
                self.part(child);
            }
        }
    }

    fn label(&mut self, part: &Part) {
        let labelled = matches!(
            part.kind,
            PartKind::Splitter
                | PartKind::Tap
                | PartKind::Amplifier
                | PartKind::EntryFilter
                | PartKind::HighPassFilter
                | PartKind::SatelliteCombiner
                | PartKind::Unknown
        );
        if !labelled {
            return;
        }
        let rated = part.rating != PartRating { legs: part.rating.legs, ..PartRating::default() };
        let told = part.label.is_some() || rated || self.told(part.id, Asked::Label);
        self.ask(Question::Label(part.id), told);
        if part.label.is_some() && part.rating.doubtful {
            let told = self.told(part.id, Asked::LabelRead);
            self.ask(Question::LabelRead(part.id), told);
        }
        if matches!(part.kind, PartKind::Splitter | PartKind::Tap | PartKind::Amplifier) && told {
            let counted = part.rating.legs > 0 || self.told(part.id, Asked::Legs);
            self.ask(Question::Legs(part.id), counted);
        }
    }

    /// Parts found that nobody has traced yet, each with what hangs on it.
    fn loose(&mut self) {
        let wiring = &self.survey().wiring;
        let heads = wiring.heads();
        let heads: Vec<_> = self.order.iter().copied().filter(|part| heads.contains(part)).collect();
        let loose: Vec<_> =
            self.order.iter().copied().filter(|part| wiring.loose().contains_key(part)).collect();
        for head in heads {
            self.part(head);
        }
        for part in loose {
            let told = self.survey().reply(part, Asked::FedBy) == Some(Reply::Unsure);
            self.ask(Question::FedBy(part), told);
            self.part(part);
        }
    }

    fn outlets(&mut self) {
        // Where nothing uses the cable, nothing is plugged in either.
        let unused = self.survey().reply(self.survey().id, Asked::Uses) == Some(Reply::No);
        let outlets: Vec<_> = self.parts(PartKind::Outlet).cloned().collect();
        for outlet in &outlets {
            self.ask(Question::RoomOf(outlet.id), outlet.room.is_some());
            let told = outlet.plugged.is_some() || self.told(outlet.id, Asked::Plugged);
            if told || !unused {
                self.ask(Question::Plugged(outlet.id), told);
            }
        }
        let told = self.told_of_house(Asked::MoreOutlets);
        self.ask(Question::MoreOutlets, told);
    }

    fn cables(&mut self) {
        let survey = self.survey();
        let laid: Vec<Run> = laid(survey).into_iter().cloned().collect();
        if laid.is_empty() {
            return;
        }
        let joints = laid
            .iter()
            .all(|run| run.connector_near != Connector::Unknown && run.connector_far != Connector::Unknown);
        let told = joints || self.told_of_house(Asked::Connectors);
        self.ask(Question::Connectors, told);
        let some_bad = self.reply_is(Asked::Connectors, Reply::Some);
        for run in laid {
            let told = is_series_told(self.survey(), &run) && is_length_told(self.survey(), &run);
            self.ask(Question::Cable(run.id), told);
            if some_bad {
                let told = self.told(run.id, Asked::Connectors);
                self.ask(Question::ConnectorsOf(run.id), told);
            }
        }
    }

    fn reply_is(&self, question: Asked, reply: Reply) -> bool {
        self.survey().reply(self.survey().id, question) == Some(reply)
    }

    fn router(&mut self) {
        let told = self.told_of_house(Asked::Adapters);
        self.ask(Question::Adapters, told);
        if self.survey().rooms.is_empty() {
            self.router_at();
        }
        let bridged = bridge(self.snapshot);
        // Only a box that is both modem and router can speak MoCA itself.
        let boxed = bridged.is_some_and(|outlet| {
            outlet
                .plugged
                .iter()
                .flatten()
                .any(|device| matches!(device, Plugged::Modem | Plugged::MocaGateway))
        });
        if boxed {
            let told = self.told_of_house(Asked::RouterSpeaks);
            self.ask(Question::RouterSpeaks, told);
        }
        if ports::are_asked(self.snapshot) {
            let told = self.told_of_house(Asked::Ports);
            self.ask(Question::Ports, told);
        }
        self.drops_out();
    }

    /// A modem beside an adapter that is there by now may be disturbed by it.
    fn drops_out(&mut self) {
        let survey = self.survey();
        let has_adapters = match survey.reply(survey.id, Asked::Adapters) {
            None | Some(Reply::Unsure) => false,
            Some(Reply::None) => survey.reply(survey.id, Asked::AdaptersPlaced) == Some(Reply::Yes),
            Some(_) => true,
        };
        let internet = survey.services_of(ServiceKind::CableInternet).next();
        let Some(service) = internet.filter(|_| has_adapters && is_modem_beside_adapter(survey)) else {
            return;
        };
        let told = service.drops_out || self.told(service.id, Asked::DropsOut);
        self.ask(Question::DropsOut, told);
    }
}
