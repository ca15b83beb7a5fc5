//! Entry filters by their data sheet.

use coax::rated::FilterRating;
use coax::{Decibels, Dice, Megahertz, Model, Span};

use super::bench::part_loss;
use super::check::Check;

const SHEET: &str =
    "data sheet of a ground-block filter, 40 dB type, 2019 (public repository N7Alpha/coaxial-cable-network)";
const HIGH: &str =
    "data sheet of a ground-block filter, 70 dB type, 2019 (public repository N7Alpha/coaxial-cable-network)";

fn filter(rejection: f64, pass: f64) -> Model {
    let rating = FilterRating {
        pass_low: Megahertz(5.0),
        pass_high: Megahertz(1002.0),
        stop_low: Megahertz(1125.0),
        stop_high: Megahertz(1675.0),
        pass_loss: Span::exact(pass),
        rejection: Decibels(rejection),
    };
    rating.draw(&mut Dice::likely([4; 16])).unwrap()
}

#[test]
fn an_entry_filter_keeps_to_its_data_sheet() {
    let part = filter(40.0, 0.5);
    for f in [5.0, 54.0, 750.0] {
        Check::PutIn.about(
            SHEET,
            &format!("pass loss at {f} MHz, dB (0.5 typical, 0.7 most)"),
            0.5,
            0.2,
            part_loss(&part, 1, 0, f),
        );
    }
    let edge = part_loss(&part, 1, 0, 1002.0);
    Check::Fitted.about(SHEET, "pass loss at 1002 MHz, dB (1.2 typical, 1.5 most)", 1.2, 0.3, edge);
    for f in [1125.0, 1400.0, 1675.0] {
        Check::PutIn.between(
            SHEET,
            &format!("rejection at {f} MHz, dB"),
            40.0,
            f64::INFINITY,
            part_loss(&part, 1, 0, f),
        );
    }
    for f in [54.0, 860.0] {
        Check::Fitted.between(
            SHEET,
            &format!("return loss at {f} MHz, dB"),
            17.9,
            f64::INFINITY,
            part_loss(&part, 0, 0, f),
        );
    }
    for f in [1125.0, 1675.0] {
        let high = filter(70.0, 0.6);
        Check::PutIn.between(
            HIGH,
            &format!("rejection at {f} MHz, dB"),
            70.0,
            f64::INFINITY,
            part_loss(&high, 1, 0, f),
        );
    }
}
