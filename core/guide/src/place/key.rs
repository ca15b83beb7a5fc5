//! Keys: what the blocks of a screen are called when a deed answers them.
//!
//! Across the border to a shell a key is a string, and so it stands in what is remembered of a screen. Here, and nowhere
//! else, the string is written and read; above, a key is one of these variants.

use std::collections::BTreeSet;
use std::fmt;

use facts::fact::{ActId, SubjectId};
use facts::file::LeftOut;
use house::record::{Named, PartKind, Without as WorkKind};

use super::choice::{Choice, StandsAt};
use super::jacket_figure::JacketFigure;
use super::label_figure::LabelFigure;
use super::question::Question;
use crate::screen::FileAsked;

/// Makes the keys, and both ways between a key and its string, out of one table.
macro_rules! keys {
    (
        words { $($word:ident $text:literal,)* }
        of { $($(#[$doc:meta])* $name:ident($of:ty) $prefix:literal,)* }
    ) => {
        /// What a block of a screen is called.
        #[derive(Debug, Clone, PartialEq, Eq)]
        pub(crate) enum Key {
            $($word,)*
            $($(#[$doc])* $name($of),)*
            /// An output of a part.
            PortOf(SubjectId, u8),
            /// A question, wherever it stands.
            Ask(Question),
            /// The loss to one output, on a label.
            LegLossOf(u8),
            /// A press for a file.
            File(FileAsked),
        }

        impl Key {
            /// The key that a string stands for; `None` if no screen of this release has it.
            pub(crate) fn of(text: &str) -> Option<Self> {
                match text {
                    $($text => return Some(Self::$word),)*
                    _ => {}
                }
                if let Some(asked) = FileAsked::of(text) {
                    return Some(Self::File(asked));
                }
                if let Some(LabelFigure::LegLossOf(leg)) = LabelFigure::named(text) {
                    return Some(Self::LegLossOf(leg));
                }
                let (prefix, rest) = text.split_once(':')?;
                match prefix {
                    "port" if rest.contains('/') => {
                        let (part, port) = rest.split_once('/')?;
                        Some(Self::PortOf(part.parse().ok()?, port.parse().ok()?))
                    }
                    "ask" if rest.parse::<usize>().is_err() => serde_json::from_str(rest).ok().map(Self::Ask),
                    $($prefix => <$of as Told>::heard(rest).map(Self::$name),)*
                    _ => None,
                }
            }

            /// The words among the keys, each with its string.
            #[cfg(test)]
            const WORDS: &[(Self, &str)] = &[$((Self::$word, $text),)*];
        }

        impl fmt::Display for Key {
            fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                match self {
                    $(Self::$word => out.write_str($text),)*
                    $(Self::$name(of) => write!(out, concat!($prefix, ":{}"), of.told()),)*
                    Self::PortOf(part, port) => write!(out, "port:{part}/{port}"),
                    Self::Ask(question) => {
                        write!(out, "ask:{}", serde_json::to_string(question).unwrap_or_default())
                    }
                    Self::LegLossOf(leg) => out.write_str(&LabelFigure::LegLossOf(*leg).name()),
                    Self::File(asked) => out.write_str(&asked.key()),
                }
            }
        }
    };
}

keys! {
    words {
        Acts "acts",
        Adapters "adapters",
        Add "add",
        AddBand "add-band",
        AddNote "add-note",
        After "after",
        Again "again",
        All "all",
        AllShort "all-short",
        Apart "apart",
        Aside "aside",
        Assign "assign",
        Back "back",
        Before "before",
        Behind "behind",
        BehindRate "behind-rate",
        ByPass "by-pass",
        Cables "cables",
        CannotReach "cannot-reach",
        Check "check",
        Chosen "chosen",
        Compare "compare",
        Connectors "connectors",
        Copy "copy",
        Corner "corner",
        CouldNot "could-not",
        Dbmv "dbmv",
        Delete "delete",
        Depends "depends",
        Device "device",
        Disagreements "disagreements",
        Done "done",
        Down "down",
        Drops "drops",
        Edit "edit",
        Entry "entry",
        EntryKind "entry-kind",
        WorkOn "long-work-on",
        WorkStop "long-work-stop",
        Extent "extent",
        Far "far",
        Feeder "feeder",
        Find "find",
        Findings "findings",
        Fine "fine",
        Finish "finish",
        First "first",
        Fixed "fix",
        FoldAgain "fold-again",
        Forecast "forecast",
        Forget "forget",
        FreeAssign "free-assign",
        FreeBurst "free-burst",
        FreeHere "free-here",
        FreeMeter "free-meter",
        FreeParts "free-parts",
        FreeRooms "free-rooms",
        FreeRuns "free-runs",
        FreeServices "free-services",
        From "from",
        Gain "gain",
        Generation "generation",
        Handover "handover",
        High "high",
        House "house",
        Joined "joined",
        Keep "keep",
        KeepTaken "keep-taken",
        KeepNote "keep-note",
        Kind "kind",
        Known "known",
        LabelPhoto "label-photo",
        Latency "latency",
        Later "later",
        Leads "leads",
        LegLoss "leg-loss",
        Legs "legs",
        Length "length",
        List "list",
        LinkStands "link-stands",
        Lost "lost",
        LostQuiet "lost-quiet",
        Low "low",
        Make "make",
        Map "map",
        MapAfter "map-after",
        MapNow "map-now",
        Marks "marks",
        Mend "mend",
        MendWithFile "mend-with-file",
        MendWithoutLost "mend-without-lost",
        Mer "mer",
        Meter "meter",
        Mhz "mhz",
        Modem "modem",
        More "more",
        Name "name",
        Near "near",
        New "new",
        NewRoom "new-room",
        Next "next",
        Nodes "nodes",
        None "none",
        Not "not",
        NotPlaced "not-placed",
        Note "note",
        NoteNew "note-new",
        Noting "noting",
        OpenIt "open",
        Order "order",
        Other "other",
        OtherSpeed "other-speed",
        Others "others",
        OthersOpen "others-open",
        OthersToo "others-too",
        Out "out",
        Outlet "outlet",
        Outlets "outlets",
        Overview "overview",
        Pack "pack",
        Page "page",
        Password "password",
        PhotoSlot "photo",
        Phy "phy",
        Placed "placed",
        Placing "placing",
        Piece "piece",
        Plugged "plugged",
        Port "port",
        Powered "powered",
        Private "private",
        PutBack "put-back",
        PutOff "put-off",
        ReadAgain "read-again",
        Received "received",
        Recognised "recognised",
        Remove "remove",
        Removed "removed",
        Rename "rename",
        Replace "replace",
        ReturnHigh "return-high",
        Right "right",
        Role "role",
        InOrder "in-order",
        InRoom "room",
        Rooms "rooms",
        Router "router",
        Same "same",
        Save "save",
        Seen "seen",
        Sends "sends",
        Sent "sent",
        Series "series",
        Short "short",
        Served "served",
        Settle "settle",
        Signal "signal",
        Single "single",
        Socket "socket",
        Speaks "speaks",
        Splits "splits",
        StillFine "still-fine",
        Stop "stop",
        StopHigh "stop-high",
        StopLow "stop-low",
        Story "story",
        Tag "tag",
        TakeIt "take",
        TakeIn "take-in",
        Taken "taken",
        TakeSure "take-sure",
        TapLoss "tap-loss",
        Tests "tests",
        Text "text",
        WholeThing "thing",
        There "there",
        Things "things",
        To "to",
        Top "top",
        Unassign "unassign",
        Undo "undo",
        Unfolded "unfolded",
        UnfoldAll "unfold-all",
        Unit "unit",
        Unknowns "unknowns",
        Unsure "unsure",
        Up "up",
        Upstream "upstream",
        Uses "uses",
        Version "version",
        WayIn "way-in",
        Ways "ways",
        Where "where",
        Whose "whose",
        Wish "wish",
        Wishes "wishes",
        LeaveOut "without",
        Work "work",
        WorkOut "work-out",
        Working "working",
    }
    of {
        /// A part.
        Part(SubjectId) "part",
        /// A cable.
        Run(SubjectId) "run",
        /// A room, or the outlet that stands for it.
        Room(SubjectId) "room",
        /// A photo.
        Photo(SubjectId) "photo",
        /// The part of a photo that is read.
        PhotoPart(SubjectId) "photo-part",
        /// A service.
        Service(SubjectId) "service",
        /// Anything that something was said about.
        Thing(SubjectId) "thing",
        /// A reading.
        Reading(SubjectId) "reading",
        /// The test at an outlet.
        Test(SubjectId) "test",
        /// Work that is over.
        Ended(SubjectId) "ended",
        /// What is folded at a part of the map.
        Unfold(SubjectId) "unfold",
        /// A part that a cable may feed.
        Feeds(SubjectId) "feeds",
        /// A part whose print is to be typed.
        Print(SubjectId) "print",
        /// What somebody did.
        Act(ActId) "act",
        /// A field of the thing that is shown.
        FieldOf(String) "field",
        /// A finding, by its kind and place.
        Finding(String) "finding",
        /// A survey to open, by its folder.
        Open(String) "open",
        /// A survey to look at from outside, by its folder.
        Survey(String) "survey",
        /// An output of the part that is shown.
        PortHere(u8) "port",
        /// The question in this place of the list that is shown.
        AskNth(usize) "ask",
        /// The label text in this place of the list.
        SeenNth(usize) "seen",
        /// The disagreement in this place of the list.
        SettleNth(usize) "settle",
        /// The step in this place of the work list.
        StepNth(usize) "step",
        /// A new part of a kind.
        NewPart(PartKind) "new",
        /// What one stands in front of.
        At(StandsAt) "at",
        /// What may stay out of a file.
        Without(LeftOut) "without",
        /// The work list without some kinds of work.
        ListWithout(BTreeSet<WorkKind>) "list-without",
        /// A figure of a label, to be corrected.
        Fix(LabelFigure) "fix",
        /// A figure that was recognised, to be taken.
        Take(LabelFigure) "take",
        /// What was read off a cable's jacket, to be taken.
        TakeOff(JacketFigure) "take-off",
    }
}

/// What a key names, as it stands behind the colon.
trait Told: Sized {
    fn told(&self) -> String;
    fn heard(text: &str) -> Option<Self>;
}

/// What is told as it is displayed.
macro_rules! told_as_displayed {
    ($($of:ty)*) => {
        $(impl Told for $of {
            fn told(&self) -> String {
                self.to_string()
            }

            fn heard(text: &str) -> Option<Self> {
                text.parse().ok()
            }
        })*
    };
}

told_as_displayed! { SubjectId ActId String u8 usize }

/// None of them is a word as well.
const NOTHING: &str = "nothing";

impl Told for BTreeSet<WorkKind> {
    fn told(&self) -> String {
        let words: Vec<_> = self.iter().map(|kind| kind.name()).collect();
        if words.is_empty() { NOTHING.into() } else { words.join("+") }
    }

    fn heard(text: &str) -> Option<Self> {
        if text == NOTHING { Some(Self::new()) } else { text.split('+').map(WorkKind::of_name).collect() }
    }
}

/// What is a choice elsewhere is called as it is there.
macro_rules! told_as_chosen {
    ($($of:ty)*) => {
        $(impl Told for $of {
            fn told(&self) -> String {
                self.key()
            }

            fn heard(text: &str) -> Option<Self> {
                <Self as Choice>::of(text)
            }
        })*
    };
}

told_as_chosen! { PartKind StandsAt LabelFigure JacketFigure LeftOut }

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_key_is_read_as_it_is_written() {
        let thing = SubjectId::random();
        let of = [
            Key::Part(thing),
            Key::PortOf(thing, 3),
            Key::PortHere(3),
            Key::AskNth(7),
            Key::Ask(Question::LeadsTo(thing, 2)),
            Key::Ask(Question::Whose),
            Key::Act(ActId::random()),
            Key::Finding("feeds-loop part/1 port/1/2".into()),
            Key::Open("A house: of ours.legwork".into()),
            Key::NewPart(PartKind::EntryFilter),
            Key::At(StandsAt::Other),
            Key::Without(LeftOut::Notes),
            Key::ListWithout(BTreeSet::new()),
            Key::ListWithout(BTreeSet::from([WorkKind::NewCable, WorkKind::Heights])),
            Key::Fix(LabelFigure::LegLossOf(12)),
            Key::Take(LabelFigure::ReturnHigh),
            Key::TakeOff(JacketFigure::Series),
            Key::File(FileAsked::ToRead),
            Key::File(FileAsked::ToWrite { name: "a: b.lwk".into() }),
        ];
        for key in of {
            assert_eq!(Key::of(&key.to_string()), Some(key));
        }
        for (key, text) in Key::WORDS {
            assert_eq!(key.to_string(), *text);
            assert_eq!(Key::of(text).as_ref(), Some(key), "{text} stands for another key");
        }
    }

    #[test]
    fn what_no_screen_has_is_no_key() {
        for text in [
            "",
            "nex",
            "part:",
            "part:7",
            "step:-1",
            "ask:{}",
            "port:a/1",
            "at:nowhere",
            "list-without:all",
            ":",
        ] {
            assert_eq!(Key::of(text), None, "{text}");
        }
    }
}
