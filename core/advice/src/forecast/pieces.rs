//! Each kind of part as a rating that dice can draw, with ranges for what the survey leaves open.

use std::sync::Arc;

use ::house::rating::{Band, EXTENDED_D, PartRating};
use ::house::record::{CableKind, Connector, Part, PartKind, Run};
use coax::estimates::{house, new_three_way, parts};
use coax::rated::{
    AmplifierRating, ByPass, CableRating, CableSeries, Condition, DiplexerRating, FilterRating, JointRating,
    PadRating, PassOnRating, SplitterRating, TapRating,
};
use coax::trade::{EXTENDED_D_HIGH, FILTERS_PASS, FILTERS_STOP_BY, LABELS_BEGIN};
use coax::{Complex64, Decibels, Dice, End, Megahertz, Span};

/// A piece of the circuit, before its ranges are drawn.
pub(super) use coax::rated::Rating as Rated;

/// What is on a port that leads nowhere further.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ending {
    Open,
    Capped,
    /// A TV, box or modem: a poor match in the MoCA band.
    Device,
    /// Nobody looked.
    Unseen,
}

impl Ending {
    pub(super) fn draw(self, dice: &mut Dice) -> End {
        match self {
            Self::Open => End::Open,
            Self::Capped => reflection(house::CAP_REFLECTION.span, dice),
            Self::Device => reflection(house::DEVICE_REFLECTION.span, dice),
            Self::Unseen => {
                let open = dice.chance(house::UNSEEN_OPEN.span.likely);
                let otherwise = reflection(house::DEVICE_REFLECTION.span, dice);
                if open { End::Open } else { otherwise }
            }
        }
    }
}

fn reflection(amplitude: Span, dice: &mut Dice) -> End {
    let amplitude = dice.span(amplitude);
    End::Reflection(Complex64::from_polar(amplitude, dice.phase()))
}

/// A part as an instrument found it, where that reaches over all of this band, else as it is rated.
pub(super) fn in_band(part: &Part, band: Band) -> Rated {
    let measured = part.measured_over(band).map(|measured| Rated::Measured(Arc::clone(measured)));
    measured.unwrap_or_else(|| of_part(part))
}

/// A part as a piece. Its port 0 faces the street; 1 and up face the house.
fn of_part(part: &Part) -> Rated {
    let rating = &part.rating;
    match part.kind {
        PartKind::Splitter => Rated::Splitter(splitter(part, rating)),
        PartKind::Tap => Rated::Tap(tap(part, rating)),
        PartKind::SatelliteCombiner => Rated::Diplexer(DiplexerRating::default()),
        PartKind::EntryFilter => filter(rating).map_or_else(|| joint(parts::BARREL_LOSS.span), Rated::Filter),
        PartKind::Amplifier => Rated::Amplifier(amplifier(part, rating)),
        PartKind::Outlet => Rated::Joint(JointRating::wall_plate(Condition::Sound)),
        PartKind::GroundBlock => match filter(rating) {
            Some(filter) if rating.stop_band.is_some() || rating.rejection_db.is_some() => {
                Rated::Filter(filter)
            }
            _ => Rated::Joint(JointRating::ground_block(Condition::Sound)),
        },
        PartKind::Entry | PartKind::Barrel | PartKind::Terminator => {
            Rated::Joint(JointRating::barrel(Condition::Sound))
        }
        PartKind::PowerInserter => Rated::Joint(JointRating::power_inserter(Condition::Sound)),
        PartKind::HighPassFilter => Rated::Filter(FilterRating::high_pass(
            rating.leg_losses_db.first().map(|db| labelled(*db)),
            rating.rejection_db.map(Decibels),
        )),
        PartKind::Pad => Rated::Pad(PadRating {
            loss: rating.leg_losses_db.first().map_or(house::UNKNOWN_PART.span, |db| labelled(*db)),
            return_loss: rating.return_loss_db.map(Decibels),
        }),
        PartKind::Unknown => joint(house::UNKNOWN_PART.span),
    }
}

fn joint(loss: Span) -> Rated {
    Rated::Joint(JointRating { loss, condition: Condition::Sound })
}

/// A loss as its label states it, with what a label leaves open.
fn labelled(db: f64) -> Span {
    let spread = house::LABEL_SPREAD.span;
    Span::new((db + spread.low).max(0.0), db + spread.likely, db + spread.high)
}

fn splitter(part: &Part, rating: &PartRating) -> SplitterRating {
    let count = usize::from(part.outputs().max(1));
    let legs = (0..count)
        .map(|leg| rating.leg_losses_db.get(leg).map_or_else(|| unread_leg(count), |db| labelled(*db)));
    SplitterRating {
        legs: legs.collect(),
        band: band(rating),
        isolation: rating.isolation_db.map(Decibels),
        return_loss: rating.return_loss_db.map(Decibels),
        for_moca: for_moca(part, rating),
    }
}

/// Whether the label says that a part is made for MoCA, or for a dish: that is made to keep receivers apart.
fn for_moca(part: &Part, rating: &PartRating) -> Option<bool> {
    if rating.says_moca { Some(true) } else { part.is_for_satellite().then_some(false) }
}

/// A tap: its first port is the way through, the others are its taps, which share one loss on the label.
fn tap(part: &Part, rating: &PartRating) -> TapRating {
    let taps = usize::from(part.outputs().saturating_sub(1)).clamp(1, 8);
    let loss = rating.tap_db.map_or(house::UNREAD_TAP.span, labelled);
    TapRating {
        through: rating.leg_losses_db.first().map(|db| labelled(*db)),
        taps: vec![loss; taps],
        band: band(rating),
        isolation: rating.isolation_db.map(Decibels),
        directivity: None,
        return_loss: rating.return_loss_db.map(Decibels),
        for_moca: for_moca(part, rating),
    }
}

/// The band a part is made for: by its label, or the MoCA band and below where the label only says MoCA.
fn band(rating: &PartRating) -> Option<(Megahertz, Megahertz)> {
    let moca = rating.says_moca.then_some(Band { low_mhz: LABELS_BEGIN.value(), ..EXTENDED_D });
    rating.band.or(moca).map(|band| (Megahertz(band.low_mhz), Megahertz(band.high_mhz)))
}

/// The loss to a leg of an even split among `count`, by 10 log10 N and what real ones add.
fn unread_leg(count: usize) -> Span {
    let ideal = 10.0 * (count as f64).log10();
    let excess = house::UNREAD_LEG_EXCESS.span;
    Span::new(ideal + excess.low, ideal + excess.likely, ideal + excess.high)
}

/// `None` for a part called a filter that does not stop the MoCA band: it then acts like a joint there.
fn filter(rating: &PartRating) -> Option<FilterRating> {
    let usual = Band { low_mhz: LABELS_BEGIN.value(), high_mhz: FILTERS_PASS.value() };
    let pass = rating.band.unwrap_or(usual);
    let stop = rating.stop_band.unwrap_or(EXTENDED_D);
    let stops =
        pass.high_mhz < EXTENDED_D.low_mhz && stop.overlaps(EXTENDED_D) && stop.low_mhz > pass.high_mhz;
    stops.then(|| FilterRating {
        pass_low: Megahertz(pass.low_mhz),
        pass_high: Megahertz(pass.high_mhz),
        stop_low: Megahertz(stop.low_mhz),
        stop_high: Megahertz(stop.high_mhz),
        pass_loss: house::FILTER_PASS_LOSS.span,
        rejection: rating.rejection_db.map_or(FILTERS_STOP_BY, Decibels),
    })
}

fn amplifier(part: &Part, rating: &PartRating) -> AmplifierRating {
    let spread = house::AMPLIFIER_GAIN_SPREAD.span;
    let about = |db: f64| Span::new(db + spread.low, db + spread.likely, db + spread.high);
    let gain = rating.gain_db.map_or(house::AMPLIFIER_GAIN.span, about);
    let split = rating.return_high_mhz.unwrap_or(house::AMPLIFIER_SPLIT.span.likely);
    let by_pass = rating.by_pass();
    let one_for_both = by_pass == Some(true) && rating.made_for_moca() == Some(true);
    let amplified = rating.band.filter(|_| !one_for_both);
    let top = amplified.map_or(house::AMPLIFIER_TOP.span.likely, |band| band.high_mhz);
    let loss = house::AMPLIFIER_BYPASS.span;
    let read = part.label.is_some() || rating.band.is_some();
    let odds =
        if read { house::AMPLIFIER_BYPASS_NOT_NAMED } else { house::AMPLIFIER_BYPASS_UNREAD }.span.likely;
    AmplifierRating {
        outputs: vec![gain; usize::from(rating.legs.max(1))],
        modem_port: rating.modem_port.then_some(parts::AMPLIFIER_STAGE.span),
        split: Megahertz(split),
        forward_top: Megahertz(top.max(split + house::AMPLIFIER_LEAST_BAND.span.likely)),
        return_gain: rating.return_gain_db.map_or(house::AMPLIFIER_RETURN_GAIN.span, about),
        bypass: match by_pass {
            Some(true) => ByPass::There(loss),
            Some(false) => ByPass::None,
            None => ByPass::Perhaps { loss, odds },
        },
    }
}

/// A run as a piece; nothing known of it gives the widest ranges.
pub(super) fn of_run(run: Option<&Run>) -> Rated {
    Rated::Cable(CableRating {
        series: run.map_or(CableSeries::Unknown, |run| series(run.cable)),
        length: run.and_then(|run| run.length).map_or(house::UNKNOWN_RUN.span, |length| length.span()),
        temperature: house::INDOORS.span,
        connectors: run.map_or([Condition::Unsure; 2], connectors),
    })
}

fn series(cable: CableKind) -> CableSeries {
    match cable {
        CableKind::Six => CableSeries::Six,
        CableKind::FiftyNine => CableSeries::FiftyNine,
        CableKind::Seven => CableSeries::Seven,
        CableKind::Eleven => CableSeries::Eleven,
        CableKind::Unknown => CableSeries::Unknown,
    }
}

/// A run's two connectors, the one nearer the street first.
fn connectors(run: &Run) -> [Condition; 2] {
    [run.connector_near, run.connector_far].map(|connector| match connector {
        Connector::Compression | Connector::Crimp => Condition::Sound,
        Connector::Unknown => Condition::Unsure,
        Connector::HandTight | Connector::PushOn => Condition::HandTight,
        Connector::TwistOn => Condition::TwistOn,
        Connector::Corroded => Condition::Corroded,
        Connector::BadJoint => Condition::BadJoint,
    })
}

/// A cable that leaves a port for nobody knows where.
pub(super) fn loose_end() -> Rated {
    Rated::Cable(CableRating {
        series: CableSeries::Unknown,
        length: house::LOOSE_END.span,
        temperature: house::INDOORS.span,
        connectors: [Condition::Unsure; 2],
    })
}

/// Cables twisted together on one port.
pub(super) fn junction(arms: usize) -> Rated {
    Rated::Junction(arms)
}

/// The box at an outlet through which the cable goes on; what is stated of the outlet is stated of it. Its port 0 faces the
/// wall, 1 the next cable, 2 is the device itself.
pub(super) fn passing_box(part: &Part) -> Rated {
    let rating = &part.rating;
    Rated::PassOn(PassOnRating {
        through: rating.leg_losses_db.first().map(|db| labelled(*db)),
        device: None,
        band: band(rating),
        for_moca: for_moca(part, rating),
    })
}

/// An adapter's own socket for what else is at its outlet: port 0 faces the wall, 1 is that socket, 2 the adapter itself. How it
/// divides what comes in is nowhere written: by a splitter or by frequency.
pub(super) fn through_port() -> Rated {
    Rated::PassOn(PassOnRating {
        through: None,
        device: None,
        band: Some((LABELS_BEGIN, EXTENDED_D_HIGH)),
        for_moca: Some(true),
    })
}

/// A filter at a device's own port: as an entry filter of which nobody read the label.
pub(super) fn device_filter() -> Rated {
    filter(&PartRating::default()).map_or_else(|| joint(parts::BARREL_LOSS.span), Rated::Filter)
}

/// The rated splitter by which an adapter shares an outlet with a device or a further cable: a two-way, or an unbalanced
/// three-way.
pub(super) fn outlet_splitter(ways: usize) -> Rated {
    let [one, two, _] = new_three_way();
    let losses: &[f64] = if ways <= 2 { &[one, one] } else { &[one, two, two] };
    Rated::Splitter(SplitterRating {
        legs: losses.iter().map(|db| labelled(*db)).collect(),
        band: Some((LABELS_BEGIN, EXTENDED_D_HIGH)),
        isolation: None,
        return_loss: None,
        for_moca: Some(true),
    })
}
