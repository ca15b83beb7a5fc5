//! The small drawn signs. Each only repeats what a word beside it says.

use maud::{Markup, PreEscaped, html};

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
    const fn way(self) -> &'static str {
        match self {
            Self::Back => "<path class=\"flip\" d=\"M15 4 7 12l8 8\"/>",
            Self::On => "<path class=\"flip\" d=\"M9 5l7 7-7 7\"/>",
            Self::Fold => "<path d=\"M5 9l7 7 7-7\"/>",
            Self::Care => "<path d=\"M12 2.8 22 20.5H2z\"/><path d=\"M12 9v6M12 17.2v1\"/>",
            Self::Box => "<rect x=\"3.5\" y=\"3.5\" width=\"17\" height=\"17\"/>",
            Self::BoxTicked => {
                "<rect x=\"3.5\" y=\"3.5\" width=\"17\" height=\"17\"/><path d=\"M7.5 12l3.2 3.5 6-7.5\"/>"
            }
            Self::Tick => "<path d=\"M4 12.5 9.5 18 20 6\"/>",
            Self::Cross => "<path d=\"M5 5l14 14M19 5 5 19\"/>",
            Self::Doubt => {
                "<path d=\"M8.3 9a3.8 3.8 0 1 1 5.6 3.3c-1.3.8-1.9 1.5-1.9 3\"/><path d=\"M12 18.4v1.2\"/>"
            }
            Self::Flag => "<path d=\"M6 3v18M6 3l12 4.5L6 12\"/>",
            Self::Pen => "<path d=\"M4 20l1-4L16 5l3 3L8 19z\"/>",
            Self::Camera => {
                "<rect x=\"2.5\" y=\"7\" width=\"19\" height=\"13\" rx=\"1\"/><circle cx=\"12\" cy=\"13.5\" r=\"4\"/>\
                 <path d=\"M8 7l1.5-3h5L16 7\"/>"
            }
            Self::File => {
                "<path d=\"M6 2.5h8l4.5 4.5v14.5H6zM14 2.5V7h4.5\"/><path d=\"M12 10v7m-3-3 3 3 3-3\"/>"
            }
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
    html! {
        svg class=(sign.class()) viewBox="0 0 24 24" width=(size) height=(size) aria-hidden="true" {
            (PreEscaped(sign.way()))
        }
    }
}
