//! What the parts to buy are rated for.

use coax::Estimate;
use coax::estimates::{new_three_way, parts};
use coax::trade::{FILTERS_PASS, FILTERS_STOP_BY, LABELS_BEGIN, smallest_splitter};
use facts::fact::SubjectId;
use house::rating::{Band, EXTENDED_D, PartRating};
use house::record::{ChangeKind, Survey, power_paths};

/// What an entry filter to buy is rated for: passes 5 to 1002 MHz, stops 1125 to 1675 MHz by at least 40 dB
/// ([`FILTERS_PASS`]).
pub(super) fn entry_filter_rating() -> PartRating {
    PartRating {
        band: Some(Band { low_mhz: LABELS_BEGIN.value(), high_mhz: FILTERS_PASS.value() }),
        stop_band: Some(EXTENDED_D),
        rejection_db: Some(FILTERS_STOP_BY.value()),
        ..PartRating::default()
    }
}

/// What a splitter to buy is rated for: 5 to 1675 MHz, with the word MoCA.
pub(super) fn splitter_rating(legs: u8) -> PartRating {
    let all = |loss: Estimate| vec![loss.span.likely; usize::from(legs)];
    let leg_losses_db = match legs {
        2 => all(parts::SPLITTER_NEW_ONE_STAGE),
        3 => new_three_way().to_vec(),
        4 => all(parts::SPLITTER_NEW_TWO_STAGES),
        5 | 6 => all(parts::SPLITTER_NEW_SIX),
        _ => all(parts::SPLITTER_NEW_EIGHT),
    };
    PartRating {
        legs,
        leg_losses_db,
        band: Some(Band { low_mhz: LABELS_BEGIN.value(), high_mhz: EXTENDED_D.high_mhz }),
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
