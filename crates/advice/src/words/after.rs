//! What is done after the work, in sentences.

use crate::round::{AfterAct, AfterAt, AfterKind};

/// What is done, as a sentence.
#[must_use]
pub fn after_use(act: &AfterAct) -> &'static str {
    match act.kind {
        AfterKind::Brush => "Brush the chips off, never with air, and wipe.",
        AfterKind::Film => "Leave a film of way oil on these and on everything bright: table, vice, spindle nose.",
        AfterKind::ShutDrip => "Shut the drips.",
        AfterKind::LiftWick => "Lift the wicks out of their tubes; they feed on overnight.",
        AfterKind::ShutLid => "Shut the lids of the cups.",
        AfterKind::ReadLevel => {
            "Look at what uses oil by design. It should stand lower than this morning; if it does not, something starves."
        }
        AfterKind::Covers => "See that nothing is left off.",
        AfterKind::NoteHours => "Write down how long it ran.",
    }
}

/// What it is done to: `14 Driving shaft, rear bearing`, with the chart's own words behind.
#[must_use]
pub fn after_at(act: &AfterAct, at: &AfterAt) -> String {
    let name = match act.kind {
        AfterKind::ShutDrip | AfterKind::LiftWick | AfterKind::ShutLid => format!("{} {}", at.id, at.name),
        AfterKind::Covers => at.name.trim_end_matches(" off").trim_end_matches(" open").to_owned(),
        AfterKind::Brush | AfterKind::Film | AfterKind::ReadLevel | AfterKind::NoteHours => at.name.clone(),
    };
    match (&at.words, act.kind) {
        // What the chart remarks about a way or a thread seldom speaks of the evening.
        (Some(words), AfterKind::ShutDrip | AfterKind::LiftWick | AfterKind::ShutLid) => format!("{name}: {words}"),
        _ => name,
    }
}
