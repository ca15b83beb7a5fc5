//! What a step gains in a room, as it is told: of the figures as they are shown, or they would not add up.

use advice::worklist::Gain;
use phrase::{Arg, Phrase};

use super::figures::shown_gain;

/// What of a gain is told, most telling first. Every amount is positive, Mb/s.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ToldGain {
    /// The likely rate rises by so much.
    More(f64),
    /// The likely rate stays, and what is reached nine times in ten rises by so much.
    LowMore(f64),
    /// An adapter's network socket holds the rate, and the coax carries so much more (PHY rate).
    PhyMore(f64),
    /// Nothing that would show.
    Nothing,
    /// The likely rate falls by so much.
    Less(f64),
}

impl ToldGain {
    /// What is told of a gain.
    pub fn of(gain: &Gain) -> Self {
        let (before, after) = (&gain.before, &gain.after);
        let likely = shown_gain(before.likely_mbps, after.likely_mbps);
        let low = shown_gain(before.low_mbps, after.low_mbps);
        let phy = shown_gain(before.phy_mbps, after.phy_mbps);
        if likely > 0.0 {
            Self::More(likely)
        } else if likely < 0.0 {
            Self::Less(-likely)
        } else if low > 0.0 {
            Self::LowMore(low)
        } else if phy > 0.0 && after.held_by_port {
            Self::PhyMore(phy)
        } else {
            Self::Nothing
        }
    }

    /// Whether the room is better off.
    pub fn is_gain(self) -> bool {
        matches!(self, Self::More(_) | Self::LowMore(_) | Self::PhyMore(_))
    }

    /// Its words beside the room's name. `gain` is what it was made of.
    pub fn phrase(self, gain: &Gain) -> Phrase {
        let of = |id, before, after| {
            Phrase::new(id).with("before", Arg::Rate(before)).with("after", Arg::Rate(after))
        };
        let (before, after) = (&gain.before, &gain.after);
        match self {
            Self::More(rate) => Phrase::new("gain-more").with("rate", Arg::Rate(rate)),
            Self::Less(rate) => Phrase::new("gain-less").with("rate", Arg::Rate(rate)),
            Self::LowMore(_) => of("gain-low-more", before.low_mbps, after.low_mbps),
            Self::PhyMore(_) => of("gain-phy-more", before.phy_mbps, after.phy_mbps),
            Self::Nothing => Phrase::new("gain-none"),
        }
    }
}

/// The gains that are told, in the order of how much they say: likely rates first, then what is reached nine times in
/// ten, then what the coax alone gains; the greatest of each first.
pub fn told_gains(gains: &[Gain]) -> Vec<(&Gain, ToldGain)> {
    let mut told: Vec<_> = gains.iter().map(|gain| (gain, ToldGain::of(gain))).collect();
    told.retain(|(_, told)| told.is_gain());
    let key = |told: &ToldGain| match *told {
        ToldGain::More(more) => (0, -more),
        ToldGain::LowMore(more) => (1, -more),
        ToldGain::PhyMore(more) => (2, -more),
        ToldGain::Nothing => (3, 0.0),
        ToldGain::Less(less) => (4, less),
    };
    told.sort_by(|a, b| {
        let ((a, more), (b, than)) = (key(&a.1), key(&b.1));
        a.cmp(&b).then(more.total_cmp(&than))
    });
    told
}

#[cfg(test)]
mod tests {
    use advice::worklist::RoomRates;
    use facts::fact::SubjectId;

    use super::*;

    fn gain(before: [f64; 3], after: [f64; 3], held_by_port: bool) -> Gain {
        let rates = |[likely_mbps, low_mbps, phy_mbps]: [f64; 3]| RoomRates {
            likely_mbps,
            low_mbps,
            phy_mbps,
            held_by_port,
        };
        Gain { outlet: SubjectId::from_uuid(uuid::Uuid::nil()), before: rates(before), after: rates(after) }
    }

    #[test]
    fn what_is_told_is_the_most_that_shows() {
        let of = |before, after, held| ToldGain::of(&gain(before, after, held));
        let held = [949.0, 949.0, 2000.0];
        assert_eq!(of([800.0, 700.0, 1400.0], held, true), ToldGain::More(150.0));
        assert_eq!(of([949.0, 700.0, 1400.0], held, true), ToldGain::LowMore(250.0));
        assert_eq!(of([949.0, 949.0, 1400.0], held, true), ToldGain::PhyMore(600.0));
        // Nothing holds the rate but the path: a PHY rate that rounds up says nothing more.
        assert_eq!(of([949.0, 949.0, 1970.0], held, false), ToldGain::Nothing);
        assert_eq!(of(held, held, true), ToldGain::Nothing);
        assert_eq!(of([949.0, 949.0, 1400.0], [500.0, 949.0, 2000.0], true), ToldGain::Less(450.0));
    }

    #[test]
    fn likely_rates_are_told_before_low_ones_and_those_before_the_coax_alone() {
        let held = [949.0, 949.0, 2000.0];
        let befores =
            [[949.0, 949.0, 1000.0], [949.0, 500.0, 1400.0], held, [800.0, 800.0, 1400.0], [500.0, 9.0, 9.0]];
        let gains: Vec<_> = befores.into_iter().map(|before| gain(before, held, true)).collect();
        let told: Vec<_> = told_gains(&gains).into_iter().map(|(_, told)| told).collect();
        let wanted = [450.0, 150.0].map(ToldGain::More).into_iter();
        assert_eq!(
            told,
            wanted.chain([ToldGain::LowMore(450.0), ToldGain::PhyMore(1000.0)]).collect::<Vec<_>>()
        );
    }
}
