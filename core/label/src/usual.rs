//! What is usual on labels: edges of bands, losses for a number of legs. Common practice, no source, unless
//! said otherwise. Departing from it makes a reading doubtful, never wrong.

use super::doubt::Quantity;

/// Edges of bands that parts are made for, in megahertz. 1002, 1218 and 1794 are the classes of ANSI/SCTE 153
/// 2021; 1125 to 1675 the band of the home network.
#[rustfmt::skip]
const EDGES: &[f64] = &[
    5.0, 10.0, 15.0, 30.0, 40.0, 42.0, 45.0, 46.0, 47.0, 48.0, 49.0, 50.0, 52.0, 54.0, 55.0, 65.0, 70.0, 80.0, 85.0,
    86.0, 87.0, 87.5, 88.0, 100.0, 102.0, 105.0, 108.0, 110.0, 130.0, 174.0, 200.0, 204.0, 230.0, 240.0, 258.0,
    300.0, 400.0, 450.0, 470.0, 500.0, 550.0, 600.0, 606.0, 650.0, 684.0, 694.0, 698.0, 700.0, 750.0, 790.0, 800.0,
    806.0, 850.0, 860.0, 862.0, 870.0, 890.0, 900.0, 950.0, 1000.0, 1002.0, 1006.0, 1100.0, 1125.0, 1150.0, 1200.0,
    1218.0, 1220.0, 1250.0, 1300.0, 1400.0, 1450.0, 1500.0, 1525.0, 1550.0, 1600.0, 1650.0, 1675.0, 1700.0, 1794.0,
    1800.0, 2000.0, 2050.0, 2100.0, 2150.0, 2200.0, 2250.0, 2300.0, 2340.0, 2400.0, 2500.0, 2600.0, 3000.0,
];

/// Whether parts are made with this edge, in megahertz.
pub(super) fn is_edge(edge: f64) -> bool {
    EDGES.iter().any(|usual| (usual - edge).abs() < 1e-9)
}

/// A usual edge that is this one with more digits before or behind it: what it may have been before a part of it was worn away.
pub(super) fn longer_edge(edge: f64) -> Option<f64> {
    let digits = edge.to_string();
    let is_part = |usual: &String| {
        usual.len() > digits.len() && (usual.starts_with(&digits) || usual.ends_with(&digits))
    };
    EDGES.iter().copied().find(|usual| is_part(&usual.to_string()))
}

/// The losses, in decibels, from least to most, that labels state for that many equal legs.
fn equal_losses(legs: u8) -> Option<(f64, f64)> {
    Some(match legs {
        2 => (3.0, 4.5),
        3 => (4.8, 6.5),
        4 => (6.0, 8.5),
        5 => (7.0, 10.0),
        6 => (7.8, 11.0),
        8 => (9.0, 12.5),
        12 => (10.8, 16.0),
        16 => (12.0, 18.0),
        _ => return None,
    })
}

/// The first loss that does not fit, if any: equal legs against what labels state; unequal legs against the law
/// that no more comes out than goes in, and that not half of it is lost.
pub(super) fn unusual_loss(losses: &[f64]) -> Option<f64> {
    let first = *losses.first()?;
    let legs = u8::try_from(losses.len()).ok()?;
    let is_equal = losses.iter().all(|loss| (loss - first).abs() < 1e-9);
    if is_equal {
        let (least, most) = equal_losses(legs)?;
        return (!(least..=most).contains(&first)).then_some(first);
    }
    if legs == 2 {
        // Two unequal legs are a tap's, or one loss for each of two bands.
        return Some(losses.iter().copied().fold(first, f64::max));
    }
    let power: f64 = losses.iter().map(|loss| 10_f64.powf(-loss / 10.0)).sum();
    (!(0.5..=1.0).contains(&power)).then(|| losses.iter().copied().fold(f64::INFINITY, f64::min))
}

/// Whether a figure in decibels is usual for what it is said to be.
pub(super) fn is_usual(what: Quantity, figure: f64) -> bool {
    let (least, most) = match what {
        Quantity::Loss => (0.0, 25.0),
        Quantity::Tap => (3.0, 40.0),
        Quantity::Gain => (0.0, 50.0),
        Quantity::ReturnGain => (-20.0, 35.0),
        Quantity::Rejection => (15.0, 100.0),
        Quantity::Isolation => (8.0, 60.0),
        Quantity::ReturnLoss => (5.0, 40.0),
    };
    (least..=most).contains(&figure)
}

/// No figure in decibels on these parts is larger: a number beyond it is something else.
pub(super) const LARGEST_DB: f64 = 150.0;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_labels_are_usual() {
        // "How much signal do I lose going through a splitter?", skywarnforum.org, and labels photographed in the public
        // repository N7Alpha/coaxial-cable-network.
        for losses in [&[3.5, 3.5][..], &[3.5, 7.0, 7.0], &[3.7, 7.3, 7.3], &[7.0; 4], &[10.5; 8], &[11.0; 8]]
        {
            assert_eq!(unusual_loss(losses), None, "{losses:?}");
        }
    }

    #[test]
    fn an_edge_may_be_what_is_left_of_a_longer_one() {
        assert_eq!([86.0, 100.0, 300.0].map(longer_edge), [Some(860.0), Some(1000.0), Some(1300.0)]);
        assert_eq!([862.0, 1000.0, 1002.0, 1218.0, 1675.0, 2150.0].map(longer_edge), [None; 6]);
    }

    #[test]
    fn more_cannot_come_out_than_goes_in() {
        assert_eq!(unusual_loss(&[2.5, 2.5]), Some(2.5));
        assert_eq!(unusual_loss(&[3.5, 3.5, 7.0]), Some(3.5));
    }
}
