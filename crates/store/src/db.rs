//! The one door to the database library: a connection, a transaction, a row. Everything else in the crate writes SQL with `$1`
//! that SQLite and PostgreSQL both take, and reads columns by name; errors of the library become ours here.

mod postgres;
mod sqlite;

use std::path::Path;
use std::sync::Arc;

use jiff::Timestamp;
use sea_orm::{
    AccessMode, ConnAcquireErr, ConnectionTrait, DatabaseConnection, DatabaseTransaction, DbBackend, DbErr,
    IsolationLevel, QueryResult, RuntimeErr, SqliteTransactionMode, Statement, TransactionOptions, TransactionTrait,
    TryGetable, sqlx,
};
use shop::choice::Choice;
use shop::id::Id;

use crate::address::{Address, Place};
use crate::error::{Error, Result};
use crate::fuse;

pub(crate) use postgres::SCHEMA;
pub(crate) use sea_orm::Value;

/// Bound values of a statement, in the order of `$1, $2, …`.
macro_rules! values {
    ($($value:expr),* $(,)?) => { vec![$($crate::db::Value::from($value)),*] };
}
pub(crate) use values;

/// An open shop: a file or a database.
#[derive(Clone, Debug)]
pub(crate) struct Db {
    connection: DatabaseConnection,
    at: Arc<Address>,
}

/// A transaction; dropped without [`Tx::commit`] it leaves no trace.
pub(crate) struct Tx {
    transaction: DatabaseTransaction,
    at: Arc<Address>,
}

/// A row of an answer.
pub(crate) struct Row {
    row: QueryResult,
    at: Arc<Address>,
}

/// Which database it is, for the few things that the two do not say in one way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Engine {
    /// A file.
    Sqlite,
    /// A server.
    Postgres,
}

impl Engine {
    fn of(backend: DbBackend) -> Self {
        match backend {
            DbBackend::Postgres => Self::Postgres,
            _ => Self::Sqlite,
        }
    }
}

impl Db {
    pub(crate) async fn connect(at: &Address) -> Result<Self> {
        fuse::step(at)?;
        let connection = match at.place() {
            Place::File(path) => sqlite::connect(path).await.map_err(|error| translated(at, &error))?,
            Place::Database(database) => postgres::connect(at, database).await?,
        };
        Ok(Self { connection, at: Arc::new(at.clone()) })
    }

    pub(crate) fn address(&self) -> &Address {
        &self.at
    }

    /// Sets how commits reach the disk. On a file this is the first statement that reads it, and it is not left to connecting: the
    /// library closes a connection that failed there only some time later, and until then its companions lie about.
    pub(crate) async fn write_ahead(&self) -> Result<()> {
        match self.engine() {
            Engine::Sqlite => self.pragma("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL").await,
            Engine::Postgres => Ok(()),
        }
    }

    /// Lets calls wait longer than opening did.
    pub(crate) async fn wait_longer(&self) -> Result<()> {
        match self.engine() {
            Engine::Sqlite => self.pragma(&format!("PRAGMA busy_timeout = {}", sqlite::WORKING_WAIT.as_millis())).await,
            Engine::Postgres => Ok(()),
        }
    }

    /// A transaction in which every statement sees the shop as the first one saw it.
    pub(crate) async fn read(&self) -> Result<Tx> {
        let snapshot = (IsolationLevel::RepeatableRead, Some(AccessMode::ReadOnly));
        self.begin(SqliteTransactionMode::Deferred, snapshot).await
    }

    /// A transaction that alone may write, from its beginning.
    pub(crate) async fn write(&self) -> Result<Tx> {
        let tx = self.first_write().await?;
        if tx.engine() == Engine::Postgres {
            tx.one(postgres::TURN, values![]).await?;
        }
        Ok(tx)
    }

    /// A transaction that writes where there is no shop yet.
    pub(crate) async fn first_write(&self) -> Result<Tx> {
        // Each statement must see what was committed while this one waited for its turn.
        self.begin(SqliteTransactionMode::Immediate, (IsolationLevel::ReadCommitted, None)).await
    }

    /// Writes all that the file holds into a new one, as it is at this moment.
    pub(crate) async fn copy_into(&self, to: &Path) -> Result<()> {
        self.wait_longer().await?;
        fuse::step(&self.at)?;
        let name = to.to_str().ok_or_else(|| Error::io(to, "its name is no readable text"))?;
        let sql = "VACUUM INTO $1";
        let statement = Statement::from_sql_and_values(self.connection.get_database_backend(), sql, values![name]);
        let done = self.connection.execute_raw(statement).await;
        done.map(drop).map_err(|error| translated(&self.at, &error))
    }

    pub(crate) async fn close(self) -> Result<()> {
        self.connection.close().await.map_err(|error| translated(&self.at, &error))
    }

    /// Sets something on the connection.
    pub(crate) async fn pragma(&self, sql: &str) -> Result<()> {
        fuse::step(&self.at)?;
        let done = self.connection.execute_unprepared(sql).await;
        done.map(drop).map_err(|error| translated(&self.at, &error))
    }

    pub(crate) fn engine(&self) -> Engine {
        Engine::of(self.connection.get_database_backend())
    }

    async fn begin(
        &self,
        mode: SqliteTransactionMode,
        (isolation, access): (IsolationLevel, Option<AccessMode>),
    ) -> Result<Tx> {
        fuse::step(&self.at)?;
        let options = match self.engine() {
            Engine::Sqlite => {
                TransactionOptions { sqlite_transaction_mode: Some(mode), ..TransactionOptions::default() }
            }
            Engine::Postgres => TransactionOptions {
                isolation_level: Some(isolation),
                access_mode: access,
                ..TransactionOptions::default()
            },
        };
        let begun = self.connection.begin_with_options(options).await;
        Ok(Tx { transaction: begun.map_err(|error| translated(&self.at, &error))?, at: Arc::clone(&self.at) })
    }
}

impl Tx {
    /// All rows of an answer.
    pub(crate) async fn all(&self, sql: &str, values: Vec<Value>) -> Result<Vec<Row>> {
        fuse::step(&self.at)?;
        let rows = self.transaction.query_all_raw(self.statement(sql, values)).await;
        let rows = rows.map_err(|error| self.translated(&error))?;
        Ok(rows.into_iter().map(|row| Row { row, at: Arc::clone(&self.at) }).collect())
    }

    /// The first row of an answer.
    pub(crate) async fn one(&self, sql: &str, values: Vec<Value>) -> Result<Option<Row>> {
        fuse::step(&self.at)?;
        let row = self.transaction.query_one_raw(self.statement(sql, values)).await;
        let row = row.map_err(|error| self.translated(&error))?;
        Ok(row.map(|row| Row { row, at: Arc::clone(&self.at) }))
    }

    /// Runs one statement.
    pub(crate) async fn run(&self, sql: &str, values: Vec<Value>) -> Result<()> {
        fuse::step(&self.at)?;
        let done = self.transaction.execute_raw(self.statement(sql, values)).await;
        done.map(drop).map_err(|error| self.translated(&error))
    }

    /// Runs several statements without values.
    pub(crate) async fn script(&self, sql: &str) -> Result<()> {
        fuse::step(&self.at)?;
        let done = self.transaction.execute_unprepared(sql).await;
        done.map(drop).map_err(|error| self.translated(&error))
    }

    /// Makes it all so.
    pub(crate) async fn commit(self) -> Result<()> {
        fuse::step(&self.at)?;
        self.transaction.commit().await.map_err(|error| translated(&self.at, &error))
    }

    /// What stands in the file makes no sense.
    pub(crate) fn corrupt(&self, what: impl Into<String>) -> Error {
        Error::corrupt(&*self.at, what)
    }

    pub(crate) fn engine(&self) -> Engine {
        Engine::of(self.transaction.get_database_backend())
    }

    pub(crate) fn address(&self) -> &Address {
        &self.at
    }

    fn statement(&self, sql: &str, values: Vec<Value>) -> Statement {
        #[cfg(test)]
        crate::plan::note(sql, &values);
        Statement::from_sql_and_values(self.transaction.get_database_backend(), sql, values)
    }

    fn translated(&self, error: &DbErr) -> Error {
        translated(&self.at, error)
    }
}

impl Row {
    /// A column's value.
    pub(crate) fn get<T: TryGetable>(&self, column: &str) -> Result<T> {
        self.row.try_get_by(column).map_err(|error| self.corrupt(format!("column {column}: {error}")))
    }

    /// A column that holds an instant.
    pub(crate) fn instant(&self, column: &str) -> Result<Timestamp> {
        instant(self.get(column)?).ok_or_else(|| self.corrupt(format!("column {column} holds no instant")))
    }

    /// A column that holds an id.
    pub(crate) fn id(&self, column: &str) -> Result<Id> {
        let text: String = self.get(column)?;
        Id::new(&text).map_err(|_| self.corrupt(format!("column {column} holds \"{text}\", which is no id")))
    }

    /// A column that holds an id or nothing.
    pub(crate) fn maybe_id(&self, column: &str) -> Result<Option<Id>> {
        let there: Option<String> = self.get(column)?;
        there.map(|_| self.id(column)).transpose()
    }

    /// A column that holds one of a few words.
    pub(crate) fn choice<C: Choice>(&self, column: &str) -> Result<C> {
        let word: String = self.get(column)?;
        C::from_word(&word).ok_or_else(|| self.corrupt(format!("column {column} holds \"{word}\"")))
    }

    /// What stands in this row makes no sense.
    pub(crate) fn corrupt(&self, what: impl Into<String>) -> Error {
        Error::corrupt(&*self.at, what)
    }
}

/// An instant as the file keeps it.
pub(crate) fn micros(instant: Timestamp) -> i64 {
    instant.as_microsecond()
}

/// An instant as the file kept it.
pub(crate) fn instant(micros: i64) -> Option<Timestamp> {
    Timestamp::from_microsecond(micros).ok()
}

/// `$3, $4, $5`: so many placeholders from this number on.
pub(crate) fn places(first: usize, count: usize) -> String {
    let places: Vec<String> = (first..first + count).map(|number| format!("${number}")).collect();
    places.join(", ")
}

/// `($1, $2), ($3, $4)`: the placeholders of so many rows.
pub(crate) fn rows_of_places(rows: usize, columns: usize) -> String {
    let rows: Vec<String> = (0..rows).map(|row| format!("({})", places(row * columns + 1, columns))).collect();
    rows.join(", ")
}

/// A table of pairs, each a `word` and a `whole` number, from one value: the placeholder of a JSON text as [`json_of_pairs`] makes
/// it. A placeholder for each would make a statement too long for ten thousand of them. Joined by `CROSS JOIN`, by which SQLite goes
/// through them first; otherwise it may go through them once for every row of the other table.
pub(crate) fn pairs(engine: Engine, place: &str) -> String {
    match engine {
        Engine::Sqlite => format!(
            "(SELECT json_extract(value, '$[0]') AS word, json_extract(value, '$[1]') AS whole FROM json_each({place}))"
        ),
        Engine::Postgres => format!(
            "(SELECT value ->> 0 AS word, CAST(value ->> 1 AS BIGINT) AS whole \
             FROM jsonb_array_elements(CAST({place} AS JSONB)) AS listed (value))"
        ),
    }
}

/// Pairs as one value for [`pairs`].
pub(crate) fn json_of_pairs(pairs: &[(impl serde::Serialize, i64)]) -> String {
    serde_json::to_string(pairs).expect("a list of texts and whole numbers always has a JSON form")
}

/// A table of words, three to a row, `a`, `b` and `c`, from one value: the placeholder of a JSON text as [`json_of_words`] makes it.
pub(crate) fn words(engine: Engine, place: &str) -> String {
    let columns = ["a", "b", "c"].into_iter().enumerate();
    match engine {
        Engine::Sqlite => {
            let columns = columns.map(|(at, name)| format!("json_extract(value, '$[{at}]') AS {name}"));
            format!("(SELECT {} FROM json_each({place}))", columns.collect::<Vec<_>>().join(", "))
        }
        Engine::Postgres => {
            let columns = columns.map(|(at, name)| format!("value ->> {at} AS {name}"));
            format!(
                "(SELECT {} FROM jsonb_array_elements(CAST({place} AS JSONB)) AS listed (value))",
                columns.collect::<Vec<_>>().join(", ")
            )
        }
    }
}

/// Words as one value for [`words`].
pub(crate) fn json_of_words(words: &[[String; 3]]) -> String {
    serde_json::to_string(words).expect("a list of texts always has a JSON form")
}

fn conflict(says: &str) -> Error {
    Error::Conflict(format!("this goes against what is already kept, and nothing was written ({says})"))
}

/// An error of the library as ours.
fn translated(at: &Address, error: &DbErr) -> Error {
    match error {
        DbErr::Conn(RuntimeErr::SqlxError(inner))
        | DbErr::Exec(RuntimeErr::SqlxError(inner))
        | DbErr::Query(RuntimeErr::SqlxError(inner)) => translated_here(at, inner),
        DbErr::ConnectionAcquire(ConnAcquireErr::Timeout) => translated_here(at, &sqlx::Error::PoolTimedOut),
        other => Error::io(at, other.to_string()),
    }
}

fn translated_here(at: &Address, error: &sqlx::Error) -> Error {
    match (at.place(), error.as_database_error()) {
        (Place::File(_), Some(said)) => sqlite::translated(at, said),
        (Place::File(_), None) => Error::io(at, error.to_string()),
        (Place::Database(_), Some(said)) => postgres::translated(at, said),
        (Place::Database(_), None) => postgres::not_asked(at, error),
    }
}
