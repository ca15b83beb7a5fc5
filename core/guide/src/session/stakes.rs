//! How unsure the forecast is while questions are open: worked out beside, and remembered, so that the guide asks in the same
//! order after the app's death. While new ones are worked out, the last ones count.

use std::sync::Arc;

use advice::forecast::{forecast, nodes_of};
use advice::unknown::{Unknown, unknowns};
use advice::verdict::Lacking;
use advice::worklist::{Options, stakes};
use facts::fact::SubjectId;
use house::record::{LooseReason, Survey};
use phrase::Arg;
use serde::{Deserialize, Serialize};

use super::long_work::{LongWork, LongWorkOf};
use super::results::{Weighed, same_wiring, weighed};
use crate::error::GuideError;
use crate::place::Question;

/// How unsure the forecast is while a question is open.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct AtStake {
    /// The question.
    question: Question,
    /// The outlet whose rate is most unsure while it is open, and by how many Mb/s; `None` where that cannot be told.
    #[serde(alias = "changes")] // So it was remembered before.
    unsure: Option<(SubjectId, f64)>,
    /// Whether it is worth going back for.
    is_worth: bool,
}

/// How unsure it is while each of all open questions is, as it was worked out last.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub(crate) struct Stakes(Vec<AtStake>);

impl Stakes {
    /// Of the unknowns of a survey, weighed.
    pub(super) fn of(survey: &Survey, unknowns: &[Weighed]) -> Self {
        let mut stakes: Vec<AtStake> = Vec::new();
        for weighed in unknowns {
            let Some(question) = question_of(survey, &weighed.unknown) else { continue };
            let unsure = weighed.stake.map(|stake| (stake.outlet, stake.mbps));
            let is_worth = weighed.is_worth_going_back();
            let mbps = |unsure: Option<(SubjectId, f64)>| unsure.map_or(-1.0, |(_, mbps)| mbps);
            // One question may settle several: what leaves most unsure counts.
            match stakes.iter_mut().find(|known| known.question == question) {
                None => stakes.push(AtStake { question, unsure, is_worth }),
                Some(known) => {
                    known.is_worth |= is_worth;
                    if mbps(unsure) > mbps(known.unsure) {
                        known.unsure = unsure;
                    }
                }
            }
        }
        Self(stakes)
    }

    fn at(&self, question: &Question) -> Option<&AtStake> {
        self.0.iter().find(|known| known.question == *question)
    }

    /// Whether an answer is worth going for; `None` where that was not worked out yet.
    pub(crate) fn is_worth(&self, question: &Question) -> Option<bool> {
        self.at(question).map(|known| known.is_worth)
    }

    /// The outlet whose rate is most unsure while it is open, and by how many Mb/s.
    pub(crate) fn unsure(&self, question: &Question) -> Option<(SubjectId, f64)> {
        self.at(question)?.unsure
    }
}

/// Stakes that are being worked out, or were.
#[derive(Debug)]
pub(crate) struct Weighing {
    house: Arc<Survey>,
    task: LongWorkOf<Stakes>,
}

impl Weighing {
    /// Begins, where there is something that a forecast can start from.
    pub(super) fn begin(house: &Survey, options: Options) -> Option<Self> {
        if !nodes_of(house).first().is_some_and(|node| node.bridge) || Lacking::of(house).is_of_all() {
            return None;
        }
        let house = Arc::new(house.clone());
        let copy = Arc::clone(&house);
        let task = LongWorkOf::begin(move |work| weigh(&copy, &options, work));
        Some(Self { house, task })
    }

    /// Whether it is of a survey as it stands.
    pub(super) fn is_of(&self, survey: &Survey) -> bool {
        same_wiring(&self.house, survey)
    }

    /// What came of it, once it is over.
    pub(super) fn outcome(&self) -> Option<&Stakes> {
        self.task.outcome()?.as_ref().ok()
    }

    /// To wait for it, and to stop it.
    pub(crate) fn work(&self) -> &LongWork {
        self.task.work()
    }
}

impl Drop for Weighing {
    fn drop(&mut self) {
        self.task.work().stop();
    }
}

fn weigh(house: &Survey, options: &Options, work: &LongWork) -> Result<Stakes, GuideError> {
    let as_found = forecast(house, &options.stating)?;
    let open = unknowns(house, &as_found);
    let stakes = stakes(house, &as_found, &open, &options.screening, &mut |share| work.goes_on(share))?;
    Ok(Stakes::of(house, &weighed(open, &stakes)))
}

/// The question whose answer ends an unknown.
pub(crate) fn question_of(survey: &Survey, unknown: &Unknown) -> Option<Question> {
    let about = unknown.about;
    let part = survey.parts.get(&about)?;
    let run = survey.wiring.feed(about).and_then(|feed| feed.run);
    let port = unknown.what.args.iter().find_map(|(name, arg)| match arg {
        Arg::Count(port) if *name == "port" => u8::try_from(*port).ok(),
        _ => None,
    });
    match unknown.what.id.as_str() {
        "unknown-loose" => Some(Question::FedBy(about)),
        "unknown-kind" | "unknown-label" | "unknown-band" => Some(Question::Label(about)),
        "unknown-bypass" => Some(Question::ByPass(about)),
        "unknown-doubtful" => Some(Question::LabelRead(about)),
        "unknown-entry" => Some(Question::Joined(about)),
        "unknown-plugged" => Some(Question::Plugged(about)),
        "unknown-length" | "unknown-length-guessed" | "unknown-cable" => run.map(Question::Cable),
        "unknown-order" => Some(Question::Outputs(about)),
        "unknown-end" => (1..=part.outputs())
            .find(|port| part.end(*port).is_none() && survey.wiring.on_port(about, *port).next().is_none())
            .map(|port| Question::LeadsTo(about, port)),
        // Where one part waits for its feed, the two may belong together.
        "unknown-loose-end" => match untraced(survey).as_slice() {
            [only] => Some(Question::FedBy(*only)),
            _ => port.map(|port| Question::LeadsTo(about, port)),
        },
        _ => None,
    }
}

fn untraced(survey: &Survey) -> Vec<SubjectId> {
    let loose = survey.wiring.loose().iter();
    loose.filter(|(_, reason)| **reason == LooseReason::NotTraced).map(|(part, _)| *part).collect()
}
