//! Why a reading may be wrong, or why something on the label was left unread.

use phrase::Phrase;

use super::kind::PartKind;

/// Which figure in decibels a doubt is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// Loss from the input to an output.
    Loss,
    /// Loss from the input to a tap output.
    Tap,
    /// Gain of an amplifier, forward.
    Gain,
    /// Gain of an amplifier, return path.
    ReturnGain,
    /// Loss in a filter's stop band.
    Rejection,
    /// Isolation between outputs.
    Isolation,
    /// Return loss.
    ReturnLoss,
}

impl Quantity {
    /// The name by which the sentences choose their words.
    const fn name(self) -> &'static str {
        match self {
            Self::Loss => "loss",
            Self::Tap => "tap",
            Self::Gain => "gain",
            Self::ReturnGain => "return-gain",
            Self::Rejection => "rejection",
            Self::Isolation => "isolation",
            Self::ReturnLoss => "return-loss",
        }
    }
}

/// A doubt about a label's reading. `written` is the label's own text; numbers are as read.
#[derive(Debug, Clone, PartialEq)]
pub enum Doubt {
    /// The text is longer than is read; the rest was left out.
    Truncated {
        /// How many bytes were read.
        bytes: usize,
    },
    /// Nothing was recognised.
    NothingRead,
    /// Letters stand where digits belong and were read as the digits they look like.
    LettersForDigits {
        /// As written.
        written: String,
        /// As read.
        read: String,
    },
    /// A unit is misspelled in a way that reading machines and worn print produce.
    UnitMisread {
        /// As written.
        written: String,
        /// The unit it was read as.
        read: &'static str,
    },
    /// A figure stands there but cannot be read; left out.
    Unreadable {
        /// As written.
        written: String,
    },
    /// A dot or comma may part thousands or decimals; the reading that makes a usual edge was taken.
    Thousands {
        /// As written.
        written: String,
        /// As read, in megahertz.
        read: f64,
    },
    /// A range without a unit was read as a band in megahertz.
    BandWithoutUnit {
        /// As written.
        written: String,
    },
    /// The unit stands only after the upper edge; the lower edge was read as megahertz.
    BandUnitsMixed {
        /// As written.
        written: String,
        /// Lower edge as read, in megahertz.
        low: f64,
    },
    /// A band that runs backwards; left out.
    BandBackwards {
        /// As written.
        written: String,
        /// What stands first, in megahertz.
        from: f64,
        /// What stands behind it, in megahertz; no larger.
        to: f64,
    },
    /// An edge that parts are not usually made for.
    EdgeUnusual {
        /// The edge, in megahertz.
        edge: f64,
    },
    /// Two bands and no word that says which is the rated one; left out.
    BandsUnclear {
        /// First as written.
        first: String,
        /// Second as written.
        second: String,
    },
    /// Bands that adjoin or overlap were read as one.
    BandsJoined {
        /// First as written.
        first: String,
        /// Second as written.
        second: String,
    },
    /// Two bands on an amplifier without words: the lower was read as the return band.
    PathsAssumed {
        /// The band read as the return band.
        lower: String,
        /// The band read as the forward band.
        upper: String,
    },
    /// One frequency alone was read as the upper edge.
    UpperEdgeAlone {
        /// As written.
        written: String,
    },
    /// One frequency alone was read as the lower edge.
    LowerEdgeAlone {
        /// As written.
        written: String,
    },
    /// A frequency that is not an edge of a band; left out.
    FrequencyUnplaced {
        /// As written.
        written: String,
    },
    /// A loss that does not fit that many legs.
    LossUnusual {
        /// Number of legs.
        legs: u8,
        /// The loss, in decibels.
        loss: f64,
    },
    /// A figure without a unit was read as decibels.
    DecibelsWithoutUnit {
        /// As written.
        written: String,
    },
    /// The number of legs and the number of losses disagree; the losses were left out.
    LegsDisagree {
        /// Legs stated.
        legs: u8,
        /// The losses as read.
        losses: String,
    },
    /// One loss, and no word on how many legs have it.
    LegsNotStated {
        /// The loss, in decibels.
        loss: f64,
    },
    /// Two losses for three legs: the larger was read as that of two legs.
    UnbalancedAssumed {
        /// The losses as read.
        losses: String,
    },
    /// The outputs are numbered in a way that leaves some without a loss; left out.
    OutputsIncomplete,
    /// A count of ports was read as a count of outputs.
    PortsAsOutputs {
        /// As written.
        written: String,
    },
    /// Two different counts of outputs; left out.
    LegCountsDiffer {
        /// First count.
        first: u8,
        /// Second count.
        second: u8,
    },
    /// Losses are stated band by band; those of the lowest band were taken.
    LossByBand {
        /// The band whose losses were taken, as written.
        taken: String,
    },
    /// A range of decibels where one figure is looked for; left out.
    DecibelRange {
        /// As written.
        written: String,
    },
    /// Two different figures for one thing; left out.
    TwoFigures {
        /// What they are for.
        what: Quantity,
        /// First figure, in decibels.
        first: f64,
        /// Second figure, in decibels.
        second: f64,
    },
    /// A typical and a guaranteed figure: the guaranteed one was taken.
    GuaranteedTaken {
        /// What they are for.
        what: Quantity,
    },
    /// A figure outside what such parts have.
    FigureUnusual {
        /// What it is for.
        what: Quantity,
        /// The figure, in decibels.
        figure: f64,
    },
    /// A figure in decibels beside no word that says what it is; left out.
    FigureUnplaced {
        /// As written.
        written: String,
    },
    /// A figure was taken as this by its place or size, not by a word.
    FigureAssumed {
        /// What it was taken for.
        what: Quantity,
        /// As written.
        written: String,
    },
    /// The words name two kinds of part.
    KindUnclear {
        /// The kind that was taken.
        taken: PartKind,
        /// The other.
        other: PartKind,
    },
    /// No word names the kind; it was taken from the bands or figures.
    KindFromBands {
        /// The kind that was taken.
        taken: PartKind,
    },
    /// The label says both that power passes and that it does not; left out.
    PowerPassUnclear,
    /// A by-pass and, somewhere, the word for a port that is not amplified: it may be one, or the by-pass itself.
    PassiveUnclear,
}

impl Doubt {
    /// The phrase that says it.
    pub fn phrase(&self) -> Phrase {
        let (id, arguments) = self.message();
        arguments.into_iter().fold(Phrase::new(id), |phrase, (name, value)| phrase.text(name, value))
    }

    /// The message's id and its arguments.
    fn message(&self) -> (&'static str, Vec<(&'static str, String)>) {
        let written = |written: &String| vec![("written", written.clone())];
        match self {
            Self::Truncated { bytes } => ("label-doubt-truncated", vec![("bytes", bytes.to_string())]),
            Self::NothingRead => ("label-doubt-nothing-read", vec![]),
            Self::LettersForDigits { written, read } => {
                ("label-doubt-letters-for-digits", vec![("written", written.clone()), ("read", read.clone())])
            }
            Self::UnitMisread { written, read } => {
                ("label-doubt-unit-misread", vec![("written", written.clone()), ("read", (*read).to_owned())])
            }
            Self::Unreadable { written: w } => ("label-doubt-unreadable", written(w)),
            Self::Thousands { written, read } => {
                ("label-doubt-thousands", vec![("written", written.clone()), ("read", read.to_string())])
            }
            Self::BandWithoutUnit { written: w } => ("label-doubt-band-without-unit", written(w)),
            Self::BandUnitsMixed { written, low } => {
                ("label-doubt-band-units-mixed", vec![("written", written.clone()), ("low", low.to_string())])
            }
            Self::BandBackwards { written: w, .. } => ("label-doubt-band-backwards", written(w)),
            Self::EdgeUnusual { edge } => ("label-doubt-edge-unusual", vec![("edge", edge.to_string())]),
            Self::BandsUnclear { first, second } => ("label-doubt-bands-unclear", pair(first, second)),
            Self::BandsJoined { first, second } => ("label-doubt-bands-joined", pair(first, second)),
            Self::PathsAssumed { lower, upper } => {
                ("label-doubt-paths-assumed", vec![("lower", lower.clone()), ("upper", upper.clone())])
            }
            Self::UpperEdgeAlone { written: w } => ("label-doubt-upper-edge-alone", written(w)),
            Self::LowerEdgeAlone { written: w } => ("label-doubt-lower-edge-alone", written(w)),
            Self::FrequencyUnplaced { written: w } => ("label-doubt-frequency-unplaced", written(w)),
            Self::LossUnusual { legs, loss } => {
                ("label-doubt-loss-unusual", vec![("legs", legs.to_string()), ("loss", loss.to_string())])
            }
            Self::DecibelsWithoutUnit { written: w } => ("label-doubt-decibels-without-unit", written(w)),
            Self::LegsDisagree { legs, losses } => {
                ("label-doubt-legs-disagree", vec![("legs", legs.to_string()), ("losses", losses.clone())])
            }
            Self::LegsNotStated { loss } => ("label-doubt-legs-not-stated", vec![("loss", loss.to_string())]),
            Self::UnbalancedAssumed { losses } => {
                ("label-doubt-unbalanced-assumed", vec![("losses", losses.clone())])
            }
            Self::OutputsIncomplete => ("label-doubt-outputs-incomplete", vec![]),
            Self::PortsAsOutputs { written: w } => ("label-doubt-ports-as-outputs", written(w)),
            Self::LegCountsDiffer { first, second } => {
                ("label-doubt-leg-counts-differ", pair(&first.to_string(), &second.to_string()))
            }
            Self::LossByBand { taken } => ("label-doubt-loss-by-band", vec![("taken", taken.clone())]),
            Self::DecibelRange { written: w } => ("label-doubt-decibel-range", written(w)),
            Self::TwoFigures { what, first, second } => {
                let mut arguments = pair(&first.to_string(), &second.to_string());
                arguments.push(("what", what.name().to_owned()));
                ("label-doubt-two-figures", arguments)
            }
            Self::GuaranteedTaken { what } => {
                ("label-doubt-guaranteed-taken", vec![("what", what.name().to_owned())])
            }
            Self::FigureUnusual { what, figure } => (
                "label-doubt-figure-unusual",
                vec![("what", what.name().to_owned()), ("figure", figure.to_string())],
            ),
            Self::FigureUnplaced { written: w } => ("label-doubt-figure-unplaced", written(w)),
            Self::FigureAssumed { what, written } => (
                "label-doubt-figure-assumed",
                vec![("what", what.name().to_owned()), ("written", written.clone())],
            ),
            Self::KindUnclear { taken, other } => (
                "label-doubt-kind-unclear",
                vec![("taken", taken.name().to_owned()), ("other", other.name().to_owned())],
            ),
            Self::KindFromBands { taken } => {
                ("label-doubt-kind-from-bands", vec![("taken", taken.name().to_owned())])
            }
            Self::PowerPassUnclear => ("label-doubt-power-pass-unclear", vec![]),
            Self::PassiveUnclear => ("label-doubt-passive-unclear", vec![]),
        }
    }
}

/// The arguments `first` and `second`.
fn pair(first: &str, second: &str) -> Vec<(&'static str, String)> {
    vec![("first", first.to_owned()), ("second", second.to_owned())]
}
