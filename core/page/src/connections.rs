//! Connections: few at a time, and none that waits for ever.

use std::collections::VecDeque;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};
use tokio::task::AbortHandle;
use tower::ServiceExt;

/// So many connections stand at a time. A browser opens six and some to spare.
const MOST: usize = 128;
/// So long a connection may take to say what it wants.
const HEAD: Duration = Duration::from_secs(10);
/// So long one answer may take, a large file included.
const WHOLE: Duration = Duration::from_secs(600);

/// A connection that stands.
struct Standing {
    task: AbortHandle,
    /// Whether it is being answered.
    busy: Arc<AtomicBool>,
}

/// Takes connections until `end`. Where too many stand, the one that has been idle for longest makes room.
pub(crate) async fn take(listener: TcpListener, routes: Router, end: impl Future<Output = ()>) {
    let mut standing: VecDeque<Standing> = VecDeque::new();
    let mut end = std::pin::pin!(end);
    loop {
        let taken = tokio::select! {
            () = &mut end => break,
            taken = listener.accept() => taken,
        };
        // A connection that broke while it was taken is nobody's.
        let Ok((stream, _)) = taken else { continue };
        standing.retain(|one| !one.task.is_finished());
        if standing.len() >= MOST {
            let idle = standing.iter().position(|one| !one.busy.load(Ordering::Relaxed));
            match idle.and_then(|place| standing.remove(place)) {
                Some(one) => one.task.abort(),
                // All are busy: this one has to come again.
                None => continue,
            }
        }
        let busy = Arc::new(AtomicBool::new(false));
        let task = tokio::spawn(serve(stream, routes.clone(), Arc::clone(&busy))).abort_handle();
        standing.push_back(Standing { task, busy });
    }
    for one in standing {
        one.task.abort();
    }
}

async fn serve(stream: TcpStream, routes: Router, busy: Arc<AtomicBool>) {
    let service = tower::service_fn(move |request: hyper::Request<hyper::body::Incoming>| {
        let (routes, busy) = (routes.clone(), Arc::clone(&busy));
        async move {
            busy.store(true, Ordering::Relaxed);
            let answer = tokio::time::timeout(WHOLE, routes.oneshot(request)).await;
            busy.store(false, Ordering::Relaxed);
            match answer {
                Ok(answer) => answer,
                Err(_) => Ok(axum::response::IntoResponse::into_response(hyper::StatusCode::REQUEST_TIMEOUT)),
            }
        }
    });
    let served = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(HEAD)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(service));
    // Whoever hung up has no answer to wait for.
    let _ = served.await;
}
