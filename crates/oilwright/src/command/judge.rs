//! `needs` and `judge`: what each point of a machine wants, and how every oil on hand measures up; of a shop, also what is in its sumps,
//! cups, tanks and boxes already.

use std::path::PathBuf;
use std::process::ExitCode;

use advice::contents::in_reservoir;
use advice::judge::{Judged, judge};
use advice::need::{Movable, Need, Plate, feed, movable, need, plate, unwanted};
use advice::words;
use clap::Args;
use jiff::Timestamp;
use serde_json::{Value as Json, json};
use shop::chart::{Chart, Point};
use shop::fault::nearest;
use shop::shelf::Shelf;
use shop::snapshot::{Conditions, MachineSnapshot, Moment};
use tribology::quantity::{Temperature, Units};

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
    conditions: Conditions,
    units: Units,
    /// The machine as the shop knows it, and when; nothing where a file is asked.
    known: Option<(MachineSnapshot, Moment)>,
}

impl Asked {
    async fn source(&self, shared: &Shared) -> Result<Source, Failure> {
        if let Some(file) = &self.chart {
            let chart = super::chart::read(file)?;
            let shelf = self.shelf.as_deref().map(super::shelf::read).transpose()?.unwrap_or_default();
            return Ok(Source { chart, shelf, conditions: Conditions::default(), units: Units::Metric, known: None });
        }
        let asked = self
            .machine
            .as_deref()
            .ok_or_else(|| Failure::Use("name a machine, or a file with --chart FILE".into()))?;
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let ids = open.machine_ids(&[asked.to_owned()]).await?;
        let snapshot = open.store.snapshot_of(&ids, open.at).await?;
        let units = open.settings.units;
        open.store.close().await?;
        let machine = snapshot.machines.into_iter().next();
        let machine = machine.ok_or_else(|| Failure::Use(format!("the machine \"{asked}\" has no chart yet")))?;
        Ok(Source {
            chart: machine.chart.clone(),
            shelf: snapshot.shelf,
            conditions: snapshot.conditions,
            units,
            known: Some((machine, snapshot.moment)),
        })
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

impl Source {
    /// What is in the reservoir of a point, as text and as JSON; nothing for a point without one, or where a file is asked.
    fn contents(&self, point: &Point) -> Option<(String, Json)> {
        let (machine, moment) = self.known.as_ref()?;
        let reservoir = self.chart.reservoir(point.reservoir.as_ref()?)?;
        let inside = in_reservoir(&self.chart, reservoir, &machine.contents(&reservoir.id), &self.shelf);
        let clock = |instant: Timestamp| instant.to_zoned_datetime(moment.zone.clone());
        let day = inside.since.map(|since| clock(since).strftime("%-d %B %Y").to_string());
        let what = words::contents(&inside, &self.shelf, day.as_deref());
        let says = format!("{what} {}", words::contents_act(&inside));
        let json = json!({
            "reservoir": reservoir.id.as_str(),
            "oil": inside.only().map(|oil| oil.as_str()),
            "since": inside.since.map(|since| clock(since).strftime("%Y-%m-%dT%H:%M:%S%:z").to_string()),
            "verdict": words::fit(inside.fit()),
            "act": inside.act.to_string(),
            "says": says,
        });
        Some((says, json))
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
        let units = shared.units.map_or(source.units, Units::from);
        let mut points = Vec::new();
        for point in self.asked.points(&source.chart)? {
            let need = need(&source.chart, point);
            let judged = judge(&source.chart, point, &source.shelf);
            let shown: Vec<&Judged> =
                judged.iter().filter(|one| self.oil.as_deref().is_none_or(|oil| one.oil.as_str() == oil)).collect();
            let contents = source.contents(point);
            if shared.json {
                points.push(json!({
                    "id": point.id.as_str(),
                    "contents": contents.map(|(_, json)| json),
                    "answer": words::answer(&need, &judged, &source.shelf),
                    "verdicts": shown.iter().map(|one| json!({
                        "oil": one.oil.as_str(),
                        "verdict": one.verdict.to_string(),
                        "reasons": one.reasons.iter().map(words::reason).collect::<Vec<_>>(),
                        "rules": one.reasons.iter().map(|reason| json!({
                            "id": reason.rule,
                            "cap": reason.cap.to_string(),
                            "standing": reason.standing.words(),
                            "source": reason.source,
                            "seen": reason.seen.iter().map(|seen| words::seen(seen, units)).collect::<Vec<_>>(),
                        })).collect::<Vec<_>>(),
                        "working": one.steps.iter().map(|(pair, step)| format!("{pair}: {}", words::step(step, units))).collect::<Vec<_>>(),
                    })).collect::<Vec<_>>(),
                }));
                continue;
            }
            say::line(&format!("({}) {}: {}", point.id, point.name, words::answer(&need, &judged, &source.shelf)))?;
            if let Some((says, _)) = contents {
                say::line(&format!("     {says}"))?;
            }
            for care in words::care(&need) {
                say::line(&format!("     Take care. {care}"))?;
            }
            for one in shown {
                say::line(&format!("     {:8} {}", one.verdict.to_string(), one.oil))?;
                let reasons = if shared.working { one.reasons.len() } else { 1 };
                for reason in one.reasons.iter().take(reasons) {
                    say::line(&format!("              {}", words::reason(reason)))?;
                    if shared.working {
                        for seen in &reason.seen {
                            say::line(&format!("                  {}", words::seen(seen, units)))?;
                        }
                    }
                }
                if shared.working {
                    for (pair, step) in &one.steps {
                        say::line(&format!("              {pair}: {}", words::step(step, units)))?;
                    }
                }
            }
        }
        if shared.json {
            say::json(&json!({ "points": points }))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}

/// A cold morning where no shop says how cold it gets (common practice: below about 10 °C feeds begin to fail).
const COLD_C: f64 = 8.0;

impl Needs {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let source = self.asked.source(shared).await?;
        let units = shared.units.map_or(source.units, Units::from);
        let mut points = Vec::new();
        for point in self.asked.points(&source.chart)? {
            let need = need(&source.chart, point);
            let cold = source.conditions.cold.unwrap_or(Temperature::from_celsius(COLD_C));
            let moved = feed(&source.chart, point).and_then(|feed| movable(feed, cold));
            let plate = plate(&source.chart, point);
            if shared.json {
                points.push(as_json(point, &need, plate.as_ref(), moved.map(|moved| (cold, moved))));
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
                let wants = if place.is_by_kind_alone() { format!("{wants}, by its kind alone") } else { wants };
                say::line(&format!("     {}: {wants}", pair.id))?;
            }
            if !need.suffer.is_empty() {
                say::line(&format!("     a compromise; {} would want another", words::list(&need.suffer)))?;
            }
            if let Some(plate) = &plate {
                say::line(&format!("     {}", words::plate(plate, need.band.as_ref())))?;
            }
            if let Some(moved) = moved {
                say::line(&format!("     {}", words::movable(moved, point.method, cold, units)))?;
            }
            for unwanted in unwanted(&need) {
                say::line(&format!("     not {}", words::unwanted(&unwanted)))?;
            }
            for care in words::care(&need) {
                say::line(&format!("     Take care. {care}"))?;
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

fn as_json(point: &Point, need: &Need<'_>, plate: Option<&Plate>, moved: Option<(Temperature, Movable)>) -> Json {
    let band = |band: &advice::need::Band| json!({ "v40_low": band.low, "v40_high": band.high, "source": band.source, "standing": band.standing.words() });
    json!({
        "id": point.id.as_str(),
        "band": need.band.as_ref().map(band),
        "pairs": need.pairs.iter().map(|(place, wants)| json!({
            "pair": place.pair.map(|pair| pair.id.as_str()),
            "band": wants.as_ref().map(band),
            "by_kind_alone": place.is_by_kind_alone(),
        })).collect::<Vec<_>>(),
        "suffer": need.suffer.iter().map(|id| id.as_str()).collect::<Vec<_>>(),
        "plate": plate.map(|plate| json!({
            "words": plate.words,
            "v40_low": plate.band.0.mm2_s(),
            "v40_high": plate.band.1.mm2_s(),
        })),
        "way": moved.map(|(cold, moved)| json!({
            "how": point.method.to_string(),
            "cold_c": cold.celsius(),
            "easy_v40": moved.easy.mm2_s(),
            "most_v40": moved.most.mm2_s(),
        })),
        "unwanted": unwanted(need).iter().map(words::unwanted).collect::<Vec<_>>(),
        "care": words::care(need),
        "label": words::to_buy(need),
    })
}
