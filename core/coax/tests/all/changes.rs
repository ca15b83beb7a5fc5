//! A house changed again and again: what is worked out of a change alone is what the changed house gives when solved anew.

use std::sync::Arc;

use crate::houses::{House, amplifier, house};
use crate::twin::quiet_part;
use coax::model::Cable;
use coax::rated::{PadRating, Rating, SplitterRating};
use coax::{
    Decibels, Dice, FrequencyGrid, Megahertz, Metres, Model, PartIndex, Samples, Span, Sweep, Tree, Wanted,
};
use num_complex::Complex64;
use proptest::prelude::*;

/// Houses, and changes of each: 10,000 in all.
const HOUSES: u32 = 200;
const CHANGES: usize = 50;

/// What is changed, where, and by how much.
type Change = (prop::sample::Index, u8, f64, u64);

/// The house with one thing changed that leaves its shape: only such are solved by what the change is alone.
fn changed(house: &House, (place, kind, size, seed): &Change) -> House {
    let mut house = house.clone();
    let mut ends: Vec<_> = house.ends.iter_mut().filter(|end| end.1 != Complex64::ZERO).collect();
    if *kind == 0 && !ends.is_empty() {
        let end = place.index(ends.len());
        ends[end].1 = Complex64::from_polar(0.05 + 0.9 * size, 6.0 * size);
        return house;
    }
    let at = place.index(house.models.len());
    if !house.models[at].is_reciprocal() {
        return house;
    }
    let draw = |rating: Rating| rating.draw(&mut Dice::thrown(*seed, 0, [1; 16])).unwrap();
    let model = match (house.models[at].ports(), *kind) {
        (2, 1) => draw(Rating::Pad(PadRating { loss: Span::exact(20.0 * size), return_loss: None })),
        (2, _) => {
            Model::Cable(Cable::new(Metres(40.0 * size), 73.0 + 4.0 * size, 0.66, 0.0008, 0.83).unwrap())
        }
        (ports @ 3.., _) => draw(Rating::Splitter(SplitterRating {
            legs: vec![Span::exact(4.0 + 10.0 * size); ports - 1],
            band: None,
            isolation: Some(Decibels(16.0 + 20.0 * size)),
            return_loss: None,
            for_moca: None,
        })),
        _ => return house,
    };
    house.models[at] = Arc::new(model);
    house
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(HOUSES))]

    #[test]
    fn a_change_solved_again_is_the_changed_house_solved(
        first in house(prop_oneof![12 => quiet_part(), 1 => amplifier()], 12),
        root in any::<prop::sample::Index>(),
        asked in proptest::collection::vec((any::<prop::sample::Index>(), any::<prop::sample::Index>()), 1..6),
        changes in proptest::collection::vec(
            (any::<prop::sample::Index>(), 0..4_u8, 0.0..1.0_f64, any::<u64>()), CHANGES),
        is_kept in any::<bool>(),
    ) {
        let root = PartIndex(root.index(first.models.len()));
        let grid = FrequencyGrid::even(Megahertz(1125.0), Megahertz(1675.0), 71).unwrap();
        let mut houses = vec![first];
        for change in &changes {
            // Each of the first house, as candidates are weighed; or each of the one before, as work goes on.
            let of = if is_kept { houses.last().unwrap() } else { &houses[0] };
            houses.push(changed(of, change));
        }
        let outlets = houses[0].network().1;
        let asked: Vec<_> = asked
            .iter()
            .map(|(to, from)| (outlets[to.index(outlets.len())], outlets[from.index(outlets.len())]))
            .collect();
        let trees: Vec<Tree> = houses.iter().map(|house| house.network().0.tree(root).unwrap()).collect();
        let swept = Sweep::on(grid.clone()).powers(&trees.iter().collect::<Vec<_>>(), &asked).unwrap();
        let mut samples = Samples::on(grid);
        for (number, (powers, tree)) in swept.iter().zip(&trees).enumerate() {
            let full = samples.of(tree).unwrap().solve(Wanted::All).unwrap();
            for (pair, &(to, from)) in asked.iter().enumerate() {
                for (found, wave) in powers.of(pair).iter().zip(full.transfer(to, from).unwrap()) {
                    let wanted = wave.norm_sqr();
                    prop_assert!(
                        (found - wanted).abs() <= 1e-12 * (1.0 + wanted),
                        "after change {number}: {found} not {wanted}"
                    );
                }
            }
        }
    }
}
