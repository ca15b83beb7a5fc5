//! What a screen reader says of one thing on a screen, ready to hand to the platform.

/// What kind of thing it is. A shell maps it to its platform's role or trait.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum AloudRole {
    /// Words to read.
    #[default]
    Prose,
    /// A heading: the lead of a screen, and headings within it.
    Heading,
    /// Something that went wrong; said at once, whatever was being said.
    Alert,
    /// Something that was done; said when there is quiet.
    Status,
    /// A caution; one stop, all of it read together.
    Caution,
    /// Several answers of which one is chosen.
    ChooseOne,
    /// Several answers of which any are chosen.
    ChooseSeveral,
    /// One answer of those of which one is chosen.
    OneOf,
    /// One answer of those of which any are chosen.
    AnyOf,
    /// A place to write in.
    WriteHere,
    /// A place to write what is looked for.
    SearchHere,
    /// A place for a number.
    NumberHere,
    /// A place for photos.
    PhotosHere,
    /// A picture.
    Picture,
    /// Several things that belong together.
    Group,
    /// Something that is only read: a figure, a reading, a row.
    Fact,
    /// A row or a mark that leads on.
    LeadsOn,
    /// A row that is switched by a touch.
    Switch,
    /// A drawing.
    Drawing,
    /// How far something has come.
    Progress,
    /// Something to press.
    Press,
    /// Something to press that asks once more.
    PressAsks,
}

impl AloudRole {
    /// Whether something with this role answers to a touch or takes what is typed.
    pub const fn is_control(self) -> bool {
        match self {
            Self::ChooseOne
            | Self::ChooseSeveral
            | Self::OneOf
            | Self::AnyOf
            | Self::WriteHere
            | Self::SearchHere
            | Self::NumberHere
            | Self::PhotosHere
            | Self::LeadsOn
            | Self::Switch
            | Self::Press
            | Self::PressAsks => true,
            Self::Prose
            | Self::Heading
            | Self::Alert
            | Self::Status
            | Self::Caution
            | Self::Picture
            | Self::Group
            | Self::Fact
            | Self::Drawing
            | Self::Progress => false,
        }
    }
}

/// What a screen reader says of one thing. Whether it is picked, cannot be pressed, or destroys something is a state of
/// the thing itself, said by the platform in its own words.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default)]
pub struct Aloud {
    /// What kind of thing it is.
    pub role: AloudRole,
    /// What it is; never empty.
    pub label: String,
    /// What it says or holds now; may be empty.
    pub value: String,
    /// What comes of touching it, or how to fill it in; may be empty.
    pub hint: String,
}

impl Aloud {
    /// Something of this kind and name.
    pub(crate) fn new(role: AloudRole, label: impl Into<String>) -> Self {
        Self { role, label: label.into(), value: String::new(), hint: String::new() }
    }

    /// With what it says or holds.
    pub(crate) fn value(self, value: impl Into<String>) -> Self {
        Self { value: value.into(), ..self }
    }

    /// With what comes of it, or how it is filled in.
    pub(crate) fn hint(self, hint: impl Into<String>) -> Self {
        Self { hint: hint.into(), ..self }
    }
}
