//! The page, served until it is stopped.

use std::net::{Ipv4Addr, SocketAddr};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;
use std::time::Duration;

use guide::Guide;
use telling::words::Language;
use tokio::net::TcpListener;
use tokio::sync::oneshot;

use crate::at_door::Door;
use crate::connections::{HEAD, take};
use crate::error::PageError;
use crate::host::Host;
use crate::routes::{Shared, routes};
use crate::secret::Secret;

/// The page, as long as it is served.
pub struct Served {
    address: String,
    address_once: String,
    shared: Shared,
    end: Option<oneshot::Sender<()>>,
    server: Option<JoinHandle<()>>,
}

/// Serves a guide to the browser of this computer, on a port that nobody can foretell, until [`Served::stop`]. `words` is
/// the language of the page's own words.
///
/// # Errors
/// If no port or no temporary folder can be had.
pub fn serve(guide: Guide, words: Language) -> Result<Served, PageError> {
    serve_with(guide, words, HEAD)
}

/// The same, where a connection may take so long to say what it wants.
///
/// # Errors
/// As [`serve`].
pub fn serve_with(guide: Guide, words: Language, head: Duration) -> Result<Served, PageError> {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .enable_all()
        .build()
        .map_err(PageError::Server)?;
    let at = SocketAddr::from((Ipv4Addr::LOCALHOST, 0));
    let listener = runtime.block_on(TcpListener::bind(at)).map_err(PageError::Port)?;
    let port = listener.local_addr().map_err(PageError::Port)?.port();
    let (secret, once) = (Secret::new()?, Secret::new()?);
    let address_of = |secret: &Secret| format!("http://127.0.0.1:{port}/open/{}", secret.letters());
    let (address, address_once) = (address_of(&secret), address_of(&once));
    let door = Door { secret, once: Mutex::new(Some(once)), port };
    let shared = Shared { host: Arc::new(Mutex::new(Host::new(guide, words)?)), door: Arc::new(door) };
    let (end, ended) = oneshot::channel();
    let served = shared.clone();
    let server = std::thread::Builder::new()
        .name("page".into())
        .spawn(move || {
            runtime.block_on(async move {
                let drafts = served.clone();
                tokio::spawn(async move {
                    let mut second = tokio::time::interval(Duration::from_secs(1));
                    loop {
                        second.tick().await;
                        if let Ok(mut host) = drafts.host.try_lock() {
                            host.keep_drafts();
                        }
                    }
                });
                // A dropped sender ends it too.
                take(listener, routes(served), head, async { ended.await.unwrap_or(()) }).await;
            });
        })
        .map_err(PageError::Server)?;
    Ok(Served { address, address_once, shared, end: Some(end), server: Some(server) })
}

impl Served {
    /// The address that lets one browser in. It holds the secret: it is for whoever sits at this computer.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// An address that lets a browser in once: for the arguments of a command, which others on this computer may read.
    pub fn address_once(&self) -> &str {
        &self.address_once
    }

    /// Ends it. Whatever was answered is kept.
    ///
    /// # Errors
    /// If where one was cannot be written down.
    pub fn stop(mut self) -> Result<(), PageError> {
        self.end_server();
        self.shared.host().close()
    }

    fn end_server(&mut self) {
        if let Some(end) = self.end.take() {
            // The server may have ended before.
            let _ = end.send(());
        }
        if let Some(server) = self.server.take() {
            let _ = server.join();
        }
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        self.end_server();
    }
}
