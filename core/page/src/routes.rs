//! What the page answers to.

use std::path::PathBuf;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use axum::Router;
use axum::body::Body;
use axum::extract::multipart::{Multipart, MultipartError};
use axum::extract::{DefaultBodyLimit, Path, Request, State};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_LENGTH, CONTENT_SECURITY_POLICY, CONTENT_TYPE, HeaderName,
    LOCATION, REFERRER_POLICY, SET_COOKIE, X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderMap, HeaderValue, StatusCode};
use axum::middleware::{self, Next};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use phrase::Phrase;
use tokio::io::AsyncWriteExt;
use tokio_util::io::ReaderStream;

use crate::at_door::{Door, MOST_UPLOADED, POLICY};
use crate::connections::LetIn;
use crate::draw::closed;
use crate::form::Given;
use crate::host::{Host, HowFar, no_room};
use crate::own_name::own_name;
use crate::tickets::Worth;

/// The most text that one form may hold, bytes.
const MOST_TEXT: usize = 1 << 20;

/// What the script says with what it fetches. No form of another site can say it.
const BY_SCRIPT: &str = "x-by-script";

/// How wide the script sees drawings shown, CSS pixels: of the others it needs none.
const SHOWN_WIDE: &str = "x-shown-wide";

fn shown_wide(headers: &HeaderMap) -> Option<u32> {
    headers.get(SHOWN_WIDE)?.to_str().ok()?.parse().ok()
}

/// What every answer needs.
#[derive(Clone)]
pub(crate) struct Shared {
    /// The guide.
    pub(crate) host: Arc<Mutex<Host>>,
    /// Who may come in.
    pub(crate) door: Arc<Door>,
}

impl Shared {
    /// The guide, for a moment. Whoever held it before and failed left it whole: a deed is done or not.
    pub(crate) fn host(&self) -> MutexGuard<'_, Host> {
        self.host.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Does something with the guide on a thread that may wait.
    async fn with<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Host) -> T + Send + 'static,
    ) -> Result<T, StatusCode> {
        let shared = self.clone();
        let done = tokio::task::spawn_blocking(move || work(&mut shared.host())).await;
        done.map_err(|_| StatusCode::INTERNAL_SERVER_ERROR)
    }
}

/// Every address that is answered to.
pub(crate) fn routes(shared: Shared) -> Router {
    // Where that is more than the computer can count, it takes no larger file either.
    let most = usize::try_from(MOST_UPLOADED).unwrap_or(usize::MAX);
    Router::new()
        .route("/", get(shown))
        .route("/deed", post(deed).layer(DefaultBodyLimit::max(most)))
        .route("/go/{ticket}/{key}", get(go))
        .route("/how-far", get(how_far))
        .route("/drawing/{name}", get(drawing))
        .route("/photo/small/{id}", get(|shared, id| photo(shared, id, true)))
        .route("/photo/whole/{id}", get(|shared, id| photo(shared, id, false)))
        .route("/photo/piece/{id}/{left}/{top}/{width}/{height}", get(piece))
        .route("/written/{place}", get(written))
        .layer(middleware::from_fn_with_state(shared.clone(), ours))
        .route("/open/{secret}", get(open))
        .route(
            "/look.css",
            get(|| async { asset("text/css; charset=utf-8", include_str!("../../../look/look.css")) }),
        )
        .route(
            "/page.css",
            get(|| async { asset("text/css; charset=utf-8", include_str!("../assets/page.css")) }),
        )
        .route(
            "/page.js",
            get(|| async { asset("text/javascript; charset=utf-8", include_str!("../assets/page.js")) }),
        )
        .layer(middleware::from_fn_with_state(shared.clone(), addressed))
        .with_state(shared)
}

/// Only our own browser, only our own pages.
async fn ours(State(shared): State<Shared>, request: Request, next: Next) -> Response {
    match shared.door.is_ours(request.method(), request.headers()) {
        Ok(()) => {
            let mut response = next.run(request).await;
            response.extensions_mut().insert(LetIn);
            response
        }
        Err(StatusCode::PAYLOAD_TOO_LARGE) => {
            let drawn = shared.with(|host| {
                host.say(Phrase::new("page-too-large"));
                host.draw(None)
            });
            match drawn.await {
                Ok(Ok(text)) => (StatusCode::PAYLOAD_TOO_LARGE, html(text)).into_response(),
                _ => StatusCode::PAYLOAD_TOO_LARGE.into_response(),
            }
        }
        Err(status) => {
            let text = shared.with(|host| closed(host.words())).await.unwrap_or_default();
            (status, html(text)).into_response()
        }
    }
}

/// Only by our own address; and what holds for every answer.
async fn addressed(State(shared): State<Shared>, request: Request, next: Next) -> Response {
    let mut response = match shared.door.is_addressed(request.headers()) {
        Ok(()) => next.run(request).await,
        Err(status) => status.into_response(),
    };
    let headers = response.headers_mut();
    let all = [
        (CONTENT_SECURITY_POLICY, POLICY),
        (REFERRER_POLICY, "no-referrer"),
        (X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
        (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    ];
    for (name, value) in all {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers.entry(CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    response
}

fn html(text: String) -> Response {
    ([(CONTENT_TYPE, "text/html; charset=utf-8")], text).into_response()
}

fn asset(kind: &'static str, text: &'static str) -> Response {
    ([(CONTENT_TYPE, kind), (CACHE_CONTROL, "no-cache")], text).into_response()
}

/// The secret moves from the address into a cookie.
async fn open(State(shared): State<Shared>, Path(secret): Path<String>) -> Response {
    if !shared.door.lets_in(&secret) {
        let text = shared.with(|host| closed(host.words())).await.unwrap_or_default();
        return (StatusCode::FORBIDDEN, html(text)).into_response();
    }
    match HeaderValue::from_str(&shared.door.handed_out()) {
        Ok(cookie) => {
            (StatusCode::SEE_OTHER, [(SET_COOKIE, cookie), (LOCATION, HeaderValue::from_static("/"))])
                .into_response()
        }
        Err(_) => StatusCode::INTERNAL_SERVER_ERROR.into_response(),
    }
}

/// The screen as it stands.
async fn shown(State(shared): State<Shared>, headers: HeaderMap) -> Response {
    drawn(&shared, shown_wide(&headers), StatusCode::OK).await
}

async fn drawn(shared: &Shared, shown_wide: Option<u32>, status: StatusCode) -> Response {
    match shared.with(move |host| host.draw(shown_wide)).await {
        Ok(Ok(text)) => (status, html(text)).into_response(),
        _ => StatusCode::INTERNAL_SERVER_ERROR.into_response(),
    }
}

/// A form. The screen that follows is fetched anew, so that going back or looking again does nothing twice.
async fn deed(
    State(shared): State<Shared>,
    headers: HeaderMap,
    multipart: Result<Multipart, axum::extract::multipart::MultipartRejection>,
) -> Response {
    let Ok(multipart) = multipart else {
        return refused(&shared, Phrase::new("page-broken"), StatusCode::BAD_REQUEST).await;
    };
    match read(&shared, multipart).await {
        Ok(given) => {
            let done = shared.with(move |host| host.act(&given)).await;
            if let Err(status) = done {
                return status.into_response();
            }
            // The script puts it in place by itself.
            if headers.contains_key(BY_SCRIPT) {
                return drawn(&shared, shown_wide(&headers), StatusCode::OK).await;
            }
            (StatusCode::SEE_OTHER, [(LOCATION, HeaderValue::from_static("/"))]).into_response()
        }
        Err(Refusal::Old) => refused(&shared, Phrase::new("page-stale"), StatusCode::CONFLICT).await,
        Err(Refusal::Unknown) => refused(&shared, Phrase::new("page-stale"), StatusCode::FORBIDDEN).await,
        Err(Refusal::TooLarge) => {
            refused(&shared, Phrase::new("page-too-large"), StatusCode::PAYLOAD_TOO_LARGE).await
        }
        Err(Refusal::Broken) => refused(&shared, Phrase::new("page-broken"), StatusCode::BAD_REQUEST).await,
        Err(Refusal::Disk(error)) => {
            refused(&shared, no_room(&error), StatusCode::INSUFFICIENT_STORAGE).await
        }
        Err(Refusal::Fault(status)) => refused(&shared, Phrase::new("page-fault"), status).await,
    }
}

/// Says why nothing was done, on the screen as it stands.
async fn refused(shared: &Shared, why: Phrase, status: StatusCode) -> Response {
    let said = shared.with(move |host| host.say(why)).await;
    if let Err(status) = said {
        return status.into_response();
    }
    drawn(shared, None, status).await
}

/// Why a form does not count.
enum Refusal {
    /// Its screen is out of date.
    Old,
    /// It is no form of ours.
    Unknown,
    /// It holds too much.
    TooLarge,
    /// It cannot be read.
    Broken,
    /// What it holds could not be put down.
    Disk(std::io::Error),
    /// A fault of this release.
    Fault(StatusCode),
}

impl From<std::io::Error> for Refusal {
    fn from(error: std::io::Error) -> Self {
        Self::Disk(error)
    }
}

impl From<MultipartError> for Refusal {
    fn from(error: MultipartError) -> Self {
        if error.status() == StatusCode::PAYLOAD_TOO_LARGE { Self::TooLarge } else { Self::Broken }
    }
}

/// Reads a form. Its ticket comes first and is taken before anything else is read.
async fn read(shared: &Shared, mut multipart: Multipart) -> Result<Given, Refusal> {
    let first = multipart.next_field().await?.filter(|field| field.name() == Some("ticket"));
    let ticket = first.ok_or(Refusal::Unknown)?.text().await?;
    match shared.with(move |host| host.takes(&ticket)).await.map_err(Refusal::Fault)? {
        Worth::Good => {}
        Worth::Old => return Err(Refusal::Old),
        Worth::Unknown => return Err(Refusal::Unknown),
    }
    let mut given = Given::default();
    let mut letters = 0;
    while let Some(mut field) = multipart.next_field().await? {
        let Some(name) = field.name().map(str::to_owned) else { return Err(Refusal::Broken) };
        let Some(own) = field.file_name().map(own_name) else {
            let mut bytes = Vec::new();
            while let Some(chunk) = field.chunk().await? {
                letters += chunk.len();
                if letters > MOST_TEXT {
                    return Err(Refusal::TooLarge);
                }
                bytes.extend_from_slice(&chunk);
            }
            given.texts.push((name, String::from_utf8(bytes).map_err(|_| Refusal::Broken)?));
            continue;
        };
        let Some(first) = field.chunk().await? else { continue };
        let room = shared.with(Host::room).await.map_err(Refusal::Fault)??;
        // A photo keeps its own name in the survey.
        let path: PathBuf = room.join(own);
        let mut file = tokio::fs::File::create(&path).await?;
        file.write_all(&first).await?;
        while let Some(chunk) = field.chunk().await? {
            file.write_all(&chunk).await?;
        }
        file.flush().await?;
        given.files.push((name, path));
    }
    Ok(given)
}

/// A touch on a mark of a drawing: a press with the ticket in its address.
async fn go(State(shared): State<Shared>, Path((ticket, key)): Path<(String, String)>) -> Response {
    let went = shared
        .with(move |host| {
            let worth = host.takes(&ticket);
            if worth == Worth::Good {
                host.act(&Given { texts: vec![("press".into(), key)], files: Vec::new() });
            }
            worth
        })
        .await;
    match went {
        Ok(Worth::Good) => {
            (StatusCode::SEE_OTHER, [(LOCATION, HeaderValue::from_static("/"))]).into_response()
        }
        Ok(Worth::Old) => refused(&shared, Phrase::new("page-stale"), StatusCode::CONFLICT).await,
        Ok(Worth::Unknown) => refused(&shared, Phrase::new("page-stale"), StatusCode::FORBIDDEN).await,
        Err(status) => status.into_response(),
    }
}

/// How far is what goes on beside: thousandths, `?` while that cannot be told, `over` when there is nothing any more.
async fn how_far(State(shared): State<Shared>) -> Response {
    match shared.with(|host| host.how_far()).await {
        Ok(HowFar::Thousandths(thousandths)) => thousandths.to_string().into_response(),
        Ok(HowFar::NotKnown) => "?".into_response(),
        Ok(HowFar::Over) => "over".into_response(),
        Err(status) => status.into_response(),
    }
}

/// One drawing of the screen, alone.
async fn drawing(State(shared): State<Shared>, Path(name): Path<String>) -> Response {
    match shared.with(move |host| host.drawing(&name)).await {
        Ok(Some(text)) => html(text),
        Ok(None) => StatusCode::NOT_FOUND.into_response(),
        Err(status) => status.into_response(),
    }
}

/// A photo.
async fn photo(State(shared): State<Shared>, Path(id): Path<String>, small: bool) -> Response {
    picture(shared.with(move |host| host.photo(small, &id)).await).await
}

/// A piece of a photo, of those that the screen shows and no other: what names none is no address of ours.
async fn piece(
    State(shared): State<Shared>,
    Path((id, left, top, width, height)): Path<(String, u32, u32, u32, u32)>,
) -> Response {
    picture(shared.with(move |host| host.piece(id, [left, top, width, height])).await).await
}

/// The file of a picture. What kind of picture it is say its first bytes (PNG, ISO/IEC 15948, 5.2; everything else is a JPEG here).
async fn picture(file: Result<Option<PathBuf>, StatusCode>) -> Response {
    let bytes = match file.ok().flatten() {
        Some(path) => tokio::fs::read(path).await.ok(),
        None => None,
    };
    let Some(bytes) = bytes else { return StatusCode::NOT_FOUND.into_response() };
    let kind = if bytes.starts_with(b"\x89PNG\r\n\x1a\n") { "image/png" } else { "image/jpeg" };
    // The id of a photo is that of its bytes for ever.
    ([(CONTENT_TYPE, kind), (CACHE_CONTROL, "private, max-age=86400")], bytes).into_response()
}

/// A file that was written, for saving: never shown within the page.
async fn written(State(shared): State<Shared>, Path(place): Path<usize>) -> Response {
    let found =
        shared.with(move |host| host.written(place).map(|(name, path)| (name.to_owned(), path.to_owned())));
    let Ok(Some((name, path))) = found.await else { return StatusCode::NOT_FOUND.into_response() };
    let Ok(file) = tokio::fs::File::open(path).await else { return StatusCode::NOT_FOUND.into_response() };
    let length = file.metadata().await.map(|metadata| metadata.len());
    let plain: String = name.chars().filter(|c| c.is_ascii_alphanumeric() || " .-_".contains(*c)).collect();
    let disposition = format!("attachment; filename=\"{plain}\"");
    let mut response = Body::from_stream(ReaderStream::new(file)).into_response();
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static("application/octet-stream"));
    if let Ok(length) = length {
        headers.insert(CONTENT_LENGTH, HeaderValue::from(length));
    }
    if let Ok(disposition) = HeaderValue::from_str(&disposition) {
        headers.insert(CONTENT_DISPOSITION, disposition);
    }
    response
}
