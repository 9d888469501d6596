//! The round as a person reads it at the machine.

use advice::round::{Act, AfterAct, AtStand, Cans, Cold, Phase, Round, RoundPoint};
use advice::words;
use advice::working::Reasoned;
use tribology::quantity::Units;

use super::round_rows;
use crate::failure::Failure;

/// The round of one machine, and what else was asked about it.
pub(crate) struct Answered {
    pub(crate) round: Reasoned<Round>,
    /// What is done after the work.
    pub(crate) after: Option<Vec<AfterAct>>,
    /// Which of its cans do not do.
    pub(crate) cans: Cans,
    /// What will not deliver in the cold.
    pub(crate) cold: Option<Reasoned<Vec<Cold>>>,
}

/// How an answer is printed.
#[derive(Clone, Copy)]
pub(crate) struct How {
    pub(crate) json: bool,
    pub(crate) working: bool,
    pub(crate) units: Units,
}

/// Prints answers: one machine gives one object, several give a list under `rounds`.
pub(crate) fn answers(answers: &[Answered], how: How) -> Result<(), Failure> {
    if how.json {
        let rows: Vec<_> = answers.iter().map(|answered| round_rows::row(answered, how.units)).collect();
        return match rows.as_slice() {
            [only] => super::json(only),
            several => super::json(&serde_json::json!({ "rounds": several })),
        };
    }
    if answers.is_empty() {
        super::line("No machine yet. Take a chart in with: oilwright chart import FILE")?;
    }
    for (number, answered) in answers.iter().enumerate() {
        if number > 0 {
            super::line("")?;
        }
        let reasoned = &answered.round;
        let round = reasoned.value();
        let job = round.plan.job.as_ref().map(|job| format!(", {job}")).unwrap_or_default();
        let clock = round.at.clock().strftime("%A %-d %B %Y, %H:%M");
        super::line(&format!("{}{job}  ·  {clock}", round.name))?;
        match &answered.after {
            Some(after) => after_use(after)?,
            None => printed(round, &answered.cans)?,
        }
        if let Some(cold) = &answered.cold {
            cold_ways(cold, how)?;
        }
        if how.working {
            worked_out(reasoned, how.units)?;
        }
    }
    Ok(())
}

fn printed(round: &Round, cans: &Cans) -> Result<(), Failure> {
    super::line(&words::summary(round))?;
    if let Some(within) = words::within(round) {
        super::line(&within)?;
    }
    if !cans.unsuited.is_empty() || !cans.keep_apart.is_empty() {
        super::line("")?;
        super::line("LOOK AT THE CANS.")?;
        for found in &cans.unsuited {
            super::line(&format!("  {}", words::unsuited(found)))?;
        }
        for found in &cans.keep_apart {
            super::line(&format!("  {}.", words::kept_apart(found)))?;
        }
    }
    if round.left() > 0 && !round.wipe.is_empty() {
        super::line("")?;
        super::line("FIRST WIPE. Chips under fresh oil lap the ways.")?;
        for at in &round.wipe {
            super::line(&format!("  {}: {}", at.name, words::wipe(at)))?;
        }
    }
    let mut phase = None;
    for at in &round.stands {
        let left: Vec<&RoundPoint> = at.points.iter().filter(|point| !point.is_done()).collect();
        if left.is_empty() {
            continue;
        }
        if phase != Some(at.phase) {
            super::line("")?;
            super::line(&heading(round, at, phase))?;
            phase = Some(at.phase);
        }
        stand(at, &left)?;
    }
    if !round.later.is_empty() {
        super::line("")?;
        super::line("IN THE MIDDLE OF THE JOB. Stop it for these.")?;
        for later in &round.later {
            super::line(&format!("  {}", words::later(later)))?;
        }
    }
    if !round.left_undone.is_empty() {
        super::line("")?;
        super::line("LEFT UNDONE, what matters most first.")?;
        for left in &round.left_undone {
            super::line(&format!("  {}", words::left_undone(left)))?;
        }
    }
    if round.asleep > 0 {
        super::line("")?;
        super::line(&format!("Asleep: {} that only other jobs need.", words::count(round.asleep, "point")))?;
    }
    Ok(())
}

/// The heading of a phase, with the caution before the first act that it concerns.
fn heading(round: &Round, at: &AtStand, before: Option<Phase>) -> String {
    let caution = words::caution(at.state);
    match (at.phase, before) {
        (Phase::Wipe | Phase::Stopped, _) => format!("BEFORE YOU START. {caution}"),
        (Phase::Set, Some(_)) => "NOW SET THE MACHINE, each cover and slide once.".to_owned(),
        (Phase::Set, None) => format!("BEFORE YOU START, setting the machine. {caution}"),
        (Phase::Running, _) => {
            let back = words::covers_back(round).map(|back| format!("{back} ")).unwrap_or_default();
            format!("THEN START IT SLOWLY AND LOOK. {back}{caution}")
        }
    }
}

fn stand(at: &AtStand, left: &[&RoundPoint]) -> Result<(), Failure> {
    super::line("")?;
    super::line(&format!("{}  ·  {}", at.name, words::count(left.len(), "point")))?;
    if !at.still.is_empty() {
        let still: Vec<&str> = at.still.iter().map(String::as_str).collect();
        super::line(&format!("  Still: {}", words::join(&still)))?;
    }
    for point in left {
        if let Some(first) = words::first(point) {
            super::line(&format!("  First: {first}"))?;
        }
        for caution in &point.cautions {
            super::line(&format!("  Care: {}", words::caution_at(*caution)))?;
        }
        self::point(point)?;
    }
    Ok(())
}

/// What is done after the work.
fn after_use(acts: &[AfterAct]) -> Result<(), Failure> {
    super::line("AFTER THE WORK. Machine stopped, switched off and held off.")?;
    for act in acts {
        super::line("")?;
        super::line(words::after_use(act))?;
        for at in &act.to {
            super::line(&format!("  {}", words::after_at(act, at)))?;
        }
    }
    Ok(())
}

/// What will not deliver in the cold, with what to do.
fn cold_ways(reasoned: &Reasoned<Vec<Cold>>, how: How) -> Result<(), Failure> {
    super::line("")?;
    if reasoned.value().is_empty() {
        super::line("At this temperature every way of oiling delivers, by rough limits.")?;
    } else {
        super::line("TOO COLD FOR THESE, by rough limits.")?;
    }
    for cold in reasoned.value() {
        super::line(&format!("  {}", words::cold(cold, how.units)))?;
        super::line(&format!("        {}", words::cold_remedy(cold)))?;
    }
    if how.working {
        worked_out(reasoned, how.units)?;
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

fn worked_out<T>(reasoned: &Reasoned<T>, units: Units) -> Result<(), Failure> {
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
