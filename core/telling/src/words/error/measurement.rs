//! Why a file of measured values cannot be read. These are said within a sentence: they begin small and end without a stop.

use coax::TouchstoneError;
use phrase::{Arg, Phrase};

use super::{InWords, count};

impl InWords for TouchstoneError {
    fn phrase(&self) -> Phrase {
        match self {
            Self::TooLarge { bytes: _, most: _ } | Self::TooManyValues { most: _ } => {
                Phrase::new("error-measured-too-large")
            }
            Self::TooManyPorts { ports, most } => {
                Phrase::new("error-measured-ports").with("ports", count(*ports)).with("most", count(*most))
            }
            Self::PortsUnclear => Phrase::new("error-measured-ports-unclear"),
            Self::NoData => Phrase::new("error-measured-no-data"),
            Self::BadOption { line, word } => at("error-measured-option", *line).text("word", word),
            Self::NotScattering { line, kind } => {
                at("error-measured-not-scattering", *line).text("kind", kind)
            }
            Self::BadKeyword { line, keyword } => {
                at("error-measured-keyword", *line).text("keyword", keyword)
            }
            Self::KeywordMissing { keyword } => {
                Phrase::new("error-measured-keyword-missing").text("keyword", *keyword)
            }
            Self::BadNumber { line, text } => at("error-measured-number", *line).text("text", text),
            Self::CutShort { line, given, needed, ports } => at("error-measured-cut-short", *line)
                .with("given", count(*given))
                .with("needed", count(*needed))
                .with("ports", count(*ports)),
            Self::NotRising { line, megahertz } => {
                at("error-measured-not-rising", *line).with("frequency", Arg::Frequency(*megahertz))
            }
            Self::WrongCount { announced, given } => Phrase::new("error-measured-count")
                .with("announced", count(*announced))
                .with("given", count(*given)),
            Self::BadReference { ports } => {
                Phrase::new("error-measured-reference").with("ports", count(*ports))
            }
            Self::NotConvertible { megahertz } => {
                Phrase::new("error-measured-not-convertible").with("frequency", Arg::Frequency(*megahertz))
            }
            Self::Part(_) => Phrase::new("error-measured-no-part"),
        }
    }
}

fn at(id: &str, line: usize) -> Phrase {
    Phrase::new(id).with("line", count(line))
}
