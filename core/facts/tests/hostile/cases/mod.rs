//! Files made to harm, by what is wrong with them.

pub mod bags;
pub mod containers;
pub mod facts;
pub mod lies;

use ::facts::store::Store;
use serde_json::json;

use super::file_support::*;

/// A hostile file: what it is, and its bytes.
pub type Case = (&'static str, Vec<u8>);

/// Makes hostile files that name the survey with this id, which the store holds.
pub type Make = fn(&str, &Store) -> Vec<Case>;

/// All kinds. Each is made when it is its turn, because some take memory to make.
pub const ALL: [Make; 6] =
    [containers::containers, containers::names, bags::bags, bags::photos, facts::chains, facts::facts];

/// Files that need not be refused. What they do to a survey is what a law allows.
pub const LIES: [Make; 3] = [lies::rings, lies::forgets, lies::images];

/// A small bag that is right.
pub fn small(survey: &str) -> Bag {
    let facts = vec![
        line(1, 1, "is", &json!("part"), &[]),
        line(2, 1, "tag", &json!("S1"), &[]),
        line(3, 1, "tag", &json!("S2"), &[2]),
    ];
    Bag::new(survey, facts)
}

/// A bag, deflated.
pub fn sealed_lines(bag: &Bag) -> Vec<u8> {
    zip(&bag.entries().iter().map(|(name, content)| RawEntry::deflated(name, content)).collect::<Vec<_>>())
}
