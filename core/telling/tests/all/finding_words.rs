//! What findings say: complete, filled in, plain, calm and safe.

use std::collections::BTreeSet;

use advice::finding::{Caution, Finding, FindingKind, Grounds, Weight, findings};
use houses::finding_cases::cases;
use telling::words::{Figures, Language};

fn english() -> Language {
    Language::english(Figures::default())
}

/// Every finding on every house of the cases, tagged and untagged.
fn every_finding() -> Vec<Finding> {
    let mut all = Vec::new();
    for case in cases() {
        for seen in [case.there, case.absent] {
            all.extend(findings(&seen.survey, seen.forecast.as_ref()));
            let mut untagged = seen.survey;
            untagged.parts.values_mut().for_each(|part| part.tag = None);
            untagged.rooms.clear();
            all.extend(findings(&untagged, seen.forecast.as_ref()));
        }
    }
    all
}

fn texts(language: &Language, finding: &Finding) -> Vec<String> {
    [finding.what(), finding.why(), finding.todo(), finding.source()]
        .iter()
        .map(|p| language.say(p))
        .collect()
}

#[test]
fn every_kind_has_all_its_messages() {
    let language = english();
    for kind in FindingKind::ALL {
        for attribute in ["", ".why", ".do", ".source"] {
            let id = format!("finding-{}{attribute}", kind.id());
            assert!(language.knows(&id), "{id}");
        }
    }
    let ids: BTreeSet<_> = FindingKind::ALL.iter().map(|kind| kind.id()).collect();
    assert_eq!(ids.len(), FindingKind::ALL.len(), "two kinds share an id");
    for caution in Caution::ALL {
        assert!(language.knows(&caution.phrase().id), "{caution:?}");
    }
    for weight in [Weight::Grave, Weight::Costly, Weight::Minor, Weight::Note] {
        assert!(language.knows(&weight.phrase().id), "{weight:?}");
    }
}

#[test]
fn no_message_stands_for_a_kind_that_is_gone() {
    let source = include_str!("../../words/en/findings.ftl");
    let messages: BTreeSet<_> = source
        .lines()
        .filter_map(|line| line.strip_prefix("finding-")?.split_once(" =").map(|(id, _)| id))
        .collect();
    let kinds: BTreeSet<_> = FindingKind::ALL.iter().map(|kind| kind.id()).collect();
    assert_eq!(messages, kinds);
}

#[test]
fn every_argument_is_filled_in() {
    let language = english();
    for finding in every_finding() {
        for text in texts(&language, &finding) {
            assert!(!text.contains(['{', '}']), "{text}");
            assert!(!text.contains("finding-") && !text.contains("  "), "{text}");
            assert!(text.ends_with('.'), "{text}");
            assert!(!text.starts_with(char::is_lowercase), "{text}");
        }
    }
}

#[test]
fn sources_say_what_they_are() {
    let language = english();
    for finding in every_finding() {
        let source = language.say(&finding.source());
        let names_a_document = source.contains(|c: char| c.is_ascii_digit());
        match finding.kind.grounds() {
            Grounds::Published => {
                assert!(names_a_document && !source.starts_with("Common practice"), "{source}");
            }
            Grounds::CommonPractice => assert_eq!(source, "Common practice, no source."),
            Grounds::FromMemory => assert!(source.contains("as far as we know"), "{source}"),
            Grounds::Survey => assert_eq!(source, "From what stands in this survey."),
        }
    }
}

#[test]
fn nothing_blames_and_no_splitter_blocks() {
    let language = english();
    let blame = ["fault", "mistake", "careless", "wrong", "should have", "must have", "stranger", "intruder"];
    for finding in every_finding() {
        for text in texts(&language, &finding) {
            let text = text.to_lowercase();
            for word in blame {
                assert!(!text.contains(word), "{word}: {text}");
            }
            // DC is blocked by parts made for that; signals are not.
            let signals = text.replace("blocks dc", "").replace("block dc", "");
            assert!(!signals.contains("blocks") && !signals.contains("blocked"), "{text}");
        }
    }
}

#[test]
fn sentences_are_short() {
    let language = english();
    for finding in every_finding() {
        for phrase in [finding.why(), finding.todo()] {
            for sentence in language.say(&phrase).split(['.', ':', ';']) {
                // Twenty-five words is the limit that public plain-language guides set (from memory).
                assert!(sentence.split_whitespace().count() <= 25, "{sentence}");
            }
        }
    }
}

/// Whoever is told to lay hands on the coax is told first to pull the supplies and to mind the weather.
#[test]
fn cautions_stand_where_hands_go_to_the_wiring() {
    let language = english();
    let hands = ["crew", "Swap", "swap ", "Take it out", "take it out", "Move it", "Put all", "Have a comp"];
    let mut touched = 0;
    for finding in every_finding() {
        let todo = language.say(&finding.todo());
        let cautions = finding.cautions();
        if hands.iter().any(|verb| todo.contains(verb)) && !todo.contains("without unscrewing") {
            touched += 1;
            // What is traced has an order of work of its own.
            let supplies = if todo.contains("tone tracer") {
                Caution::SuppliesForTracer
            } else {
                Caution::SuppliesFirst
            };
            assert!(cautions.contains(&supplies), "{todo}");
            assert!(cautions.contains(&Caution::Thunderstorm), "{todo}");
            assert!(cautions.contains(&Caution::WhoDependsOnIt), "{todo}");
        }
        if todo.contains("ground block") || todo.contains("entry filter") {
            assert!(cautions.contains(&Caution::HouseSideOnly), "{todo}");
            assert!(cautions.contains(&Caution::KeepGrounds), "{todo}");
        }
        if todo.contains(" cap ") {
            assert!(cautions.contains(&Caution::PoweredLeg), "{todo}");
        }
    }
    assert!(touched > 20, "the verbs no longer match the words");
}

/// With its supply out an amplifier lets nothing through, and nothing goes dead any more: whoever looks for that is not told
/// to pull all supplies first, but where to look and what to leave closed; whoever traces by a tone is told to pull them.
#[test]
fn what_is_traced_has_two_orders_of_work() {
    let language = english();
    let mut traced = BTreeSet::new();
    for finding in every_finding() {
        let tells = language.say(&finding.todo()).contains("goes dead");
        traced.extend(tells.then_some(finding.kind));
        let cautions = finding.cautions();
        for caution in Caution::TRACING {
            assert!(!tells || cautions.contains(&caution), "{:?} lacks {caution:?}", finding.kind);
        }
        let both =
            cautions.contains(&Caution::SuppliesFirst) && cautions.contains(&Caution::LookWhatGoesDead);
        assert!(!both, "{:?}", finding.kind);
    }
    assert_eq!(traced, BTreeSet::from([FindingKind::LooseEnd, FindingKind::PartLoose]));
    let said = |caution: Caution| language.say(&caution.phrase());
    for words in
        ["leave an amplifier’s own plug in", "nothing puts power on the cable", "one output of a splitter"]
    {
        assert!(said(Caution::LookWhatGoesDead).contains(words), "{words}");
    }
    for words in ["pull the mains plugs", "unscrewed at both ends"] {
        assert!(said(Caution::SuppliesForTracer).contains(words), "{words}");
    }
}

#[test]
fn nobody_is_told_to_do_what_could_hurt() {
    let language = english();
    let never = [
        "measure the volt",
        "measure mains",
        "remove the ground",
        "loosen the ground",
        "disconnect the ground",
        "open the provider",
        "open the box",
        "look into the fibre",
        "climb",
    ];
    let cautions: Vec<_> = Caution::ALL.iter().map(|caution| language.say(&caution.phrase())).collect();
    for text in every_finding().iter().flat_map(|finding| texts(&language, finding)).chain(cautions) {
        for words in never {
            assert!(!text.to_lowercase().contains(words), "{words}: {text}");
        }
    }
}

/// The cautions of the trade that this program must give, each by the words that carry it.
#[test]
fn the_cautions_say_what_they_must() {
    let language = english();
    let said = |caution: Caution| language.say(&caution.phrase());
    for word in ["phone", "alarm", "medical"] {
        assert!(said(Caution::WhoDependsOnIt).contains(word), "{word}");
    }
    for word in ["inserter", "satellite receiver", "spark", "tingle", "electrician"] {
        assert!(said(Caution::SuppliesFirst).contains(word), "{word}");
    }
    for word in ["house side", "ground block", "power from the provider", "closed", "call the provider"] {
        assert!(said(Caution::HouseSideOnly).contains(word), "{word}");
    }
    assert!(said(Caution::KeepGrounds).contains("Local code"));
    assert!(said(Caution::PoweredLeg).contains("DC"));
    for word in ["joists", "heat", "old wiring", "roofs", "ladder"] {
        assert!(said(Caution::Heights).contains(word), "{word}");
    }
}

#[test]
fn every_window_has_its_words() {
    let language = Language::english(Figures::default());
    for window in advice::level::Window::ALL {
        for phrase in [Some(window.phrase()), window.recommended_phrase()].into_iter().flatten() {
            assert!(language.knows(&phrase.id), "{}", phrase.id);
        }
    }
    for need in advice::level::CleanNeed::ALL {
        assert!(language.knows(&need.phrase().id), "{}", need.name);
    }
}
