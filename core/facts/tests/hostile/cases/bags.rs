//! What is wrong with the bag: its own files, and the photos in it.

use facts::store::Store;
use serde_json::json;

use super::super::file_support::*;
use super::{Case, sealed_lines, small};

pub fn bags(survey: &str, _: &Store) -> Vec<Case> {
    let good = small(survey).entries();
    // Changes one of the bag's own files, and makes the list of those files fit again.
    let tag = |name: &str, change: &dyn Fn(&str) -> Vec<u8>| {
        let mut entries = good.clone();
        let mut list = String::new();
        for (entry, content) in &mut entries {
            let entry = String::from_utf8(entry.clone()).unwrap();
            let entry = entry.strip_prefix("survey/").unwrap();
            if entry == name {
                *content = change(std::str::from_utf8(content).unwrap());
            }
            if !entry.starts_with("data/") && !entry.starts_with("tagmanifest") {
                list = list + &sha256_hex(content) + "  " + entry + "\n";
            }
        }
        if name != "tagmanifest-sha256.txt" {
            entries.last_mut().unwrap().1 = list.into_bytes();
        }
        zip(&stored(&entries))
    };
    let without = |name: &str| {
        let left = good.iter().filter(|(entry, _)| !entry.ends_with(name.as_bytes())).cloned().collect();
        zip(&stored(&left))
    };
    let text = |change: fn(&str) -> String| move |old: &str| change(old).into_bytes();
    let (manifest, tags, bagit, info) =
        ("manifest-sha256.txt", "tagmanifest-sha256.txt", "bagit.txt", "bag-info.txt");
    vec![
        ("no manifest", without("/manifest-sha256.txt")),
        ("no list of the bag's own files", without(tags)),
        ("no bagit.txt", without(bagit)),
        ("no bag-info.txt", without(info)),
        ("an empty manifest", tag(manifest, &text(|_| String::new()))),
        (
            "a manifest with one more",
            tag(manifest, &text(|old| old.to_owned() + &old.replace("facts.jsonl", "report.html"))),
        ),
        ("a manifest with one twice", tag(manifest, &text(|old| old.repeat(2)))),
        (
            "a manifest that climbs",
            tag(manifest, &text(|old| old.to_owned() + &old.replace("data/facts.jsonl", "../../etc/passwd"))),
        ),
        ("a wrong hash", tag(manifest, &text(|old| "0".repeat(64) + &old[64..]))),
        ("a hash in capitals", tag(manifest, &text(|old| old[..64].to_uppercase() + &old[64..]))),
        ("a short hash", tag(manifest, &text(|old| old[1..].to_owned()))),
        ("a manifest with CRLF", tag(manifest, &text(|old| old.replace('\n', "\r\n")))),
        ("a manifest without its last line feed", tag(manifest, &text(|old| old.trim_end().to_owned()))),
        ("a manifest of 2 MB", tag(manifest, &text(|old| old.repeat(25_000)))),
        ("a manifest that is not UTF-8", tag(manifest, &|old| [old.as_bytes(), b"\xFF\n"].concat())),
        (
            "a list of own files that lacks one",
            tag(tags, &text(|old| old.split_once('\n').unwrap().1.to_owned())),
        ),
        ("a list of own files that is wrong", tag(tags, &text(|old| "0".repeat(64) + &old[64..]))),
        ("a byte order mark", tag(bagit, &text(|old| "\u{feff}".to_owned() + old))),
        ("bagit.txt with CRLF", tag(bagit, &text(|old| old.replace('\n', "\r\n")))),
        ("another BagIt", tag(bagit, &text(|old| old.replace("1.0", "0.97")))),
        ("UTF-16", tag(bagit, &text(|old| old.replace("UTF-8", "UTF-16")))),
        ("a wrong sum", tag(info, &text(|old| old.replace("Oxum: ", "Oxum: 1")))),
        ("no sum", tag(info, &text(|old| old.replace("Payload-Oxum", "Payload")))),
        (
            "two sums",
            tag(
                info,
                &text(|old| old.to_owned() + old.rsplit_once("\nP").map(|_| "Payload-Oxum: 1.1\n").unwrap()),
            ),
        ),
        ("bag-info of another survey", tag(info, &text(|old| old.replace("Identifier: ", "Identifier: 0")))),
        ("bag-info that is no list of labels", tag(info, &text(|_| "hello\n".into()))),
    ]
}

pub fn photos(survey: &str, _: &Store) -> Vec<Case> {
    let picture = [b"\xFF\xD8\xFF\xE0".to_vec(), vec![7; 600]].concat();
    let sha256 = sha256_hex(&picture);
    let with = |named: &str, extension: &str, entry: &str, content: &[u8]| {
        let image =
            json!({"bytes": content.len(), "ext": extension, "height": 3, "sha256": named, "width": 4});
        let mut bag = Bag::new(survey, vec![line(1, 1, "image", &image, &[])]);
        bag.photos.push((entry.to_owned(), content.to_vec()));
        bag
    };
    let plain = |bag: &Bag| zip(&stored(&bag.entries()));
    let jpg = format!("{sha256}.jpg");
    let other = sha256_hex(b"other");
    let script = b"<script>alert(1)</script>";
    let script_hash = sha256_hex(script);
    let huge = [b"\xFF\xD8\xFF\xE0".to_vec(), vec![0; 33 * 1024 * 1024]].concat();
    let huge_hash = sha256_hex(&huge);
    let large = with(&huge_hash, "jpg", &format!("{huge_hash}.jpg"), &huge);
    vec![
        (
            "a photo that is not what its name says",
            plain(&with(&other, "jpg", &format!("{other}.jpg"), &picture)),
        ),
        ("a photo that no fact names", plain(&with(&other, "jpg", &jpg, &picture))),
        ("a photo named as another kind", plain(&with(&sha256, "png", &jpg, &picture))),
        ("a JPEG that is called PNG", plain(&with(&sha256, "png", &format!("{sha256}.png"), &picture))),
        (
            "a photo that is no picture",
            plain(&with(&script_hash, "jpg", &format!("{script_hash}.jpg"), script)),
        ),
        ("an empty photo", plain(&with(&sha256_hex(b""), "jpg", &format!("{}.jpg", sha256_hex(b"")), b""))),
        ("a photo of 33 MB in 33 kB", sealed_lines(&large)),
    ]
}
