//! What a reading tells of.

use house::record::{Reading, ReadingKind, Survey, TestReach};

use crate::forecast::nodes_of;

/// A test to the internet that reaches this share of the plan's rate is held by the plan.
const AT_THE_PLAN: f64 = 0.9;

/// A test of which nobody said how it was taken counts as held by the plan up to this share of its rate.
const OVER_THE_PLAN: f64 = 1.1;

/// What a reading of an outlet test tells of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tells {
    /// The coax between the bridge and the outlet.
    Coax,
    /// The test's own network socket, which ended it before the coax did.
    Socket,
    /// A radio, over which some of the way went.
    Radio,
    /// The internet plan, which held the test.
    Plan,
    /// The way to the internet, which may be slower for other reasons.
    Internet,
    /// The wiring as it was before a piece of work on that way was done.
    Earlier,
}

impl Tells {
    /// Whether it was taken on the coax alone, so that it may be held against the forecast.
    pub const fn is_of_coax(self) -> bool {
        matches!(self, Self::Coax | Self::Socket)
    }

    /// Its name in data: `coax`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Coax => "coax",
            Self::Socket => "socket",
            Self::Radio => "radio",
            Self::Plan => "plan",
            Self::Internet => "internet",
            Self::Earlier => "earlier",
        }
    }
}

/// Whether a reading belongs to an outlet test: what a level meter or the modem's page says does not, nor how many nodes an
/// adapter sees.
pub const fn is_of_test(measured: ReadingKind) -> bool {
    !matches!(
        measured,
        ReadingKind::Level { .. }
            | ReadingKind::ErrorRatio { .. }
            | ReadingKind::ModemSends { .. }
            | ReadingKind::NodesSeen { .. }
    )
}

/// What a reading tells of, by how it was taken and by the plan; `None` for one that belongs to no outlet test. Where nobody
/// said how, it counts as taken within the house over cable, unless it lies about at the plan's rate.
pub(super) fn of(survey: &Survey, reading: &Reading) -> Option<Tells> {
    if !is_of_test(reading.measured) {
        return None;
    }
    if is_from_before(survey, reading) {
        return Some(Tells::Earlier);
    }
    if is_held_by_plan(survey, reading) {
        return Some(Tells::Plan);
    }
    let over_radio = reading.how.is_some_and(|how| how.over_radio);
    Some(match reading.measured {
        // It is the speed of the internet by its very name.
        ReadingKind::Swings { .. } => Tells::Internet,
        // What the adapter shows of its link, it shows whatever hangs behind it.
        ReadingKind::Link { .. } => Tells::Coax,
        _ if over_radio => Tells::Radio,
        ReadingKind::PhyRate { .. } | ReadingKind::Power { .. } => Tells::Coax,
        _ if reading.how.is_some_and(|how| how.reach == TestReach::Internet) => Tells::Internet,
        _ => Tells::Coax,
    })
}

/// Whether a test was taken before a piece of work on the way from the bridge to where it was taken.
pub(super) fn is_from_before(survey: &Survey, reading: &Reading) -> bool {
    // Most surveys know of no such work; then nobody looks for the bridge.
    let later = survey.done_since.contains_key(&reading.id);
    let bridge = || nodes_of(survey).into_iter().find(|node| node.bridge).map(|node| node.outlet);
    later && bridge().is_some_and(|bridge| survey.work_since_test(reading, bridge).is_some())
}

fn is_held_by_plan(survey: &Survey, reading: &Reading) -> bool {
    let (ReadingKind::Throughput { down_mbps, .. }, Some(plan)) = (reading.measured, survey.internet) else {
        return false;
    };
    let reaches = down_mbps >= plan.down_mbps * AT_THE_PLAN;
    match reading.how {
        Some(how) => how.reach == TestReach::Internet && reaches,
        None => reaches && down_mbps <= plan.down_mbps * OVER_THE_PLAN,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use facts::fact::SubjectId;
    use house::record::{HowMeasured, Internet};

    fn tells(measured: ReadingKind, how: Option<HowMeasured>) -> Option<Tells> {
        let id = |number| SubjectId::from_uuid(uuid::Uuid::from_u128(number));
        let mut survey = Survey::new(id(1));
        survey.internet = Some(Internet { down_mbps: 500.0, up_mbps: 50.0 });
        of(&survey, &Reading { id: id(2), about: Some(id(3)), port: None, measured, how })
    }

    #[test]
    fn how_a_test_was_taken_says_what_it_tells_of() {
        let rate = |down_mbps| ReadingKind::Throughput { down_mbps, up_mbps: 40.0 };
        let how = |reach, over_radio| Some(HowMeasured::new(reach, over_radio));
        let (house, internet) = (TestReach::House, TestReach::Internet);
        assert_eq!(tells(rate(470.0), how(house, false)), Some(Tells::Coax));
        assert_eq!(tells(rate(470.0), how(house, true)), Some(Tells::Radio));
        assert_eq!(tells(rate(470.0), how(internet, false)), Some(Tells::Plan));
        assert_eq!(tells(rate(470.0), how(internet, true)), Some(Tells::Plan));
        assert_eq!(tells(rate(300.0), how(internet, false)), Some(Tells::Internet));
        assert_eq!(tells(rate(300.0), how(internet, true)), Some(Tells::Radio));
        assert_eq!(tells(rate(470.0), None), Some(Tells::Plan));
        assert_eq!(tells(rate(700.0), None), Some(Tells::Coax));
        assert_eq!(tells(rate(300.0), None), Some(Tells::Coax));
    }

    #[test]
    fn an_adapters_page_tells_of_the_coax_and_a_meter_of_no_test() {
        let page = |over_radio| Some(HowMeasured::new(TestReach::AdapterPage, over_radio));
        let power = ReadingKind::Power { sent_dbm: 3.0, received_dbm: -40.0 };
        assert_eq!(tells(power, page(false)), Some(Tells::Coax));
        assert_eq!(tells(power, page(true)), Some(Tells::Radio));
        assert_eq!(tells(ReadingKind::PhyRate { mbps: 3200.0 }, None), Some(Tells::Coax));
        assert_eq!(tells(ReadingKind::Level { mhz: 600.0, dbmv: 3.0 }, None), None);
        assert_eq!(tells(ReadingKind::NodesSeen { count: 3 }, page(false)), None);
    }
}
