//! The one door to the database library: a connection, a transaction, a row. Everything else in the crate writes SQL with `$1`
//! and reads columns by name; errors of the library become ours here.

use std::path::Path;
use std::sync::Arc;
use std::time::Duration;

use jiff::Timestamp;
use sea_orm::{
    ConnectOptions, ConnectionTrait, Database, DatabaseConnection, DatabaseTransaction, DbErr, QueryResult, RuntimeErr,
    SqliteTransactionMode, Statement, TransactionOptions, TransactionTrait, TryGetable,
};
use shop::choice::Choice;
use shop::id::Id;

use crate::error::{Error, Result};
use crate::fuse;

pub(crate) use sea_orm::Value;

/// How long opening waits for another program to let go.
const OPENING_WAIT: Duration = Duration::from_millis(500);
/// How long a call waits for another program's writing to end.
const WORKING_WAIT: Duration = Duration::from_secs(10);

/// Bound values of a statement, in the order of `$1, $2, …`.
macro_rules! values {
    ($($value:expr),* $(,)?) => { vec![$($crate::db::Value::from($value)),*] };
}
pub(crate) use values;

/// An open data file: one connection, so that writers queue here and not at the file.
#[derive(Clone, Debug)]
pub(crate) struct Db {
    connection: DatabaseConnection,
    path: Arc<Path>,
}

/// A transaction; dropped without [`Tx::commit`] it leaves no trace.
pub(crate) struct Tx {
    transaction: DatabaseTransaction,
    path: Arc<Path>,
}

/// A row of an answer.
pub(crate) struct Row {
    row: QueryResult,
    path: Arc<Path>,
}

impl Db {
    pub(crate) async fn connect(path: &Path) -> Result<Self> {
        fuse::step(path)?;
        let file = path.to_owned();
        let mut options = ConnectOptions::new("sqlite:");
        options.max_connections(1).min_connections(1).sqlx_logging(false).test_before_acquire(false);
        // The one connection lives as long as the store, so that what is set on it stays.
        options.idle_timeout(None).max_lifetime(None).acquire_timeout(Duration::from_secs(60));
        options
            .map_sqlx_sqlite_opts(move |options| options.filename(&file).foreign_keys(true).busy_timeout(OPENING_WAIT));
        let path: Arc<Path> = path.into();
        let connection = Database::connect(options).await.map_err(|error| translated(&path, &error))?;
        Ok(Self { connection, path })
    }

    pub(crate) fn path(&self) -> &Path {
        &self.path
    }

    /// Sets how commits reach the disk. This is the first statement that reads the file, and it is not left to connecting: the
    /// library closes a connection that failed there only some time later, and until then its companions lie about.
    pub(crate) async fn write_ahead(&self) -> Result<()> {
        self.pragma("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL").await
    }

    /// Lets calls wait longer than opening did.
    pub(crate) async fn wait_longer(&self) -> Result<()> {
        self.pragma(&format!("PRAGMA busy_timeout = {}", WORKING_WAIT.as_millis())).await
    }

    /// A transaction in which every statement sees the file as the first one saw it.
    pub(crate) async fn read(&self) -> Result<Tx> {
        self.begin(SqliteTransactionMode::Deferred).await
    }

    /// A transaction that alone may write, from its beginning.
    pub(crate) async fn write(&self) -> Result<Tx> {
        self.begin(SqliteTransactionMode::Immediate).await
    }

    /// Writes all that the file holds into a new one, as it is at this moment.
    pub(crate) async fn copy_into(&self, to: &Path) -> Result<()> {
        self.wait_longer().await?;
        fuse::step(&self.path)?;
        let name = to.to_str().ok_or_else(|| Error::io(to, "its name is no readable text"))?;
        let sql = "VACUUM INTO $1";
        let statement = Statement::from_sql_and_values(self.connection.get_database_backend(), sql, values![name]);
        let done = self.connection.execute_raw(statement).await;
        done.map(drop).map_err(|error| translated(&self.path, &error))
    }

    pub(crate) async fn close(self) -> Result<()> {
        self.connection.close().await.map_err(|error| translated(&self.path, &error))
    }

    /// Sets something on the connection.
    pub(crate) async fn pragma(&self, sql: &str) -> Result<()> {
        fuse::step(&self.path)?;
        let done = self.connection.execute_unprepared(sql).await;
        done.map(drop).map_err(|error| translated(&self.path, &error))
    }

    async fn begin(&self, mode: SqliteTransactionMode) -> Result<Tx> {
        fuse::step(&self.path)?;
        let options = TransactionOptions { sqlite_transaction_mode: Some(mode), ..TransactionOptions::default() };
        let begun = self.connection.begin_with_options(options).await;
        Ok(Tx { transaction: begun.map_err(|error| translated(&self.path, &error))?, path: Arc::clone(&self.path) })
    }
}

impl Tx {
    /// All rows of an answer.
    pub(crate) async fn all(&self, sql: &str, values: Vec<Value>) -> Result<Vec<Row>> {
        fuse::step(&self.path)?;
        let rows = self.transaction.query_all_raw(self.statement(sql, values)).await;
        let rows = rows.map_err(|error| self.translated(&error))?;
        Ok(rows.into_iter().map(|row| Row { row, path: Arc::clone(&self.path) }).collect())
    }

    /// The first row of an answer.
    pub(crate) async fn one(&self, sql: &str, values: Vec<Value>) -> Result<Option<Row>> {
        fuse::step(&self.path)?;
        let row = self.transaction.query_one_raw(self.statement(sql, values)).await;
        let row = row.map_err(|error| self.translated(&error))?;
        Ok(row.map(|row| Row { row, path: Arc::clone(&self.path) }))
    }

    /// Runs one statement.
    pub(crate) async fn run(&self, sql: &str, values: Vec<Value>) -> Result<()> {
        fuse::step(&self.path)?;
        let done = self.transaction.execute_raw(self.statement(sql, values)).await;
        done.map(drop).map_err(|error| self.translated(&error))
    }

    /// Runs several statements without values.
    pub(crate) async fn script(&self, sql: &str) -> Result<()> {
        fuse::step(&self.path)?;
        let done = self.transaction.execute_unprepared(sql).await;
        done.map(drop).map_err(|error| self.translated(&error))
    }

    /// Makes it all so.
    pub(crate) async fn commit(self) -> Result<()> {
        fuse::step(&self.path)?;
        self.transaction.commit().await.map_err(|error| translated(&self.path, &error))
    }

    /// What stands in the file makes no sense.
    pub(crate) fn corrupt(&self, what: impl Into<String>) -> Error {
        Error::corrupt(&self.path, what)
    }

    fn statement(&self, sql: &str, values: Vec<Value>) -> Statement {
        #[cfg(test)]
        crate::plan::note(sql);
        Statement::from_sql_and_values(self.transaction.get_database_backend(), sql, values)
    }

    fn translated(&self, error: &DbErr) -> Error {
        translated(&self.path, error)
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
        Error::corrupt(&self.path, what)
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
pub(crate) fn pairs(place: &str) -> String {
    format!(
        "(SELECT json_extract(value, '$[0]') AS word, json_extract(value, '$[1]') AS whole FROM json_each({place}))"
    )
}

/// Pairs as one value for [`pairs`].
pub(crate) fn json_of_pairs(pairs: &[(impl serde::Serialize, i64)]) -> String {
    serde_json::to_string(pairs).expect("a list of texts and whole numbers always has a JSON form")
}

/// SQLite's primary result codes ("Result and Error Codes" in its documentation) as our errors.
fn translated(path: &Path, error: &DbErr) -> Error {
    let inner = match error {
        DbErr::Conn(RuntimeErr::SqlxError(inner))
        | DbErr::Exec(RuntimeErr::SqlxError(inner))
        | DbErr::Query(RuntimeErr::SqlxError(inner)) => inner.as_database_error(),
        _ => None,
    };
    let code = inner.and_then(|database| database.code()?.parse::<i32>().ok());
    let says = inner.map_or_else(|| error.to_string(), |database| database.message().to_owned());
    match code.map(|extended| extended & 0xff) {
        Some(5 | 6) => Error::Locked(path.to_owned()),
        Some(8) => Error::ReadOnly(path.to_owned()),
        Some(11) => Error::corrupt(path, says),
        Some(13) => Error::io(path, "the disk is full"),
        Some(19) => {
            Error::Conflict(format!("this goes against what is already kept, and nothing was written ({says})"))
        }
        Some(26) => Error::NotDatabase(path.to_owned()),
        _ => Error::io(path, says),
    }
}
