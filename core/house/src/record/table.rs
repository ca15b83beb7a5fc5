//! The table of fields: everything that a survey can say of a thing, said once.
//!
//! A line holds a field's constant, its name in the file (which never changes meaning), the type of its value, and the
//! member of the record that it becomes; before it stands what it is. From these lines come the typed constants
//! ([`super::field`]), the fold from facts to records, the difference between two records, how a value is told
//! ([`crate::story`]), a law of its round trip, and the table in `docs/file.md`.
//!
//! To add a field: its line here, its member in the record, the message `field-<name>` in `words/en`. The compiler names
//! the rest where its type is a new one.

/// Hands the lines of every record to the macro `$then`.
///
/// Types stand with their paths, so that a new line needs no import anywhere. A line without a member is folded by hand in
/// `fold.rs`. `if` behind a member names the condition under which a record has the field at all.
macro_rules! every_field {
    ($then:ident) => {
        $then! {
            survey Survey {
                /// What the survey is called.
                NAME "name": str => name;
                /// Where the house is, in the owner's words.
                PLACE "place": str => place;
                /// What the internet plan gives.
                INTERNET "internet": crate::record::Internet => internet;
                /// Whose the wiring is, and whether it is shared.
                BUILDING "building": crate::record::Building => building;
                /// What each adapter is unless its outlet says otherwise.
                NETWORK "network": crate::record::NetworkPlan => network;
            }
            part Part {
                /// What it is.
                KIND "kind": crate::record::PartKind => kind;
                /// The mark written on tape.
                TAG "tag": str => tag;
                /// Where it sits, in words.
                WHERE "where": str => place;
                /// Where it gets its signal.
                FEED "feed": crate::record::Feed => feed;
                /// What is printed on it.
                LABEL "label": str => label;
                /// What it is rated for, typed by a person: it wins over what is read from the label.
                RATING "rating": crate::rating::PartRating => rating;
                /// The room of an outlet.
                ROOM "room": facts::fact::SubjectId => room;
                /// What is plugged in at an outlet; an empty list where somebody looked and found nothing.
                PLUGGED "plugged": [crate::record::Plugged] => plugged;
                /// The adapter at an outlet.
                ADAPTER "adapter": crate::record::Adapter => adapter;
                /// What lies behind that adapter, away from the coax.
                BEHIND_ADAPTER "behind_adapter": crate::record::BehindAdapter => behind_adapter;
                /// How an adapter and a device share an outlet.
                SHARING "sharing": crate::record::Sharing => sharing;
                /// Whether a filter that stops the MoCA band sits at the port of the device at an outlet.
                DEVICE_FILTER "device_filter": bool => device_filter;
                /// What comes in at an entry.
                ENTRY_KIND "entry_kind": crate::record::EntryKind => entry_kind if is_entry;
                /// Whether an entry is joined to the world outside.
                ENTRY_STATE "entry_state": crate::record::EntryState => entry_state if is_entry;
                /// How an instrument found it: a measurement, which is a record of its own.
                MEASUREMENT "measurement": facts::fact::SubjectId;
            }
            run Run {
                /// The mark written on tape.
                TAG "tag": str => tag;
                /// The cable's series.
                CABLE "cable": crate::record::CableKind => cable;
                /// How long it is, in metres, and how that is known.
                LENGTH "length": crate::record::RunLength => length;
                /// The connector nearer the street.
                CONNECTOR_NEAR "connector_near": crate::record::Connector => connector_near;
                /// The connector nearer the outlet.
                CONNECTOR_FAR "connector_far": crate::record::Connector => connector_far;
            }
            room Room {
                /// What it is called.
                NAME "name": str => name;
                /// The speed wished for.
                WISH "wish": crate::record::Wish => wish;
                /// The outlet of another room that serves it.
                SERVED_FROM "served_from": facts::fact::SubjectId => served_from;
            }
            service Service {
                /// What it is.
                KIND "kind": crate::record::ServiceKind => kind;
                /// The highest frequency that it uses towards the house, MHz.
                TOP "top_mhz": f64 => top_mhz;
                /// The entry by which it comes in.
                ENTRY "entry": facts::fact::SubjectId => entry;
                /// How TV is sent.
                SIGNAL "signal": crate::record::TvSignal => signal;
                /// What is known of a cable modem's bands.
                MODEM "modem": crate::record::ModemBands => modem;
                /// Whether cable internet drops out now and then, as whoever uses it says.
                DROPS_OUT "drops_out": bool => drops_out;
                /// How several satellite receivers share one cable.
                SINGLE_CABLE "single_cable": crate::record::SingleCable => single_cable;
                /// A coax network that is not ours.
                OTHER_NETWORK "other_network": crate::record::OtherNetwork => network;
                /// Who powers whom over the coax.
                POWER "power": crate::record::PowerFeed => power;
            }
            reading Reading {
                /// What was measured.
                MEASURED "measured": crate::record::ReadingKind => measured;
                /// The part it was taken at.
                ABOUT "about": facts::fact::SubjectId => about;
                /// The output of that part, from 1.
                PORT "port": u8 => port;
                /// How it was taken.
                HOW "how": crate::record::HowMeasured => how;
            }
            note Note {
                /// Its text.
                TEXT "text": str => text;
                /// What it is about.
                ABOUT "about": facts::fact::SubjectId => about;
            }
            photo Photo {
                /// The file of the picture.
                IMAGE "image": facts::fact::PhotoImage => image;
                /// The part or run that it shows.
                OF "of": facts::fact::SubjectId => of;
                /// What of it it shows.
                ROLE "role": crate::record::PhotoRole => role;
                /// What its file was called where it came from.
                FILE_NAME "file_name": str => file_name;
                /// When it was taken, by the camera's clock.
                TAKEN "taken": facts::photo::TakenAt => taken;
                /// What a program read in it, of which somebody took something.
                PRINT "print": str => print;
            }
            work Work {
                /// The change of the work list.
                CHANGE "change": crate::record::ChangeKind => change;
                /// How it ended.
                OUTCOME "outcome": crate::record::Outcome => outcome;
            }
        }
    };
}

/// Hands the lines of those records to the macro `$then` that become no struct with a member for each.
macro_rules! fields_apart {
    ($then:ident) => {
        $then! {
            author {
                /// What an author is called: a claim, no proof.
                NAME "name": str;
            }
            measurement {
                /// How many ports were measured.
                PORTS "ports": usize;
                /// SHA-256 of the text, in lower-case hexadecimal.
                DIGEST "digest": str;
            }
        }
    };
}

pub(crate) use {every_field, fields_apart};
