//! What a camera writes beside the pixels is gone, the pixels are not; what is no whole picture is refused.
//!
//! The pictures are made by Pillow (`pictures/make.py`); what is left of them is read by the crates `kamadak-exif`
//! and `image`.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use std::fs;
use std::io::Cursor;

use facts::error::OtherKind;
use facts::photo::{MAX_PICTURE_BYTES, MAX_PIXELS, Picture, PictureFault};
use proptest::prelude::*;

const JPEGS: [&str; 5] = ["baseline.jpg", "progressive.jpg", "restarts.jpg", "grey.jpg", "cmyk.jpg"];
const PNGS: [&str; 4] = ["colour.png", "palette.png", "deep.png", "transparent.png"];
/// Of these, Pillow wrote Exif data into the file.
const WITH_EXIF: [&str; 6] =
    ["baseline.jpg", "progressive.jpg", "restarts.jpg", "colour.png", "palette.png", "deep.png"];

fn read(name: &str) -> Vec<u8> {
    fs::read(format!("{}/tests/pictures/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

fn contains(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}

fn exif_tags(bytes: &[u8]) -> Vec<exif::Tag> {
    match exif::Reader::new().read_from_container(&mut Cursor::new(bytes)) {
        Ok(found) => found.fields().map(|field| field.tag).collect(),
        Err(exif::Error::NotFound(_)) => Vec::new(),
        Err(error) => unreachable!("{error}"),
    }
}

#[test]
fn place_camera_and_comment_are_gone() {
    for name in JPEGS.into_iter().chain(PNGS) {
        let whole = read(name);
        let clean = Picture::clean(&whole).unwrap();
        for secret in ["SECRET", "INVENTED", "2001:02:03", "ICC_PROFILE", "iCCP", "sRGB built-in"] {
            assert!(!contains(clean.bytes(), secret.as_bytes()), "{name}: {secret}");
        }
        if WITH_EXIF.contains(&name) {
            // The test can fail: all of it is there before.
            assert!(contains(&whole, b"INVENTED MAKER") && contains(&whole, b"SECRET FILM"), "{name}");
            assert!(exif_tags(&whole).contains(&exif::Tag::GPSLatitude), "{name}");
            assert_eq!(exif_tags(clean.bytes()), [exif::Tag::Orientation], "{name}");
            assert_eq!(clean.orientation().tag(), 6, "{name}");
        } else {
            assert_eq!(exif_tags(clean.bytes()), [], "{name}");
        }
        assert!(clean.bytes().len() < whole.len() || name == "transparent.png", "{name}");
    }
}

#[test]
fn the_pixels_are_untouched() {
    for name in JPEGS.into_iter().chain(PNGS) {
        let whole = read(name);
        let clean = Picture::clean(&whole).unwrap();
        let (before, after) =
            (image::load_from_memory(&whole).unwrap(), image::load_from_memory(clean.bytes()).unwrap());
        assert_eq!(before, after, "{name}");
        assert_eq!((clean.image().width, clean.image().height), (before.width(), before.height()), "{name}");
        assert_eq!(clean.image().bytes, clean.bytes().len() as u64);
    }
}

/// The coded data, from the first scan's marker to the end of image, as they lie in the file.
#[test]
fn the_coded_data_of_a_jpeg_are_the_same_bytes() {
    let from_scan = |bytes: &[u8]| {
        let start = bytes.windows(2).rposition(|pair| pair == [0xFF, 0xDA]).unwrap();
        let end = bytes.windows(2).rposition(|pair| pair == [0xFF, 0xD9]).unwrap();
        bytes[start..end].to_vec()
    };
    for name in JPEGS {
        let whole = read(name);
        let clean = Picture::clean(&whole).unwrap();
        assert_eq!(from_scan(clean.bytes()), from_scan(&whole), "{name}");
        assert!(clean.bytes().ends_with(&[0xFF, 0xD9]), "{name}");
    }
}

#[test]
fn cleaning_what_is_clean_changes_nothing() {
    for name in JPEGS.into_iter().chain(PNGS) {
        let clean = Picture::clean(&read(name)).unwrap();
        assert_eq!(Picture::clean(clean.bytes()).unwrap(), clean, "{name}");
    }
}

/// A picture in which the crate `kamadak-exif` wrote these fields, as a JPEG and as a PNG.
fn with_exif(fields: &[exif::Field], little: bool) -> [Vec<u8>; 2] {
    let mut writer = exif::experimental::Writer::new();
    for field in fields {
        writer.push_field(field);
    }
    let mut tiff = Cursor::new(Vec::new());
    writer.write(&mut tiff, little).unwrap();
    let tiff = tiff.into_inner();
    let whole = read("grey.jpg");
    let segment = [b"Exif\0\0".as_slice(), &tiff].concat();
    let length = u16::try_from(segment.len() + 2).unwrap().to_be_bytes();
    let jpeg = [&whole[..2], &[0xFF, 0xE1], &length, &segment, &whole[2..]].concat();
    let whole = read("transparent.png");
    let named = [b"eXIf".as_slice(), &tiff].concat();
    let length = u32::try_from(tiff.len()).unwrap().to_be_bytes();
    let sum = crc32fast::hash(&named).to_be_bytes();
    // Behind the signature and the header: 8 and 25 bytes.
    let png = [&whole[..33], &length, &named, &sum, &whole[33..]].concat();
    [jpeg, png]
}

#[test]
fn when_a_picture_was_taken_is_read_and_not_left_in_it() {
    let field = |tag, text: &str| exif::Field {
        tag,
        ifd_num: exif::In::PRIMARY,
        value: exif::Value::Ascii(vec![text.as_bytes().to_vec()]),
    };
    let place = || field(exif::Tag::GPSAreaInformation, "SECRET PLACE");
    for little in [false, true] {
        for (time, taken) in [
            ("2001:02:03 04:05:06", Some("2001-02-03T04:05:06")),
            ("2001:02:30 04:05:06", None),
            ("    :  :     :  :  ", None),
            ("0000:00:00 00:00:00", None),
            ("2001-02-03 04:05:06", None),
            ("2001:02:03", None),
        ] {
            let fields =
                [field(exif::Tag::Make, "INVENTED"), field(exif::Tag::DateTimeOriginal, time), place()];
            for bytes in with_exif(&fields, little) {
                assert!(exif_tags(&bytes).contains(&exif::Tag::DateTimeOriginal));
                let clean = Picture::clean(&bytes).unwrap();
                assert_eq!(clean.taken().map(|taken| taken.to_string()).as_deref(), taken, "{time}");
                assert_eq!(exif_tags(clean.bytes()), []);
                assert!(!contains(clean.bytes(), b"2001") && !contains(clean.bytes(), b"SECRET"), "{time}");
                let again = Picture::clean(clean.bytes()).unwrap();
                assert_eq!((again.taken(), again.image()), (None, clean.image()));
            }
        }
        // When it was changed or copied says nothing of when it was taken.
        for bytes in with_exif(&[field(exif::Tag::DateTime, "2001:02:03 04:05:06")], little) {
            assert_eq!(Picture::clean(&bytes).unwrap().taken(), None);
        }
    }
}

#[test]
fn small_pictures_are_the_right_way_up() {
    // Pillow made them 64 wide and 48 high, to be turned by a quarter.
    for name in WITH_EXIF {
        let small = Picture::clean(&read(name)).unwrap().thumbnail().unwrap();
        let small = image::load_from_memory(&small).unwrap();
        assert_eq!((small.width(), small.height()), (48, 64), "{name}");
    }
    // Red grows to the right and green downwards; turned by a quarter clockwise, red grows downwards.
    let small = Picture::clean(&read("colour.png")).unwrap().thumbnail().unwrap();
    let small = image::load_from_memory(&small).unwrap().into_rgb8();
    assert!(small.get_pixel(24, 60)[0] > small.get_pixel(24, 4)[0] + 100);
    assert!(small.get_pixel(4, 32)[1] > small.get_pixel(44, 32)[1] + 100);
}

#[test]
fn a_picture_cut_at_any_length_is_refused_or_whole() {
    for name in JPEGS.into_iter().chain(PNGS) {
        let whole = read(name);
        let clean = Picture::clean(&whole).unwrap();
        let mut refused = 0;
        for end in 0..whole.len() {
            match Picture::clean(&whole[..end]) {
                Ok(found) => assert_eq!(found, clean, "{name} cut at {end}"),
                Err(_) => refused += 1,
            }
        }
        // Only what follows the end may be missing.
        let behind = whole.len() - refused;
        assert!(behind <= 1 + b"\0\0\0\x18ftypmp42 SECRET FILM".len(), "{name}: {behind}");
    }
}

#[test]
fn what_is_no_jpeg_or_png_is_refused_with_advice() {
    let heic = b"\0\0\0\x18ftypheic\0\0\0\0mif1heic";
    let refused = Picture::clean(heic).unwrap_err();
    assert_eq!(refused, PictureFault::Heic);
    let said = refused.to_string();
    assert!(said.contains("HEIC") && said.contains("settings") && said.contains("JPEG"), "{said}");
    for (bytes, expected) in [
        (b"".as_slice(), PictureFault::Empty),
        (b"GIF89a", PictureFault::OtherKind { found: OtherKind::Gif }),
        (b"RIFF\0\0\0\0WEBPVP8 ", PictureFault::OtherKind { found: OtherKind::WebP }),
        (b"\0\0\0\x18ftypavif", PictureFault::OtherKind { found: OtherKind::Avif }),
        (b"%PDF-1.7", PictureFault::OtherKind { found: OtherKind::Pdf }),
        (b"hello", PictureFault::NotAPicture),
        (b"\xFF\xD8", PictureFault::CutShort),
    ] {
        assert_eq!(Picture::clean(bytes), Err(expected));
    }
}

#[test]
fn a_huge_picture_is_refused_before_anything_is_decoded() {
    let mut bytes = read("baseline.jpg");
    // The frame header (T.81, B.2.2): marker, length, precision, lines, samples a line.
    let frame = bytes.windows(2).rposition(|pair| pair == [0xFF, 0xC0]).unwrap();
    bytes[frame + 5..frame + 9].copy_from_slice(&[0xFF, 0xFF, 0xFF, 0xFF]);
    let refused = Picture::clean(&bytes).unwrap_err();
    assert!(matches!(refused, PictureFault::TooManyPixels { width: 65535, height: 65535, .. }), "{refused}");
    assert!(refused.to_string().contains(&format!("{} million", MAX_PIXELS / 1_000_000)), "{refused}");
    let long = vec![0xFF; MAX_PICTURE_BYTES + 1];
    assert_eq!(Picture::clean(&long), Err(PictureFault::TooLong { limit: MAX_PICTURE_BYTES }));
}

#[test]
fn a_png_with_one_bit_turned_is_refused_or_the_same() {
    let whole = read("palette.png");
    let clean = Picture::clean(&whole).unwrap();
    for place in 0..whole.len() {
        for bit in 0..8 {
            let mut turned = whole.clone();
            turned[place] ^= 1 << bit;
            if let Ok(found) = Picture::clean(&turned) {
                // Only in what follows the end.
                assert_eq!(found, clean, "byte {place}");
            }
        }
    }
}

/// A picture that was altered anywhere: cleaned or refused, decoded or refused, never more than that; and never
/// with the secrets in it where only the pixels' data were altered.
/// A chunk of a PNG (W3C PNG third edition, 5.3).
fn chunk(name: [u8; 4], data: &[u8]) -> Vec<u8> {
    let named = [name.as_slice(), data].concat();
    let length = u32::try_from(data.len()).unwrap().to_be_bytes();
    [&length[..], &named, &crc32fast::hash(&named).to_be_bytes()].concat()
}

/// A grey PNG of 2 by 2 pixels whose data stand in these chunks.
fn png_of(data: &[&[u8]]) -> Vec<u8> {
    let header = [&2_u32.to_be_bytes()[..], &2_u32.to_be_bytes(), &[8, 0, 0, 0, 0]].concat();
    let data = data.iter().flat_map(|data| chunk(*b"IDAT", data)).collect();
    [b"\x89PNG\r\n\x1a\n".to_vec(), chunk(*b"IHDR", &header), data, chunk(*b"IEND", b"")].concat()
}

fn zlib(data: &[u8]) -> Vec<u8> {
    use std::io::Write;
    let mut out = flate2::write::ZlibEncoder::new(Vec::new(), flate2::Compression::default());
    out.write_all(data).unwrap();
    out.finish().unwrap()
}

#[test]
fn what_hides_behind_the_pixels_of_a_png_is_cut_or_refused() {
    let stream = zlib(&[0, 10, 20, 0, 30, 40]);
    let plain = png_of(&[&stream]);
    assert_eq!(Picture::clean(&plain).unwrap().bytes(), plain);
    let pixels = image::load_from_memory(&plain).unwrap();
    let (one, two) = stream.split_at(3);
    // In the last chunk of the stream, in chunks of their own, or both; with the stream in one chunk or two.
    let behind: [(&[&[u8]], Vec<u8>); 4] = [
        (&[&[&stream[..], b"51.5N 7.0E"].concat()], plain.clone()),
        (&[&stream, b"51.5N 7.0E", b"more"], plain.clone()),
        (&[one, &[two, b"51.5N 7.0E"].concat(), b"more"], png_of(&[one, two])),
        (&[one, b"", two], png_of(&[one, two])),
    ];
    for (data, expected) in behind {
        let clean = Picture::clean(&png_of(data)).unwrap();
        assert_eq!(clean.bytes(), expected);
        assert_eq!(image::load_from_memory(clean.bytes()).unwrap(), pixels);
    }
    // Within the stream, behind the last pixel.
    let more = png_of(&[&zlib(&[0, 10, 20, 0, 30, 40, b'5', b'1'])]);
    let refused = Picture::clean(&more).unwrap_err().to_string();
    assert!(refused.contains("more data than pixels"), "{refused}");
    // Chunks that mean nothing behind the pixels.
    let end = chunk(*b"IEND", b"");
    let late = [&plain[..plain.len() - end.len()], &chunk(*b"tRNS", b"51.5N"), &end].concat();
    assert_eq!(Picture::clean(&late).unwrap().bytes(), plain);
}

fn altered() -> impl Strategy<Value = Vec<u8>> {
    let names: Vec<&str> = JPEGS.into_iter().chain(PNGS).collect();
    let change = (any::<prop::sample::Index>(), any::<u8>());
    (prop::sample::select(names), prop::collection::vec(change, 1..8)).prop_map(|(name, changes)| {
        let mut bytes = read(name);
        for (place, value) in changes {
            let place = place.index(bytes.len());
            bytes[place] = value;
        }
        bytes
    })
}

fn never_panics(bytes: &[u8]) {
    if let Ok(picture) = Picture::clean(bytes) {
        assert_eq!(Picture::clean(picture.bytes()).as_ref(), Ok(&picture));
        if u64::from(picture.image().width) * u64::from(picture.image().height) < 1_000_000 {
            let _ = picture.thumbnail();
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(400) })]

    #[test]
    fn altered_pictures_are_cleaned_or_refused(bytes in altered()) {
        never_panics(&bytes);
    }

    #[test]
    fn anything_is_cleaned_or_refused(start in prop::sample::select(vec![
        vec![], vec![0xFF, 0xD8], vec![0xFF, 0xD8, 0xFF, 0xE1], b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec(),
    ]), rest in prop::collection::vec(any::<u8>(), 0..200)) {
        never_panics(&[start, rest].concat());
    }
}
