//! Levels at random, where people measure them: at the entry, the ground block, a port, the sockets.

use facts::fact::SubjectId;
use house::record::{EntryKind, PartKind, Plugged, Reading, ReadingKind};

use super::Site;

impl Site {
    pub(super) fn levels(&mut self) {
        for (tag, kind) in self.entries.clone() {
            if self.dice.chance(0.4) {
                for mhz in self.frequencies(kind) {
                    let (low, high) = if kind == EntryKind::Antenna { (-30.0, 5.0) } else { (-6.0, 14.0) };
                    let dbmv = self.dice.between(low, high);
                    self.reading(&tag, None, ReadingKind::Level { mhz, dbmv });
                }
            }
        }
        let parts: Vec<_> = self.house.survey.parts.values().cloned().collect();
        for part in parts {
            let Some(tag) = part.tag.clone() else { continue };
            let has = |device| part.plugged.as_ref().is_some_and(|plugged| plugged.contains(&device));
            let dbmv = self.dice.between(-22.0, 14.0);
            let mhz = self.dice.pick(&[93.0, 303.0, 603.0, 855.0]);
            match part.kind {
                PartKind::Outlet => {
                    let share = if has(Plugged::Tv) || has(Plugged::Modem) { 0.3 } else { 0.04 };
                    if self.dice.chance(share) {
                        self.reading(&tag, None, ReadingKind::Level { mhz, dbmv });
                        if self.dice.chance(0.3) {
                            let db = self.dice.between(24.0, 42.0);
                            self.reading(&tag, None, ReadingKind::ErrorRatio { mhz, db });
                        }
                    }
                    if has(Plugged::Modem) && self.dice.chance(0.3) {
                        let dbmv = self.dice.between(30.0, 54.0);
                        self.reading(&tag, None, ReadingKind::ModemSends { dbmv });
                    }
                }
                PartKind::GroundBlock if self.dice.chance(0.12) => {
                    self.reading(&tag, None, ReadingKind::Level { mhz, dbmv });
                }
                PartKind::Splitter | PartKind::Amplifier if self.dice.chance(0.06) => {
                    let port =
                        Some(1 + u8::try_from(self.dice.below(usize::from(part.outputs()))).expect("few"));
                    self.reading(&tag, port, ReadingKind::Level { mhz, dbmv });
                }
                _ => {}
            }
        }
    }

    fn frequencies(&mut self, kind: EntryKind) -> Vec<f64> {
        let all: &[&[f64]] = match kind {
            EntryKind::Antenna => &[&[177.0, 603.0], &[603.0]],
            EntryKind::Satellite => &[&[1200.0, 2000.0]],
            _ => &[&[57.0, 603.0, 999.0], &[93.0, 855.0], &[603.0]],
        };
        self.dice.pick(all).to_vec()
    }

    fn reading(&mut self, tag: &str, port: Option<u8>, measured: ReadingKind) {
        self.build(|mut house| {
            let (id, about) = (house.fresh(), house.id_of(tag));
            insert(&mut house.survey, id, about, port, measured);
            house
        });
    }
}

fn insert(
    survey: &mut house::record::Survey,
    id: SubjectId,
    about: SubjectId,
    port: Option<u8>,
    measured: ReadingKind,
) {
    survey.readings.insert(id, Reading { id, about: Some(about), port, measured, how: None });
}
