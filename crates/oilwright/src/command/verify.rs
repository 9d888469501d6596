//! `verify`: whether the shop is as it was written.

use std::process::ExitCode;

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;

/// Reads the whole shop and says what is damaged; exit 1 when anything is.
pub(crate) async fn run(shared: &Shared) -> Result<ExitCode, Failure> {
    let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
    let damage: Vec<String> = open.store.verify().await?.iter().map(ToString::to_string).collect();
    let file = open.store.address().to_string();
    open.store.close().await?;
    if shared.json {
        say::json(&serde_json::json!({ "file": file, "damage": damage }))?;
    } else if damage.is_empty() {
        say::line(&format!("{file}: nothing is damaged"))?;
    } else {
        for one in &damage {
            say::line(&format!("{file}: {one}"))?;
        }
        say::line("Keep a copy of it as it is, and go back to the last backup: oilwright restore BACKUP --shop NEW")?;
    }
    Ok(if damage.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}
