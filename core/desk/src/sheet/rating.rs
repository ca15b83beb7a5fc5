//! What a part of a sheet is rated for, typed by hand.

use house::rating::PartRating;
use phrase::{Arg, Phrase};

use super::quantity::{band, decibels, frequency, signed_decibels};
use super::table::{Field, Section};

/// The most legs, taps or outputs of one part.
const MOST_LEGS: u8 = 32;

/// Reads the rating fields of a part; `None` where none is told. `legs_of_label` is how many legs its label states; 0 if none.
pub fn read(section: &Section<'_>, legs_of_label: u8) -> Option<PartRating> {
    let legs = section.field("legs");
    let losses = section.field("loss").map_or_else(Vec::new, |field| field.each());
    let mut leg_losses_db: Vec<f64> = losses.iter().filter_map(|field| field.parse(decibels)).collect();
    let mut rating = PartRating {
        legs: legs.as_ref().and_then(|field| field.whole(1, MOST_LEGS)).unwrap_or(0),
        band: section.parse("band", band),
        stop_band: section.parse("stop_band", band),
        rejection_db: section.parse("rejection", decibels),
        tap_db: section.parse("tap_loss", decibels),
        gain_db: section.parse("gain", decibels),
        return_gain_db: section.parse("return_gain", signed_decibels),
        return_high_mhz: section.parse("return_top", frequency),
        moca_bypass: section.flag("moca_bypass"),
        modem_port: section.flag("modem_port").unwrap_or(false),
        isolation_db: section.parse("isolation", decibels),
        return_loss_db: section.parse("return_loss", decibels),
        power_pass: section.flag("power_pass"),
        passes_on: section.flag("passes_on").unwrap_or(false),
        says_moca: section.flag("says_moca").unwrap_or(false),
        ..PartRating::default()
    };
    if let Some(field) = &legs {
        check_legs_against_label(field, rating.legs, legs_of_label);
    }
    let stated = if rating.legs == 0 { legs_of_label } else { rating.legs };
    // One figure for all legs is said once, as labels do.
    if let [all] = leg_losses_db[..] {
        leg_losses_db = vec![all; usize::from(stated.max(1))];
    }
    if let Some(field) = losses.first()
        && losses.len() > 1
        && stated != 0
        && losses.len() != usize::from(stated)
    {
        let legs = Arg::Count(u64::from(stated));
        field.refuse_as(&losses.len().to_string(), Phrase::new("sheet-loss-count").with("legs", legs));
    }
    rating.leg_losses_db = leg_losses_db;
    (rating != PartRating::default()).then_some(rating)
}

fn check_legs_against_label(field: &Field<'_>, legs: u8, of_label: u8) {
    if legs != 0 && of_label != 0 && legs != of_label {
        field.refuse(Phrase::new("sheet-legs-label").with("legs", Arg::Count(u64::from(of_label))));
    }
}
