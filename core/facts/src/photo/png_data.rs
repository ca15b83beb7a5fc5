//! The pixel data of a PNG: where they end (W3C PNG third edition, 7, 8 and 10).
//!
//! All IDAT chunks together hold one zlib stream (RFC 1950). Decoders stop at its end, or once all pixels are there, so
//! whatever follows could hide anything: what lies behind the stream is cut, and a stream of more than the pixels is
//! refused.

use flate2::{Decompress, FlushDecompress, Status};

use crate::error::PictureFault;

/// How much is inflated at once, in bytes.
const CHUNK_BYTES: usize = 64 * 1024;

/// The passes of an interlaced picture (8.1): first column and row, steps between columns and rows.
const PASSES: [(u64, u64, u64, u64); 7] =
    [(0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2)];

/// What the header says of the data (11.2.1).
#[derive(Debug, Clone, Copy)]
pub(super) struct Layout {
    pub width: u32,
    pub height: u32,
    pub depth: u8,
    pub colour: u8,
    pub interlace: u8,
}

impl Layout {
    /// How many bytes the pixels are, filter bytes included; nothing if no picture is laid out so.
    fn bytes(self) -> Option<u64> {
        let channels = match (self.colour, self.depth) {
            (0, 1 | 2 | 4 | 8 | 16) | (3, 1 | 2 | 4 | 8) => 1,
            (2, 8 | 16) => 3,
            (4, 8 | 16) => 2,
            (6, 8 | 16) => 4,
            _ => return None,
        };
        let bits = channels * u64::from(self.depth);
        let area = |columns: u64, rows: u64| {
            if columns == 0 { 0 } else { rows * (1 + (columns * bits).div_ceil(8)) }
        };
        let (width, height) = (u64::from(self.width), u64::from(self.height));
        let pass = |&(column, row, across, down): &(u64, u64, u64, u64)| {
            area(width.saturating_sub(column).div_ceil(across), height.saturating_sub(row).div_ceil(down))
        };
        match self.interlace {
            0 => Some(area(width, height)),
            1 => Some(PASSES.iter().map(pass).sum()),
            _ => None,
        }
    }
}

/// How many bytes of the data, counted over all chunks, the stream takes. All of them if it has no end; whether its
/// pixels can be read all the same, decoding shows.
pub(super) fn end_of_stream<'a>(
    layout: Layout,
    data: impl Iterator<Item = &'a [u8]>,
) -> Result<u64, PictureFault> {
    let expected = layout.bytes().ok_or(PictureFault::damaged("a header that no picture has"))?;
    let mut stream = Decompress::new(true);
    let mut out = vec![0; CHUNK_BYTES];
    for mut rest in data {
        loop {
            let (read, written) = (stream.total_in(), stream.total_out());
            let status = stream
                .decompress(rest, &mut out, FlushDecompress::None)
                .map_err(|_| PictureFault::damaged("its pixels cannot be read"))?;
            let taken = usize::try_from(stream.total_in() - read).unwrap_or(usize::MAX);
            rest = rest.get(taken..).unwrap_or_default();
            if stream.total_out() > expected {
                return Err(PictureFault::damaged("more data than pixels"));
            }
            if status == Status::StreamEnd {
                return Ok(stream.total_in());
            }
            // It wants the next chunk.
            if taken == 0 && stream.total_out() == written {
                break;
            }
        }
    }
    Ok(u64::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn layout(width: u32, height: u32, depth: u8, colour: u8, interlace: u8) -> Layout {
        Layout { width, height, depth, colour, interlace }
    }

    #[test]
    fn bytes_of_pixels() {
        // Counted by hand: a filter byte a row, rows filled up to whole bytes.
        assert_eq!(layout(3, 2, 8, 2, 0).bytes(), Some(2 * (1 + 9)));
        assert_eq!(layout(9, 1, 1, 3, 0).bytes(), Some(1 + 2));
        assert_eq!(layout(1, 1, 16, 6, 0).bytes(), Some(1 + 8));
        // 8 by 8 grey, interlaced: 1 + 1 + 2 + 4 + 8 + 16 + 32 pixels in 1, 1, 1, 2, 2, 4 and 4 rows.
        assert_eq!(layout(8, 8, 8, 0, 1).bytes(), Some(64 + 15));
        // One pixel stands in the first pass alone.
        assert_eq!(layout(1, 1, 8, 0, 1).bytes(), Some(2));
        for wrong in
            [layout(1, 1, 3, 0, 0), layout(1, 1, 4, 2, 0), layout(1, 1, 8, 5, 0), layout(1, 1, 8, 0, 2)]
        {
            assert_eq!(wrong.bytes(), None, "{wrong:?}");
        }
    }
}
