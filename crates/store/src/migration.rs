//! The forms that the data file has had, each a numbered script that is run once, in one transaction with its number.

use std::path::Path;

use crate::db::{Db, Tx, values};
use crate::error::{Error, Result};
use crate::logbook::fingerprint;

/// The scripts in order; a file's number says how many of them it has had.
const SCRIPTS: [&str; 3] = [
    include_str!("../migrations/0001.sql"),
    include_str!("../migrations/0002.sql"),
    include_str!("../migrations/0003.sql"),
];
/// The form from which on entries have fingerprints.
const FINGERPRINTS: u32 = 2;

/// The newest form.
const NEWEST: u32 = SCRIPTS.len() as u32;

/// Refuses a form that this program cannot work with.
pub(crate) fn known(path: &Path, version: u32) -> Result<()> {
    match version {
        0 => Err(Error::corrupt(path, "it says that nothing was ever set up in it")),
        1..=NEWEST => Ok(()),
        _ => Err(Error::Newer { path: path.to_owned(), version, newest: NEWEST }),
    }
}

/// Sets up an empty file, in the transaction that makes it ours.
pub(crate) async fn set_up(tx: &Tx) -> Result<()> {
    for number in 0..NEWEST {
        step(tx, number).await?;
    }
    Ok(())
}

/// Brings a file of an older form up to the newest.
pub(crate) async fn bring_up(db: &Db) -> Result<()> {
    let tx = db.read().await?;
    let mut version = version(&tx).await?;
    tx.commit().await?;
    known(db.path(), version)?;
    while version < NEWEST {
        // Another program may have been quicker: what counts is what stands there once nobody else can write.
        let tx = db.write().await?;
        version = self::version(&tx).await?;
        if version < NEWEST {
            step(&tx, version).await?;
            version += 1;
        }
        tx.commit().await?;
    }
    Ok(())
}

async fn step(tx: &Tx, number: u32) -> Result<()> {
    tx.script(SCRIPTS[number as usize]).await?;
    if number + 1 == FINGERPRINTS {
        fingerprint::take(tx, 0).await?;
    }
    tx.script(&format!("PRAGMA user_version = {}", number + 1)).await
}

async fn version(tx: &Tx) -> Result<u32> {
    let row = tx.one("SELECT user_version FROM pragma_user_version", values![]).await?;
    let version: i64 = row.map_or(Ok(0), |row| row.get("user_version"))?;
    Ok(u32::try_from(version).unwrap_or(u32::MAX))
}
