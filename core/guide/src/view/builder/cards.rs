//! Blocks about one thing: photos, a part, a reading, a label, a drawing, something that takes a while.

use facts::fact::SubjectId;
use facts::photo::Piece;
use phrase::Phrase;
use telling::figure::Figure;

use super::ScreenBuilder;
use crate::place::Key;
use crate::screen::{
    Ability, Aloud, Block, FigureBlock, FigureDrawn, HowFarBlock, LabelBlock, Need, PartBlock,
    PhotoPartBlock, PhotoPiece, PhotoShown, PhotoSlotBlock, PressBlock, PressWeight, ReadingBlock,
    TouchedSpot,
};

impl ScreenBuilder<'_> {
    /// A place for photos, with those that are there.
    pub(crate) fn photo_slot(&mut self, key: &Key, name: &Phrase, photos: Vec<PhotoShown>, burst: bool) {
        self.able(Ability::Camera);
        self.block(Block::PhotoSlot(PhotoSlotBlock {
            id: key.to_string(),
            aloud: Aloud::default(),
            key: key.to_string(),
            name: self.say(name),
            photos,
            burst,
            need: Need::Photo { burst },
            print_key: None,
        }));
    }

    /// Says that print recognised in a photo of the block before is welcome, by this key.
    pub(crate) fn reads_print(&mut self, key: &Key) {
        self.able(Ability::ReadPrint);
        if let Some(Block::PhotoSlot(slot)) = self.screen.blocks.last_mut() {
            slot.print_key = Some(key.to_string());
        }
    }

    /// A photo that is there.
    pub(crate) fn photo(&self, photo: SubjectId, name: &Phrase, key: Option<Key>) -> PhotoShown {
        let photo = photo.to_string();
        let (aloud, name) = (Aloud::default(), self.say(name));
        let key = key.map(|key| key.to_string());
        PhotoShown { id: photo.clone(), aloud, photo, name, key, picked: None }
    }

    /// A photo of which a part is chosen by touches.
    pub(crate) fn photo_part(
        &mut self,
        key: &Key,
        name: &Phrase,
        photo: SubjectId,
        corner: Option<TouchedSpot>,
        part: Option<Piece>,
    ) {
        let whole = self.piece(photo, Piece::WHOLE);
        self.block(Block::PhotoPart(PhotoPartBlock {
            id: key.to_string(),
            aloud: Aloud::default(),
            key: key.to_string(),
            name: self.say(name),
            photo: PhotoPiece { name: self.say(&Phrase::new("photo-part-photo")), ..whole },
            corner,
            part: part.map(|part| self.piece(photo, part)),
        }));
    }

    /// A piece of a photo in which something stands.
    pub(crate) fn piece(&self, photo: SubjectId, piece: Piece) -> PhotoPiece {
        let [left, top, width, height] = piece.sides();
        let (across, down) = piece.middle();
        let third = |at: u32, names: [&'static str; 3]| {
            let [first, middle, last] = names;
            match at * 3 / Piece::PARTS {
                0 => first,
                1 => middle,
                _ => last,
            }
        };
        let name = Phrase::new("photo-piece")
            .text("across", third(across, ["left", "middle", "right"]))
            .text("down", third(down, ["top", "middle", "bottom"]));
        PhotoPiece { photo: photo.to_string(), left, top, width, height, name: self.say(&name) }
    }

    /// One part, or what else has a tag, a picture and some lines.
    pub(crate) fn part(&mut self, tag: &str, name: &Phrase, lines: Vec<String>, photo: Option<SubjectId>) {
        self.block(Block::Part(PartBlock {
            id: name.id.clone(),
            aloud: Aloud::default(),
            key: None,
            tag: tag.into(),
            name: self.say(name),
            lines,
            photo: photo.map(|photo| photo.to_string()),
        }));
    }

    /// Something measured.
    pub(crate) fn reading(&mut self, id: SubjectId, name: &Phrase, says: &Phrase, remark: Option<&Phrase>) {
        self.block(Block::Reading(ReadingBlock {
            id: id.to_string(),
            aloud: Aloud::default(),
            name: self.say(name),
            says: self.say(says),
            remark: remark.map(|remark| self.say(remark)).unwrap_or_default(),
        }));
    }

    /// A label's photo beside its text and the figures in it.
    pub(crate) fn label(&mut self, name: &Phrase, label: LabelBlock) {
        let (id, name) = (name.id.clone(), self.say(name));
        self.block(Block::Label(LabelBlock { id, name, ..label }));
    }

    /// A drawing, by its name; a shell fetches its marks.
    pub(crate) fn figure(&mut self, figure: &Figure, drawn: &FigureDrawn) {
        let block = drawn.block(figure, self.language);
        self.block(Block::Figure(block));
    }

    /// A drawing in several layouts, the widest last, and the same in lines of text.
    pub(crate) fn figure_laid_out(&mut self, figure: &Figure, layouts: &[&FigureDrawn], lines: Vec<String>) {
        let block = FigureDrawn::block_of(layouts, figure, self.language);
        self.block(Block::Figure(FigureBlock { lines, ..block }));
    }

    /// How far something is that takes a while, with the press that stops it; that cannot be pressed twice.
    pub(crate) fn how_far(
        &mut self,
        name: &Phrase,
        thousandths: Option<u32>,
        stop: (&Key, &Phrase),
        stopped: bool,
    ) {
        let stop = PressBlock { enabled: !stopped, ..self.press_block(stop.0, stop.1, PressWeight::Other) };
        let (id, name) = (name.id.clone(), self.say(name));
        let aloud = Aloud::default();
        self.block(Block::HowFar(HowFarBlock { id, aloud, name, thousandths, stop: Some(stop) }));
    }
}
