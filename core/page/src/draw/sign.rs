//! The small drawn signs. Each only repeats what a word beside it says.

use maud::{Markup, html};

/// What is drawn, from `look/signs.toml`.
#[expect(dead_code, reason = "some signs only the phones have")]
mod ways {
    include!("../../../../look/signs.rs");
}

/// A sign.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sign {
    /// An arrow back.
    Back,
    /// It leads on.
    On,
    /// It unfolds.
    Fold,
    /// A caution.
    Care,
    /// An empty box.
    Box,
    /// A ticked box.
    BoxTicked,
    /// A tick.
    Tick,
    /// A cross.
    Cross,
    /// A question mark.
    Doubt,
    /// A flag.
    Flag,
    /// A pen.
    Pen,
    /// A camera.
    Camera,
    /// A file.
    File,
}

impl Sign {
    /// Its line, and whether it points along the line of reading.
    const fn way(self) -> (&'static str, bool) {
        match self {
            Self::Back => ways::BACK,
            Self::On => ways::ON,
            Self::Fold => ways::FOLD,
            Self::Care => ways::CARE,
            Self::Box => ways::BOX,
            Self::BoxTicked => ways::BOX_TICKED,
            Self::Tick => ways::TICK,
            Self::Cross => ways::CROSS,
            Self::Doubt => ways::DOUBT,
            Self::Flag => ways::FLAG,
            Self::Pen => ways::PEN,
            Self::Camera => ways::CAMERA,
            Self::File => ways::FILE,
        }
    }

    /// Its name as a class.
    const fn class(self) -> &'static str {
        match self {
            Self::On => "sign lead-on",
            Self::Flag => "sign weak flag",
            Self::BoxTicked | Self::Tick => "sign good",
            _ => "sign",
        }
    }
}

/// A sign, so many pixels high.
pub(super) fn sign(sign: Sign, size: u32) -> Markup {
    let (way, turns) = sign.way();
    html! {
        svg class=(sign.class()) viewBox="0 0 24 24" width=(size) height=(size) aria-hidden="true" {
            path class=[turns.then_some("flip")] d=(way) {}
        }
    }
}
