//! What the page and the data of a work list say in the same words.

use advice::adapters::AdapterToCome;
use house::record::Survey;
use phrase::Phrase;

use crate::command::context::Context;

/// Where an adapter goes, and what is joined to what there.
pub(super) fn adapter_in_words(context: &Context, house: &Survey, adapter: &AdapterToCome) -> String {
    let sharing = adapter.sharing().map(|sharing| format!(" {}", context.say(&sharing))).unwrap_or_default();
    let told = Phrase::new("desk-adapter").phrase("place", adapter.place(house)).phrase("how", adapter.how());
    format!("{}{sharing}", context.say(&told))
}
