//! Cautions, printed once and lettered; whatever they guard carries their letters.

use advice::finding::Caution;
use maud::{Markup, html};
use phrase::Phrase;

use super::page::Section;
use super::teller::ReportTeller;

/// Every caution of this report under its letter.
pub(super) struct Letters {
    said: Vec<Lettered>,
}

/// One caution.
pub(super) struct Lettered {
    /// Its letter: A, B and so on.
    pub letter: String,
    /// What to do or leave, in short; `None` where it has no short words.
    pub head: Option<String>,
    /// All of it, with the reason.
    pub text: String,
}

impl Lettered {
    /// The place in the page where it stands.
    fn anchor(&self) -> String {
        format!("caution-{}", self.letter.to_lowercase())
    }
}

impl Letters {
    /// The cautions of this house: the trade's usual ones first, whether or not this house gives a cause for each.
    pub(super) fn of(teller: &ReportTeller<'_>) -> Self {
        let usual = Caution::ALL.iter().map(|caution| caution.phrase());
        let of_findings = teller.input.findings.iter().flat_map(|finding| finding.cautions.iter().cloned());
        let of_steps = teller.input.steps.iter().flat_map(|step| step.cautions.iter().cloned());
        let mut said: Vec<Lettered> = Vec::new();
        for caution in usual.chain(of_findings).chain(of_steps) {
            let text = teller.say(&caution);
            if !said.iter().any(|known| known.text == text) {
                let head = teller.say_if_known(&caution.attribute("head"));
                said.push(Lettered { letter: letter(said.len()), head, text });
            }
        }
        Self { said }
    }

    /// Those of these phrases, in the order of their letters.
    pub(super) fn of_phrases<'a>(
        &'a self,
        teller: &ReportTeller<'_>,
        cautions: impl IntoIterator<Item = &'a Phrase>,
    ) -> Vec<&'a Lettered> {
        let texts: Vec<_> = cautions.into_iter().map(|caution| teller.say(caution)).collect();
        self.said.iter().filter(|known| texts.contains(&known.text)).collect()
    }

    /// Letters to stand beside what they guard: on paper the letters alone, on a screen each with its short words.
    pub(super) fn beside(&self, teller: &ReportTeller<'_>, cautions: &[Phrase]) -> Markup {
        let cautions = self.of_phrases(teller, cautions);
        html! {
            @if !cautions.is_empty() {
                ul.letters-beside aria-label=(teller.word("report-cautions")) {
                    @for caution in cautions {
                        li {
                            a href={ "#" (caution.anchor()) } {
                                b.letter { (caution.letter) }
                                " "
                                span.in-short { (caution.head.as_ref().unwrap_or(&caution.text)) }
                            }
                        }
                    }
                }
            }
        }
    }

    /// The section with every caution, each once.
    pub(super) fn section(&self, teller: &ReportTeller<'_>) -> Section {
        let body = html! {
            p { (teller.word("report-cautions-how")) }
            ul.letters {
                @for caution in &self.said {
                    li.caution-lettered id=(caution.anchor()) {
                        b.letter { (caution.letter) }
                        span { (caution.text) }
                    }
                }
            }
        };
        Section { id: "cautions", heading: "report-cautions", body }
    }
}

/// The letter of a place: A to Z, then AA and on.
fn letter(place: usize) -> String {
    let signs = ('A'..='Z').nth(place % 26).into_iter();
    if place < 26 { signs.collect() } else { letter(place / 26 - 1).chars().chain(signs).collect() }
}

#[cfg(test)]
mod tests {
    use super::letter;

    #[test]
    fn letters_go_on_after_z() {
        assert_eq!([0, 5, 25, 26, 27, 52].map(letter), ["A", "F", "Z", "AA", "AB", "BA"]);
    }
}
