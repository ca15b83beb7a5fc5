//! What a screen would like of the device. A shell gives what it can, and leaves out the rest.

/// Something that a device may be able to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ability {
    /// A button for the torch.
    Torch,
    /// The screen stays awake.
    StayAwake,
    /// The camera.
    Camera,
    /// Text recognised in a photo.
    ReadPrint,
    /// Handing a file to another program.
    Share,
    /// Choosing a file that somebody sent.
    ChooseFile,
}
