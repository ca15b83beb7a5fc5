//! Where a finding is.

use facts::fact::SubjectId;
use house::naming;
use house::record::{Survey, TagOrder, tag_order};
use phrase::Phrase;

/// Where a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// A part.
    Part(SubjectId),
    /// One port of a part.
    Port {
        /// The part.
        part: SubjectId,
        /// Its port, 1 and up.
        port: u8,
    },
    /// The run that feeds this part.
    RunTo(SubjectId),
    /// A room.
    Room(SubjectId),
    /// A service on the coax.
    Service(SubjectId),
    /// The house as a whole.
    House,
}

impl Place {
    /// The part it is at, or whose feeding run it is.
    pub fn part(self) -> Option<SubjectId> {
        match self {
            Self::Part(part) | Self::Port { part, .. } | Self::RunTo(part) => Some(part),
            Self::Room(_) | Self::Service(_) | Self::House => None,
        }
    }

    /// The phrase that names a part, port or run; `None` for a room, a service or the house.
    pub fn phrase(self, survey: &Survey) -> Option<Phrase> {
        match self {
            Self::Part(part) => Some(naming::part(survey, part)),
            Self::Port { part, port } => Some(naming::port(survey, part, port)),
            Self::RunTo(part) => Some(naming::run_to(survey, part)),
            Self::Room(_) | Self::Service(_) | Self::House => None,
        }
    }

    /// Where it stands in the order of the house.
    pub(super) fn in_order(self, survey: &Survey) -> (u8, usize, u8) {
        match self {
            Self::Part(part) => (0, survey.place_in_order(part), 0),
            Self::Port { part, port } => (1, survey.place_in_order(part), port),
            Self::RunTo(part) => (2, survey.place_in_order(part), 0),
            Self::Room(room) => (3, survey.rooms.get_index_of(&room).unwrap_or(usize::MAX), 0),
            Self::Service(service) => (4, survey.services.get_index_of(&service).unwrap_or(usize::MAX), 0),
            Self::House => (5, 0, 0),
        }
    }

    pub(super) fn tag_order(self, survey: &Survey) -> TagOrder {
        let of_part = |id| survey.parts.get(&id).and_then(|part| part.tag.as_deref());
        let tag = match self {
            Self::Part(part) | Self::Port { part, .. } => of_part(part),
            Self::RunTo(part) => {
                let run = survey.wiring.feed(part).and_then(|feed| survey.runs.get(&feed.run?));
                run.and_then(|run| run.tag.as_deref()).or_else(|| of_part(part))
            }
            Self::Room(room) => survey.rooms.get(&room).map(|room| room.name.as_str()),
            Self::Service(_) | Self::House => None,
        };
        tag_order(tag)
    }
}
