//! Where cables come into the house: what comes in, whether it is joined, the ground block, the entry filter.

use advice::finding::Caution;
use facts::fact::SubjectId;
use house::naming;
use house::record::{Asked, EntryKind, EntryState, Feed, FeedFrom, Is, PartKind, Reply, field};
use phrase::Phrase;

use super::answer::{Answer, Told, not_answered};
use super::leads_to::{free_tag, jumper};
use crate::place::{Choice, Key, Question, choices, replies};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// What may come in, in the order in which it is offered.
    WayIn {
        /// The street's or the provider's cable.
        Cable "cable",
        /// An antenna's.
        Antenna "antenna",
        /// A dish's.
        Satellite "satellite",
        /// A box at the end of a fibre.
        FibreBox "fibre_box",
        /// A cable of which nobody knows.
        Unsure "unsure",
    }
}

impl WayIn {
    fn of_kind(kind: EntryKind) -> Self {
        Self::ALL.iter().copied().find(|way| way.kind() == kind).unwrap_or(Self::Unsure)
    }

    fn kind(self) -> EntryKind {
        match self {
            Self::Cable => EntryKind::Cable,
            Self::Antenna => EntryKind::Antenna,
            Self::Satellite => EntryKind::Satellite,
            Self::FibreBox => EntryKind::FibreBox,
            Self::Unsure => EntryKind::Unknown,
        }
    }
}

fn entries<'a>(snapshot: &SurveySnapshot<'a>) -> impl Iterator<Item = EntryKind> + use<'a> {
    let parts = snapshot.survey.parts.values();
    parts.filter(|part| part.kind == PartKind::Entry).map(|part| part.entry_kind)
}

/// What comes into the house.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct WaysInAnswer(Vec<WayIn>);

impl WaysInAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offer = |way: &WayIn| match way {
            WayIn::Unsure => Offer::unsure(way),
            way => {
                let words = Phrase::new(format!("way-in-{}", way.word()));
                let about = words.attribute("about");
                Offer::new(way, words).about(about)
            }
        };
        let offers = WayIn::ALL.iter().map(offer).collect();
        let now: Vec<_> = entries(snapshot).map(WayIn::of_kind).collect();
        builder.choice(&Key::Ways, &Phrase::new("ask-ways-in"), true, offers, &now);
        builder.caution(&Caution::HouseSideOnly.phrase());
        builder.caution(&Caution::Heights.phrase());
        builder.caution(&Caution::Fibre.phrase());
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        let picked: Vec<WayIn> = pending.picked(&Key::Ways).unwrap_or_default();
        if picked.is_empty() { Err(not_answered()) } else { Ok(Self(picked)) }
    }

    /// An entry for each kind of cable that comes in. One that is there already stays; it is removed on its own page.
    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let mut answer = Answer::new().asked(snapshot.survey.id, Asked::WaysIn, Reply::Yes);
        let there: Vec<_> = entries(snapshot).collect();
        let new = WayIn::ALL.iter().filter(|way| self.0.contains(way)).map(|way| way.kind());
        for (skip, kind) in new.filter(|kind| !there.contains(kind)).enumerate() {
            let id = SubjectId::random();
            answer = answer.is(id, Is::Part).says(id, field::part::KIND, &PartKind::Entry);
            answer = answer.says(id, field::part::ENTRY_KIND, &kind);
            answer = answer.says(id, field::part::TAG, &free_tag(snapshot.survey, PartKind::Entry, skip));
        }
        answer
    }
}

choices! {
    /// Whether an entry is joined to the world outside.
    JoinedAnswer {
        /// It is.
        Connected "connected",
        /// It is cut off.
        CutOff "cut_off",
        /// Somebody looked and could not tell.
        Unsure "unsure",
    }
}

impl JoinedAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, entry: SubjectId) {
        let state = match snapshot.survey.parts.get(&entry).map(|part| part.entry_state) {
            Some(EntryState::Connected) => Some(Self::Connected),
            Some(EntryState::CutOff) => Some(Self::CutOff),
            Some(EntryState::Unknown) | None => None,
        };
        let unsure = snapshot.survey.reply(entry, Asked::Joined).map(|_| Self::Unsure);
        let offer = |joined: &Self| match joined {
            Self::Unsure => Offer::unsure(joined),
            joined => Offer::new(joined, Phrase::new(format!("joined-{}", joined.word()))),
        };
        let offers = Self::ALL.iter().map(offer).collect();
        let now = state.or(unsure);
        builder.choice(&Key::Joined, &Question::Joined(entry).phrase(snapshot), false, offers, &now);
        builder.caution(&Caution::HouseSideOnly.phrase());
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Joined).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, entry: SubjectId) -> Answer {
        let state = match self {
            Self::Connected => EntryState::Connected,
            Self::CutOff => EntryState::CutOff,
            Self::Unsure => EntryState::Unknown,
        };
        let answer = Answer::new().says(entry, field::part::ENTRY_STATE, &state);
        if self == Self::Unsure { answer.asked(entry, Asked::Joined, Reply::Unsure) } else { answer }
    }
}

/// The first part of a kind in the chain behind a part, before anything branches.
pub(crate) fn behind(snapshot: &SurveySnapshot<'_>, part: SubjectId, kind: PartKind) -> Option<SubjectId> {
    let survey = snapshot.survey;
    survey
        .to_first_split(part)
        .into_iter()
        .find(|id| survey.parts.get(id).is_some_and(|part| part.kind == kind))
}

/// Puts a part in behind `after`; what hung there hangs on the new part from then on.
fn put_in(snapshot: &SurveySnapshot<'_>, answer: Answer, after: SubjectId, kind: PartKind) -> Answer {
    let survey = snapshot.survey;
    let id = SubjectId::random();
    let (answer, run) = jumper(answer);
    let feed = Feed::From(FeedFrom { part: after, port: 1, run: Some(run) });
    let mut answer = answer
        .is(id, Is::Part)
        .says(id, field::part::KIND, &kind)
        .says(id, field::part::FEED, &feed)
        .says(id, field::part::TAG, &free_tag(survey, kind, 0));
    for child in survey.wiring.on_port(after, 1) {
        if let Some(feed) = survey.wiring.feed(child) {
            let moved = Feed::From(FeedFrom { part: id, port: 1, run: feed.run });
            answer = answer.says(child, field::part::FEED, &moved);
        }
    }
    answer
}

replies! {
    /// Whether somebody saw such a part behind an entry.
    SeenAnswer {
        /// It is there.
        Yes = Yes,
        /// It is not.
        No = No,
        /// Somebody looked and could not tell.
        Unsure = Unsure,
    }
}

/// What was told of such a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum SeenTold {
    /// Whether it is there.
    Reply(SeenAnswer),
    /// It is this one, which was found before and of which nobody knew what it is.
    Is(SubjectId),
}

impl Choice for SeenTold {
    fn key(&self) -> String {
        match self {
            Self::Reply(reply) => reply.key(),
            Self::Is(part) => Key::Part(*part).to_string(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match Key::of(key) {
            Some(Key::Part(part)) => Some(Self::Is(part)),
            _ => SeenAnswer::of(key).map(Self::Reply),
        }
    }
}

/// Parts in the row behind an entry of which nobody knows what they are.
fn unknown_behind(snapshot: &SurveySnapshot<'_>, entry: SubjectId) -> Vec<SubjectId> {
    let is_unknown =
        |id: &SubjectId| snapshot.survey.parts.get(id).is_some_and(|part| part.kind == PartKind::Unknown);
    snapshot.survey.to_first_split(entry).into_iter().filter(is_unknown).collect()
}

/// A part that is asked about at an entry, and may be put in or taken out there.
struct Sought {
    question: Question,
    /// The question as the document has it.
    asked: Asked,
    entry: SubjectId,
    kind: PartKind,
    /// Where it goes if it is put in.
    after: SubjectId,
}

impl Sought {
    fn ground_block(entry: SubjectId) -> Self {
        let (question, asked) = (Question::GroundBlock(entry), Asked::GroundBlock);
        Self { question, asked, entry, kind: PartKind::GroundBlock, after: entry }
    }

    fn filter(snapshot: &SurveySnapshot<'_>, entry: SubjectId) -> Self {
        let after = behind(snapshot, entry, PartKind::GroundBlock).unwrap_or(entry);
        let (question, asked) = (Question::EntryFilter(entry), Asked::EntryFilter);
        Self { question, asked, entry, kind: PartKind::EntryFilter, after }
    }
}

impl SeenTold {
    pub(super) fn draw_ground_block(
        snapshot: &SurveySnapshot<'_>,
        builder: &mut ScreenBuilder<'_>,
        entry: SubjectId,
    ) {
        Self::draw(snapshot, builder, &Sought::ground_block(entry));
        builder.caution(&Caution::KeepGrounds.phrase());
        builder.caution(&Caution::HouseSideOnly.phrase());
        builder.caution(&Caution::Thunderstorm.phrase());
    }

    pub(super) fn draw_filter(
        snapshot: &SurveySnapshot<'_>,
        builder: &mut ScreenBuilder<'_>,
        entry: SubjectId,
    ) {
        Self::draw(snapshot, builder, &Sought::filter(snapshot, entry));
        builder.caution(&Caution::HouseSideOnly.phrase());
    }

    fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, sought: &Sought) {
        let there = behind(snapshot, sought.entry, sought.kind).is_some();
        let name = sought.question.name();
        let asked = snapshot.survey.reply(sought.entry, sought.asked).and_then(SeenAnswer::of_reply);
        let now = if there { Some(SeenAnswer::Yes) } else { asked }.map(Self::Reply);
        let offer = |seen: &SeenAnswer| match seen {
            SeenAnswer::Unsure => Offer::unsure(seen),
            seen => Offer::new(seen, Phrase::new(format!("{name}-{}", seen.word()))),
        };
        let mut offers: Vec<_> = SeenAnswer::ALL.iter().map(offer).collect();
        let found = unknown_behind(snapshot, sought.entry).into_iter().map(|id| {
            let words = Phrase::new("seen-is").phrase("part", naming::part(snapshot.survey, id));
            Offer::new(&Self::Is(id), words)
        });
        // Beside the plain yes.
        offers.splice(1..1, found);
        builder.choice(&Key::Seen, &sought.question.phrase(snapshot), false, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Seen).ok_or_else(not_answered)
    }

    pub(super) fn answer_ground_block(self, snapshot: &SurveySnapshot<'_>, entry: SubjectId) -> Answer {
        self.answer(snapshot, &Sought::ground_block(entry))
    }

    pub(super) fn answer_filter(self, snapshot: &SurveySnapshot<'_>, entry: SubjectId) -> Answer {
        self.answer(snapshot, &Sought::filter(snapshot, entry))
    }

    fn answer(self, snapshot: &SurveySnapshot<'_>, sought: &Sought) -> Answer {
        let there = behind(snapshot, sought.entry, sought.kind);
        let reply = match self {
            Self::Reply(reply) => reply,
            Self::Is(part) => return is_found(snapshot, sought, there, part),
        };
        let answer = Answer::new().asked(sought.entry, sought.asked, reply.reply());
        match (reply, there) {
            (SeenAnswer::Yes, None) => put_in(snapshot, answer, sought.after, sought.kind),
            (SeenAnswer::Yes, Some(_)) | (SeenAnswer::No | SeenAnswer::Unsure, None) => answer,
            (SeenAnswer::No | SeenAnswer::Unsure, Some(part)) => take_out(snapshot, answer, part),
        }
    }
}

/// The part that is asked about is one that was found before: it takes the place of one that was only said to be there.
fn is_found(
    snapshot: &SurveySnapshot<'_>,
    sought: &Sought,
    there: Option<SubjectId>,
    part: SubjectId,
) -> Answer {
    let answer = Answer::new().asked(sought.entry, sought.asked, Reply::Yes).says(
        part,
        field::part::KIND,
        &sought.kind,
    );
    match there.and_then(|id| snapshot.survey.parts.get(&id)) {
        Some(other) if other.id != part && other.label.is_none() => take_out(snapshot, answer, other.id),
        _ => answer,
    }
}

/// Takes a part out; what hung on it hangs on what fed it.
fn take_out(snapshot: &SurveySnapshot<'_>, mut answer: Answer, part: SubjectId) -> Answer {
    if let Some(feed) = snapshot.survey.wiring.feed(part) {
        for child in snapshot.survey.wiring.fed_from(part) {
            let run = snapshot.survey.wiring.feed(*child).and_then(|feed| feed.run).or(feed.run);
            let moved = Feed::From(FeedFrom { run, ..feed.clone() });
            answer = answer.says(*child, field::part::FEED, &moved);
        }
    }
    answer.edits.push(snapshot.ledger.remove(part));
    answer
}
