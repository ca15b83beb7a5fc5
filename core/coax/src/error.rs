//! What can be wrong with what the physics is asked: one sentence each, for a person.

/// Why a network could not be built or solved.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CoaxError {
    /// A list of frequencies that is empty, too long, not finite, not positive or not rising.
    #[error("these frequencies cannot be used: {why}. Give 1 to 100000 rising frequencies above 0 MHz")]
    BadFrequency {
        /// What is wrong with them.
        why: String,
    },
    /// A number that no such part can have.
    #[error("{what} is {value} {unit}, but it must be {must}")]
    BadFigure {
        /// Which figure of which part.
        what: &'static str,
        /// The figure as given.
        value: f64,
        /// Its unit.
        unit: &'static str,
        /// What it would have to be.
        must: &'static str,
    },
    /// A list of figures of the wrong length.
    #[error("{what}: {given} given, {must} needed")]
    BadCount {
        /// What is counted.
        what: &'static str,
        /// How many there were.
        given: usize,
        /// How many there must be.
        must: &'static str,
    },
    /// A part that was never added.
    #[error("there is no part {part}: the network has {parts} parts, counted from 0")]
    NoSuchPart {
        /// The part asked for.
        part: usize,
        /// How many parts there are.
        parts: usize,
    },
    /// A port beyond a part's last one.
    #[error("part {part} has no port {port}: it has {ports} ports, counted from 0 (port 0 faces the street)")]
    NoSuchPort {
        /// The part.
        part: usize,
        /// The port asked for.
        port: usize,
        /// How many ports the part has.
        ports: usize,
    },
    /// Two things on one port.
    #[error("port {port} of part {part} is used twice: only one cable, end or outlet fits on a port")]
    PortUsedTwice {
        /// The part.
        part: usize,
        /// The port.
        port: usize,
    },
    /// A port of which nothing was said.
    #[error("nothing is said of port {port} of part {part}: join it, end it or call it an outlet")]
    PortLeftUndefined {
        /// The part.
        part: usize,
        /// The port.
        port: usize,
    },
    /// A way round in a circle.
    #[error("part {part} is reached by two ways: the wiring forms a loop. Cut one of the two runs")]
    Loop {
        /// A part on the loop.
        part: usize,
    },
    /// A part that hangs on nothing.
    #[error("part {part} is not connected to part {root}: solve it as a network of its own")]
    NotConnected {
        /// The part that was not reached.
        part: usize,
        /// Where the search began.
        root: usize,
    },
    /// A network nobody can look into.
    #[error("the network has no outlet: name at least one port as an outlet")]
    NoOutlet,
    /// An outlet of another network.
    #[error("there is no outlet {outlet}: the network has {outlets} outlets, counted from 0")]
    NoSuchOutlet {
        /// The outlet asked for.
        outlet: usize,
        /// How many outlets there are.
        outlets: usize,
    },
    /// An end whose reflection is no number.
    #[error("the reflection at port {port} of part {part} is not a finite number")]
    BadReflection {
        /// The part.
        part: usize,
        /// The port.
        port: usize,
    },
    /// Waves that never die away: the equations have no single answer.
    #[error(
        "at {megahertz} MHz the waves at part {part} never die away (a resonance without loss, or an amplifier \
         that howls): give the parts around it some loss"
    )]
    Resonance {
        /// The part at which it shows.
        part: usize,
        /// The frequency, in MHz.
        megahertz: f64,
    },
    /// More numbers than would fit in a phone's memory.
    #[error(
        "{values} complex values are too many to hold at once (at most {most}): ask for fewer frequencies or pairs"
    )]
    TooMuchAsked {
        /// How many values the answer would take.
        values: usize,
        /// How many are allowed.
        most: usize,
    },
}

/// `value` if it is finite and at least `least`.
pub(crate) fn at_least(
    what: &'static str,
    value: f64,
    least: f64,
    unit: &'static str,
    must: &'static str,
) -> Result<f64, CoaxError> {
    if value.is_finite() && value >= least {
        Ok(value)
    } else {
        Err(CoaxError::BadFigure { what, value, unit, must })
    }
}
