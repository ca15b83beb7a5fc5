//! The house, its people, and what uses the coax today.

mod depends;
mod modem_age;
mod plan;
mod rooms;
mod uses;
mod whose;
mod wish;

pub(super) use depends::DependsAnswer;
pub(crate) use depends::{caution_of_people, cautions_of_tracing};
pub(super) use modem_age::ModemAgeAnswer;
pub(super) use plan::PlanAnswer;
pub(super) use rooms::RoomsAnswer;
pub(super) use uses::UsesAnswer;
pub(super) use whose::WhoseAnswer;
pub(super) use wish::{WishAnswer, WishForAll, WishOtherAnswer};
