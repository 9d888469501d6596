//! The tables of a shop and what their columns hold, as the file or the database itself says.

use crate::db::{Engine, Row, SCHEMA, Tx, Value, values};
use crate::error::Result;

/// A table with the columns that give its rows an order.
pub(crate) type Table = (&'static str, &'static str);

/// The tables that people's words are in, each behind those that it speaks of.
pub(crate) const SAID: [Table; 7] = [
    ("setting", "number"),
    ("machine", "id"),
    ("chart_revision", "machine, number"),
    ("oil_revision", "id, number"),
    ("can_revision", "id, number"),
    ("entry", "id"),
    ("picture", "id"),
];

/// The tables that follow from those.
pub(crate) const DERIVED: [Table; 4] =
    [("fingerprint", "entry"), ("seal", "of_table, of_row"), ("due", "machine, point, kind"), ("thumbnail", "picture")];

/// The columns that hold an instant.
const INSTANTS: [&str; 3] = ["happened", "recorded", "taken"];

/// A column of a table.
pub(crate) struct Column {
    pub(crate) name: String,
    pub(crate) holds: Holds,
}

/// What a column holds.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Holds {
    Text,
    Whole,
    Real,
    Instant,
    Bytes,
}

/// The columns of a table in their order.
pub(crate) async fn columns(tx: &Tx, table: &str) -> Result<Vec<Column>> {
    let rows = match tx.engine() {
        Engine::Sqlite => {
            let sql = "SELECT name, type AS holds FROM pragma_table_info($1) ORDER BY cid";
            tx.all(sql, values![table]).await?
        }
        Engine::Postgres => {
            let sql = "SELECT CAST(column_name AS TEXT) AS name, CAST(data_type AS TEXT) AS holds \
                       FROM information_schema.columns WHERE table_schema = $1 AND table_name = $2 ORDER BY ordinal_position";
            tx.all(sql, values![SCHEMA, table]).await?
        }
    };
    rows.iter().map(column).collect()
}

fn column(row: &Row) -> Result<Column> {
    let (name, holds): (String, String) = (row.get("name")?, row.get("holds")?);
    let holds = match holds.as_str() {
        _ if INSTANTS.contains(&name.as_str()) => Holds::Instant,
        "INTEGER" | "bigint" => Holds::Whole,
        "REAL" | "double precision" => Holds::Real,
        "BLOB" | "bytea" => Holds::Bytes,
        _ => Holds::Text,
    };
    Ok(Column { name, holds })
}

impl Column {
    /// Its value in a row, ready to be bound.
    pub(crate) fn value(&self, row: &Row) -> Result<Value> {
        let name = &self.name;
        Ok(match self.holds {
            Holds::Text => Value::from(row.get::<Option<String>>(name)?),
            Holds::Whole | Holds::Instant => Value::from(row.get::<Option<i64>>(name)?),
            Holds::Real => Value::from(row.get::<Option<f64>>(name)?),
            Holds::Bytes => Value::from(row.get::<Option<Vec<u8>>>(name)?),
        })
    }
}
