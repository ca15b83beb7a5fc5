//! What is said about the last deed.

use phrase::Phrase;
use telling::words::Language;

use crate::screen::{Aloud, NoticeRole, NoticeShown};

/// What was wrong with the last deed, or what it did.
struct Notice {
    number: u64,
    role: NoticeRole,
    phrase: Phrase,
}

/// All that is said about the last deed.
#[derive(Default)]
pub(crate) struct Notices {
    now: Vec<Notice>,
    /// Counts what was ever said, so that each notice has an id of its own.
    said: u64,
}

impl Notices {
    /// Says one more. What is said already is not said beside itself, but anew.
    pub(crate) fn tell(&mut self, role: NoticeRole, phrase: Phrase) {
        self.now.retain(|notice| (notice.role, &notice.phrase) != (role, &phrase));
        self.said += 1;
        self.now.push(Notice { number: self.said, role, phrase });
    }

    /// Says only what was refused any more.
    pub(crate) fn keep_refusals(&mut self) {
        self.now.retain(|notice| notice.role == NoticeRole::Problem);
    }

    /// Says nothing any more.
    pub(crate) fn clear(&mut self) {
        self.now.clear();
    }

    /// As a screen shows one thing that is said instead of all others.
    pub(crate) fn alone(
        &mut self,
        role: NoticeRole,
        phrase: Phrase,
        language: &Language,
    ) -> Vec<NoticeShown> {
        let others = std::mem::take(&mut self.now);
        self.tell(role, phrase);
        let shown = self.shown(language);
        self.now = others;
        shown
    }

    /// As a screen shows them.
    pub(crate) fn shown(&self, language: &Language) -> Vec<NoticeShown> {
        let shown = |notice: &Notice| NoticeShown {
            id: format!("notice:{}:{}", notice.phrase.id, notice.number),
            aloud: Aloud::default(),
            role: notice.role,
            words: language.say(&notice.phrase),
        };
        self.now.iter().map(shown).collect()
    }
}
