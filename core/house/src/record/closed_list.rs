//! Closed lists: kinds, states, conditions. The name of each member stands once, in its list; the file, the sheet and
//! the screens read it from there.

use std::fmt::Debug;

use phrase::Phrase;

/// A member of a closed list.
///
/// ```
/// # use house::record::{Named, PartKind};
/// assert_eq!(PartKind::GroundBlock.name(), "ground_block");
/// assert_eq!(PartKind::of_name("tap"), Some(PartKind::Tap));
/// assert_eq!(PartKind::of_name("Tap"), None);
/// ```
pub trait Named: Copy + PartialEq + Debug + Sized + 'static {
    /// Every member, in the order of the list.
    const ALL: &'static [Self];

    /// The name, as it stands in facts.
    fn name(self) -> &'static str;

    /// What the member stands for, as `docs/file.md` says it.
    fn about(self) -> &'static str;

    /// The member of this name.
    fn of_name(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|member| member.name() == name)
    }
}

/// A member of a closed list that people read.
pub trait Worded: Named {
    /// What the message of each member begins with: `value-cable` where `value-cable-six` says what `six` is.
    const WORDS: &'static str;

    /// What it is, in words.
    fn phrase(self) -> Phrase {
        Phrase::new(format!("{}-{}", Self::WORDS, self.name()))
    }
}

/// A closed list: each member with its name in the file, which never changes; behind the list's own name what its
/// messages begin with.
macro_rules! closed_list {
    ($(#[$about:meta])* pub enum $List:ident $(($words:literal))? {
        $($(#[doc = $of:literal])+ $Member:ident = $name:literal,)+
    }) => {
        $(#[$about])*
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize,
        )]
        pub enum $List {
            $($(#[doc = $of])+ #[serde(rename = $name)] $Member,)+
        }

        impl $crate::record::Named for $List {
            const ALL: &'static [Self] = &[$(Self::$Member),+];

            fn name(self) -> &'static str {
                match self {
                    $(Self::$Member => $name,)+
                }
            }

            fn about(self) -> &'static str {
                match self {
                    $(Self::$Member => concat!($($of),+).trim_ascii(),)+
                }
            }
        }

        $(impl $crate::record::Worded for $List {
            const WORDS: &'static str = $words;
        })?
    };
}

pub(crate) use closed_list;
