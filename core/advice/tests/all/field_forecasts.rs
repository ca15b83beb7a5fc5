//! Forecasts for real houses, as published accounts tell them, and for many houses drawn from the same prior.
//!
//! Where an account leaves the wiring open, it is filled from `prior/prior.json`, and a claim must hold in at least nine
//! draws of ten. What an account does not tell is not asserted:
//! - C03: the tree, lengths and version were not read: a single rated splitter is the account's own reading; the service's
//!   limits upstream (40 Mb/s) are the plan's, not the coax's.
//! - C04: no rates were given, so none is asserted; only links, order and round trip.
//! - C06: homes may have been put in order first, so that state of the prior is used.
//! - C07: the wiring was not read; that one stream stays under the link's rate rests on window and delay, which are not modelled here.
//! - C11: mid-band adapters are not modelled (retail adapters tune Extended D only); the operator's own link is not judged.
//! - C12: how many 50 MHz channels fit is the owner's own sum, in a band narrower than today's.
//! - C15: that a device passing the cable on is worse than a run of its own is a rule without a figure;
//!   `passing_box.rs` holds what such a box costs.
//! - C17: a tester screwed straight onto an adapter is no house: its 240 Mb/s and more, and what spoils them, stand in
//!   `core/coax/tests/link_anchors.rs`; the five suspects, each of them the spoiled wiring, in `finding_field_cases.rs`.
//! - C18: numbers stand in a picture that was not read: only that the link holds.
//! - C19: outcome not read: only what the tree implies.
//! - C21: how it was cured was not read; the modem's own levels are judged by `level_worked.rs`.
//! - C23: the drop's 50 of 200 Mb/s are the modem's rates, not the room network's: only that a splice costs and does not cut.

#![expect(
    clippy::panic,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a test fails by panicking; the numbers cast are small and positive"
)]

use advice::finding::{FindingKind, findings};
use advice::forecast::{Forecast, Options, PathForecast, Reach, forecast};
use advice::worklist::worklist;
use coax::link::Limit;
use facts::fact::SubjectId;
use house::rating::Band;
use house::record::{
    CableKind, ChangeKind, EntryKind, LengthKnown, ModemBands, ModemGeneration, OtherNetwork, PartKind,
    Plugged, Reading, ReadingKind, Service, ServiceKind, Survey,
};
use houses::{House, part_id};

use crate::prior::{Gaps, Prior, State, prior};

const DRAWS: u64 = 40;

fn quick() -> Options {
    Options { draws: 9, seed: 3, points: 111, settles: false }
}

fn told(survey: &Survey, options: Options) -> Forecast {
    match forecast(survey, &options) {
        Ok(forecast) => forecast,
        Err(error) => panic!("{error}"),
    }
}

fn path(forecast: &Forecast, outlet: SubjectId) -> &PathForecast {
    match forecast.room(outlet).map(|room| &room.reach) {
        Some(Reach::Estimated(path)) => path,
        other => panic!("no path: {other:?}"),
    }
}

/// In how many of the draws a claim holds, as a share.
fn share(case: u8, claim: impl Fn(&mut Gaps) -> bool) -> f64 {
    let held = (0..DRAWS).filter(|number| claim(&mut Gaps::new(case, *number))).count();
    held as f64 / DRAWS as f64
}

fn entry(filter: bool) -> House {
    let house = House::new().entry("E1", EntryKind::Cable).part("G1", PartKind::GroundBlock).from("E1", 1);
    if filter { house.filter("F1").from("G1", 1) } else { house }
}

/// C03, "1Gbps@10ms network in a 100 year old house" (medium.com, 2021-08-30): one active port, second floor after the
/// change at gigabit rate, 10 ms instead of 7 ms.
fn one_splitter(gaps: &mut Gaps, prior: &Prior, band_top: f64, amplifier: bool) -> Survey {
    let state = &prior.put_in_order;
    let house = entry(true).splitter("S1", 2).made_for(5.0, band_top).from("F1", 1);
    let house = gaps.run(house, prior.runs_m.entry_to_first_split, state);
    let house = if amplifier {
        gaps.run(house.amplifier("A1", 1).from("S1", 2), prior.runs_m.splitter_to_splitter, state)
    } else {
        house
    };
    let second = if amplifier { ("A1", 1) } else { ("S1", 2) };
    let house =
        house.outlet("O1", "First floor").from("S1", 1).plugged(&[]).adapter("2.5").port(1000).bridge();
    let house = gaps.run(house, prior.runs_m.to_outlet, state);
    let house =
        house.outlet("O2", "Second floor").from(second.0, second.1).plugged(&[]).adapter("2.5").port(1000);
    gaps.run(house, prior.runs_m.to_outlet, state).survey()
}

#[test]
fn c03_one_splitter_is_a_gigabit_link() {
    let prior = prior();
    let gigabit = |amplifier| {
        share(3, |gaps| {
            let survey = one_splitter(gaps, &prior, 1675.0, amplifier);
            let forecast = told(&survey, quick());
            let path = path(&forecast, part_id(&survey, "O2"));
            path.down.likely >= 900.0 && path.limit == Limit::EthernetPort
        })
    };
    assert!(gigabit(false) >= 0.9, "{}", gigabit(false));
    // Deliberately spoiled: an amplifier without a by-pass in the way must fail the claim.
    assert!(gigabit(true) < 0.5, "{}", gigabit(true));
}

#[test]
fn c03_and_c04_the_round_trip_is_two_to_seven_likely_three() {
    // 7 ms before, 10 ms after (C03); "about 3 ms" (C04, repository read-me, github.com).
    let prior = prior();
    let forecast = told(&one_splitter(&mut Gaps::new(3, 0), &prior, 1675.0, false), quick());
    let trip = forecast.round_trip_ms;
    assert!(trip.low <= 2.0 && (2.0..=4.0).contains(&trip.likely) && trip.high >= 5.0, "{trip:?}");
}

/// C04, "Coaxial Cable Network" (repository read-me, github.com, undated): ground block with filter, 2-way of 3.7 dB, on leg
/// 2 a 3-way of 7.3, 7.3, 3.7 dB. Runs about 50 ft, the owner unsure.
fn drawn_tree(spoiled: bool, seen_from: &str) -> Survey {
    let fifty_feet = 15.24;
    let mut house = entry(true)
        .splitter("S1", 2)
        .made_for(5.0, 1675.0)
        .with(|splitter| splitter.rating.leg_losses_db = vec![3.7, 3.7])
        .from("F1", 1)
        .over(CableKind::Six, 3.0)
        .splitter("S2", 3)
        .made_for(5.0, 1675.0)
        .with(|splitter| {
            splitter.rating.leg_losses_db = if spoiled { vec![3.7, 7.3, 7.3] } else { vec![7.3, 7.3, 3.7] }
        })
        .from("S1", 2)
        .over_guessed(CableKind::Six, fifty_feet, LengthKnown::Guessed);
    let outlets = [
        ("O1", "Upstairs", "S1", 1),
        ("O2", "Living room A", "S2", 1),
        ("O3", "Living room B", "S2", 2),
        ("O4", "Bedroom", "S2", 3),
    ];
    for (tag, room, feeder, port) in outlets {
        house = house
            .outlet(tag, room)
            .from(feeder, port)
            .over_guessed(CableKind::Six, fifty_feet, LengthKnown::Guessed)
            .plugged(&[])
            .adapter("2.5");
        if tag == seen_from {
            house = house.bridge();
        }
    }
    house.survey()
}

#[test]
fn c04_all_pairs_link() {
    for seen_from in ["O1", "O2", "O3", "O4"] {
        let survey = drawn_tree(false, seen_from);
        let forecast = told(&survey, Options { draws: 60, ..quick() });
        assert_eq!(forecast.rooms.len(), 3);
        for room in &forecast.rooms {
            assert!(path(&forecast, room.outlet).links >= 0.9);
        }
    }
}

#[test]
fn c04_the_bedroom_is_stronger_than_the_living_rooms_by_about_the_difference_of_the_legs() {
    // 7.3 - 3.7 = 3.6 dB by the labels; echoes and lengths that the owner is unsure of let it vary.
    let stronger = |spoiled: bool| {
        let survey = drawn_tree(spoiled, "O1");
        let forecast = told(&survey, Options { draws: 200, ..quick() });
        let loss = |tag: &str| path(&forecast, part_id(&survey, tag)).loss.likely;
        f64::midpoint(loss("O2"), loss("O3")) - loss("O4")
    };
    assert!((1.5..=6.0).contains(&stronger(false)), "{}", stronger(false));
    // Deliberately spoiled: with the strong leg elsewhere the claim must fail.
    assert!(stronger(true) < 1.5, "{}", stronger(true));
}

#[test]
fn c04_the_worst_pairs_are_those_that_jump_ports() {
    let from_living = told(&drawn_tree(false, "O2"), Options { draws: 200, ..quick() });
    let from_upstairs = told(&drawn_tree(false, "O1"), Options { draws: 200, ..quick() });
    let survey = drawn_tree(false, "O1");
    let loss = |forecast: &Forecast, tag: &str| path(forecast, part_id(&survey, tag)).loss.likely;
    let bedroom = loss(&from_upstairs, "O4");
    assert!(loss(&from_living, "O3") > bedroom, "living A to B against upstairs to bedroom");
    assert!(loss(&from_upstairs, "O2") > bedroom);
}

/// C07, "More MoCA: two adapters reviewed" (smallnetbuilder.com, 2009): adapters with 10/100 ports, version 1.0 or 1.1.
#[test]
fn c07_a_hundred_megabit_port_is_named_as_the_limit() {
    let prior = prior();
    let held_by_the_port = |ethernet_mbps: u32| {
        share(7, |gaps| {
            let mut survey = one_splitter(gaps, &prior, 1675.0, false);
            for adapter in survey.parts.values_mut().filter_map(|part| part.adapter.as_mut()) {
                (adapter.version, adapter.ethernet_mbps) = (Some("1.1".into()), Some(ethernet_mbps));
            }
            let forecast = told(&survey, quick());
            let path = path(&forecast, part_id(&survey, "O2"));
            // 94.93 Mb/s: RFC 6349, section 4.1.1.
            path.limit == Limit::EthernetPort && (path.down.likely - 94.93).abs() < 0.01
        })
    };
    assert!(held_by_the_port(100) >= 0.9, "{}", held_by_the_port(100));
    // Deliberately spoiled: a port of 1 Gb/s holds no 1.1 adapter back.
    assert!(held_by_the_port(1000) < 0.1, "{}", held_by_the_port(1000));
}

#[test]
fn c07_and_c11_satellite_on_the_coax_leaves_no_channel() {
    // C11: "MoCA takes spectrum down a notch" (lightreading.com, 2010): ordinary band-D adapters conflict with L-band.
    let survey = drawn_tree(false, "O1");
    let mut dish = survey.clone();
    let living = part_id(&dish, "O2");
    if let Some(part) = dish.parts.get_mut(&living) {
        part.plugged = Some(vec![Plugged::SatelliteReceiver]);
    }
    assert!(told(&dish, quick()).rooms.iter().all(|room| room.reach == Reach::NoChannel));
    assert!(told(&survey, quick()).rooms.iter().all(|room| room.reach != Reach::NoChannel));
}

/// C19, "Cable tangle" (blog, katepineo.com, 2019): splitter, splitter, long run to an amplifier, back to a third splitter.
#[test]
fn c19_an_amplifier_in_the_path_stops_the_network_unless_it_has_a_by_pass() {
    let prior = prior();
    let reached = |by_pass: bool| {
        share(19, |gaps| {
            let state = &prior.old;
            let house = entry(false).splitter("S1", 2).from("G1", 1).splitter("S2", 2).from("S1", 1);
            let house =
                house.amplifier("A1", 1).with(|part| part.rating.moca_bypass = Some(by_pass)).from("S2", 1);
            let house = gaps.run(house, prior.runs_m.to_outlet, state);
            let house = gaps.run(house.splitter("S3", 2).from("A1", 1), prior.runs_m.to_outlet, state);
            let house = house.outlet("O1", "Den").from("S1", 2).plugged(&[]).adapter("2.5").bridge();
            let house = gaps.run(house, prior.runs_m.to_outlet, state);
            let house = house.outlet("O2", "Far room").from("S3", 1).plugged(&[]).adapter("2.5");
            let survey = gaps.run(house, prior.runs_m.to_outlet, state).survey();
            path(&told(&survey, quick()), part_id(&survey, "O2")).down.likely > 100.0
        })
    };
    assert!(reached(false) <= 0.1, "{}", reached(false));
    assert!(reached(true) > reached(false) + 0.3, "{}", reached(true));
}

/// C23, archive of May 2023 (blog, brandonchecketts.com): a hand-twisted splice is a loss, not a break.
#[test]
fn c23_a_bad_joint_costs_but_does_not_kill() {
    let survey = drawn_tree(false, "O1");
    let mut spliced = survey.clone();
    let bedroom = part_id(&spliced, "O4");
    let run = spliced.wiring.feed(bedroom).and_then(|feed| feed.run);
    if let Some(run) = run.and_then(|run| spliced.runs.get_mut(&run)) {
        run.connector_near = house::record::Connector::BadJoint;
    }
    let options = Options { draws: 100, ..quick() };
    let (sound, bad) = (told(&survey, options), told(&spliced, options));
    assert!(path(&bad, bedroom).loss.likely > path(&sound, bedroom).loss.likely + 1.0);
    assert!(path(&bad, bedroom).links >= 0.9);
    // Deliberately spoiled: where the cable is not there at all, no link may be claimed.
    let mut cut = survey.clone();
    if let Some(part) = cut.parts.get_mut(&bedroom) {
        part.feed = None;
    }
    cut.rewire();
    let reach = told(&cut, options).room(bedroom).map(|room| room.reach.clone());
    assert_eq!(reach, Some(Reach::Loose(bedroom)));
}

/// What the findings of a house say, by kind.
fn kinds(survey: &Survey) -> Vec<FindingKind> {
    findings(survey, Some(&told(survey, quick()))).iter().map(|finding| finding.kind).collect()
}

/// C12, "Home network notes: MoCA" (jfcarter.net, about 2010-11): a fibre terminal with a WAN network and the rooms' LAN on one
/// coax, both within 1150-1500 MHz. That a LAN of 2.5 needs 500 MHz is from TR-181 (five channels of 100 MHz).
#[test]
fn c12_a_wan_network_on_the_same_wire_is_placed_around_and_never_called_a_stranger() {
    let prior = prior();
    let house = |low_mhz: f64, high_mhz: f64, gaps: &mut Gaps| {
        let mut survey = one_splitter(gaps, &prior, 1675.0, false);
        let id = SubjectId::from_uuid(uuid::Uuid::from_u128(99_999));
        let mut link = Service::new(id, ServiceKind::FibreLink);
        let bands = vec![Band { low_mhz, high_mhz }];
        link.network = Some(OtherNetwork { version: Some("1.1".into()), bands, nodes: 2 });
        survey.services.insert(id, link);
        survey
    };
    let clear = |low: f64, high: f64, case: u8| {
        share(case, |gaps| {
            let survey = house(low, high, gaps);
            let forecast = told(&survey, quick());
            let out_of_the_way = forecast
                .channels
                .iter()
                .all(|(centre, width)| centre + width / 2.0 <= low || centre - width / 2.0 >= high);
            let strangers = kinds(&survey).contains(&FindingKind::NodesMoreThanKnown);
            !forecast.channels.is_empty() && out_of_the_way && !strangers
        })
    };
    assert!(clear(1275.0, 1325.0, 12) >= 0.9);
    let overlap = |low: f64, high: f64| {
        kinds(&house(low, high, &mut Gaps::new(12, 0))).contains(&FindingKind::NetworksOverlap)
    };
    assert!(overlap(1275.0, 1325.0), "in the middle the WAN channel leaves no 500 MHz for the LAN");
    // Deliberately spoiled: a WAN channel at the band's end leaves the LAN its 500 MHz, and the finding must go.
    assert!(!overlap(1125.0, 1175.0));
}

/// C15, SCTE 235 2017 summary (scte.org) and "Standards bodies team on DOCSIS 3.1 - MoCA 2.0" (broadbandtechreport.com,
/// 2017-03-14): a modem plan that reaches 1218 MHz overlaps 1125-1675 MHz.
#[test]
fn c15_a_modem_plan_that_reaches_into_the_band_is_found_and_kept_clear_of() {
    let prior = prior();
    let told_of = |top: f64| {
        share(15, |gaps| {
            let mut survey = one_splitter(gaps, &prior, 1675.0, false);
            let id = SubjectId::from_uuid(uuid::Uuid::from_u128(99_998));
            let mut internet = Service::new(id, ServiceKind::CableInternet);
            internet.top_mhz = Some(top);
            survey.services.insert(id, internet);
            let clear =
                told(&survey, quick()).channels.iter().all(|(centre, width)| centre - width / 2.0 >= top);
            kinds(&survey).contains(&FindingKind::ServiceInBand) && clear
        })
    };
    assert!(told_of(1218.0) >= 0.9);
    // Deliberately spoiled: a plan that ends at 1002 MHz reaches nowhere near the band.
    assert!(told_of(1002.0) < 0.1);
}

/// C15, the same sources: a modem made to listen at 1125 MHz and above, with no filter at its port, may suffer; a filter at
/// the modem is the cure.
#[test]
fn c15_a_modem_made_to_reach_into_the_band_may_suffer_until_it_has_a_filter() {
    let prior = prior();
    let may_suffer = |filtered: bool| {
        share(15, |gaps| {
            let mut survey = one_splitter(gaps, &prior, 1675.0, false);
            let id = SubjectId::from_uuid(uuid::Uuid::from_u128(99_996));
            let mut internet = Service::new(id, ServiceKind::CableInternet);
            internet.modem =
                Some(ModemBands { generation: Some(ModemGeneration::V3_1), upstream_top_mhz: None });
            survey.services.insert(id, internet);
            let first = part_id(&survey, "O1");
            if let Some(outlet) = survey.parts.get_mut(&first) {
                (outlet.plugged, outlet.device_filter) = (Some(vec![Plugged::Modem]), filtered);
            }
            let offered = list_of(&survey).contains(&ChangeKind::FilterAtDevice { outlet: first });
            let found = kinds(&survey).contains(&FindingKind::ModemMayReachBand);
            assert_eq!(offered, found, "the finding and its cure go together");
            found
        })
    };
    assert!(may_suffer(false) >= 0.9);
    // Deliberately spoiled: with the filter at its port nothing may be said.
    assert!(may_suffer(true) < 0.1);
}

/// The changes that the work list offers.
fn list_of(survey: &Survey) -> Vec<ChangeKind> {
    let draws = Options { draws: 3, seed: 1, points: 34, settles: false };
    let options = advice::worklist::Options {
        screening: draws,
        stating: draws,
        most_steps: 6,
        ..advice::worklist::Options::default()
    };
    match worklist(survey, &options) {
        Ok(list) => list.steps.iter().map(|step| step.change).collect(),
        Err(error) => panic!("{error}"),
    }
}

/// C18, "Overcoming RF interference with old coaxial cabling" (blog, luxabsiobervatum.blogspot.com, 2023-08-08): nearly every
/// room wired by former owners, only the living room's port in use; 2.5 pair; the owner calls it fixed. Tree not read.
#[test]
fn c18_a_pair_in_an_old_wired_house_holds_its_link() {
    let prior = prior();
    let holds = |amplifier: bool| {
        share(18, |gaps| {
            let state = &prior.old;
            let house = entry(false).splitter("S1", 4).from("G1", 1).open(3).open(4);
            let house = gaps.run(house, prior.runs_m.entry_to_first_split, state);
            let (house, office) = if amplifier {
                (
                    gaps.run(
                        house.amplifier("A1", 1).from("S1", 2),
                        prior.runs_m.splitter_to_splitter,
                        state,
                    ),
                    "A1",
                )
            } else {
                (house, "S1")
            };
            let house = house.outlet("O1", "Living room").from("S1", 1).plugged(&[]).adapter("2.5").bridge();
            let house = gaps.run(house, prior.runs_m.to_outlet, state);
            let port = if amplifier { 1 } else { 2 };
            let house = house.outlet("O2", "Office").from(office, port).plugged(&[]).adapter("2.5");
            let survey = gaps.run(house, prior.runs_m.to_outlet, state).survey();
            let found = kinds(&survey);
            let linked = path(&told(&survey, quick()), part_id(&survey, "O2")).down.likely > 100.0;
            linked
                && found.contains(&FindingKind::EntryFilterMissing)
                && found.contains(&FindingKind::LegOpen)
        })
    };
    assert!(holds(false) >= 0.9, "{}", holds(false));
    // Deliberately spoiled: with an amplifier without a by-pass in the way the link must not be claimed.
    assert!(holds(true) < 0.5, "{}", holds(true));
}

/// C21, "Speed up your cable internet" (blog, butiamright.blogspot.com, 2014-12-14): 6 to 100 Mb/s, worst in the hot part of
/// the day: the drop or its fittings, not the room network.
#[test]
fn c21_swings_with_heat_point_to_the_internet_side() {
    let prior = prior();
    let told_of = |with_heat_or_hour: bool| {
        share(21, |gaps| {
            let mut survey = one_splitter(gaps, &prior, 1675.0, false);
            let id = SubjectId::from_uuid(uuid::Uuid::from_u128(99_997));
            let measured = ReadingKind::Swings { low_mbps: 6.0, high_mbps: 100.0, with_heat_or_hour };
            survey.readings.insert(id, Reading { id, about: None, port: None, measured, how: None });
            kinds(&survey).contains(&FindingKind::SpeedSwings)
        })
    };
    assert!(told_of(true) >= 0.9);
    // Deliberately spoiled: swings that follow neither heat nor hour say nothing of the drop.
    assert!(told_of(false) < 0.1);
}

/// A house drawn from the prior: entry, perhaps a filter, one splitter or two in a row, outlets on their legs.
fn random_house(gaps: &mut Gaps, prior: &Prior, state: &State, version: &str) -> Survey {
    let filter = gaps.chance(state.share_entry_filter);
    let mut house = entry(filter);
    let [least, most] = prior.rooms;
    let rooms = least + (gaps.dice.unit() * f64::from(most - least + 1)) as u8;
    let outlets = rooms + 1;
    let top = |gaps: &mut Gaps| if gaps.chance(state.share_splitter_for_the_band) { 1675.0 } else { 1000.0 };
    let two = outlets > 3 && gaps.chance(state.share_second_splitter);
    let open = u8::from(gaps.chance(state.share_leg_left_open));
    let legs = if two { 3 } else { outlets } + open;
    let band = top(gaps);
    house = house.splitter("S1", legs).made_for(5.0, band).from(if filter { "F1" } else { "G1" }, 1);
    if open == 1 {
        house = house.open(legs);
    }
    house = gaps.run(house, prior.runs_m.entry_to_first_split, state);
    let mut feeders: Vec<(&str, u8)> = Vec::new();
    if two {
        let below = outlets - 2;
        let amplified = gaps.chance(state.share_amplifier_in_the_way);
        if amplified {
            house =
                gaps.run(house.amplifier("A1", 1).from("S1", 3), prior.runs_m.splitter_to_splitter, state);
        }
        let (feeder, port) = if amplified { ("A1", 1) } else { ("S1", 3) };
        let band = top(gaps);
        house = house.splitter("S2", below.max(2)).made_for(5.0, band).from(feeder, port);
        house = gaps.run(house, prior.runs_m.splitter_to_splitter, state);
        feeders.extend([("S1", 1), ("S1", 2)]);
        feeders.extend((1..=below).map(|port| ("S2", port)));
    } else {
        feeders.extend((1..=outlets).map(|port| ("S1", port)));
    }
    for (number, (feeder, port)) in feeders.into_iter().enumerate() {
        house =
            house.outlet(&format!("O{number}"), &format!("Room {number}")).from(feeder, port).plugged(&[]);
        house = gaps.run(house, prior.runs_m.to_outlet, state).adapter(version);
        if number == 0 {
            house = house.bridge();
        }
    }
    house.survey()
}

/// C06, "MoCA: Wi-Fi mesh in the home still requires a wire" (ecnmag.com, 2017-04): bonded 2.0 in 11 homes, at least
/// 800 Mb/s in each. The account does not tell the wiring.
#[test]
fn c06_bonded_2_0_in_houses_put_in_order_rarely_falls_below_800() {
    let prior = prior();
    let weakest = |state: &State, number: u64| {
        let survey = random_house(&mut Gaps::new(6, number), &prior, state, "2.0 bonded");
        let forecast = told(&survey, quick());
        forecast.weakest_first().first().map_or(0.0, |(_, path)| path.down.likely)
    };
    let held = |state: &State| {
        (0..DRAWS).filter(|number| weakest(state, *number) >= 799.0).count() as f64 / DRAWS as f64
    };
    assert!(held(&prior.put_in_order) >= 0.9, "{}", held(&prior.put_in_order));
    // Deliberately spoiled: an amplifier without a by-pass in the way of the far rooms of every house.
    let mut spoiled = crate::prior::prior().put_in_order;
    (spoiled.share_second_splitter, spoiled.share_amplifier_in_the_way) = (1.0, 1.0);
    assert!(held(&spoiled) < 0.9, "{}", held(&spoiled));
}

/// 2,000 houses of the prior, half of them old wiring: a table of rates by version, and that it is believable.
#[test]
fn two_thousand_houses() {
    // Ten rows of them: five versions, two states of wiring.
    const HOUSES: u64 = 200;
    let prior = prior();
    let versions = ["1.0", "1.1", "2.0", "2.0 bonded", "2.5"];
    println!("Net rate to each room, Mb/s, one draw a house, {HOUSES} houses a row");
    println!(
        "{:>12} {:>14} {:>6} {:>6} {:>6} {:>8} {:>12}",
        "version", "wiring", "p10", "p50", "p90", "no link", "falls short"
    );
    let mut short = std::collections::BTreeMap::new();
    for (row, version) in versions.into_iter().enumerate() {
        for (name, state) in [("old", &prior.old), ("put in order", &prior.put_in_order)] {
            let mut rates = Vec::new();
            let mut best: f64 = 0.0;
            for number in 0..HOUSES {
                let mut gaps = Gaps::new(100 + row as u8, number);
                let survey = random_house(&mut gaps, &prior, state, version);
                let options = Options { draws: 1, seed: number, points: 111, settles: false };
                for (_, path) in told(&survey, options).weakest_first() {
                    rates.push(path.down.likely);
                    best = best.max(path.down.likely);
                }
            }
            rates.sort_by(f64::total_cmp);
            let at = |share: f64| rates[((rates.len() - 1) as f64 * share).round() as usize];
            let of =
                |least: f64| rates.iter().filter(|rate| **rate < least).count() as f64 / rates.len() as f64;
            println!(
                "{version:>12} {name:>14} {:>6.0} {:>6.0} {:>6.0} {:>6.1} % {:>10.1} %",
                at(0.1),
                at(0.5),
                at(0.9),
                100.0 * of(1.0),
                100.0 * of(0.5 * best)
            );
            short.insert((version, name), of(0.5 * best));
        }
    }
    let old = |version| short[&(version, "old")];
    let tidy = |version| short[&(version, "put in order")];
    for version in versions {
        assert!(old(version) < 0.5, "{version}: most outlets of old wiring must not fall short");
        assert!(tidy(version) <= old(version), "{version}");
        assert!(tidy(version) < 0.1, "{version}: hardly any of wiring put in order may fall short");
    }
    assert!(
        versions.into_iter().any(|version| old(version) > 0.01),
        "some outlets of old wiring must fall short"
    );
}

/// Old wiring with adapters of the first generation: most outlets are worth a network, and some are not. That 90 to 98 % of them
/// get 100 Mb/s or more is from memory, of what the trade told of its first field trials; no source.
#[test]
fn first_generation_adapters_in_old_wiring_leave_some_outlets_out() {
    const HOUSES: u64 = 300;
    let prior = prior();
    // Nothing was made for the band in those days, and an amplifier behind the first splitter was more usual than now (common
    // practice, no source).
    let old =
        State { share_splitter_for_the_band: 0.0, share_amplifier_in_the_way: 0.15, ..self::prior().old };
    let share = |state: &State| {
        let mut rates = Vec::new();
        for number in 0..HOUSES {
            let survey = random_house(&mut Gaps::new(90, number), &prior, state, "1.1");
            let told = told(&survey, Options { draws: 1, seed: number, points: 111, settles: false });
            rates.extend(
                told.weakest_first().into_iter().map(|(_, path)| path.down.likely.min(path.up.likely)),
            );
        }
        rates.iter().filter(|rate| **rate >= 100.0).count() as f64 / rates.len() as f64
    };
    let found = share(&old);
    assert!((0.9..=0.98).contains(&found), "{found}");
    // As near as can be: the same houses put in order.
    let tidy = share(&prior.put_in_order);
    assert!(tidy > 0.98, "{tidy}");
}
