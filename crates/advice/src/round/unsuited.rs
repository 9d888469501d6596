//! Cans of today's round that do not do: where the oil that a point's chart states is a stopgap or does harm, and at which points of the round
//! each can must never be set. Start at [`cans`].

use shop::chart::Point;
use shop::id::Id;
use shop::shelf::Shelf;
use shop::snapshot::MachineSnapshot;

use super::tour::counted;
use super::{Act, Caution, Chosen, Round};
use crate::judge::{Judged, judge, judged};
use crate::need::need;
use crate::verdict::{Reason, Verdict};

/// A point for which the oil that its chart leads to is not good enough.
#[derive(Clone, Debug, PartialEq)]
pub struct Unsuited {
    /// The point.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// The oil, and how far it does; nothing where the chart leads to none on the shelf.
    pub oil: Option<(Chosen, Verdict)>,
    /// Why no further.
    pub why: Option<Reason>,
    /// The best on the shelf, and how far it does, where it is better.
    pub rather: Option<(Chosen, Verdict)>,
}

/// A can of the round with the points of the round at which its oil does harm.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptApart {
    /// The can.
    pub can: Chosen,
    /// The points that it is taken along for.
    pub at: Vec<Id>,
    /// The points at which it does harm, by their numbers.
    pub from: Vec<Id>,
}

/// What there is to say of the cans of a round.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cans {
    /// The points whose oil is a stopgap or worse.
    pub unsuited: Vec<Unsuited>,
    /// The cans that do harm at points of the round.
    pub keep_apart: Vec<KeptApart>,
}

/// What there is to say of the cans of a round. Points whose own oil does harm get a caution.
pub fn cans(machine: &MachineSnapshot, shelf: &Shelf, round: &mut Round) -> Cans {
    let found = Cans { unsuited: unsuited(machine, shelf, round), keep_apart: keep_apart(machine, shelf, round) };
    for point in round.stands.iter_mut().flat_map(|at| &mut at.points) {
        let harms =
            |one: &Unsuited| one.id == point.id && one.oil.as_ref().is_some_and(|(_, how)| *how == Verdict::Never);
        if found.unsuited.iter().any(harms) {
            point.cautions.insert(0, Caution::HarmfulOil);
        }
    }
    found
}

/// The points of a round that are still to be oiled and whose oil is a stopgap or worse, or for which the chart leads to none, in the order of
/// the round.
fn unsuited(machine: &MachineSnapshot, shelf: &Shelf, round: &Round) -> Vec<Unsuited> {
    let mut found = Vec::new();
    for (entry, point) in open(machine, round) {
        let all = judge(&machine.chart, point, shelf);
        let of = |id: &Id| all.iter().find(|one| one.oil == *id);
        let theirs = entry.oil.as_ref().and_then(|oil| Some((oil.clone(), of(&oil.id)?)));
        if theirs.as_ref().is_some_and(|(_, one)| one.verdict >= Verdict::Serves) {
            continue;
        }
        let better = |best: &&Judged| {
            best.verdict > Verdict::Never && theirs.as_ref().is_none_or(|(_, one)| best.verdict > one.verdict)
        };
        let chosen =
            |one: &Judged| Some((Chosen { id: one.oil.clone(), name: shelf.oil(&one.oil)?.name.clone() }, one.verdict));
        let rather = all.first().filter(better).and_then(chosen);
        found.push(Unsuited {
            id: entry.id.clone(),
            name: entry.name.clone(),
            why: theirs.as_ref().and_then(|(_, one)| one.reasons.first().cloned()),
            oil: theirs.map(|(oil, one)| (oil, one.verdict)),
            rather,
        });
    }
    found
}

/// The cans that a round takes along, each with the points still to be oiled at which its oil does harm; those that do none are left out.
fn keep_apart(machine: &MachineSnapshot, shelf: &Shelf, round: &Round) -> Vec<KeptApart> {
    let needs: Vec<_> = open(machine, round).map(|(_, point)| (point, need(&machine.chart, point))).collect();
    let of = |can: &&Chosen| {
        let oil = shelf.oil(&shelf.cans.iter().find(|known| known.id == can.id)?.oil.clone()?)?;
        let harmed = needs.iter().filter(|(_, need)| judged(need, oil).verdict == Verdict::Never);
        let mut from: Vec<Id> = harmed.map(|(point, _)| point.id.clone()).collect();
        let theirs = open(machine, round).filter(|(entry, _)| entry.can.as_ref() == Some(*can));
        let mut at: Vec<Id> = theirs.map(|(entry, _)| entry.id.clone()).filter(|id| !from.contains(id)).collect();
        from.sort_by_key(counted);
        at.sort_by_key(counted);
        (!from.is_empty()).then(|| KeptApart { can: (*can).clone(), at, from })
    };
    round.cans().iter().filter_map(of).collect()
}

/// The points of a round that are still to be oiled, as the round and as the chart have them.
fn open<'a>(
    machine: &'a MachineSnapshot,
    round: &'a Round,
) -> impl Iterator<Item = (&'a super::RoundPoint, &'a Point)> {
    let points = round.stands.iter().flat_map(|at| &at.points);
    points
        .filter(|entry| !entry.is_done() && entry.act != Act::Look)
        .filter_map(|entry| Some((entry, machine.chart.point(&entry.id)?)))
}
