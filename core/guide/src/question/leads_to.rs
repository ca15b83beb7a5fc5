//! Where a port of a part leads: to an outlet in a room, to a splitter, to nothing.

use std::collections::BTreeSet;

use facts::fact::SubjectId;
use house::naming;
use house::record::{
    Asked, Feed, FeedFrom, Is, LengthKnown, LooseReason, Part, PartKind, PortEnd, Reply, Run, RunLength,
    Survey, field, is_shared, reading_order,
};
use phrase::Phrase;

use super::answer::{Answer, Told, UNSURE, not_answered};
use super::entry::behind;
use super::house::cautions_of_tracing;
use crate::place::{Choice, Key, Question, choices};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// A tag that nothing carries yet: the kind's letter and the next number, `skip` numbers further on.
pub(crate) fn free_tag(survey: &Survey, kind: PartKind, skip: usize) -> String {
    let letter = match kind {
        PartKind::Entry => "E",
        PartKind::GroundBlock => "G",
        PartKind::EntryFilter | PartKind::HighPassFilter => "F",
        PartKind::Splitter => "S",
        PartKind::Tap => "T",
        PartKind::Amplifier | PartKind::PowerInserter => "A",
        PartKind::Outlet => "O",
        _ => "P",
    };
    let taken = |tag: &str| {
        survey.parts.values().any(|part| part.tag.as_deref() == Some(tag))
            || survey.runs.values().any(|run| run.tag.as_deref() == Some(tag))
    };
    let free = (1..).map(|number| format!("{letter}{number}")).filter(|tag| !taken(tag)).nth(skip);
    free.unwrap_or_default()
}

/// The most rooms, and the most parts found before, that are offered.
const MOST_ROOMS: usize = 100;
const MOST_LOOSE: usize = 40;

/// Where a port leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LeadsToAnswer {
    /// To the outlet of a room.
    Room(SubjectId),
    /// To an outlet of which nobody knows the room.
    Outlet,
    /// To a part of a kind.
    Part(LedTo),
    /// To a part that was found before.
    Loose(SubjectId),
    /// To nothing: how it ends.
    End(PortEnd),
    /// Somebody looked and could not tell.
    Unsure,
}

choices! {
    /// What else a cable may lead to.
    LedTo {
        /// A ground block.
        GroundBlock "ground-block",
        /// A splitter.
        Splitter "splitter",
        /// A filter, screwed straight on.
        Filter "filter",
        /// A filter, with a cable before it.
        FilterBehindCable "filter-behind-cable",
        /// An amplifier.
        Amplifier "amplifier",
        /// A tap.
        Tap "tap",
        /// Another part.
        Other "other",
    }
}

impl LedTo {
    /// What a part is here; `is_on` where no cable leads to it, or a jumper.
    fn of_part(part: &Part, is_on: bool) -> Self {
        match part.kind {
            PartKind::EntryFilter | PartKind::HighPassFilter if is_on => Self::Filter,
            PartKind::EntryFilter | PartKind::HighPassFilter => Self::FilterBehindCable,
            kind => Self::ALL.iter().copied().find(|led| led.kind() == kind).unwrap_or(Self::Other),
        }
    }

    const fn kind(self) -> PartKind {
        match self {
            Self::GroundBlock => PartKind::GroundBlock,
            Self::Splitter => PartKind::Splitter,
            // The filter that is screwed in line in a house is one against the room network, until its print says else.
            Self::Filter | Self::FilterBehindCable => PartKind::EntryFilter,
            Self::Amplifier => PartKind::Amplifier,
            Self::Tap => PartKind::Tap,
            Self::Other => PartKind::Unknown,
        }
    }
}

/// The ways in which a port may have nothing on it, each with its word.
const ENDS: [(PortEnd, &str); 4] = [
    (PortEnd::Capped, "capped"),
    (PortEnd::Open, "open"),
    (PortEnd::AnotherHome, "another_home"),
    (PortEnd::LooseEnd, "loose_end"),
];

impl Choice for LeadsToAnswer {
    fn key(&self) -> String {
        match self {
            Self::Room(room) => Key::Room(*room).to_string(),
            Self::Outlet => "outlet".into(),
            Self::Part(led) => led.key(),
            Self::Loose(part) => Key::Part(*part).to_string(),
            Self::End(end) => ENDS.iter().find(|(of, _)| of == end).map_or("", |(_, key)| key).to_owned(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        if let Some((end, _)) = ENDS.iter().find(|(_, of)| *of == key) {
            return Some(Self::End(*end));
        }
        match key {
            "outlet" => Some(Self::Outlet),
            UNSURE => Some(Self::Unsure),
            key => match Key::of(key) {
                Some(Key::Room(room)) => Some(Self::Room(room)),
                Some(Key::Part(part)) => Some(Self::Loose(part)),
                _ => LedTo::of(key).map(Self::Part),
            },
        }
    }
}

impl LeadsToAnswer {
    /// The message of the option; those of rooms and parts that are there say which.
    fn phrase(self) -> Phrase {
        Phrase::new(format!("leads-{}", self.key()))
    }

    /// At most so many options a port has.
    pub(super) fn most_offers(survey: &Survey) -> usize {
        let found = survey.rooms.len().min(MOST_ROOMS) + survey.wiring.loose().len().min(MOST_LOOSE);
        // And an outlet without a room.
        found + 1 + LedTo::ALL.len() + ENDS.len()
    }

    /// What a port of a part may lead to.
    pub(super) fn offers(snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Vec<Offer> {
        let survey = snapshot.survey;
        // An outlet that was found already and waits for its feed stands for its room.
        let room_of = |id: SubjectId| survey.parts.get(&id).and_then(|part| part.room);
        let waiting: BTreeSet<_> = loose(snapshot, part).filter_map(room_of).collect();
        let mut rooms: Vec<_> = survey.rooms.values().filter(|room| !waiting.contains(&room.id)).collect();
        // Those of which no outlet is known yet come first.
        let with_outlet: BTreeSet<_> = survey
            .parts
            .values()
            .filter(|part| part.kind == PartKind::Outlet)
            .filter_map(|part| part.room)
            .collect();
        rooms.sort_by_key(|room| (with_outlet.contains(&room.id), room.name.clone(), room.id));
        // Outlets that wait for their cable stand with the rooms.
        let is_outlet =
            |id: &SubjectId| survey.parts.get(id).is_some_and(|part| part.kind == PartKind::Outlet);
        let (outlets, others): (Vec<_>, Vec<_>) =
            loose(snapshot, part).take(MOST_LOOSE).partition(|id| is_outlet(id));
        let found = |id: SubjectId| {
            let words = Phrase::new("leads-part").phrase("part", naming::part(survey, id));
            Offer::new(&Self::Loose(id), words)
        };
        let mut offers: Vec<_> = outlets.into_iter().map(found).collect();
        offers.extend(rooms.iter().take(MOST_ROOMS).map(|room| {
            let name = naming::of_room(survey, room);
            Offer::new(&Self::Room(room.id), Phrase::new("leads-room").phrase("room", name))
        }));
        let about =
            |answer: Self| Offer::new(&answer, answer.phrase()).about(answer.phrase().attribute("about"));
        offers.push(Offer::new(&Self::Outlet, Self::Outlet.phrase()));
        let may_be = |led: &&LedTo| **led != LedTo::GroundBlock || may_ground(snapshot, part);
        offers.extend(LedTo::ALL.iter().filter(may_be).map(|led| about(Self::Part(*led))));
        offers.extend(others.into_iter().map(found));
        if may_end(survey, part) {
            offers.extend([PortEnd::Capped, PortEnd::Open].map(|end| about(Self::End(end))));
        }
        if is_shared(survey) {
            offers.push(about(Self::End(PortEnd::AnotherHome)));
        }
        let loose_end = Self::End(PortEnd::LooseEnd);
        offers.push(Offer::new(&loose_end, loose_end.phrase()));
        offers
    }

    pub(super) fn draw(
        snapshot: &SurveySnapshot<'_>,
        builder: &mut ScreenBuilder<'_>,
        part: SubjectId,
        port: u8,
    ) {
        let name = Question::LeadsTo(part, port).phrase(snapshot);
        let now = current(snapshot, part, port);
        builder.choice(&Key::Leads, &name, false, Self::offers(snapshot, part), &now);
        cautions_of_tracing(snapshot, builder);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Leads).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, part: SubjectId, port: u8) -> Answer {
        self.answer_with(&mut Tags::of(snapshot.survey), snapshot, part, port)
    }

    /// The same, one of several answers that are given at once: each new part takes a tag of its own.
    pub(super) fn answer_with(
        self,
        tags: &mut Tags<'_>,
        snapshot: &SurveySnapshot<'_>,
        part: SubjectId,
        port: u8,
    ) -> Answer {
        let child = snapshot.survey.wiring.on_port(part, port).next();
        if child.is_some() && current(snapshot, part, port) == Some(self) {
            return Answer::new();
        }
        self.answer_over(child, tags, snapshot, part, port)
    }

    /// The same where `child` is on the port, unless it has just been moved to another one.
    pub(super) fn answer_over(
        self,
        child: Option<SubjectId>,
        tags: &mut Tags<'_>,
        snapshot: &SurveySnapshot<'_>,
        part: SubjectId,
        port: u8,
    ) -> Answer {
        let (kind, room) = match self {
            Self::End(end) => return ends(snapshot, child, part, port, end),
            Self::Unsure => return ends(snapshot, child, part, port, PortEnd::LooseEnd),
            Self::Loose(loose) => {
                let answer = join(cleared(snapshot, child, part, port), loose, part, port);
                return no_guess(answer, snapshot, loose);
            }
            Self::Room(room) => (PartKind::Outlet, Some(room)),
            Self::Outlet => (PartKind::Outlet, None),
            Self::Part(led) => (led.kind(), None),
        };
        // An outlet that turns out to be in another room stays the outlet that it is.
        let there = child.and_then(|child| snapshot.survey.parts.get(&child));
        if let Some(outlet) = there.filter(|there| kind == PartKind::Outlet && there.kind == PartKind::Outlet)
        {
            return Answer::new().with(field::part::ROOM.put(outlet.id, room.as_ref()));
        }
        // A part of which nobody knew what it is stays the part that it is, once somebody does.
        if let (Some(unknown), Self::Part(led)) =
            (there.filter(|there| there.kind == PartKind::Unknown), self)
        {
            return turns_out(snapshot, unknown, led);
        }
        let (answer, id) = tags.new_part(cleared(snapshot, child, part, port), kind, room);
        if matches!(self, Self::Part(LedTo::Filter | LedTo::GroundBlock)) {
            let (answer, run) = jumper(answer);
            let feed = Feed::From(FeedFrom { part, port, run: Some(run) });
            return answer.says(id, field::part::FEED, &feed);
        }
        join(answer, id, part, port)
    }
}

impl LeadsToAnswer {
    /// An outlet that waits for its feed, or a new one in a room, on a free port; and that outlet.
    pub(super) fn outlet_on(
        self,
        tags: &mut Tags<'_>,
        snapshot: &SurveySnapshot<'_>,
        part: SubjectId,
        port: u8,
    ) -> (Answer, Option<SubjectId>) {
        let answer = cleared(snapshot, None, part, port);
        match self {
            Self::Loose(outlet) => (join(answer, outlet, part, port), Some(outlet)),
            Self::Room(room) => {
                let (answer, outlet) = tags.new_part(answer, PartKind::Outlet, Some(room));
                (join(answer, outlet, part, port), Some(outlet))
            }
            _ => (answer, None),
        }
    }
}

/// Tags that nothing carries yet, each given once.
pub(super) struct Tags<'a> {
    survey: &'a Survey,
    given: Vec<String>,
}

impl<'a> Tags<'a> {
    pub(super) fn of(survey: &'a Survey) -> Self {
        Self { survey, given: Vec::new() }
    }

    fn next(&mut self, kind: PartKind) -> String {
        let mut free = (0..).map(|skip| free_tag(self.survey, kind, skip));
        let tag = free.find(|tag| !self.given.contains(tag)).unwrap_or_default();
        self.given.push(tag.clone());
        tag
    }

    /// A part that was not there before, with a tag of its own.
    fn new_part(&mut self, answer: Answer, kind: PartKind, room: Option<SubjectId>) -> (Answer, SubjectId) {
        let id = SubjectId::random();
        let answer = answer.is(id, Is::Part).says(id, field::part::KIND, &kind);
        let answer = answer.says(id, field::part::TAG, &self.next(kind));
        let answer = match room {
            Some(room) => answer.says(id, field::part::ROOM, &room),
            None => answer,
        };
        (answer, id)
    }
}

/// A port with nothing on it.
fn ends(
    snapshot: &SurveySnapshot<'_>,
    child: Option<SubjectId>,
    part: SubjectId,
    port: u8,
    end: PortEnd,
) -> Answer {
    clear(snapshot, Answer::new(), child).with(field::END.set(part, port, &end))
}

/// A port made free for what comes next: nothing hangs on it, and nobody says any more how it ends.
pub(super) fn cleared(
    snapshot: &SurveySnapshot<'_>,
    child: Option<SubjectId>,
    part: SubjectId,
    port: u8,
) -> Answer {
    let mut answer = clear(snapshot, Answer::new(), child);
    if snapshot.survey.parts.get(&part).is_some_and(|part| part.end(port).is_some()) {
        answer.edits.push(field::END.clear(part, port));
    }
    answer
}

/// Whether a ground block may come behind a part: on the way in from the outside, where none was found before.
fn may_ground(snapshot: &SurveySnapshot<'_>, part: SubjectId) -> bool {
    let survey = snapshot.survey;
    let entry = survey.wiring.head_of(part);
    let is_entry = survey.parts.get(&entry).is_some_and(|part| part.kind == PartKind::Entry);
    let passes_on = survey.parts.get(&part).is_some_and(|part| part.outputs() == 1);
    let in_row = part == entry || survey.to_first_split(entry).contains(&part);
    is_entry && in_row && passes_on && behind(snapshot, entry, PartKind::GroundBlock).is_none()
}

/// Whether a port of a part may well have nothing on it; the chain at the entry goes on.
fn may_end(survey: &Survey, part: SubjectId) -> bool {
    survey.parts.get(&part).is_some_and(|part| {
        part.outputs() > 1
            || !matches!(part.kind, PartKind::Entry | PartKind::GroundBlock | PartKind::EntryFilter)
    })
}

/// Parts that nobody has traced to a feed and that do not feed `part` themselves.
pub(super) fn loose<'a>(
    snapshot: &SurveySnapshot<'a>,
    part: SubjectId,
) -> impl Iterator<Item = SubjectId> + 'a {
    let head = snapshot.survey.wiring.head_of(part);
    let loose = snapshot.survey.wiring.loose();
    let not_traced = move |id: &SubjectId| loose.get(id) == Some(&LooseReason::NotTraced) && *id != head;
    reading_order(snapshot.survey).into_iter().filter(not_traced)
}

/// What stands in the survey.
pub(super) fn current(snapshot: &SurveySnapshot<'_>, part: SubjectId, port: u8) -> Option<LeadsToAnswer> {
    let survey = snapshot.survey;
    if let Some(child) = survey.wiring.on_port(part, port).next() {
        let run = survey.wiring.feed(child).and_then(|feed| survey.runs.get(&feed.run?));
        let child = survey.parts.get(&child)?;
        return Some(match (child.kind, child.room) {
            (PartKind::Outlet, Some(room)) => LeadsToAnswer::Room(room),
            (PartKind::Outlet, None) => LeadsToAnswer::Outlet,
            _ => LeadsToAnswer::Part(LedTo::of_part(child, run.is_none_or(Run::is_jumper))),
        });
    }
    survey.parts.get(&part)?.end(port).map(LeadsToAnswer::End)
}

/// A part of which nobody knew what it is turns out to be of a kind; what hangs on it stays there.
fn turns_out(snapshot: &SurveySnapshot<'_>, part: &Part, led: LedTo) -> Answer {
    let answer = Answer::new().says(part.id, field::part::KIND, &led.kind());
    let run = snapshot.survey.wiring.feed(part.id).and_then(|feed| snapshot.survey.runs.get(&feed.run?));
    match run.filter(|run| led == LedTo::Filter && run.length.is_none()) {
        // Screwed straight on, it has no cable before it.
        Some(run) => answer.says(run.id, field::run::LENGTH, &jumper_length()),
        None => answer,
    }
}

/// Somebody said what feeds an outlet: where that was guessed it is no guess any more.
pub(super) fn no_guess(answer: Answer, snapshot: &SurveySnapshot<'_>, outlet: SubjectId) -> Answer {
    match snapshot.survey.reply(outlet, Asked::FedBy) {
        Some(Reply::Guessed) => answer.asked(outlet, Asked::FedBy, Reply::Yes),
        _ => answer,
    }
}

/// Feeds `child` from a port over a cable of which nothing is known yet.
pub(super) fn join(answer: Answer, child: SubjectId, part: SubjectId, port: u8) -> Answer {
    let run = SubjectId::random();
    answer.is(run, Is::Run).says(
        child,
        field::part::FEED,
        &Feed::From(FeedFrom { part, port, run: Some(run) }),
    )
}

/// A cable as short as a hand between two parts that are screwed to each other (common practice, no source).
pub(super) fn jumper(answer: Answer) -> (Answer, SubjectId) {
    let run = SubjectId::random();
    (answer.is(run, Is::Run).says(run, field::run::LENGTH, &jumper_length()), run)
}

/// Its length.
pub(super) const fn jumper_length() -> RunLength {
    RunLength { metres: 0.3, low_metres: 0.05, high_metres: 1.0, known: LengthKnown::Guessed }
}

/// Makes room on a port: what hung there and says nothing yet is removed, anything else becomes loose. Both can be
/// taken back.
fn clear(snapshot: &SurveySnapshot<'_>, mut answer: Answer, child: Option<SubjectId>) -> Answer {
    let Some(child) = child else { return answer };
    let survey = snapshot.survey;
    let says_something = survey.parts.get(&child).is_none_or(|part| {
        part.label.is_some() || part.plugged.is_some() || part.adapter.is_some() || !part.ends.is_empty()
    }) || !survey.wiring.fed_from(child).is_empty()
        || survey.photos_of(Some(child)).next().is_some()
        || survey.notes_on(Some(child)).next().is_some();
    if says_something {
        answer.edits.push(field::part::FEED.clear(child));
        return answer;
    }
    if let Some(run) = survey.wiring.feed(child).and_then(|feed| feed.run) {
        answer.edits.push(snapshot.ledger.remove(run));
    }
    answer.edits.push(snapshot.ledger.remove(child));
    answer
}
