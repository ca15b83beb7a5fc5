//! The words of the trade that labels use, in English and lightly in other languages.

use std::collections::HashMap;
use std::sync::LazyLock;

use super::kind::CableSeries;

/// What a word means on a label.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Term {
    // Kinds of part.
    Splitter,
    Tap,
    Coupler,
    Amplifier,
    Filter,
    LowPass,
    HighPass,
    GroundBlock,
    Attenuator,
    Terminator,
    WallPlate,
    Diplexer,
    Combiner,
    Barrel,
    Inserter,
    PowerInserter,
    DcBlock,
    Cable,
    Series(CableSeries),
    SeriesWord,
    Jacket,
    // Ports and counts.
    Way,
    Input,
    Output,
    OutputUnclear,
    Outputs,
    Port,
    Leg,
    Through,
    Count(u8),
    By,
    All,
    Each,
    // Figures.
    Loss,
    Insertion,
    Isolation,
    ReturnLoss,
    Gain,
    ReturnGain,
    Rejection,
    Attenuation,
    Unmeasured,
    Apart,
    Unitless,
    Shielding,
    Typical,
    Guaranteed,
    // Bands and paths.
    Pass,
    Stop,
    Band,
    Forward,
    Return,
    Path,
    Satellite,
    Terrestrial,
    Frequency,
    Split,
    Network,
    // Power and use.
    DirectCurrent,
    Power,
    Block,
    Blocked,
    Bypass,
    Passive,
    Indoor,
    Only,
    Use,
    IndoorOnly,
    PassivePort,
    NetworkBypass,
    // Small words.
    No,
    To,
    At,
    Of,
    Point,
    Entry,
    Low,
    High,
    Ground,
    Wall,
    Plate,
    CodeAhead,
    Plain,
}

#[rustfmt::skip]
const WORDS: &[(&str, Term)] = &[
    ("splitter", Term::Splitter), ("splitters", Term::Splitter), ("divider", Term::Splitter), ("split", Term::Split),
    ("verteiler", Term::Splitter), ("répartiteur", Term::Splitter), ("repartiteur", Term::Splitter),
    ("repartidor", Term::Splitter), ("partitore", Term::Splitter), ("splitteur", Term::Splitter),
    ("tap", Term::Tap), ("taps", Term::Tap), ("abzweiger", Term::Tap), ("dérivateur", Term::Tap),
    ("derivador", Term::Tap), ("derivatore", Term::Tap),
    ("coupler", Term::Coupler), ("coupling", Term::Coupler), ("directional", Term::Plain),
    ("amplifier", Term::Amplifier), ("amplified", Term::Amplifier), ("amp", Term::Amplifier),
    ("preamp", Term::Amplifier), ("booster", Term::Amplifier), ("verstärker", Term::Amplifier), ("verstaerker", Term::Amplifier),
    ("amplificateur", Term::Amplifier), ("amplificador", Term::Amplifier), ("amplificatore", Term::Amplifier),
    ("filter", Term::Filter), ("filters", Term::Filter), ("filtre", Term::Filter), ("filtro", Term::Filter),
    ("moca", Term::Network), ("poe", Term::Entry), ("entry", Term::Entry), ("point", Term::Point),
    ("lpf", Term::LowPass), ("lowpass", Term::LowPass), ("tiefpass", Term::LowPass),
    ("hpf", Term::HighPass), ("highpass", Term::HighPass), ("hochpass", Term::HighPass),
    ("low", Term::Low), ("high", Term::High), ("pass", Term::Pass), ("passes", Term::Pass),
    ("passing", Term::Pass), ("passband", Term::Pass), ("bandpass", Term::Pass),
    ("stop", Term::Stop), ("stops", Term::Stop), ("stopband", Term::Stop), ("notch", Term::Stop),
    ("blocks", Term::Stop), ("band", Term::Band), ("bandwidth", Term::Frequency),
    ("rejection", Term::Rejection), ("reject", Term::Rejection), ("rejects", Term::Rejection),
    ("rej", Term::Rejection), ("attenuation", Term::Attenuation), ("dämpfung", Term::Attenuation),
    ("atten", Term::Attenuation), ("affaiblissement", Term::Attenuation), ("att", Term::Attenuation),
    ("attenuator", Term::Attenuator), ("pad", Term::Attenuator), ("dämpfungsglied", Term::Attenuator),
    ("atténuateur", Term::Attenuator), ("atenuador", Term::Attenuator),
    ("block", Term::Block), ("blocker", Term::Block),
    ("blocked", Term::Blocked), ("blocking", Term::Blocked), ("isolated", Term::Blocked),
    ("ground", Term::Ground), ("grounding", Term::Ground), ("earth", Term::Ground), ("earthing", Term::Ground),
    ("groundblock", Term::GroundBlock), ("erdungsblock", Term::GroundBlock),
    ("terminator", Term::Terminator), ("termination", Term::Terminator), ("terminators", Term::Terminator),
    ("abschlusswiderstand", Term::Terminator), ("endwiderstand", Term::Terminator),
    ("cap", Term::Terminator), ("inserter", Term::Inserter), ("injector", Term::Inserter),
    ("wall", Term::Wall), ("plate", Term::Plate), ("wallplate", Term::WallPlate),
    ("antennendose", Term::WallPlate), ("outlet", Term::WallPlate),
    ("diplexer", Term::Diplexer), ("diplexor", Term::Diplexer), ("combiner", Term::Combiner),
    ("barrel", Term::Barrel), ("splice", Term::Barrel),
    ("cable", Term::Cable), ("series", Term::SeriesWord),
    ("rg59", Term::Series(CableSeries::Series59)), ("rg6", Term::Series(CableSeries::Series6)),
    ("rg7", Term::Series(CableSeries::Series7)), ("rg11", Term::Series(CableSeries::Series11)),
    ("rg59u", Term::Series(CableSeries::Series59)), ("rg6u", Term::Series(CableSeries::Series6)),
    ("rg11u", Term::Series(CableSeries::Series11)), ("rg", Term::Jacket),
    ("catvr", Term::Jacket), ("catvp", Term::Jacket), ("cl2", Term::Jacket), ("jacket", Term::Jacket),
    ("way", Term::Way), ("ways", Term::Way), ("fach", Term::Way), ("voies", Term::Way), ("vías", Term::Way),
    ("vias", Term::Way), ("vie", Term::Way), ("wege", Term::Way),
    ("in", Term::Input), ("input", Term::Input), ("eingang", Term::Input), ("entrée", Term::Input),
    ("out", Term::Output), ("output", Term::Output), ("ausgang", Term::Output), ("sortie", Term::Output),
    ("outl", Term::OutputUnclear), ("outi", Term::OutputUnclear),
    ("outs", Term::Outputs), ("outputs", Term::Outputs), ("ausgänge", Term::Outputs), ("sorties", Term::Outputs),
    ("salidas", Term::Outputs), ("uscite", Term::Outputs),
    ("port", Term::Port), ("ports", Term::Port), ("leg", Term::Leg), ("legs", Term::Leg),
    ("thru", Term::Through), ("through", Term::Through), ("one", Term::Count(1)), ("single", Term::Count(1)),
    ("two", Term::Count(2)), ("three", Term::Count(3)), ("four", Term::Count(4)), ("five", Term::Count(5)),
    ("six", Term::Count(6)), ("eight", Term::Count(8)), ("all", Term::All), ("alle", Term::All),
    ("each", Term::Each), ("per", Term::Each),
    ("loss", Term::Loss), ("losses", Term::Loss), ("perte", Term::Loss), ("pertes", Term::Loss), ("pérdida", Term::Loss),
    ("perdida", Term::Loss), ("perdita", Term::Loss), ("aislamiento", Term::Isolation), ("isolamento", Term::Isolation),
    ("verteildaempfung", Term::Loss), ("durchgangsdaempfung", Term::Loss), ("einfuegedaempfung", Term::Loss),
    ("rueckflussdaempfung", Term::ReturnLoss), ("daempfung", Term::Attenuation), ("abzweigdaempfung", Term::Tap),
    ("auskoppeldaempfung", Term::Tap), ("verstaerkung", Term::Gain),
    ("verteildämpfung", Term::Loss),
    ("durchgangsdämpfung", Term::Loss), ("einfügedämpfung", Term::Loss), ("il", Term::Loss),
    ("insertion", Term::Insertion), ("ins", Term::Insertion),
    ("iso", Term::Isolation), ("isol", Term::Isolation), ("isolation", Term::Isolation),
    ("entkopplung", Term::Isolation), ("rl", Term::ReturnLoss), ("rückflussdämpfung", Term::ReturnLoss),
    ("gain", Term::Gain), ("verstärkung", Term::Gain), ("ganancia", Term::Gain), ("guadagno", Term::Gain),
    ("abzweigdämpfung", Term::Tap), ("auskoppeldämpfung", Term::Tap),
    ("shielding", Term::Shielding), ("shield", Term::Shielding), ("shielded", Term::Shielding),
    ("screening", Term::Shielding), ("screened", Term::Shielding), ("emi", Term::Shielding),
    ("rfi", Term::Shielding), ("se", Term::Shielding), ("schirmung", Term::Shielding),
    ("schirmungsmaß", Term::Shielding), ("schirmungsmass", Term::Shielding), ("schirmdämpfung", Term::Shielding),
    ("blindage", Term::Shielding), ("noise", Term::Unmeasured), ("nf", Term::Unmeasured),
    ("flatness", Term::Unmeasured), ("ripple", Term::Unmeasured), ("tilt", Term::Unmeasured),
    ("slope", Term::Unmeasured), ("crosspol", Term::Apart), ("vswr", Term::Unitless), ("docsis", Term::Unitless),
    ("version", Term::Unitless), ("ver", Term::Unitless),
    ("surge", Term::Plain), ("cmrr", Term::Apart), ("directivity", Term::Apart),
    ("typ", Term::Typical), ("typical", Term::Typical), ("nom", Term::Typical), ("nominal", Term::Typical),
    ("max", Term::Guaranteed), ("maximum", Term::Guaranteed), ("min", Term::Guaranteed),
    ("minimum", Term::Guaranteed),
    ("forward", Term::Forward), ("fwd", Term::Forward), ("downstream", Term::Forward), ("down", Term::Forward),
    ("return", Term::Return), ("ret", Term::Return), ("reverse", Term::Return), ("rev", Term::Return),
    ("upstream", Term::Return), ("up", Term::Plain), ("path", Term::Path), ("rückweg", Term::Return),
    ("rueckweg", Term::Return), ("rückkanal", Term::Return), ("rueckkanal", Term::Return), ("retour", Term::Return),
    ("retorno", Term::Return), ("ritorno", Term::Return), ("vorwärtsweg", Term::Forward), ("vorwaertsweg", Term::Forward),
    ("durchlassbereich", Term::Pass), ("sperrbereich", Term::Stop),
    ("sat", Term::Satellite), ("satellite", Term::Satellite), ("lnb", Term::Satellite),
    ("ant", Term::Terrestrial), ("antenna", Term::Terrestrial), ("terr", Term::Terrestrial),
    ("vhf", Term::Terrestrial), ("uhf", Term::Terrestrial), ("freq", Term::Frequency),
    ("frequency", Term::Frequency), ("fréquence", Term::Frequency), ("frequenz", Term::Frequency),
    ("frequenzbereich", Term::Frequency), ("range", Term::Frequency),
    ("dc", Term::DirectCurrent), ("power", Term::Power), ("pwr", Term::Power), ("ac", Term::Power),
    ("fernspeisung", Term::Power), ("bypass", Term::Bypass), ("passive", Term::Passive),
    ("unamplified", Term::Passive), ("voip", Term::Plain), ("modem", Term::Plain),
    ("indoor", Term::Indoor), ("only", Term::Only), ("use", Term::Use),
    ("no", Term::No), ("not", Term::No), ("non", Term::No), ("without", Term::No), ("none", Term::No),
    ("to", Term::To), ("bis", Term::To), ("à", Term::To), ("hasta", Term::To), ("at", Term::At), ("of", Term::Of),
    ("de", Term::Of), ("di", Term::Of),
    ("model", Term::CodeAhead), ("serial", Term::CodeAhead), ("sn", Term::CodeAhead), ("pn", Term::CodeAhead),
    ("lot", Term::CodeAhead), ("part", Term::CodeAhead), ("patent", Term::CodeAhead), ("pat", Term::CodeAhead),
    ("batch", Term::CodeAhead), ("item", Term::CodeAhead), ("fcc", Term::CodeAhead), ("date", Term::CodeAhead),
    ("tv", Term::Plain), ("catv", Term::Plain), ("rf", Term::Plain), ("fm", Term::Plain),
    ("coax", Term::Plain), ("coaxial", Term::Plain), ("digital", Term::Plain), ("hd", Term::Plain),
    ("balanced", Term::Plain), ("unbalanced", Term::Plain),
];

/// Runs of words, in which dashes do not count, that mean one thing. A longer run stands first.
#[rustfmt::skip]
pub(super) const PHRASES: &[(&[Term], Term)] = &[
    (&[Term::Point, Term::Of, Term::Entry], Term::Entry),
    (&[Term::Indoor, Term::Use, Term::Only], Term::IndoorOnly),
    (&[Term::Output, Term::To, Term::Output], Term::Isolation),
    (&[Term::Port, Term::To, Term::Port], Term::Isolation),
    (&[Term::Input, Term::To, Term::Output], Term::Loss),
    (&[Term::Input, Term::To, Term::Tap], Term::Tap),
    (&[Term::Low, Term::Pass], Term::LowPass), (&[Term::High, Term::Pass], Term::HighPass),
    (&[Term::Band, Term::Pass], Term::Pass), (&[Term::Pass, Term::Band], Term::Pass),
    (&[Term::Stop, Term::Band], Term::Stop), (&[Term::Band, Term::Stop], Term::Stop),
    (&[Term::Rejection, Term::Band], Term::Stop),
    (&[Term::Ground, Term::Block], Term::GroundBlock), (&[Term::Wall, Term::Plate], Term::WallPlate),
    (&[Term::Indoor, Term::Only], Term::IndoorOnly),
    (&[Term::Return, Term::Path, Term::Gain], Term::ReturnGain), (&[Term::Return, Term::Gain], Term::ReturnGain),
    (&[Term::Loss, Term::Of, Term::Return], Term::ReturnLoss),
    (&[Term::Attenuation, Term::Of, Term::Return], Term::ReturnLoss), (&[Term::Loss, Term::Of, Term::Insertion], Term::Loss),
    (&[Term::Power, Term::Inserter], Term::PowerInserter), (&[Term::Return, Term::Loss], Term::ReturnLoss), (&[Term::Return, Term::Path], Term::Return),
    (&[Term::Forward, Term::Path], Term::Forward),
    (&[Term::Insertion, Term::Loss], Term::Loss), (&[Term::Tap, Term::Loss], Term::Tap),
    (&[Term::Tap, Term::Attenuation], Term::Tap), (&[Term::Coupler, Term::Loss], Term::Coupler),
    (&[Term::Through, Term::Loss], Term::Through), 
    (&[Term::Tap, Term::To, Term::Output], Term::Isolation), (&[Term::Input, Term::Tap], Term::Tap),
    (&[Term::Output, Term::Loss], Term::Loss), (&[Term::Input, Term::Output], Term::Loss),
    (&[Term::Passive, Term::Port], Term::PassivePort), (&[Term::Passive, Term::Output], Term::PassivePort),
    (&[Term::Network, Term::Bypass], Term::NetworkBypass), (&[Term::Network, Term::Pass], Term::NetworkBypass),
    (&[Term::Wall, Term::WallPlate], Term::WallPlate),
];

static MEANINGS: LazyLock<HashMap<&str, Term>> = LazyLock::new(|| words().collect());

/// The meaning of a word in small letters.
pub(super) fn term(word: &str) -> Option<Term> {
    MEANINGS.get(word).copied()
}

/// The meaning of a word some of whose letters were read as the digits they look like.
pub(super) fn term_misread(word: &str) -> Option<Term> {
    let letters = word.chars().filter(|ch| ch.is_alphabetic()).count();
    if letters < 2 || !word.chars().any(|ch| ch.is_ascii_digit()) {
        return None;
    }
    ['i', 'l'].into_iter().find_map(|one| {
        let spelled: String = word
            .chars()
            .map(|ch| match ch {
                '0' => 'o',
                '1' => one,
                '5' => 's',
                '8' => 'b',
                _ => ch,
            })
            .collect();
        term(&spelled)
    })
}

/// Every known word with its meaning.
pub(super) fn words() -> impl Iterator<Item = (&'static str, Term)> {
    WORDS.iter().copied()
}
