//! In which round a question is asked, and what comes before what within it.

use std::cmp::Reverse;

use house::record::PartKind;
use phrase::{Arg, Phrase};

use super::journey::{OnTheWay, journey};
use crate::place::{Question, Round, Stage};
use crate::session::SurveySnapshot;
use crate::view::shown;

/// What comes next.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Onward {
    /// A question.
    Ask(Question),
    /// Enough is asked for what a round stands for: nobody said yet that they want to go on.
    Enough(Round),
    /// Nothing is open.
    Done,
}

/// The first question that is neither answered nor put off, by round; or the end of a round before it.
pub(crate) fn onward(snapshot: &SurveySnapshot<'_>) -> Onward {
    let Some(first) = first(snapshot) else { return Onward::Done };
    match before(first.round).filter(|ended| snapshot.memory.asked_on.is_none_or(|on| on < *ended)) {
        Some(ended) => Onward::Enough(ended),
        None => Onward::Ask(first.question),
    }
}

/// The round in which the next question is; `None` where nothing is open.
pub(crate) fn round_of_next(snapshot: &SurveySnapshot<'_>) -> Option<Round> {
    first(snapshot).map(|on_way| on_way.round)
}

/// The first question that is neither answered nor put off.
fn first(snapshot: &SurveySnapshot<'_>) -> Option<OnTheWay> {
    let open = |on_way: &OnTheWay| !on_way.answered && !snapshot.memory.later.contains(&on_way.question);
    journey(snapshot).into_iter().filter(open).min_by_key(|on_way| order(snapshot, on_way))
}

/// The round before one.
fn before(round: Round) -> Option<Round> {
    Round::ALL.into_iter().take_while(|earlier| *earlier < round).last()
}

/// What comes before what: by round; in it what may be at risk first, then what makes a rate most unsure, then the order of the
/// wiring.
fn order(snapshot: &SurveySnapshot<'_>, on_way: &OnTheWay) -> (Round, u8, Reverse<u64>) {
    let place = match (on_way.round, &on_way.question) {
        (Round::Worth, question) if is_of_entry(question) => 0,
        (Round::Worth, question) if is_risk(question) => 1,
        _ => 2,
    };
    let unsure = snapshot.memory.stakes.unsure(&on_way.question).filter(|_| on_way.round == Round::Worth);
    // As many whole Mb/s as are told apart.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a rate, Mb/s")]
    let mbps = unsure.map_or(0, |(_, mbps)| mbps.max(0.0) as u64);
    (on_way.round, place, Reverse(mbps))
}

/// The round of a question.
pub(super) fn round(snapshot: &SurveySnapshot<'_>, question: &Question, answered: bool) -> Round {
    // What was worked out to change little comes last; what was answered stays where it was.
    let by_stake = || match snapshot.memory.stakes.is_worth(question) {
        Some(false) if !answered => Round::Rest,
        _ => Round::Worth,
    };
    let kind = |part| snapshot.survey.parts.get(part).map(|part| part.kind);
    match question {
        Question::Whose
        | Question::Depends
        | Question::Rooms
        | Question::Wish(_)
        | Question::WishOther(_)
        | Question::WaysIn
        | Question::LeadsTo(..)
        | Question::Outputs(_)
        | Question::Legs(_)
        | Question::ByPass(_)
        | Question::Powered(_)
        | Question::FedBy(_)
        | Question::RoomOf(_)
        | Question::Adapters
        | Question::RouterAt => Round::Forecast,
        // A print tells how many outputs there are, and what a part is of which nobody knows.
        Question::Label(part) => match kind(part) {
            Some(PartKind::Splitter | PartKind::Tap | PartKind::Amplifier | PartKind::Unknown) => {
                Round::Forecast
            }
            // What leaves the house hangs on its band.
            Some(PartKind::EntryFilter) => Round::Worth,
            _ => by_stake(),
        },
        Question::LabelRead(_) | Question::Cable(_) => by_stake(),
        Question::Uses
        | Question::ModemAge
        | Question::Joined(_)
        | Question::GroundBlock(_)
        | Question::EntryFilter(_)
        | Question::Plugged(_)
        | Question::DropsOut
        | Question::RouterSpeaks
        | Question::Ports
        | Question::Connectors
        | Question::ConnectorsOf(_)
        | Question::Marks(_) => Round::Worth,
        Question::Plan | Question::MoreOutlets => Round::Rest,
    }
}

/// Why a question is asked here and now, as far as that is more than what it says itself. How unsure it leaves a
/// room is told as on the screen of what is not known.
pub(crate) fn reason(snapshot: &SurveySnapshot<'_>, question: &Question) -> Option<Phrase> {
    let stakes = &snapshot.memory.stakes;
    match (stakes.is_worth(question), stakes.unsure(question)) {
        (Some(true), Some((outlet, mbps))) => {
            let room = shown::outlet(snapshot.survey, outlet);
            return Some(Phrase::new("worth-stake").phrase("room", room).with("rate", Arg::Rate(mbps)));
        }
        (Some(false), _)
            if !is_of_entry(question)
                && !is_risk(question)
                && round(snapshot, question, false) != Round::Forecast =>
        {
            return Some(Phrase::new("worth-little"));
        }
        _ => {}
    }
    // What may be at risk, or be disturbed, each such question says itself; and so do that of the sockets and the one
    // whether a label was read right.
    let says_itself = is_of_entry(question)
        || is_risk(question)
        || matches!(question, Question::Ports | Question::LabelRead(_));
    match round(snapshot, question, false) {
        Round::Worth if !says_itself && !is_repeated(snapshot, question) => {
            Some(Phrase::new("reason-not-weighed"))
        }
        _ => None,
    }
}

/// Whether another question of the same kind was answered before: its reason was read there.
fn is_repeated(snapshot: &SurveySnapshot<'_>, question: &Question) -> bool {
    let alike = |on_way: &OnTheWay| on_way.answered && on_way.question.name() == question.name();
    journey(snapshot).iter().any(alike)
}

/// Whether something is at risk while nobody knows: what leaves the house, what comes in.
fn is_of_entry(question: &Question) -> bool {
    question.stage() == Stage::WayIn
}

/// Whether something may be harmed or disturbed while nobody knows.
fn is_risk(question: &Question) -> bool {
    matches!(
        question,
        Question::Uses
            | Question::ModemAge
            | Question::Plugged(_)
            | Question::DropsOut
            | Question::RouterSpeaks
            | Question::Connectors
            | Question::ConnectorsOf(_)
    )
}

#[cfg(test)]
mod tests {
    use facts::fact::SubjectId;
    use house::record::{
        Asked, EntryKind, Feed, FeedFrom, Is, LengthKnown, PartKind, Reply, RunLength, field,
    };

    use super::*;
    use crate::done::Done;
    use crate::place::{Choice, Key};
    use crate::session::InMemory;

    /// A way in, and what its cable leads to first.
    fn entry_to(house: &mut InMemory, leads: &str) -> SubjectId {
        let entry = SubjectId::random();
        house.write(&[
            Is::Part.begin(entry),
            field::part::KIND.set(entry, &PartKind::Entry),
            field::part::ENTRY_KIND.set(entry, &EntryKind::Cable),
        ]);
        house.give(&Done::Pick(Key::Leads, vec![leads.into()]));
        let answer = Question::LeadsTo(entry, 1).take(&house.snapshot()).unwrap();
        house.write(&answer.edits);
        entry
    }

    fn asked(house: &InMemory) -> Vec<Question> {
        journey(&house.snapshot())
            .into_iter()
            .filter(|on_way| !on_way.answered)
            .map(|on_way| on_way.question)
            .collect()
    }

    fn cables(house: &InMemory) -> usize {
        asked(house).iter().filter(|question| matches!(question, Question::Cable(_))).count()
    }

    #[test]
    fn a_filter_that_is_screwed_straight_on_has_no_cable() {
        let mut house = InMemory::new();
        let entry = entry_to(&mut house, "filter");
        assert_eq!(cables(&house), 0);
        // It is the entry filter that would be asked for, and it is asked what comes behind it.
        assert!(!asked(&house).contains(&Question::EntryFilter(entry)));
        let filter = house.snapshot().survey.wiring.on_port(entry, 1).next().unwrap();
        assert!(asked(&house).contains(&Question::LeadsTo(filter, 1)));
        let mut house = InMemory::new();
        entry_to(&mut house, "filter-behind-cable");
        assert_eq!(cables(&house), 1);
    }

    #[test]
    fn an_amplifier_is_asked_for_its_way_round_and_its_power_before_what_hangs_on_it() {
        let mut house = InMemory::new();
        let entry = entry_to(&mut house, "amplifier");
        let amplifier = house.snapshot().survey.wiring.on_port(entry, 1).next().unwrap();
        let asked = asked(&house);
        let at = |question: &Question| asked.iter().position(|one| one == question).unwrap();
        let behind = at(&Question::LeadsTo(amplifier, 1));
        assert!(at(&Question::ByPass(amplifier)) < behind && at(&Question::Powered(amplifier)) < behind);
    }

    #[test]
    fn what_was_answered_of_all_cables_by_an_earlier_guide_counts() {
        let mut house = InMemory::new();
        let entry = entry_to(&mut house, "splitter");
        let splitter = house.snapshot().survey.wiring.on_port(entry, 1).next().unwrap();
        let run = house.snapshot().survey.wiring.feed(splitter).unwrap().run.unwrap();
        let survey = house.snapshot().survey.id;
        house.write(&[Asked::Cables.set(survey, Reply::Unsure)]);
        assert_eq!(cables(&house), 1, "its length is open");
        house.write(&[field::run::LENGTH.set(run, &RunLength::stated(7.0, LengthKnown::Paced))]);
        assert_eq!(cables(&house), 0);
        // Where they differ, each is asked about as before.
        house.write(&[Asked::Cables.set(survey, Reply::Differ)]);
        assert_eq!(cables(&house), 1);
    }

    #[test]
    fn one_answer_tells_of_all_other_cables_and_one_of_none_of_them() {
        let mut house = InMemory::new();
        let entry = entry_to(&mut house, "splitter");
        let splitter = house.snapshot().survey.wiring.on_port(entry, 1).next().unwrap();
        for port in 1..=2 {
            let (outlet, run) = (SubjectId::random(), SubjectId::random());
            let feed = Feed::From(FeedFrom { part: splitter, port, run: Some(run) });
            house.write(&[
                Is::Run.begin(run),
                Is::Part.begin(outlet),
                field::part::KIND.set(outlet, &PartKind::Outlet),
                field::part::FEED.set(outlet, &feed),
            ]);
        }
        assert_eq!(cables(&house), 3);
        let run = house.snapshot().survey.wiring.feed(splitter).unwrap().run.unwrap();
        let question = Question::Cable(run);
        house.give(&Done::Pick(Key::Series, vec!["unsure".into()]));
        let told = question.take_at_once(&house.snapshot(), &Key::OthersToo).unwrap().unwrap();
        let mut nobody_knows = house;
        nobody_knows.write(&told.edits);
        assert_eq!(cables(&nobody_knows), 0, "neither kind nor length of any");
        let told = nobody_knows.snapshot().survey.runs[&run].clone();
        assert_eq!((told.length, told.cable.key()), (None, "unknown".into()));
    }

    #[test]
    fn all_outputs_are_told_at_once_and_what_was_not_is_asked_for() {
        let mut house = InMemory::new();
        let entry = entry_to(&mut house, "splitter");
        let splitter = house.snapshot().survey.wiring.on_port(entry, 1).next().unwrap();
        let question = Question::Outputs(splitter);
        house.give(&Done::Pick(Key::PortHere(1), vec!["splitter".into()]));
        assert!(question.take(&house.snapshot()).is_err());
        let told = question.take_at_once(&house.snapshot(), &Key::OthersOpen).unwrap().unwrap();
        house.write(&told.edits);
        let survey = house.snapshot().survey;
        let below = survey.wiring.on_port(splitter, 1).next().unwrap();
        assert_eq!(survey.parts[&below].tag.as_deref(), Some("S2"));
        assert_eq!(survey.parts[&splitter].end(2), Some(house::record::PortEnd::Open));
    }
}
