//! The round as a person reads it at the machine, and as a program reads it.

use advice::round::{Act, AtStand, Round, RoundPoint};
use advice::words;
use advice::working::Reasoned;
use serde::Serialize;
use shop::chart::State;
use tribology::quantity::Units;

use crate::failure::Failure;

#[derive(Serialize)]
struct RoundRow {
    machine: String,
    name: String,
    at: String,
    job: Option<String>,
    hours: f64,
    stands: Vec<StandRow>,
    minutes: u32,
    done: Vec<String>,
    asleep: usize,
    assumed: Vec<String>,
    working: Vec<String>,
}

#[derive(Serialize)]
struct StandRow {
    stand: Option<String>,
    name: String,
    machine_is: String,
    points: Vec<PointRow>,
}

#[derive(Serialize)]
struct PointRow {
    id: String,
    name: String,
    how: String,
    oil: Option<String>,
    can: Option<String>,
    dose: Option<String>,
    #[serde(rename = "where")]
    place: Option<String>,
    setup: Vec<String>,
    sign: Option<String>,
    due_because: String,
    not_reached: Option<String>,
}

/// How an answer is printed.
#[derive(Clone, Copy)]
pub(crate) struct How {
    pub(crate) json: bool,
    pub(crate) working: bool,
    pub(crate) units: Units,
}

/// Prints rounds: one machine gives one object, several give a list under `rounds`.
pub(crate) fn rounds(rounds: &[Reasoned<Round>], how: How) -> Result<(), Failure> {
    if how.json {
        let rows: Vec<RoundRow> = rounds.iter().map(|round| row(round, how.units)).collect();
        return match rows.as_slice() {
            [only] => super::json(only),
            several => super::json(&serde_json::json!({ "rounds": several })),
        };
    }
    if rounds.is_empty() {
        super::line("No machine yet. Take a chart in with: oilwright chart import FILE")?;
    }
    for (number, round) in rounds.iter().enumerate() {
        if number > 0 {
            super::line("")?;
        }
        printed(round, how)?;
    }
    Ok(())
}

fn printed(reasoned: &Reasoned<Round>, how: How) -> Result<(), Failure> {
    let round = reasoned.value();
    let job = round.plan.job.as_ref().map(|job| format!(", {job}")).unwrap_or_default();
    let clock = round.at.clock().strftime("%A %-d %B %Y, %H:%M");
    super::line(&format!("{}{job}  ·  {clock}", round.name))?;
    super::line(&words::summary(round))?;
    let mut state = None;
    for at in &round.stands {
        let left: Vec<&RoundPoint> = at.points.iter().filter(|point| !point.is_done()).collect();
        if left.is_empty() {
            continue;
        }
        if state != Some(at.state) {
            state = Some(at.state);
            super::line("")?;
            let heading = match at.state {
                State::Stopped => "BEFORE YOU START",
                State::Running => "THEN START IT SLOWLY AND LOOK",
            };
            super::line(&format!("{heading}. {}", words::caution(at.state)))?;
        }
        stand(at, &left)?;
    }
    if round.asleep > 0 {
        super::line("")?;
        super::line(&format!("Asleep: {} that only other jobs need.", words::count(round.asleep, "point")))?;
    }
    if how.working {
        worked_out(reasoned, how.units)?;
    }
    Ok(())
}

fn stand(at: &AtStand, left: &[&RoundPoint]) -> Result<(), Failure> {
    super::line("")?;
    super::line(&format!("{}  ·  {}", at.name, words::count(left.len(), "point")))?;
    let mut moves: &[String] = &[];
    for point in left {
        if point.moves != moves {
            moves = &point.moves;
            let first: Vec<&str> = moves.iter().map(String::as_str).collect();
            super::line(&format!("  First: {}", words::join(&first)))?;
        }
        self::point(point)?;
    }
    Ok(())
}

fn point(point: &RoundPoint) -> Result<(), Failure> {
    let dose = point.dose.as_deref().unwrap_or(match point.act {
        Act::Look => "look only",
        Act::Give | Act::TopUp => "dose not charted",
    });
    let oil = point.can.as_ref().or(point.oil.as_ref()).map(|chosen| format!(", {}", chosen.name)).unwrap_or_default();
    super::line(&format!("  ({:>2})  {}: {dose}{oil}", point.id.as_str(), point.name))?;
    if let Some(place) = &point.place {
        super::line(&format!("        where: {place}"))?;
    }
    if let Some(sign) = &point.sign {
        super::line(&format!("        look for: {sign}"))?;
    }
    super::line(&format!("        due: {}", words::due_because(&point.due)))?;
    if let Some((_, reason)) = &point.progress.not_reached {
        super::line(&format!("        not reached in this round: {reason}"))?;
    }
    Ok(())
}

fn worked_out(reasoned: &Reasoned<Round>, units: Units) -> Result<(), Failure> {
    super::line("")?;
    super::line("How this was worked out")?;
    for step in reasoned.steps() {
        super::line(&format!("  {}", words::step(step, units)))?;
    }
    super::line("Assumed")?;
    for assumption in &reasoned.assumed {
        super::line(&format!("  {}", words::assumption(assumption)))?;
    }
    Ok(())
}

fn row(reasoned: &Reasoned<Round>, units: Units) -> RoundRow {
    let round = reasoned.value();
    let points = round.stands.iter().flat_map(|at| &at.points);
    RoundRow {
        machine: round.machine.to_string(),
        name: round.name.clone(),
        at: round.at.clock().strftime("%Y-%m-%dT%H:%M:%S%:z").to_string(),
        job: round.plan.job.as_ref().map(ToString::to_string),
        hours: round.plan.hours.hours(),
        stands: round.stands.iter().filter_map(stand_row).collect(),
        minutes: round.minutes,
        done: points.filter(|point| point.is_done()).map(|point| point.id.to_string()).collect(),
        asleep: round.asleep,
        assumed: reasoned.assumed.iter().map(words::assumption).collect(),
        working: reasoned.steps().iter().map(|step| words::step(step, units)).collect(),
    }
}

fn stand_row(at: &AtStand) -> Option<StandRow> {
    let points: Vec<PointRow> = at.points.iter().filter(|point| !point.is_done()).map(point_row).collect();
    (!points.is_empty()).then(|| StandRow {
        stand: at.stand.as_ref().map(ToString::to_string),
        name: at.name.clone(),
        machine_is: at.state.to_string(),
        points,
    })
}

fn point_row(point: &RoundPoint) -> PointRow {
    PointRow {
        id: point.id.to_string(),
        name: point.name.clone(),
        how: point.method.to_string(),
        oil: point.oil.as_ref().map(|oil| oil.id.to_string()),
        can: point.can.as_ref().map(|can| can.id.to_string()),
        dose: point.dose.clone(),
        place: point.place.clone(),
        setup: point.moves.clone(),
        sign: point.sign.clone(),
        due_because: words::due_because(&point.due),
        not_reached: point.progress.not_reached.as_ref().map(|(_, reason)| reason.clone()),
    }
}
