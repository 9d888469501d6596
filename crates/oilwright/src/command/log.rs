//! `log`: writing down what was done, seen or run. Every entry gets the command's moment; `--happened` puts it earlier.

use std::process::ExitCode;

use advice::round::{Act, act, serving};
use clap::{Args, Subcommand};
use shop::id::Id;
use shop::logbook::{Body, EntryId, NewEntry, Subject};
use shop::snapshot::MachineSnapshot;
use store::MachineRow;

use crate::failure::Failure;
use crate::shop_file::OpenShop;
use crate::{moment, say, shop_file};

use super::Shared;
use super::key::key;

#[derive(Debug, Args)]
pub(crate) struct Log {
    /// Who says so.
    #[arg(long, global = true, default_value = "keeper")]
    by: String,
    /// When it happened, if that was earlier than the moment of the command.
    #[arg(long, global = true, value_name = "2026-11-25T08:40")]
    happened: Option<String>,
    /// A key of your own: the same key sent twice is kept once.
    #[arg(long, global = true)]
    key: Option<String>,
    /// The number of the entry that this one puts right; that one counts no more.
    #[arg(long, global = true, value_name = "ENTRY")]
    instead_of: Option<i64>,
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// Points were oiled, with the oil and dose of the round.
    Dosed {
        machine: String,
        #[arg(required = true)]
        points: Vec<String>,
        /// How much, if not the dose of the round.
        #[arg(long)]
        amount: Option<String>,
    },
    /// The signs at points were seen. That oil was given is another entry.
    Seen {
        machine: String,
        #[arg(required = true)]
        points: Vec<String>,
        #[arg(long)]
        note: Option<String>,
    },
    /// The signs at points were looked for and were not there.
    Missing {
        machine: String,
        #[arg(required = true)]
        points: Vec<String>,
        #[arg(long)]
        note: Option<String>,
    },
    /// A point could not be reached.
    NotReached {
        machine: String,
        point: String,
        /// Why.
        #[arg(long)]
        because: String,
    },
    /// The machine ran.
    Ran {
        machine: String,
        /// 3, 3 h, 90 min.
        hours: String,
        /// At which job.
        #[arg(long)]
        job: Option<String>,
    },
    /// A reservoir's level was read.
    Level { machine: String, reservoir: String, reading: String },
    /// A reservoir was filled or topped up.
    Filled {
        machine: String,
        reservoir: String,
        #[arg(long)]
        amount: Option<String>,
        /// The oil, by its id on the shelf.
        #[arg(long)]
        oil: Option<String>,
    },
    /// A reservoir was drained.
    Drained {
        machine: String,
        reservoir: String,
        #[arg(long)]
        note: Option<String>,
    },
    /// Anything worth saying about a machine.
    Note { machine: String, text: String },
    /// Take entries back by their numbers. They stay in the log, withdrawn.
    Undo {
        #[arg(required = true)]
        entries: Vec<i64>,
    },
}

impl Log {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let happened = match &self.happened {
            Some(text) => moment::instant(Some(text), &open.settings.zone)?,
            None => open.at,
        };
        if happened > open.at {
            return Err(Failure::Use(
                "--happened lies after the moment of the command; nothing is logged before it happens".into(),
            ));
        }
        let said = said(&self.what, &open).await?;
        let key = key(self.key.as_deref())?;
        if self.instead_of.is_some() && said.len() != 1 {
            return Err(Failure::Use("--instead-of puts one entry right; write down one thing".into()));
        }
        let zone = open.settings.zone.iana_name().unwrap_or("UTC").to_owned();
        let entries: Vec<NewEntry> = said
            .into_iter()
            .enumerate()
            .map(|(number, (subject, body, supersedes))| NewEntry {
                happened,
                recorded: open.at,
                zone: zone.clone(),
                by: self.by.clone(),
                subject,
                body,
                supersedes: supersedes.or(self.instead_of.map(EntryId)),
                idempotency_key: key.entry(number),
            })
            .collect();
        let ids = open.store.record(&entries).await?;
        open.store.close().await?;
        if shared.json {
            say::json(&serde_json::json!({ "entries": ids.iter().map(|id| id.0).collect::<Vec<_>>() }))?;
        } else {
            let numbers: Vec<String> = ids.iter().map(ToString::to_string).collect();
            say::line(&format!("Kept: {} {}", if ids.len() == 1 { "entry" } else { "entries" }, numbers.join(", ")))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}

type Said = (Subject, Body, Option<EntryId>);

async fn said(what: &What, open: &OpenShop) -> Result<Vec<Said>, Failure> {
    Ok(match what {
        What::Dosed { machine, points, amount } => {
            let (row, snapshot, shelf) = on(open, machine).await?;
            each(&row, &snapshot, points, |point| {
                let serving = serving(&snapshot.chart, point, &shelf);
                Body::Dosed {
                    oil: serving.oil.map(|oil| oil.id),
                    can: serving.can.map(|can| can.id),
                    amount: amount.clone().or(serving.dose.said.filter(|_| act(point) == Act::Give)),
                }
            })?
        }
        What::Seen { machine, points, note } => {
            let (row, snapshot, _) = on(open, machine).await?;
            each(&row, &snapshot, points, |_| Body::SignSeen { note: note.clone() })?
        }
        What::Missing { machine, points, note } => {
            let (row, snapshot, _) = on(open, machine).await?;
            each(&row, &snapshot, points, |_| Body::SignMissing { note: note.clone() })?
        }
        What::NotReached { machine, point, because } => {
            let (row, snapshot, _) = on(open, machine).await?;
            let reason = worth(because, "--because", "cover stuck")?;
            each(&row, &snapshot, std::slice::from_ref(point), |_| Body::NotReached { reason: reason.clone() })?
        }
        What::Ran { machine, hours, job } => {
            let (row, snapshot, _) = on(open, machine).await?;
            let jobs = &snapshot.chart.jobs;
            let job = match job {
                None => None,
                Some(wanted) => Some(
                    jobs.iter()
                        .find(|job| job.id.as_str() == wanted || job.name.eq_ignore_ascii_case(wanted))
                        .map(|job| job.id.clone())
                        .ok_or_else(|| {
                            let ids: Vec<&str> = jobs.iter().map(|job| job.id.as_str()).collect();
                            Failure::Use(format!("the {} has no job \"{wanted}\"; it has {}", row.name, ids.join(", ")))
                        })?,
                ),
            };
            vec![(Subject::Machine(row.id), Body::Ran { hours: super::hours(hours)?, job }, None)]
        }
        What::Level { machine, reservoir, reading } => {
            let reading = worth(reading, "the reading", "5 mm below the mark")?;
            about_reservoir(open, machine, reservoir, Body::Level { reading }).await?
        }
        What::Filled { machine, reservoir, amount, oil } => {
            let oil = oil.as_deref().map(Id::new).transpose().map_err(|fault| Failure::Use(fault.to_string()))?;
            about_reservoir(open, machine, reservoir, Body::Filled { oil, amount: amount.clone() }).await?
        }
        What::Drained { machine, reservoir, note } => {
            about_reservoir(open, machine, reservoir, Body::Drained { note: note.clone() }).await?
        }
        What::Note { machine, text } => {
            let row = open.machine(machine).await?;
            vec![(Subject::Machine(row.id), Body::Note { text: worth(text, "the note", "glass cleaned")? }, None)]
        }
        What::Undo { entries } => {
            let mut taken = Vec::with_capacity(entries.len());
            for id in entries {
                let entry = open.store.entry(EntryId(*id)).await?;
                taken.push((entry.said.subject, Body::Withdrawn, Some(entry.id)));
            }
            taken
        }
    })
}

async fn on(open: &OpenShop, machine: &str) -> Result<(MachineRow, MachineSnapshot, shop::shelf::Shelf), Failure> {
    let row = open.machine(machine).await?;
    let mut snapshot = open.store.snapshot_of(std::slice::from_ref(&row.id), open.at).await?;
    let machine =
        snapshot.machines.pop().ok_or_else(|| Failure::Use(format!("the shop has no machine \"{machine}\"")))?;
    Ok((row, machine, snapshot.shelf))
}

/// One entry for each of the points, all of which must be on the chart.
fn each(
    row: &MachineRow,
    machine: &MachineSnapshot,
    points: &[String],
    body: impl Fn(&shop::chart::Point) -> Body,
) -> Result<Vec<Said>, Failure> {
    points
        .iter()
        .map(|wanted| {
            let point = machine.chart.points_here().find(|point| point.id.as_str() == wanted).ok_or_else(|| {
                let ids: Vec<&str> = machine.chart.points_here().map(|point| point.id.as_str()).collect();
                let hint = match shop::fault::nearest(wanted, ids.iter().copied()) {
                    Some(near) => format!("did you mean {near}?"),
                    None => format!("it has {}", ids.join(", ")),
                };
                Failure::Use(format!("the {} has no point \"{wanted}\": {hint} Nothing was logged", row.name))
            })?;
            Ok((Subject::Point(row.id.clone(), point.id.clone()), body(point), None))
        })
        .collect()
}

async fn about_reservoir(open: &OpenShop, machine: &str, reservoir: &str, body: Body) -> Result<Vec<Said>, Failure> {
    let (row, snapshot, _) = on(open, machine).await?;
    let known = &snapshot.chart.reservoirs;
    let found = known.iter().find(|known| known.id.as_str() == reservoir).ok_or_else(|| {
        let ids: Vec<&str> = known.iter().map(|known| known.id.as_str()).collect();
        Failure::Use(format!("the {} has no reservoir \"{reservoir}\"; it has {}", row.name, ids.join(", ")))
    })?;
    Ok(vec![(Subject::Reservoir(row.id, found.id.clone()), body, None)])
}

fn worth(text: &str, what: &str, example: &str) -> Result<String, Failure> {
    let text = text.trim();
    if text.is_empty() {
        return Err(Failure::Use(format!("{what} is empty; write a few words, such as \"{example}\"")));
    }
    Ok(text.to_owned())
}
