//! A program that runs beside the tests.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{self, Receiver, RecvTimeoutError};
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
        // closes, which the system does even when this process is killed. It
        // lets go of its output, so that the program's end is the output's end.
        let spawned = command
            .args([
                "-c",
                "\"$@\" & program=$!; exec >/dev/null; read -r _; kill $program; wait $program",
                "sh",
            ])
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

    /// Starts one that picks a place of its own, and waits for it to say which. One that ends
    /// instead lost its place to another program between picking and taking it, as chromedriver
    /// may with a port, and is started anew, a few times.
    #[track_caller]
    pub(crate) fn start_somewhere<T>(
        name: &'static str,
        args: &[&str],
        place: impl Fn(&str) -> Option<T>,
    ) -> Outcome<(Self, T)> {
        for _ in 0..5 {
            let process = Self::start(name, args, &[])?;
            if let Some(found) = process.says(&place)? {
                return Ok((process, found));
            }
        }
        Err(Fault::new(format!("{name} ends as soon as it is started")))
    }

    /// Waits for a line of its output in which `find` finds something; nothing once it has ended.
    #[track_caller]
    fn says<T>(&self, find: impl Fn(&str) -> Option<T>) -> Outcome<Option<T>> {
        let start = Instant::now();
        loop {
            match self.lines.recv_timeout(LIMIT.saturating_sub(start.elapsed())) {
                Ok(line) => {
                    if let Some(found) = find(&line) {
                        return Ok(Some(found));
                    }
                }
                Err(RecvTimeoutError::Disconnected) => return Ok(None),
                Err(RecvTimeoutError::Timeout) => {
                    return Err(Fault::new(format!("{} did not say where to find it", self.name)));
                }
            }
        }
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

/// How many processes were started on this folder, by their arguments or environment.
pub fn running(folder: &Path) -> Outcome<usize> {
    let mut count = 0;
    for process in std::fs::read_dir("/proc")? {
        let process = process?.path();
        // A process may end while we look.
        let read = |name| std::fs::read(process.join(name)).unwrap_or_default();
        let started = [read("cmdline"), read("environ")].concat();
        if String::from_utf8_lossy(&started).contains(&*folder.to_string_lossy()) {
            count += 1;
        }
    }
    Ok(count)
}

/// What to say of a program that is not on this machine.
#[track_caller]
pub(crate) fn missing(name: &str) -> Fault {
    let package = match name {
        "chromium" => "Debian's chromium",
        "chromedriver" => "Debian's chromium-driver",
        "firefox" => "Debian's firefox-esr",
        "geckodriver" => "the crate geckodriver",
        "Xvfb" => "Debian's xvfb",
        _ => "Debian's webkit2gtk-driver",
    };
    Fault::new(format!(
        "{name} is not installed; tests/run installs what the tests need, here {package}"
    ))
}

pub(crate) fn on_path(program: &str) -> Option<PathBuf> {
    std::env::split_paths(&std::env::var_os("PATH")?)
        .map(|folder| folder.join(program))
        .find(|file| file.is_file())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_ends_at_once_is_started_anew() -> Outcome {
        let folder = std::env::temp_dir().join(format!("pitchline-process-{}", std::process::id()));
        let script = format!(
            "if mkdir '{0}' 2>/dev/null; then exit; fi; echo here 7; exec sleep 60",
            folder.display()
        );
        let place = |line: &str| line.strip_prefix("here ")?.parse::<u16>().ok();
        let started = Process::start_somewhere("sh", &["-c", &script], place);
        let second_was_needed = std::fs::remove_dir(&folder).is_ok();
        assert_eq!(started?.1, 7);
        assert!(second_was_needed);
        Ok(())
    }

    #[test]
    fn what_always_ends_at_once_is_told() {
        let ended = Process::start_somewhere("sh", &["-c", "echo no"], |_| None::<u16>);
        assert!(ended.err().is_some_and(|fault| fault.to_string().contains("sh ends as soon")));
    }
}
