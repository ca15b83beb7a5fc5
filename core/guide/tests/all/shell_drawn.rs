//! What a native shell counts on besides a screen's own data: heads that are short, drawings and photos that are there.

use std::collections::{BTreeMap, BTreeSet};

use guide::Guide;
use guide::screen::{Block, FigureBlock, FigureDrawn, FigureLayout, MOST_HEAD, Screen};

/// What holds of the heads in English: they are short.
pub fn assert_heads_short(screen: &Screen) {
    let heads = screen.blocks.iter().filter_map(|block| match block {
        Block::Words(words) => Some(&words.head),
        Block::Caution(caution) => Some(&caution.head),
        _ => None,
    });
    for head in heads {
        assert!(head.chars().count() <= MOST_HEAD, "{}: a long head: {head}", screen.name);
    }
}

/// What holds of the drawings of the screen that is shown.
pub fn assert_drawings(guide: &Guide, screen: &Screen) {
    for block in &screen.blocks {
        if let Block::Figure(figure) = block {
            assert_drawing(guide, &screen.name, figure);
        }
    }
    assert!(guide.figure("no such drawing").is_none());
}

fn assert_drawing(guide: &Guide, name: &str, block: &FigureBlock) {
    let own = FigureLayout {
        figure: block.figure.clone(),
        version: block.version.clone(),
        aspect: block.aspect,
        natural_width: block.natural_width,
    };
    let layouts: Vec<_> = block.narrower.iter().chain([&own]).collect();
    assert!(
        layouts.windows(2).all(|pair| pair[0].natural_width <= pair[1].natural_width),
        "{name}: layouts out of order"
    );
    let mut pressed = BTreeSet::new();
    for layout in layouts {
        let drawn = guide.figure(&layout.figure);
        let drawn = drawn.unwrap_or_else(|| panic!("{name}: {} is not drawn", layout.figure));
        assert_eq!(drawn.version, layout.version, "{name}: another drawing than the screen named");
        assert!(!drawn.marks.is_empty(), "{name}: {} is empty", layout.figure);
        assert_touches(name, &drawn);
        pressed.extend(drawn.marks.into_iter().filter_map(|mark| mark.key));
    }
    assert_eq!(pressed.iter().collect::<Vec<_>>(), block.keys.iter().collect::<Vec<_>>(), "{name}");
}

fn assert_touches(name: &str, drawn: &FigureDrawn) {
    let mut stands_for: BTreeMap<&str, usize> = BTreeMap::new();
    for mark in &drawn.marks {
        if let Some(key) = &mark.key {
            let aloud = &mark.aloud;
            assert!(!aloud.label.trim().is_empty(), "{name}: a mark of {} without a name", drawn.figure);
            assert!(aloud.role.is_control(), "{name}: a mark of {} without a role", drawn.figure);
            *stands_for.entry(key).or_default() += usize::from(!mark.repeats);
        }
    }
    // A screen reader comes upon each part once.
    assert!(stands_for.values().all(|marks| *marks == 1), "{name}: {stands_for:?}");
}

/// What holds of the photos of the screen that is shown: a small one and a whole one are there.
pub fn assert_photos(guide: &Guide, screen: &Screen) {
    let photos = screen.blocks.iter().flat_map(|block| match block {
        Block::PhotoSlot(slot) => slot.photos.iter().map(|photo| photo.photo.clone()).collect(),
        Block::Part(part) => part.photo.iter().cloned().collect(),
        Block::Label(label) => label.photo.iter().cloned().collect(),
        _ => Vec::new(),
    });
    for photo in photos {
        let small = std::fs::read(guide.small_photo(&photo).unwrap()).unwrap();
        // ISO/IEC 10918-1, B.1.1.3: a JPEG begins with the marker SOI.
        assert!(small.starts_with(&[0xFF, 0xD8]), "{}: no small picture", screen.name);
        assert!(guide.whole_photo(&photo).unwrap().is_file(), "{}: no photo", screen.name);
    }
}
