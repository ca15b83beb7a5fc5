//! What hangs on a thing that is to be removed: told before anybody says yes to it.

use facts::fact::SubjectId;
use phrase::{Arg, Phrase};

use crate::record::Survey;

/// How many things of each kind hang on one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Hanging {
    /// Parts behind it, near and far, and outlets of a room.
    pub parts: usize,
    /// Cables that lead to those.
    pub runs: usize,
    /// Photos of it.
    pub photos: usize,
    /// Readings at it.
    pub readings: usize,
    /// Notes on it.
    pub notes: usize,
}

impl Hanging {
    /// What hangs on a part, a cable, a room or a service.
    pub fn on(survey: &Survey, id: SubjectId) -> Self {
        let mut behind: Vec<SubjectId> = match survey.wiring.fed_over(id) {
            // What a cable feeds.
            Some(part) => vec![part],
            None => survey.wiring.fed_from(id).to_vec(),
        };
        let mut next = 0;
        // A loop cannot be: no part is its own feed, however far up. The bound holds for what others wrote too.
        while let Some(part) = behind.get(next).copied().filter(|_| next < survey.parts.len()) {
            behind.extend(survey.wiring.fed_from(part).iter().copied());
            next += 1;
        }
        let run_to = |part: &&SubjectId| {
            survey.wiring.feed(**part).and_then(|feed| feed.run).is_some_and(|run| run != id)
        };
        let runs = behind.iter().filter(run_to).count();
        let in_room = survey.parts.values().filter(|part| part.room == Some(id)).count();
        Self {
            parts: behind.len() + in_room,
            runs,
            photos: survey.photos_of(Some(id)).count(),
            readings: survey.readings_at(id).count(),
            notes: survey.notes_on(Some(id)).count(),
        }
    }

    /// Whether nothing does.
    pub fn is_nothing(self) -> bool {
        self == Self::default()
    }

    /// What hangs on it, each kind with its number: `3 parts`, `2 cables`.
    pub fn things(self) -> Vec<Arg> {
        let counted = [
            ("hangs-parts", self.parts),
            ("hangs-runs", self.runs),
            ("hangs-photos", self.photos),
            ("hangs-readings", self.readings),
            ("hangs-notes", self.notes),
        ];
        let there = counted.into_iter().filter(|(_, count)| *count > 0);
        let told = |(id, count)| Phrase::new(id).with("count", Arg::Count(count as u64));
        there.map(|counted| Arg::Phrase(Box::new(told(counted)))).collect()
    }

    /// The same as a sentence.
    pub fn phrase(self) -> Phrase {
        if self.is_nothing() {
            return Phrase::new("hangs-nothing");
        }
        Phrase::new("hangs").with("things", Arg::Several(self.things()))
    }
}
