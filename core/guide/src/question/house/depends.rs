//! What must not be cut off without being asked about.

use ::house::record::Asked;
use advice::finding::Caution;
use phrase::{Arg, Phrase};

use crate::place::{Key, replies};
use crate::question::answer::{Answer, Told, not_answered};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

replies! {
    /// What may hang on the modem or an amplifier.
    Dependent {
        /// A telephone.
        Phone = Phone,
        /// An alarm.
        Alarm = Alarm,
        /// A medical device.
        Medical = Medical,
        /// Nothing does.
        Nothing = Nothing,
        /// Somebody asked and could not tell.
        Unsure = Unsure,
    }
}

/// What must not be cut off, by name, or one of the two answers without a name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::question) struct DependsAnswer(Vec<Dependent>);

impl Dependent {
    fn is_named(self) -> bool {
        !matches!(self, Self::Nothing | Self::Unsure)
    }
}

impl DependsAnswer {
    pub(in crate::question) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offer = |dependent: &Dependent| match dependent {
            Dependent::Unsure => Offer::unsure(dependent),
            dependent => Offer::new(dependent, Phrase::new(format!("depends-{}", dependent.word()))),
        };
        let offers = Dependent::ALL.iter().map(offer).collect();
        builder.choice(&Key::Depends, &Phrase::new("ask-depends"), true, offers, &depends(snapshot));
    }

    pub(in crate::question) fn read(pending: &Pending) -> Told<Self> {
        let picked: Vec<Dependent> = pending.picked(&Key::Depends).unwrap_or_default();
        let named = |one: &&Dependent| one.is_named() && picked.contains(one);
        let named: Vec<_> = Dependent::ALL.iter().filter(named).copied().collect();
        match picked.first() {
            None => Err(not_answered()),
            Some(only) if named.is_empty() => Ok(Self(vec![*only])),
            Some(_) => Ok(Self(named)),
        }
    }

    pub(in crate::question) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let told: Vec<_> = self.0.iter().map(|one| one.reply()).collect();
        Answer::new().with(Asked::Depends.set_all(snapshot.survey.id, &told))
    }
}

/// What was said to hang on the modem or an amplifier.
fn depends(snapshot: &SurveySnapshot<'_>) -> Vec<Dependent> {
    let told = snapshot.survey.replies(snapshot.survey.id, Asked::Depends);
    told.into_iter().filter_map(Dependent::of_reply).collect()
}

/// The caution about what must not be cut off, unless somebody said that there is nothing of the kind.
fn caution_of_dependents(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    caution_of_people(snapshot, builder, depends(snapshot) != [Dependent::Nothing]);
}

/// The cautions wherever a cable is followed to where it leads.
pub(crate) fn cautions_of_tracing(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
    caution_of_dependents(snapshot, builder);
    for caution in Caution::TRACING {
        builder.caution(&caution.phrase());
    }
}

/// Cautions for the people who hang on the wiring: what was named to depend on it, else the general question where
/// `ask` wants it; and the neighbours where the wiring is shared.
pub(crate) fn caution_of_people(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, ask: bool) {
    if let Some(told) = dependents(&depends(snapshot)) {
        builder.caution(&told);
    } else if ask {
        builder.caution(&Caution::WhoDependsOnIt.phrase());
    }
    if snapshot.survey.building.is_some_and(|building| building.shared) {
        builder.caution(&Phrase::new("ask-shared"));
    }
}

/// What somebody said to hang on the modem or the cable, as a caution; nothing if nothing was named.
fn dependents(depends: &[Dependent]) -> Option<Phrase> {
    let named = Dependent::ALL.iter().filter(|one| one.is_named() && depends.contains(one));
    let short = |one: &Dependent| Phrase::new(format!("depends-{}.short", one.word()));
    let named: Vec<_> = named.map(|one| Arg::Phrase(Box::new(short(one)))).collect();
    (!named.is_empty()).then(|| Phrase::new("ask-dependents").with("what", Arg::Several(named)))
}
