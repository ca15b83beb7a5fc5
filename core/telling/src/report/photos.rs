//! Photos of parts and cables, before and after, with their labels.

use std::collections::BTreeMap;

use data_encoding::BASE64;
use facts::fact::SubjectId;
use house::record::{Photo, PhotoRole, Worded, reading_order};
use house::{naming, story};
use maud::{Markup, html};
use phrase::{Arg, Phrase};

use super::page::Section;
use super::teller::ReportTeller;

/// The section; `None` where nobody took a photo.
pub(super) fn section(teller: &ReportTeller<'_>) -> Option<Section> {
    let survey = teller.survey();
    let mut of: BTreeMap<SubjectId, Vec<&Photo>> = BTreeMap::new();
    for photo in survey.photos.values() {
        if let Some(shown) = photo.of.filter(|_| teller.input.provenance.pictures.contains_key(&photo.id)) {
            of.entry(shown).or_default().push(photo);
        }
    }
    let left_out = teller.input.provenance.left_out;
    let beside = teller.input.provenance.has_photos_beside && !survey.photos.is_empty();
    if of.is_empty() && !beside {
        return None;
    }
    // Parts in the order in which they are read, then cables.
    let mut order: Vec<_> = reading_order(survey).into_iter().filter(|id| of.contains_key(id)).collect();
    order.extend(of.keys().filter(|id| !survey.parts.contains_key(id)));
    let body = html! {
        @if beside { p { (teller.word("report-photos-beside")) } }
        div.photos {
            @for id in order {
                @if let Some(photos) = of.get(&id) { (of_thing(teller, id, photos)) }
            }
        }
        @if left_out > 0 {
            p { (teller.say(&Phrase::new("report-photos-left-out").with("count", Arg::Count(left_out as u64)))) }
        }
    };
    Some(Section { id: "photos", heading: "report-photos", body })
}

fn of_thing(teller: &ReportTeller<'_>, id: SubjectId, photos: &[&Photo]) -> Markup {
    let mut photos = photos.to_vec();
    photos.sort_by_key(|photo| (photo.role.map_or(u8::MAX, order), photo.id));
    // Whether one was taken says the survey: the report may have no room for its picture.
    let has =
        |role| teller.survey().photos.values().any(|photo| photo.of == Some(id) && photo.role == Some(role));
    let name = teller.say(&match teller.part(id) {
        Some(_) => naming::part(teller.survey(), id),
        None => story::thing(teller.survey(), id),
    });
    let label = teller.part(id).and_then(|part| part.label.as_deref());
    html! {
        article.whole {
            h3 { (ReportTeller::own(&name)) }
            div.pictures {
                @for photo in &photos { (picture(teller, photo, &name)) }
                @if has(PhotoRole::Before) && !has(PhotoRole::After) {
                    div.no-picture { (teller.word("report-photo-after-none")) }
                }
            }
            @if let Some(label) = label {
                p.says { (teller.word("report-photo-label")) " " span.print { (ReportTeller::own(label)) } }
            }
        }
    }
}

fn picture(teller: &ReportTeller<'_>, photo: &Photo, of: &str) -> Markup {
    let role = photo.role.map_or_else(|| Phrase::new("report-photo"), Worded::phrase);
    let role = teller.say(&role);
    let alternative = teller.say(&Phrase::new("report-photo-of").text("part", of).text("role", &role));
    html! {
        @if let Some(jpeg) = teller.input.provenance.pictures.get(&photo.id) {
            figure {
                img src=(data_address(jpeg)) alt=(alternative);
                figcaption { (role) }
            }
        }
    }
}

/// Before stands left of after, and both before what the label and the place look like.
const fn order(role: PhotoRole) -> u8 {
    match role {
        PhotoRole::Before => 0,
        PhotoRole::After => 1,
        PhotoRole::Label => 2,
        PhotoRole::Place => 3,
    }
}

/// The picture itself as an address, so that the page needs no other file.
fn data_address(jpeg: &[u8]) -> String {
    format!("data:image/jpeg;base64,{}", BASE64.encode(jpeg))
}

#[cfg(test)]
mod tests {
    use super::data_address;

    /// The test vectors of RFC 4648, section 10, and one whose signs are the last two of table 1.
    #[test]
    fn bytes_as_the_standard_writes_them() {
        let cases: [(&[u8], &str); 8] = [
            (b"", ""),
            (b"f", "Zg=="),
            (b"fo", "Zm8="),
            (b"foo", "Zm9v"),
            (b"foob", "Zm9vYg=="),
            (b"fooba", "Zm9vYmE="),
            (b"foobar", "Zm9vYmFy"),
            (b"\xfb\xff\xbf", "+/+/"),
        ];
        for (bytes, text) in cases {
            assert_eq!(data_address(bytes), format!("data:image/jpeg;base64,{text}"));
        }
    }
}
