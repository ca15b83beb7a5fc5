//! Every sheet that cannot be taken: a message that says where and what, exit code 3, nothing written.
#![expect(clippy::format_collect, reason = "a sheet of many lines reads best as its line")]

use crate::support::Desk;

/// Runs a sheet that must be refused, and returns what was told, with all blanks single so that wrapping does not
/// matter.
fn refused(sheet: impl AsRef<[u8]>) -> String {
    let desk = Desk::new();
    desk.write("bad.toml", sheet);
    let before = desk.all();
    let ran = desk.run(&["sheet", "bad.toml", "new.legwork"]);
    assert_eq!(ran.code, 3, "{}", ran.err);
    assert_eq!(ran.out, "");
    assert!(ran.err.starts_with("legwork: bad.toml "), "{}", ran.err);
    assert!(desk.all() == before, "something was written");
    assert!(!desk.home().exists(), "an author was made for nothing");
    ran.err.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn assert_told(told: &str, parts: &[&str]) {
    for part in parts {
        assert!(told.contains(part), "no \"{part}\" in: {told}");
    }
}

/// A sheet of one entry, and what is added to it.
fn house(added: &str) -> String {
    format!("[[part]]\ntag = \"E1\"\nkind = \"entry\"\n{added}")
}

#[test]
fn a_loop_is_told_as_a_loop() {
    let told = refused(
        "[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlegs = 2\nfrom = \"S2\"\nport = 1\n\
         [[part]]\ntag = \"S2\"\nkind = \"splitter\"\nlegs = 2\nfrom = \"S1\"\nport = 1\n",
    );
    assert_told(&told, &["(1 problem)", "Line 5, [[part]] S1, from", "S1 < S2 < S1"]);
}

#[test]
fn a_part_that_feeds_itself_is_a_loop() {
    let told = refused("[[part]]\ntag = \"B1\"\nkind = \"barrel\"\nfrom = \"B1\"\n");
    assert_told(&told, &["(1 problem)", "B1 < B1"]);
}

#[test]
fn cable_of_less_than_no_length() {
    let told =
        refused(house("[[part]]\ntag = \"O1\"\nkind = \"outlet\"\nfrom = \"E1\"\nlength = \"-3 m\"\n"));
    assert_told(&told, &["(1 problem)", "Line 8, [[part]] O1, length", "found -3 m", "above 0", "500 m"]);
}

#[test]
fn a_bare_length_has_no_unit() {
    let told = refused(house("[[part]]\ntag = \"O1\"\nkind = \"outlet\"\nfrom = \"E1\"\nlength = 12\n"));
    assert_told(&told, &["(1 problem)", "found 12 ", "a length with its unit"]);
}

#[test]
fn the_ninth_leg_of_an_eight_way() {
    let eight = "[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlegs = 8\nfrom = \"E1\"\n";
    let ninth = "[[part]]\ntag = \"O9\"\nkind = \"outlet\"\nfrom = \"S1\"\nport = 9\n";
    let told = refused(house(&format!("{eight}{ninth}")));
    assert_told(
        &told,
        &["(1 problem)", "Line 13, [[part]] O9, port", "found 9", "one of the 8 outputs (legs) of S1"],
    );
}

#[test]
fn nine_legs_where_the_label_says_eight() {
    let told = refused(house(
        "[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlabel = \"8-WAY SPLITTER 5-1000 MHz\"\nlegs = 9\nfrom = \"E1\"\n",
    ));
    assert_told(&told, &["(1 problem)", "Line 8, [[part]] S1, legs", "8 legs, as the label says"]);
}

#[test]
fn nine_losses_of_eight_legs() {
    let losses = ["\"11 dB\""; 9].join(", ");
    let told = refused(house(&format!(
        "[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlegs = 8\nloss = [{losses}]\nfrom = \"E1\"\n"
    )));
    assert_told(&told, &["(1 problem)", "[[part]] S1, loss", "found 9", "each of the 8 outputs (legs)"]);
}

#[test]
fn a_band_upside_down() {
    let told =
        refused(house("[[part]]\ntag = \"B1\"\nkind = \"barrel\"\nfrom = \"E1\"\nband = \"1000-5 MHz\"\n"));
    assert_told(&told, &["(1 problem)", "Line 8, [[part]] B1, band", "found 1000-5 MHz", "lower edge"]);
}

#[test]
fn a_series_that_there_is_not() {
    let told = refused(house("[[part]]\ntag = \"O1\"\nkind = \"outlet\"\nfrom = \"E1\"\ncable = \"58\"\n"));
    assert_told(&told, &["(1 problem)", "found 58", "one of: 6, 59, 7, 11, unknown", "Did you mean \"59\"?"]);
}

#[test]
fn far_too_many_parts_are_refused_in_one_line() {
    let parts = |count: usize| -> String {
        (0..count).map(|n| format!("[[part]]\ntag = \"S{n}\"\nkind = \"outlet\"\n")).collect()
    };
    assert_told(&refused(parts(9_000)), &["(1 problem)", "found 9000", "at most 2000"]);
    assert_told(&refused(parts(12_000)), &["(1 problem)", "at most 20000 tables and lists"]);
    let room = "[[room]]\nname = \"x\"\n".to_owned() + &"\n".repeat(250_000);
    assert_told(&refused(room), &["(1 problem)", "at most 250000 names, values"]);
}

#[test]
fn two_thousand_parts_are_taken_and_one_more_is_not() {
    let loose = |count: usize| -> String {
        (0..count).map(|n| format!("[[part]]\ntag = \"S{n}\"\nkind = \"barrel\"\n")).collect()
    };
    assert_told(&refused(loose(2001)), &["found 2001"]);
    let desk = Desk::new();
    desk.write("good.toml", loose(2000));
    assert_eq!(desk.run(&["sheet", "good.toml", "new.legwork"]).code, 0);
}

#[test]
fn bytes_that_are_no_text() {
    let told = refused(b"[survey]\nname = \"a\xFFb\"\n");
    assert_told(&told, &["(1 problem)", "Line 2, the sheet", "0xFF", "UTF-8"]);
}

#[test]
fn a_file_too_long_to_be_a_sheet() {
    let told = refused("#".repeat((8 << 20) + 1));
    assert_told(&told, &["8388609 bytes long", "at most 8388608", "Nothing was written"]);
}

#[test]
fn one_tag_on_two_parts() {
    let told = refused(house("[[part]]\ntag = \"E1\"\nkind = \"barrel\"\n"));
    assert_told(&told, &["(1 problem)", "Line 5, [[part]] E1, tag", "stands on line 2 already"]);
}

#[test]
fn one_tag_on_two_runs() {
    let told = refused(house(
        "[[part]]\ntag = \"B1\"\nkind = \"barrel\"\nfrom = \"E1\"\nrun_tag = \"R1\"\n\
         [[part]]\ntag = \"B2\"\nkind = \"barrel\"\nfrom = \"B1\"\nrun_tag = \"R1\"\n",
    ));
    assert_told(&told, &["(1 problem)", "Line 13, [[part]] B2, run_tag", "line 8 already"]);
}

#[test]
fn a_feeder_that_is_not_there() {
    let told = refused(house("[[part]]\ntag = \"O1\"\nkind = \"outlet\"\nfrom = \"E2\"\n"));
    assert_told(&told, &["(1 problem)", "Line 7, [[part]] O1, from", "found E2", "Did you mean \"E1\"?"]);
}

#[test]
fn a_room_that_is_not_there() {
    let told = refused(house(
        "[[part]]\ntag = \"O1\"\nkind = \"outlet\"\nfrom = \"E1\"\nroom = \"Offce\"\n[[room]]\nname = \"Office\"\n",
    ));
    assert_told(&told, &["(1 problem)", "Line 8, [[part]] O1, room", "Did you mean \"Office\"?"]);
}

#[test]
fn two_cables_on_one_leg_name_both() {
    let told = refused(house(
        "[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlegs = 2\nfrom = \"E1\"\n\
         [[part]]\ntag = \"O1\"\nkind = \"outlet\"\nfrom = \"S1\"\nport = 2\n\
         [[part]]\ntag = \"O2\"\nkind = \"outlet\"\nfrom = \"S1\"\nport = 2\n",
    ));
    assert_told(&told, &["(1 problem)", "[[part]] O2, port", "O1 and O2 are both on port 2 of S1"]);
}

#[test]
fn an_end_where_a_cable_is() {
    let told = refused(house(
        "[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlegs = 2\nfrom = \"E1\"\nends = { 1 = \"open\", 3 = \"open\" }\n\
         [[part]]\ntag = \"O1\"\nkind = \"outlet\"\nfrom = \"S1\"\nport = 1\n",
    ));
    assert_told(&told, &["(2 problems)", "S1, ends.1", "O1 is fed from this port", "S1, ends.3", "found 3"]);
}

#[test]
fn a_leg_must_be_named_where_there_are_several() {
    let told = refused(house(
        "[[part]]\ntag = \"S1\"\nkind = \"splitter\"\nlegs = 3\nfrom = \"E1\"\n\
         [[part]]\ntag = \"O1\"\nkind = \"outlet\"\nfrom = \"S1\"\n",
    ));
    assert_told(&told, &["(1 problem)", "[[part]] O1, port", "one of the 3 outputs (legs) of S1"]);
}

#[test]
fn fields_unknown_or_out_of_place() {
    let told = refused(house(
        "conectors = \"crimp\"\n[[part]]\ntag = \"O1\"\nkind = \"outlet\"\ngain = \"15 dB\"\ncable = \"6\"\n",
    ));
    assert_told(&told, &["(3 problems)", "Line 4, [[part]] E1, conectors", "Did you mean \"connectors\"?"]);
    assert_told(
        &told,
        &["[[part]] O1, gain", "kind = \"amplifier\"", "[[part]] O1, cable", "from = \"TAG\" as well"],
    );
}

#[test]
fn an_entry_is_not_fed() {
    let told = refused(
        "[[part]]\ntag = \"E1\"\nkind = \"entry\"\nfrom = \"B1\"\n[[part]]\ntag = \"B1\"\nkind = \"barrel\"\n",
    );
    assert_told(&told, &["(1 problem)", "Line 4, [[part]] E1, from"]);
}

#[test]
fn a_reading_of_nothing_and_of_two_things() {
    let told =
        refused(house("[[reading]]\nat = \"E1\"\n[[reading]]\nlevel = \"3 dBmV\"\nround_trip = \"3 ms\"\n"));
    assert_told(&told, &["(2 problems)", "exactly one of level with frequency"]);
}

#[test]
fn a_reading_that_is_only_half_told() {
    let told = refused(house(
        "[[reading]]\npower = { sent = \"-10 dBm\" }\n\
         [[reading]]\npower = { sent = \"-10\", received = \"-40 Mb/s\" }\n\
         [[reading]]\npacket_loss = { percent = 101, busy = \"yes\" }\n\
         [[reading]]\nswings = { low = \"9 Mb/s\", high = \"6 Mb/s\", with_heat_or_hour = true }\n\
         [[reading]]\nnodes_seen = 0\n\
         [[reading]]\nmodem_sends = \"44\"\nhow = { reach = \"hous\" }\n",
    ));
    assert_told(
        &told,
        &[
            "(10 problems)",
            "Line 5, [[reading]] number 1, power.received",
            "Line 7, [[reading]] number 2, power.sent",
            "[[reading]] number 2, power.received found -40 Mb/s expected a power with its unit",
            "Line 9, [[reading]] number 3, packet_loss.percent",
            "[[reading]] number 3, packet_loss.busy",
            "Line 11, [[reading]] number 4, swings",
            "a low rate below the high one",
            "a whole number from 1 to 255",
            "[[reading]] number 6, modem_sends",
            "Did you mean \"house\"?",
        ],
    );
}

#[test]
fn a_service_with_what_belongs_to_another() {
    let told = refused(house(
        "[[service]]\nkind = \"satellite_tv\"\nsignal = \"digital\"\nmodem = { generation = \"3.1\" }\n\
         network = {}\npower = { from = \"E1\", to = \"E1\" }\n\
         [[service]]\nkind = \"cable_tv\"\nsingle_cable = \"EN 50494\"\n",
    ));
    assert_told(
        &told,
        &[
            "Line 6, [[service]] satellite_tv, signal",
            "services of kind cable_tv, antenna_tv",
            "Line 7, [[service]] satellite_tv, modem",
            "services of kind cable_internet",
            "Line 8, [[service]] satellite_tv, network",
            "services of kind provider_network, fibre_link",
            "[[service]] satellite_tv, power",
            "Line 12, [[service]] cable_tv, single_cable",
            "services of kind satellite_tv",
        ],
    );
}

#[test]
fn figures_of_services_that_cannot_be() {
    let told = refused(house(
        "[[service]]\nkind = \"cable_internet\"\nmodem = { generation = \"5.0\", sends_to = \"85\" }\n\
         [[service]]\nkind = \"provider_network\"\n\
         network = { version = \"9\", bands = [\"1500-1400 MHz\"], nodes = 300, name = \"x\" }\n\
         [[service]]\nkind = \"satellite_tv\"\nsingle_cable = \"EN 50595\"\n",
    ));
    assert_told(
        &told,
        &[
            "(7 problems)",
            "modem.generation",
            "one of: 3.0, 3.1, 4.0",
            "modem.sends_to",
            "network.version",
            "network.bands",
            "lower edge of the band first",
            "network.nodes",
            "network.name",
            "one of: en50494, en50607",
        ],
    );
}

#[test]
fn references_to_parts_of_another_kind() {
    let told = refused(house(
        "[[part]]\ntag = \"O1\"\nkind = \"outlet\"\nfrom = \"E1\"\n\
         [[part]]\ntag = \"B1\"\nkind = \"barrel\"\nsharing = \"splitter\"\n\
         [[room]]\nname = \"Shed\"\nserved_from = \"E1\"\n\
         [[service]]\nkind = \"cable_tv\"\nentry = \"O1\"\n\
         [[service]]\nkind = \"power_over_coax\"\npower = { from = \"O1\", to = \"O1\" }\n\
         [[service]]\nkind = \"power_over_coax\"\npower = { from = \"O1\", to = \"A1\" }\n",
    ));
    assert_told(
        &told,
        &[
            "(5 problems)",
            "Line 11, [[part]] B1, sharing found barrel",
            "Line 14, [[room]] Shed, served_from found E1",
            "a part of kind \"outlet\"",
            "Line 17, [[service]] cable_tv, entry found O1",
            "a part of kind \"entry\"",
            "power.to found O1 expected another part",
            "power.to found A1",
        ],
    );
}

#[test]
fn a_row_of_parts_deeper_than_a_house() {
    let row: String = (0..300)
        .map(|n| {
            format!(
                "[[part]]\ntag = \"B{}\"\nkind = \"barrel\"\nfrom = \"{}\"\n",
                n + 1,
                match n {
                    0 => "E1".to_owned(),
                    n => format!("B{n}"),
                }
            )
        })
        .collect();
    let told = refused(house(&row));
    assert_told(&told, &["(1 problem)", "[[part]] B257, from", "at most 256"]);
}

#[test]
fn a_text_longer_than_a_survey_holds() {
    let told = refused(house(&format!("note = \"{}\"\n", "x".repeat(8191))));
    assert_told(
        &told,
        &["(1 problem)", "Line 4, [[part]] E1, note", "at most 8192 plain letters; this one takes up 8193"],
    );
}

#[test]
fn toml_that_is_none() {
    assert_told(&refused("[[part]\ntag = \"E1\"\n"), &["Line 1, the sheet", "TOML"]);
    assert_told(&refused("a = \"x\nb = 1\n"), &["Line 1, the sheet", "TOML"]);
    assert_told(&refused("[survey]\nname = \"a\"\nname = \"b\"\n"), &["Line 3, the sheet", "TOML"]);
    assert_told(&refused(format!("a = {}", "[".repeat(10_000))), &["Line 1, the sheet", "TOML"]);
    assert_told(&refused(format!("{}b = 1", "a.".repeat(10_000))), &["Line 1, the sheet", "TOML"]);
    assert_told(&refused("part = 5\n"), &["[[part]]"]);
    assert_told(&refused("survey = 5\n"), &["[survey]"]);
}

#[test]
fn all_problems_are_told_at_once_up_to_twenty() {
    let many: String = (0..25).map(|n| format!("[[part]]\ntag = \"S{n}\"\nkind = \"quux\"\n")).collect();
    let told = refused(&many);
    assert_told(&told, &["(25 problems)", "[[part]] S0, kind", "[[part]] S19, kind", "And 5 more problems"]);
    assert!(!told.contains("S20"));

    let desk = Desk::new();
    desk.write("bad.toml", many);
    let ran = desk.run(&["--json", "sheet", "bad.toml", "new.legwork"]);
    assert_eq!((ran.code, ran.out.as_str()), (3, ""));
    let told: serde_json::Value = serde_json::from_str(&ran.err).unwrap();
    assert_eq!(told["error"]["name"], "sheet");
    assert_eq!(told["error"]["problem_count"], 25);
    assert_eq!(told["error"]["problems"].as_array().unwrap().len(), 20);
    assert_eq!(told["error"]["problems"][1]["line"], 6);
    assert_eq!(told["error"]["problems"][1]["column"], 8);
    assert_eq!(told["error"]["problems"][1]["found"], "quux");
}

#[test]
fn what_a_sheet_says_cannot_steer_the_terminal() {
    let told = refused("[[part]]\ntag = \"E1\\u001b[31m\"\nkind = \"\\u001b]0;x\\u0007\"\n");
    assert!(!told.contains('\u{1b}') && !told.contains('\u{7}'), "{told:?}");
}

#[test]
fn a_survey_that_is_there_already_is_left_alone() {
    let desk = Desk::new();
    desk.write("good.toml", house(""));
    assert_eq!(desk.run(&["sheet", "good.toml", "new.legwork"]).code, 0);
    let before = desk.all();
    let again = desk.run(&["sheet", "good.toml", "new.legwork"]);
    assert_eq!(again.code, 3);
    assert!(again.err.contains("new.legwork already exists"), "{}", again.err);
    assert!(desk.all() == before);
}

#[test]
fn a_survey_needs_its_ending_and_a_folder_to_stand_in() {
    let desk = Desk::new();
    desk.write("good.toml", house(""));
    let before = desk.all();
    let ending = desk.run(&["sheet", "good.toml", "new.survey"]);
    assert_eq!(ending.code, 3);
    assert!(ending.err.contains(".legwork"), "{}", ending.err);
    let nowhere = desk.run(&["sheet", "good.toml", "no/such/folder/new.legwork"]);
    assert_eq!(nowhere.code, 1);
    assert!(nowhere.err.contains("new.legwork"), "{}", nowhere.err);
    let missing = desk.run(&["sheet", "none.toml", "new.legwork"]);
    assert_eq!(missing.code, 1);
    assert!(missing.err.contains("none.toml cannot be read"), "{}", missing.err);
    assert!(desk.all() == before);
}
