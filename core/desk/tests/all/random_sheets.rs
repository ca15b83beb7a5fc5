//! A house made at random, written out as a sheet, reads back as the same house: whoever looks at a seed sees that house.

use houses::as_sheet::{as_sheet, without_ids};
use houses::random;

use crate::support::told_by_a_sheet;

#[test]
fn a_house_of_a_seed_reads_back_from_its_sheet() {
    for seed in 0..40 {
        let house = random::survey(seed);
        let text = as_sheet(&house);
        let back = told_by_a_sheet(&text);
        assert_eq!(without_ids(&back), without_ids(&house), "seed {seed}\n{text}");
    }
}
