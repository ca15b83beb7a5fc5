//! `docs/file.md` lists every field and every question as the table and the lists have them.

use std::collections::BTreeSet;

use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::TestRunner;
use serde_json::Value;

use super::laws::values;
use super::table::every_field;
use super::{
    Adapter, Asked, Building, Feed, HowMeasured, Internet, Is, LengthKnown, ModemBands, ModemGeneration,
    Named, NetworkPlan, OtherNetwork, Outcome, OutcomeKind, Ownership, Plugged, PortEnd, PowerFeed,
    ReadingKind, RunLength, TestReach, Wish, field,
};
use super::{BehindAdapter, ChangeKind, LinkState, NetworkPiece, OutletCheck};
use crate::rating::PartRating;
use facts::fact::{PhotoImage, SubjectId};
use facts::photo::TakenAt;

const PAGE: &str = include_str!("../../../../docs/file.md");

/// What a value looks like in the file, in words.
trait Shape {
    fn shape() -> String;
}

impl<T: Named> Shape for T {
    fn shape() -> String {
        let names: Vec<_> = T::ALL.iter().map(|member| format!("`\"{}\"`", member.name())).collect();
        names.join(", ")
    }
}

macro_rules! shapes {
    ($($Value:ty: $text:expr;)+) => {
        $(impl Shape for $Value {
            fn shape() -> String {
                String::from($text)
            }
        })+
    };
}

shapes! {
    str: "text";
    f64: "number, MHz";
    u8: "whole number";
    bool: "`true`, `false`";
    SubjectId: "id of a subject";
    [Plugged]: format!("list of {}", Plugged::shape());
    Internet: "`down_mbps`, `up_mbps`: Mb/s";
    Wish: "`down_mbps`, `up_mbps`: Mb/s";
    Building: format!("`ownership`: {}; `shared`: whether other homes share the coax", Ownership::shape());
    NetworkPlan: "`version` of MoCA: text as on the adapter; `ethernet_mbps`: Mb/s, `owned`: how many there are already, each may be left out";
    Adapter: "`version`, `ethernet_mbps` as above, each may be left out; `bridge`: whether it stands at the router";
    BehindAdapter: format!(
        "`pieces`: list of {}; `mbps`: the slowest of it, Mb/s, may be left out", NetworkPiece::shape()
    );
    Feed: "`\"nothing\"`, or `from`: `part`, an id; `port`, from 1; `run`, an id or null";
    RunLength: format!("`metres` likely, `low_metres`, `high_metres`; `known`: {}", LengthKnown::shape());
    ModemBands: format!("`generation`: {}; `upstream_top_mhz`: MHz; each may be left out", ModemGeneration::shape());
    OtherNetwork: "`version`: text; `bands`: list of `low_mhz`, `high_mhz`; `nodes`: whole number; each may be left \
        out";
    PowerFeed: "`from`, `to`: ids of parts";
    HowMeasured: format!(
        "`reach`: {}; `over_radio`: true or false; `socket_mbps`: Mb/s, may be left out", TestReach::shape()
    );
    Outcome: format!("`end`: {}; `others_fine`: true or false, may be left out", OutcomeKind::shape());
    PhotoImage: "`sha256` in hexadecimal, `ext`, `bytes`, `width`, `height` in pixels";
    TakenAt: "text as `\"2026-05-31T14:05:09\"`";
    PartRating: "`legs`; dB: `leg_losses_db`, a list, `rejection_db`, `tap_db`, `gain_db`, `return_gain_db`, \
        `isolation_db`, `return_loss_db`; MHz: `band` and `stop_band` of `low_mhz`, `high_mhz`, `return_high_mhz`; \
        true or false: `moca_bypass`, `modem_port`, `power_pass`, `passes_on`, `says_moca`, `doubtful`; each may be \
        left out";
    ReadingKind: format!("`what` with its figures: `\"level\"` `mhz`, `dbmv`; `\"error_ratio\"` `mhz`, `db`; \
        `\"modem_sends\"` `dbmv`; `\"throughput\"` `down_mbps`, `up_mbps`; `\"phy_rate\"` `mbps`; `\"round_trip\"` \
        `ms`; `\"power\"` `sent_dbm`, `received_dbm`; `\"nodes_seen\"` `count`; `\"packet_loss\"` `percent`, \
        `under_load`; `\"link\"` `state`: {}; `\"swings\"` `low_mbps`, `high_mbps`, `with_heat_or_hour`", LinkState::shape());
    ChangeKind: format!("one of, with ids of parts and rooms, a `port` and a number of `legs`: `add_entry_filter` `behind`; \
        `move_entry_filter` `filter`, `behind`; `swap_entry_filter` `filter`; `swap_splitter` `splitter`, `legs`; \
        `remove_splitter` `splitter`; `merge_splitters` `upper`, `lower`, `legs`; `cap` `part`, `port`; \
        `swap_amplifier` `amplifier`; `remove_amplifier` `amplifier`; `replace_run` `to`; `renew_connectors` `to`; \
        `filter_at_device` `outlet`; `modem_own_line` `outlet`; `share_outlet` `outlet`; `join_loose` `part`, `to`, \
        `port`; `move_bridge` `from`, `to`; `use_outlet_nearby` `room`, `outlet`; `new_run` `room`, `from`; \
        `newer_adapter` `outlet`; `exchange_adapters` `outlet`, `with`; `look_at_part` `part`, `outlet`; `look_at_run` `to`, `outlet`; `check_at_outlet` \
        `outlet`, `check`: {}", OutletCheck::shape());
}

macro_rules! rows {
    ($($record:ident $Record:ident {
        $($(#[doc = $about:literal])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        vec![$($((stringify!($record), $name, <$value>::shape()),)+)+]
    };
}

/// Every field, in the order of the table: record, name, shape of its value, what it is.
fn fields() -> Vec<String> {
    let mut rows = every_field!(rows);
    let at = rows.iter().position(|(record, ..)| *record == "run").unwrap_or(rows.len());
    rows.insert(at, ("part", "end.N", PortEnd::shape()));
    rows.extend([
        ("measurement", "ports", u8::shape()),
        ("measurement", "digest", str::shape()),
        ("measurement", "text.N", str::shape()),
        ("author", "name", str::shape()),
    ]);
    rows.insert(0, ("anything", "is", Is::shape()));
    let about = |record: &str, name: &str| {
        let line = field::lines().find(|line| line.record == record && line.name == name);
        line.map_or("", |line| line.about).trim()
    };
    assert_eq!(rows.len(), field::lines().count(), "a line of the table is not among the rows");
    rows.iter()
        .map(|(record, name, shape)| format!("| {record} | `{name}` | {shape} | {} |", about(record, name)))
        .collect()
}

fn questions() -> Vec<String> {
    let replies = |question: &Asked| -> Vec<String> {
        question.replies().iter().map(|reply| format!("`\"{}\"`", reply.name())).collect()
    };
    Asked::ALL
        .iter()
        .map(|question| {
            format!("| `{}` | {} | {} |", question.field(), replies(question).join(", "), question.about())
        })
        .collect()
}

/// The rows of the table on the page that follows this heading.
fn rows_on_the_page(heading: &str) -> Vec<&'static str> {
    let (_, below) = PAGE.split_once(heading).expect("the heading");
    below
        .lines()
        .skip_while(|line| !line.starts_with("|---"))
        .skip(1)
        .take_while(|line| line.starts_with('|'))
        .collect()
}

#[test]
fn the_page_lists_every_field() {
    let fields = fields();
    assert_eq!(
        rows_on_the_page("\n### Fields\n"),
        fields,
        "docs/file.md should say:\n{}\n",
        fields.join("\n")
    );
}

#[test]
fn the_page_lists_every_question() {
    let questions = questions();
    let there = rows_on_the_page("\n### Questions\n");
    assert_eq!(there, questions, "docs/file.md should say:\n{}\n", questions.join("\n"));
}

/// The names of an object's members, and of those within.
fn members(value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::Array(items) => items.iter().for_each(|item| members(item, found)),
        Value::Object(object) => {
            for (name, value) in object {
                found.insert(name.clone());
                members(value, found);
            }
        }
        _ => {}
    }
}

macro_rules! said {
    ($($record:ident $Record:ident {
        $($(#[doc = $about:literal])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        $($({
            let (mut runner, mut found) = (TestRunner::deterministic(), BTreeSet::new());
            for _ in 0..200 {
                let value = values::<$value>().new_tree(&mut runner).expect("a sample").current();
                members(&serde_json::to_value(value).expect("a value"), &mut found);
            }
            for name in found {
                let said = <$value>::shape().contains(&format!("`{name}`"));
                assert!(said, "{} {}: {name} is not said", stringify!($record), $name);
            }
        })+)+
    };
}

/// No member of a value is missing in its shape.
#[test]
fn every_member_of_a_value_is_said() {
    every_field!(said);
}
