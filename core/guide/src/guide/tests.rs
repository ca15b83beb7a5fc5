use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, mpsc};
use std::time::Instant;

use phrase::Phrase;
use telling::words::Figures;

use super::*;
use crate::session::{After, WorkKind};

/// A shell may keep the guide on a thread of its own.
#[test]
fn the_guide_may_go_to_another_thread() {
    fn goes<T: Send + 'static>() {}
    goes::<Guide>();
}

fn begun() -> (tempfile::TempDir, Guide) {
    let home = tempfile::tempdir().unwrap();
    let mut guide =
        Guide::at(home.path(), facts::fact::AuthorId::random(), crate::english(Figures::default())).unwrap();
    guide.wait_for_long_work(Duration::MAX);
    guide.act(&Deed::Press { key: "new".into() }).unwrap();
    guide.act(&Deed::Write { key: "name".into(), words: "Mill House".into() }).unwrap();
    guide.act(&Deed::Press { key: "make".into() }).unwrap();
    (home, guide)
}

/// Work that hears no stop: it is waited for as long as is promised, and what came of it is collected later.
#[test]
fn putting_aside_waits_no_longer_than_it_says() {
    let (_home, mut guide) = begun();
    let shown = guide.screen();
    let folder = guide.open_folder().unwrap();
    let (end, ended) = mpsc::channel::<()>();
    let was_collected = Arc::new(AtomicBool::new(false));
    let collected = Arc::clone(&was_collected);
    guide.session.send(WorkKind::Pack, move |_| {
        // It ends when it is told to in another way.
        let _ = ended.recv();
        Ok(After::new(move |session| {
            session.open_survey()?;
            collected.store(true, Ordering::Relaxed);
            session.tell_done(Phrase::new("long-work-over"));
            Ok(Move::Stay)
        }))
    });
    let began = Instant::now();
    guide.suspend().unwrap();
    // The work is not over: it only ends below.
    assert!(began.elapsed() >= Duration::from_secs(2), "{:?}", began.elapsed());
    // The survey is closed all the same, and the work can still be seen.
    assert!(guide.session.open.is_none());
    assert!(!folder.join("survey.db-wal").exists());
    assert_eq!(guide.screen().name, "long-work");
    assert!(guide.long_work().is_some());
    end.send(()).unwrap();
    guide.long_work().inspect(crate::LongWork::wait);
    guide.collect_long_work();
    // Its survey is not open.
    assert!(!was_collected.load(Ordering::Relaxed));
    guide.resume().unwrap();
    assert!(was_collected.load(Ordering::Relaxed));
    assert_eq!((guide.screen().name, guide.open_folder()), (shown.name, Some(folder)));
}

/// What could not be kept, because another program was writing at that moment, comes back with the app.
#[test]
fn putting_aside_waits_for_no_other_program() {
    let (_home, mut guide) = begun();
    guide.act(&Deed::Press { key: "overview".into() }).unwrap();
    let folder = guide.open_folder().unwrap();
    let other = rusqlite::Connection::open(folder.join("survey.db")).unwrap();
    other.execute_batch("BEGIN IMMEDIATE").unwrap();
    guide.act(&Deed::Press { key: "more".into() }).unwrap();
    guide.suspend().unwrap();
    other.execute_batch("ROLLBACK").unwrap();
    guide.resume().unwrap();
    assert_eq!(guide.screen().name, "more");
    drop(guide.suspend());
}

/// Of a large house each layout takes its time: whoever asks for one drawing has no other one drawn.
#[test]
fn a_drawing_that_is_asked_for_is_drawn_alone() {
    let (home, mut guide) = begun();
    let folder = home.path().join("Large.legwork");
    let mut store = facts::store::Store::create(&folder, facts::fact::AuthorId::random()).unwrap();
    let survey = store.survey_id().subject();
    store.write(&[facts::fact::Edit::new(survey, "is", "survey")]).unwrap();
    store.write(&houses::large(60).1).unwrap();
    drop(store);
    guide.open(&folder).unwrap();
    let place = Place::Result(ResultPlace::Map);
    guide.session.open_survey().unwrap().memory.go(place.clone());
    let all = guide.figures();
    assert!(all.len() >= 3, "{:?}", all.iter().map(|drawn| &drawn.figure).collect::<Vec<_>>());
    for wanted in &all {
        assert_eq!(guide.figure(&wanted.figure).as_ref(), Some(wanted));
        guide
            .session
            .with_snapshot(|snapshot| {
                assert!(screens::figure(snapshot, &place, &wanted.figure).is_some());
                assert!(snapshot.maps.get().is_none());
            })
            .unwrap();
    }
    assert_eq!(guide.figure("nothing"), None);
}
