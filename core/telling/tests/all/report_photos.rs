//! The photos of the report: what was taken is never called missing, and what finds no room is counted.
#![expect(clippy::unwrap_used, reason = "a page that cannot be had ends the test")]

use advice::forecast;
use advice::worklist::{self, worklist};
use facts::fact::PhotoImage;
use house::record::{Photo, PhotoRole, Survey};
use telling::report::{Provenance, html};

use crate::report_house::{english, house, id};

/// The house with this many photos of S1: all of before, but for the last.
fn photographed(count: u8, last: PhotoRole) -> Survey {
    let mut survey = house();
    for number in 0..count {
        let image = PhotoImage { sha256: "0".repeat(64), ext: "jpg".into(), bytes: 1, width: 1, height: 1 };
        let role = if number + 1 == count { last } else { PhotoRole::Before };
        // Photos are shown in the order of their ids.
        let id_of = id(10_000 + u128::from(number));
        let (of, role) = (Some(id(22)), Some(role));
        survey
            .photos
            .insert(id_of, Photo { id: id_of, image, of, role, file_name: None, taken: None, print: None });
    }
    survey
}

fn page(survey: &Survey) -> String {
    let quick = forecast::Options { draws: 8, seed: 7, points: 67, settles: false };
    let options =
        worklist::Options { screening: quick, stating: quick, most_steps: 0, ..worklist::Options::default() };
    let list = worklist(survey, &options).unwrap();
    let provenance = Provenance::default().with_pictures(survey, |_| Some(vec![0]));
    html(survey, &list, provenance, &english())
}

#[test]
fn what_was_taken_is_not_called_missing_where_the_report_has_no_room_for_it() {
    let (missing, more) = ("after: not taken yet", "more photo");
    for (count, last, is_missing, is_more) in [
        (2, PhotoRole::After, false, None),
        (2, PhotoRole::Before, true, None),
        (48, PhotoRole::After, false, None),
        (49, PhotoRole::After, false, Some("One more photo stands in the survey’s file.")),
        (49, PhotoRole::Before, true, Some("One more photo stands in the survey’s file.")),
        (60, PhotoRole::After, false, Some("12 more photos stand in the survey’s file.")),
    ] {
        let page = page(&photographed(count, last));
        assert_eq!(page.contains(missing), is_missing, "{count}, the last {last:?}");
        assert_eq!(page.contains(more), is_more.is_some(), "{count}, the last {last:?}");
        assert!(page.contains(is_more.unwrap_or_default()), "{count}, the last {last:?}");
    }
}
