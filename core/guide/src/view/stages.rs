//! How far what follows from a survey has come: what the overview tells of it, and the screens themselves.

use advice::forecast::nodes_of;
use facts::fact::SubjectId;
use facts::file::FILE_EXTENSION;
use house::record::{Asked, Survey};

use crate::session::SurveySnapshot;

/// The answer that says that the report was written.
pub(crate) const REPORT: Asked = Asked::HandoverReport;

/// The same of the file.
pub(crate) const FILE: Asked = Asked::HandoverFile;

/// What is given: the report and the file, each by the ending of its name, with the answer that says that it was written.
pub(crate) const GIVEN: [(&str, Asked); 2] = [(REPORT_EXTENSION, REPORT), (FILE_EXTENSION, FILE)];

const REPORT_EXTENSION: &str = "html";

/// Whether the report or the file was written once.
pub(crate) fn is_given(snapshot: &SurveySnapshot<'_>, name: Asked) -> bool {
    snapshot.survey.answer(snapshot.survey.id, name).is_some()
}

/// How many of report and file were written.
pub(crate) fn given(snapshot: &SurveySnapshot<'_>) -> usize {
    GIVEN.iter().filter(|(_, name)| is_given(snapshot, *name)).count()
}

/// The outlets where a test can be run: each that has or shall have an adapter, but the bridge.
pub(crate) fn outlets(survey: &Survey) -> Vec<SubjectId> {
    let mut outlets: Vec<_> =
        nodes_of(survey).into_iter().filter(|node| !node.bridge).map(|node| node.outlet).collect();
    let name = |outlet: &SubjectId| {
        survey.parts.get(outlet).and_then(|part| survey.room_of(part)).map(|room| room.name.clone())
    };
    outlets.sort_by_key(|outlet| (name(outlet), *outlet));
    outlets
}
