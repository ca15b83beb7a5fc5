//! The figures that a label may state, by name.

/// A figure that a label may state, and that can be corrected.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum LabelFigure {
    /// How many outputs.
    Legs,
    /// The loss to every output.
    LegLoss,
    /// The loss to one output, where they differ.
    LegLossOf(u8),
    /// Where the band begins.
    Low,
    /// Where it ends.
    High,
    /// Where the band begins that is kept out.
    StopLow,
    /// Where that ends.
    StopHigh,
    /// The loss to a tap's port.
    TapLoss,
    /// What an amplifier gains.
    Gain,
    /// Where the way back ends.
    ReturnHigh,
}

/// The names of those that have one of their own.
const NAMES: [(LabelFigure, &str); 9] = [
    (LabelFigure::Legs, "legs"),
    (LabelFigure::LegLoss, "leg-loss"),
    (LabelFigure::Low, "low"),
    (LabelFigure::High, "high"),
    (LabelFigure::StopLow, "stop-low"),
    (LabelFigure::StopHigh, "stop-high"),
    (LabelFigure::TapLoss, "tap-loss"),
    (LabelFigure::Gain, "gain"),
    (LabelFigure::ReturnHigh, "return-high"),
];

/// How the name begins of a loss to one output; its number follows.
const LEG_LOSS_OF: &str = "leg-loss-";

impl LabelFigure {
    /// Its name in keys; for one output with its number.
    pub(crate) fn name(self) -> String {
        if let Self::LegLossOf(leg) = self {
            return format!("{LEG_LOSS_OF}{leg}");
        }
        NAMES.iter().find(|(figure, _)| *figure == self).map_or("", |(_, name)| name).to_owned()
    }

    /// The figure of a name.
    pub(crate) fn named(name: &str) -> Option<Self> {
        if let Some(leg) = name.strip_prefix(LEG_LOSS_OF) {
            return leg.parse().ok().map(Self::LegLossOf);
        }
        NAMES.iter().find(|(_, of)| *of == name).map(|(figure, _)| *figure)
    }
}

impl super::choice::Choice for LabelFigure {
    fn key(&self) -> String {
        self.name()
    }

    fn of(key: &str) -> Option<Self> {
        Self::named(key)
    }
}

/// A figure that was taken as it was read in a photo: it stays so, whatever is read after that.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct TakenFigure {
    /// Which.
    pub(crate) figure: LabelFigure,
    /// What it said.
    pub(crate) value: f64,
}

impl super::choice::Choice for TakenFigure {
    fn key(&self) -> String {
        format!("{}={}", self.figure.name(), self.value)
    }

    fn of(key: &str) -> Option<Self> {
        let (figure, value) = key.split_once('=')?;
        let value = value.parse().ok().filter(|value: &f64| value.is_finite())?;
        Some(Self { figure: LabelFigure::named(figure)?, value })
    }
}
