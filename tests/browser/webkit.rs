//! WebKit, by WebKitWebDriver: the small browser that comes with WebKitGTK, on a screen in memory.

use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::time::Instant;

use serde_json::json;

use super::emulate::Theme;
use super::page::pause;
use super::process::{Process, missing};
use super::session::Driver;
use super::{Browser, Fault, LIMIT, Outcome};

/// Starts a screen and the driver on it, for a browser that keeps its things in `folder`.
#[track_caller]
pub(crate) fn driver(browser: &Browser, folder: &Path) -> Outcome<Driver> {
    if browser.reduced_motion || browser.locale != "en-GB" {
        return Err(Fault::new("WebKit is driven in its own language and with motion alone"));
    }
    let Some(binary) = mini_browser() else {
        return Err(missing("MiniBrowser of WebKitGTK"));
    };
    // Its end ends the browser, which its driver's end alone does not.
    let (screen, display) =
        Process::start_somewhere("Xvfb", &["-displayfd", "1", "-nolisten", "tcp"], |line| {
            line.trim().parse::<u32>().ok()
        })?;
    let display = format!(":{display}");
    let port = free_port()?;
    let own = folder.display().to_string();
    let driver = Process::start(
        "WebKitWebDriver",
        &[&format!("--port={port}")],
        &[
            ("DISPLAY", &display),
            ("WAYLAND_DISPLAY", ""),
            ("GDK_BACKEND", "x11"),
            ("NO_AT_BRIDGE", "1"),
            ("HOME", &own),
            ("XDG_CACHE_HOME", &own),
            ("XDG_CONFIG_HOME", &own),
            ("XDG_DATA_HOME", &own),
            // No country: the page then writes and measures as most do.
            ("LC_ALL", "C.UTF-8"),
        ],
    )?;
    let start = Instant::now();
    while TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_err() {
        if start.elapsed() > LIMIT {
            return Err(Fault::new("WebKitWebDriver does not answer"));
        }
        pause();
    }
    // Without the frame of a window, which is wider than a phone.
    let mut args = vec!["--automation", "--full-screen"];
    if browser.theme == Theme::Dark {
        args.push("--dark-mode");
    }
    let wish = json!({
        "browserName": "MiniBrowser",
        "webkitgtk:browserOptions": { "binary": binary, "args": args },
    });
    let url = format!("http://127.0.0.1:{port}");
    Ok(Driver { url, wish, processes: vec![driver, screen] })
}

/// Where distributions put it: in a folder of WebKitGTK's own, not on the path.
fn mini_browser() -> Option<PathBuf> {
    let inside = |folder: PathBuf| {
        std::fs::read_dir(folder).into_iter().flatten().flatten().map(|entry| entry.path())
    };
    ["/usr/lib", "/usr/libexec", "/usr/lib64"]
        .iter()
        .flat_map(|folder| inside(PathBuf::from(folder)).chain([PathBuf::from(folder)]))
        .filter(|folder| folder.is_dir())
        .flat_map(|folder| ["webkit2gtk-4.1", "webkitgtk-6.0"].map(|name| folder.join(name)))
        .map(|folder| folder.join("MiniBrowser"))
        .find(|file| file.is_file())
}

/// The driver does not tell which port it took, so it is given one.
#[track_caller]
fn free_port() -> Outcome<u16> {
    Ok(TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?.port())
}
