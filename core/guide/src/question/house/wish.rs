//! What is wanted in a room.

use facts::fact::SubjectId;
use house::record::{Asked, Reply, Room, Wish, field};
use phrase::{Arg, Phrase};

use crate::number::Quantity;
use crate::place::{Key, Question, choices};
use crate::question::answer::{Answer, Told, not_answered};
use crate::screen::PressWeight;
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// Speeds that may be wished for in a room.
    WishAnswer {
        /// Mail and one film.
        Light "light",
        /// Work at home.
        Work "work",
        /// As fast as a usual wire.
        Fast "fast",
        /// Nothing is wished for.
        None "none",
        /// One does not know.
        Unsure "unsure",
    }
}

impl WishAnswer {
    /// The speed, Mb/s towards the room and from it.
    const fn wish(self) -> Option<Wish> {
        match self {
            Self::Light => Some(Wish { down_mbps: 100.0, up_mbps: 20.0 }),
            // Who does not know gets what serves most work; it can be changed at any time.
            Self::Work | Self::Unsure => Some(Wish { down_mbps: 300.0, up_mbps: 50.0 }),
            Self::Fast => Some(Wish { down_mbps: 900.0, up_mbps: 300.0 }),
            Self::None => None,
        }
    }

    pub(in crate::question) fn draw(
        snapshot: &SurveySnapshot<'_>,
        builder: &mut ScreenBuilder<'_>,
        room: SubjectId,
    ) {
        let wish = wish_of(snapshot, room);
        let asked = snapshot.survey.answer(room, Asked::Wish).is_some();
        let is_unsure = snapshot.survey.reply(room, Asked::Wish) == Some(Reply::Unsure);
        let stands = |of: &&Self| of.wish() == wish && (wish.is_some() || asked);
        let now = Self::ALL.iter().filter(stands).find(|of| !is_unsure || **of == Self::Unsure);
        let offer = |wish: &Self| match wish {
            Self::Unsure => Offer::unsure(wish).about(taken_if_unsure()),
            wish => Offer::new(wish, Phrase::new(format!("wish-{}", wish.word()))),
        };
        let name = Question::Wish(room).phrase(snapshot);
        builder.choice(&Key::Wish, &name, false, Self::ALL.iter().map(offer).collect(), now);
        builder.press(&Key::OtherSpeed, &Phrase::new("wish-other"), PressWeight::Other);
    }

    pub(in crate::question) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Wish).ok_or_else(not_answered)
    }

    pub(in crate::question) fn answer(self, room: SubjectId) -> Answer {
        let reply = if self == Self::Unsure { Reply::Unsure } else { Reply::Yes };
        let answer = Answer::new().asked(room, Asked::Wish, reply);
        match self.wish() {
            Some(wish) => answer.says(room, field::room::WISH, &wish),
            None => answer.clears(room, field::room::WISH),
        }
    }
}

/// What is taken where nobody knows what to wish for.
fn taken_if_unsure() -> Phrase {
    let phrase = Phrase::new("wish-unsure-taken");
    match WishAnswer::Unsure.wish() {
        Some(wish) => phrase.with("down", Arg::Rate(wish.down_mbps)).with("up", Arg::Rate(wish.up_mbps)),
        None => phrase,
    }
}

choices! {
    /// What the network should be good for in all rooms of which nobody said more.
    WishForAll {
        /// Mail and one film.
        Light "light",
        /// Work at home.
        Work "work",
        /// As fast as a usual wire.
        Fast "fast",
        /// It differs from room to room.
        Differ "differ",
        /// One does not know.
        Unsure "unsure",
    }
}

impl WishForAll {
    /// The same of one room; `None` where each is asked about.
    const fn of_one(self) -> Option<WishAnswer> {
        Some(match self {
            Self::Light => WishAnswer::Light,
            Self::Work => WishAnswer::Work,
            Self::Fast => WishAnswer::Fast,
            Self::Unsure => WishAnswer::Unsure,
            Self::Differ => return None,
        })
    }

    /// What stands in the rooms, where it is the same in all of them.
    fn standing(snapshot: &SurveySnapshot<'_>) -> Option<Self> {
        let mut wishes = snapshot.survey.rooms.values().map(|room| room.wish);
        let first = wishes.next()??;
        let told = |all: &&Self| all.of_one().and_then(WishAnswer::wish) == Some(first);
        wishes.all(|wish| wish == Some(first)).then(|| Self::ALL.iter().find(told).copied())?
    }

    pub(in crate::question) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offer = |wish: &Self| match wish {
            Self::Unsure => Offer::unsure(wish).about(taken_if_unsure()),
            wish => Offer::new(wish, Phrase::new(format!("wish-{}", wish.word()))),
        };
        let offers = Self::ALL.iter().map(offer).collect();
        builder.choice(&Key::Wish, &Phrase::new("rooms-wish"), false, offers, &Self::standing(snapshot));
    }

    /// Says it of the new rooms, and of those of which nobody said anything; where all were alike, of all.
    pub(in crate::question) fn said(
        self,
        snapshot: &SurveySnapshot<'_>,
        mut answer: Answer,
        new: &[SubjectId],
    ) -> Answer {
        let Some(wish) = self.of_one() else { return answer };
        let were_alike = Self::standing(snapshot).is_some_and(|standing| standing != self);
        let told =
            |room: &Room| room.wish.is_some() || snapshot.survey.answer(room.id, Asked::Wish).is_some();
        let there =
            snapshot.survey.rooms.values().filter(|room| were_alike || !told(room)).map(|room| room.id);
        for room in there.chain(new.iter().copied()) {
            answer.edits.extend(wish.answer(room).edits);
        }
        answer
    }
}

/// Two numbers that are none of those speeds, Mb/s; what was not touched stays as it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::question) struct WishOtherAnswer {
    down_mbps: Option<f64>,
    up_mbps: Option<f64>,
}

impl WishOtherAnswer {
    pub(in crate::question) fn draw(
        snapshot: &SurveySnapshot<'_>,
        builder: &mut ScreenBuilder<'_>,
        room: SubjectId,
    ) {
        let wish = wish_of(snapshot, room);
        let (down, up) = (wish.map(|wish| wish.down_mbps), wish.map(|wish| wish.up_mbps));
        builder.number(&Key::Down, &Phrase::new("wish-down"), None, Quantity::Rate, down);
        builder.number(&Key::Up, &Phrase::new("wish-up"), None, Quantity::Rate, up);
    }

    pub(in crate::question) fn read(pending: &Pending) -> Told<Self> {
        Ok(Self {
            down_mbps: pending.number(&Key::Down, Quantity::Rate)?,
            up_mbps: pending.number(&Key::Up, Quantity::Rate)?,
        })
    }

    pub(in crate::question) fn answer(self, snapshot: &SurveySnapshot<'_>, room: SubjectId) -> Told<Answer> {
        let known = wish_of(snapshot, room);
        let down = self.down_mbps.or(known.map(|wish| wish.down_mbps));
        let up = self.up_mbps.or(known.map(|wish| wish.up_mbps));
        let (Some(down_mbps), Some(up_mbps)) = (down, up) else { return Err(not_answered()) };
        Ok(Answer::new().asked(room, Asked::Wish, Reply::Yes).says(
            room,
            field::room::WISH,
            &Wish { down_mbps, up_mbps },
        ))
    }
}

fn wish_of(snapshot: &SurveySnapshot<'_>, room: SubjectId) -> Option<Wish> {
    snapshot.survey.rooms.get(&room).and_then(|room: &Room| room.wish)
}
