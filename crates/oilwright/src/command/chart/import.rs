//! `chart import`: a chart file into the shop, with its pictures.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;
use shop::id::Id;
use store::NewPicture;

use crate::command::Shared;
use crate::failure::Failure;
use crate::{say, shop_file};

use super::bundle::Bundle;
use super::machine_id;

#[derive(Debug, Args)]
pub(crate) struct Import {
    /// The chart file, or a zip of it with its pictures.
    file: PathBuf,
    /// The machine's id in the shop; the file's name when left out.
    #[arg(long)]
    machine: Option<String>,
    /// Who says so.
    #[arg(long, default_value = "keeper")]
    by: String,
}

impl Import {
    pub(super) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let bundle = Bundle::open(&self.file)?;
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let machine = match &self.machine {
            Some(id) => Id::new(id).map_err(|fault| Failure::Use(fault.to_string()))?,
            None => machine_id(&self.file, &bundle.chart)?,
        };
        let pictures: Vec<NewPicture> = bundle
            .pictures
            .into_iter()
            .map(|(name, bytes)| NewPicture { machine: machine.clone(), name, taken: None, bytes })
            .collect();
        let count = pictures.len();
        let revision = open.store.add_chart_with(&machine, &bundle.text, pictures, open.at, &self.by).await?;
        open.store.close().await?;
        let (name, points) = (&bundle.chart.machine.name, bundle.chart.points.len());
        let with = if count == 0 { String::new() } else { format!(", {}", advice::words::count(count, "picture")) };
        say::line(&format!("{machine}: {name}, {}{with}, revision {revision}", advice::words::count(points, "point")))?;
        for missing in bundle.missing {
            say::line(&format!(
                "The chart names the picture {missing}, which was not beside it; import it again when it is."
            ))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}
