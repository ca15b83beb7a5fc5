//! What is said about the last deed.

use survey::words::{Language, Phrase};

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
    /// Says one more.
    pub(crate) fn tell(&mut self, role: NoticeRole, phrase: Phrase) {
        self.said += 1;
        self.now.push(Notice { number: self.said, role, phrase });
    }

    /// Says nothing any more.
    pub(crate) fn clear(&mut self) {
        self.now.clear();
    }

    /// Whether nothing is said.
    pub(crate) fn is_empty(&self) -> bool {
        self.now.is_empty()
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
