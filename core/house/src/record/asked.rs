//! How questions were answered that no other field answers: `asked.entry-filter` is `"no"` where somebody looked and
//! found none, `asked.label` is `"unsure"` where the print could not be read.

use std::fmt;

use serde_json::Value;

use super::closed_list::closed_list;
use super::{Named, Survey};
use facts::fact::{Edit, SubjectId};

/// What the names of these fields begin with.
const ASKED: &str = "asked.";

closed_list! {
    /// A question that is answered in words of its own. Its name is what stands behind `asked.` in the file.
    pub enum Asked {
        /// Of the survey: what uses the coax today.
        Uses = "uses",
        /// Of a cable internet service: how new the modem is.
        ModemAge = "modem-age",
        /// Of the survey: what the internet plan gives.
        Plan = "plan",
        /// Of the survey: what must not be cut off; a list of replies.
        Depends = "depends",
        /// Of the survey: which rooms there are.
        Rooms = "rooms",
        /// Of a room: what speed is wished for.
        Wish = "wish",
        /// Of the survey: how cables come into the house.
        WaysIn = "ways-in",
        /// Of an entry: whether it is joined to the world outside.
        Joined = "joined",
        /// Of an entry: whether a ground block was seen.
        GroundBlock = "ground-block",
        /// Of an entry: whether an entry filter was seen.
        EntryFilter = "entry-filter",
        /// Of a part: what is printed on it.
        Label = "label",
        /// Of a part: whether what was read off its label is right.
        LabelRead = "label-read",
        /// Of a part: how many outputs it has.
        Legs = "legs",
        /// Of an amplifier: whether it has a by-pass for the MoCA band.
        ByPass = "by-pass",
        /// Of an amplifier: how it is powered.
        Powered = "powered",
        /// Of the survey: which series all cables are.
        Cables = "cables",
        /// Of a run: which series it is.
        Cable = "cable",
        /// Of a run: how long it is.
        Length = "length",
        /// Of the survey: how all connectors are; of a run: how its two are.
        Connectors = "connectors",
        /// Of an outlet: what is plugged in.
        Plugged = "plugged",
        /// Of the survey: whether there are outlets that nobody has come to yet.
        MoreOutlets = "more-outlets",
        /// Of a loose part: where it gets its signal; of an outlet that was put on one of several like outputs: that it was
        /// guessed, or that somebody looked since.
        FedBy = "fed-by",
        /// Of the survey: which outlet is near the router.
        RouterAt = "router-at",
        /// Of the survey: whether the router itself speaks MoCA.
        RouterSpeaks = "router-speaks",
        /// Of the survey: which adapters there are or shall be.
        Adapters = "adapters",
        /// Of the survey: which network sockets the adapters and the router have.
        Ports = "ports",
        /// Of a cable internet service: whether it drops out, beside an adapter.
        DropsOut = "drops-out",
        /// Of the survey: what kind of work is not wanted; a list of replies.
        Without = "without",
        /// Of the survey: whether the adapters are placed.
        AdaptersPlaced = "adapters-placed",
        /// Of the survey: whether all adapters have the same password.
        PrivatePassword = "private-password",
        /// Of the survey: whether TV and modem are still fine.
        StillFine = "still-fine",
        /// Of a piece of work: whether what else uses the coax was fine after it.
        OthersFine = "others-fine",
        /// Of the survey: whether the report was written.
        HandoverReport = "handover-report",
        /// Of the survey: whether the file was written.
        HandoverFile = "handover-file",
    }
}

closed_list! {
    /// A word that answers a question.
    pub enum Reply ("value-asked") {
        /// Yes, or that it was told in other fields.
        Yes = "yes",
        /// No.
        No = "no",
        /// Looked, and could not tell.
        Unsure = "unsure",
        /// A phone line.
        Phone = "phone",
        /// An alarm.
        Alarm = "alarm",
        /// A medical call device.
        Medical = "medical",
        /// Nothing of the kind.
        Nothing = "nothing",
        /// 6 series.
        Six = "six",
        /// 59 series.
        FiftyNine = "fifty_nine",
        /// 7 series.
        Seven = "seven",
        /// 11 series.
        Eleven = "eleven",
        /// They differ.
        Differ = "differ",
        /// All are good.
        Good = "good",
        /// Some are bad.
        Some = "some",
        /// By its own supply.
        Plug = "plug",
        /// Over the coax.
        Coax = "coax",
        /// Not powered.
        Off = "off",
        /// Taken to be so, since nobody knows which of several alike it is.
        Guessed = "guessed",
        /// None.
        None = "none",
        /// Adapters of MoCA 2.5.
        Moca25 = "25",
        /// Adapters of MoCA 2.0 bonded.
        Moca20Bonded = "20-bonded",
        /// Adapters of MoCA 2.0.
        Moca20 = "20",
        /// Adapters of MoCA 1.1.
        Moca11 = "11",
        /// No cable is laid, replaced or traced.
        NewCable = "new-cable",
        /// Nothing that may need an attic, a ladder or a roof.
        Heights = "heights",
    }
}

impl Asked {
    /// The field that holds the answer.
    pub fn field(self) -> String {
        format!("{ASKED}{}", self.name())
    }

    /// The question that a field answers. Underscores in a name are read as dashes.
    pub fn of_field(field: &str) -> Option<Self> {
        Self::of_name(&field.strip_prefix(ASKED)?.replace('_', "-"))
    }

    /// Whether a field answers a question, if only one of a later release.
    pub fn is_field(field: &str) -> bool {
        field.starts_with(ASKED)
    }

    /// The edit that answers it about a subject.
    pub fn set(self, subject: SubjectId, reply: Reply) -> Edit {
        Edit::new(subject, self.field(), reply.name())
    }

    /// The same for a question that takes several replies.
    pub fn set_all(self, subject: SubjectId, replies: &[Reply]) -> Edit {
        let names: Vec<_> = replies.iter().map(|reply| Value::from(reply.name())).collect();
        Edit::new(subject, self.field(), names)
    }

    /// The words that answer it in the file.
    pub const fn replies(self) -> &'static [Reply] {
        use Reply::{
            Alarm, Coax, Differ, Eleven, FiftyNine, Good, Guessed, Heights, Medical, Moca11, Moca20,
            Moca20Bonded, Moca25, NewCable, No, None, Nothing, Off, Phone, Plug, Seven, Six, Some, Unsure,
            Yes,
        };
        match self {
            Self::Uses | Self::GroundBlock | Self::EntryFilter | Self::RouterSpeaks => &[Yes, No, Unsure],
            Self::MoreOutlets | Self::DropsOut => &[No, Unsure],
            Self::ModemAge
            | Self::Plan
            | Self::Joined
            | Self::Label
            | Self::Legs
            | Self::ByPass
            | Self::Cable
            | Self::Length
            | Self::Plugged => &[Unsure],
            Self::FedBy => &[Yes, Unsure, Guessed],
            Self::Depends => &[Phone, Alarm, Medical, Nothing, Unsure],
            Self::Wish | Self::Ports => &[Yes, Unsure],
            Self::Rooms | Self::WaysIn | Self::LabelRead | Self::HandoverReport | Self::HandoverFile => {
                &[Yes]
            }
            Self::Powered => &[Plug, Coax, Off, Unsure],
            Self::Cables => &[Six, FiftyNine, Seven, Eleven, Differ, Unsure],
            Self::Connectors => &[Good, Some, Unsure, Yes],
            Self::RouterAt => &[Yes, None, Unsure],
            Self::Adapters => &[Moca25, Moca20Bonded, Moca20, Moca11, None, Unsure],
            Self::Without => &[NewCable, Heights, Nothing],
            Self::AdaptersPlaced => &[Yes, No],
            Self::PrivatePassword => &[Yes, No, None, Unsure],
            Self::StillFine | Self::OthersFine => &[Yes, No, Nothing, Unsure],
        }
    }
}

impl fmt::Display for Asked {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl Survey {
    /// How a question about a subject was answered, as it stands in the file, where no other field says it.
    pub fn answer(&self, subject: SubjectId, question: Asked) -> Option<&Value> {
        self.asked.get(&(subject, question))
    }

    /// The reply to a question about a subject; `None` too where this release does not know the word.
    pub fn reply(&self, subject: SubjectId, question: Asked) -> Option<Reply> {
        Reply::of_name(self.answer(subject, question)?.as_str()?)
    }

    /// Whether the output that feeds a part was taken to be so, since nobody knows which of several alike it is.
    pub fn is_feed_guessed(&self, part: SubjectId) -> bool {
        self.reply(part, Asked::FedBy) == Some(Reply::Guessed) && self.wiring.feed(part).is_some()
    }

    /// The replies to a question that takes several; words that this release does not know are passed over.
    pub fn replies(&self, subject: SubjectId, question: Asked) -> Vec<Reply> {
        let told = self.answer(subject, question).and_then(Value::as_array);
        told.into_iter().flatten().filter_map(|word| Reply::of_name(word.as_str()?)).collect()
    }
}
