//! A database of its own for a test, on the throw-away PostgreSQL server whose address stands in `OILWRIGHT_TEST_POSTGRES`. `cargo
//! xtask test` starts that server; a test that finds none fails and says so, because one that passes without it would prove nothing.

use std::sync::atomic::{AtomicUsize, Ordering};

use sea_orm::{ConnectOptions, ConnectionTrait as _, Database, DatabaseConnection};

/// Where the address of the server stands. It names the database `postgres` and a user who may make others.
pub(crate) const SERVER: &str = "OILWRIGHT_TEST_POSTGRES";

/// A new database; it goes away with this.
pub(crate) struct TestDatabase {
    name: String,
}

impl TestDatabase {
    pub(crate) async fn new() -> Self {
        Self::made_with("").await
    }

    /// A new database, made with further words of `CREATE DATABASE`.
    pub(crate) async fn made_with(words: &str) -> Self {
        static MADE: AtomicUsize = AtomicUsize::new(0);
        let name = format!("test_{}_{}", std::process::id(), MADE.fetch_add(1, Ordering::Relaxed));
        administer(&format!("CREATE DATABASE {name} {words}")).await;
        Self { name }
    }

    /// Its address, with the password.
    pub(crate) fn address(&self) -> String {
        server().replacen("/postgres?", &format!("/{}?", self.name), 1)
    }
}

impl Drop for TestDatabase {
    fn drop(&mut self) {
        let sql = format!("DROP DATABASE {} WITH (FORCE)", self.name);
        // The runtime of the test waits for this very call, so another one has to run it.
        let dropped = std::thread::spawn(move || {
            let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
            runtime.block_on(administer(&sql));
        });
        let _ = dropped.join();
    }
}

/// A connection of another program, with nothing of ours set on it.
pub(crate) async fn connected(address: &str) -> DatabaseConnection {
    let mut options = ConnectOptions::new(address);
    options.max_connections(1).sqlx_logging(false);
    Database::connect(options).await.expect("the server takes it")
}

async fn administer(sql: &str) {
    let connection = connected(&server()).await;
    connection.execute_unprepared(sql).await.expect("SQL");
    connection.close().await.expect("it closes");
}

fn server() -> String {
    std::env::var(SERVER).unwrap_or_else(|_| {
        panic!("no PostgreSQL server for the tests: run them by `cargo xtask test --only tests`, which starts one and sets {SERVER}")
    })
}
