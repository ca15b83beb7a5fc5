//! The best of all ways through a tree of choices: every one of them where they are few, the most promising where they are
//! many; always with how far a better one may still be away.
//!
//! Branch and bound (Land and Doig, Econometrica 28, 1960): what cannot become better than the best so far is not looked at.
//! Level by level, as many choices as are made; what stands on the same choices in another order is one. Where there are more
//! sets of choices than may all be looked at, only the best few of each level go on: a beam (Lowerre, The HARPY speech recognition
//! system, 1976), wide at first, and the best bound of those left behind is told. From the third choice on only those are weighed that
//! promised most when they were weighed last, as accelerated greedy does (Minoux, 1978, from memory). The way of whoever takes what is best
//! next is never left behind and looks at all, so that none is worse than that; where that takes more than may be looked at, it too looks
//! at those that promise most.

use std::collections::BTreeMap;
use std::sync::Arc;

/// Where choices can be made.
pub(super) trait Space: Sized {
    /// What is chosen.
    type Choice: Copy + Ord;
    /// What is there after some choices.
    type State;
    /// Why no more can be told.
    type Error;

    /// The choices that may be made here.
    fn choices(&self, state: &Self::State) -> Vec<Self::Choice>;

    /// What is there after each of these, where it can be made.
    fn then(&mut self, state: &Self::State, choices: &[Self::Choice]) -> Result<Made<Self>, Self::Error>;

    /// How good it is to stop here.
    fn score(&self, state: &Self::State) -> f64;

    /// What no choices from here on can bring above.
    fn bound(&self, state: &Self::State) -> f64;
}

/// Choices that were made, each with what is there then.
pub(super) type Made<S> = Vec<(<S as Space>::Choice, <S as Space>::State)>;

/// How far a search goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Reach {
    /// Where no more sets of choices can be made, none is left behind.
    pub(super) whole: usize,
    /// Else so many of each level go on, and more as long as that takes no more than a quarter of `whole`.
    pub(super) beam: usize,
    /// So many of the choices that promise most are weighed then, from the third choice on.
    pub(super) promising: usize,
    /// It then ends after so many levels on which none is better than all before, and nobody who takes the next best gains any more.
    pub(super) patience: usize,
    /// At most so many choices are made in a row.
    pub(super) depth: usize,
    /// Once so many states were looked at, only the way of whoever takes what is best next goes on.
    pub(super) most: usize,
}

/// What a search found.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Found<C, S> {
    /// The choices, in the order in which they are made.
    pub(super) choices: Vec<C>,
    /// What is there then.
    pub(super) state: S,
    /// How good that is.
    pub(super) score: f64,
    /// No way is better than this: the score itself where nothing was left behind.
    pub(super) bound: f64,
    /// So many states were looked at.
    pub(super) looked_at: usize,
}

/// What each choice brought when it was weighed last.
type Promises<C> = Arc<BTreeMap<C, f64>>;

/// Such a share of what may be looked at with none left behind goes into breadth where some are.
const BREADTH: usize = 4;

struct Way<C, S> {
    choices: Vec<C>,
    state: S,
    score: f64,
    /// Whether it is the way of whoever takes what is best next, and whether that raised the score.
    leads: bool,
    rises: bool,
    promises: Promises<C>,
}

/// Searches from a state.
pub(super) fn search<Sp>(
    space: &mut Sp,
    start: Sp::State,
    reach: Reach,
) -> Result<Found<Sp::Choice, Sp::State>, Sp::Error>
where
    Sp: Space,
    Sp::State: Clone,
{
    let score = space.score(&start);
    let count = space.choices(&start).len();
    let sets = u32::try_from(count).ok().and_then(|count| 1_usize.checked_shl(count)).unwrap_or(usize::MAX);
    let mut search = Search {
        reach,
        count: count.max(1),
        is_narrow: sets > reach.whole,
        best: (start.clone(), Vec::new(), score),
        left_behind: f64::NEG_INFINITY,
        seen: BTreeMap::new(),
        looked_at: 0,
    };
    let promises = Arc::default();
    let mut level =
        vec![Way { choices: Vec::new(), state: start, score, leads: true, rises: true, promises }];
    let mut in_vain = 0;
    for _ in 0..reach.depth {
        let best_before = search.best.2;
        level = search.next_level(space, level)?;
        in_vain = if search.best.2 > best_before { 0 } else { in_vain + 1 };
        let leader_rises = level.iter().any(|way| way.leads && way.rises);
        if level.is_empty() || search.is_narrow && in_vain >= reach.patience && !leader_rises {
            break;
        }
    }
    let behind = level.iter().map(|way| space.bound(&way.state));
    let (state, choices, score) = search.best;
    let bound = behind.fold(search.left_behind, f64::max).max(score);
    Ok(Found { choices, state, score, bound, looked_at: search.looked_at })
}

/// A search on its way.
struct Search<C, S> {
    reach: Reach,
    /// How many choices there are to begin with.
    count: usize,
    /// Whether some are left behind.
    is_narrow: bool,
    best: (S, Vec<C>, f64),
    left_behind: f64,
    /// The score of every set of choices that was looked at.
    seen: BTreeMap<Vec<C>, f64>,
    looked_at: usize,
}

impl<C: Copy + Ord, S: Clone> Search<C, S> {
    /// What comes of one more choice on each way; the best first, and no more of them than go on.
    fn next_level<Sp>(&mut self, space: &mut Sp, level: Vec<Way<C, S>>) -> Result<Vec<Way<C, S>>, Sp::Error>
    where
        Sp: Space<Choice = C, State = S>,
    {
        let mut next = Vec::new();
        for way in level {
            let bound = space.bound(&way.state);
            if bound <= self.best.2 {
                continue;
            }
            if self.looked_at >= self.reach.most && !(way.leads && way.rises) {
                self.left_behind = self.left_behind.max(bound);
                continue;
            }
            self.go_on(space, &way, bound, &mut next)?;
        }
        self.is_narrow |= self.looked_at > self.reach.whole;
        // What is found early leaves more out. Sorting keeps the order of equals.
        next.sort_by(|a, b| b.leads.cmp(&a.leads).then(b.score.total_cmp(&a.score)));
        let wide = (self.reach.whole / BREADTH).saturating_sub(self.looked_at) / self.count;
        let go_on = self.reach.beam.max(wide);
        if self.is_narrow && next.len() > go_on {
            let behind = next.drain(go_on..).map(|way| space.bound(&way.state));
            self.left_behind = behind.fold(self.left_behind, f64::max);
        }
        Ok(next)
    }

    /// What comes of one more choice on a way.
    fn go_on<Sp>(
        &mut self,
        space: &mut Sp,
        way: &Way<C, S>,
        bound: f64,
        next: &mut Vec<Way<C, S>>,
    ) -> Result<(), Sp::Error>
    where
        Sp: Space<Choice = C, State = S>,
    {
        let with = |choice| [way.choices.as_slice(), &[choice]].concat();
        let all = space.choices(&way.state);
        // What was come to by another way is not looked at again.
        let is_fresh = |choice: &C| !self.seen.contains_key(&together(&with(*choice)));
        let mut fresh: Vec<C> = all.iter().copied().filter(is_fresh).collect();
        let looks_at_all = way.leads && self.looked_at < self.reach.most;
        if self.is_narrow && way.choices.len() >= 2 && !looks_at_all && fresh.len() > self.reach.promising {
            // What was never weighed promises all.
            let promise = |choice: &C| way.promises.get(choice).copied().unwrap_or(f64::INFINITY);
            fresh.sort_by(|a, b| promise(b).total_cmp(&promise(a)));
            fresh.truncate(self.reach.promising);
            self.left_behind = self.left_behind.max(bound);
        }
        let made = space.then(&way.state, &fresh)?;
        let mut promises = way.promises.as_ref().clone();
        promises.extend(made.iter().map(|(choice, state)| (*choice, space.score(state) - way.score)));
        let promises = Arc::new(promises);
        for (choice, state) in made {
            self.looked_at += 1;
            let (choices, score) = (with(choice), space.score(&state));
            self.seen.insert(together(&choices), score);
            if score > self.best.2 {
                self.best = (state.clone(), choices.clone(), score);
            }
            let (rises, promises) = (score > way.score, Arc::clone(&promises));
            next.push(Way { choices, state, score, leads: false, rises, promises });
        }
        if way.leads {
            let scored = all.iter().map(|choice| together(&with(*choice)));
            let scored = scored.filter_map(|set| Some((*self.seen.get(&set)?, set)));
            if let Some((_, first)) = scored.max_by(|a, b| a.0.total_cmp(&b.0)) {
                let leaders = next.iter_mut().filter(|way| together(&way.choices) == first);
                leaders.for_each(|leader| (leader.leads, leader.rises) = (true, leader.score > way.score));
            }
        }
        Ok(())
    }
}

/// Choices without their order.
fn together<C: Copy + Ord>(choices: &[C]) -> Vec<C> {
    let mut together = choices.to_vec();
    together.sort_unstable();
    together
}

#[cfg(test)]
mod tests {
    use std::convert::Infallible;

    use coax::dice::Dice;

    use super::*;

    /// Some of so many things may be chosen: each is worth something, costs something, and pairs of them are worth more or less
    /// together. No more than `cap` can come of all.
    struct Things {
        worth: Vec<f64>,
        price: Vec<f64>,
        pairs: Vec<Vec<f64>>,
        cap: f64,
    }

    impl Things {
        fn random(seed: u64, count: usize) -> Self {
            let mut dice = Dice::thrown(seed, 0, [0; 16]);
            let mut upto = |most: f64| most * dice.unit();
            let worth: Vec<f64> = (0..count).map(|_| upto(100.0) - 30.0).collect();
            let price = (0..count).map(|_| 5.0 + upto(40.0)).collect();
            let pairs = (0..count).map(|_| (0..count).map(|_| upto(120.0) - 60.0).collect()).collect();
            let cap = 60.0 * count as f64;
            Self { worth, price, pairs, cap }
        }

        fn value(&self, chosen: &[usize]) -> f64 {
            let alone: f64 = chosen.iter().map(|thing| self.worth[*thing]).sum();
            let pairs =
                chosen.iter().flat_map(|a| chosen.iter().filter(move |b| a < *b).map(move |b| (a, b)));
            (alone + pairs.map(|(a, b)| self.pairs[*a][*b]).sum::<f64>()).min(self.cap)
        }

        fn price(&self, chosen: &[usize]) -> f64 {
            chosen.iter().map(|thing| self.price[*thing]).sum()
        }

        /// The best of all sets, looked at one by one.
        fn best_of_all(&self) -> f64 {
            let count = self.worth.len();
            let sets = (0..1_u32 << count)
                .map(|set| (0..count).filter(|thing| set & (1 << thing) != 0).collect::<Vec<_>>());
            sets.map(|set| self.value(&set) - self.price(&set)).fold(f64::NEG_INFINITY, f64::max)
        }

        /// What comes of taking what gains most next, as long as anything gains.
        fn greedy(&self) -> f64 {
            let mut chosen: Vec<usize> = Vec::new();
            let score = |chosen: &[usize]| self.value(chosen) - self.price(chosen);
            loop {
                let with = |thing: usize| [chosen.as_slice(), &[thing]].concat();
                let free = (0..self.worth.len()).filter(|thing| !chosen.contains(thing));
                let next = free.map(with).max_by(|a, b| score(a).total_cmp(&score(b)));
                match next.filter(|next| score(next) > score(&chosen)) {
                    Some(next) => chosen = next,
                    None => return score(&chosen),
                }
            }
        }
    }

    impl Space for Things {
        type Choice = usize;
        type State = Vec<usize>;
        type Error = Infallible;

        fn choices(&self, state: &Vec<usize>) -> Vec<usize> {
            (0..self.worth.len()).filter(|thing| !state.contains(thing)).collect()
        }

        fn then(
            &mut self,
            state: &Vec<usize>,
            choices: &[usize],
        ) -> Result<Vec<(usize, Vec<usize>)>, Infallible> {
            Ok(choices.iter().map(|thing| (*thing, [state.as_slice(), &[*thing]].concat())).collect())
        }

        fn score(&self, state: &Vec<usize>) -> f64 {
            self.value(state) - self.price(state)
        }

        fn bound(&self, state: &Vec<usize>) -> f64 {
            self.cap - self.price(state)
        }
    }

    const WHOLE: Reach =
        Reach { whole: usize::MAX, beam: 1, promising: 1, patience: 1, depth: 16, most: usize::MAX };

    /// A beam from the start.
    fn beam(most: usize) -> Reach {
        Reach { whole: 0, beam: 3, promising: 4, patience: 2, depth: 16, most }
    }

    fn found(things: &mut Things, reach: Reach) -> Found<usize, Vec<usize>> {
        let Ok(found) = search(things, Vec::new(), reach);
        found
    }

    #[test]
    fn where_none_is_left_behind_it_is_the_best_of_all() {
        for (seed, count) in (0..400).zip((2..9).cycle()) {
            let mut things = Things::random(seed, count);
            let best = things.best_of_all();
            let found = found(&mut things, WHOLE);
            assert!((found.score - best).abs() < 1e-9, "seed {seed}: {} for {best}", found.score);
            assert!((found.bound - found.score).abs() < 1e-9, "seed {seed}: nothing was left behind");
            assert!((things.score(&found.choices) - found.score).abs() < 1e-9);
        }
    }

    #[test]
    fn a_beam_is_never_above_its_bound_nor_the_best_of_all_above_it() {
        let (mut proven, mut at_best) = (0, 0);
        for seed in 0..300 {
            let mut things = Things::random(seed, 9);
            let best = things.best_of_all();
            let found = found(&mut things, beam(80));
            assert!(found.score <= best + 1e-9 && best <= found.bound + 1e-9, "seed {seed}");
            proven += usize::from(found.bound <= found.score);
            at_best += usize::from(found.score >= best - 1e-9);
        }
        assert!(proven < 300, "a beam of three leaves something behind");
        assert!(at_best >= 150, "{at_best} of 300 found the best of all");
    }

    #[test]
    fn a_beam_is_never_worse_than_taking_the_next_best() {
        for seed in 0..1_000 {
            let mut things = Things::random(seed, 14);
            let greedy = things.greedy();
            let found = found(&mut things, beam(usize::MAX));
            assert!(found.score >= greedy - 1e-9, "seed {seed}: {} after {greedy}", found.score);
        }
    }

    /// Each of two alone is not worth its price, and together they are.
    #[test]
    fn two_that_are_worth_it_only_together_are_found() {
        let pairs = vec![vec![0.0, 200.0, 0.0], vec![0.0; 3], vec![0.0; 3]];
        let mut things = Things { worth: vec![0.0; 3], price: vec![30.0, 30.0, 1.0], pairs, cap: 500.0 };
        assert!(things.greedy().abs() < 1e-9);
        let found = found(&mut things, WHOLE);
        assert_eq!(found.choices, [0, 1]);
        assert!((found.score - 140.0).abs() < 1e-9);
    }
}
