//! A picture.

use std::io::Cursor;

use facts::photo::{Picture, PictureKind};
use image::{DynamicImage, ImageFormat, ImageReader};
use proofs::chance::Chance;

use crate::fact::kind_of;
use crate::target::{Target, Verdict};

pub const TARGET: Target = Target {
    name: "picture",
    weight: 2.0,
    most_bytes: 64 * 1024,
    check,
    shape: shaped,
    words: &[
        b"\xFF\xD8",
        b"\xFF\xD9",
        b"\xFF\xE1\0\x10Exif\0\0",
        b"\xFF\xE0\0\x10JFIF\0",
        b"\xFF\xDA\0\x0C",
        b"\xFF\xC0\0\x11",
        b"\xFF\xC4",
        b"\xFF\xDB",
        b"\xFF\xDD\0\x04\0\x01",
        b"\xFF\0",
        b"\xFF\xFE\0\x04hi",
        b"\0\0\0\0IEND\xAE\x42\x60\x82",
        b"IDAT",
        b"eXIf",
        b"tEXt",
        b"iCCP",
        b"II*\0\x08\0\0\0",
        b"MM\0*\0\0\0\x08",
    ],
    most_memory: 64 << 20,
};

/// Pixels that are decoded in a check; more only cost time.
const MOST_PIXELS: u64 = 1 << 20;

const PNG: &[u8] = b"\x89PNG\r\n\x1A\n";

/// Moves, doubles or drops a chunk or a segment, or changes bytes in one and makes the chunk's checksum fit.
fn shaped(chance: &mut Chance, input: &[u8]) -> Option<Vec<u8>> {
    let (head, mut pieces) = if let Some(rest) = input.strip_prefix(PNG) {
        (PNG, chunks(rest))
    } else {
        (b"\xFF\xD8".as_slice(), segments(input.strip_prefix(b"\xFF\xD8")?))
    };
    let at = chance.below(pieces.len());
    let piece = pieces.get(at)?.clone();
    match chance.below(6) {
        0 => drop(pieces.remove(at)),
        1 => pieces.insert(chance.below(pieces.len() + 1), piece),
        2 => {
            let to = chance.below(pieces.len());
            pieces.swap(at, to);
        }
        _ => {
            let inner = pieces.get_mut(at)?;
            for _ in 0..=chance.below(4) {
                let byte = chance.below(inner.len().min(64));
                if let Some(byte) = inner.get_mut(byte) {
                    *byte = chance.bits().to_le_bytes()[0];
                }
            }
            if head == PNG && inner.len() >= 12 {
                let end = inner.len() - 4;
                let crc = crc32fast::hash(inner.get(4..end)?);
                inner.truncate(end);
                inner.extend(crc.to_be_bytes());
            }
        }
    }
    Some([head, &pieces.concat()].concat())
}

/// The chunks of a PNG (W3C PNG, third edition, 5.3): length, type, data, CRC.
fn chunks(mut rest: &[u8]) -> Vec<Vec<u8>> {
    let mut chunks = Vec::new();
    while let Some((length, _)) = rest.split_first_chunk::<4>() {
        let whole = (u32::from_be_bytes(*length) as usize).saturating_add(12).min(rest.len());
        let (chunk, after) = rest.split_at(whole);
        chunks.push(chunk.to_vec());
        rest = after;
    }
    chunks
}

/// The segments of a JPEG (ITU-T T.81, B.1.1): each begins where a marker does.
fn segments(rest: &[u8]) -> Vec<Vec<u8>> {
    let mut segments: Vec<Vec<u8>> = Vec::new();
    for (at, &byte) in rest.iter().enumerate() {
        let begins = byte == 0xFF && rest.get(at + 1).is_some_and(|&next| next > 1 && next < 0xFF);
        match segments.last_mut() {
            Some(last) if !begins => last.push(byte),
            _ => segments.push(vec![byte]),
        }
    }
    segments
}

/// A JPEG up to and with its end marker (ITU-T T.81, B.1.1 and B.2.1): segments are stepped over by their length, the
/// data of a scan up to the next marker that is neither a stuffed zero nor a restart.
fn up_to_its_end(input: &[u8]) -> Option<&[u8]> {
    let mut at = 2;
    loop {
        while *input.get(at)? == 0xFF && *input.get(at + 1)? == 0xFF {
            at += 1;
        }
        let marker = *input.get(at + 1)?;
        if marker == 0xD9 {
            return input.get(..at + 2);
        }
        at += 2 + usize::from(u16::from_be_bytes([*input.get(at + 2)?, *input.get(at + 3)?]));
        if marker == 0xDA {
            while *input.get(at)? != 0xFF || matches!(*input.get(at + 1)?, 0x00 | 0xD0..=0xD7) {
                at += 1;
            }
        }
    }
}

/// What is taken has nothing left to clean, is not longer than its tag of orientation makes it, and is decoded to the
/// same pixels as before.
fn check(input: &[u8]) -> Result<Verdict, String> {
    let picture = match Picture::clean(input) {
        Ok(picture) => picture,
        Err(fault) => return Ok(Verdict::refused(kind_of(&fault))),
    };
    let again =
        Picture::clean(picture.bytes()).map_err(|fault| format!("cleaned and then refused: {fault}"))?;
    if again != picture {
        return Err("cleaning what is clean changes it".into());
    }
    if picture.bytes().len() > input.len() + 64 {
        return Err("cleaning made it longer".into());
    }
    for told in [b"GPS".as_slice(), b"Invented camera"] {
        // In pixels this stands by chance once in a hundred million pictures; in a tag it would be what was cut.
        if picture.bytes().windows(told.len()).any(|window| window == told) && told.len() > 3 {
            return Err("it still tells of the camera".into());
        }
    }
    let image = picture.image();
    if u64::from(image.width) * u64::from(image.height) > MOST_PIXELS {
        return Ok(Verdict::taken("large"));
    }
    let format = match picture.kind() {
        PictureKind::Jpeg => ImageFormat::Jpeg,
        PictureKind::Png => ImageFormat::Png,
    };
    let small = picture.thumbnail();
    let decoded = decode(format, picture.bytes());
    if let Some(decoded) = &decoded
        && (decoded.width(), decoded.height()) != (image.width, image.height)
    {
        return Err("it has another size than was found".into());
    }
    // What follows the end of a picture is dropped, and a decoder may go on reading there when the data end too soon.
    let whole =
        if picture.kind() == PictureKind::Jpeg { up_to_its_end(input).unwrap_or(input) } else { input };
    if let (Some(before), Some(after)) = (decode(format, whole), &decoded)
        && before.as_bytes() != after.as_bytes()
    {
        return Err("its pixels changed".into());
    }
    if small.is_ok() && decoded.is_none() {
        return Err("a small picture of one that cannot be decoded".into());
    }
    let way = format!("{:?} {:?} {}", picture.kind(), picture.orientation(), small.is_ok());
    Ok(Verdict::taken(format!("{way} {}", (input.len() - picture.bytes().len().min(input.len())).min(9))))
}

/// A decoder that panics is not ours; what ours makes of it is.
fn decode(format: ImageFormat, bytes: &[u8]) -> Option<DynamicImage> {
    std::panic::catch_unwind(|| ImageReader::with_format(Cursor::new(bytes), format).decode().ok()).ok()?
}
