//! The model: two networks and their letters, in a folder of its own beside the program.

use std::fmt::Write;
use std::fs::File;
use std::io::Read;
use std::path::Path;
use std::sync::Arc;

use facts::error::SystemFault;
use rten::{ModelOptions, ThreadPool};
use rten_tensor::prelude::*;
use rten_tensor::{NdTensor, Tensor};
use sha2::{Digest, Sha256};

use crate::error::PrintError;
use crate::network::Network;

/// What `core/print/model/make` wrote of the files it made: the sum of each and its name.
const SUMS: &str = include_str!("../model/sums");
/// The name by which a network asks for the weights beside it.
const BESIDE: &str = "w.data";
/// No file of a model is longer, in bytes.
const LONGEST: u64 = 16 * 1024 * 1024;

/// The files of a model.
const DETECT: &str = "detect.onnx";
const DETECT_WEIGHTS: &str = "detect.f16";
const RECOGNISE: &str = "recognise.onnx";
const RECOGNISE_WEIGHTS: &str = "recognise.f16";
const LETTERS: &str = "letters.txt";

/// What reads print. It is loaded once and then asked as often as one likes, from any thread.
pub struct Model {
    detect: Network,
    recognise: Network,
    /// What each class of the recognising network stands for; the first stands for nothing.
    letters: Vec<char>,
    threads: Arc<ThreadPool>,
}

impl std::fmt::Debug for Model {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.debug_struct("Model").finish_non_exhaustive()
    }
}

impl Model {
    /// Loads the model from its folder. Each file is checked by its sum; nothing else in the folder is looked at.
    ///
    /// # Errors
    /// [`PrintError::ModelMissing`], [`PrintError::ModelUnreadable`] or [`PrintError::ModelChanged`] of the first file that is
    /// not as it must be.
    pub fn load(folder: &Path) -> Result<Self, PrintError> {
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        Self::load_for(folder, cores.min(4))
    }

    /// Loads it to work on so many cores at once.
    ///
    /// # Errors
    /// As [`Model::load`].
    pub fn load_for(folder: &Path, cores: usize) -> Result<Self, PrintError> {
        Self::checked(folder, SUMS, cores)
    }

    fn checked(folder: &Path, sums: &str, cores: usize) -> Result<Self, PrintError> {
        let file = |name| checked_file(folder, name, sums);
        let threads = Arc::new(ThreadPool::with_num_threads(cores.max(1)));
        let letters = String::from_utf8(file(LETTERS)?).map_err(|_| PrintError::ModelFails)?;
        let network = |name, weights| {
            let mut options = options();
            options.external_data(BESIDE, widened(&file(weights)?));
            Network::load(&options, file(name)?, &threads).ok_or(PrintError::ModelFails)
        };
        Ok(Self {
            detect: network(DETECT, DETECT_WEIGHTS)?,
            recognise: network(RECOGNISE, RECOGNISE_WEIGHTS)?,
            letters: std::iter::once('\0')
                .chain(letters.lines().filter_map(|line| line.chars().next()))
                .chain([' '])
                .collect(),
            threads,
        })
    }

    /// For each place of a picture how likely it belongs to the middle of a line of text.
    pub(crate) fn detect(&self, picture: NdTensor<f32, 4>) -> Result<Vec<f32>, PrintError> {
        Ok(self.run(&self.detect, picture)?.to_vec())
    }

    /// For each step along a line how likely each letter is; the letters are in the order of [`Model::letters`].
    pub(crate) fn recognise(&self, line: NdTensor<f32, 4>) -> Result<Vec<f32>, PrintError> {
        Ok(self.run(&self.recognise, line)?.to_vec())
    }

    /// What each class stands for; the first for nothing.
    pub(crate) fn letters(&self) -> &[char] {
        &self.letters
    }

    fn run(&self, network: &Network, input: NdTensor<f32, 4>) -> Result<Tensor<f32>, PrintError> {
        network.run(&self.threads, input).ok_or(PrintError::ModelFails)
    }
}

/// What the two networks are made of, and nothing else: what is not named is not built in.
fn options() -> ModelOptions {
    ModelOptions::with_ops(rten::op_registry!(
        Add,
        AveragePool,
        BatchNormalization,
        Cast,
        Clip,
        Concat,
        Conv,
        ConvTranspose,
        Div,
        Erf,
        GlobalAveragePool,
        HardSigmoid,
        HardSwish,
        Identity,
        MatMul,
        MaxPool,
        Mul,
        Pow,
        ReduceMean,
        Relu,
        Reshape,
        Resize,
        Shape,
        Sigmoid,
        Slice,
        Softmax,
        Sqrt,
        Squeeze,
        Sub,
        Transpose,
        Unsqueeze
    ))
}

/// The bytes of a file whose sum is the one that is written down for it.
fn checked_file(folder: &Path, name: &'static str, sums: &str) -> Result<Vec<u8>, PrintError> {
    let unreadable = |error: &std::io::Error| match error.kind().into() {
        SystemFault::Missing => PrintError::ModelMissing { file: name },
        fault => PrintError::ModelUnreadable { file: name, fault },
    };
    let path = folder.join(name);
    // A pipe in its place would be waited for for ever.
    if !std::fs::metadata(&path).map_err(|error| unreadable(&error))?.is_file() {
        return Err(PrintError::ModelMissing { file: name });
    }
    let mut bytes = Vec::new();
    let file = File::open(&path).map_err(|error| unreadable(&error))?;
    file.take(LONGEST).read_to_end(&mut bytes).map_err(|error| unreadable(&error))?;
    let sum = sum_of(&bytes);
    let is_sound = sums.lines().any(|line| line.split_once("  ") == Some((sum.as_str(), name)));
    if is_sound { Ok(bytes) } else { Err(PrintError::ModelChanged { file: name }) }
}

/// SHA-256 in text, as `sha256sum` writes it.
fn sum_of(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().fold(String::new(), |mut text, byte| {
        // Writing to a String cannot fail.
        let _ = write!(text, "{byte:02x}");
        text
    })
}

/// Weights at half precision (IEEE 754 binary16) as the little-endian single precision that the networks ask for.
fn widened(halves: &[u8]) -> Vec<u8> {
    let (halves, _) = halves.as_chunks::<2>();
    halves.iter().flat_map(|half| widened_one(u16::from_le_bytes(*half)).to_le_bytes()).collect()
}

fn widened_one(half: u16) -> f32 {
    let half = u32::from(half);
    let (sign, exponent, rest) = ((half >> 15) << 31, (half >> 10) & 31, half & 1023);
    match exponent {
        0 => {
            let small = rest as f32 / 16_777_216.0;
            if sign == 0 { small } else { -small }
        }
        31 => f32::from_bits(sign | 0x7f80_0000 | (rest << 13)),
        _ => f32::from_bits(sign | ((exponent + 112) << 23) | (rest << 13)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_precision_widens_to_the_same_numbers() {
        // IEEE 754-2019, table 3.5: binary16 has 5 bits of exponent, biased by 15, and 10 of fraction.
        for (half, wide) in [
            (0x3C00, 1.0),
            (0xC000, -2.0),
            (0x7BFF, 65504.0),
            (0x0001, 5.960_464_5e-8),
            (0x3555, 0.333_251_95),
            (0, 0.0),
        ] {
            assert_eq!(widened_one(half).to_bits(), f32::to_bits(wide), "{half:04x}");
        }
        assert_eq!(widened_one(0x7C00).to_bits(), f32::INFINITY.to_bits());
        assert_eq!(widened(&[0x00, 0x3C, 0x00, 0xC0]), [0, 0, 128, 63, 0, 0, 0, 192]);
    }

    #[test]
    fn one_model_serves_all_threads() {
        const fn is_shared<T: Send + Sync>() {}
        is_shared::<Model>();
    }

    #[test]
    fn each_file_has_a_sum() {
        for name in [DETECT, DETECT_WEIGHTS, RECOGNISE, RECOGNISE_WEIGHTS, LETTERS] {
            let found = SUMS.lines().filter_map(|line| line.split_once("  ")).find(|(_, of)| *of == name);
            assert_eq!(found.map(|(sum, _)| sum.len()), Some(64), "{name}");
        }
    }

    /// A folder of files that are not the model, and the sums that they have.
    fn planted() -> (tempfile::TempDir, String) {
        let folder = tempfile::tempdir().unwrap();
        let mut sums = String::new();
        for name in [DETECT, DETECT_WEIGHTS, RECOGNISE, RECOGNISE_WEIGHTS, LETTERS] {
            std::fs::write(folder.path().join(name), format!("no model: {name}")).unwrap();
            writeln!(sums, "{}  {name}", sum_of(format!("no model: {name}").as_bytes())).unwrap();
        }
        (folder, sums)
    }

    #[test]
    fn what_is_missing_or_wrong_is_named() {
        let (folder, sums) = planted();
        assert_eq!(Model::load(folder.path()).unwrap_err(), PrintError::ModelChanged { file: LETTERS });
        // Sums that fit, and no model all the same.
        assert_eq!(Model::checked(folder.path(), &sums, 1).unwrap_err(), PrintError::ModelFails);
        std::fs::write(folder.path().join(DETECT_WEIGHTS), "changed").unwrap();
        let changed = PrintError::ModelChanged { file: DETECT_WEIGHTS };
        assert_eq!(Model::checked(folder.path(), &sums, 1).unwrap_err(), changed);
        std::fs::remove_file(folder.path().join(DETECT_WEIGHTS)).unwrap();
        let missing = PrintError::ModelMissing { file: DETECT_WEIGHTS };
        assert_eq!(Model::checked(folder.path(), &sums, 1).unwrap_err(), missing);
        std::fs::create_dir(folder.path().join(DETECT_WEIGHTS)).unwrap();
        assert_eq!(Model::checked(folder.path(), &sums, 1).unwrap_err(), missing);
        assert_eq!(
            Model::load(&folder.path().join("nowhere")).unwrap_err(),
            PrintError::ModelMissing { file: LETTERS }
        );
    }

    /// What the model says whose layers are taken out, and computed by this crate, is what the library says of the whole one.
    #[test]
    #[ignore = "needs both models: tests/rooms/print makes them"]
    fn taking_layers_out_changes_no_bit_of_what_is_said() {
        let folder = |name| std::path::PathBuf::from(std::env::var_os(name).expect(name));
        let whole = folder("LEGWORK_PRINT_WHOLE");
        let mut sums = String::new();
        for name in [DETECT, DETECT_WEIGHTS, RECOGNISE, RECOGNISE_WEIGHTS, LETTERS] {
            writeln!(sums, "{}  {name}", sum_of(&std::fs::read(whole.join(name)).unwrap())).unwrap();
        }
        let whole = Model::checked(&whole, &sums, 1).unwrap();
        let parted = Model::load_for(&folder("LEGWORK_PRINT_MODEL"), 1).unwrap();
        assert!(whole.detect.is_whole() && whole.recognise.is_whole());
        assert!(!parted.detect.is_whole() && !parted.recognise.is_whole());
        let picture = |height: usize, width: usize| {
            let mut state = 3_u32;
            NdTensor::<f32, 4>::from_simple_fn([1, 3, height, width], || {
                state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                f32::from(u16::try_from(state >> 16).unwrap()) / 16_384.0 - 2.0
            })
        };
        let bits = |said: Vec<f32>| said.into_iter().map(f32::to_bits).collect::<Vec<_>>();
        for (height, width) in [(96, 160), (64, 352)] {
            let of = |model: &Model| bits(model.detect(picture(height, width)).unwrap());
            assert_eq!(of(&parted), of(&whole), "lines of {width} x {height}");
        }
        for width in [32, 200] {
            let of = |model: &Model| bits(model.recognise(picture(48, width)).unwrap());
            assert_eq!(of(&parted), of(&whole), "letters of {width}");
        }
    }
}
