//! What a survey leaves open, and whether it matters for what gets through.

use std::cmp::Ordering;
use std::collections::BTreeMap;

use facts::fact::SubjectId;
use house::naming;
use house::rating::EXTENDED_D;
use house::record::{CableKind, EntryState, LengthKnown, Part, PartKind, PortEnd, Survey, reading_order};
use house::story::field_name;
use indexmap::IndexSet;
use phrase::{Arg, Phrase};

use crate::forecast::{CostAt, Forecast, Reach, WeakWay};
use crate::suspect::Suspects;

/// Why an unknown matters, what matters most first.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Matters {
    /// It lies on the way to these outlets, the tests of which failed.
    OnFailedWay(Vec<SubjectId>),
    /// It lies on the way to the weakest room.
    Weakest,
    /// It lies on the way to these outlets.
    OnWayTo(Vec<SubjectId>),
    /// It may be what joins a room to the rest.
    MayBeMissingLink,
    /// Signals may leave the house there.
    MayLeak,
    /// It may be a filter that lets signals leave the house.
    MayPass,
    /// Its echo reaches a way.
    Echo,
    /// It changes no forecast.
    Little,
}

/// Something not known.
#[derive(Debug, Clone, PartialEq)]
pub struct Unknown {
    /// Which part it is about (for a run, the part that it feeds).
    pub about: SubjectId,
    /// Where, in words.
    pub place: Phrase,
    /// What.
    pub what: Phrase,
    /// Why it matters.
    pub matters: Matters,
}

impl Unknown {
    /// Whether it may be why a test failed.
    pub const fn is_on_failed_way(&self) -> bool {
        matches!(self.matters, Matters::OnFailedWay(_))
    }
}

/// Everything that a survey leaves open, what matters most first, then in the order of the map.
pub fn unknowns(survey: &Survey, forecast: &Forecast) -> Vec<Unknown> {
    let mut search = Search { survey, ways: Ways::of(survey, forecast), found: Vec::new() };
    for id in reading_order(survey) {
        if let Some(part) = survey.parts.get(&id) {
            search.look_at_feed(part);
            search.look_at_part(part);
            search.look_at_ends(part);
        }
    }
    let unread = survey.unread.iter().map(|told| ("unknown-field", told));
    let impossible = survey.impossible.iter().map(|told| ("unknown-impossible", told));
    for (message, (subject, field)) in unread.chain(impossible) {
        let what = Phrase::new(message).phrase("field", field_name(field));
        search.add(*subject, naming::thing(survey, *subject), what, Matters::Little);
    }
    let mut found = search.found;
    // On ways to failed tests what is most likely at fault comes first; sorting keeps the order of equals.
    found.sort_by(|(a, weight_a), (b, weight_b)| match (&a.matters, &b.matters) {
        (Matters::OnFailedWay(_), Matters::OnFailedWay(_)) => weight_b.total_cmp(weight_a),
        (Matters::OnWayTo(_), Matters::OnWayTo(_)) => Ordering::Equal,
        (one, other) => one.cmp(other),
    });
    found.into_iter().map(|(unknown, _)| unknown).collect()
}

/// Which parts and runs lie on the way to which outlets.
struct Ways<'a> {
    weak: Option<WeakWay>,
    through: BTreeMap<SubjectId, IndexSet<SubjectId>>,
    suspects: Suspects<'a>,
}

impl<'a> Ways<'a> {
    fn of(survey: &'a Survey, forecast: &Forecast) -> Self {
        let mut through: BTreeMap<SubjectId, IndexSet<SubjectId>> = BTreeMap::new();
        let outlets = forecast.rooms.iter().filter(|room| matches!(room.reach, Reach::Estimated(_)));
        for outlet in outlets.map(|room| room.outlet) {
            let way = forecast.bridge.and_then(|bridge| survey.wiring.way_between(bridge, outlet));
            for part in way.unwrap_or_default() {
                through.entry(part).or_default().insert(outlet);
            }
        }
        let suspects = Suspects::of(survey, forecast);
        Self { weak: WeakWay::of(survey, forecast), through, suspects }
    }

    /// The failed tests over a place that no other room's test clears, and how likely it is at fault.
    fn failed(&self, at: CostAt) -> Option<(Matters, f64)> {
        let outlets: Vec<_> = self.suspects.failed_over(at).collect();
        let suspect =
            self.suspects.weighed(at).filter(|suspect| !suspect.is_cleared && !outlets.is_empty())?;
        Some((Matters::OnFailedWay(outlets), suspect.weight))
    }

    fn through(&self, part: SubjectId) -> Option<Matters> {
        if self.weak.as_ref().is_some_and(|weak| weak.passes(part)) {
            return Some(Matters::Weakest);
        }
        self.through.get(&part).map(|outlets| Matters::OnWayTo(outlets.iter().copied().collect()))
    }

    /// The same for the run that feeds a part: it lies on the ways that pass both its ends.
    fn through_run_to(&self, part: SubjectId, feeder: SubjectId) -> Option<Matters> {
        if self.weak.as_ref().is_some_and(|weak| weak.passes_run_to(part)) {
            return Some(Matters::Weakest);
        }
        let (near, far) = (self.through.get(&feeder)?, self.through.get(&part)?);
        let both: Vec<_> = near.intersection(far).copied().collect();
        (!both.is_empty()).then_some(Matters::OnWayTo(both))
    }
}

struct Search<'a> {
    survey: &'a Survey,
    ways: Ways<'a>,
    /// What was found, with how likely it is at fault where a test over it failed.
    found: Vec<(Unknown, f64)>,
}

impl Search<'_> {
    fn add(&mut self, about: SubjectId, place: Phrase, what: Phrase, matters: Matters) {
        self.found.push((Unknown { about, place, what, matters }, 0.0));
    }

    /// The same, where the test of a room over that place may have failed.
    fn add_at(&mut self, at: CostAt, place: Phrase, what: Phrase, otherwise: Matters) {
        let (CostAt::Part(about) | CostAt::RunTo(about)) = at;
        let (matters, weight) = self.ways.failed(at).unwrap_or((otherwise, 0.0));
        self.found.push((Unknown { about, place, what, matters }, weight));
    }

    fn add_about(&mut self, part: &Part, what: Phrase, otherwise: Matters) {
        let matters = self.ways.through(part.id).unwrap_or(otherwise);
        self.add_at(CostAt::Part(part.id), naming::of_part(self.survey, part), what, matters);
    }

    /// What is left open of an echo: it counts where the part that it is next to lies on a way.
    fn echo(&self, part: SubjectId) -> Matters {
        let near = [Some(part), self.survey.wiring.feed(part).map(|feed| feed.part)];
        let reaches = near.into_iter().flatten().any(|id| self.ways.through(id).is_some());
        if reaches { Matters::Echo } else { Matters::Little }
    }

    fn look_at_part(&mut self, part: &Part) {
        if self.survey.wiring.loose().contains_key(&part.id) {
            self.add_about(part, Phrase::new("unknown-loose"), Matters::MayBeMissingLink);
        }
        let rated = &part.rating;
        if part.kind == PartKind::Amplifier
            && rated.by_pass().is_none()
            && part.measured_over(EXTENDED_D).is_none()
        {
            self.add_about(part, Phrase::new("unknown-bypass"), Matters::Little);
        }
        match part.kind {
            PartKind::Unknown => self.add_about(part, Phrase::new("unknown-kind"), Matters::Little),
            PartKind::Entry if part.entry_state == EntryState::Unknown => {
                self.add_about(part, Phrase::new("unknown-entry"), Matters::MayLeak);
            }
            PartKind::Outlet if part.plugged.is_none() && part.adapter.is_none() => {
                let echo = self.echo(part.id);
                self.add_about(part, Phrase::new("unknown-plugged"), echo);
            }
            PartKind::Splitter | PartKind::Tap | PartKind::Amplifier | PartKind::EntryFilter
                if part.measured.is_none() =>
            {
                // What leaves the house hangs on a filter's band.
                let is_filter = part.is_entry_filter() && rated.stops_moca().is_none();
                let echo = if is_filter { Matters::MayPass } else { self.echo(part.id) };
                if rated.doubtful {
                    self.add_about(part, Phrase::new("unknown-doubtful"), echo);
                } else if part.label.is_none()
                    && rated.band.is_none()
                    && rated.stop_band.is_none()
                    && !rated.says_moca
                {
                    self.add_about(part, Phrase::new("unknown-label"), echo);
                } else if rated.band.is_none() && rated.stop_band.is_none() && !rated.says_moca {
                    self.add_about(part, Phrase::new("unknown-band"), echo);
                }
            }
            _ => {}
        }
    }

    fn look_at_feed(&mut self, part: &Part) {
        let Some(feed) = self.survey.wiring.feed(part.id) else { return };
        let matters = self.ways.through_run_to(part.id, feed.part).unwrap_or_else(|| self.echo(part.id));
        let place = naming::run_to(self.survey, part.id);
        let Some(run) = feed.run.and_then(|run| self.survey.runs.get(&run)) else {
            self.add_at(CostAt::RunTo(part.id), place, Phrase::new("unknown-run"), matters);
            return;
        };
        if run.is_jumper() {
            return;
        }
        match run.length {
            None => self.add_at(
                CostAt::RunTo(part.id),
                place.clone(),
                Phrase::new("unknown-length"),
                matters.clone(),
            ),
            Some(length) if length.known == LengthKnown::Guessed => {
                let what =
                    Phrase::new("unknown-length-guessed").with("length", Arg::LengthRange(length.span()));
                self.add_at(CostAt::RunTo(part.id), place.clone(), what, matters.clone());
            }
            Some(_) => {}
        }
        if run.cable == CableKind::Unknown {
            self.add_at(CostAt::RunTo(part.id), place, Phrase::new("unknown-cable"), matters);
        }
    }

    fn look_at_ends(&mut self, part: &Part) {
        let free = |port: &u8| self.survey.wiring.on_port(part.id, *port).next().is_none();
        let ports: Vec<_> = (1..=part.outputs()).filter(free).collect();
        let unseen = ports.iter().filter(|port| part.end(**port).is_none()).count();
        let on_way = self.ways.through(part.id).is_some();
        let matters = if on_way { Matters::Echo } else { Matters::Little };
        let place = naming::of_part(self.survey, part);
        let guessed: Vec<_> = (1..=part.outputs())
            .flat_map(|port| self.survey.wiring.on_port(part.id, port))
            .filter(|child| self.survey.is_feed_guessed(*child))
            .map(|child| Arg::Phrase(Box::new(naming::part(self.survey, child))))
            .collect();
        if !guessed.is_empty() {
            let what = Phrase::new("unknown-order").with("outlets", Arg::Several(guessed));
            self.add(part.id, place.clone(), what, Matters::Little);
        }
        if unseen > 0 {
            let what = Phrase::new("unknown-end").with("ports", Arg::Count(unseen as u64));
            self.add(part.id, place.clone(), what, matters);
        }
        for port in ports.into_iter().filter(|port| part.end(*port) == Some(PortEnd::LooseEnd)) {
            let what = naming::with_port(Phrase::new("unknown-loose-end"), Some(part), port);
            self.add(part.id, place.clone(), what, Matters::MayBeMissingLink);
        }
    }
}
