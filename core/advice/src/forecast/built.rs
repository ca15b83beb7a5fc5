//! From records to a circuit: which piece of which rating stands where, and what ends where nothing is joined.

use std::collections::{BTreeMap, BTreeSet};

use coax::rated::MismatchRating;
use coax::trade::{CABLE_TOP, LABELS_BEGIN};
use facts::fact::SubjectId;
use house::rating::{Band, EXTENDED_D};
use house::record::{Part, PartKind, PortEnd, Sharing, Survey};
use indexmap::IndexMap;

use super::circuit::{At, Circuit, Piece, Terminal, variant};
use super::nodes::{Node, shares_outlet};
use super::outcome::CostAt;
use super::pieces::{self, Ending, Rated};

/// What TV and modem use of the coax: from the lowest that a modem sends to the top of cable TV, MHz.
pub(crate) const TV_AND_MODEM: Band = Band { low_mhz: LABELS_BEGIN.value(), high_mhz: CABLE_TOP.value() };

/// Where a meter is screwed on: what hangs behind that place is off meanwhile.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct MeteredAt {
    /// The part.
    pub part: SubjectId,
    /// The output of that part, 1 and up; `None` for its input, and at an outlet for the place of the device.
    pub port: Option<u8>,
}

/// What a circuit is solved for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Purpose {
    /// The network to be: every adapter that is wished for is there, with what it takes to share its outlet.
    Network,
    /// The levels of the other services: only what is there, and devices take what arrives.
    Levels,
}

impl Circuit {
    /// The circuit of the tree headed by `head`, with adapters at `nodes`.
    pub(super) fn of_tree(survey: &Survey, head: SubjectId, nodes: &[Node]) -> Self {
        Self::built(survey, head, nodes, Purpose::Network, None)
    }

    /// The circuit of the tree headed by `head` as the other services see it: devices are terminals.
    pub(crate) fn for_levels(survey: &Survey, head: SubjectId) -> Self {
        Self::built(survey, head, &[], Purpose::Levels, None)
    }

    /// The same while a meter is screwed on somewhere. There is no [`Terminal::Meter`] where that place is not on the tree.
    pub(crate) fn for_meter(survey: &Survey, head: SubjectId, at: MeteredAt) -> Self {
        Self::built(survey, head, &[], Purpose::Levels, Some(at))
    }

    fn built(
        survey: &Survey,
        head: SubjectId,
        nodes: &[Node],
        purpose: Purpose,
        meter: Option<MeteredAt>,
    ) -> Self {
        let behind = meter.map_or_else(BTreeSet::new, |meter| behind(survey, meter));
        let mut builder = Builder {
            survey,
            nodes,
            purpose,
            meter,
            circuit: Self {
                head,
                pieces: Vec::new(),
                joins: Vec::new(),
                endings: Vec::new(),
                terminals: IndexMap::new(),
            },
            house_side: BTreeMap::new(),
        };
        for part in survey.wiring.below(head).iter().filter_map(|id| survey.parts.get(id)) {
            if !behind.contains(&part.id) {
                builder.place(part);
            } else if meter == Some(MeteredAt { part: part.id, port: None })
                && let Some(end) = builder.end_of_feed(part)
            {
                builder.circuit.terminals.insert(Terminal::Meter, end);
            }
        }
        builder.circuit
    }
}

/// What hangs behind a meter. At an outlet the meter takes the place of what is plugged in, or else of the next cable.
fn behind(survey: &Survey, meter: MeteredAt) -> BTreeSet<SubjectId> {
    let is_outlet = survey.parts.get(&meter.part).is_some_and(|part| part.kind == PartKind::Outlet);
    let hidden = match meter.port {
        Some(port) => survey.wiring.on_port(meter.part, port).collect(),
        None if is_outlet => Vec::new(),
        None => vec![meter.part],
    };
    hidden.into_iter().flat_map(|id| survey.wiring.below(id)).collect()
}

struct Builder<'a> {
    survey: &'a Survey,
    nodes: &'a [Node],
    purpose: Purpose,
    meter: Option<MeteredAt>,
    circuit: Circuit,
    /// Where each port of a placed part can be joined.
    house_side: BTreeMap<(SubjectId, u8), At>,
}

impl Builder<'_> {
    fn add(&mut self, key: [u8; 16], at: CostAt, rated: Rated) -> usize {
        self.circuit.pieces.push(Piece { key, at, rated });
        self.circuit.pieces.len() - 1
    }

    fn place(&mut self, part: &Part) {
        let key = self.survey.dice_key(part.id);
        let piece = self.add(key, CostAt::Part(part.id), self.rated(part));
        self.join_feed(part, (piece, 0));
        if part.kind == PartKind::Outlet {
            self.place_outlet(part, (piece, 1));
        } else if part.kind == PartKind::Terminator {
            self.circuit.endings.push(((piece, 1), Ending::Capped, key));
        } else {
            for port in 1..=part.outputs() {
                self.offer(part, port, (piece, usize::from(port)));
            }
        }
    }

    /// A part as it was measured, where that reaches over the whole band that is looked at, else as it is rated.
    fn rated(&self, part: &Part) -> Rated {
        let band = match self.purpose {
            Purpose::Network => EXTENDED_D,
            Purpose::Levels => TV_AND_MODEM,
        };
        pieces::in_band(part, band)
    }

    /// Joins a part's street side to what feeds it, or ends it there.
    fn join_feed(&mut self, part: &Part, street_side: At) {
        if self.survey.wiring.feed(part.id).is_none() {
            if part.is_joined_entry() {
                let street =
                    self.behind_mismatch(part, street_side, 7, Rated::Mismatch(MismatchRating::street()));
                self.circuit.terminals.insert(Terminal::Street(part.id), street);
            } else {
                let ending = if part.end(0) == Some(PortEnd::Capped) { Ending::Capped } else { Ending::Open };
                self.circuit.endings.push((street_side, ending, self.survey.dice_key(part.id)));
            }
        } else if let Some(end) = self.end_of_feed(part) {
            self.circuit.joins.push((end, street_side));
        }
    }

    /// The house-side end of the run that feeds a part, joined to what feeds it; `None` where nothing does.
    fn end_of_feed(&mut self, part: &Part) -> Option<At> {
        let feed = self.survey.wiring.feed(part.id)?;
        let run = feed.run.and_then(|id| self.survey.runs.get(&id));
        let key =
            run.map_or_else(|| variant(self.survey.dice_key(part.id), 1), |run| self.survey.dice_key(run.id));
        let cable = self.add(key, CostAt::RunTo(part.id), pieces::of_run(run));
        // Feeders are placed before what they feed, so the port has been offered.
        if let Some(port) = self.house_side.get_mut(&(feed.part, feed.port)) {
            self.circuit.joins.push((*port, (cable, 0)));
            // If further cables share the port, the next one takes the next arm of the junction.
            port.1 += 1;
        }
        Some((cable, 1))
    }

    /// Makes a port of a part ready for what hangs on it: one cable, several twisted together, or an end.
    fn offer(&mut self, part: &Part, port: u8, at: At) {
        if self.meter == Some(MeteredAt { part: part.id, port: Some(port) }) {
            self.circuit.terminals.insert(Terminal::Meter, at);
            return;
        }
        match self.survey.wiring.on_port(part.id, port).count() {
            0 => {
                let key = variant(self.survey.dice_key(part.id), 16 + port);
                match part.end(port) {
                    // Nobody knows either how long another home's cable is; something uses it.
                    Some(end @ (PortEnd::LooseEnd | PortEnd::AnotherHome)) => {
                        let ending = if end == PortEnd::LooseEnd { Ending::Open } else { Ending::Device };
                        let stub = self.add(key, CostAt::Part(part.id), pieces::loose_end());
                        self.circuit.joins.push((at, (stub, 0)));
                        self.circuit.endings.push(((stub, 1), ending, key));
                    }
                    Some(PortEnd::Capped) => self.circuit.endings.push((at, Ending::Capped, key)),
                    Some(PortEnd::Open) => self.circuit.endings.push((at, Ending::Open, key)),
                    None => self.circuit.endings.push((at, Ending::Unseen, key)),
                }
            }
            1 => {
                self.house_side.insert((part.id, port), at);
            }
            several => {
                let junction = self.add(
                    variant(self.survey.dice_key(part.id), 64 + port),
                    CostAt::Part(part.id),
                    pieces::junction(several + 1),
                );
                self.circuit.joins.push((at, (junction, 0)));
                self.house_side.insert((part.id, port), (junction, 1));
            }
        }
    }

    /// An outlet may serve an adapter, a device and a further cable: what shares it does so through a splitter, but a box
    /// that passes the cable on does that by itself.
    fn place_outlet(&mut self, part: &Part, at: At) {
        let node = match self.purpose {
            Purpose::Network => self.nodes.iter().any(|node| node.outlet == part.id),
            Purpose::Levels => part.sharing.is_some(),
        };
        let device = match self.purpose {
            Purpose::Network => shares_outlet(part),
            Purpose::Levels => {
                let metered = self.meter == Some(MeteredAt { part: part.id, port: None });
                metered || part.plugged.as_ref().is_some_and(|plugged| !plugged.is_empty())
            }
        };
        let onward = self.survey.wiring.on_port(part.id, 1).count() > 0;
        let passed_on = onward && part.passes_on_through_box();
        // A gateway that speaks MoCA is adapter and box in one.
        let node_in_box = node && passed_on && !device;
        let node_beside = node && !node_in_box;
        let onward_beside = onward && !passed_on;
        let shares = usize::from(node_beside) + usize::from(device || passed_on) + usize::from(onward_beside);
        let by_through_port = shares == 2 && node_beside && part.sharing == Some(Sharing::ThroughPort);
        let mut arms = if shares > 1 {
            let splitter = self.add(
                variant(self.survey.dice_key(part.id), 3),
                CostAt::Part(part.id),
                if by_through_port { pieces::through_port() } else { pieces::outlet_splitter(shares) },
            );
            self.circuit.joins.push((at, (splitter, 0)));
            // The adapter's arm comes first; a part that passes the cable on has its own device last.
            let legs = if by_through_port { vec![2, 1] } else { (1..=shares).collect() };
            legs.into_iter().map(|leg| (splitter, leg)).collect::<Vec<_>>()
        } else {
            vec![at]
        }
        .into_iter();
        if node_beside && let Some(arm) = arms.next() {
            self.end_in_adapter(part, arm);
        }
        if onward_beside && let Some(arm) = arms.next() {
            self.offer(part, 1, arm);
        }
        match arms.next() {
            Some(arm) if passed_on => self.place_passing_box(part, arm, node_in_box),
            Some(arm) => self.place_device(part, arm),
            None => {}
        }
    }

    /// A box between the outlet and the next cable. A filter at it stands before it, and so before the next cable too.
    fn place_passing_box(&mut self, part: &Part, arm: At, is_node: bool) {
        let wall = self.behind_filter(part, arm);
        let passing = self.add(
            variant(self.survey.dice_key(part.id), 6),
            CostAt::Part(part.id),
            pieces::passing_box(part),
        );
        self.circuit.joins.push((wall, (passing, 0)));
        self.offer(part, 1, (passing, 1));
        if self.meter == Some(MeteredAt { part: part.id, port: None }) {
            self.circuit.terminals.insert(Terminal::Meter, (passing, 2));
        } else if is_node {
            self.end_in_adapter(part, (passing, 2));
        } else {
            self.end_in_device(part, (passing, 2));
        }
    }

    /// What is plugged in at an outlet, or its empty end.
    fn place_device(&mut self, part: &Part, arm: At) {
        if self.meter == Some(MeteredAt { part: part.id, port: None }) {
            let arm = self.behind_filter(part, arm);
            self.circuit.terminals.insert(Terminal::Meter, arm);
            return;
        }
        let key = variant(self.survey.dice_key(part.id), 4);
        let ending = match &part.plugged {
            Some(plugged) if plugged.is_empty() => match part.end(1) {
                Some(PortEnd::Capped) => Ending::Capped,
                _ => Ending::Open,
            },
            Some(_) => {
                let arm = self.behind_filter(part, arm);
                return self.end_in_device(part, arm);
            }
            None => part.end(1).map_or(Ending::Unseen, |end| match end {
                PortEnd::Capped => Ending::Capped,
                PortEnd::Open | PortEnd::LooseEnd => Ending::Open,
                PortEnd::AnotherHome => Ending::Unseen,
            }),
        };
        self.circuit.endings.push((arm, ending, key));
    }

    /// Where a device is joined: behind its filter, if it has one.
    fn behind_filter(&mut self, part: &Part, arm: At) -> At {
        if !part.device_filter {
            return arm;
        }
        let filter = self.add(
            variant(self.survey.dice_key(part.id), 5),
            CostAt::Part(part.id),
            pieces::device_filter(),
        );
        self.circuit.joins.push((arm, (filter, 0)));
        (filter, 1)
    }

    /// An adapter, which is not 75 ohm. Where levels are worked out it is a port that nobody asks about.
    fn end_in_adapter(&mut self, part: &Part, arm: At) {
        let end = self.behind_mismatch(part, arm, 8, Rated::Mismatch(MismatchRating::adapter()));
        self.circuit.terminals.insert(Terminal::Adapter(part.id), end);
    }

    /// Where something is joined that sends part of what reaches it back in the MoCA band.
    fn behind_mismatch(&mut self, part: &Part, arm: At, which: u8, mismatch: Rated) -> At {
        if self.purpose == Purpose::Levels {
            return arm;
        }
        let key = variant(self.survey.dice_key(part.id), which);
        let piece = self.add(key, CostAt::Part(part.id), mismatch);
        self.circuit.joins.push((arm, (piece, 0)));
        (piece, 1)
    }

    fn end_in_device(&mut self, part: &Part, arm: At) {
        match self.purpose {
            Purpose::Levels => {
                self.circuit.terminals.insert(Terminal::Device(part.id), arm);
            }
            Purpose::Network => {
                let key = variant(self.survey.dice_key(part.id), 4);
                self.circuit.endings.push((arm, Ending::Device, key));
            }
        }
    }
}
