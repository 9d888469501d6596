//! The forms that a shop has had, each a numbered script that is run once, in one transaction with its number. A file and a database
//! of the same number hold the same tables; the first form that was ever made in a database is the third.

use crate::address::Address;
use crate::db::{Db, Engine, SCHEMA, Tx, values};
use crate::error::{Error, Result};
use crate::logbook::fingerprint;
use crate::{header, seal};

/// What brings a shop of the form before to this one.
struct Script {
    sqlite: &'static str,
    postgres: &'static str,
}

/// The scripts in order; a shop's number says how many of them it has had.
const SCRIPTS: [Script; 4] = [
    Script { sqlite: include_str!("../migrations/0001.sql"), postgres: "" },
    Script { sqlite: include_str!("../migrations/0002.sql"), postgres: "" },
    Script {
        sqlite: include_str!("../migrations/0003.sql"),
        postgres: include_str!("../migrations/postgres/0003.sql"),
    },
    Script {
        sqlite: include_str!("../migrations/0004.sql"),
        postgres: include_str!("../migrations/postgres/0004.sql"),
    },
];
/// The form from which on entries have fingerprints.
const FINGERPRINTS: u32 = 2;
/// The form from which on the other rows have some too.
const SEALS: u32 = 4;
/// How many scripts are left out in a database.
const BEFORE_POSTGRES: u32 = 2;

/// The newest form.
const NEWEST: u32 = SCRIPTS.len() as u32;

/// Refuses a form that this program cannot work with.
pub(crate) fn known(at: &Address, version: u32) -> Result<()> {
    match version {
        0 => Err(Error::corrupt(at, "it says that nothing was ever set up in it")),
        1..=NEWEST => Ok(()),
        _ => Err(Error::Newer { at: at.clone(), version, newest: NEWEST }),
    }
}

/// Makes an empty file or a database without a shop ours, with empty tables of the newest form.
pub(crate) async fn set_up(tx: &Tx) -> Result<()> {
    let first = match tx.engine() {
        Engine::Sqlite => {
            tx.script(&format!("PRAGMA application_id = {}", header::APPLICATION)).await?;
            0
        }
        Engine::Postgres => {
            can_hold_every_letter(tx).await?;
            // Of two that do this at once, the second waits here and is then told that there is a shop.
            tx.one("SELECT CAST(pg_advisory_xact_lock($1) AS TEXT)", values![i64::from(header::APPLICATION)]).await?;
            tx.script(&format!("CREATE SCHEMA {SCHEMA}")).await?;
            BEFORE_POSTGRES
        }
    };
    for number in first..NEWEST {
        step(tx, number).await?;
    }
    Ok(())
}

/// Refuses a database that holds no shop of ours; a file was looked at before it was opened.
pub(crate) async fn ours(db: &Db) -> Result<()> {
    if db.engine() == Engine::Sqlite {
        return Ok(());
    }
    let tx = db.read().await?;
    let sql = "SELECT to_regnamespace($1) IS NOT NULL AS schema_there, to_regclass($2) IS NOT NULL AS form_there";
    let row = tx.one(sql, values![SCHEMA, format!("{SCHEMA}.form")]).await?;
    let there = |column| row.as_ref().map_or(Ok(false), |row| row.get::<bool>(column));
    if !there("schema_there")? {
        return Err(Error::Missing(db.address().clone()));
    }
    let marked = if there("form_there")? { tx.one("SELECT application FROM form", values![]).await? } else { None };
    let application: Option<i64> = marked.map(|row| row.get("application")).transpose()?;
    tx.commit().await?;
    match application {
        Some(mark) if mark == i64::from(header::APPLICATION) => Ok(()),
        _ => Err(Error::OtherProgram(db.address().clone())),
    }
}

/// Brings a shop of an older form up to the newest.
pub(crate) async fn bring_up(db: &Db) -> Result<()> {
    let tx = db.read().await?;
    let mut version = version(&tx).await?;
    tx.commit().await?;
    known(db.address(), version)?;
    while version < NEWEST {
        // Another program may have been quicker: what counts is what stands there once nobody else can write.
        let tx = db.write().await?;
        version = self::version(&tx).await?;
        if version < NEWEST {
            step(&tx, version).await?;
            version += 1;
            follow(&tx, version).await?;
        }
        tx.commit().await?;
    }
    Ok(())
}

async fn step(tx: &Tx, number: u32) -> Result<()> {
    let Script { sqlite, postgres } = SCRIPTS[number as usize];
    match tx.engine() {
        Engine::Sqlite => tx.script(sqlite).await?,
        Engine::Postgres => tx.script(postgres).await?,
    }
    match tx.engine() {
        Engine::Sqlite => tx.script(&format!("PRAGMA user_version = {}", number + 1)).await,
        Engine::Postgres => tx.script(&format!("UPDATE form SET version = {}", number + 1)).await,
    }
}

/// What a form wants of rows that were there before it.
async fn follow(tx: &Tx, version: u32) -> Result<()> {
    match version {
        FINGERPRINTS => fingerprint::take(tx, 0).await,
        SEALS => seal::take(tx).await,
        _ => Ok(()),
    }
}

async fn version(tx: &Tx) -> Result<u32> {
    let sql = match tx.engine() {
        Engine::Sqlite => "SELECT user_version AS version FROM pragma_user_version",
        Engine::Postgres => "SELECT version FROM form",
    };
    let version: i64 = tx.one(sql, values![]).await?.map_or(Ok(0), |row| row.get("version"))?;
    Ok(u32::try_from(version).unwrap_or(u32::MAX))
}

async fn can_hold_every_letter(tx: &Tx) -> Result<()> {
    let row = tx.one("SELECT current_setting('server_encoding') AS encoding", values![]).await?;
    let encoding: String = row.map_or(Ok(String::new()), |row| row.get("encoding"))?;
    if encoding == "UTF8" { Ok(()) } else { Err(Error::Encoding { at: tx.address().clone(), encoding }) }
}
