//! What is PostgreSQL's alone: reaching a server, the one writer at a time, and what its error codes mean.

use std::time::Duration;

use sea_orm::sqlx::error::DatabaseError;
use sea_orm::sqlx::postgres::{PgConnection, PgPoolOptions};
use sea_orm::sqlx::{self, Connection as _};
use sea_orm::{DatabaseConnection, SqlxPostgresConnector};

use crate::address::{Address, Database};
use crate::error::{Error, Result};

/// The schema of the database that holds a shop's tables, so that they do not meet another program's.
pub(crate) const SCHEMA: &str = "oilwright";
/// The first statement of a transaction that writes: it waits until no other such transaction holds the row of the form.
pub(super) const TURN: &str = "SELECT version FROM form FOR UPDATE";

/// How long opening waits for a server to answer.
const OPENING_WAIT: Duration = Duration::from_secs(10);
/// How long a call waits for a free connection, or for a server that was started anew.
const WORKING_WAIT: Duration = Duration::from_secs(30);
/// How many calls may be under way at once.
const CONNECTIONS: u32 = 4;
/// What is set on every connection, whatever the server's own habits are.
const SETTINGS: [(&str, &str); 3] = [
    ("search_path", SCHEMA),
    ("synchronous_commit", "on"),
    // How long a call waits for another program's writing to end.
    ("lock_timeout", "10s"),
];

/// Some connections to a database, once it has answered.
pub(super) async fn connect(at: &Address, database: &Database) -> Result<DatabaseConnection> {
    let options = database.options().application_name("oilwright").options(SETTINGS);
    // The pool below would ask a server that is not there again and again; this one asks once and says why not.
    let first = tokio::time::timeout(OPENING_WAIT, PgConnection::connect_with(&options)).await;
    let first = first.map_err(|_| Error::unreachable(at, "it gave no answer within ten seconds"))?;
    let first = first.map_err(|error| super::translated_here(at, &error))?;
    // It answered, and that was all it was asked for.
    let _ = first.close().await;
    let pool = PgPoolOptions::new().max_connections(CONNECTIONS).acquire_timeout(WORKING_WAIT);
    // A connection that a server started anew no longer knows is not handed out.
    let pool = pool.test_before_acquire(true).connect_lazy_with(options);
    Ok(SqlxPostgresConnector::from_sqlx_postgres_pool(pool))
}

/// PostgreSQL's error codes ("PostgreSQL Error Codes" in its documentation, appendix A) as our errors.
pub(super) fn translated(at: &Address, error: &dyn DatabaseError) -> Error {
    let code = error.code().unwrap_or_default().into_owned();
    let says = error.message();
    match code.as_str() {
        "25006" => Error::ReadOnly(at.clone()),
        "42501" => Error::refused(at, says),
        "53100" => Error::io(at, "the disk is full"),
        "55P03" | "40001" | "40P01" => Error::Locked(at.clone()),
        "XX001" | "XX002" => Error::corrupt(at, says),
        // Something failed before in this transaction, and only who looks for damage goes on after that.
        "25P02" => Error::corrupt(at, "after this the server let nothing more be read"),
        "22021" => Error::Conflict(
            "a text holds a character without a sign, number nought, which this database cannot keep; leave it out, nothing was \
             written"
                .to_owned(),
        ),
        "42P06" => Error::Exists(at.clone()),
        code if code.starts_with("23") => super::conflict(says),
        code if code.starts_with("28") => Error::refused(at, says),
        // Too many connections.
        "53300" => Error::unreachable(at, says),
        // No such database; no connection any more; going down or starting up.
        code if ["3D", "08", "57P"].iter().any(|class| code.starts_with(class)) => Error::unreachable(at, says),
        _ => Error::io(at, says),
    }
}

/// What the library says when it could not even ask.
pub(super) fn not_asked(at: &Address, error: &sqlx::Error) -> Error {
    match error {
        sqlx::Error::Io(error) => Error::unreachable(at, error.to_string()),
        sqlx::Error::PoolTimedOut => Error::unreachable(at, "it gave no answer for half a minute"),
        other => Error::io(at, other.to_string()),
    }
}
