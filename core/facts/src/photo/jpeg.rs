//! A JPEG picture, cleaned at the level of its markers (ISO/IEC 10918-1, ITU-T T.81, annex B).
//!
//! Kept: tables, frame header, scans with their entropy-coded data bit for bit, the JFIF header without its small
//! picture (T.871) and the Adobe segment that tells how colours are coded (T.872, 6.5.3). Cut: every other
//! application segment and all comments. Dropped: whatever follows the end of the image.

use super::orientation::Orientation;
use super::picture::Cleaned;
use super::taken_at::TakenAt;
use crate::error::PictureFault;

type Result<T> = std::result::Result<T, PictureFault>;

const SOI: u8 = 0xD8;
const EOI: u8 = 0xD9;
const SOS: u8 = 0xDA;
const DQT: u8 = 0xDB;
const DHT: u8 = 0xC4;
const DRI: u8 = 0xDD;
const COM: u8 = 0xFE;
const EXIF: &[u8] = b"Exif\0\0";

/// Cleans a JPEG.
pub(super) fn clean(bytes: &[u8]) -> Result<Cleaned> {
    let mut reader = Reader { bytes, at: 2 };
    let mut parts = Parts::default();
    loop {
        let marker = reader.marker()?;
        match marker {
            EOI => return parts.finish(),
            SOS => {
                let header = reader.segment()?;
                parts.check_scan(header)?;
                parts.keep(SOS, header);
                let data = reader.entropy_coded()?;
                parts.body.extend_from_slice(data);
                parts.scans += 1;
            }
            DQT => parts.keep_checked(DQT, reader.segment()?, quantization_fits)?,
            DHT => parts.keep_checked(DHT, reader.segment()?, huffman_fits)?,
            DRI => parts.keep_checked(DRI, reader.segment()?, |segment| segment.len() == 2)?,
            // Baseline, extended sequential and progressive frames, Huffman-coded.
            0xC0..=0xC2 => {
                let header = reader.segment()?;
                parts.read_frame(header)?;
                parts.keep(marker, header);
            }
            0xC3 | 0xC5..=0xC7 | 0xC9..=0xCF => {
                return Err(PictureFault::Unusual {
                    kind: "JPEG",
                    what: "lossless, layered or arithmetic coding",
                });
            }
            // The standard lets tags stand between scans, no camera writes them there, and where a scan's data end too
            // soon decoders read on in them: cutting them would change what is seen.
            0xE0..=0xEF | COM if parts.scans > 0 => {
                return Err(PictureFault::Unusual { kind: "JPEG", what: "tags among its pixels" });
            }
            0xE0..=0xEF => parts.read_application(marker, reader.segment()?),
            COM => drop(reader.segment()?),
            0xDC | 0xDE | 0xDF => {
                return Err(PictureFault::Unusual { kind: "JPEG", what: "layered or of unstated height" });
            }
            _ => return Err(PictureFault::damaged("an unknown marker")),
        }
    }
}

struct Reader<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl<'a> Reader<'a> {
    fn next(&mut self) -> Result<u8> {
        let byte = self.bytes.get(self.at).copied().ok_or(PictureFault::CutShort)?;
        self.at += 1;
        Ok(byte)
    }

    /// The next marker; any number of fill bytes 0xFF may stand before it (B.1.1.2).
    fn marker(&mut self) -> Result<u8> {
        if self.next()? != 0xFF {
            return Err(PictureFault::damaged("a marker is missing"));
        }
        loop {
            match self.next()? {
                0xFF => {}
                marker => return Ok(marker),
            }
        }
    }

    /// A segment behind its marker, without its length.
    fn segment(&mut self) -> Result<&'a [u8]> {
        let length = usize::from(u16::from_be_bytes([self.next()?, self.next()?]));
        let content = length.checked_sub(2).ok_or(PictureFault::damaged("a segment without length"))?;
        let segment = self.bytes.get(self.at..self.at + content).ok_or(PictureFault::CutShort)?;
        self.at += content;
        Ok(segment)
    }

    /// The data behind a scan header, up to the next marker that is neither a stuffed zero nor a restart (B.1.1.5).
    fn entropy_coded(&mut self) -> Result<&'a [u8]> {
        let rest = self.bytes.get(self.at..).unwrap_or_default();
        let mut length = 0;
        loop {
            let ahead = rest.get(length..).unwrap_or_default();
            length += ahead.iter().position(|&byte| byte == 0xFF).ok_or(PictureFault::CutShort)?;
            match rest.get(length + 1) {
                None => return Err(PictureFault::CutShort),
                Some(0x00 | 0xD0..=0xD7) => length += 2,
                Some(_) => break,
            }
        }
        self.at += length;
        match rest.get(..length) {
            Some(data) if !data.is_empty() => Ok(data),
            _ => Err(PictureFault::damaged("a scan without data")),
        }
    }
}

#[derive(Default)]
struct Parts {
    jfif: Option<Vec<u8>>,
    orientation: Option<Orientation>,
    taken: Option<TakenAt>,
    body: Vec<u8>,
    frame: Option<(u32, u32)>,
    components: u8,
    scans: usize,
}

impl Parts {
    fn keep(&mut self, marker: u8, segment: &[u8]) {
        push_segment(&mut self.body, marker, segment);
    }

    fn keep_checked(&mut self, marker: u8, segment: &[u8], fits: impl FnOnce(&[u8]) -> bool) -> Result<()> {
        if !fits(segment) {
            return Err(PictureFault::damaged("a table of the wrong length"));
        }
        self.keep(marker, segment);
        Ok(())
    }

    /// B.2.2: precision, lines, samples a line, then three bytes a component.
    fn read_frame(&mut self, header: &[u8]) -> Result<()> {
        let &[_, h1, h0, w1, w0, components, ref rest @ ..] = header else {
            return Err(PictureFault::damaged("a frame header of the wrong length"));
        };
        if rest.len() != 3 * usize::from(components) || !matches!(components, 1..=4) {
            return Err(PictureFault::damaged("a frame header of the wrong length"));
        }
        if self.frame.is_some() {
            return Err(PictureFault::damaged("two frames"));
        }
        let (width, height) = (u16::from_be_bytes([w1, w0]), u16::from_be_bytes([h1, h0]));
        if height == 0 {
            return Err(PictureFault::Unusual { kind: "JPEG", what: "layered or of unstated height" });
        }
        if width == 0 {
            return Err(PictureFault::damaged("a picture without width"));
        }
        self.frame = Some((width.into(), height.into()));
        self.components = components;
        Ok(())
    }

    /// B.2.3: the number of components, two bytes each, three bytes.
    fn check_scan(&self, header: &[u8]) -> Result<()> {
        let fits = header.first().is_some_and(|&components| {
            (1..=self.components).contains(&components) && header.len() == 4 + 2 * usize::from(components)
        });
        if self.frame.is_some() && fits {
            Ok(())
        } else {
            Err(PictureFault::damaged("a scan without its frame"))
        }
    }

    fn read_application(&mut self, marker: u8, segment: &[u8]) {
        match (marker, segment) {
            // Version, units and densities stay; width and height of the small picture become 0 (T.871, 10.1).
            (0xE0, [b'J', b'F', b'I', b'F', 0, ..]) if self.jfif.is_none() => {
                self.jfif = segment.get(..12).map(|kept| [kept, &[0, 0]].concat());
            }
            (0xE1, _) if self.orientation.is_none() => {
                let tiff = segment.strip_prefix(EXIF);
                self.orientation = tiff.map(Orientation::of_tiff);
                self.taken = tiff.and_then(TakenAt::of_tiff);
            }
            // Twelve bytes: name, version, two words of flags, the way colours are coded.
            (0xEE, [b'A', b'd', b'o', b'b', b'e', ..]) => {
                if let Some(kept) = segment.get(..12) {
                    self.keep(0xEE, kept);
                }
            }
            _ => {}
        }
    }

    fn finish(self) -> Result<Cleaned> {
        let (width, height) = self.frame.ok_or(PictureFault::damaged("no frame"))?;
        if self.scans == 0 {
            return Err(PictureFault::damaged("no scan"));
        }
        let orientation = self.orientation.unwrap_or(Orientation::UPRIGHT);
        let mut bytes = Vec::with_capacity(self.body.len() + 64);
        bytes.extend([0xFF, SOI]);
        if let Some(jfif) = &self.jfif {
            push_segment(&mut bytes, 0xE0, jfif);
        }
        if let Some(tiff) = orientation.to_tiff() {
            push_segment(&mut bytes, 0xE1, &[EXIF, &tiff].concat());
        }
        bytes.extend(self.body);
        bytes.extend([0xFF, EOI]);
        Ok(Cleaned { bytes, width, height, orientation, taken: self.taken })
    }
}

fn push_segment(bytes: &mut Vec<u8>, marker: u8, segment: &[u8]) {
    // A segment that was read has a length of 16 bits; one that is made here is shorter.
    let length = u16::try_from(segment.len() + 2).unwrap_or(u16::MAX).to_be_bytes();
    bytes.extend([0xFF, marker]);
    bytes.extend(length);
    bytes.extend_from_slice(segment);
}

/// B.2.4.1: tables of 64 elements of one or two bytes, each behind a byte.
fn quantization_fits(mut rest: &[u8]) -> bool {
    while let [kind, elements @ ..] = rest {
        let length = if kind >> 4 == 0 { 64 } else { 128 };
        let Some(behind) = elements.get(length..) else { return false };
        rest = behind;
    }
    true
}

/// B.2.4.2: tables of sixteen counts and as many values as these add up to, each behind a byte.
fn huffman_fits(mut rest: &[u8]) -> bool {
    while let [_, counts @ ..] = rest {
        let Some((counts, values)) = counts.split_at_checked(16) else { return false };
        let length = counts.iter().map(|&count| usize::from(count)).sum::<usize>();
        let Some(behind) = values.get(length..) else { return false };
        rest = behind;
    }
    true
}
