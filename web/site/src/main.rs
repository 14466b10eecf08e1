//! `cargo site`: serves, builds and checks the site. `cargo site help` lists what it can do.

use std::env;
use std::io;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use pitchline_site::{Options, Server, Size};

const HELP: &str = "\
cargo site                serve dist/ at http://127.0.0.1:8417/, or at the next free port
    --port N              at this port
    --prefix /tools/calc/ below this path
    --network             also to other machines of the local network
cargo site build          bring Trunk and what it needs, then `trunk build --release`
cargo site finish         add to Trunk's output what it cannot know; its hook calls this
cargo site check-fresh    say whether dist/ is what the sources give
cargo site size           what must arrive before the page is usable, in bytes";

const FIRST_PORT: u16 = 8417;

fn main() -> ExitCode {
    let arguments: Vec<String> = env::args().skip(1).collect();
    match run(&arguments) {
        Ok(code) => code,
        Err(error) => {
            eprintln!("cargo site: {error}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: &[String]) -> io::Result<ExitCode> {
    let root = root()?;
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["build"] => pitchline_site::build(&root)?,
        ["finish"] => tell(&pitchline_site::finish(&root, &staged(&root))?),
        ["check-fresh"] => return Ok(check_fresh(&root)),
        ["size"] => print_sizes(&root.join("dist"))?,
        ["help" | "--help" | "-h"] => println!("{HELP}"),
        options => serve(&root, options)?,
    }
    Ok(ExitCode::SUCCESS)
}

/// The repository: the nearest folder, from here upwards, that holds `Trunk.toml`.
fn root() -> io::Result<PathBuf> {
    let here = env::current_dir()?;
    here.ancestors()
        .find(|folder| folder.join("Trunk.toml").exists())
        .map(Path::to_owned)
        .ok_or_else(|| io::Error::other("run it inside the repository"))
}

/// Where the site is: Trunk tells its hooks, which run before it moves the site into `dist`.
fn staged(root: &Path) -> PathBuf {
    env::var_os("TRUNK_STAGING_DIR").map_or_else(|| root.join("dist"), PathBuf::from)
}

fn tell(finished: &pitchline_site::Finished) {
    println!(
        "The site is ready: version {}, {} files kept for offline use.",
        finished.version, finished.kept
    );
}

fn check_fresh(root: &Path) -> ExitCode {
    match pitchline_site::freshness(root) {
        Ok(()) => {
            println!("dist/ is fresh.");
            ExitCode::SUCCESS
        }
        Err(faults) => {
            for fault in faults {
                println!("{fault}");
            }
            println!("dist/ is not fresh: run `cargo site build`.");
            ExitCode::FAILURE
        }
    }
}

fn print_sizes(dist: &Path) -> io::Result<()> {
    let row = |name: &str, size: &Size| {
        println!("{:>9} {:>9} {:>9}  {name}", size.raw, size.gzip, size.brotli);
    };
    println!("{:>9} {:>9} {:>9}", "raw", "gzip", "brotli");
    let sizes = pitchline_site::size(dist)?;
    for file in sizes.files.iter().filter(|file| file.first) {
        row(&file.path, &file.size);
    }
    row("together, before the page is usable", &sizes.first);
    Ok(())
}

fn serve(root: &Path, arguments: &[&str]) -> io::Result<()> {
    let mut options = Options::new(root.join("dist"));
    let mut port = None;
    let mut rest = arguments.iter();
    while let Some(argument) = rest.next() {
        match (*argument, rest.as_slice().first()) {
            ("--network", _) => options.network = true,
            ("--port", Some(number)) => {
                port = Some(number.parse::<u16>().map_err(io::Error::other)?);
                rest.next();
            }
            ("--prefix", Some(prefix)) => {
                (*prefix).clone_into(&mut options.prefix);
                rest.next();
            }
            _ => {
                return Err(io::Error::other(format!("what is \"{argument}\"?\n{HELP}")));
            }
        }
    }
    if !options.dir.join("index.html").exists() {
        return Err(io::Error::other("dist/ is not built: run `cargo site build`"));
    }
    let server = start(&options, port)?;
    println!("{}", server.url());
    if options.network {
        match server.network_url() {
            Some(url) => println!("{url} (offline use needs https or this machine's own address)"),
            None => println!("no local network found"),
        }
    }
    server.wait();
    Ok(())
}

/// At the port asked for, else at the first free one from [`FIRST_PORT`] on.
fn start(options: &Options, port: Option<u16>) -> io::Result<Server> {
    let at = |port| pitchline_site::serve(Options { port, ..options.clone() });
    let Some(port) = port else {
        for port in FIRST_PORT..FIRST_PORT + 100 {
            match at(port) {
                Err(error) if error.kind() == io::ErrorKind::AddrInUse => {}
                other => return other,
            }
        }
        return at(0);
    };
    at(port)
}
