//! `machines`: the machines of the shop.

use std::process::ExitCode;

use serde::Serialize;

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;

#[derive(Serialize)]
struct Row<'r> {
    id: &'r str,
    name: &'r str,
    kind: Option<&'r str>,
    points: usize,
    revision: i64,
}

pub(crate) async fn run(shared: &Shared) -> Result<ExitCode, Failure> {
    let shop = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
    let machines = shop.store.machines().await?;
    if shared.json {
        let rows: Vec<Row<'_>> = machines
            .iter()
            .map(|row| Row {
                id: row.id.as_str(),
                name: &row.name,
                kind: row.kind.as_deref(),
                points: row.points,
                revision: row.revision,
            })
            .collect();
        say::json(&serde_json::json!({ "machines": rows }))?;
    } else if machines.is_empty() {
        say::line("No machine yet. Take a chart in with: oilwright chart import FILE")?;
    } else {
        let table: Vec<[String; 4]> = machines
            .iter()
            .map(|row| {
                let kind = row.kind.clone().unwrap_or_default();
                [row.id.to_string(), row.name.clone(), kind, advice::words::count(row.points, "point")]
            })
            .collect();
        say::table(&table)?;
    }
    Ok(ExitCode::SUCCESS)
}
