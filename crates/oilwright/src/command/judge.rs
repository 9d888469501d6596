//! `needs` and `judge`: what each point of a machine wants, and how every oil on hand measures up; of a shop, also what is in its sumps,
//! cups, tanks and boxes already.

use std::path::PathBuf;
use std::process::ExitCode;

use advice::contents::in_reservoir;
use advice::film::{Day, Filling, Film, Room, TooTight, at_work, film, rooms, warnings};
use advice::judge::{Judged, judge};
use advice::need::{Band, Movable, Need, Place, Plate, feed, movable, need, plate, unwanted, wants};
use advice::words;
use clap::Args;
use jiff::Timestamp;
use serde_json::{Value as Json, json};
use shop::chart::{Chart, Point};
use shop::fault::nearest;
use shop::shelf::{Oil, Shelf};
use shop::snapshot::{Conditions, MachineSnapshot, Moment};
use tribology::Answer;
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
    /// Only this oil of the shelf, by its id or by what stands on its can.
    #[arg(long, value_name = "NAME")]
    oil: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct Needs {
    #[command(flatten)]
    asked: Asked,
    /// The temperature of the shop on a usual day, 18C or 64 F; the shop's setting when left out.
    #[arg(long, value_name = "18C")]
    temperature: Option<String>,
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

/// The oil of a shelf that is called so.
fn oil_called<'s>(shelf: &'s Shelf, asked: &str) -> Result<&'s Oil, Failure> {
    let is_it = |oil: &&Oil| oil.id.as_str() == asked || oil.name.eq_ignore_ascii_case(asked);
    shelf.oils.iter().find(is_it).ok_or_else(|| {
        let near = nearest(asked, shelf.oils.iter().map(|known| known.id.as_str()));
        let near = near.map(|near| format!("; did you mean \"{near}\"?")).unwrap_or_default();
        Failure::Use(format!("there is no oil \"{asked}\" on the shelf{near}"))
    })
}

impl Judge {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let source = self.asked.source(shared).await?;
        let only = self.oil.as_deref().map(|asked| oil_called(&source.shelf, asked)).transpose()?;
        let units = shared.units.map_or(source.units, Units::from);
        let mut points = Vec::new();
        for point in self.asked.points(&source.chart)? {
            let need = need(&source.chart, point);
            let judged = judge(&source.chart, point, &source.shelf);
            let shown: Vec<&Judged> = judged.iter().filter(|one| only.is_none_or(|oil| one.oil == oil.id)).collect();
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
        let mut source = self.asked.source(shared).await?;
        if let Some(text) = &self.temperature {
            source.conditions.usual = Some(super::round::temperature(text)?);
        }
        let units = shared.units.map_or(source.units, Units::from);
        let how = say::How { json: shared.json, working: shared.working, units };
        let mut points = Vec::new();
        for point in self.asked.points(&source.chart)? {
            let found = Found::of(&source, point);
            if shared.json {
                points.push(found.json(how.units));
            } else {
                found.say(how)?;
            }
        }
        if shared.json {
            say::json(&json!({ "points": points }))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}

/// What is found of a point: what it wants, the films of its bearings with an oil, and what to be warned of.
struct Found<'c> {
    point: &'c Point,
    need: Need<'c>,
    oil: Option<Filling>,
    /// One for each pair.
    films: Vec<Option<Answer<Film>>>,
    warnings: Vec<TooTight>,
    plate: Option<Plate>,
    usual: Room,
    /// A cold morning, and what the way of oiling moves then.
    moved: Option<(Temperature, Movable)>,
}

impl<'c> Found<'c> {
    fn of(source: &'c Source, point: &'c Point) -> Self {
        let need = need(&source.chart, point);
        let judged = judge(&source.chart, point, &source.shelf);
        let oil = Filling::best(&source.chart, point, &source.shelf, &judged);
        let rooms = rooms(&source.conditions);
        let films = need.pairs.iter().map(|(place, _)| film(place, oil.as_ref()?, &rooms)).collect();
        let [_, usual, _] = rooms;
        let warnings = warnings(&source.chart, point, &need, &source.shelf, &judged, usual);
        let cold = source.conditions.cold.unwrap_or(Temperature::from_celsius(COLD_C));
        let moved = feed(&source.chart, point).and_then(|feed| Some((cold, movable(feed, cold)?)));
        Self { plate: plate(&source.chart, point), point, need, oil, films, warnings, usual, moved }
    }

    fn oil(&self) -> &str {
        self.oil.as_ref().map_or("", |oil| oil.name.as_str())
    }

    fn say(&self, how: say::How) -> Result<(), Failure> {
        let Self { point, need, .. } = self;
        let all = need.band.as_ref().map_or_else(|| "no oil by body".to_owned(), words::band);
        say::line(&format!("({}) {}: {all}", point.id, point.name))?;
        for warning in &self.warnings {
            say::too_tight(warning, how.units)?;
        }
        for ((place, band), film) in need.pairs.iter().zip(&self.films) {
            let Some(pair) = place.pair else {
                say::line("     nobody knows what it feeds")?;
                continue;
            };
            let said = band.as_ref().map_or_else(
                || "not judged by body".to_owned(),
                |band| format!("{} ({})", words::band(band), band.source),
            );
            let said = if place.is_by_kind_alone() { format!("{said}, by its kind alone") } else { said };
            say::line(&format!("     {}: {said}", pair.id))?;
            if let Some(wants) = wants(place) {
                say::line(&format!("       {wants}"))?;
            }
            let work = at_work(place, film.as_ref().map(|film| &film.value), self.usual);
            if let Some(says) = band.as_ref().and_then(|band| words::at_work(&work, band, how.units)) {
                say::line(&format!("       {says}"))?;
            }
            let Some(found) = film else { continue };
            if let Some(usual) = found.value.rooms.iter().find(|one| one.room.day == Day::Usual) {
                say::film(found, usual, self.oil(), how)?;
            }
        }
        if !need.suffer.is_empty() {
            say::line(&format!("     a compromise; {} would want another", words::list(&need.suffer)))?;
        }
        if let Some(plate) = &self.plate {
            say::line(&format!("     {}", words::plate(plate, need.band.as_ref())))?;
        }
        if let Some((cold, moved)) = self.moved {
            say::line(&format!("     {}", words::movable(moved, point.method, cold, how.units)))?;
        }
        for unwanted in unwanted(need) {
            say::line(&format!("     not {}", words::unwanted(&unwanted)))?;
        }
        for care in words::care(need) {
            say::line(&format!("     Take care. {care}"))?;
        }
        if let Some(label) = words::to_buy(need) {
            say::line(&format!("     on a label: {label}"))?;
        }
        Ok(())
    }

    fn json(&self, units: Units) -> Json {
        let Self { point, need, .. } = self;
        let band = |band: &Band| json!({ "v40_low": band.low, "v40_high": band.high, "source": band.source, "standing": band.standing.words() });
        let pair = |(place, wanted): &(Place<'_>, Option<Band>), film: &Option<Answer<Film>>| {
            let work = at_work(place, film.as_ref().map(|film| &film.value), self.usual);
            let at_work = wanted.as_ref().and_then(|band| work.band(band));
            let mut said = json!({
                "pair": place.pair.map(|pair| pair.id.as_str()),
                "band": wanted.as_ref().map(band),
                "wants": wants(place),
                "at_work": at_work.map(|(low, high)| json!({
                    "temperature_c": work.temperature.celsius(),
                    "low_mm2_s": low.mm2_s(),
                    "high_mm2_s": high.mm2_s(),
                })),
                "by_kind_alone": place.is_by_kind_alone(),
            });
            let film = film.as_ref().map(|film| say::film_json(film, self.oil(), units));
            if let (Some(said), Some(Json::Object(film))) = (said.as_object_mut(), film) {
                said.extend(film);
            }
            said
        };
        json!({
            "id": point.id.as_str(),
            "band": need.band.as_ref().map(band),
            "pairs": need.pairs.iter().zip(&self.films).map(|(one, film)| pair(one, film)).collect::<Vec<_>>(),
            "suffer": need.suffer.iter().map(|id| id.as_str()).collect::<Vec<_>>(),
            "plate": self.plate.as_ref().map(|plate| json!({
                "words": plate.words,
                "v40_low": plate.band.0.mm2_s(),
                "v40_high": plate.band.1.mm2_s(),
            })),
            "way": self.moved.map(|(cold, moved)| json!({
                "how": point.method.to_string(),
                "cold_c": cold.celsius(),
                "easy_v40": moved.easy.mm2_s(),
                "most_v40": moved.most.mm2_s(),
            })),
            "unwanted": unwanted(need).iter().map(words::unwanted).collect::<Vec<_>>(),
            "care": words::care(need),
            "label": words::to_buy(need),
            "warnings": self.warnings.iter().map(|one| say::too_tight_json(one, units)).collect::<Vec<_>>(),
        })
    }
}
