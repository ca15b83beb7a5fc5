//! What a row of the map says: of one part, or of several that are folded.

use phrase::{Arg, Phrase};

use super::fold::{Row, Shows};
use super::node::{Cable, Node, Plan, State};
use crate::figure::mark::Touch;
use crate::figure::measure::legible;
use crate::figure::sheet::Type;
use crate::words::Language;

/// The words of a row.
#[derive(Debug, Clone)]
pub(super) struct Told {
    /// What stands in the frame; may be empty.
    pub tag: String,
    /// What it is called, the longest first.
    pub names: Vec<String>,
    /// Remarks, the weightiest first.
    pub remarks: Vec<String>,
    /// Its name for those who do not see it.
    pub name: String,
    /// All there is to say of it, a line each.
    pub about: String,
    /// What a touch on it means.
    pub touch: Touch,
}

/// The words of a row.
pub(super) fn told(plan: &Plan, row: &Row, language: &Language) -> Option<Told> {
    let say = |phrase: &Phrase| legible(&language.say(phrase)).into_owned();
    let all = |phrases: &[Phrase]| -> Vec<String> {
        phrases.iter().map(say).filter(|words| !words.is_empty()).collect()
    };
    let about = |node: &Node| -> Vec<String> {
        let own = node.names.first().map(say);
        own.into_iter().chain(all(&node.remarks)).chain(all(&node.about)).collect()
    };
    let count = |id: &str, count: usize| Phrase::new(id).with("count", Arg::Count(count as u64));
    Some(match &row.shows {
        Shows::Part(place) => {
            let node = plan.node(*place)?;
            Told {
                tag: node.tag.clone(),
                names: all(&node.names),
                remarks: all(&node.remarks),
                name: say(&node.name),
                about: about(node).join("\n"),
                touch: Touch::Part(node.id),
            }
        }
        Shows::Outlets { at, outlets } => {
            let first = plan.node(*outlets.first()?)?;
            let id = if first.cable == Cable::Unknown { "map-outlets-unknown" } else { "map-outlets" };
            let many = count(id, outlets.len());
            let names: Vec<_> =
                outlets.iter().filter_map(|place| Some(say(plan.node(*place)?.names.first()?))).collect();
            let remarks = vec![names.join(", ")];
            let name = say(&many);
            let mut names = vec![name.clone()];
            names.extend(
                language.say_if_known(&many.attribute("short")).map(|said| legible(&said).into_owned()),
            );
            Told {
                tag: tags(plan, outlets, &say),
                names,
                about: remarks.first().cloned().unwrap_or_default(),
                remarks,
                name,
                touch: Touch::Unfold(plan.node(*at)?.id),
            }
        }
        Shows::Branch { first, behind } => {
            let node = plan.node(*first)?;
            let behind = say(&count("map-behind", *behind));
            Told {
                tag: node.tag.clone(),
                names: all(&node.names),
                about: [about(node).join("\n"), behind.clone()].join("\n"),
                remarks: vec![behind],
                name: say(&node.name),
                touch: Touch::Unfold(node.id),
            }
        }
        Shows::Rest { at, firsts, count: many } => {
            let many = count("map-more-parts", *many);
            let (name, says) = (say(&many), say(&many.attribute("says")));
            Told {
                tag: tags(plan, firsts, &say),
                names: vec![name.clone()],
                about: says.clone(),
                remarks: vec![says],
                name,
                touch: Touch::Unfold(plan.node(*at)?.id),
            }
        }
        Shows::Holding { part, count: many } => {
            let node = plan.node(*part)?;
            let held = say(&count("map-holds", *many));
            let mut remarks = all(&node.remarks);
            // What weighs comes first still.
            remarks.insert(usize::from(node.state != State::Well).min(remarks.len()), held.clone());
            Told {
                tag: node.tag.clone(),
                names: all(&node.names),
                about: [about(node).join("\n"), held].join("\n"),
                remarks,
                name: say(&node.name),
                touch: Touch::Unfold(node.id),
            }
        }
    })
}

/// The tags of several parts in one frame; nothing where they have none, or are not of one kind.
fn tags(plan: &Plan, places: &[usize], say: &impl Fn(&Phrase) -> String) -> String {
    let nodes: Vec<_> = places.iter().filter_map(|place| plan.node(*place)).collect();
    let numbers: Vec<_> = nodes.iter().map(|node| numbered(node)).collect();
    let runs_on = numbers.windows(2).all(|pair| match pair {
        [Some((letters, number)), Some((others, next))] => letters == others && number + 1 == *next,
        _ => false,
    });
    let (Some(first), Some(last)) = (nodes.first(), nodes.last()) else { return String::new() };
    let letters = |node: &Node| numbered(node).map(|(letters, _)| letters.to_owned());
    // Tags of several kinds stand for nothing together.
    if first.tag.is_empty() || last.tag.is_empty() || letters(first) != letters(last) {
        return String::new();
    }
    let id = if runs_on { "map-tag-range" } else { "map-tag-among" };
    say(&Phrase::new(id).text("first", first.tag.as_str()).text("last", last.tag.as_str()))
}

fn numbered(node: &Node) -> Option<(&str, u64)> {
    let letters = node.tag.trim_end_matches(|letter: char| letter.is_ascii_digit());
    Some((letters, node.tag.get(letters.len()..)?.parse().ok()?))
}

/// The first of several names that there is room for; else the last, cut.
pub(super) fn name(names: &[String], font: Type, room: f64) -> String {
    // What was measured out for a name is never a hair too small for it.
    let room = room + 0.01;
    let fits = names.iter().find(|name| font.width(name) <= room);
    let name = fits.or(names.last()).map(String::as_str).unwrap_or_default();
    font.fitted(name, room)
}

/// As many remarks as there is room for in one line, the weightiest first.
pub(super) fn remarks(remarks: &[String], font: Type, room: f64) -> String {
    let room = room + 0.01;
    let mut said = String::new();
    for remark in remarks {
        let longer = if said.is_empty() { remark.clone() } else { format!("{said}; {remark}") };
        if said.is_empty() || font.width(&longer) <= room {
            said = longer;
        }
    }
    font.fitted(&said, room)
}
