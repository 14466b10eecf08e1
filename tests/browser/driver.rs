//! The chromedriver process.

use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::sync::mpsc;
use std::time::{Duration, Instant};

use super::{Fault, LIMIT, Outcome};

/// A running chromedriver; ends with this value or with the test process.
pub(crate) struct Driver {
    shell: Child,
    port: u16,
}

impl Driver {
    /// Starts one on a free port.
    #[track_caller]
    pub(crate) fn start() -> Outcome<Self> {
        for program in ["chromedriver", "chromium"] {
            if on_path(program).is_none() {
                return Err(Fault::new(format!(
                    "{program} is not installed; tests/run installs what the tests need"
                )));
            }
        }
        // The shell ends the driver as soon as our end of its standard input
        // closes, which the system does even when this process is killed.
        let spawned = Command::new("sh")
            .args([
                "-c",
                "chromedriver --port=0 & driver=$!; read -r _; kill $driver; wait $driver",
            ])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn();
        let mut shell = match spawned {
            Ok(shell) => shell,
            Err(error) => return Err(Fault::new(format!("sh does not start: {error}"))),
        };
        let stdout = shell.stdout.take();
        let mut driver = Self { shell, port: 0 };
        let (tell, hear) = mpsc::channel();
        // Reads on to the end, so that the driver never waits for a reader.
        std::thread::spawn(move || {
            for line in stdout.into_iter().flat_map(|out| BufReader::new(out).lines()) {
                let Ok(line) = line else { break };
                if let Some(port) = port_of(&line) {
                    // Nobody listens any more once the port is known.
                    let _ = tell.send(port);
                }
            }
        });
        match hear.recv_timeout(LIMIT) {
            Ok(port) => {
                driver.port = port;
                Ok(driver)
            }
            Err(_) => Err(Fault::new("chromedriver did not say which port it took")),
        }
    }

    pub(crate) fn url(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        drop(self.shell.stdin.take());
        let start = Instant::now();
        while start.elapsed() < Duration::from_secs(5) {
            if !matches!(self.shell.try_wait(), Ok(None)) {
                return;
            }
            std::thread::sleep(Duration::from_millis(10));
        }
        let _ = self.shell.kill();
        let _ = self.shell.wait();
    }
}

/// `ChromeDriver was started successfully on port 40123.`
fn port_of(line: &str) -> Option<u16> {
    let (_, port) = line.split_once("successfully on port ")?;
    port.trim_end_matches('.').parse().ok()
}

fn on_path(program: &str) -> Option<PathBuf> {
    std::env::split_paths(&std::env::var_os("PATH")?)
        .map(|folder| folder.join(program))
        .find(|file| file.is_file())
}
