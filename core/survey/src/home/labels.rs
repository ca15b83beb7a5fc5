//! Label texts seen before, over all surveys of a home folder: the same splitter is met in more than one house, and its
//! print need not be typed twice.

use std::collections::BTreeMap;

use super::Home;
use crate::error::Result;
use crate::fact::FactId;
use crate::record::field;
use crate::store::live_texts;

/// A label text that was written before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeenLabel {
    /// The text, as it was written last.
    pub text: String,
    /// How many parts and cables carry it, in all surveys.
    pub times: usize,
    /// The newest record that says so: [`FactId::ms`] is when it was written.
    pub newest: FactId,
}

impl Home {
    /// The label texts that stand in the surveys here, those written last first. Texts that differ only in spaces and
    /// in capital letters count as one. Of surveys set aside nothing is told, and one that is damaged is passed over.
    /// No survey is opened.
    ///
    /// # Errors
    /// As [`Home::list`].
    pub fn labels_seen(&self) -> Result<Vec<SeenLabel>> {
        let mut seen: BTreeMap<String, SeenLabel> = BTreeMap::new();
        for folder in self.folders()? {
            for (id, text) in live_texts(&folder, field::LABEL).unwrap_or_default() {
                let key = text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
                if key.is_empty() {
                    continue;
                }
                let label =
                    seen.entry(key).or_insert(SeenLabel { text: String::new(), times: 0, newest: id });
                label.times += 1;
                if label.text.is_empty() || id > label.newest {
                    label.text = text;
                    label.newest = id;
                }
            }
        }
        let mut labels: Vec<SeenLabel> = seen.into_values().collect();
        labels.sort_by_key(|label| std::cmp::Reverse(label.newest));
        Ok(labels)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fact::{AuthorId, Edit, SubjectId};
    use crate::store::Store;

    #[test]
    fn labels_of_all_surveys_newest_first_without_what_was_replaced_or_forgotten() {
        let folder = tempfile::TempDir::new().unwrap();
        let home = Home::at(folder.path()).unwrap();
        assert_eq!(home.labels_seen().unwrap(), []);
        let survey = |name: &str, labels: &[&str]| {
            let mut store = Store::create(&home.place(name).unwrap(), AuthorId::random()).unwrap();
            let parts: Vec<SubjectId> = labels.iter().map(|_| SubjectId::random()).collect();
            for (part, label) in parts.iter().zip(labels) {
                store.write(&[Edit::new(*part, field::LABEL, *label)]).unwrap();
                // Ids of two surveys written within one millisecond come in any order.
                std::thread::sleep(std::time::Duration::from_millis(2));
            }
            (store, parts)
        };
        let (mut one, parts) = survey("one", &["2-WAY 5-1000 MHz", "misread", "secret", " "]);
        let (two, _) = survey("two", &["2-way  5-1000 mhz", "RG-6"]);
        one.write(&[Edit::new(parts[1], field::LABEL, "read anew")]).unwrap();
        one.forget_field(parts[2], field::LABEL).unwrap();
        let (three, _) = survey("three", &["set aside"]);
        drop(three);
        home.set_aside(&home.place("three").unwrap()).unwrap();
        std::fs::create_dir(home.place("broken").unwrap()).unwrap();
        let told = || -> Vec<(String, usize)> {
            home.labels_seen().unwrap().into_iter().map(|label| (label.text, label.times)).collect()
        };
        let expected = [("read anew", 1), ("RG-6", 1), ("2-way  5-1000 mhz", 2)];
        let expected: Vec<(String, usize)> =
            expected.into_iter().map(|(text, times)| (text.to_owned(), times)).collect();
        assert_eq!(told(), expected, "while they are open");
        drop((one, two));
        assert_eq!(told(), expected, "and at rest");
    }
}
