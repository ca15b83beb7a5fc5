//! Where what somebody typed about a part and what is printed on it say different things. What was typed counts; that the
//! two differ is said, since one of them is wrong.

use coax::trade::LABELS_BEGIN;
use phrase::{Arg, Phrase};

use crate::printed::kind_printed;
use crate::rating::{Band, PartRating};
use crate::record::{Named, Part, PartKind};

/// Kinds that do different things to a signal, so that a part cannot be two of them. A ground block or an outlet may hold
/// one of these.
const APART: [PartKind; 7] = [
    PartKind::Splitter,
    PartKind::Tap,
    PartKind::Amplifier,
    PartKind::EntryFilter,
    PartKind::HighPassFilter,
    PartKind::SatelliteCombiner,
    PartKind::Pad,
];

/// Two things said of one: what was typed, which counts, and what is printed.
#[derive(Debug, Clone, PartialEq)]
pub enum Contradiction {
    /// The kind of part.
    Kind {
        /// As typed.
        typed: PartKind,
        /// As printed.
        printed: PartKind,
    },
    /// A figure, by the name of its field in a sheet.
    Figure {
        /// The field.
        field: &'static str,
        /// As typed.
        typed: Arg,
        /// As printed.
        printed: Arg,
    },
    /// A yes or no, by the name of its field in a sheet; the print says the opposite.
    Mark {
        /// The field.
        field: &'static str,
        /// As typed.
        typed: bool,
    },
}

impl Contradiction {
    /// Where a part's fields and its print differ, in the order in which a sheet names the fields.
    pub fn of(part: &Part) -> Vec<Self> {
        let Some(reading) = part.read_print() else { return Vec::new() };
        let printed = PartRating::of_reading(&reading);
        let mut found = Vec::new();
        if let Some(kind) = reading.kind.and_then(kind_printed)
            && kind != part.kind
            && APART.contains(&kind)
            && APART.contains(&part.kind)
        {
            found.push(Self::Kind { typed: part.kind, printed: kind });
        }
        found.extend(figures(&part.rating, &printed));
        found.extend(marks(&part.rating, &printed));
        found
    }

    /// The phrase that says it.
    pub fn phrase(&self) -> Phrase {
        match self {
            Self::Kind { typed, printed } => {
                Phrase::new("label-against-kind").text("typed", typed.name()).text("printed", printed.name())
            }
            Self::Figure { field, typed, printed } => Phrase::new("label-against-figure")
                .text("field", *field)
                .with("typed", typed.clone())
                .with("printed", printed.clone()),
            Self::Mark { field, typed } => Phrase::new("label-against-mark")
                .text("field", *field)
                .text("typed", if *typed { "yes" } else { "no" }),
        }
    }
}

fn figures(typed: &PartRating, printed: &PartRating) -> Vec<Contradiction> {
    let mut found = Vec::new();
    let mut differ =
        |field, typed: Arg, printed: Arg| found.push(Contradiction::Figure { field, typed, printed });
    if typed.legs > 0 && printed.legs > 0 && typed.legs != printed.legs {
        differ("legs", Arg::Count(typed.legs.into()), Arg::Count(printed.legs.into()));
    }
    if differ_in_losses(&typed.leg_losses_db, &printed.leg_losses_db) {
        let losses = |losses: &[f64]| Arg::Several(losses.iter().map(|loss| Arg::Loss(*loss)).collect());
        differ("losses", losses(&typed.leg_losses_db), losses(&printed.leg_losses_db));
    }
    for (field, typed, printed) in
        [("band", typed.band, printed.band), ("stop_band", typed.stop_band, printed.stop_band)]
    {
        if let (Some(typed), Some(printed)) = (typed, printed)
            && !is_same_band(typed, printed)
        {
            let band = |band: Band| Arg::Band(band.low_mhz, band.high_mhz);
            differ(field, band(typed), band(printed));
        }
    }
    let decibels = [
        ("rejection", typed.rejection_db, printed.rejection_db),
        ("tap_loss", typed.tap_db, printed.tap_db),
        ("gain", typed.gain_db, printed.gain_db),
        ("return_gain", typed.return_gain_db, printed.return_gain_db),
        ("isolation", typed.isolation_db, printed.isolation_db),
        ("return_loss", typed.return_loss_db, printed.return_loss_db),
    ];
    for (field, typed, printed) in decibels {
        if let (Some(typed), Some(printed)) = (typed, printed)
            && !is_same(typed, printed)
        {
            differ(field, Arg::Loss(typed), Arg::Loss(printed));
        }
    }
    if let (Some(typed), Some(printed)) = (typed.return_high_mhz, printed.return_high_mhz)
        && !is_same(typed, printed)
    {
        differ("return_top", Arg::Frequency(typed), Arg::Frequency(printed));
    }
    found
}

fn marks(typed: &PartRating, printed: &PartRating) -> Vec<Contradiction> {
    [
        ("moca_bypass", typed.moca_bypass, printed.moca_bypass),
        ("power_pass", typed.power_pass, printed.power_pass),
    ]
    .into_iter()
    .filter_map(|(field, typed, printed)| {
        let typed = typed?;
        (typed != printed?).then_some(Contradiction::Mark { field, typed })
    })
    .collect()
}

fn is_same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

fn is_same_band(a: Band, b: Band) -> bool {
    // A lower edge up to where labels begin is the same to every service: none of them goes lower.
    let low = |band: Band| band.low_mhz.max(LABELS_BEGIN.value());
    is_same(low(a), low(b)) && is_same(a.high_mhz, b.high_mhz)
}

/// Whether two lists of losses differ: leg by leg, or, where one names fewer legs, in any that both name.
fn differ_in_losses(a: &[f64], b: &[f64]) -> bool {
    a.iter().zip(b).any(|(a, b)| !is_same(*a, *b))
}

#[cfg(test)]
mod tests {
    use super::*;
    use facts::fact::SubjectId;

    /// A part of that kind with that print, its rating typed where `typed` says something.
    fn part(kind: PartKind, print: &str, typed: PartRating) -> Part {
        let mut part = Part::new(SubjectId::random(), kind);
        part.label = Some(print.into());
        part.rating = typed.or(PartRating::of_label(print));
        part
    }

    fn fields(part: &Part) -> Vec<&'static str> {
        Contradiction::of(part)
            .iter()
            .map(|found| match found {
                Contradiction::Kind { .. } => "kind",
                Contradiction::Figure { field, .. } | Contradiction::Mark { field, .. } => field,
            })
            .collect()
    }

    #[test]
    fn a_band_typed_against_the_print_is_found() {
        let typed =
            PartRating { band: Some(Band { low_mhz: 5.0, high_mhz: 1675.0 }), ..PartRating::default() };
        let found = part(PartKind::Splitter, "2-WAY SPLITTER 5-1000MHz 3.5dB", typed.clone());
        assert_eq!(fields(&found), ["band"]);
        // The same typed again, with nothing printed, and from direct current on.
        assert!(fields(&part(PartKind::Splitter, "2-WAY 5-1675MHz", typed.clone())).is_empty());
        assert!(fields(&part(PartKind::Splitter, "2-WAY 3.5dB", typed.clone())).is_empty());
        assert!(fields(&part(PartKind::Splitter, "2-WAY DC-1675MHz", typed)).is_empty());
    }

    #[test]
    fn kinds_counts_losses_and_marks_are_held_against_the_print() {
        let typed = PartRating {
            legs: 4,
            leg_losses_db: vec![7.0; 4],
            power_pass: Some(true),
            ..PartRating::default()
        };
        let found = part(PartKind::Splitter, "3-WAY SPLITTER 3.5dB 7dB 7dB DC BLOCKED", typed);
        assert_eq!(fields(&found), ["legs", "losses", "power_pass"]);
        let tap = part(PartKind::Splitter, "TAP 12dB 5-1000MHz", PartRating::default());
        assert_eq!(fields(&tap), ["kind"]);
        // A ground block may hold a filter, and an outlet a tap.
        let block = part(PartKind::GroundBlock, "POE FILTER 5-1002MHz GROUND BLOCK", PartRating::default());
        assert!(fields(&block).is_empty());
        assert!(fields(&part(PartKind::Outlet, "WALL PLATE TAP 10dB", PartRating::default())).is_empty());
    }
}
