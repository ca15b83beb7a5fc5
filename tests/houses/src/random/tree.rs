//! How a tree grows at random: from the entry through what stands in a row, to splits and outlets.

use house::rating::Band;
use house::record::{CableKind, Connector, EntryKind, LengthKnown, Part, PartKind, PortEnd, RunLength};

use super::Site;

/// The port of a part on which the next one hangs.
pub(super) type Hook = (String, u8);

/// No house gets more parts than this.
const MOST_PARTS: usize = 22;

impl Site {
    /// What stands in a row from the entry to before the first split.
    pub(super) fn trunk(&mut self, entry: &str, kind: EntryKind) -> Hook {
        let mut at = (entry.to_owned(), 1);
        let filter = self.dice.weighed(&[
            (7, Filter::None),
            (8, Filter::Right),
            (1, Filter::First),
            (1, Filter::Twice),
            (1, Filter::BehindAmplifier),
        ]);
        if matches!(filter, Filter::First | Filter::Twice) {
            at = self.filter(&at);
        }
        let mast = matches!(kind, EntryKind::Antenna | EntryKind::Unknown) && self.dice.chance(0.45);
        if mast {
            at = self.amplifier(&at, Some("on the mast"), 1);
        }
        let block = if kind == EntryKind::Cable { 0.7 } else { 0.4 };
        if self.dice.chance(block) {
            at = self.hang(PartKind::GroundBlock, 'G', &at);
            let built_in = self.dice.chance(0.08);
            if built_in {
                let tag = at.0.clone();
                self.build(|house| house.at(&tag).with(stops_the_band));
            }
        }
        if matches!(filter, Filter::Right | Filter::Twice) {
            at = self.filter(&at);
        }
        if self.dice.chance(if mast { 0.4 } else { 0.04 }) {
            at = self.hang(PartKind::PowerInserter, 'P', &at);
        }
        for (share, kind, letter) in [
            (0.04, PartKind::Pad, 'D'),
            (0.05, PartKind::Barrel, 'B'),
            (0.02, PartKind::HighPassFilter, 'H'),
            (0.02, PartKind::Unknown, 'X'),
        ] {
            if self.dice.chance(share) {
                at = self.hang(kind, letter, &at);
            }
        }
        if self.dice.chance(0.2) {
            at = self.amplifier(&at, None, 1);
        }
        if matches!(filter, Filter::BehindAmplifier) {
            at = self.filter(&at);
        }
        at
    }

    /// What hangs on a port; `depth` splits stand above.
    pub(super) fn grow(&mut self, at: &Hook, depth: u32) {
        let full = self.house.survey.parts.len() >= MOST_PARTS;
        let split = if full || depth > 2 { 0 } else { [60, 9, 4].get(depth as usize).copied().unwrap_or(0) };
        let further = u32::from(!full);
        let grows = self.dice.weighed(&[
            (14, Grows::Outlet),
            (split, Grows::Splitter),
            (split / 8, Grows::Tap),
            (split / 8, Grows::Amplifier),
            (split / 12, Grows::Combiner),
            (further, Grows::Filter),
            (further, Grows::InARow),
            (1, Grows::Terminator),
        ]);
        match grows {
            Grows::Outlet => self.outlet(Some(at)),
            Grows::Splitter => {
                let legs = self.dice.weighed(&[(6, 2), (5, 3), (5, 4), (1, 6), (2, 8)]);
                let tag = self.hang(PartKind::Splitter, 'S', at).0;
                self.build(|house| house.at(&tag).with(|splitter| splitter.rating.legs = legs));
                self.rate_splitter(&tag);
                self.branch(&tag, depth + 1);
            }
            Grows::Tap => {
                let tag = self.hang(PartKind::Tap, 'T', at).0;
                let tap_db = self.dice.pick(&[None, Some(6.0), Some(9.0), Some(16.0)]);
                self.build(|house| {
                    house.at(&tag).with(|tap| {
                        tap.rating.legs = 2;
                        tap.rating.tap_db = tap_db;
                    })
                });
                self.branch(&tag, depth + 1);
            }
            Grows::Amplifier => {
                let outputs = self.dice.pick(&[1, 2, 4]);
                let tag = self.amplifier(at, None, outputs).0;
                self.branch(&tag, depth + 1);
            }
            Grows::Combiner => {
                let tag = self.hang(PartKind::SatelliteCombiner, 'C', at).0;
                self.branch(&tag, depth + 1);
            }
            Grows::Filter => {
                let at = self.filter(at);
                self.grow(&at, depth.max(1));
            }
            Grows::InARow => {
                let (kind, letter) = self.dice.pick(&[
                    (PartKind::Pad, 'D'),
                    (PartKind::Barrel, 'B'),
                    (PartKind::PowerInserter, 'P'),
                    (PartKind::HighPassFilter, 'H'),
                    (PartKind::Unknown, 'X'),
                ]);
                let at = self.hang(kind, letter, at);
                self.grow(&at, depth.max(1));
            }
            Grows::Terminator => {
                self.hang(PartKind::Terminator, 'Z', at);
            }
        }
    }

    /// What is on each output of a part.
    pub(super) fn branch(&mut self, tag: &str, depth: u32) {
        let outputs = self.part(tag).outputs();
        let shared = self.house.survey.building.is_some_and(|building| building.shared);
        for port in 1..=outputs {
            let used = if port <= 2 { 0.9 } else { 0.5 };
            if self.dice.chance(used) {
                self.grow(&(tag.to_owned(), port), depth);
                continue;
            }
            let end = self.dice.weighed(&[
                (4, Some(PortEnd::Capped)),
                (4, Some(PortEnd::Open)),
                (1, Some(PortEnd::LooseEnd)),
                (if shared { 4 } else { 0 }, Some(PortEnd::AnotherHome)),
                (3, None),
            ]);
            if let Some(end) = end {
                self.build(|house| house.at(tag).end(port, end));
            }
        }
    }

    /// Hangs a part on a port over some run, and gives the part's first output.
    pub(super) fn hang(&mut self, kind: PartKind, letter: char, at: &Hook) -> Hook {
        let tag = self.tag(letter);
        self.build(|house| house.part(&tag, kind).from(&at.0, at.1));
        self.run(&tag, kind == PartKind::Outlet);
        (tag, 1)
    }

    /// The run that feeds a part: anything from not looked at to measured.
    fn run(&mut self, tag: &str, far: bool) {
        if self.dice.chance(0.15) {
            return;
        }
        let cable = self.dice.weighed(&[
            (12, CableKind::Six),
            (4, CableKind::FiftyNine),
            (3, CableKind::Unknown),
            (1, CableKind::Eleven),
            (1, CableKind::Seven),
        ]);
        let metres = if far { self.dice.between(2.0, 35.0) } else { self.dice.between(0.3, 6.0) };
        let long = if self.dice.chance(0.04) { 50.0 } else { 0.0 };
        let known = self.dice.pick(&[LengthKnown::Measured, LengthKnown::Paced, LengthKnown::Guessed]);
        let length = self.dice.chance(0.85).then(|| RunLength::stated(metres + long, known));
        let connector = |site: &mut Self| {
            site.dice.weighed(&[
                (20, Connector::Compression),
                (8, Connector::Unknown),
                (3, Connector::Crimp),
                (1, Connector::PushOn),
                (1, Connector::TwistOn),
                (1, Connector::Corroded),
                (1, Connector::HandTight),
                (1, Connector::BadJoint),
            ])
        };
        let (near, far) = (connector(self), connector(self));
        self.build(|house| {
            house.at(tag).run(|run| {
                run.cable = cable;
                run.length = length;
                run.connector_near = near;
                run.connector_far = far;
            })
        });
    }

    /// An entry filter as people find them: sold for it, of an older make, weak, without a legible print.
    fn filter(&mut self, at: &Hook) -> Hook {
        let hook = self.hang(PartKind::EntryFilter, 'F', at);
        let tag = hook.0.clone();
        let made = self.dice.weighed(&[(7, 0), (1, 1), (1, 2), (2, 3)]);
        let passes = self.dice.weighed(&[(4, 1002.0), (1, 860.0), (1, 1052.0)]);
        let power = self.dice.pick(&[None, Some(true), Some(false)]);
        self.build(|house| {
            house.at(&tag).with(|filter| {
                let rating = &mut filter.rating;
                match made {
                    0 => stops_the_band(filter),
                    1 => rating.stop_band = Some(Band { low_mhz: 1125.0, high_mhz: 1525.0 }),
                    2 => {
                        stops_the_band(filter);
                        filter.rating.rejection_db = Some(25.0);
                    }
                    _ => {}
                }
                if made < 3 {
                    filter.rating.band = Some(Band { low_mhz: 5.0, high_mhz: passes });
                    filter.rating.power_pass = power;
                }
            })
        });
        hook
    }

    fn amplifier(&mut self, at: &Hook, place: Option<&str>, outputs: u8) -> Hook {
        let hook = self.hang(PartKind::Amplifier, 'A', at);
        let tag = hook.0.clone();
        let bypass = self.dice.weighed(&[(2, Some(false)), (2, None), (1, Some(true))]);
        let gain = self.dice.weighed(&[(1, None), (2, Some(8.0)), (2, Some(15.0)), (1, Some(24.0))]);
        let returns = self.dice.weighed(&[(2, None), (2, Some(0.0)), (1, Some(-6.0)), (1, Some(10.0))]);
        let return_top = self.dice.pick(&[None, Some(42.0), Some(65.0), Some(85.0)]);
        let top = self.dice.pick(&[None, Some(862.0), Some(1002.0), Some(1218.0)]);
        let modem_port = place.is_none() && self.dice.chance(0.15);
        self.build(|house| {
            house.at(&tag).with(|amplifier| {
                let rating = &mut amplifier.rating;
                rating.legs = outputs;
                rating.moca_bypass = bypass;
                rating.gain_db = gain;
                rating.return_gain_db = returns;
                rating.return_high_mhz = return_top;
                rating.band = top.map(|high_mhz| Band { low_mhz: 54.0, high_mhz });
                rating.modem_port = modem_port;
                amplifier.place = place.map(str::to_owned);
            })
        });
        hook
    }

    /// What a splitter is made for, by its label, by what was typed, or not at all.
    pub(super) fn rate_splitter(&mut self, tag: &str) {
        let legs = self.part(tag).rating.legs;
        let made = self.dice.weighed(&[(5, 0), (5, 1), (3, 2), (2, 3), (1, 4)]);
        let power = self.dice.weighed(&[(4, None), (1, Some(true)), (1, Some(false))]);
        self.build(|house| {
            let house = house.at(tag);
            let house = match made {
                0 => house.made_for(5.0, 1000.0),
                1 => house.made_for(5.0, 1675.0),
                // A satellite splitter left in the path, as such labels are printed.
                2 => house.label(&format!("{legs}-WAY SPLITTER 5-2400MHz SATELLITE DC PASS")),
                3 => house,
                _ => house.label(&format!("{legs}-WAY SPLITTER 5-loooMHz")),
            };
            if made == 2 { house } else { house.with(|splitter| splitter.rating.power_pass = power) }
        });
    }

    pub(super) fn part(&self, tag: &str) -> &Part {
        &self.house.survey.parts[&self.house.id_of(tag)]
    }
}

/// A filter as sold for the entry (data sheet, 2019, N7Alpha/coaxial-cable-network).
fn stops_the_band(part: &mut Part) {
    part.rating.stop_band = Some(Band { low_mhz: 1125.0, high_mhz: 1675.0 });
    part.rating.rejection_db = Some(40.0);
}

/// Where the filter of an entry is, if there is one.
#[derive(Clone, Copy)]
enum Filter {
    None,
    Right,
    /// Straight behind the entry, in front of all else, a mast amplifier too.
    First,
    Twice,
    BehindAmplifier,
}

#[derive(Clone, Copy)]
enum Grows {
    Outlet,
    Splitter,
    Tap,
    Amplifier,
    Combiner,
    Filter,
    InARow,
    Terminator,
}
