//! A house of the tests as facts, and back.
#![expect(clippy::expect_used, reason = "a house that cannot be written fails the test")]
#![allow(dead_code, reason = "each test binary uses its own share")]

use facts::fact::{ActId, AuthorId, Edit, FactClock, Ledger, SurveyId, value_of};
use house::record::{Survey, edits_between, field, fold};
use serde_json::Value;

/// The facts of a survey in the making.
pub struct Written {
    /// The facts.
    pub ledger: Ledger,
    id: SurveyId,
    author: AuthorId,
    clock: FactClock,
}

impl Written {
    /// Everything that the forecast and the work list read of a house.
    pub fn of(house: &Survey) -> Self {
        let id = SurveyId::from_uuid(house.id.uuid());
        let mut written =
            Self { ledger: Ledger::new(), id, author: AuthorId::random(), clock: FactClock::system() };
        let mut edits =
            edits_between(&Survey::new(house.id), house, &written.ledger).expect("records are facts");
        let mut says = |subject, name: &str, value: Value| edits.push(Edit::new(subject, name, value));
        if let Some(building) = &house.building {
            says(house.id, field::BUILDING, value_of(building).expect("a value"));
        }
        if let Some(internet) = &house.internet {
            says(house.id, field::INTERNET, value_of(internet).expect("a value"));
        }
        for service in house.services.values() {
            says(service.id, field::IS, "service".into());
            says(service.id, field::KIND, value_of(&service.kind).expect("a value"));
            says(service.id, field::TOP, value_of(&service.top_mhz).expect("a value"));
            says(service.id, field::MODEM, value_of(&service.modem).expect("a value"));
            says(service.id, field::POWER, value_of(&service.power).expect("a value"));
            says(service.id, field::OTHER_NETWORK, value_of(&service.network).expect("a value"));
        }
        for reading in house.readings.values() {
            says(reading.id, field::IS, "reading".into());
            says(reading.id, field::MEASURED, value_of(&reading.measured).expect("a value"));
            says(reading.id, field::ABOUT, value_of(&reading.about).expect("a value"));
            says(reading.id, field::HOW, value_of(&reading.how).expect("a value"));
        }
        for work in house.works.values() {
            says(work.id, field::IS, "work".into());
            says(work.id, field::CHANGE, value_of(&work.change).expect("a value"));
            says(work.id, field::OUTCOME, value_of(&work.outcome).expect("a value"));
        }
        written.write(&edits);
        written
    }

    /// Writes edits as one act.
    pub fn write(&mut self, edits: &[Edit]) -> ActId {
        let act = ActId::random();
        let facts = self.ledger.plan(act, self.author, &mut self.clock, edits).expect("edits fit");
        for fact in facts {
            self.ledger.insert(fact).expect("a fact of our own");
        }
        act
    }

    /// The facts as records.
    pub fn survey(&self) -> Survey {
        fold(&self.ledger, self.id).expect("a house")
    }
}
