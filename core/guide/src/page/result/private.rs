//! Keep it private: one password on every adapter of ours, the filter in, and nobody on the wire whom we do not know.
//!
//! The password itself is never asked for and never kept: only whether it is set.

use advice::adapters::are_adapters_to_place;
use advice::finding::{FindingKind, findings};
use advice::forecast::nodes_of;
use advice::verdict::{NodesBeside, NodesTold};
use advice::{EntryFilter, NotWanted, entry_filter};
use facts::fact::{Edit, SubjectId};
use house::record::{Asked, Is, Part, PartKind, ReadingKind, ServiceKind, field};
use phrase::{Arg, Phrase};

use crate::done::Done;
use crate::error::Result;
use crate::number::Quantity;
use crate::place::{Key, Move, Place, Question, ResultPlace, replies};
use crate::question::router::bridge;
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Pending, Session, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

replies! {
    /// Whether the network's password is set.
    PasswordSet {
        /// It is.
        Yes = Yes,
        /// It is not.
        No = No,
        /// There are no adapters yet.
        None = None,
        /// Somebody looked and could not tell.
        Unsure = Unsure,
    }
}

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("private"));
    builder.words(WordsRole::Lead, &Phrase::new("private-lead"));
    builder.words(WordsRole::Why, &Phrase::new("private-why"));
    builder.words(WordsRole::How, &Phrase::new("private-how"));
    if snapshot.survey.services.values().any(|service| is_provider(service.kind)) {
        builder.words(WordsRole::Plain, &Phrase::new("private-not-theirs"));
    }
    let offer = |set: &PasswordSet| match set {
        PasswordSet::Unsure => Offer::unsure(set),
        set => Offer::new(set, Phrase::new(format!("private-{}", set.word()))),
    };
    let now =
        snapshot.survey.reply(snapshot.survey.id, Asked::PrivatePassword).and_then(PasswordSet::of_reply);
    let offers = PasswordSet::ALL.iter().map(offer).collect();
    builder.choice(&Key::Password, &Phrase::new("private-password"), false, offers, &now);
    filters(snapshot, &mut builder);
    nodes(snapshot, &mut builder);
    builder.press(&Key::Next, &Phrase::new("private-next"), PressWeight::Main);
    builder.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Other);
    builder.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    builder.screen
}

fn is_provider(kind: ServiceKind) -> bool {
    matches!(kind, ServiceKind::ProviderNetwork | ServiceKind::FibreLink)
}

fn filters(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    let entries = snapshot.survey.parts.values().filter(|part| part.kind == PartKind::Entry);
    let rows: Vec<RowEntry> = entries.take(40).map(|entry| filter_row(snapshot, builder, entry)).collect();
    builder.rows(&Phrase::new("private-filters"), rows);
}

fn filter_row(snapshot: &SurveySnapshot<'_>, builder: &ScreenBuilder<'_>, entry: &Part) -> RowEntry {
    let decided = entry_filter(snapshot.survey, entry.id);
    let seen = |id, asked| (id, Some(Key::Ask(asked)));
    let (id, key) = match decided {
        EntryFilter::NotWanted(NotWanted::CutOff) => ("private-filter-cut-off", None),
        EntryFilter::NotWanted(NotWanted::Satellite) => ("private-filter-dish", None),
        EntryFilter::NotWanted(NotWanted::FibreBox) => ("private-filter-fibre", None),
        EntryFilter::NotWanted(NotWanted::AmplifierIsolates { .. } | NotWanted::PreamplifierOutside) => {
            ("private-filter-amplifier", None)
        }
        EntryFilter::InPlace { .. } => ("private-filter-in", None),
        EntryFilter::Unread { filter } => seen("private-filter-unread", Question::Label(filter)),
        EntryFilter::Wanted { against: Some(_), .. } => ("private-filter-waits", None),
        EntryFilter::Wanted { against: None, .. } | EntryFilter::Elsewhere => {
            seen("private-filter-missing", Question::EntryFilter(entry.id))
        }
    };
    let is_in = matches!(decided, EntryFilter::InPlace { .. });
    let is_ticked = (is_in || key.is_some()).then_some(is_in);
    let name = house::naming::of_part(snapshot.survey, entry);
    let row = builder.row(key, &name, Some(&Phrase::new(id)), None);
    match is_ticked {
        Some(ticked) => row.ticked(ticked),
        None => row,
    }
}

/// How many nodes there should be, as far as is known: our adapters, and those of the provider that were counted.
fn known(snapshot: &SurveySnapshot<'_>) -> u64 {
    let theirs = snapshot.survey.services_of(ServiceKind::ProviderNetwork);
    let theirs: u64 = theirs.filter_map(|service| Some(u64::from(service.network.as_ref()?.nodes))).sum();
    nodes_of(snapshot.survey).len() as u64 + theirs
}

/// The reading of nodes seen that counts: the one at the bridge, or of the whole house.
fn seen(snapshot: &SurveySnapshot<'_>) -> Option<(SubjectId, u32)> {
    let at = bridge(snapshot).map(|part| part.id);
    snapshot.survey.readings.values().find_map(|reading| match reading.measured {
        ReadingKind::NodesSeen { count } if reading.about.is_none() || reading.about == at => {
            Some((reading.id, count))
        }
        _ => None,
    })
}

fn nodes(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    let known = known(snapshot);
    let counted = seen(snapshot).map(|(_, count)| count);
    // What is typed is judged at once: an old all-clear must not stand beside a new number.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 64")]
    let typed =
        snapshot.pending().number(&Key::Nodes, Quantity::Count).ok().flatten().map(|count| count as u32);
    let seen = typed.or(counted);
    builder.words(WordsRole::Heading, &Phrase::new("private-nodes"));
    let placed = if are_adapters_to_place(snapshot.survey) { "no" } else { "yes" };
    builder.words(
        WordsRole::How,
        &Phrase::new("private-nodes-how").with("known", Arg::Count(known)).text("placed", placed),
    );
    builder.number(
        &Key::Nodes,
        &Phrase::new("private-nodes-seen"),
        None,
        Quantity::Count,
        counted.map(f64::from),
    );
    let Some(seen) = seen else { return };
    let at = bridge(snapshot).map(|part| part.id);
    if let Some(told) = NodesTold::of(snapshot.survey, at, seen) {
        let (id, known) = match told.beside {
            NodesBeside::AsMany => ("private-nodes-same", told.known),
            NodesBeside::FewerToCome => ("private-nodes-fewer", told.known),
            NodesBeside::Fewer | NodesBeside::Alone => ("private-nodes-missing", told.there),
            NodesBeside::More => ("private-nodes-more", told.known),
            NodesBeside::MoreWithProvider => ("private-nodes-uncounted", told.known),
        };
        let words = Phrase::new(id).with("seen", Arg::Count(u64::from(seen)));
        builder.words(WordsRole::Plain, &words.with("known", Arg::Count(known as u64)));
    }
    let strangers = findings(snapshot.survey, None).into_iter().filter(|finding| {
        matches!(
            finding.kind,
            FindingKind::NodesMoreThanKnown | FindingKind::NodesFewer | FindingKind::NodeAlone
        )
    });
    for finding in strangers.take(1) {
        builder.words(WordsRole::Why, &finding.why());
        builder.words(WordsRole::How, &finding.todo());
        for caution in finding.cautions_in(snapshot.survey) {
            builder.caution(&caution.phrase());
        }
    }
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let open = session.open_survey()?;
    if open.memory.pending.keep(done) || !matches!(done, Done::Press(Key::Next)) {
        return Ok(Move::Stay);
    }
    match session.with_snapshot(edits)? {
        Err(problem) => {
            session.tell(problem);
            Ok(Move::Stay)
        }
        Ok((edits, counts)) => {
            let open = session.open_survey()?;
            open.write(&edits)?;
            open.memory.pending = Pending::default();
            // A number that does not fit is told here first.
            Ok(if counts { Move::Stay } else { Move::Go(Place::Result(ResultPlace::Tests)) })
        }
    }
}

/// What was given, and whether nodes were counted that are not as many as known.
fn edits(snapshot: &SurveySnapshot<'_>) -> std::result::Result<(Vec<Edit>, bool), Phrase> {
    let pending = snapshot.pending();
    let mut edits = Vec::new();
    if let Some(told) = pending.one::<PasswordSet>(&Key::Password) {
        edits.push(Asked::PrivatePassword.set(snapshot.survey.id, told.reply()));
    }
    let mut differs = false;
    if let Some(count) = pending.number(&Key::Nodes, Quantity::Count)? {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 64")]
        let count = count as u32;
        differs = u64::from(count) != known(snapshot);
        let before = seen(snapshot);
        let reading = before.map_or_else(SubjectId::random, |(reading, _)| reading);
        if before.map(|(_, count)| count) != Some(count) {
            let measured = ReadingKind::NodesSeen { count };
            edits.push(Is::Reading.begin(reading));
            edits.push(field::reading::MEASURED.set(reading, &measured));
            if let Some(bridge) = bridge(snapshot) {
                edits.push(field::reading::ABOUT.set(reading, &bridge.id));
            }
        }
    }
    Ok((edits, differs))
}
