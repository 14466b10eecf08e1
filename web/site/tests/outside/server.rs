//! The server as a browser and an ill-meaning client see it.

use std::net::TcpStream;
use std::time::{Duration, Instant};

use pitchline_site::{Fault, Options, Server, serve};

use crate::client::Client;
use crate::folder::Folder;

fn site(test: &str, prefix: &str) -> (Folder, Server) {
    let folder = Folder::new(test);
    folder
        .write("secret.txt", "secret")
        .write("site/index.html", "page")
        .write("site/a b.txt", "spaced")
        .write("site/.hidden", "hidden")
        .write("site/app-1f2e3d4c5b6a7988_bg.wasm", "\0asm")
        .write("site/manifest.webmanifest", "{}")
        .write("site/sub/index.html", "sub");
    let server =
        serve(Options { prefix: prefix.to_owned(), ..Options::new(folder.path().join("site")) })
            .expect("a free port is found");
    (folder, server)
}

#[test]
fn files_come_with_their_type_and_how_long_to_keep_them() {
    let (_folder, server) = site("types", "/");
    let mut client = Client::new(&server);
    for (path, media_type, cache, body) in [
        ("/", "text/html; charset=utf-8", "no-cache", "page"),
        ("/index.html?x=1", "text/html; charset=utf-8", "no-cache", "page"),
        ("/a%20b.txt", "text/plain; charset=utf-8", "no-cache", "spaced"),
        ("/manifest.webmanifest", "application/manifest+json", "no-cache", "{}"),
        (
            "/app-1f2e3d4c5b6a7988_bg.wasm",
            "application/wasm",
            "public, max-age=31536000, immutable",
            "\0asm",
        ),
        ("/sub/", "text/html; charset=utf-8", "no-cache", "sub"),
    ] {
        let reply = client.ask("GET", path);
        assert_eq!(reply.status, 200, "{path}");
        assert_eq!(reply.header("content-type"), Some(media_type), "{path}");
        assert_eq!(reply.header("cache-control"), Some(cache), "{path}");
        assert_eq!(reply.body, body.as_bytes(), "{path}");
    }
}

#[test]
fn a_folder_without_its_slash_is_redirected_with_its_query() {
    let (_folder, server) = site("redirect", "tools/calc");
    assert!(server.url().ends_with("/tools/calc/"), "{}", server.url());
    let mut client = Client::new(&server);
    for (path, location) in [
        ("/tools/calc", "/tools/calc/"),
        ("/tools/calc?a=b", "/tools/calc/?a=b"),
        ("/tools/calc/sub", "/tools/calc/sub/"),
    ] {
        let reply = client.ask("GET", path);
        assert_eq!(reply.status, 301, "{path}");
        assert_eq!(reply.header("location"), Some(location), "{path}");
    }
    assert_eq!(client.ask("GET", "/tools/calc/?a=b").body, b"page");
    for outside in ["/", "/tools/", "/tools/calculator", "/index.html"] {
        assert_eq!(client.ask("GET", outside).status, 404, "{outside}");
    }
}

#[test]
fn nothing_outside_the_folder_is_sent() {
    let (folder, server) = site("traversal", "/");
    #[cfg(unix)]
    std::os::unix::fs::symlink(
        folder.path().join("secret.txt"),
        folder.path().join("site/link.txt"),
    )
    .expect("a link can be made");
    let mut client = Client::new(&server);
    for path in [
        "/../secret.txt",
        "/sub/../../secret.txt",
        "/%2e%2e/secret.txt",
        "/%2E%2E%2Fsecret.txt",
        "/..%2fsecret.txt",
        "/..%5csecret.txt",
        "/..\\secret.txt",
        "//etc/passwd",
        "/%2fetc/passwd",
        "/c:/secret.txt",
        "/.hidden",
        "/index.html%00.txt",
        "/link.txt",
        "/missing.txt",
    ] {
        let reply = client.ask("GET", path);
        assert_eq!(reply.status, 404, "{path}");
        assert!(!reply.body.starts_with(b"secret"), "{path}");
    }
    for path in ["/%", "/%zz", "/%ff"] {
        assert_eq!(client.ask("GET", path).status, 400, "{path}");
    }
}

#[test]
fn only_reading_is_allowed() {
    let (_folder, server) = site("methods", "/");
    let mut client = Client::new(&server);
    let head = client.ask("HEAD", "/");
    assert_eq!(head.status, 200);
    assert_eq!(head.header("content-length"), Some("4"));
    // The answer to HEAD had no body, or this one would not start where it should.
    assert_eq!(client.ask("GET", "/").body, b"page");
    let post = client.ask("POST", "/");
    assert_eq!(post.status, 405);
    assert_eq!(post.header("allow"), Some("GET, HEAD"));
}

#[test]
fn what_is_not_a_request_ends_the_connection() {
    let (_folder, server) = site("malformed", "/");
    for bytes in [
        "nonsense\r\n\r\n",
        "GET / HTTP/2.0\r\n\r\n",
        "GET http://elsewhere/ HTTP/1.1\r\n\r\n",
        "GET /a\rSet-Cookie:x HTTP/1.1\r\n\r\n",
        "GET / HTTP/1.1\r\nno colon\r\n\r\n",
        "GET / HTTP/1.1\r\nContent-Length: 5\r\n\r\nhello",
        "GET / HTTP/1.1\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
    ] {
        let mut client = Client::new(&server);
        client.send(bytes).expect("the connection is open");
        let reply = client.receive(true).expect("the server answers");
        assert_eq!(reply.status, 400, "{bytes:?}");
        assert_eq!(reply.header("connection"), Some("close"), "{bytes:?}");
        assert!(client.try_ask("GET", "/").is_none(), "{bytes:?}");
    }
}

#[test]
fn a_client_may_ask_for_the_connection_to_be_closed() {
    let (_folder, server) = site("close", "/");
    let mut client = Client::new(&server);
    client.send("GET / HTTP/1.1\r\nConnection: close\r\n\r\n").expect("the connection is open");
    let reply = client.receive(true).expect("the server answers");
    assert_eq!(reply.header("connection"), Some("close"));
    assert!(client.try_ask("GET", "/").is_none());
}

#[test]
fn stopping_closes_the_port_and_every_connection() {
    let (folder, mut server) = site("stop", "/");
    let mut client = Client::new(&server);
    assert_eq!(client.ask("GET", "/").status, 200);
    let port = server.port();
    server.stop();
    assert!(client.try_ask("GET", "/").is_none(), "a kept connection is closed");
    assert!(TcpStream::connect(("127.0.0.1", port)).is_err(), "the port is closed");

    let again = serve(Options { port, ..Options::new(folder.path().join("site")) })
        .expect("the port can be taken again");
    assert_eq!(Client::new(&again).ask("GET", "/").body, b"page");
    drop(again);
    assert!(TcpStream::connect(("127.0.0.1", port)).is_err(), "dropping stops too");
}

#[test]
fn a_port_in_use_is_refused() {
    let (folder, server) = site("taken", "/");
    let error = serve(Options { port: server.port(), ..Options::new(folder.path()) })
        .expect_err("the port is taken");
    assert_eq!(error.kind(), std::io::ErrorKind::AddrInUse);
}

#[test]
fn requests_are_logged_and_the_folder_can_be_exchanged() {
    let (folder, server) = site("exchange", "/calc/");
    folder.write("next/index.html", "next page");
    let mut client = Client::new(&server);
    assert_eq!(client.ask("GET", "/calc/?a=b").body, b"page");
    server.set_dir(folder.path().join("next"));
    assert_eq!(client.ask("GET", "/calc/").body, b"next page");
    assert_eq!(client.ask("GET", "/calc/sub/").status, 404);
    assert_eq!(server.requests(), ["GET /calc/?a=b 200", "GET /calc/ 200", "GET /calc/sub/ 404"]);
    server.clear_requests();
    assert!(server.requests().is_empty());
}

#[test]
fn faults_are_played_and_mended() {
    let (_folder, server) = site("faults", "/calc/");
    let mut client = Client::new(&server);
    server.break_path("./");
    assert_eq!(client.ask("GET", "/calc/?x").status, 404);
    assert_eq!(client.ask("GET", "/calc/index.html").status, 200);
    server.set_fault("manifest.webmanifest", Fault::Body(b"[]".to_vec()));
    let changed = client.ask("GET", "/calc/manifest.webmanifest");
    assert_eq!(changed.body, b"[]");
    assert_eq!(changed.header("content-type"), Some("application/manifest+json"));
    server.set_fault("sub/", Fault::Redirect("/calc/".to_owned()));
    let redirected = client.ask("GET", "/calc/sub/");
    assert_eq!(redirected.status, 301);
    assert_eq!(redirected.header("location"), Some("/calc/"));
    let pause = Duration::from_millis(150);
    server.set_fault("index.html", Fault::Delay(pause));
    let before = Instant::now();
    assert_eq!(client.ask("GET", "/calc/index.html").status, 200);
    assert!(before.elapsed() >= pause);
    server.mend();
    assert_eq!(client.ask("GET", "/calc/").status, 200);
}

#[test]
fn the_network_is_left_alone_unless_asked_for() {
    let (folder, server) = site("network", "/");
    assert_eq!(server.network_url(), None);
    let open = serve(Options { network: true, ..Options::new(folder.path().join("site")) })
        .expect("a free port is found");
    // A machine without a network has no such address; with one, the page is there.
    if let Some(url) = open.network_url() {
        let host =
            url.trim_start_matches("http://").split('/').next().expect("an address has a host");
        assert!(TcpStream::connect(host).is_ok(), "{url}");
        let closed = host.replace(&open.port().to_string(), &server.port().to_string());
        assert!(TcpStream::connect(&closed).is_err(), "{closed}");
    }
}
