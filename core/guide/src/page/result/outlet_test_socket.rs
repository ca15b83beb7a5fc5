//! Which network sockets a test within the house went through: the slowest of them ends it.

use phrase::Phrase;

use crate::screen::WordsRole;
use crate::session::Pending;
use crate::view::{Offer, Sketch};

/// Key and line rate, Mb/s, the most usual first.
const SOCKETS: [(&str, u32); 3] = [("1g", 1000), ("2.5g", 2500), ("100m", 100)];

const KEY: &str = "socket";

/// Asks for the slowest.
pub(super) fn ask(sketch: &mut Sketch<'_>) {
    let name = Phrase::new("test-socket");
    let mut offers: Vec<_> =
        SOCKETS.iter().map(|(key, _)| Offer::new(*key, Phrase::new(word(key)))).collect();
    offers.push(Offer::unsure());
    sketch.choice(KEY, &name, false, offers, &[]);
    sketch.words(WordsRole::Aside, &name.attribute("why"));
}

fn word(key: &str) -> String {
    format!("test-socket-{}", key.replace('.', "-"))
}

/// What was answered, Mb/s; `None` while nobody said, or is sure.
pub(super) fn told(pending: &Pending) -> Option<u32> {
    let picked = pending.one(KEY)?;
    SOCKETS.iter().find(|(key, _)| *key == picked).map(|(_, mbps)| *mbps)
}
