//! A PNG picture, cleaned at the level of its chunks (ISO/IEC 15948:2004, W3C PNG third edition).
//!
//! Kept: the chunks that are needed to decode it, bit for bit, transparency, and the few numbers that tell its
//! brightness and colours. Cut: text, times, Exif other than the orientation, colour profiles, further frames and
//! everything unknown. Dropped: whatever follows the end, of the pixels' data too.

use super::orientation::Orientation;
use super::picture::{Cleaned, is_taken_in_size};
use super::png_data::{Layout, end_of_stream};
use super::taken_at::TakenAt;
use crate::error::PictureFault;

type Result<T> = std::result::Result<T, PictureFault>;

/// The signature (5.2).
pub(super) const SIGNATURE: &[u8] = b"\x89PNG\r\n\x1a\n";

struct Chunk<'a> {
    name: &'a [u8],
    data: &'a [u8],
    /// Length, name, data and checksum, as they lie in the file.
    whole: &'a [u8],
}

/// Cleans a PNG.
pub(super) fn clean(bytes: &[u8]) -> Result<Cleaned> {
    let mut rest = bytes.get(SIGNATURE.len()..).unwrap_or_default();
    let header = next(&mut rest)?;
    let layout = read_header(&header)?;
    let (width, height) = (layout.width, layout.height);
    let mut ahead = Vec::new();
    let mut idat = Vec::new();
    let (mut orientation, mut taken) = (Orientation::UPRIGHT, None);
    // Where in the order of chunks we are (5.6): before, in or behind the picture's data.
    let mut data = Data::Ahead;
    loop {
        let chunk = next(&mut rest)?;
        if chunk.name != b"IDAT" && data == Data::Here {
            data = Data::Behind;
        }
        match chunk.name {
            b"IDAT" if data == Data::Behind => {
                return Err(PictureFault::damaged("its data stand in two places"));
            }
            b"IDAT" => {
                data = Data::Here;
                idat.push(chunk);
            }
            b"IEND" => {
                if !chunk.data.is_empty() {
                    return Err(PictureFault::damaged("an end that holds something"));
                }
                break;
            }
            b"PLTE" | b"tRNS" | b"gAMA" | b"sRGB" | b"cHRM" => {
                if !fits(&chunk) {
                    return Err(PictureFault::damaged("a chunk of the wrong length"));
                }
                // Behind the data they mean nothing (5.6).
                if data == Data::Ahead {
                    ahead.extend_from_slice(chunk.whole);
                }
            }
            b"eXIf" => {
                orientation = Orientation::of_tiff(chunk.data);
                taken = TakenAt::of_tiff(chunk.data);
            }
            // A capital letter: needed to decode the picture (5.4).
            [first, ..] if first.is_ascii_uppercase() => {
                return Err(PictureFault::Unusual { kind: "PNG", what: "an unknown chunk" });
            }
            _ => {}
        }
    }
    if data == Data::Ahead {
        return Err(PictureFault::damaged("no data"));
    }
    let mut bytes = [SIGNATURE, header.whole].concat();
    if let Some(tiff) = orientation.to_tiff() {
        push(&mut bytes, *b"eXIf", &tiff);
    }
    bytes.extend(ahead);
    // A picture of a size that is not taken is refused for that, and not inflated.
    let end = if is_taken_in_size(width, height) {
        end_of_stream(layout, idat.iter().map(|chunk| chunk.data))?
    } else {
        u64::MAX
    };
    push_data(&mut bytes, &idat, end);
    push(&mut bytes, *b"IEND", b"");
    Ok(Cleaned { bytes, width, height, orientation, taken })
}

/// The chunks of data up to the end of their stream; the one in which it ends is cut there.
fn push_data(bytes: &mut Vec<u8>, idat: &[Chunk<'_>], mut left: u64) {
    for chunk in idat.iter().filter(|chunk| !chunk.data.is_empty()) {
        match usize::try_from(left).ok().and_then(|left| chunk.data.get(..left)) {
            Some([]) => break,
            Some(beginning) if beginning.len() < chunk.data.len() => {
                push(bytes, *b"IDAT", beginning);
                break;
            }
            _ => bytes.extend_from_slice(chunk.whole),
        }
        left = left.saturating_sub(chunk.data.len() as u64);
    }
}

#[derive(PartialEq)]
enum Data {
    Ahead,
    Here,
    Behind,
}

/// Takes the next chunk off, its checksum compared (5.3).
fn next<'a>(rest: &mut &'a [u8]) -> Result<Chunk<'a>> {
    let length = rest.first_chunk().map(|bytes| u32::from_be_bytes(*bytes)).ok_or(PictureFault::CutShort)?;
    let length = usize::try_from(length).map_err(|_| PictureFault::CutShort)?;
    let end = length.checked_add(12).ok_or(PictureFault::CutShort)?;
    let (whole, behind) = rest.split_at_checked(end).ok_or(PictureFault::CutShort)?;
    let checked = whole.get(4..8 + length).unwrap_or_default();
    let sum = whole.last_chunk().map(|bytes| u32::from_be_bytes(*bytes));
    if sum != Some(crc32fast::hash(checked)) {
        return Err(PictureFault::damaged("a wrong checksum"));
    }
    let (name, data) = checked.split_at_checked(4).unwrap_or_default();
    if !name.iter().all(u8::is_ascii_alphabetic) {
        return Err(PictureFault::damaged("a chunk without a name"));
    }
    *rest = behind;
    Ok(Chunk { name, data, whole })
}

/// 11.2.1: width, height, then five single bytes.
fn read_header(header: &Chunk<'_>) -> Result<Layout> {
    let &[w3, w2, w1, w0, h3, h2, h1, h0, depth, colour, _, _, interlace] = header.data else {
        return Err(PictureFault::damaged("no header"));
    };
    let (width, height) = (u32::from_be_bytes([w3, w2, w1, w0]), u32::from_be_bytes([h3, h2, h1, h0]));
    if header.name != b"IHDR" || width == 0 || height == 0 {
        return Err(PictureFault::damaged("no header"));
    }
    Ok(Layout { width, height, depth, colour, interlace })
}

/// The lengths that these chunks can have (11.2.3, 11.3.2, 11.3.3).
fn fits(chunk: &Chunk<'_>) -> bool {
    let length = chunk.data.len();
    match chunk.name {
        b"PLTE" => length <= 768 && length.is_multiple_of(3),
        b"tRNS" => length <= 256,
        b"gAMA" => length == 4,
        b"sRGB" => length == 1,
        b"cHRM" => length == 32,
        _ => false,
    }
}

fn push(bytes: &mut Vec<u8>, name: [u8; 4], data: &[u8]) {
    // Only for what is made here, which is short.
    bytes.extend(u32::try_from(data.len()).unwrap_or(u32::MAX).to_be_bytes());
    let checked = [name.as_slice(), data].concat();
    bytes.extend(&checked);
    bytes.extend(crc32fast::hash(&checked).to_be_bytes());
}
