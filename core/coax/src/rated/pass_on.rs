//! A device that passes the cable on: one socket to the wall, one for the next device.

use super::SplitterRating;
use crate::dice::Dice;
use crate::error::CoaxError;
use crate::estimates::parts;
use crate::model::Model;
use crate::quantity::Megahertz;
use crate::span::Span;

/// What is known of a device that passes the cable on by a splitter of its own. Port 0 is its socket to the wall, port 1 the
/// socket by which it passes the cable on, port 2 the device itself. One that amplifies on the way is an
/// [`super::AmplifierRating`].
#[derive(Debug, Clone, PartialEq)]
pub struct PassOnRating {
    /// Loss from socket to socket in dB; none: not known.
    pub through: Option<Span>,
    /// Loss to the device itself in dB; none: not known.
    pub device: Option<Span>,
    /// The band it passes on; none: not known, taken as that of a splitter whose label is not readable.
    pub band: Option<(Megahertz, Megahertz)>,
    /// Whether the label says that it is made for MoCA (`Some(true)`) or for something else (`Some(false)`); `None` where it
    /// names neither.
    pub for_moca: Option<bool>,
}

impl PassOnRating {
    /// A concrete device.
    ///
    /// # Errors
    /// [`CoaxError::BadFigure`] for a negative loss or a band without width.
    pub fn draw(&self, dice: &mut Dice) -> Result<Model, CoaxError> {
        let legs = vec![
            self.through.unwrap_or(parts::PASSED_ON_LOSS.span),
            self.device.unwrap_or(parts::PASSING_DEVICE_LOSS.span),
        ];
        SplitterRating { legs, band: self.band, isolation: None, return_loss: None, for_moca: self.for_moca }
            .draw(dice)
    }
}
