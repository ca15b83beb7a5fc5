//! A very small browser: requests by hand, with whatever headers a test wants.
#![expect(
    clippy::unwrap_used,
    clippy::format_collect,
    reason = "a browser of the tests that cannot go on ends its test"
)]

use std::collections::BTreeMap;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::Duration;

use guide::Guide;
use page::{PageError, Served};
use scraper::{Html, Selector};
use telling::words::{Figures, Language};
use tempfile::TempDir;

/// The page over a fresh home folder.
pub struct House {
    pub served: Served,
    pub home: TempDir,
}

impl House {
    pub fn new() -> Self {
        Self::served_by(page::serve)
    }

    /// One that waits so long for a request to be said.
    pub fn that_waits(head: Duration) -> Self {
        Self::served_by(|guide, words| page::serve_with(guide, words, head))
    }

    fn served_by(serve: impl FnOnce(Guide, Language) -> Result<Served, PageError>) -> Self {
        let home = tempfile::tempdir().unwrap();
        let author = facts::fact::AuthorId::random();
        let mut guide = Guide::at(home.path(), author, guide::english(Figures::default())).unwrap();
        guide.wait_for_long_work(Duration::MAX);
        Self { served: serve(guide, page::english(Figures::default())).unwrap(), home }
    }

    pub fn port(&self) -> u16 {
        let rest = self.served.address().strip_prefix("http://127.0.0.1:").unwrap();
        rest.split('/').next().unwrap().parse().unwrap()
    }

    /// The path of the address that lets in.
    pub fn way_in(&self) -> String {
        self.served.address().splitn(4, '/').nth(3).map(|path| format!("/{path}")).unwrap()
    }

    /// A browser that was let in.
    pub fn browser(&self) -> Browser {
        let port = self.port();
        let mut browser = Browser { port, headers: BTreeMap::new() };
        browser.set("Host", &format!("127.0.0.1:{port}"));
        browser.set("Sec-Fetch-Site", "none");
        let let_in = browser.get(&self.way_in());
        assert_eq!(let_in.status, 303, "{}", let_in.body);
        assert_eq!(let_in.header("location"), Some("/"), "the secret is gone from the address");
        let cookie = let_in.header("set-cookie").unwrap();
        assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), "{cookie}");
        let cookie = cookie.split(';').next().unwrap().to_owned();
        browser.set("Cookie", &cookie);
        browser.set("Sec-Fetch-Site", "same-origin");
        browser.set("Origin", &format!("http://127.0.0.1:{port}"));
        browser
    }
}

#[derive(Clone)]
pub struct Browser {
    pub port: u16,
    headers: BTreeMap<String, String>,
}

pub struct Answer {
    pub status: u16,
    pub head: String,
    pub body: String,
}

impl Answer {
    pub fn header(&self, name: &str) -> Option<&str> {
        self.head.lines().find_map(|line| {
            let (known, value) = line.split_once(": ")?;
            known.eq_ignore_ascii_case(name).then_some(value.trim())
        })
    }

    /// What an attribute of the first element that a selector finds says.
    pub fn attribute(&self, selector: &str, name: &str) -> Option<String> {
        let html = Html::parse_document(&self.body);
        let found = html.select(&Selector::parse(selector).unwrap()).next()?;
        found.value().attr(name).map(str::to_owned)
    }

    pub fn ticket(&self) -> String {
        self.attribute("[name=ticket]", "value").unwrap()
    }

    pub fn screen(&self) -> String {
        self.attribute("body", "data-name").unwrap_or_default()
    }
}

impl Browser {
    pub fn set(&mut self, name: &str, value: &str) {
        self.headers.insert(name.into(), value.into());
    }

    pub fn without(&self, name: &str) -> Self {
        let mut other = self.clone();
        other.headers.remove(name);
        other
    }

    pub fn with(&self, name: &str, value: &str) -> Self {
        let mut other = self.clone();
        other.set(name, value);
        other
    }

    pub fn get(&self, path: &str) -> Answer {
        self.ask(&format!("GET {path} HTTP/1.1"), b"")
    }

    /// A form with these fields, in order; a file has a name.
    pub fn post(&self, fields: &[(&str, Option<&str>, &[u8])]) -> Answer {
        let boundary = "----a-boundary-of-the-tests";
        let mut body = Vec::new();
        for (name, file, bytes) in fields {
            let file = file.map_or(String::new(), |file| {
                format!("; filename=\"{file}\"\r\nContent-Type: application/octet-stream")
            });
            let head =
                format!("--{boundary}\r\nContent-Disposition: form-data; name=\"{name}\"{file}\r\n\r\n");
            body.extend_from_slice(head.as_bytes());
            body.extend_from_slice(bytes);
            body.extend_from_slice(b"\r\n");
        }
        body.extend_from_slice(format!("--{boundary}--\r\n").as_bytes());
        let kind = format!("multipart/form-data; boundary={boundary}");
        self.with("Content-Type", &kind)
            .with("Content-Length", &body.len().to_string())
            .ask("POST /deed HTTP/1.1", &body)
    }

    /// A form of text fields with the ticket of a screen, and the screen that follows.
    pub fn deed(&self, screen: &Answer, fields: &[(&str, &str)]) -> Answer {
        let ticket = screen.ticket();
        let mut all = vec![("ticket", None, ticket.as_bytes())];
        all.extend(fields.iter().map(|(name, text)| (*name, None, text.as_bytes())));
        let answer = self.post(&all);
        assert_eq!(answer.status, 303, "{fields:?}: {}", answer.body);
        self.get("/")
    }

    pub fn ask(&self, line: &str, body: &[u8]) -> Answer {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        stream.set_read_timeout(Some(Duration::from_secs(30))).unwrap();
        let headers: String =
            self.headers.iter().map(|(name, value)| format!("{name}: {value}\r\n")).collect();
        let head = format!("{line}\r\n{headers}Connection: close\r\n\r\n");
        stream.write_all(head.as_bytes()).unwrap();
        // Whoever refuses may hang up before all is sent.
        let _ = stream.write_all(body);
        let mut answer = Vec::new();
        let _ = stream.read_to_end(&mut answer);
        let text = String::from_utf8_lossy(&answer).into_owned();
        let (head, body) = text.split_once("\r\n\r\n").unwrap_or((&text, ""));
        let status = head.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0);
        Answer { status, head: head.into(), body: body.into() }
    }
}
