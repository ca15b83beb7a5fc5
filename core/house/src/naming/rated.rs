//! What a part is taken as, in words.

use phrase::{Arg, Phrase};

use crate::rating::PartRating;

/// What is known of a rating, each figure a phrase; empty where nothing is.
pub fn rated(rating: &PartRating) -> Vec<Phrase> {
    let mut said = Vec::new();
    if let Some(band) = rating.band {
        said.push(Phrase::new("rated-band").with("band", Arg::Band(band.low_mhz, band.high_mhz)));
    }
    if rating.says_moca {
        said.push(Phrase::new("rated-moca"));
    }
    if !rating.leg_losses_db.is_empty() {
        let mut losses = rating.leg_losses_db.clone();
        losses.dedup();
        let losses = losses.into_iter().map(Arg::Loss).collect();
        said.push(Phrase::new("rated-legs-loss").with("losses", Arg::Several(losses)));
    }
    if let Some(db) = rating.tap_db {
        said.push(Phrase::new("rated-tap").with("loss", Arg::Loss(db)));
    }
    if let Some(db) = rating.gain_db {
        said.push(Phrase::new("rated-gain").with("gain", Arg::Loss(db)));
    }
    if let Some(band) = rating.stop_band {
        let band = Arg::Band(band.low_mhz, band.high_mhz);
        said.push(match rating.rejection_db {
            Some(db) => Phrase::new("rated-rejection").with("band", band).with("loss", Arg::Loss(db)),
            None => Phrase::new("rated-stops").with("band", band),
        });
    }
    match rating.moca_bypass {
        Some(true) => said.push(Phrase::new("rated-bypass")),
        Some(false) => said.push(Phrase::new("rated-no-bypass")),
        None => {}
    }
    said
}

/// All that a rating states, for whoever is told the rating alone: with its outputs, and what only a circuit asks for.
pub fn rating(rating: &PartRating) -> Vec<Phrase> {
    let mut said = Vec::new();
    if rating.legs > 0 {
        said.push(Phrase::new("rated-outputs").with("count", Arg::Count(u64::from(rating.legs))));
    }
    said.extend(rated(rating));
    let losses = [
        ("rated-return-gain", rating.return_gain_db),
        ("rated-isolation", rating.isolation_db),
        ("rated-return-loss", rating.return_loss_db),
        ("rated-rejection-alone", rating.rejection_db.filter(|_| rating.stop_band.is_none())),
    ];
    let losses = losses.into_iter().filter_map(|(id, db)| Some(Phrase::new(id).with("loss", Arg::Loss(db?))));
    said.extend(losses);
    if let Some(mhz) = rating.return_high_mhz {
        said.push(Phrase::new("rated-return-path").with("frequency", Arg::Frequency(mhz)));
    }
    let marks = [
        ("rated-modem-port", rating.modem_port),
        ("rated-power", rating.power_pass == Some(true)),
        ("rated-no-power", rating.power_pass == Some(false)),
        ("rated-passes-on", rating.passes_on),
        ("rated-doubtful", rating.doubtful),
    ];
    said.extend(marks.into_iter().filter(|(_, is)| *is).map(|(id, _)| Phrase::new(id)));
    said
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rating::Band;

    /// A band over all of MoCA's is a by-pass of an amplifier; of a splitter it is its band and no more.
    #[test]
    fn a_by_pass_is_said_where_somebody_said_it() {
        let says = |rating: &PartRating| rated(rating).iter().any(|phrase| phrase.id == "rated-bypass");
        let band = Some(Band { low_mhz: 5.0, high_mhz: 1675.0 });
        let mut rating = PartRating { band, says_moca: true, ..PartRating::default() };
        assert!(!says(&rating));
        rating.moca_bypass = Some(true);
        assert!(says(&rating));
    }
}
