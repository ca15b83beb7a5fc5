//! The doubts' English.

use fluent_bundle::{FluentArgs, FluentBundle, FluentResource};
use unic_langid::LanguageIdentifier;

use super::doubt::Doubt;

/// The English sentences of the label reader.
const ENGLISH: &str = include_str!("../../words/en/label.ftl");

/// Each doubt as an English sentence. A sentence that is missing from the words shows as its identifier.
pub(super) fn in_english(doubts: &[Doubt]) -> Vec<String> {
    if doubts.is_empty() {
        return Vec::new();
    }
    let resource = match FluentResource::try_new(ENGLISH.to_owned()) {
        Ok(resource) | Err((resource, _)) => resource,
    };
    let mut bundle = FluentBundle::new(vec!["en".parse::<LanguageIdentifier>().unwrap_or_default()]);
    // Marks that isolate text directions would show as rubbish on terminals and in JSON.
    bundle.set_use_isolating(false);
    bundle.add_resource_overriding(resource);
    doubts.iter().map(|doubt| sentence(&bundle, doubt)).collect()
}

/// One doubt as a sentence.
fn sentence(bundle: &FluentBundle<FluentResource>, doubt: &Doubt) -> String {
    let (id, arguments) = doubt.message();
    let Some(pattern) = bundle.get_message(id).and_then(|message| message.value()) else {
        return id.to_owned();
    };
    let mut named = FluentArgs::new();
    for (name, value) in arguments {
        named.set(name, value);
    }
    bundle.format_pattern(pattern, Some(&named), &mut Vec::new()).into_owned()
}
