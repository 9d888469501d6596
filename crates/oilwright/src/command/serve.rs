//! `serve`: the pages of a shop.

use std::io::Write as _;
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Duration;

use clap::Args;
use jiff::Timestamp;
use store::Store;
use tokio::net::TcpListener;
use web::{Clock, HostRule};

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;

#[derive(Debug, Args)]
pub(crate) struct Serve {
    #[command(flatten)]
    listen: Listen,
    /// The folder for the nightly backups; a folder beside the data file when left out, and needed for a shop in a database. Better
    /// one on another disk.
    #[arg(long, value_name = "FOLDER")]
    backups: Option<PathBuf>,
}

/// Where the pages are served.
#[derive(Clone, Copy, Debug, Args)]
pub(crate) struct Listen {
    /// Serve phones in the workshop too, not only this computer. Anybody on the network can then read and write the log.
    #[arg(long)]
    lan: bool,
    /// The port; 0 takes any free one.
    #[arg(long, default_value_t = 8620)]
    port: u16,
}

impl Serve {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let folder = match self.backups {
            // A folder that somebody names is not made: it may be a stick that is not in.
            Some(folder) => folder,
            None => match open.store.address().file() {
                Some(file) => beside(file)?,
                None => {
                    return Err(Failure::Use(
                        "a shop in a database has no folder beside it for the nightly backups; name one with --backups FOLDER"
                            .to_owned(),
                    ));
                }
            },
        };
        say::line(&format!("A backup every night: {}", folder.display()))?;
        let nightly = tokio::spawn(nightly(open.store.clone(), folder));
        let served = serve(open.store, Clock::new(Timestamp::now), self.listen).await;
        nightly.abort();
        served
    }
}

/// How many backups are kept however old they are, and for how many days the others.
const KEPT: (usize, u32) = (14, 90);

/// How often it is looked whether the day has its backup. A failure is told each time and does not stop the pages.
const LOOK: Duration = Duration::from_secs(3600);

async fn nightly(store: Store, folder: PathBuf) {
    loop {
        if let Err(error) = store.keep_backups(&folder, Timestamp::now(), KEPT.0, KEPT.1).await {
            // Nothing more can be done when even standard error is gone.
            let _ = writeln!(std::io::stderr(), "oilwright: no backup was made: {error}");
        }
        tokio::time::sleep(LOOK).await;
    }
}

/// The folder beside a data file, made when it is not there: `our.shop` has `our.shop-backups`.
fn beside(file: &Path) -> Result<PathBuf, Failure> {
    let mut name = file.file_name().unwrap_or_default().to_owned();
    name.push("-backups");
    let folder = file.with_file_name(name);
    std::fs::create_dir_all(&folder).map_err(|error| {
        Failure::Use(format!(
            "the folder {} could not be made ({error}); name another with --backups",
            folder.display()
        ))
    })?;
    Ok(folder)
}

/// Serves until the program is told to stop, then closes the file.
pub(crate) async fn serve(store: Store, clock: Clock, listen: Listen) -> Result<ExitCode, Failure> {
    let ip = if listen.lan { Ipv4Addr::UNSPECIFIED } else { Ipv4Addr::LOCALHOST };
    let wanted = SocketAddr::new(IpAddr::V4(ip), listen.port);
    let listener = TcpListener::bind(wanted).await.map_err(|_| {
        Failure::Use(format!(
            "port {} is taken or not allowed; choose another with --port, or 0 for any free one",
            listen.port
        ))
    })?;
    let port = listener.local_addr()?.port();
    let hosts = if listen.lan {
        HostRule::network(port, &gethostname::gethostname().to_string_lossy())
    } else {
        HostRule::this_computer(port)
    };
    say::line(&format!("Pages: http://127.0.0.1:{port}/   Ctrl-C stops."))?;
    if listen.lan {
        say::line(
            "Phones in the workshop: this computer's address, with the same port. Anybody on the network can write in the log.",
        )?;
    }
    let router = web::router(web::Shop { store: store.clone(), clock }, hosts);
    axum::serve(listener, router).with_graceful_shutdown(stopped()).await?;
    store.close().await?;
    Ok(ExitCode::SUCCESS)
}

/// Until the program is told to stop, by hand or by the system.
async fn stopped() {
    let by_hand = tokio::signal::ctrl_c();
    #[cfg(unix)]
    {
        let Ok(mut by_system) = tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) else {
            let _ = by_hand.await;
            return;
        };
        tokio::select! { _ = by_hand => {}, _ = by_system.recv() => {} }
    }
    #[cfg(not(unix))]
    {
        let _ = by_hand.await;
    }
}
