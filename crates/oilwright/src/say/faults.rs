//! Faults of a file, each with its place, the line and a caret; or as JSON.

use serde::Serialize;
use shop::fault::{Fault, Severity};

use crate::failure::Failure;

#[derive(Serialize)]
struct Row<'r> {
    file: &'r str,
    line: usize,
    column: usize,
    says: &'r str,
}

/// Prints the faults of a file.
pub(crate) fn faults(file: &str, text: &str, faults: &[Fault], json: bool) -> Result<(), Failure> {
    if json {
        let rows = |severity: Severity| -> Vec<Row<'_>> {
            faults
                .iter()
                .filter(|fault| fault.severity == severity)
                .map(|fault| {
                    let place = fault.place(text);
                    Row { file, line: place.line, column: place.column, says: &fault.says }
                })
                .collect()
        };
        return super::json(&serde_json::json!({
            "faults": rows(Severity::Fault),
            "notes": rows(Severity::Warning),
            "audit": [],
        }));
    }
    for fault in faults {
        super::line(&fault.shown(file, text))?;
    }
    Ok(())
}
