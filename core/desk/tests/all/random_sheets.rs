//! A house made at random, written out as a sheet, reads back as the same house: whoever looks at a seed sees that house.

use desk::sheet;
use facts::fact::AuthorId;
use facts::store::Store;
use house::record::fold;
use houses::as_sheet::{as_sheet, without_ids};
use houses::random;
use tempfile::TempDir;

#[test]
fn a_house_of_a_seed_reads_back_from_its_sheet() {
    let home = TempDir::new().unwrap();
    for seed in 0..40 {
        let house = random::survey(seed);
        let text = as_sheet(&house);
        let read = sheet::read(text.as_bytes(), None);
        let read = read.unwrap_or_else(|problems| panic!("seed {seed}: {problems:?}\n{text}"));
        let mut store =
            Store::create(&home.path().join(format!("{seed}.legwork")), AuthorId::random()).unwrap();
        store.write(&read.edits(store.survey_id().subject())).unwrap();
        let back = fold(store.ledger(), store.survey_id()).unwrap();
        assert_eq!(without_ids(&back), without_ids(&house), "seed {seed}\n{text}");
    }
}
