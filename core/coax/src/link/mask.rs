//! Channel masks as managed nodes report them: one bit for each 25 MHz.

use crate::link::error::LinkError;
use crate::quantity::Megahertz;

const STEP: f64 = 25.0;

/// Which frequency bit 0 of a mask stands for, and how many bits it has.
/// TR-181 Issue 2, type `MocaChannelMask` (Broadband Forum, `device2/tr-181-2-moca.xml`).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MaskGrid {
    /// 1.x: bit 0 is 800 MHz, bit 31 is 1575 MHz.
    V1,
    /// 2.x: bit 0 is 400 MHz, bit 63 is 1975 MHz.
    V2,
}

impl MaskGrid {
    const fn lowest(self) -> f64 {
        match self {
            Self::V1 => 800.0,
            Self::V2 => 400.0,
        }
    }

    const fn bits(self) -> u32 {
        match self {
            Self::V1 => 32,
            Self::V2 => 64,
        }
    }

    fn frequency(self, bit: u32) -> Megahertz {
        Megahertz(self.lowest() + STEP * f64::from(bit))
    }
}

/// The mask with a bit set for each frequency, or an error for one that has no bit.
pub fn mask_of_frequencies(grid: MaskGrid, frequencies: &[Megahertz]) -> Result<u64, LinkError> {
    frequencies.iter().try_fold(0, |mask, &frequency| {
        let bit = (0..grid.bits()).find(|&bit| (grid.frequency(bit) - frequency).value().abs() < 1e-6);
        let none = || LinkError::OffGrid {
            frequency,
            low: grid.frequency(0),
            high: grid.frequency(grid.bits() - 1),
        };
        Ok(mask | 1_u64 << bit.ok_or_else(none)?)
    })
}

/// The frequencies whose bits are set, lowest first. Bits that the grid does not have are left out.
pub fn frequencies_of_mask(grid: MaskGrid, mask: u64) -> Vec<Megahertz> {
    (0..grid.bits()).filter(|bit| mask >> bit & 1 == 1).map(|bit| grid.frequency(bit)).collect()
}
