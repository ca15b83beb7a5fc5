//! Which network sockets a test within the house went through: the slowest of them ends it.

use phrase::Phrase;

use crate::place::{Key, choices};
use crate::screen::WordsRole;
use crate::session::Pending;
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// A network socket by its line rate, the most usual first.
    Socket {
        /// 1 Gb/s.
        Gigabit "1g",
        /// 2.5 Gb/s.
        TwoAndAHalf "2.5g",
        /// 100 Mb/s.
        Hundred "100m",
        /// Somebody looked and could not tell.
        Unsure "unsure",
    }
}

impl Socket {
    /// Its line rate, Mb/s; `None` where nobody can tell.
    pub(super) const fn mbps(self) -> Option<u32> {
        match self {
            Self::Gigabit => Some(1000),
            Self::TwoAndAHalf => Some(2500),
            Self::Hundred => Some(100),
            Self::Unsure => None,
        }
    }

    /// The one of this line rate, Mb/s.
    pub(super) fn of_mbps(mbps: u32) -> Option<Self> {
        Self::ALL.iter().copied().find(|socket| socket.mbps() == Some(mbps))
    }
}

/// All of them to choose from.
pub(super) fn offers() -> Vec<Offer> {
    let offer = |socket: &Socket| match socket {
        Socket::Unsure => Offer::unsure(socket),
        // A message's name holds no dot but before its attribute.
        socket => Offer::new(socket, Phrase::new(format!("test-socket-{}", socket.word().replace('.', "-")))),
    };
    Socket::ALL.iter().map(offer).collect()
}

/// Asks for the slowest.
pub(super) fn ask(builder: &mut ScreenBuilder<'_>) {
    let name = Phrase::new("test-socket");
    builder.choice(&Key::Socket, &name, false, offers(), None::<&Socket>);
    builder.words(WordsRole::Aside, &name.attribute("why"));
}

/// What was answered, Mb/s; `None` while nobody said, or is sure.
pub(super) fn told(pending: &Pending) -> Option<u32> {
    pending.one::<Socket>(&Key::Socket)?.mbps()
}
