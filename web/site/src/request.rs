//! Reads one HTTP request from a connection: no more of RFC 9112 than a static host needs.

use std::io::{self, BufRead, Read};

/// Enough for a share link of 8 kB and a browser's own headers; more is refused.
const LONGEST_HEAD: u64 = 64 * 1024;

/// What the client asked for.
pub(crate) struct Request {
    /// `GET`, `HEAD` or something that will be refused.
    pub(crate) method: String,
    /// Path and query, still percent-encoded.
    pub(crate) target: String,
    /// Whether the connection may carry another request after this one.
    pub(crate) keep_alive: bool,
}

/// Reads the next request; `None` when the client has closed the connection.
///
/// # Errors
/// [`io::ErrorKind::InvalidData`] when the bytes are not a request this server takes; any other
/// kind comes from the connection.
pub(crate) fn read(connection: &mut impl BufRead) -> io::Result<Option<Request>> {
    let mut head = connection.by_ref().take(LONGEST_HEAD);
    let Some(first) = line(&mut head)? else {
        return Ok(None);
    };
    let mut words = first.split(' ');
    let (Some(method), Some(target), Some(version), None) =
        (words.next(), words.next(), words.next(), words.next())
    else {
        return Err(invalid("request line"));
    };
    // It comes back in the Location of a redirect, where a stray control would add a header.
    if !target.starts_with('/') || target.contains(char::is_control) {
        return Err(invalid("target"));
    }
    let mut keep_alive = match version {
        "HTTP/1.1" => true,
        "HTTP/1.0" => false,
        _ => return Err(invalid("version")),
    };
    loop {
        let header = line(&mut head)?.ok_or_else(|| invalid("header"))?;
        if header.is_empty() {
            break;
        }
        let (name, value) = header.split_once(':').ok_or_else(|| invalid("header"))?;
        let value = value.trim().to_ascii_lowercase();
        match name.to_ascii_lowercase().as_str() {
            "connection" if value.contains("close") => keep_alive = false,
            // A body would be taken for the next request.
            "content-length" if value != "0" => return Err(invalid("body")),
            "transfer-encoding" => return Err(invalid("body")),
            _ => {}
        }
    }
    Ok(Some(Request { method: method.to_owned(), target: target.to_owned(), keep_alive }))
}

/// The next line without its ending; `None` at the end of the stream.
fn line(source: &mut impl BufRead) -> io::Result<Option<String>> {
    let mut bytes = Vec::new();
    if source.read_until(b'\n', &mut bytes)? == 0 {
        return Ok(None);
    }
    if bytes.pop() != Some(b'\n') {
        return Err(invalid("line"));
    }
    if bytes.last() == Some(&b'\r') {
        bytes.pop();
    }
    String::from_utf8(bytes).map(Some).map_err(|_| invalid("text"))
}

fn invalid(what: &str) -> io::Error {
    io::Error::new(io::ErrorKind::InvalidData, format!("unacceptable {what}"))
}
