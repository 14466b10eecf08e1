//! Speaks HTTP in bytes, so that nothing tidies up an address on its way.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;

use pitchline_site::Server;

/// One connection, kept alive.
pub(crate) struct Client(BufReader<TcpStream>);

pub(crate) struct Reply {
    pub(crate) status: u16,
    headers: Vec<(String, String)>,
    pub(crate) body: Vec<u8>,
}

impl Reply {
    pub(crate) fn header(&self, name: &str) -> Option<&str> {
        self.headers.iter().find(|(header, _)| header == name).map(|(_, value)| value.as_str())
    }
}

impl Client {
    pub(crate) fn new(server: &Server) -> Self {
        let stream = TcpStream::connect(("127.0.0.1", server.port())).expect("the server listens");
        Client(BufReader::new(stream))
    }

    /// Sends a request without a body; the target goes out as it is.
    pub(crate) fn ask(&mut self, method: &str, target: &str) -> Reply {
        self.try_ask(method, target).expect("the server answers")
    }

    pub(crate) fn try_ask(&mut self, method: &str, target: &str) -> Option<Reply> {
        self.send(&format!("{method} {target} HTTP/1.1\r\nHost: localhost\r\n\r\n"))?;
        self.receive(method != "HEAD")
    }

    pub(crate) fn send(&mut self, text: &str) -> Option<()> {
        self.0.get_mut().write_all(text.as_bytes()).ok()
    }

    /// `None` when the connection has ended.
    pub(crate) fn receive(&mut self, with_body: bool) -> Option<Reply> {
        let first = self.line()?;
        let status = first.split(' ').nth(1)?.parse().ok()?;
        let mut headers = Vec::new();
        loop {
            let line = self.line()?;
            match line.split_once(": ") {
                Some((name, value)) => headers.push((name.to_lowercase(), value.to_owned())),
                None => break,
            }
        }
        let mut reply = Reply { status, headers, body: Vec::new() };
        if with_body {
            let length = reply.header("content-length")?.parse().ok()?;
            reply.body = vec![0; length];
            self.0.read_exact(&mut reply.body).ok()?;
        }
        Some(reply)
    }

    fn line(&mut self) -> Option<String> {
        let mut line = String::new();
        self.0.read_line(&mut line).ok()?;
        let line = line.strip_suffix("\r\n")?;
        Some(line.to_owned())
    }
}
