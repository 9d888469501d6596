//! The commands and what they share. One file each; this one only reads the line and hands over.

mod backup;
mod calc;
mod chart;
mod csv;
mod demo;
mod judge;
mod key;
mod log;
mod logbook;
mod machine;
mod machines;
mod round;
mod serve;
mod shelf;
mod shelf_plan;
mod shop;
mod verify;

use std::ffi::OsString;
use std::process::ExitCode;

use ::shop::amount::read_run;
use ::shop::reading::says_run;
use clap::{Args, Parser, Subcommand, ValueEnum};
use tribology::quantity::{Time, Units};

use crate::failure::Failure;

/// Keeps old manual machine tools oiled: what goes where, when, how much, and that it gets there.
#[derive(Debug, Parser)]
#[command(name = "oilwright", version, max_term_width = 100)]
pub(crate) struct Line {
    #[command(flatten)]
    shared: Shared,
    #[command(subcommand)]
    command: Command,
}

/// What every command takes.
#[derive(Debug, Args)]
pub(crate) struct Shared {
    /// The shop: its data file, or a database such as postgres://keeper@server/shop.
    // An address may hold a password, which the help must not show; it is read where a fault can be told without it.
    #[arg(long, global = true, env = "OILWRIGHT_SHOP", hide_env_values = true, value_name = "FILE")]
    pub(crate) shop: Option<OsString>,
    /// The moment, on the shop's clock, so that an answer can be had again; now when left out.
    #[arg(long, global = true, value_name = "2026-11-25T09:00")]
    pub(crate) at: Option<String>,
    /// How sums are said; the shop's setting when left out. What was typed stays as it was typed.
    #[arg(long, global = true, value_enum)]
    pub(crate) units: Option<Habit>,
    /// Print one JSON object.
    #[arg(long, global = true)]
    pub(crate) json: bool,
    /// Show how the answer was worked out.
    #[arg(long, global = true)]
    pub(crate) working: bool,
}

/// A habit of measuring.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Habit {
    /// Millimetres, litres, bar, °C.
    Metric,
    /// Inches, US gallons, psi, °F.
    Us,
}

impl From<Habit> for Units {
    fn from(habit: Habit) -> Self {
        match habit {
            Habit::Metric => Self::Metric,
            Habit::Us => Self::Us,
        }
    }
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Build an invented shop in a fresh folder, print today's round and serve its pages.
    Demo(demo::Demo),
    /// Serve the pages of a shop.
    Serve(serve::Serve),
    /// Make a new shop.
    #[command(subcommand)]
    Shop(shop::Shop),
    /// The machines of the shop.
    Machines,
    /// One machine.
    #[command(subcommand)]
    Machine(machine::Machine),
    /// What to oil before today's job.
    Round(round::Round),
    /// What each point wants.
    Needs(judge::Needs),
    /// How every oil on hand measures up to what a point wants.
    Judge(judge::Judge),
    /// The fewest oils that serve the whole shop, who suffers by it, and what to buy.
    ShelfPlan(shelf_plan::ShelfPlan),
    /// Write down what was done, seen or run.
    Log(log::Log),
    /// Read what was written down.
    Logbook(logbook::Logbook),
    /// Write a backup of the shop, also while others write in it.
    Backup(backup::Backup),
    /// Make a shop from a backup.
    Restore(backup::Restore),
    /// Look through the shop for damage.
    Verify,
    /// Everything as tables for a spreadsheet, and back.
    #[command(subcommand)]
    Csv(csv::Csv),
    /// Work something out: viscosities, grades, old units, blends.
    #[command(subcommand)]
    Calc(calc::Calc),
    /// What an old plate asked for, in oils sold today.
    OldName(calc::OldName),
    /// Oiling charts.
    #[command(subcommand)]
    Chart(chart::Chart),
    /// Oils, greases and cans.
    #[command(subcommand)]
    Shelf(shelf::Shelf),
}

/// Runs the command of a line.
pub(crate) async fn run(line: Line) -> Result<ExitCode, Failure> {
    let shared = line.shared;
    match line.command {
        Command::Demo(demo) => demo.run(&shared).await,
        Command::Serve(serve) => serve.run(&shared).await,
        Command::Shop(command) => command.run(&shared).await,
        Command::Machines => machines::run(&shared).await,
        Command::Machine(machine) => machine.run(&shared).await,
        Command::Round(round) => round.run(&shared).await,
        Command::Needs(needs) => needs.run(&shared).await,
        Command::Judge(judge) => judge.run(&shared).await,
        Command::ShelfPlan(plan) => plan.run(&shared).await,
        Command::Log(log) => log.run(&shared).await,
        Command::Logbook(logbook) => logbook.run(&shared).await,
        Command::Backup(backup) => backup.run(&shared).await,
        Command::Restore(restore) => restore.run(&shared).await,
        Command::Verify => verify::run(&shared).await,
        Command::Csv(csv) => csv.run(&shared).await,
        Command::Calc(calc) => calc.run(&shared),
        Command::OldName(calc::OldName(calc)) => calc.run(&shared),
        Command::Chart(chart) => chart.run(&shared).await,
        Command::Shelf(shelf) => shelf.run(&shared).await,
    }
}

/// Hours as people type them: `3`, `3 h`, `90 min`.
fn hours(text: &str) -> Result<Time, Failure> {
    read_run(text).map_err(|fault| Failure::Use(says_run("the number of hours", &fault)))
}
