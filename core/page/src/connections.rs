//! Connections: few at a time, and none that waits for ever.

use std::collections::VecDeque;
use std::pin::Pin;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::task::{Context, Poll};
use std::time::Duration;

use axum::Router;
use axum::body::{Body, Bytes};
use hyper::body::{Frame, SizeHint};
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};
use tokio::task::AbortHandle;
use tower::ServiceExt;

/// So many connections stand at a time. A browser opens six and some to spare.
const MOST: usize = 128;
/// So long a connection may take to say what it wants.
pub(crate) const HEAD: Duration = Duration::from_secs(10);
/// So long one answer may take, whatever was uploaded for it included.
const WHOLE: Duration = Duration::from_secs(600);
/// So long nobody is let in where the system gives no connection: mostly too many files are open, and that passes.
const REST: Duration = Duration::from_millis(100);

/// Marks the answer to a browser that was let in. A stranger who does not read an answer holds no connection by it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct LetIn;

/// A connection that stands.
struct Standing {
    task: AbortHandle,
    /// How many answers are being made and sent on it.
    busy: Busy,
}

/// How many answers are under way on a connection.
#[derive(Debug, Clone, Default)]
struct Busy(Arc<AtomicUsize>);

impl Busy {
    fn begin(&self) -> Answering {
        self.0.fetch_add(1, Ordering::Relaxed);
        Answering(self.clone())
    }

    fn is_idle(&self) -> bool {
        self.0.load(Ordering::Relaxed) == 0
    }
}

/// One answer, until it is sent or given up.
#[derive(Debug)]
struct Answering(Busy);

impl Drop for Answering {
    fn drop(&mut self) {
        self.0.0.fetch_sub(1, Ordering::Relaxed);
    }
}

/// The body of an answer, which is under way until all of it is sent.
struct Sent {
    body: Body,
    _under_way: Answering,
}

impl hyper::body::Body for Sent {
    type Data = Bytes;
    type Error = axum::Error;

    fn poll_frame(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
    ) -> Poll<Option<Result<Frame<Bytes>, axum::Error>>> {
        Pin::new(&mut self.body).poll_frame(context)
    }

    fn is_end_stream(&self) -> bool {
        self.body.is_end_stream()
    }

    fn size_hint(&self) -> SizeHint {
        self.body.size_hint()
    }
}

/// Takes connections until `end`. Where too many stand, the one that has been idle for longest makes room. Each may take
/// `head` to say what it wants.
pub(crate) async fn take(
    listener: TcpListener,
    routes: Router,
    head: Duration,
    end: impl Future<Output = ()>,
) {
    let mut standing: VecDeque<Standing> = VecDeque::new();
    let mut end = std::pin::pin!(end);
    loop {
        let taken = tokio::select! {
            () = &mut end => break,
            taken = listener.accept() => taken,
        };
        // Either the connection broke while it was taken, or none can be had now and asking at once again is no use.
        let Ok((stream, _)) = taken else {
            tokio::time::sleep(REST).await;
            continue;
        };
        standing.retain(|one| !one.task.is_finished());
        if standing.len() >= MOST {
            let idle = standing.iter().position(|one| one.busy.is_idle());
            match idle.and_then(|place| standing.remove(place)) {
                Some(one) => one.task.abort(),
                // All are busy: this one has to come again.
                None => continue,
            }
        }
        let busy = Busy::default();
        let task = tokio::spawn(serve(stream, routes.clone(), head, busy.clone())).abort_handle();
        standing.push_back(Standing { task, busy });
    }
    for one in standing {
        one.task.abort();
    }
}

async fn serve(stream: TcpStream, routes: Router, head: Duration, busy: Busy) {
    let service = tower::service_fn(move |request: hyper::Request<hyper::body::Incoming>| {
        let (routes, under_way) = (routes.clone(), busy.begin());
        async move {
            let answer = match tokio::time::timeout(WHOLE, routes.oneshot(request)).await {
                Ok(Ok(answer)) => answer,
                Ok(Err(never)) => match never {},
                Err(_) => axum::response::IntoResponse::into_response(hyper::StatusCode::REQUEST_TIMEOUT),
            };
            Ok::<_, std::convert::Infallible>(if answer.extensions().get::<LetIn>().is_some() {
                answer.map(|body| Body::new(Sent { body, _under_way: under_way }))
            } else {
                answer
            })
        }
    });
    let served = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(head)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(service));
    // Whoever hung up has no answer to wait for.
    let _ = served.await;
}
