//! Keep it private: one password on every adapter of ours, the filter in, and nobody on the wire whom we do not know.
//!
//! The password itself is never asked for and never kept: only whether it is set.

use advice::finding::{FindingKind, findings};
use advice::forecast::nodes_of;
use advice::worklist::are_adapters_placed;
use facts::fact::{Edit, SubjectId, value_of};
use house::record::{EntryKind, EntryState, Part, PartKind, ReadingKind, ServiceKind, field};
use phrase::{Arg, Phrase};
use serde_json::json;

use crate::done::Done;
use crate::error::Result;
use crate::number::Quantity;
use crate::place::{Choice, Key, Move, Place, Question, ResultPlace, choices};
use crate::question::entry::behind;
use crate::question::router::bridge;
use crate::screen::{PressWeight, RowEntry, Screen, WordsRole};
use crate::session::{Pending, Scene, Session};
use crate::view::{Offer, Sketch, stages};

choices! {
    /// Whether the network's password is set.
    PasswordSet {
        /// It is.
        Yes "yes",
        /// It is not.
        No "no",
        /// There are no adapters yet.
        None "none",
        /// Somebody looked and could not tell.
        Unsure "unsure",
    }
}

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("private"));
    sketch.words(WordsRole::Lead, &Phrase::new("private-lead"));
    sketch.words(WordsRole::Why, &Phrase::new("private-why"));
    sketch.words(WordsRole::How, &Phrase::new("private-how"));
    if scene.survey.services.values().any(|service| is_provider(service.kind)) {
        sketch.words(WordsRole::Plain, &Phrase::new("private-not-theirs"));
    }
    let offer = |set: &PasswordSet| match set {
        PasswordSet::Unsure => Offer::unsure(set),
        set => Offer::new(set, Phrase::new(format!("private-{}", set.word()))),
    };
    let asked = scene.survey.answer(scene.survey.id, stages::PASSWORD_SET);
    let now = asked.and_then(|answer| PasswordSet::of(answer.as_str()?));
    let offers = PasswordSet::ALL.iter().map(offer).collect();
    sketch.choice(&Key::Password, &Phrase::new("private-password"), false, offers, &now);
    filters(scene, &mut sketch);
    nodes(scene, &mut sketch);
    sketch.press(&Key::Next, &Phrase::new("private-next"), PressWeight::Main);
    sketch.press(&Key::Work, &Phrase::new("to-work"), PressWeight::Other);
    sketch.press(&Key::Overview, &Phrase::new("to-overview"), PressWeight::Quiet);
    sketch.screen
}

fn is_provider(kind: ServiceKind) -> bool {
    matches!(kind, ServiceKind::ProviderNetwork | ServiceKind::FibreLink)
}

fn filters(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let entries = scene.survey.parts.values().filter(|part| part.kind == PartKind::Entry);
    let rows: Vec<RowEntry> = entries.take(40).map(|entry| filter_row(scene, sketch, entry)).collect();
    sketch.rows(&Phrase::new("private-filters"), rows);
}

fn filter_row(scene: &Scene<'_>, sketch: &Sketch<'_>, entry: &Part) -> RowEntry {
    let filtered = behind(scene, entry.id, PartKind::EntryFilter).is_some();
    let (id, asks) = match (entry.entry_state, entry.entry_kind) {
        (EntryState::CutOff, _) => ("private-filter-cut-off", false),
        (_, EntryKind::Satellite) => ("private-filter-dish", false),
        (_, EntryKind::FibreBox) => ("private-filter-fibre", false),
        _ if filtered => ("private-filter-in", false),
        _ => ("private-filter-missing", true),
    };
    let key = asks.then_some(Key::Ask(Question::EntryFilter(entry.id)));
    let name = house::naming::of_part(scene.survey, entry);
    let row = sketch.row(key, &name, Some(&Phrase::new(id)), None);
    if asks || filtered { row.ticked(!asks) } else { row }
}

/// How many nodes there should be, as far as is known: our adapters, and those of the provider that were counted.
fn known(scene: &Scene<'_>) -> u64 {
    let theirs = scene.survey.services_of(ServiceKind::ProviderNetwork);
    let theirs: u64 = theirs.filter_map(|service| Some(u64::from(service.network.as_ref()?.nodes))).sum();
    nodes_of(scene.survey).len() as u64 + theirs
}

/// The reading of nodes seen that counts: the one at the bridge, or of the whole house.
fn seen(scene: &Scene<'_>) -> Option<(SubjectId, u32)> {
    let at = bridge(scene).map(|part| part.id);
    scene.survey.readings.values().find_map(|reading| match reading.measured {
        ReadingKind::NodesSeen { count } if reading.about.is_none() || reading.about == at => {
            Some((reading.id, count))
        }
        _ => None,
    })
}

fn nodes(scene: &Scene<'_>, sketch: &mut Sketch<'_>) {
    let known = known(scene);
    let counted = seen(scene).map(|(_, count)| count);
    // What is typed is judged at once: an old all-clear must not stand beside a new number.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 64")]
    let typed = scene.pending().number(&Key::Nodes, Quantity::Count).ok().flatten().map(|count| count as u32);
    let seen = typed.or(counted);
    sketch.words(WordsRole::Heading, &Phrase::new("private-nodes"));
    let placed = if are_adapters_placed(scene.survey) { "yes" } else { "no" };
    sketch.words(
        WordsRole::How,
        &Phrase::new("private-nodes-how").with("known", Arg::Count(known)).text("placed", placed),
    );
    sketch.number(
        &Key::Nodes,
        &Phrase::new("private-nodes-seen"),
        None,
        Quantity::Count,
        counted.map(f64::from),
    );
    let Some(seen) = seen else { return };
    let told = match u64::from(seen).cmp(&known) {
        std::cmp::Ordering::Equal => "private-nodes-same",
        std::cmp::Ordering::Less => "private-nodes-fewer",
        std::cmp::Ordering::Greater => "private-nodes-more",
    };
    let told = Phrase::new(told).with("seen", Arg::Count(u64::from(seen)));
    sketch.words(WordsRole::Plain, &told.with("known", Arg::Count(known)));
    let strangers = findings(scene.survey, None)
        .into_iter()
        .filter(|finding| matches!(finding.kind, FindingKind::NodesMoreThanKnown | FindingKind::NodeAlone));
    for finding in strangers.take(1) {
        sketch.words(WordsRole::Why, &finding.why());
        sketch.words(WordsRole::How, &finding.todo());
        for caution in finding.cautions() {
            sketch.caution(&caution.phrase());
        }
    }
}

pub(crate) fn take(session: &mut Session, done: &Done) -> Result<Move> {
    let open = session.open_survey()?;
    if open.memory.pending.keep(done) || !matches!(done, Done::Press(Key::Next)) {
        return Ok(Move::Stay);
    }
    match session.with_scene(edits)? {
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
fn edits(scene: &Scene<'_>) -> std::result::Result<(Vec<Edit>, bool), Phrase> {
    let pending = scene.pending();
    let mut edits = Vec::new();
    if let Some(told) = pending.one::<PasswordSet>(&Key::Password) {
        edits.push(Edit::new(scene.survey.id, field::asked_field(stages::PASSWORD_SET), told.word()));
    }
    let mut differs = false;
    if let Some(count) = pending.number(&Key::Nodes, Quantity::Count)? {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 64")]
        let count = count as u32;
        differs = u64::from(count) != known(scene);
        let before = seen(scene);
        let reading = before.map_or_else(SubjectId::random, |(reading, _)| reading);
        if before.map(|(_, count)| count) != Some(count) {
            let measured = value_of(&ReadingKind::NodesSeen { count });
            let measured = measured.map_err(|_| Phrase::new("number-not-whole"))?;
            edits.push(Edit::new(reading, field::IS, "reading"));
            edits.push(Edit::new(reading, field::MEASURED, measured));
            if let Some(bridge) = bridge(scene) {
                edits.push(Edit::new(reading, field::ABOUT, json!(bridge.id)));
            }
        }
    }
    Ok((edits, differs))
}
