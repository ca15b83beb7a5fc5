//! What the parts to buy are rated for.

use coax::trade::{FILTERS_PASS, FILTERS_STOP_BY, smallest_splitter};
use facts::fact::SubjectId;
use house::rating::{Band, EXTENDED_D, PartRating};
use house::record::{ChangeKind, Survey, power_paths};

/// What an entry filter to buy is rated for: passes 5 to 1002 MHz, stops 1125 to 1675 MHz by at least 40 dB (a
/// published data sheet for a ground-block MoCA filter, 2019).
pub(super) fn entry_filter_rating() -> PartRating {
    PartRating {
        band: Some(Band { low_mhz: 5.0, high_mhz: FILTERS_PASS.value() }),
        stop_band: Some(EXTENDED_D),
        rejection_db: Some(FILTERS_STOP_BY.value()),
        ..PartRating::default()
    }
}

/// What a splitter to buy is rated for. Two and three legs: labels of 5-1675 MHz parts photographed in a public
/// repository (3.7; 3.7, 7.3, 7.3 dB). More: label losses by common practice, no source.
pub(super) fn splitter_rating(legs: u8) -> PartRating {
    let leg_losses_db = match legs {
        2 => vec![3.7; 2],
        3 => vec![3.7, 7.3, 7.3],
        4 => vec![7.3; 4],
        5 | 6 => vec![9.5; usize::from(legs)],
        _ => vec![11.0; usize::from(legs)],
    };
    PartRating {
        legs,
        leg_losses_db,
        band: Some(Band { low_mhz: 5.0, high_mhz: EXTENDED_D.high_mhz }),
        says_moca: true,
        ..PartRating::default()
    }
}

/// A rating that also passes DC, where DC goes over the part it is for.
pub(super) fn powered(survey: &Survey, part: SubjectId, rating: PartRating) -> PartRating {
    let carries = power_paths(survey).iter().any(|path| path.passes(part));
    PartRating { power_pass: if carries { Some(true) } else { rating.power_pass }, ..rating }
}

/// A rating that also passes DC, where what a change puts in meets it.
pub(super) fn passing_power(survey: &Survey, change: ChangeKind, rating: PartRating) -> PartRating {
    let power_pass = if change.meets_power(survey) { Some(true) } else { rating.power_pass };
    PartRating { power_pass, ..rating }
}

/// The smallest number of legs that splitters are made with, above `used`.
pub(super) fn larger_than(used: u8) -> u8 {
    smallest_splitter(usize::from(used) + 1).map_or(used.saturating_add(1), |(legs, _)| legs)
}
