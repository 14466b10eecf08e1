//! A program that runs beside the tests.

use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{self, Receiver};
use std::time::{Duration, Instant};

use super::{Fault, LIMIT, Outcome};

/// A running program; ends with this value or with the test process.
pub(crate) struct Process {
    shell: Child,
    name: &'static str,
    lines: Receiver<String>,
}

impl Process {
    /// Starts one with these arguments and changes of the environment; an empty value takes the
    /// variable away.
    #[track_caller]
    pub(crate) fn start(
        name: &'static str,
        args: &[&str],
        environment: &[(&str, &str)],
    ) -> Outcome<Self> {
        if on_path(name).is_none() {
            return Err(missing(name));
        }
        let mut command = Command::new("sh");
        for (variable, value) in environment {
            match *value {
                "" => command.env_remove(variable),
                value => command.env(variable, value),
            };
        }
        // The shell ends the program as soon as our end of its standard input
        // closes, which the system does even when this process is killed.
        let spawned = command
            .args(["-c", "\"$@\" & program=$!; read -r _; kill $program; wait $program", "sh"])
            .arg(name)
            .args(args)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn();
        let mut shell = match spawned {
            Ok(shell) => shell,
            Err(error) => return Err(Fault::new(format!("sh does not start: {error}"))),
        };
        let stdout = shell.stdout.take();
        let (tell, lines) = mpsc::channel();
        // Reads on to the end, so that the program never waits for a reader.
        std::thread::spawn(move || {
            for line in stdout.into_iter().flat_map(|out| BufReader::new(out).lines()) {
                let Ok(line) = line else { break };
                // Whoever started it may be gone already.
                let _ = tell.send(line);
            }
        });
        Ok(Self { shell, name, lines })
    }

    /// Waits for a line of its output in which `find` finds something.
    #[track_caller]
    pub(crate) fn says<T>(&self, find: impl Fn(&str) -> Option<T>) -> Outcome<T> {
        let start = Instant::now();
        while let Ok(line) = self.lines.recv_timeout(LIMIT.saturating_sub(start.elapsed())) {
            if let Some(found) = find(&line) {
                return Ok(found);
            }
        }
        Err(Fault::new(format!("{} did not say where to find it", self.name)))
    }
}

impl Drop for Process {
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

/// What to say of a program that is not on this machine.
#[track_caller]
pub(crate) fn missing(name: &str) -> Fault {
    let package = match name {
        "chromium" => "chromium",
        "chromedriver" => "chromium-driver",
        "Xvfb" => "xvfb",
        _ => "webkit2gtk-driver",
    };
    Fault::new(format!(
        "{name} is not installed; tests/run installs what the tests need, \
         on Debian and Ubuntu here the package {package}"
    ))
}

pub(crate) fn on_path(program: &str) -> Option<PathBuf> {
    std::env::split_paths(&std::env::var_os("PATH")?)
        .map(|folder| folder.join(program))
        .find(|file| file.is_file())
}
