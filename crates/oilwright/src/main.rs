//! The command line of Oilwright: it wires store, reasoning and pages together and holds no logic of its own. Each command is one
//! file in `command/`; `say/` prints what the reasoning answers; `demo/` fills the invented shop.

mod command;
mod demo;
mod failure;
mod moment;
mod say;
mod shop_file;

use std::io::Write as _;
use std::process::ExitCode;

use clap::Parser as _;

use command::Line;
use failure::Failure;

#[tokio::main]
async fn main() -> ExitCode {
    let line = Line::parse();
    match command::run(line).await {
        Ok(code) => code,
        Err(Failure::Pipe) => ExitCode::SUCCESS,
        Err(failure) => {
            // Nothing more can be done when even standard error is gone.
            let _ = writeln!(std::io::stderr(), "oilwright: {failure}");
            failure.code()
        }
    }
}
