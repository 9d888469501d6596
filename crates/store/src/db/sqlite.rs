//! What is SQLite's alone: opening a file, how its commits reach the disk, and what its result codes mean.

use std::path::Path;
use std::time::Duration;

use sea_orm::sqlx::error::DatabaseError;
use sea_orm::{ConnectOptions, Database, DatabaseConnection, DbErr};

use crate::address::Address;
use crate::error::Error;

/// How long opening waits for another program to let go.
const OPENING_WAIT: Duration = Duration::from_millis(500);
/// How long a call waits for another program's writing to end.
pub(super) const WORKING_WAIT: Duration = Duration::from_secs(10);

/// One connection, so that writers queue here and not at the file.
pub(super) async fn connect(path: &Path) -> Result<DatabaseConnection, DbErr> {
    let file = path.to_owned();
    let mut options = ConnectOptions::new("sqlite:");
    options.max_connections(1).min_connections(1).sqlx_logging(false).test_before_acquire(false);
    // The one connection lives as long as the store, so that what is set on it stays.
    options.idle_timeout(None).max_lifetime(None).acquire_timeout(Duration::from_secs(60));
    options.map_sqlx_sqlite_opts(move |options| options.filename(&file).foreign_keys(true).busy_timeout(OPENING_WAIT));
    Database::connect(options).await
}

/// SQLite's primary result codes ("Result and Error Codes" in its documentation) as our errors.
pub(super) fn translated(at: &Address, error: &dyn DatabaseError) -> Error {
    let code = error.code().and_then(|code| code.parse::<i32>().ok());
    let says = error.message().to_owned();
    match code.map(|extended| extended & 0xff) {
        Some(5 | 6) => Error::Locked(at.clone()),
        Some(8) => Error::ReadOnly(at.clone()),
        Some(11) => Error::corrupt(at, says),
        Some(13) => Error::io(at, "the disk is full"),
        Some(19) => super::conflict(&says),
        Some(26) => Error::NotDatabase(at.clone()),
        _ => Error::io(at, says),
    }
}
