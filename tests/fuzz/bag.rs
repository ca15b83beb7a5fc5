//! A survey file taken apart and put together again with sums that fit, so that changes of its content get past them.
//! Written from docs/file.md; knows stored entries only.

use sha2::{Digest, Sha256};

/// Entries by name, in their order.
pub type Entries = Vec<(String, Vec<u8>)>;

const FACTS: &str = "survey/data/facts.jsonl";

/// Takes a zip of stored entries apart by its local headers.
pub fn open(zip: &[u8]) -> Option<Entries> {
    let mut entries = Entries::new();
    let mut rest = zip;
    while let Some(header) = rest.strip_prefix(b"PK\x03\x04") {
        let number = |at: usize, bytes: usize| {
            let part = header.get(at..at + bytes)?;
            Some(part.iter().rev().fold(0_usize, |number, &byte| number << 8 | usize::from(byte)))
        };
        let (size, name, extra) = (number(14, 4)?, number(22, 2)?, number(24, 2)?);
        let body = header.get(26..)?;
        let content = body.get(name + extra..name + extra + size)?;
        entries.push((String::from_utf8(body.get(..name)?.to_vec()).ok()?, content.to_vec()));
        rest = body.get(name + extra + size..)?;
    }
    Some(entries)
}

/// The facts' lines, the header first.
pub fn lines(entries: &Entries) -> Option<Vec<String>> {
    let (_, facts) = entries.iter().find(|(name, _)| name == FACTS)?;
    let text = String::from_utf8(facts.clone()).ok()?;
    Some(text.strip_suffix('\n')?.split('\n').map(str::to_owned).collect())
}

pub fn set_lines(entries: &mut Entries, lines: &[String]) {
    if let Some((_, facts)) = entries.iter_mut().find(|(name, _)| name == FACTS) {
        *facts = lines.iter().fold(String::new(), |text, line| text + line + "\n").into_bytes();
    }
}

fn sum(content: &[u8]) -> String {
    Sha256::digest(content).iter().fold(String::new(), |text, byte| format!("{text}{byte:02x}"))
}

/// Names each photo by what it holds, makes both manifests and the count of bytes fit, and writes the zip.
pub fn seal(mut entries: Entries, rename: bool) -> Vec<u8> {
    for (name, content) in &mut entries {
        if rename && let Some(photo) = name.strip_prefix("survey/data/photos/") {
            let ending = photo.rsplit_once('.').map_or("", |(_, ending)| ending).to_owned();
            *name = format!("survey/data/photos/{}.{ending}", sum(content));
        }
    }
    let payload: Vec<_> = entries.iter().filter(|(name, _)| name.starts_with("survey/data/")).collect();
    let bytes: usize = payload.iter().map(|(_, content)| content.len()).sum();
    let oxum = format!("Payload-Oxum: {bytes}.{}", payload.len());
    let manifest = list(&payload);
    for (name, content) in &mut entries {
        match name.as_str() {
            "survey/manifest-sha256.txt" => *content = manifest.clone().into_bytes(),
            "survey/bag-info.txt" => {
                let text = String::from_utf8_lossy(content);
                let with_oxum =
                    |line: &str| if line.starts_with("Payload-Oxum:") { oxum.clone() } else { line.into() };
                *content = text.lines().map(|line| with_oxum(line) + "\n").collect::<String>().into_bytes();
            }
            _ => {}
        }
    }
    let is_tag = |name: &str| !name.starts_with("survey/data/") && name != "survey/tagmanifest-sha256.txt";
    let tags = list(&entries.iter().filter(|(name, _)| is_tag(name)).collect());
    if let Some((_, content)) = entries.iter_mut().find(|(name, _)| name == "survey/tagmanifest-sha256.txt") {
        *content = tags.into_bytes();
    }
    zip(&entries)
}

fn list(entries: &Vec<&(String, Vec<u8>)>) -> String {
    let mut lines: Vec<(String, String)> = entries
        .iter()
        .map(|(name, content)| (name.trim_start_matches("survey/").to_owned(), sum(content)))
        .collect();
    lines.sort();
    lines.iter().fold(String::new(), |text, (name, sum)| format!("{text}{sum}  {name}\n"))
}

/// A zip of stored entries with the fixed fields of docs/file.md.
fn zip(entries: &Entries) -> Vec<u8> {
    let (mut out, mut directory) = (Vec::new(), Vec::new());
    for (name, content) in entries {
        let at = size(out.len());
        let mut common =
            [20_u16, 0x800, 0, 0, 0x21].iter().flat_map(|field| field.to_le_bytes()).collect::<Vec<_>>();
        for field in [crc32fast::hash(content), size(content.len()), size(content.len())] {
            common.extend(field.to_le_bytes());
        }
        common.extend(u16::try_from(name.len()).unwrap_or(u16::MAX).to_le_bytes());
        common.extend([0; 2]);
        out.extend(b"PK\x03\x04".iter().chain(&common).chain(name.as_bytes()).chain(content));
        directory.extend(b"PK\x01\x02\x14\0".iter().chain(&common));
        directory.extend([0; 10]);
        directory.extend(at.to_le_bytes());
        directory.extend(name.as_bytes());
    }
    let count = u16::try_from(entries.len()).unwrap_or(u16::MAX).to_le_bytes();
    let (length, at) = (size(directory.len()), size(out.len()));
    out.extend(directory);
    out.extend(b"PK\x05\x06\0\0\0\0");
    out.extend(count.iter().chain(&count).chain(&length.to_le_bytes()).chain(&at.to_le_bytes()));
    out.extend([0; 2]);
    out
}

fn size(length: usize) -> u32 {
    u32::try_from(length).unwrap_or(u32::MAX)
}
