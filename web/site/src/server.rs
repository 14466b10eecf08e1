//! A small static host, with what tests need to play a real one's bad days.

use std::collections::HashMap;
use std::io::{self, BufReader, Write};
use std::net::{IpAddr, Ipv4Addr, Shutdown, SocketAddr, TcpListener, TcpStream, UdpSocket};
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::{self, JoinHandle};
use std::time::Duration;

use crate::answer::{self, Answer};
use crate::request::{self, Request};

/// How to serve a folder.
#[derive(Clone, Debug)]
pub struct Options {
    /// The folder whose files are served.
    pub dir: PathBuf,
    /// Where on the host the folder appears, such as `/tools/calc/`; slashes at both ends are
    /// added where missing.
    pub prefix: String,
    /// The port; 0 takes any free one.
    pub port: u16,
    /// Also listen on the local network. Otherwise only this machine can connect.
    pub network: bool,
}

impl Options {
    /// Serves `dir` at `/` on any free port, to this machine only.
    pub fn new(dir: impl Into<PathBuf>) -> Self {
        Options { dir: dir.into(), prefix: "/".to_owned(), port: 0, network: false }
    }
}

/// How a path misbehaves, see [`Server::set_fault`].
#[derive(Clone, Debug)]
pub enum Fault {
    /// Answered 404.
    Missing,
    /// Answered with a redirect to this location.
    Redirect(String),
    /// Answered correctly, but only after this time.
    Delay(Duration),
    /// Answered 200 with these bytes instead of the file's.
    Body(Vec<u8>),
    /// Answered correctly, with leave to keep it for a day without asking again.
    Stale,
}

/// A running server. It stops when dropped.
#[derive(Debug)]
pub struct Server {
    address: SocketAddr,
    network: bool,
    shared: Arc<Shared>,
    listener: Option<JoinHandle<()>>,
}

#[derive(Debug)]
struct Shared {
    prefix: String,
    stopping: AtomicBool,
    dir: Mutex<PathBuf>,
    faults: Mutex<HashMap<String, Fault>>,
    log: Mutex<Vec<String>>,
    open: Mutex<HashMap<u64, TcpStream>>,
}

/// Starts serving.
///
/// # Errors
/// When the port is taken or may not be used.
pub fn serve(options: Options) -> io::Result<Server> {
    let host = if options.network { Ipv4Addr::UNSPECIFIED } else { Ipv4Addr::LOCALHOST };
    let port = options.port;
    let socket = TcpListener::bind((host, port))
        .map_err(|error| io::Error::new(error.kind(), format!("port {port}: {error}")))?;
    let address = SocketAddr::new(Ipv4Addr::LOCALHOST.into(), socket.local_addr()?.port());
    let trimmed = options.prefix.trim_matches('/');
    let shared = Arc::new(Shared {
        prefix: if trimmed.is_empty() { "/".to_owned() } else { format!("/{trimmed}/") },
        stopping: AtomicBool::new(false),
        dir: Mutex::new(options.dir),
        faults: Mutex::default(),
        log: Mutex::default(),
        open: Mutex::default(),
    });
    let listener = thread::spawn({
        let shared = Arc::clone(&shared);
        move || listen(&socket, &shared)
    });
    Ok(Server { address, network: options.network, shared, listener: Some(listener) })
}

impl Server {
    /// The address of the page on this machine, such as `http://127.0.0.1:8417/tools/calc/`.
    pub fn url(&self) -> String {
        format!("http://{}{}", self.address, self.shared.prefix)
    }

    /// The address of the page on the local network; `None` unless asked for in the options, or
    /// when this machine has no network.
    pub fn network_url(&self) -> Option<String> {
        let port = self.address.port();
        let host = self.network.then(local_network_address).flatten()?;
        Some(format!("http://{host}:{port}{}", self.shared.prefix))
    }

    /// The port listened on.
    pub fn port(&self) -> u16 {
        self.address.port()
    }

    /// Every request answered so far, oldest first: method, path with query, status, such as
    /// `GET /tools/calc/?a=b 200`.
    pub fn requests(&self) -> Vec<String> {
        lock(&self.shared.log).clone()
    }

    /// Empties the request log.
    pub fn clear_requests(&self) {
        lock(&self.shared.log).clear();
    }

    /// Serves another folder from now on, as when a new build is uploaded.
    pub fn set_dir(&self, dir: impl Into<PathBuf>) {
        *lock(&self.shared.dir) = dir.into();
    }

    /// Makes a path misbehave. `path` is relative to the page, without a query: `catalogue.json`;
    /// `""` or `./` is the page itself.
    pub fn set_fault(&self, path: &str, fault: Fault) {
        lock(&self.shared.faults).insert(relative(path).to_owned(), fault);
    }

    /// Answers 404 for a path, see [`Server::set_fault`].
    pub fn break_path(&self, path: &str) {
        self.set_fault(path, Fault::Missing);
    }

    /// Takes back every fault.
    pub fn mend(&self) {
        lock(&self.shared.faults).clear();
    }

    /// Closes the listening socket and every open connection. Afterwards the port refuses
    /// connections and may be taken again. Stopping twice does nothing more.
    pub fn stop(&mut self) {
        let Some(listener) = self.listener.take() else {
            return;
        };
        self.shared.stopping.store(true, Ordering::SeqCst);
        // Accepting blocks, and only a connection ends the wait.
        drop(TcpStream::connect(self.address));
        drop(listener.join());
        for (_, stream) in lock(&self.shared.open).drain() {
            drop(stream.shutdown(Shutdown::Both));
        }
    }

    /// Serves until the process ends.
    pub fn wait(mut self) {
        if let Some(listener) = self.listener.take() {
            drop(listener.join());
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stop();
    }
}

fn listen(socket: &TcpListener, shared: &Arc<Shared>) {
    for (number, stream) in (0u64..).zip(socket.incoming()) {
        if shared.stopping.load(Ordering::SeqCst) {
            return;
        }
        let Ok(stream) = stream else { continue };
        let Ok(handle) = stream.try_clone() else {
            continue;
        };
        // Noted here, before the next look at `stopping`, so that `stop` finds all of them.
        lock(&shared.open).insert(number, handle);
        let shared = Arc::clone(shared);
        thread::spawn(move || {
            // A client that goes away in the middle is no concern of ours.
            drop(converse(&stream, &shared));
            drop(stream.shutdown(Shutdown::Both));
            lock(&shared.open).remove(&number);
        });
    }
}

fn converse(mut stream: &TcpStream, shared: &Shared) -> io::Result<()> {
    let mut reader = BufReader::new(stream);
    loop {
        let request = match request::read(&mut reader) {
            Ok(Some(request)) => request,
            Ok(None) => return Ok(()),
            Err(error) if error.kind() == io::ErrorKind::InvalidData => {
                return write(&mut stream, &Answer::plain(400), true, false);
            }
            Err(error) => return Err(error),
        };
        let answer = respond(&request, shared);
        lock(&shared.log).push(format!("{} {} {}", request.method, request.target, answer.status));
        let with_body = request.method != "HEAD";
        write(&mut stream, &answer, with_body, request.keep_alive)?;
        if !request.keep_alive {
            return Ok(());
        }
    }
}

fn respond(request: &Request, shared: &Shared) -> Answer {
    if !matches!(request.method.as_str(), "GET" | "HEAD") {
        return Answer::plain(405);
    }
    let (path, query) = match request.target.split_once('?') {
        Some((path, query)) => (path, Some(query)),
        None => (request.target.as_str(), None),
    };
    let rest = match answer::below(&shared.prefix, path, query) {
        Ok(rest) => rest,
        Err(answer) => return answer,
    };
    let fault = lock(&shared.faults).get(rest).cloned();
    match &fault {
        Some(Fault::Missing) => return Answer::plain(404),
        Some(Fault::Redirect(location)) => return Answer::redirect(location.clone()),
        Some(Fault::Body(body)) => {
            let name = if rest.is_empty() { "index.html" } else { rest };
            return Answer::file(name, body.clone());
        }
        Some(Fault::Delay(time)) => thread::sleep(*time),
        Some(Fault::Stale) | None => {}
    }
    let dir = lock(&shared.dir).clone();
    let answer = answer::answer(&dir, &shared.prefix, rest, query);
    match fault {
        Some(Fault::Stale) => Answer { cache_control: "public, max-age=86400", ..answer },
        _ => answer,
    }
}

fn write(
    stream: &mut impl Write,
    answer: &Answer,
    with_body: bool,
    keep_alive: bool,
) -> io::Result<()> {
    let mut message = format!(
        "HTTP/1.1 {} {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nCache-Control: {}\r\n\
         X-Content-Type-Options: nosniff\r\n",
        answer.status,
        answer::reason(answer.status),
        answer.media_type,
        answer.body.len(),
        answer.cache_control,
    );
    if let Some(location) = &answer.location {
        message += &format!("Location: {location}\r\n");
    }
    if answer.status == 405 {
        message += "Allow: GET, HEAD\r\n";
    }
    if !keep_alive {
        message += "Connection: close\r\n";
    }
    message += "\r\n";
    let mut message = message.into_bytes();
    if with_body {
        message.extend_from_slice(&answer.body);
    }
    // One write, so that a small answer leaves in one packet.
    stream.write_all(&message)
}

fn relative(path: &str) -> &str {
    path.trim_start_matches("./").trim_start_matches('/')
}

/// The address other machines of the local network reach this one by. Choosing a route to an
/// address reserved for documentation (RFC 5737) tells it; connecting a datagram socket sends
/// nothing.
fn local_network_address() -> Option<IpAddr> {
    let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0)).ok()?;
    socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9)).ok()?;
    let address = socket.local_addr().ok()?.ip();
    (!address.is_unspecified()).then_some(address)
}

/// A panic in one connection must not take the server with it.
fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}
