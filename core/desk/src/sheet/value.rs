//! One value of one thing, in the words of a sheet: read and checked as the sheet is.
//!
//! A small sheet is written around it, of the things beside which it has to stand: the parts with what feeds them, the rooms.
//! What the sheet's reader then has against the value is told in the reader's own words; what it had against the survey
//! already, without the value, is no matter here.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;

use facts::fact::{Edit, Ledger, SubjectId};
use house::rating::PartRating;
use house::record::{Feed, FeedFrom, Is, Named as _, Part, PartKind, Survey, field};
use serde_json::{Map, Value};

use super::draft::Sheet;
use super::edits::id_of;
use super::fields::{Becomes, Field, Kind, Written};
use super::known::Known;
use super::onto::{Called, feed_of, name_anew};
use super::problem::ValueFault;

/// What a field is to say.
#[derive(Debug, Clone, Copy)]
pub enum Says<'a> {
    /// This, in a sheet's words.
    Value(&'a str),
    /// Nothing is known.
    NotKnown,
}

/// What of a survey a value is set in.
pub struct Among<'a> {
    /// The records.
    pub survey: &'a Survey,
    /// The facts.
    pub ledger: &'a Ledger,
    /// Where a Touchstone file may lie.
    pub folder: &'a Path,
}

/// The edits that have fields of a thing say this.
///
/// # Errors
/// [`ValueFault`], with the name of the field that it is about; nothing is to be written then.
pub fn edits(
    among: &Among<'_>,
    subject: SubjectId,
    told: &[(&str, Says<'_>)],
) -> Result<Vec<Edit>, (String, ValueFault)> {
    let names = || told.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ");
    let kind = Kind::of(among.survey, subject);
    let kind = kind.ok_or_else(|| (names(), ValueFault::NoField { known: Vec::new() }))?;
    let (mut edits, mut said, mut lines) = (Vec::new(), Vec::new(), String::new());
    for (name, says) in told {
        let fault = |fault| ((*name).to_owned(), fault);
        let named = Field::named(kind, name);
        let (field, port) = named.ok_or_else(|| fault(ValueFault::NoField { known: kind.names() }))?;
        match says {
            Says::NotKnown => edits.extend(among.emptied(subject, field, port).map_err(fault)?),
            Says::Value(value) if field.is_name() && among.is_taken(subject, value) => {
                return Err(fault(ValueFault::Taken));
            }
            Says::Value(value) => {
                lines.push_str(&field.line(value, port));
                said.push(field);
            }
        }
    }
    if said.is_empty() {
        return Ok(edits);
    }
    let mut called = Called::all(among.survey);
    let before =
        super::read_all(among.text(kind, subject, &called, "").as_bytes(), None, &Known::default()).1;
    // What it feeds names it by the new tag.
    let tag = told.iter().find_map(|(name, says)| match says {
        Says::Value(tag) if kind == Kind::Part && *name == "tag" => Some(*tag),
        _ => None,
    });
    if let Some(tag) = tag {
        called = called.renamed(subject, tag);
    }
    let (sheet, problems) = super::read_all(
        among.text(kind, subject, &called, &lines).as_bytes(),
        Some(among.folder),
        &Known::default(),
    );
    let new = problems.without(&before);
    let (Some(sheet), true) = (sheet, new.is_empty()) else {
        return Err((names(), ValueFault::Problems(new)));
    };
    let mut rated: Vec<&'static str> = Vec::new();
    for field in said {
        if let Becomes::Rating(member) = field.becomes {
            rated.push(member);
            continue;
        }
        let read = among.read_off(&sheet, kind, subject, field, &called);
        edits.extend(read.map_err(|fault| (field.name.to_owned(), fault))?);
    }
    if !rated.is_empty() {
        edits.push(among.rating_with(&edits, &sheet, subject, &called, &rated));
    }
    Ok(edits)
}

impl Among<'_> {
    /// Whether a tag or a room's name is something else's.
    fn is_taken(&self, subject: SubjectId, name: &str) -> bool {
        let survey = self.survey;
        let is = |other: &Option<String>, id: SubjectId| id != subject && other.as_deref() == Some(name);
        if survey.rooms.contains_key(&subject) {
            return survey.rooms.values().any(|room| room.id != subject && room.name == name);
        }
        survey.parts.values().any(|part| is(&part.tag, part.id))
            || survey.runs.values().any(|run| is(&run.tag, run.id))
    }

    /// The run that a field of a part's cable is about; of a run itself.
    fn run(&self, subject: SubjectId) -> Result<SubjectId, ValueFault> {
        if self.survey.runs.contains_key(&subject) {
            return Ok(subject);
        }
        feed_of(self.survey, subject).and_then(|feed| feed.run).ok_or(ValueFault::NoRun)
    }

    /// The value of a field that is of several members.
    fn members(&self, subject: SubjectId, name: &str) -> Map<String, Value> {
        let shown = self.ledger.shown(subject, name).map(|fact| fact.value().clone());
        shown.and_then(|value| value.as_object().cloned()).unwrap_or_default()
    }

    fn emptied(&self, subject: SubjectId, field: &Field, port: Option<u8>) -> Result<Vec<Edit>, ValueFault> {
        let empty = |of: SubjectId, name: &str| vec![Edit::new(of, name, Value::Null)];
        Ok(match field.becomes {
            Becomes::Field(_) if field.is_needed => return Err(ValueFault::Needed),
            Becomes::Feed if field.name == "port" => return Err(ValueFault::Needed),
            Becomes::Field(name) => empty(subject, name),
            Becomes::Feed => empty(subject, field::FEED),
            Becomes::Run(names) => {
                let run = self.run(subject)?;
                names.iter().flat_map(|name| empty(run, name)).collect()
            }
            Becomes::Ends => {
                let there = self.survey.parts.get(&subject).map(|part| &part.ends);
                let ports = there.into_iter().flat_map(BTreeMap::keys).copied();
                let ports = ports.filter(|there| port.is_none_or(|port| port == *there));
                ports.map(|port| field::END.clear(subject, port)).collect()
            }
            Becomes::Rating(member) => {
                let mut rating = self.members(subject, field::RATING);
                rating.remove(member);
                // What says nothing any more is no rating.
                let left = serde_json::from_value::<PartRating>(Value::Object(rating)).unwrap_or_default();
                let left = (left != PartRating::default()).then_some(left);
                vec![field::part::RATING.put(subject, left.as_ref())]
            }
            Becomes::Measured => return Err(ValueFault::Needed),
        })
    }

    /// A sheet of what the thing stands among, with one more line in its own table.
    fn text(&self, kind: Kind, subject: SubjectId, called: &Called, line: &str) -> String {
        let mut text = String::new();
        let own = |id: SubjectId| if id == subject { line } else { "" };
        if kind == Kind::Run {
            // A cable by itself: what it lies between is no matter.
            let _ = write!(
                text,
                "[[part]]\ntag = \"a\"\nkind = \"entry\"\n[[part]]\ntag = \"b\"\nkind = \"barrel\"\n\
                 from = \"a\"\n{line}\n"
            );
            return text;
        }
        if matches!(kind, Kind::Survey | Kind::Note) {
            let _ = writeln!(text, "[survey]\n{line}");
        }
        for room in self.survey.rooms.values() {
            let name = if room.id == subject && says(line, "name") {
                String::new()
            } else {
                quoted_line("name", &room.name)
            };
            let _ = write!(text, "[[room]]\n{name}{}\n", own(room.id));
        }
        for (name, id) in called.iter() {
            if let Some(part) = self.survey.parts.get(&id) {
                self.part(&mut text, name, part, called, own(id));
            }
        }
        for service in self.survey.services.values().filter(|service| service.id == subject) {
            let kind =
                if says(line, "kind") { String::new() } else { quoted_line("kind", service.kind.name()) };
            let _ = write!(text, "[[service]]\n{kind}{line}\n");
        }
        if let Some(reading) = self.survey.readings.get(&subject) {
            let told = Field::reading_lines(reading, called, line);
            let _ = write!(text, "[[reading]]\n{told}{line}\n");
        }
        text
    }

    /// A part as far as others depend on it: how many outputs it has, what feeds it from which.
    fn part(&self, text: &mut String, name: &str, part: &Part, called: &Called, line: &str) {
        let says = |what: &str| says(line, what);
        text.push_str("[[part]]\n");
        if !says("tag") {
            text.push_str(&quoted_line("tag", name));
        }
        if !says("kind") {
            text.push_str(&quoted_line("kind", part.kind.name()));
        }
        if let Some(label) = part.label.as_deref().filter(|_| !says("label")) {
            text.push_str(&quoted_line("label", label));
        }
        let typed = self.ledger.shown(part.id, field::RATING);
        let typed = typed.and_then(|fact| field::part::RATING.read(fact.value())).unwrap_or_default();
        if typed.legs > 0 && !says("legs") {
            let _ = writeln!(text, "legs = {}", typed.legs);
        }
        if typed.modem_port && part.kind == PartKind::Amplifier && !says("modem_port") {
            text.push_str("modem_port = true\n");
        }
        if typed.passes_on && part.kind == PartKind::Outlet && !says("passes_on") {
            text.push_str("passes_on = true\n");
        }
        // What feeds it now is no matter where that is said anew.
        if let Some(Feed::From(feed)) = &part.feed
            && !says("from")
            && !says("feed")
            && let Some(feeder) = called.name_of(feed.part)
        {
            text.push_str(&quoted_line("from", feeder));
            if !says("port") {
                let _ = writeln!(text, "port = {}", feed.port);
            }
        }
        text.push_str(line);
        text.push('\n');
    }

    /// What the sheet says of the field.
    fn read_off(
        &self,
        sheet: &Sheet,
        kind: Kind,
        subject: SubjectId,
        field: &Field,
        called: &Called,
    ) -> Result<Vec<Edit>, ValueFault> {
        let mut ids: BTreeMap<SubjectId, SubjectId> =
            called.iter().map(|(name, id)| (id_of(Is::Part, name), id)).collect();
        ids.extend(self.survey.rooms.values().map(|room| (id_of(Is::Room, &room.name), room.id)));
        // The thing itself, whatever it is called in this sheet.
        let own = match kind {
            Kind::Survey => Some(self.survey.id),
            Kind::Part => called.name_of(subject).map(|name| id_of(Is::Part, name)),
            Kind::Run => Some(id_of(Is::Run, &id_of(Is::Part, "b").to_string())),
            Kind::Room => {
                let renamed = sheet.rooms.iter().find(|room| !ids.contains_key(&room.record.id));
                let name = self.survey.rooms.get(&subject).map(|room| room.name.as_str()).unwrap_or_default();
                Some(renamed.map_or_else(|| id_of(Is::Room, name), |room| room.record.id))
            }
            Kind::Service => sheet.services.first().map(|told| told.record.id),
            Kind::Reading => sheet.readings.first().map(|told| told.record.id),
            Kind::Note => Some(id_of(Is::Note, &format!("0 {}", self.survey.id))),
        };
        let Some(own) = own else { return Ok(Vec::new()) };
        ids.insert(own, subject);
        let of_run = id_of(Is::Run, &own.to_string());
        let mut told: Vec<Edit> = sheet.edits(self.survey.id);
        told.retain(|edit| {
            edit.subject == own
                || edit.subject == of_run
                || edit.field.starts_with("text.")
                || matches!(edit.field.as_str(), field::PORTS | field::DIGEST)
        });
        for edit in &mut told {
            name_anew(&mut edit.value, &ids);
        }
        let of = |name: &str| {
            told.iter()
                .filter(|edit| edit.subject == own && edit.field == name)
                .map(|edit| Edit { subject, ..edit.clone() })
                .collect::<Vec<_>>()
        };
        Ok(match field.becomes {
            Becomes::Field(field::MEASUREMENT) => {
                let others = told.iter().filter(|edit| edit.subject != own && edit.subject != of_run);
                let measurement = sheet
                    .edits(self.survey.id)
                    .into_iter()
                    .filter(|edit| others.clone().any(|other| other.subject == edit.subject));
                of(field::MEASUREMENT).into_iter().chain(measurement).collect()
            }
            Becomes::Field(name) => of(name),
            Becomes::Feed => {
                let stood = feed_of(self.survey, subject).and_then(|feed| feed.run);
                let with_run = |edit: Edit| match field::part::FEED.read(&edit.value) {
                    Some(Feed::From(feed)) => {
                        field::part::FEED.set(subject, &Feed::From(FeedFrom { run: stood, ..feed }))
                    }
                    _ => edit,
                };
                of(field::FEED).into_iter().map(with_run).collect()
            }
            Becomes::Run(names) => {
                let told_of = if kind == Kind::Run { own } else { of_run };
                let edits = told
                    .iter()
                    .filter(|edit| edit.subject == told_of && names.contains(&edit.field.as_str()));
                self.onto_run(kind, subject, edits.cloned().collect())?
            }
            Becomes::Ends => told
                .iter()
                .filter(|edit| edit.subject == own && field::END.number::<u8>(&edit.field).is_some())
                .map(|edit| Edit { subject, ..edit.clone() })
                .collect(),
            // All of it is one value: see `rating_with`.
            Becomes::Rating(_) => Vec::new(),
            Becomes::Measured => of(field::MEASURED),
        })
    }

    /// What a part is rated for, with these members as the sheet says them, and without what was emptied with them.
    fn rating_with(
        &self,
        emptied: &[Edit],
        sheet: &Sheet,
        subject: SubjectId,
        called: &Called,
        said: &[&'static str],
    ) -> Edit {
        let own = called.name_of(subject);
        let row = sheet.parts.iter().find(|part| Some(part.tag.as_str()) == own);
        let told = row.and_then(|part| serde_json::to_value(part.rating.as_ref()?).ok()).unwrap_or_default();
        let before = emptied.iter().rev().find(|edit| edit.field == field::RATING);
        let mut rating = match before {
            Some(edit) => edit.value.as_object().cloned().unwrap_or_default(),
            None => self.members(subject, field::RATING),
        };
        for member in said {
            // A mark that is not there is left out where it is all that is said.
            rating.insert((*member).to_owned(), told.get(member).cloned().unwrap_or(Value::Bool(false)));
        }
        let rating: PartRating = serde_json::from_value(Value::Object(rating)).unwrap_or_default();
        field::part::RATING.set(subject, &rating)
    }

    /// What is said of a cable, onto the run that leads to the part; onto a new one where there is none yet.
    fn onto_run(&self, kind: Kind, subject: SubjectId, edits: Vec<Edit>) -> Result<Vec<Edit>, ValueFault> {
        if kind == Kind::Run {
            return Ok(edits.into_iter().map(|edit| Edit { subject, ..edit }).collect());
        }
        let feed = feed_of(self.survey, subject).ok_or(ValueFault::NoRun)?;
        let run = feed.run.unwrap_or_else(SubjectId::random);
        let mut all = Vec::new();
        if feed.run.is_none() {
            all.push(Is::Run.begin(run));
            all.push(field::part::FEED.set(subject, &Feed::From(FeedFrom { run: Some(run), ..feed })));
        }
        all.extend(edits.into_iter().map(|edit| Edit { subject: run, ..edit }));
        Ok(all)
    }
}

/// Whether one of these lines says a field.
fn says(lines: &str, name: &str) -> bool {
    lines.lines().any(|line| line.starts_with(&format!("{name} =")))
}

/// A line of a sheet that gives a field a text.
pub fn quoted_line(name: &str, text: &str) -> String {
    format!("{name} = {}\n", Written::Text.of(text))
}
