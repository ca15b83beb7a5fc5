//! What the page and the data of a work list say in the same words.

use advice::adapters::AdapterToCome;
use advice::worklist::WorkList;
use house::record::Survey;
use phrase::Phrase;

use crate::command::Context;

/// Everything to buy, in words.
pub(super) fn shopping(context: &Context, survey: &Survey, list: &WorkList) -> Vec<(String, u64)> {
    list.shopping(survey).iter().map(|needed| (context.say(&needed.what), needed.count)).collect()
}

/// Where an adapter goes, and what is joined to what there.
pub(super) fn adapter_in_words(context: &Context, house: &Survey, adapter: &AdapterToCome) -> String {
    let sharing = adapter.sharing().map(|sharing| format!(" {}", context.say(&sharing))).unwrap_or_default();
    let told = Phrase::new("desk-adapter").phrase("place", adapter.place(house)).phrase("how", adapter.how());
    format!("{}{sharing}", context.say(&told))
}
