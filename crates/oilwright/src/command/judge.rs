//! `needs` and `judge`: what each point of a machine wants, and how every oil on hand measures up.

use std::path::PathBuf;
use std::process::ExitCode;

use advice::judge::{Judged, judge};
use advice::need::{Need, need};
use advice::words;
use clap::Args;
use serde_json::{Value as Json, json};
use shop::chart::{Chart, Point};
use shop::fault::nearest;
use shop::shelf::Shelf;

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;

#[derive(Debug, Args)]
pub(crate) struct Asked {
    /// The machine, by id or name.
    machine: Option<String>,
    /// One point of it; all of this example when left out.
    point: Option<String>,
    /// A chart file instead of a machine of the shop.
    #[arg(long, value_name = "FILE")]
    chart: Option<PathBuf>,
    /// The shelf file that goes with the chart file.
    #[arg(long, value_name = "FILE", requires = "chart")]
    shelf: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub(crate) struct Judge {
    #[command(flatten)]
    asked: Asked,
    /// Only this oil of the shelf, by its id.
    #[arg(long, value_name = "ID")]
    oil: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct Needs {
    #[command(flatten)]
    asked: Asked,
}

/// What is asked about.
struct Source {
    chart: Chart,
    shelf: Shelf,
}

impl Asked {
    async fn source(&self, shared: &Shared) -> Result<Source, Failure> {
        if let Some(file) = &self.chart {
            let chart = super::chart::read(file)?;
            let shelf = self.shelf.as_deref().map(super::shelf::read).transpose()?.unwrap_or_default();
            return Ok(Source { chart, shelf });
        }
        let asked = self
            .machine
            .as_deref()
            .ok_or_else(|| Failure::Use("name a machine, or a file with --chart FILE".into()))?;
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let ids = open.machine_ids(&[asked.to_owned()]).await?;
        let snapshot = open.store.snapshot_of(&ids, open.at).await?;
        open.store.close().await?;
        let machine = snapshot.machines.into_iter().next();
        let chart = machine
            .map(|machine| machine.chart)
            .ok_or_else(|| Failure::Use(format!("the machine \"{asked}\" has no chart yet")))?;
        Ok(Source { chart, shelf: snapshot.shelf })
    }

    /// The points that take a lubricant on this example, or the one that is named.
    fn points<'c>(&self, chart: &'c Chart) -> Result<Vec<&'c Point>, Failure> {
        // With a chart file the first word is the point.
        let asked = if self.chart.is_some() {
            self.machine.as_deref().or(self.point.as_deref())
        } else {
            self.point.as_deref()
        };
        let Some(asked) = asked else { return Ok(chart.points_here().collect()) };
        let found = chart.points_here().find(|point| point.id.as_str() == asked);
        found.map(|point| vec![point]).ok_or_else(|| {
            let near = nearest(asked, chart.points_here().map(|point| point.id.as_str()));
            let near = near.map(|near| format!("; did you mean \"{near}\"?")).unwrap_or_default();
            Failure::Use(format!("this machine has no point \"{asked}\" as it is built here{near}"))
        })
    }
}

impl Judge {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let source = self.asked.source(shared).await?;
        if let Some(oil) = &self.oil
            && source.shelf.oils.iter().all(|known| known.id.as_str() != oil)
        {
            let near = nearest(oil, source.shelf.oils.iter().map(|known| known.id.as_str()));
            let near = near.map(|near| format!("; did you mean \"{near}\"?")).unwrap_or_default();
            return Err(Failure::Use(format!("there is no oil \"{oil}\" on the shelf{near}")));
        }
        let mut points = Vec::new();
        for point in self.asked.points(&source.chart)? {
            let need = need(&source.chart, point);
            let judged = judge(&source.chart, point, &source.shelf);
            let shown: Vec<&Judged> =
                judged.iter().filter(|one| self.oil.as_deref().is_none_or(|oil| one.oil.as_str() == oil)).collect();
            if shared.json {
                points.push(json!({
                    "id": point.id.as_str(),
                    "answer": words::answer(&need, &judged, &source.shelf),
                    "verdicts": shown.iter().map(|one| json!({
                        "oil": one.oil.as_str(),
                        "verdict": one.verdict.to_string(),
                        "reasons": one.reasons.iter().map(words::reason).collect::<Vec<_>>(),
                    })).collect::<Vec<_>>(),
                }));
                continue;
            }
            say::line(&format!("({}) {}: {}", point.id, point.name, words::answer(&need, &judged, &source.shelf)))?;
            for one in shown {
                say::line(&format!("     {:8} {}", one.verdict.to_string(), one.oil))?;
                let reasons = if shared.working { one.reasons.len() } else { 1 };
                for reason in one.reasons.iter().take(reasons) {
                    say::line(&format!("              {}", words::reason(reason)))?;
                }
            }
        }
        if shared.json {
            say::json(&json!({ "points": points }))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}

impl Needs {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let source = self.asked.source(shared).await?;
        let mut points = Vec::new();
        for point in self.asked.points(&source.chart)? {
            let need = need(&source.chart, point);
            if shared.json {
                points.push(as_json(point, &need));
                continue;
            }
            let all = need.band.as_ref().map_or_else(|| "no oil by body".to_owned(), words::band);
            say::line(&format!("({}) {}: {all}", point.id, point.name))?;
            for (place, band) in &need.pairs {
                let Some(pair) = place.pair else {
                    say::line("     nobody knows what it feeds")?;
                    continue;
                };
                let wants = band.as_ref().map_or_else(
                    || "not judged by body".to_owned(),
                    |band| format!("{} ({})", words::band(band), band.source),
                );
                say::line(&format!("     {}: {wants}", pair.id))?;
            }
            if !need.suffer.is_empty() {
                say::line(&format!("     a compromise; {} would want another", words::list(&need.suffer)))?;
            }
            if let Some(label) = words::to_buy(&need) {
                say::line(&format!("     on a label: {label}"))?;
            }
        }
        if shared.json {
            say::json(&json!({ "points": points }))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}

fn as_json(point: &Point, need: &Need<'_>) -> Json {
    let band = |band: &advice::need::Band| json!({ "v40_low": band.low, "v40_high": band.high, "source": band.source, "standing": band.standing.words() });
    json!({
        "id": point.id.as_str(),
        "band": need.band.as_ref().map(band),
        "pairs": need.pairs.iter().map(|(place, wants)| json!({
            "pair": place.pair.map(|pair| pair.id.as_str()),
            "band": wants.as_ref().map(band),
        })).collect::<Vec<_>>(),
        "suffer": need.suffer.iter().map(|id| id.as_str()).collect::<Vec<_>>(),
        "label": words::to_buy(need),
    })
}
