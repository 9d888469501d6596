//! The round as a program reads it: the keys of `--json`.

use advice::round::{AfterAct, AtStand, Cold, KeptApart, Later, LeftUndone, RoundPoint, Unsuited, WipeAt};
use advice::words;
use serde::Serialize;
use tribology::quantity::Units;

use super::round::Answered;

#[derive(Serialize)]
pub(super) struct RoundRow {
    machine: String,
    name: String,
    at: String,
    job: Option<String>,
    hours: f64,
    wipe: Vec<WipeRow>,
    stands: Vec<StandRow>,
    covers_back: Vec<String>,
    minutes: u32,
    within: Option<u32>,
    left_undone: Vec<LeftRow>,
    later: Vec<LaterRow>,
    after_use: Option<Vec<AfterRow>>,
    cold: Option<Vec<ColdRow>>,
    unsuited: Vec<UnsuitedRow>,
    keep_apart: Vec<KeptApartRow>,
    done: Vec<String>,
    asleep: usize,
    assumed: Vec<String>,
    working: Vec<String>,
}

#[derive(Serialize)]
struct WipeRow {
    stand: Option<String>,
    name: String,
    what: Vec<String>,
}

#[derive(Serialize)]
struct StandRow {
    stand: Option<String>,
    name: String,
    phase: String,
    machine_is: String,
    still: Vec<String>,
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
    first: Vec<String>,
    cautions: Vec<&'static str>,
    sign: Option<String>,
    due_because: String,
    not_reached: Option<String>,
}

#[derive(Serialize)]
struct UnsuitedRow {
    id: String,
    name: String,
    oil: Option<String>,
    verdict: Option<String>,
    rather: Option<String>,
    says: String,
}

#[derive(Serialize)]
struct KeptApartRow {
    can: String,
    at: Vec<String>,
    from: Vec<String>,
}

#[derive(Serialize)]
struct LeftRow {
    id: String,
    name: String,
    weight: u32,
    due_because: String,
}

#[derive(Serialize)]
struct LaterRow {
    after_hours: f64,
    at: String,
    points: Vec<String>,
}

#[derive(Serialize)]
struct AfterRow {
    act: &'static str,
    to: Vec<AfterAtRow>,
}

#[derive(Serialize)]
struct AfterAtRow {
    id: String,
    says: String,
}

#[derive(Serialize)]
struct ColdRow {
    id: String,
    name: String,
    how: String,
    says: String,
    remedy: &'static str,
}

pub(super) fn row(answered: &Answered, units: Units) -> RoundRow {
    let round = answered.round.value();
    let points = round.stands.iter().flat_map(|at| &at.points);
    let mut assumed = answered.round.assumed.clone();
    let mut steps = answered.round.steps().to_vec();
    if let Some(cold) = &answered.cold {
        assumed.extend(cold.assumed.iter().cloned());
        steps.extend(cold.steps().iter().cloned());
    }
    RoundRow {
        machine: round.machine.to_string(),
        name: round.name.clone(),
        at: round.at.clock().strftime("%Y-%m-%dT%H:%M:%S%:z").to_string(),
        job: round.plan.job.as_ref().map(ToString::to_string),
        hours: round.plan.hours.hours(),
        wipe: round.wipe.iter().map(wipe_row).collect(),
        stands: round.stands.iter().filter_map(stand_row).collect(),
        covers_back: round.covers.clone(),
        minutes: round.minutes,
        within: round.within,
        left_undone: round.left_undone.iter().map(left_row).collect(),
        later: round.later.iter().map(later_row).collect(),
        after_use: answered.after.as_ref().map(|acts| acts.iter().map(after_row).collect()),
        cold: answered.cold.as_ref().map(|cold| cold.value().iter().map(|cold| cold_row(cold, units)).collect()),
        unsuited: answered.cans.unsuited.iter().map(unsuited_row).collect(),
        keep_apart: answered.cans.keep_apart.iter().map(kept_apart_row).collect(),
        done: points.filter(|point| point.is_done()).map(|point| point.id.to_string()).collect(),
        asleep: round.asleep,
        assumed: assumed.iter().map(words::assumption).collect(),
        working: steps.iter().map(|step| words::step(step, units)).collect(),
    }
}

fn wipe_row(at: &WipeAt) -> WipeRow {
    WipeRow { stand: at.stand.as_ref().map(ToString::to_string), name: at.name.clone(), what: at.what.clone() }
}

fn stand_row(at: &AtStand) -> Option<StandRow> {
    let points: Vec<PointRow> = at.points.iter().filter(|point| !point.is_done()).map(point_row).collect();
    (!points.is_empty()).then(|| StandRow {
        stand: at.stand.as_ref().map(ToString::to_string),
        name: at.name.clone(),
        phase: at.phase.to_string(),
        machine_is: at.state.to_string(),
        still: at.still.clone(),
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
        first: point.first.iter().map(|setup| setup.text.clone()).collect(),
        cautions: point.cautions.iter().map(|caution| words::caution_at(*caution)).collect(),
        sign: point.sign.clone(),
        due_because: words::due_because(&point.due),
        not_reached: point.progress.not_reached.as_ref().map(|(_, reason)| reason.clone()),
    }
}

fn unsuited_row(found: &Unsuited) -> UnsuitedRow {
    UnsuitedRow {
        id: found.id.to_string(),
        name: found.name.clone(),
        oil: found.oil.as_ref().map(|(oil, _)| oil.id.to_string()),
        verdict: found.oil.as_ref().map(|(_, verdict)| verdict.to_string()),
        rather: found.rather.as_ref().map(|(oil, _)| oil.id.to_string()),
        says: words::unsuited(found),
    }
}

fn kept_apart_row(found: &KeptApart) -> KeptApartRow {
    let ids = |ids: &[shop::id::Id]| ids.iter().map(ToString::to_string).collect();
    KeptApartRow { can: found.can.id.to_string(), at: ids(&found.at), from: ids(&found.from) }
}

fn left_row(left: &LeftUndone) -> LeftRow {
    let due_because = words::due_because(&left.due);
    LeftRow { id: left.id.to_string(), name: left.name.clone(), weight: left.weight, due_because }
}

fn later_row(later: &Later) -> LaterRow {
    LaterRow {
        after_hours: later.after.hours(),
        at: later.clock.strftime("%Y-%m-%dT%H:%M:%S%:z").to_string(),
        points: later.points.iter().map(|(id, _)| id.to_string()).collect(),
    }
}

fn after_row(act: &AfterAct) -> AfterRow {
    let to = act.to.iter().map(|at| AfterAtRow { id: at.id.to_string(), says: words::after_at(act, at) });
    AfterRow { act: words::after_use(act), to: to.collect() }
}

fn cold_row(cold: &Cold, units: Units) -> ColdRow {
    ColdRow {
        id: cold.id.to_string(),
        name: cold.name.clone(),
        how: cold.method.to_string(),
        says: words::cold(cold, units),
        remedy: words::cold_remedy(cold),
    }
}
