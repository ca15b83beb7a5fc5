//! Small pictures of photos as files, for a program that shows pictures by their path.
//!
//! They stand beside the photos and are made anew whenever they are not there: nothing is lost with them, so nothing is
//! synced. What is forgotten must not live on in one of them: forgetting drops them all.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::piece::Piece;
use crate::error::Result;
use crate::fact::SubjectId;
use crate::store::{SMALL, Store, disk, fault};
use crate::unfinished;

/// The longer side of a piece of a photo, in pixels: print stays readable.
pub const PIECE_SIDE: u32 = 1280;

impl Store {
    /// The file of a photo's small picture: a JPEG, the right way up. It is there until
    /// [`Store::drop_small_photos`].
    ///
    /// # Errors
    /// As [`Store::thumbnail`], or what writing reports.
    pub fn small_photo_path(&self, photo: SubjectId) -> Result<PathBuf> {
        let folder = self.folder().join(SMALL);
        let path = folder.join(format!("{}.jpg", self.photo_image(photo)?.sha256));
        if !path.is_file() {
            let bytes = self.thumbnail(photo)?;
            write(&folder, &path, &bytes).map_err(|error| fault::of_system(self.folder(), &error))?;
        }
        Ok(path)
    }

    /// The files of pieces of a photo, in their order: each a JPEG, the right way up, with at most [`PIECE_SIDE`] pixels on its
    /// longer side. Those that are not there are made with one look at the photo, and are there as long as small pictures are.
    ///
    /// # Errors
    /// As [`Store::photo_crop`], or what writing reports.
    pub fn photo_piece_paths(&self, photo: SubjectId, pieces: &[Piece]) -> Result<Vec<PathBuf>> {
        let folder = self.folder().join(SMALL);
        let sum = self.photo_image(photo)?.sha256;
        let path = |piece: &Piece| folder.join(format!("{sum}-{piece}.jpg"));
        let lacking: Vec<Piece> = pieces.iter().filter(|piece| !path(piece).is_file()).copied().collect();
        if !lacking.is_empty() {
            let crops: Vec<_> = lacking.iter().map(|piece| piece.crop(PIECE_SIDE)).collect();
            let made = self.whole_photo(photo)?.crops(&crops)?;
            for (piece, bytes) in lacking.iter().zip(made) {
                write(&folder, &path(piece), &bytes)
                    .map_err(|error| fault::of_system(self.folder(), &error))?;
            }
        }
        Ok(pieces.iter().map(path).collect())
    }

    /// Deletes the small pictures that stand as files. They come again when they are asked for.
    ///
    /// # Errors
    /// What the system reports; that there are none is no error.
    pub fn drop_small_photos(&self) -> Result<()> {
        match fs::remove_dir_all(self.folder().join(SMALL)) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => {
                Err(fault::of_system(self.folder(), &error))
            }
            Ok(()) | Err(_) => Ok(()),
        }
    }
}

/// Writes it whole or not at all: somebody may be reading it.
fn write(folder: &Path, path: &Path, bytes: &[u8]) -> io::Result<()> {
    if let Err(error) = disk::make_folder(folder)
        && error.kind() != io::ErrorKind::AlreadyExists
    {
        return Err(error);
    }
    // Held as long as it is not whole.
    let (part, mut file) = unfinished::begin_part(path, disk::new_file)?;
    file.write_all(bytes)?;
    fs::rename(&part, path)
}

#[cfg(test)]
mod tests {
    use image::{ImageFormat, Rgb, RgbImage};

    use super::*;
    use crate::fact::AuthorId;

    #[test]
    fn pieces_are_small_files_made_once_and_gone_with_the_photo() {
        let home = tempfile::tempdir().unwrap();
        let mut taken = io::Cursor::new(Vec::new());
        let shade = |x: u32, y: u32| Rgb([u8::try_from(x % 256).unwrap(), u8::try_from(y % 256).unwrap(), 7]);
        RgbImage::from_fn(2_000, 1_000, shade).write_to(&mut taken, ImageFormat::Png).unwrap();
        let mut store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
        let photo = store.take_photo(taken.get_ref(), vec![]).unwrap();
        let pieces = [Piece::WHOLE, Piece::new(1_000, 2_000, 500, 300).unwrap()];
        let paths = store.photo_piece_paths(photo, &pieces).unwrap();
        let sizes: Vec<_> = paths.iter().map(|path| image::image_dimensions(path).unwrap()).collect();
        assert_eq!(sizes, [(1_280, 640), (100, 30)]);
        // Made once: what stands there is not written over.
        for path in &paths {
            fs::write(path, "there").unwrap();
        }
        let again = store.photo_piece_paths(photo, &pieces).unwrap();
        assert!(again.iter().all(|path| fs::read(path).unwrap() == b"there"));
        store.forget_photo(photo).unwrap();
        assert!(paths.iter().all(|path| !path.exists()), "forgotten, and still shown");
    }
}
