//! The guide's screens, the command's words, its JSON and the report say one thing of a house: of what is met, what is wrong
//! and what comes next, whatever stands in the house and whatever was measured there.
//!
//! Houses and readings are made at random (`houses::random`); `LEGWORK_HOUSES` is how many are looked at, `LEGWORK_SEED` the
//! seed of the first. All four tell the same work list, made with few draws: with how many the command makes its own is for
//! the checks that run it (`one_verdict`).

mod level;
mod met;
mod next;
mod planted;
mod said;
mod wrong;

use advice::forecast::{Options as Draws, forecast};
use advice::worklist::Options;
use house::record::Survey;
use houses::random::{self, seeds};

use said::Said;

/// How many houses are looked at where nobody says.
const HOUSES: u64 = 7;

/// Few draws: what is asked is whether all say the same, not the last megabit.
fn few_draws() -> Options {
    let draws = |draws| Draws { draws, seed: 1, points: 45, settles: false };
    Options { screening: draws(4), stating: draws(8), most_steps: 16, ..Options::default() }
}

/// The house of a seed, with what was measured in it.
fn survey(seed: u64) -> Survey {
    let house = random::survey(seed);
    let expected = forecast(&house, &few_draws().stating).unwrap();
    random::with_tests(&house, &expected, seed)
}

/// Every law that is broken, and how.
fn broken(said: &Said) -> Vec<String> {
    [met::broken(said), level::broken(said), wrong::broken(said), next::broken(said)].concat()
}

#[test]
fn all_say_one_thing_of_every_house() {
    let found = seeds::over_seeds(HOUSES, |seed| broken(&Said::of(&survey(seed))));
    seeds::none(&found, &std::env::temp_dir(), survey);
}
