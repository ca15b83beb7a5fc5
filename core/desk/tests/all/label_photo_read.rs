//! What `legwork label --photo` tells of photos. The model and the photos are no part of the sources: `tests/rooms/print` makes them,
//! names them, and runs these. What stands on the photos is written in `tests/photos/command.py`.

use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};

use serde_json::{Value, json};

use crate::documented::assert_documented;
use crate::support::Desk;

fn named(variable: &str) -> PathBuf {
    std::env::var_os(variable).map_or_else(|| panic!("{variable} names a folder"), PathBuf::from)
}

/// A desk with the model and the photos.
fn with_photos() -> Desk {
    let desk = Desk::new();
    std::fs::create_dir(desk.print_model()).unwrap();
    for (from, to) in [("LEGWORK_PRINT_MODEL", desk.print_model()), ("LEGWORK_PHOTOS", desk.work())] {
        for entry in std::fs::read_dir(named(from)).unwrap() {
            let entry = entry.unwrap();
            std::fs::copy(entry.path(), to.join(entry.file_name())).unwrap();
        }
    }
    desk
}

/// What `legwork --json` answers, a value a line.
fn objects(desk: &Desk, arguments: &[&str]) -> Vec<Value> {
    let ran = desk.run(&[&["--json"], arguments].concat());
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    ran.out.lines().map(|line| serde_json::from_str(line).unwrap()).collect()
}

fn member<'a>(object: &'a Value, name: &str) -> &'a Value {
    object["members"].as_array().unwrap().iter().find(|member| member["member"] == name).unwrap()
}

#[test]
#[ignore = "needs the model and photos"]
fn a_label_is_read_and_told() {
    let desk = with_photos();
    let before = desk.all();
    let ran = desk.run(&["label", "--photo", "label.jpg"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    for told in ["4-WAY SPLITTER", "5 to 1002 MHz; sure", "7.2 dB", "25 dB; sure", "  at ", "a suggestion"] {
        assert!(ran.out.contains(told), "no {told} in {}", ran.out);
    }
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.out);
    let [object] = &objects(&desk, &["label", "--photo", "label.jpg"])[..] else { panic!("one photo") };
    assert_documented(object);
    let reading = &object["reading"];
    assert_eq!((&reading["kind"], &reading["legs"]), (&json!("splitter"), &json!(4)));
    assert_eq!((&reading["low_mhz"], &reading["high_mhz"]), (&json!(5.0), &json!(1002.0)));
    assert_eq!(reading["leg_losses_db"], json!([7.2, 7.2, 7.2, 7.2]));
    assert_eq!(reading["isolation_db"], json!(25.0));
    assert_eq!((&object["turned_degrees"], &object["length"]), (&json!(0), &Value::Null));
    // The reading is that of the text, typed.
    let typed = objects(&desk, &["label", object["text"].as_str().unwrap()]);
    assert_eq!(&typed[0], reading);
    // The members in the order that docs/command.md states.
    let line = desk.run(&["--json", "label", "--photo", "label.jpg"]).out;
    let text = "4-WAY SPLITTER\\nBAND 5-1002 MHz\\nOUT -7.2 dB\\nISO 25 dB";
    let start = format!(
        "{{\"photo\":\"label.jpg\",\"text\":\"{text}\",\"turned_degrees\":0,\"reading\":{{\"kind\":\"splitter\",\"low_mhz\":5.0,"
    );
    assert!(line.starts_with(&start), "{line}");
    let members = "},\"members\":[{\"member\":\"kind\",\"sure\":true,\"unsure\":[],\"places\":[]},\
                   {\"member\":\"legs\",\"sure\":true,\"unsure\":[],\"places\":[{\"x\":";
    assert!(line.contains(members) && line.ends_with("],\"marks\":[],\"length\":null}\n"), "{line}");
    assert!(desk.all() == before, "something was written");
}

#[test]
#[ignore = "needs the model and photos"]
fn where_it_stands_is_a_crop_in_which_it_is_read_again() {
    let desk = with_photos();
    let object = &objects(&desk, &["label", "--photo", "label.jpg"])[0];
    let place = &member(object, "isolation_db")["places"][0];
    let [x, y, width, height] = ["x", "y", "width", "height"].map(|side| place[side].as_u64().unwrap());
    let crop = format!("{},{},{},{}", x - x.min(90), y - y.min(6), width + 150, height + 12);
    let again = &objects(&desk, &["label", "--photo", "label.jpg", "--crop", &crop])[0];
    assert!(again["text"].as_str().unwrap().contains("25"), "{}", again["text"]);
    // Its place is told in the whole photo, not in the crop.
    let reading = &again["members"].as_array().unwrap().iter().find_map(|member| member["places"].get(0));
    let found = reading.unwrap();
    assert!(found["x"].as_u64().unwrap().abs_diff(x) < 12, "{found} {place}");
    assert!(found["y"].as_u64().unwrap().abs_diff(y) < 12, "{found} {place}");
}

#[test]
#[ignore = "needs the model and photos"]
fn what_the_crop_cuts_is_asked_and_told_why() {
    let desk = with_photos();
    let side = |place: &Value| ["x", "y", "width", "height"].map(|side| place[side].as_u64().unwrap());
    // From the middle of the mark on.
    let object = &objects(&desk, &["label", "--photo", "near.jpg"])[0];
    let [x, y, width, height] = side(&object["marks"][0]["places"][0]);
    let crop = format!("{},{},900,{}", x + width / 2, y - y.min(8), height + 16);
    let cut = &objects(&desk, &["label", "--photo", "near.jpg", "--crop", &crop])[0];
    let mark = &cut["marks"][0];
    assert_ne!(mark["value"], 482.0, "{cut}");
    assert_eq!(mark["sure"], false, "{cut}");
    assert!(mark["unsure"].as_array().unwrap().iter().any(|why| why["why"] == "cut"), "{cut}");
    let told = desk.run(&["label", "--photo", "near.jpg", "--crop", &crop]).out;
    let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
    for said in ["ft; to be asked", "More of it may stand beside it"] {
        assert!(told.contains(said), "no {said} in {told}");
    }
    // The mark was read, whatever else was not.
    assert!(!told.contains("Nothing on this label"), "{told}");
    // Up to the middle of an edge.
    let object = &objects(&desk, &["label", "--photo", "label.jpg"])[0];
    let [x, y, width, height] = side(&member(object, "high_mhz")["places"][0]);
    let crop = format!("0,{},{},{}", y - y.min(8), x + width / 2, height + 16);
    let cut = &objects(&desk, &["label", "--photo", "label.jpg", "--crop", &crop])[0];
    let members = cut["members"].as_array().unwrap();
    let sure = members.iter().any(|member| member["member"] == "high_mhz" && member["sure"] == true);
    assert!(!sure, "{cut}");
}

#[test]
#[ignore = "needs the model and photos"]
fn two_marks_give_a_length() {
    let desk = with_photos();
    let both = ["label", "--photo", "near.jpg", "--photo", "far.jpg"];
    let read = objects(&desk, &both);
    assert_eq!(read.len(), 2);
    read.iter().for_each(assert_documented);
    let mark = |at: usize| (read[at]["marks"][0]["value"].as_f64(), read[at]["marks"][0]["unit"].as_str());
    assert_eq!((mark(0), mark(1)), ((Some(482.0), Some("ft")), (Some(532.0), Some("ft"))));
    assert_eq!(read[0]["length"], Value::Null);
    // 0.3048 m a foot, by definition.
    let length = &read[1]["length"];
    assert_eq!((&length["metres"], &length["feet"]), (&json!(15.24), &json!(50.0)));
    let are_sure = read.iter().all(|read| read["marks"][0]["sure"] == true);
    assert_eq!(length["sure"], are_sure, "{length}");
    let told = desk.run(&both).out;
    assert!(told.contains("482 ft") && told.contains("15 m (50 ft)"), "{told}");
    let none = objects(&desk, &["label", "--photo", "near.jpg", "--photo", "label.jpg"]);
    assert_eq!(none[1]["length"]["metres"], Value::Null);
    assert_eq!(none[1]["length"]["unsure"][0]["why"], "no_mark");
}

#[test]
#[ignore = "needs the model and photos"]
fn another_program_reads_the_json() {
    let desk = with_photos();
    let out = desk.run(&["--json", "label", "--photo", "label.jpg"]).out;
    let program = "import json, sys\n\
        (line,) = sys.stdin.read().splitlines()\n\
        read = json.loads(line)\n\
        sure = {one['member'] for one in read['members'] if one['sure']}\n\
        print(read['reading']['high_mhz'], 'high_mhz' in sure, read['text'].count('\\n'))";
    let mut python = Command::new("python3")
        .args(["-c", program])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    python.stdin.take().unwrap().write_all(out.as_bytes()).unwrap();
    let told = python.wait_with_output().unwrap();
    assert!(told.status.success());
    assert_eq!(String::from_utf8(told.stdout).unwrap().trim(), "1002.0 True 3");
}

#[test]
#[ignore = "needs the model and photos"]
fn a_picture_without_text_is_told_so_with_what_to_do() {
    let desk = with_photos();
    let flat = image::RgbImage::from_pixel(320, 240, image::Rgb([120, 120, 120]));
    flat.save(desk.work().join("flat.png")).unwrap();
    let err = desk.refused(3, "picture", &["label", "--photo", "flat.png"]);
    for said in ["flat.png", "no text was found", "--crop", "light", "glare"] {
        assert!(err.contains(said), "no {said} in {err}");
    }
}

#[test]
#[ignore = "needs the model and photos"]
fn one_changed_bit_of_the_model_is_refused() {
    let desk = with_photos();
    let weights = desk.print_model().join("recognise.f16");
    let mut bytes = std::fs::read(&weights).unwrap();
    bytes[4_000_000] ^= 1;
    std::fs::write(&weights, bytes).unwrap();
    let err = desk.refused(1, "print_model", &["label", "--photo", "label.jpg"]);
    assert!(err.contains("“recognise.f16”"), "{err}");
}

/// Whether a process listens to an interrupt (proc(5): the mask of signals that are caught).
#[cfg(target_os = "linux")]
fn listens(process: u32) -> bool {
    let status = std::fs::read_to_string(format!("/proc/{process}/status")).unwrap();
    let caught = status.lines().find_map(|line| line.strip_prefix("SigCgt:")).unwrap_or("0");
    // SIGINT is 2, and the lowest bit stands for 1.
    u64::from_str_radix(caught.trim(), 16).unwrap() & 0b10 != 0
}

#[cfg(target_os = "linux")]
#[test]
#[ignore = "needs the model and photos"]
fn it_stops_on_ctrl_c() {
    let desk = with_photos();
    let photos = ["label", "--photo", "label.jpg", "--photo", "label.jpg"];
    let mut child = desk.command(&photos).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    while !listens(child.id()) {
        assert!(child.try_wait().unwrap().is_none(), "it ended before it could be stopped");
        std::thread::sleep(std::time::Duration::from_millis(2));
    }
    assert!(Command::new("kill").args(["-INT", &child.id().to_string()]).status().unwrap().success());
    let output = child.wait_with_output().unwrap();
    assert_eq!((output.status.code(), output.stdout.as_slice()), (Some(130), &b""[..]));
    assert!(String::from_utf8(output.stderr).unwrap().contains("stopped as you wished"));
}
