//! Bringing written files to the disk while the next ones are read and hashed.

use std::fs::File;
use std::io;
use std::sync::mpsc::{SyncSender, TrySendError, sync_channel};
use std::thread::{self, JoinHandle};

/// How many files may wait: each holds a descriptor.
const WAITING: usize = 8;

/// A thread that syncs files one after the other. A failure is kept and reported by [`Syncer::finish`]: the system
/// tells it only once.
pub(super) struct Syncer {
    sender: Option<SyncSender<File>>,
    thread: Option<JoinHandle<io::Result<()>>>,
}

impl Syncer {
    pub(super) fn start() -> io::Result<Self> {
        let (sender, files) = sync_channel::<File>(WAITING);
        let work = move || files.into_iter().try_for_each(|file| file.sync_all());
        let thread = thread::Builder::new().name("sync".into()).spawn(work)?;
        Ok(Self { sender: Some(sender), thread: Some(thread) })
    }

    /// Syncs a file that is complete; waits if many wait already.
    pub(super) fn sync(&mut self, file: File) -> io::Result<()> {
        let sent = self.sender.as_ref().map(|sender| sender.send(file));
        // The thread ends before its time only after a failure.
        if matches!(sent, Some(Ok(()))) { Ok(()) } else { self.end() }
    }

    /// Starts to sync what was written so far of a file that is not complete, unless that is being done already.
    pub(super) fn begin(&mut self, file: &File) -> io::Result<()> {
        let file = file.try_clone()?;
        match self.sender.as_ref().map(|sender| sender.try_send(file)) {
            Some(Err(TrySendError::Disconnected(_))) => self.end(),
            Some(Ok(()) | Err(TrySendError::Full(_))) | None => Ok(()),
        }
    }

    /// Waits until all files are synced.
    pub(super) fn finish(mut self) -> io::Result<()> {
        self.end()
    }

    fn end(&mut self) -> io::Result<()> {
        self.sender = None;
        match self.thread.take().map(JoinHandle::join) {
            Some(Ok(synced)) => synced,
            Some(Err(_)) => Err(io::Error::other("the thread that syncs files failed")),
            None => Ok(()),
        }
    }
}

impl Drop for Syncer {
    /// Waits, so that no file is open any more when its folder is removed.
    fn drop(&mut self) {
        let _ = self.end();
    }
}
