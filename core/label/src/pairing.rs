//! Pairs the words of one segment of a label with the figures, or the bands, that stand beside them.
//!
//! Some labels put a word before what it is for ("ISO 25dB"), some behind it ("25dB ISO"), some do both. A word is for
//! at most one thing, the one before it or the one after it, and a thing has at most one word. Of all ways to pair
//! them the one that fits best is taken: most words placed, each at what may be its own by size, and what is left
//! without a word such as needs none. So the order in which a label's pieces stand does not decide by itself; where
//! two ways fit equally well and differ, that is told and not decided.

use std::cmp::Ordering;

/// One step of a segment.
#[derive(Debug, Clone)]
pub(super) enum Step<W> {
    /// A word; whether nothing stands between it and the thing before it.
    Word(W, bool),
    /// A figure or band, by its place among all.
    Thing(usize),
}

/// On which side of its word a thing stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// The word stands before the thing.
    Before,
    /// The word stands right behind the thing.
    Behind,
}

/// What the pairing needs to know of words and things.
pub(super) trait Fit<W> {
    /// How well the word fits the thing; 0 if it cannot be its word.
    fn pair(&self, word: &W, thing: usize, side: Side) -> u32;
    /// How well the thing stands without a word; less than any word that fits.
    fn alone(&self, thing: usize) -> u32;
}

/// What words of the same run say together.
pub(super) trait Joins {
    /// Whether this word gives way to `earlier`, which stands right before it.
    fn gives_way_to(&self, earlier: &Self) -> bool;
}

/// A thing with its word, if it has one.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Pair<W> {
    /// By its place among all.
    pub thing: usize,
    /// Its word and where that stands.
    pub word: Option<(W, Side)>,
    /// Whether another way to pair fits as well and gives it another word or none.
    pub is_unclear: bool,
}

/// What a segment comes to.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Pairing<W> {
    /// The things in their order.
    pub pairs: Vec<Pair<W>>,
    /// The last word, if it stands behind all things and is none's.
    pub left_over: Option<W>,
}

/// The best way to pair.
pub(super) fn pair<W: Joins + Clone + PartialEq>(steps: &[Step<W>], fit: &impl Fit<W>) -> Pairing<W> {
    let line = Line::of(steps);
    let forward = best(&line, fit, Side::Before);
    let backward = best(&line, fit, Side::Behind);
    let has_word = |found: &Found<W>| found.words.iter().map(Option::is_some).collect::<Vec<_>>();
    // Two words that could be one thing's leave the one before; only a thing with or without a word is a question.
    let differs = forward.score == backward.score && has_word(&forward) != has_word(&backward);
    let word = |found: &Found<W>, at: usize| found.words.get(at).cloned().flatten();
    let pairs = line.things.iter().enumerate().map(|(at, thing)| {
        let (first, second) = (word(&forward, at), word(&backward, at));
        let meaning = |word: &Option<(W, Side)>| word.as_ref().map(|(word, _)| word.clone());
        let is_unclear = differs && meaning(&first) != meaning(&second);
        Pair { thing: *thing, word: first, is_unclear }
    });
    Pairing { pairs: pairs.collect(), left_over: forward.left_over }
}

/// A segment as things with the runs of words around them: one run more than things.
struct Line<'s, W> {
    things: Vec<usize>,
    runs: Vec<Vec<(&'s W, bool)>>,
}

impl<'s, W> Line<'s, W> {
    fn of(steps: &'s [Step<W>]) -> Self {
        let (mut things, mut runs) = (Vec::new(), Vec::new());
        let mut run = Vec::new();
        for step in steps {
            match step {
                Step::Word(word, touches) => run.push((word, *touches)),
                Step::Thing(thing) => {
                    things.push(*thing);
                    runs.push(std::mem::take(&mut run));
                }
            }
        }
        runs.push(run);
        Self { things, runs }
    }
}

/// What a run of words may do: a word for the thing before it, one for the thing after it.
type Option2<'s, W> = (Option<&'s W>, Option<&'s W>);

fn ways<'s, W: Joins>(run: &[(&'s W, bool)]) -> Vec<Option2<'s, W>> {
    let strongest = |run: &[(&'s W, bool)]| {
        run.iter().fold(None, |kept: Option<&'s W>, (word, _)| match kept {
            Some(earlier) if word.gives_way_to(earlier) => Some(earlier),
            _ => Some(*word),
        })
    };
    let mut ways = vec![(None, None), (None, strongest(run))];
    let touching: Vec<&'s W> = run.iter().map_while(|(word, touches)| touches.then_some(*word)).collect();
    if let Some(first) = touching.first() {
        let behind = touching.iter().copied().fold(
            *first,
            |kept, word| {
                if kept.gives_way_to(word) { word } else { kept }
            },
        );
        ways.push((Some(behind), None));
        ways.push((Some(*first), strongest(run.get(1..).unwrap_or_default())));
    }
    ways
}

struct Found<W> {
    score: u32,
    words: Vec<Option<(W, Side)>>,
    left_over: Option<W>,
}

/// A way up to one gap: how well it fits, how often it took the wished side, and the words so far.
#[derive(Clone)]
struct Partial<'s, W> {
    score: u32,
    wished: u32,
    words: Vec<Option<(&'s W, Side)>>,
}

/// The way that fits best; of ways that fit equally well the one with most words on the wished side.
fn best<W: Joins + Clone>(line: &Line<'_, W>, fit: &impl Fit<W>, wish: Side) -> Found<W> {
    // By whether the next thing has its word already.
    let mut open = Some(Partial { score: 0, wished: 0, words: Vec::new() });
    let mut taken: Option<Partial<'_, W>> = None;
    let mut is_last_used = false;
    for (gap, run) in line.runs.iter().enumerate() {
        let (before, after) = (gap.checked_sub(1).and_then(|at| line.things.get(at)), line.things.get(gap));
        let (mut next_open, mut next_taken) = (None, None);
        let mut next_last_used = false;
        for (state, is_taken) in [(&open, false), (&taken, true)] {
            let Some(state) = state else { continue };
            for (behind, ahead) in ways(run) {
                let mut way = state.clone();
                match (before, behind) {
                    (Some(_), Some(_)) if is_taken => continue,
                    (Some(thing), Some(word)) => {
                        let fits = fit.pair(word, *thing, Side::Behind);
                        if fits == 0 {
                            continue;
                        }
                        way.score += fits;
                        way.wished += u32::from(wish == Side::Behind);
                        way.words.push(Some((word, Side::Behind)));
                    }
                    (Some(thing), None) if !is_taken => {
                        way.score += fit.alone(*thing);
                        way.words.push(None);
                    }
                    (None, Some(_)) => continue,
                    _ => {}
                }
                match (ahead, after) {
                    (Some(word), Some(thing)) => {
                        let fits = fit.pair(word, *thing, Side::Before);
                        if fits == 0 {
                            continue;
                        }
                        way.score += fits;
                        way.wished += u32::from(wish == Side::Before);
                        way.words.push(Some((word, Side::Before)));
                        keep(&mut next_taken, way);
                    }
                    (Some(_), None) => {}
                    (None, _) => {
                        let is_used = behind.is_some();
                        if keep(&mut next_open, way) {
                            next_last_used = is_used;
                        }
                    }
                }
            }
        }
        (open, taken, is_last_used) = (next_open, next_taken, next_last_used);
    }
    let last = line.runs.last().and_then(|run| ways(run).into_iter().find_map(|(_, ahead)| ahead));
    let left_over = last.filter(|_| !is_last_used).cloned();
    let (score, words) = open.map_or((0, Vec::new()), |way| (way.score, way.words));
    let words = words.into_iter().map(|word| word.map(|(word, side)| (word.clone(), side))).collect();
    Found { score, words, left_over }
}

/// Keeps the better of two ways; whether the new one was kept.
fn keep<'s, W: Clone>(kept: &mut Option<Partial<'s, W>>, way: Partial<'s, W>) -> bool {
    let order = kept
        .as_ref()
        .map_or(Ordering::Greater, |old| way.score.cmp(&old.score).then(way.wished.cmp(&old.wished)));
    if order == Ordering::Greater {
        *kept = Some(way);
    }
    order == Ordering::Greater
}
