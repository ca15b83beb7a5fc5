//! A photo of which a part is chosen by touches on two corners of it.

use guide::screen::{PhotoPartBlock, PhotoPiece, TouchedSpot};
use maud::{Markup, html};

use super::card::cut_out;
use super::element;
use crate::form::Field;

/// How wide the photo may be shown, CSS pixels: the widest that fits is shown. A browser says where an image was touched in pixels
/// of what is shown, so that how wide that is must be known; the steps are those of `page.css`.
pub(crate) const WIDTHS: [u32; 3] = [280, 440, 660];

pub(super) fn photo_part(part: &PhotoPartBlock) -> Markup {
    let id = element(&part.id);
    html! {
        section.ppart id=(id) aria-labelledby={ (id) "-name" } {
            p id={ (id) "-name" } { (part.name) }
            @if let Some(now) = &part.part { p.hide { (now.name) } }
            div.ppane {
                @for wide in WIDTHS {
                    div class={ "pshot wide-" (wide) } {
                        input type="image" name=(Field::Touch(&part.key, wide).name()) src=(cut_out(&part.photo))
                            alt=(part.name) width=(wide);
                        (marks(part.corner, part.part.as_ref()))
                    }
                }
            }
        }
    }
}

/// What was chosen, over the photo.
fn marks(corner: Option<TouchedSpot>, part: Option<&PhotoPiece>) -> Markup {
    html! {
        svg viewBox="0 0 10000 10000" preserveAspectRatio="none" aria-hidden="true" {
            // Twice, so that it is seen on light and on dark.
            @for layer in ["under", "over"] {
                g class=(layer) {
                    @if let Some(part) = part {
                        rect x=(part.left) y=(part.top) width=(part.width) height=(part.height);
                    }
                    @if let Some(TouchedSpot { across, down }) = corner {
                        path d={ "M" (across) " 0V10000M0 " (down) "H10000" };
                    }
                }
            }
        }
    }
}
