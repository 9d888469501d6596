//! What a check of a chart file found: the faults, each with its place, the line and a caret; then the audit, the remarks that
//! matter most first; or all of it as JSON.

use serde::Serialize;
use shop::audit::{FIRST, Remark};
use shop::fault::{Fault, Severity};

use crate::failure::Failure;

/// A file that was checked.
pub(crate) struct Checked<'c> {
    pub(crate) file: &'c str,
    pub(crate) text: &'c str,
    pub(crate) faults: &'c [Fault],
    pub(crate) remarks: &'c [Remark],
}

#[derive(Serialize)]
struct FaultRow<'r> {
    file: &'r str,
    line: usize,
    column: usize,
    says: &'r str,
}

#[derive(Serialize)]
struct RemarkRow<'r> {
    says: &'r str,
    next: &'r str,
    of: Vec<&'r str>,
}

/// Prints what a check found.
pub(crate) fn check(checked: &Checked<'_>, all: bool, json: bool) -> Result<(), Failure> {
    if json { as_json(checked) } else { as_text(checked, all) }
}

fn as_text(checked: &Checked<'_>, all: bool) -> Result<(), Failure> {
    let Checked { file, text, faults, remarks } = checked;
    for fault in *faults {
        super::line(&fault.shown(file, text))?;
    }
    if faults.iter().any(|fault| fault.severity == Severity::Fault) {
        return Ok(());
    }
    let none = if remarks.is_empty() { ", and nothing doubtful" } else { "" };
    super::line(&format!("{file}: no faults{none}"))?;
    let shown = if all { remarks.len() } else { FIRST };
    for remark in remarks.iter().take(shown) {
        super::line("")?;
        super::line(&format!("  {}.", sentence(&remark.says)))?;
        super::line(&format!("  Next: {}.", remark.next))?;
    }
    let folded = remarks.len().saturating_sub(shown);
    if folded > 0 {
        super::line("")?;
        super::line(&format!("  {} more, shown with --all.", advice::words::count(folded, "remark")))?;
    }
    Ok(())
}

fn as_json(checked: &Checked<'_>) -> Result<(), Failure> {
    let rows = |severity: Severity| -> Vec<FaultRow<'_>> {
        let of = checked.faults.iter().filter(|fault| fault.severity == severity);
        of.map(|fault| {
            let place = fault.place(checked.text);
            FaultRow { file: checked.file, line: place.line, column: place.column, says: &fault.says }
        })
        .collect()
    };
    let audit: Vec<RemarkRow<'_>> = checked
        .remarks
        .iter()
        .map(|remark| RemarkRow {
            says: &remark.says,
            next: &remark.next,
            of: remark.of.iter().map(|id| id.as_str()).collect(),
        })
        .collect();
    super::json(&serde_json::json!({
        "faults": rows(Severity::Fault),
        "notes": rows(Severity::Warning),
        "audit": audit,
    }))
}

/// With a capital letter.
fn sentence(says: &str) -> String {
    let mut letters = says.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
