//! What needs the container alone: the layout beyond 32 bits.

use std::fs::File;
use std::io::{Seek, SeekFrom, Write};

use super::{Entry, EntryReader, ZipWriter, read_directory};

/// A zip whose second and third entry begin beyond 4 GiB. The first one is a hole in a sparse file.
fn large() -> File {
    let mut file = tempfile::tempfile().unwrap();
    let mut zip = ZipWriter::new(&mut file);
    zip.hole("hole", 0xFFFF_FF00).unwrap();
    zip.whole("near", &[7; 300]).unwrap();
    zip.whole("far", b"beyond").unwrap();
    let (_, length) = zip.close().unwrap();
    assert_eq!(file.metadata().unwrap().len(), length);
    file
}

#[test]
fn entries_beyond_32_bits_are_found_again() {
    let file = large();
    let entries = read_directory(&file).unwrap();
    let far = entries.iter().find(|entry| entry.name == b"far").unwrap();
    assert!(far.data_at > u64::from(u32::MAX));
    let mut reader = EntryReader::new(&file, far, "far".into()).unwrap();
    let mut content = [0; 10];
    assert_eq!(reader.next(&mut content).unwrap(), 6);
    assert_eq!(&content[..6], b"beyond");
    reader.finish().unwrap();
    let names: Vec<&[u8]> = entries.iter().map(|Entry { name, .. }| name.as_slice()).collect();
    assert_eq!(names, [b"hole".as_slice(), b"near", b"far"]);
}

#[test]
fn every_byte_of_the_directory_of_64_bits_counts() {
    let mut file = large();
    let whole = read_directory(&file).unwrap();
    let length = file.metadata().unwrap().len();
    // APPNOTE 4.3.14 to 4.3.16: 56 + 20 + 22 bytes end the file; the three records before them are the directory.
    let directory = 3 * 46 + 4 + 4 + 3 + 12;
    for at in length - 98 - directory..length {
        let old = read_byte(&mut file, at);
        write_byte(&mut file, at, !old);
        // A byte that means nothing to us may change, but never what is read.
        if let Ok(read) = read_directory(&file) {
            assert_eq!(read, whole, "byte {at}");
        }
        write_byte(&mut file, at, old);
    }
    assert_eq!(read_directory(&file).unwrap(), whole);
}

fn read_byte(file: &mut File, at: u64) -> u8 {
    let mut byte = [0];
    file.seek(SeekFrom::Start(at)).unwrap();
    std::io::Read::read_exact(file, &mut byte).unwrap();
    byte[0]
}

fn write_byte(file: &mut File, at: u64, byte: u8) {
    file.seek(SeekFrom::Start(at)).unwrap();
    file.write_all(&[byte]).unwrap();
}
