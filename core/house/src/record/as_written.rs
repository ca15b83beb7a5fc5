//! Values as the first release wrote them: they are read for ever, and written again byte for byte (RFC 8785).

use serde_json::Value;

use super::field;
use super::possible::{bounds, can_be};
use super::table::every_field;
use facts::fact::{SubjectId, canonical};

/// Record, field, and a value, set down by hand from what the first release wrote. `ID` stands for a subject.
const WRITTEN: &str = r#"
survey name "An invented house"
survey place "Nowhere Lane 1"
survey internet {"down_mbps":1000,"up_mbps":40.5}
survey building {"ownership":"rented","shared":true}
survey network {"ethernet_mbps":1000,"version":"2.0 bonded"}
part kind "ground_block"
part kind "high_pass_filter"
part tag "S1"
part where "in the loft"
part feed "nothing"
part feed {"from":{"part":"ID","port":2,"run":null}}
part feed {"from":{"part":"ID","port":2,"run":"ID"}}
part label "3-WAY 5-1000 MHz"
part rating {"doubtful":false,"legs":0,"modem_port":false,"passes_on":false,"says_moca":false}
part rating {"band":{"high_mhz":1002,"low_mhz":5},"doubtful":true,"leg_losses_db":[3.5,7,7],"legs":3,"modem_port":false,"passes_on":false,"power_pass":false,"rejection_db":40,"says_moca":true,"stop_band":{"high_mhz":1675,"low_mhz":1125}}
part rating {"doubtful":false,"gain_db":15,"isolation_db":20,"legs":2,"moca_bypass":false,"modem_port":true,"passes_on":true,"return_gain_db":-1,"return_high_mhz":42,"return_loss_db":18,"says_moca":false,"tap_db":12}
part room "ID"
part plugged []
part plugged ["tv_box","satellite_receiver"]
part adapter {"bridge":true,"ethernet_mbps":2500,"version":"2.5"}
part behind_adapter {"mbps":1000,"pieces":["run","switch"]}
part sharing "through_port"
part device_filter true
part entry_kind "fibre_box"
part entry_state "cut_off"
part measurement "ID"
run tag "R1"
run cable "fifty_nine"
run length {"high_metres":18,"known":"guessed","low_metres":8.04,"metres":12}
run connector_near "hand_tight"
run connector_far "bad_joint"
room name "Office"
room wish {"down_mbps":300,"up_mbps":50}
room served_from "ID"
service kind "power_over_coax"
service top_mhz 1218
service entry "ID"
service signal "both"
service modem {}
service modem {"generation":"3.1","upstream_top_mhz":85}
service drops_out true
service single_cable "en50607"
service other_network {}
service other_network {"bands":[{"high_mhz":1500,"low_mhz":1400}],"nodes":2,"version":"2.0"}
service power {"from":"ID","to":"ID"}
reading measured {"dbmv":-3.5,"mhz":603,"what":"level"}
reading measured {"db":36,"mhz":603,"what":"error_ratio"}
reading measured {"dbmv":44,"what":"modem_sends"}
reading measured {"down_mbps":900,"up_mbps":800,"what":"throughput"}
reading measured {"mbps":3000,"what":"phy_rate"}
reading measured {"ms":4.2,"what":"round_trip"}
reading measured {"received_dbm":-40,"sent_dbm":-10,"what":"power"}
reading measured {"count":3,"what":"nodes_seen"}
reading measured {"percent":1,"under_load":true,"what":"packet_loss"}
reading measured {"high_mbps":100,"low_mbps":6,"what":"swings","with_heat_or_hour":false}
reading about "ID"
reading port 2
reading how {"over_radio":false,"reach":"adapter_page"}
reading how {"over_radio":true,"reach":"house","socket_mbps":1000}
note text "The hatch sticks."
note about "ID"
photo image {"bytes":123,"ext":"jpg","height":3,"sha256":"00ff","width":4}
photo of "ID"
photo role "place"
photo file_name "DSC 0001.JPG"
photo taken "2026-05-31T14:05:09"
photo print "5-1002 MHz"
work change {"swap_splitter":{"legs":3,"splitter":"ID"}}
work change {"move_entry_filter":{"behind":"ID","filter":"ID"}}
work change {"use_outlet_nearby":{"outlet":"ID","room":"ID"}}
work outcome {"end":"could_not"}
work outcome {"end":"put_back","others_fine":false}
"#;

const ID: &str = "0b3f1c52-94c4-4f0e-8a8e-5b2f1f2f7c11";

macro_rules! written_again {
    ($($record:ident $Record:ident {
        $($(#[$about:meta])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        /// What this release makes of a value when it reads it and writes it again.
        fn written_again(record: &str, name: &str, value: &Value) -> Option<Value> {
            let here = SubjectId::random();
            $($(
                if record == stringify!($record) && name == $name {
                    let read = field::$record::$NAME.read(value)?;
                    let read: &$value = std::borrow::Borrow::borrow(&read);
                    return Some(field::$record::$NAME.set(here, read).value);
                }
            )+)+
            None
        }
    };
}

every_field!(written_again);

/// The names of all figures in a value.
fn figures(name: &str, value: &Value) -> Vec<String> {
    match value {
        Value::Number(_) => vec![name.to_owned()],
        Value::Array(values) => values.iter().flat_map(|value| figures(name, value)).collect(),
        Value::Object(members) => members.iter().flat_map(|(name, value)| figures(name, value)).collect(),
        _ => Vec::new(),
    }
}

/// Whether a figure has bounds, or measures nothing.
fn is_bounded(name: &str) -> bool {
    const COUNTS: [&str; 6] = ["port", "nodes", "count", "bytes", "width", "height"];
    bounds(name).is_some() || COUNTS.contains(&name)
}

#[test]
fn what_the_first_release_wrote_is_read_and_written_again_byte_for_byte() {
    let mut seen = std::collections::BTreeSet::new();
    for line in WRITTEN.lines().filter(|line| !line.is_empty()) {
        let mut words = line.splitn(3, ' ');
        let (record, name, text) = (
            words.next().unwrap_or_default(),
            words.next().unwrap_or_default(),
            words.next().unwrap_or_default(),
        );
        let text = text.replace("ID", ID);
        let value: Value = serde_json::from_str(&text).expect("JSON");
        assert!(can_be(name, &value) && figures(name, &value).iter().all(|name| is_bounded(name)), "{line}");
        let again = written_again(record, name, &value).expect(line);
        assert_eq!(canonical(&again).expect("a value"), text, "{line}");
        seen.insert((record.to_owned(), name.to_owned()));
    }
    let records = ["survey", "part", "run", "room", "service", "reading", "note", "photo", "work"];
    for line in field::lines().filter(|line| records.contains(&line.record) && !line.name.contains('.')) {
        assert!(seen.contains(&(line.record.to_owned(), line.name.to_owned())), "{line:?} has no value here");
    }
}
