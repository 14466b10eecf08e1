//! From a request's path to what is sent back, the way a plain static host does it.

use std::fs;
use std::path::Path;

use crate::kind::{cache_control, media_type};

/// A whole response, before it is written out.
pub(crate) struct Answer {
    pub(crate) status: u16,
    pub(crate) media_type: &'static str,
    pub(crate) cache_control: &'static str,
    pub(crate) location: Option<String>,
    pub(crate) body: Vec<u8>,
}

impl Answer {
    /// A short plain answer that is not a file.
    pub(crate) fn plain(status: u16) -> Self {
        Answer {
            status,
            media_type: "text/plain; charset=utf-8",
            cache_control: "no-cache",
            location: None,
            body: format!("{status} {}\n", reason(status)).into_bytes(),
        }
    }

    /// A permanent redirect, as hosts send it for a folder asked for without its slash.
    pub(crate) fn redirect(location: String) -> Self {
        Answer { location: Some(location), ..Answer::plain(301) }
    }

    /// A file's content under the type its name implies.
    pub(crate) fn file(name: &str, body: Vec<u8>) -> Self {
        Answer {
            status: 200,
            media_type: media_type(name),
            cache_control: cache_control(name),
            location: None,
            body,
        }
    }
}

/// The words that go with a status code.
pub(crate) fn reason(status: u16) -> &'static str {
    match status {
        200 => "OK",
        301 => "Moved Permanently",
        400 => "Bad Request",
        404 => "Not Found",
        405 => "Method Not Allowed",
        _ => "Error",
    }
}

/// The part of a path below the prefix (`""` for the folder itself), still percent-encoded, or
/// the answer to give when there is none.
///
/// `prefix` begins and ends with a slash.
pub(crate) fn below<'a>(
    prefix: &str,
    path: &'a str,
    query: Option<&str>,
) -> Result<&'a str, Answer> {
    match path.strip_prefix(prefix) {
        Some(rest) => Ok(rest),
        None if prefix.strip_suffix('/') == Some(path) => {
            Err(Answer::redirect(with_query(prefix, query)))
        }
        None => Err(Answer::plain(404)),
    }
}

/// The file of `folder` that `rest` names.
///
/// Nothing outside `folder` is ever sent: segments that climb, hide or carry a separator are
/// refused before the file system is asked, and links that lead out of it are refused after.
pub(crate) fn answer(folder: &Path, prefix: &str, rest: &str, query: Option<&str>) -> Answer {
    let Some(mut segments) = rest.split('/').map(decode).collect::<Option<Vec<String>>>() else {
        return Answer::plain(400);
    };
    if segments.last().is_some_and(String::is_empty) {
        segments.pop();
        segments.push("index.html".to_owned());
    }
    if segments.iter().any(|segment| !is_ordinary(segment)) {
        return Answer::plain(404);
    }
    let name = segments.join("/");
    let Ok(path) = folder.join(&name).canonicalize() else {
        return Answer::plain(404);
    };
    let inside = folder.canonicalize().is_ok_and(|folder| path.starts_with(folder));
    if !inside {
        return Answer::plain(404);
    }
    if path.is_dir() {
        return Answer::redirect(with_query(&format!("{prefix}{rest}/"), query));
    }
    match fs::read(&path) {
        Ok(body) => Answer::file(&name, body),
        Err(_) => Answer::plain(404),
    }
}

fn with_query(path: &str, query: Option<&str>) -> String {
    match query {
        Some(query) => format!("{path}?{query}"),
        None => path.to_owned(),
    }
}

fn is_ordinary(segment: &str) -> bool {
    !segment.is_empty()
        && !segment.starts_with('.')
        && !segment.contains(['/', '\\', ':'])
        && !segment.contains(char::is_control)
}

/// Percent-decoding, RFC 3986 section 2.1; `None` when it is malformed or not UTF-8.
fn decode(segment: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(segment.len());
    let mut rest = segment.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let high = char::from(rest.next()?).to_digit(16)?;
            let low = char::from(rest.next()?).to_digit(16)?;
            bytes.push(u8::try_from(high * 16 + low).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}

#[cfg(test)]
mod tests {
    use super::decode;

    #[test]
    fn percent_decoding() {
        // The first two are examples of RFC 3986, sections 2.3 and 2.1.
        assert_eq!(decode("%7Esmith").as_deref(), Some("~smith"));
        assert_eq!(decode("a%20b").as_deref(), Some("a b"));
        assert_eq!(decode("%"), None);
        assert_eq!(decode("%4"), None);
        assert_eq!(decode("%zz"), None);
        assert_eq!(decode("%+1"), None);
        assert_eq!(decode("%ff"), None);
    }
}
