//! Where one stands, to tell how one came from there to somewhere else.

use facts::fact::SubjectId;

use super::Guide;
use crate::place::{Outside, Place};
use crate::screen::WayTaken;

/// Where one stands.
pub(super) struct Standpoint {
    /// Whether the screen of long work is shown.
    sent_work: bool,
    /// The survey that is open, and the way of screens in it.
    open: Option<(SubjectId, Vec<Place>)>,
    outside: Outside,
}

impl Guide {
    pub(super) fn standpoint(&self) -> Standpoint {
        Standpoint {
            sent_work: self.session.sent_work.is_some(),
            open: self.session.open.as_ref().map(|open| (open.survey.id, open.memory.way.clone())),
            outside: self.session.outside.clone(),
        }
    }
}

impl Standpoint {
    /// How one came from here to there.
    pub(super) fn way_to(&self, there: &Self) -> WayTaken {
        let way = match (&self.open, &there.open) {
            (Some((survey, way)), Some((other, on))) if survey == other => within(way, on),
            (_, Some(_)) => WayTaken::On,
            (Some(_), None) => WayTaken::Back,
            (None, None) => outside(&self.outside, &there.outside),
        };
        match (self.sent_work, there.sent_work) {
            (false, true) => WayTaken::On,
            (true, false) if way == WayTaken::Same => WayTaken::Back,
            _ => way,
        }
    }
}

/// Within one survey: what one came from before is back, wherever one goes there from.
fn within(from: &[Place], to: &[Place]) -> WayTaken {
    match (from.split_last(), to.last()) {
        (Some((here, _)), Some(there)) if here == there => WayTaken::Same,
        (Some((_, before)), Some(there)) if before.contains(there) => WayTaken::Back,
        (None, None) => WayTaken::Same,
        _ => WayTaken::On,
    }
}

/// Outside any survey: up is back.
fn outside(from: &Outside, to: &Outside) -> WayTaken {
    if from.is_screen(to) {
        return WayTaken::Same;
    }
    let mut up = from.clone();
    while up != Outside::Surveys {
        up = up.up();
        if up == *to {
            return WayTaken::Back;
        }
    }
    WayTaken::On
}

#[cfg(test)]
mod tests {
    use std::path::PathBuf;

    use super::*;
    use crate::place::Stage;

    #[test]
    fn what_was_left_is_back_and_what_is_new_is_on() {
        let stage = Place::Stage(Stage::ALL[0]);
        let (top, more) = (Place::Overview, Place::More);
        let way = |from: &[&Place], to: &[&Place]| {
            let places = |way: &[&Place]| way.iter().map(|place| (*place).clone()).collect::<Vec<_>>();
            within(&places(from), &places(to))
        };
        assert_eq!(way(&[&top], &[&top, &stage]), WayTaken::On);
        assert_eq!(way(&[&top, &stage], &[&top]), WayTaken::Back);
        assert_eq!(way(&[&top, &stage], &[&top, &stage, &top]), WayTaken::Back);
        assert_eq!(way(&[&top, &stage], &[&top, &more]), WayTaken::On);
        assert_eq!(way(&[&top, &stage], &[&top, &stage]), WayTaken::Same);
    }

    #[test]
    fn outside_any_survey_up_is_back() {
        let folder = PathBuf::from("home/mill.legwork");
        let (survey, copy) = (Outside::Survey(folder.clone()), Outside::Copy(folder));
        assert_eq!(outside(&Outside::Surveys, &Outside::Order), WayTaken::On);
        assert_eq!(outside(&survey, &copy), WayTaken::On);
        assert_eq!(outside(&copy, &survey), WayTaken::Back);
        assert_eq!(outside(&copy, &Outside::Surveys), WayTaken::Back);
        assert_eq!(outside(&Outside::Sent, &Outside::Device), WayTaken::On);
        assert_eq!(outside(&copy, &copy), WayTaken::Same);
        let mend =
            |name: &str, has_lost| Outside::Mend { folder: name.into(), found_damaged: true, has_lost };
        assert_eq!(outside(&mend("mill.legwork", false), &mend("mill.legwork", true)), WayTaken::Same);
        assert_eq!(outside(&mend("mill.legwork", false), &mend("weir.legwork", false)), WayTaken::On);
    }
}
