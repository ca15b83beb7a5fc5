//! Which rooms there are.

use facts::fact::SubjectId;
use house::record::{Asked, Is, Reply, field};
use phrase::Phrase;

use super::WishForAll;
use crate::place::{Key, choices};
use crate::question::answer::{Answer, Told, not_answered};
use crate::screen::{WordsRole, WritingKind};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// Rooms that many houses have.
    UsualRoom {
        /// The living room.
        Living "living",
        /// The office.
        Office "office",
        /// The bedroom.
        Bedroom "bedroom",
        /// The child's room.
        Child "child",
        /// The kitchen.
        Kitchen "kitchen",
        /// The basement.
        Basement "basement",
        /// The attic.
        Attic "attic",
        /// The guest room.
        Guest "guest",
    }
}

impl UsualRoom {
    fn phrase(self) -> Phrase {
        Phrase::new(format!("room-{}", self.word()))
    }
}

/// Rooms that were named: those of the list, and others as they were written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::question) struct RoomsAnswer {
    usual: Vec<UsualRoom>,
    others: Vec<String>,
    wish: Option<WishForAll>,
}

impl RoomsAnswer {
    pub(in crate::question) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offers = UsualRoom::ALL.iter().map(|room| Offer::new(room, room.phrase())).collect();
        let is_there = |usual: &&UsualRoom| {
            let word = builder.say(&usual.phrase());
            snapshot.survey.rooms.values().any(|room| room.name == word)
        };
        let named: Vec<_> = UsualRoom::ALL.iter().filter(is_there).collect();
        builder.choice(&Key::Rooms, &Phrase::new("ask-rooms"), true, offers, named);
        let hint = Phrase::new("ask-rooms.hint");
        builder.writing(&Key::Others, &Phrase::new("rooms-others"), Some(&hint), WritingKind::Names, "");
        let others: Vec<_> = snapshot.survey.rooms.values().map(|room| room.name.clone()).collect();
        if !others.is_empty() {
            builder.words(WordsRole::Aside, &Phrase::new("rooms-known").text("rooms", others.join(", ")));
        }
        WishForAll::draw(snapshot, builder);
    }

    pub(in crate::question) fn read(pending: &Pending) -> Self {
        let picked: Vec<UsualRoom> = pending.picked(&Key::Rooms).unwrap_or_default();
        let others = pending.written(&Key::Others).unwrap_or_default();
        Self {
            usual: UsualRoom::ALL.iter().copied().filter(|room| picked.contains(room)).collect(),
            others: others.split(['\n', ',', ';']).map(|name| name.trim().to_owned()).collect(),
            wish: pending.one(&Key::Wish),
        }
    }

    /// Rooms are added here. One is taken away on its own page, where what hangs on it is seen.
    pub(in crate::question) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Told<Answer> {
        let of_list = self.usual.into_iter().map(|room| snapshot.language.say(&room.phrase()));
        let mut names: Vec<String> = Vec::new();
        for name in of_list.chain(self.others).filter(|name| !name.is_empty()) {
            let known = snapshot.survey.rooms.values().any(|room| room.name.eq_ignore_ascii_case(&name));
            if !known && !names.iter().any(|other| other.eq_ignore_ascii_case(&name)) {
                names.push(name);
            }
        }
        if names.is_empty() && snapshot.survey.rooms.is_empty() {
            return Err(not_answered());
        }
        let mut answer = Answer::new().asked(snapshot.survey.id, Asked::Rooms, Reply::Yes);
        let mut new = Vec::new();
        for name in names {
            let id = SubjectId::random();
            answer = answer.is(id, Is::Room).says(id, field::room::NAME, &name);
            new.push(id);
        }
        Ok(match self.wish {
            Some(wish) => wish.said(snapshot, answer, &new),
            None => answer,
        })
    }
}
