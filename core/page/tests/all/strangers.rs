//! Whoever is not the browser that was let in, or not on our own page, is refused; the survey stays as it is.
#![expect(clippy::unwrap_used, reason = "a folder that cannot be read ends the test")]

use std::fs;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::time::Duration;

use super::browser::{Browser, House};

/// All bytes under a folder.
fn bytes(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if entry.is_dir() {
            found.extend(bytes(&entry));
        } else {
            found.push((entry.display().to_string(), fs::read(&entry).unwrap()));
        }
    }
    found.sort();
    found
}

/// Tries to begin a survey with a ticket that is good.
fn tries(owner: &Browser, stranger: &Browser) -> u16 {
    let ticket = owner.get("/").ticket();
    stranger.post(&[("ticket", None, ticket.as_bytes()), ("press", None, b"new")]).status
}

#[test]
fn the_owner_comes_in_and_nobody_else_does() {
    let house = House::new();
    let owner = house.browser();
    let before = bytes(house.home.path());
    let port = house.port();
    let wrong = "0".repeat(64);
    let strangers = [
        ("no cookie", owner.without("Cookie")),
        ("a wrong cookie", owner.with("Cookie", &format!("legwork-{port}={wrong}"))),
        ("a cookie of another port", owner.with("Cookie", &format!("legwork-1={wrong}"))),
        ("another site's form", owner.with("Origin", "http://example.org")),
        ("another port of this computer", owner.with("Origin", "http://127.0.0.1:1")),
        ("another scheme", owner.with("Origin", &format!("https://127.0.0.1:{port}"))),
        (
            "a page without origin of another site",
            owner.with("Origin", "null").with("Sec-Fetch-Site", "cross-site"),
        ),
        ("a page without origin that says nothing", owner.with("Origin", "null").without("Sec-Fetch-Site")),
        ("no origin, and nothing said", owner.without("Origin").without("Sec-Fetch-Site")),
        ("a sister site", owner.with("Sec-Fetch-Site", "same-site")),
    ];
    for (who, stranger) in &strangers {
        assert_eq!(tries(&owner, stranger), 403, "{who}");
    }
    for host in
        ["example.org", "localhost", &format!("localhost:{port}"), "127.0.0.1", "[::1]", "127.0.0.1:1"]
    {
        assert_eq!(tries(&owner, &owner.with("Host", host)), 421, "{host}");
        assert_eq!(owner.with("Host", host).get("/").status, 421, "{host}");
    }
    for path in [
        "/",
        "/how-far",
        "/photo/small/x",
        "/photo/piece/x/0/0/1/1",
        "/written/0",
        "/drawing/wiring-map",
        "/go/x/y",
    ] {
        assert_eq!(owner.without("Cookie").get(path).status, 403, "{path}");
        assert_eq!(owner.with("Sec-Fetch-Site", "cross-site").get(path).status, 403, "{path}");
    }
    assert_eq!(owner.get("/").screen(), "surveys", "nothing was done");
    assert_eq!(bytes(house.home.path()), before);
    assert_eq!(tries(&owner, &owner), 303, "and the owner may");
    assert_eq!(tries(&owner, &owner.with("Origin", "null")), 303, "a form of a page that names no referrer");
}

#[test]
fn secrets_and_tickets_cannot_be_guessed_or_used_again() {
    let house = House::new();
    let owner = house.browser();
    for secret in ["", "x", &"0".repeat(64), "..%2f..%2f"] {
        let answer = owner.without("Cookie").get(&format!("/open/{secret}"));
        assert!(matches!(answer.status, 403 | 404), "{secret}: {}", answer.status);
        assert!(answer.header("set-cookie").is_none());
    }
    let once = house.served.address_once().splitn(4, '/').nth(3).unwrap().to_owned();
    assert_eq!(owner.get(&format!("/{once}")).status, 303);
    assert_eq!(owner.get(&format!("/{once}")).status, 403, "once");
    let ticket = owner.get("/").ticket();
    let press = |ticket: &str, key: &[u8]| {
        owner.post(&[("ticket", None, ticket.as_bytes()), ("press", None, key)]).status
    };
    assert_eq!(press(&ticket, b"new"), 303);
    assert_eq!(press(&ticket, b"new"), 403, "a ticket counts once");
    assert_eq!(press("made-up", b"new"), 403);
    assert_eq!(owner.post(&[("press", None, b"new")]).status, 403, "no ticket at all");
}

#[test]
fn a_stale_tab_changes_nothing_and_is_told_so() {
    let house = House::new();
    let owner = house.browser();
    let [one, other] = [owner.get("/"), owner.get("/")];
    let new = owner.deed(&one, &[("press", "new")]);
    let made = owner.deed(&new, &[("written name", "Mill House"), ("press", "make")]);
    let before = bytes(house.home.path());
    let ticket = other.ticket();
    let stale = owner.post(&[("ticket", None, ticket.as_bytes()), ("press", None, b"device")]);
    assert_eq!(stale.status, 409);
    assert_eq!(stale.screen(), made.screen(), "it shows where the survey stands");
    assert!(stale.body.contains("out of date"), "{}", stale.body);
    assert_eq!(bytes(house.home.path()), before);
}

#[test]
fn tricks_with_paths_find_nothing() {
    let house = House::new();
    let owner = house.browser();
    for path in [
        "/../../etc/passwd",
        "/photo/whole/..%2f..%2f..%2fetc%2fpasswd",
        "/photo/small/%00",
        "/written/-1",
        "/written/99999999999999999999",
        "/drawing/..%2f",
        "/look.css/..",
        "//etc/passwd",
        "/assets/page.js",
    ] {
        let answer = owner.get(path);
        assert!(matches!(answer.status, 400 | 404), "{path}: {}", answer.status);
        assert!(!answer.body.contains("root:"), "{path}");
    }
    assert_eq!(owner.get("/").screen(), "surveys");
}

#[test]
fn too_much_is_refused_at_once_and_a_broken_form_too() {
    let house = House::new();
    let owner = house.browser();
    let before = bytes(house.home.path());
    let huge = owner
        .with("Content-Length", &(10_u64 << 30).to_string())
        .with("Content-Type", "multipart/form-data; boundary=x");
    // Ten gigabytes are said and five bytes sent: an answer can only come if the rest is not waited for.
    assert_eq!(huge.ask("POST /deed HTTP/1.1", b"--x\r\n").status, 413);
    let ticket = owner.get("/").ticket();
    let long = vec![b'x'; 3 << 20];
    assert_eq!(owner.post(&[("ticket", None, ticket.as_bytes()), ("written name", None, &long)]).status, 413);
    for (kind, body) in [
        ("text/plain", &b"ticket"[..]),
        ("application/x-www-form-urlencoded", b"ticket=x"),
        ("multipart/form-data; boundary=x", b"--x\r\n\r\n"),
        ("multipart/form-data; boundary=x", b""),
    ] {
        let length = body.len().to_string();
        let answer =
            owner.with("Content-Type", kind).with("Content-Length", &length).ask("POST /deed HTTP/1.1", body);
        assert!(matches!(answer.status, 400 | 403), "{kind}: {}", answer.status);
    }
    let ticket = owner.get("/").ticket();
    let not_text = [("ticket", None, ticket.as_bytes()), ("written name", None, &b"\xff\xfe"[..])];
    assert_eq!(owner.post(&not_text).status, 400);
    assert_eq!(owner.get("/").screen(), "surveys");
    assert_eq!(bytes(house.home.path()), before);
}

#[test]
fn a_thousand_idle_connections_keep_nobody_out() {
    let house = House::new();
    let owner = house.browser();
    let mut idle = Vec::new();
    for number in 0..1000 {
        let Ok(mut stream) = TcpStream::connect(("127.0.0.1", house.port())) else { continue };
        if number % 2 == 0 {
            // Half of them say the beginning of a request and no more.
            let _ = stream.write_all(b"GET / HTTP/1.1\r\nHost: 127");
        }
        idle.push(stream);
    }
    assert!(idle.len() > 900, "{}", idle.len());
    assert_eq!(owner.get("/").screen(), "surveys");
}

#[test]
fn a_client_that_never_ends_its_request_is_cut_off() {
    let house = House::that_waits(Duration::from_millis(200));
    let mut slow = TcpStream::connect(("127.0.0.1", house.port())).unwrap();
    slow.set_read_timeout(Some(Duration::from_secs(40))).unwrap();
    slow.write_all(b"GET / HTTP/1.1\r\nHost:").unwrap();
    let mut answer = Vec::new();
    // An end, an error or an answer: but no waiting for ever.
    match slow.read_to_end(&mut answer) {
        Ok(_) => {}
        Err(error) => {
            assert!(!matches!(error.kind(), std::io::ErrorKind::WouldBlock | std::io::ErrorKind::TimedOut));
        }
    }
}

#[test]
fn every_answer_says_what_may_be_shown() {
    let house = House::new();
    let owner = house.browser();
    for path in ["/", "/look.css", "/page.js", "/no-such-page", "/open/x"] {
        let answer = owner.get(path);
        let policy = answer.header("content-security-policy").unwrap();
        assert!(policy.starts_with("default-src 'none'") && !policy.contains("unsafe"), "{policy}");
        assert_eq!(answer.header("referrer-policy"), Some("no-referrer"), "{path}");
        assert_eq!(answer.header("x-content-type-options"), Some("nosniff"), "{path}");
    }
    // Nothing of the page needs what the policy forbids.
    let text = owner.get("/").body;
    let acts = |text: &str| {
        ["click", "load", "submit", "error", "input"].iter().any(|on| text.contains(&format!(" on{on}=")))
    };
    assert!(!text.contains(" style=") && !text.contains("<style") && !acts(&text), "{text}");
}
