//! Who may come in: this computer's browser with the secret, from a page of ours, and nobody else.

use std::sync::{Mutex, PoisonError};

use axum::http::header::{CONTENT_LENGTH, COOKIE, HOST, ORIGIN};
use axum::http::{HeaderMap, Method, StatusCode};

use crate::secret::Secret;

/// The most that one form may hold, bytes: a survey with all its photos.
pub(crate) const MOST_UPLOADED: u64 = 4 << 30;

/// What tells our own browser from strangers.
pub(crate) struct Door {
    /// The secret that the browser holds.
    pub(crate) secret: Secret,
    /// Another one that lets in once, for where others may read along.
    pub(crate) once: Mutex<Option<Secret>>,
    /// The port that is listened on.
    pub(crate) port: u16,
}

impl Door {
    /// Whether somebody who says this may come in.
    pub(crate) fn lets_in(&self, letters: &str) -> bool {
        let mut once = self.once.lock().unwrap_or_else(PoisonError::into_inner);
        self.secret.is(letters) || once.take_if(|once| once.is(letters)).is_some()
    }

    /// The name of the cookie: of this port, since cookies know no ports (RFC 6265, 8.5).
    pub(crate) fn cookie(&self) -> String {
        format!("legwork-{}", self.port)
    }

    /// The cookie as it is handed out: for this session, for no script, for no other site.
    pub(crate) fn handed_out(&self) -> String {
        format!("{}={}; HttpOnly; SameSite=Strict; Path=/", self.cookie(), self.secret.letters())
    }

    /// Our own origin.
    pub(crate) fn origin(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// Whether a request speaks to us by our own address: another name for it is another site's trick (DNS rebinding).
    ///
    /// # Errors
    /// What to answer instead.
    pub(crate) fn is_addressed(&self, headers: &HeaderMap) -> Result<(), StatusCode> {
        let mut hosts = headers.get_all(HOST).iter();
        let host = hosts.next().and_then(|host| host.to_str().ok());
        let own = format!("127.0.0.1:{}", self.port);
        if host == Some(&own) && hosts.next().is_none() {
            Ok(())
        } else {
            Err(StatusCode::MISDIRECTED_REQUEST)
        }
    }

    /// Whether a request comes from the browser that was let in, and from a page of ours.
    ///
    /// # Errors
    /// What to answer instead.
    pub(crate) fn is_ours(&self, method: &Method, headers: &HeaderMap) -> Result<(), StatusCode> {
        if !self.has_cookie(headers) {
            return Err(StatusCode::FORBIDDEN);
        }
        let said = |name: &str| headers.get(name).map(|value| value.to_str().unwrap_or("?"));
        let site = said("sec-fetch-site");
        // `none`: typed or opened by the user.
        if !matches!(site, None | Some("same-origin" | "none")) {
            return Err(StatusCode::FORBIDDEN);
        }
        if method == Method::POST {
            // A form of a page with the policy `no-referrer` is sent with the origin `null` (Fetch, "append a request
            // Origin header"); then the browser must say itself that it came from our page.
            let own = self.origin();
            let from_us = match headers.get(ORIGIN).map(|origin| origin.to_str().unwrap_or("?")) {
                Some("null") | None => site == Some("same-origin"),
                Some(origin) => origin == own,
            };
            if !from_us {
                return Err(StatusCode::FORBIDDEN);
            }
        }
        let length = headers.get(CONTENT_LENGTH).and_then(|length| length.to_str().ok()?.parse::<u64>().ok());
        if length.is_some_and(|length| length > MOST_UPLOADED) {
            return Err(StatusCode::PAYLOAD_TOO_LARGE);
        }
        Ok(())
    }

    fn has_cookie(&self, headers: &HeaderMap) -> bool {
        let name = self.cookie();
        let cookies = headers.get_all(COOKIE).iter().filter_map(|cookies| cookies.to_str().ok());
        cookies
            .flat_map(|cookies| cookies.split(';'))
            .filter_map(|cookie| cookie.trim().split_once('='))
            .any(|(known, letters)| known == name && self.secret.is(letters))
    }
}

/// What may be shown: nothing but what comes from us, and no script but our own.
pub(crate) const POLICY: &str = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data: blob:; \
                                 connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
