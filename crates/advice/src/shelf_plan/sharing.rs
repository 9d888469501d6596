//! The points that share one body of oil, and how far each lubricant does for them. A reservoir, its filler and what is fed from it get one
//! oil; a point that shares its oil with none stands alone. What is only looked at gets nothing and is left out.

use shop::chart::{Chart, Point};
use shop::id::Id;
use shop::shelf::Shelf;
use shop::snapshot::MachineSnapshot;

use super::candidate::Candidate;
use super::choice::PointAt;
use super::harm::{harm, weight};
use crate::judge::judge;
use crate::need::need;
use crate::round::{Act, act};
use crate::verdict::{Reason, Verdict};

/// Points that share one body of oil.
pub(super) struct Sharing {
    pub(super) members: Vec<Member>,
}

/// A point, with every candidate held against it.
pub(super) struct Member {
    pub(super) at: PointAt,
    pub(super) name: String,
    pub(super) weight: u32,
    /// For each candidate, in their order.
    pub(super) held: Vec<Held>,
    wants: Wants,
}

/// A candidate held against a point.
pub(super) struct Held {
    pub(super) verdict: Verdict,
    /// Its place among all, the best first.
    pub(super) place: usize,
    pub(super) reasons: Vec<Reason>,
}

/// What sort of lubricant a point is made for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Wants {
    Oil,
    Grease,
}

/// The points of machines, gathered.
pub(super) struct Met {
    pub(super) sharings: Vec<Sharing>,
    pub(super) unknown: Vec<PointAt>,
    pub(super) looked_at: usize,
}

/// The points of machines, gathered by what shares its oil, with every candidate held against each.
pub(super) fn met(machines: &[MachineSnapshot], candidates: &[Candidate]) -> Met {
    let shelf = Shelf { oils: candidates.iter().map(|one| one.oil.clone()).collect(), cans: Vec::new() };
    let mut met = Met { sharings: Vec::new(), unknown: Vec::new(), looked_at: 0 };
    for machine in machines {
        let chart = &machine.chart;
        let mut reservoirs: Vec<(&Id, usize)> = Vec::new();
        // What is only looked at counts for nothing where its reservoir is filled elsewhere.
        let (looked, given): (Vec<&Point>, Vec<&Point>) = chart.points_here().partition(|p| act(p) == Act::Look);
        for point in given {
            let member = member(machine, point, &shelf, &mut met.unknown);
            match body(chart, point) {
                None => met.sharings.push(Sharing { members: vec![member] }),
                Some(body) => match reservoirs.iter().find(|(known, _)| *known == body) {
                    Some((_, at)) => met.sharings[*at].members.push(member),
                    None => {
                        reservoirs.push((body, met.sharings.len()));
                        met.sharings.push(Sharing { members: vec![member] });
                    }
                },
            }
        }
        for point in looked {
            match point.reservoir.as_ref().filter(|body| reservoirs.iter().all(|(known, _)| known != body)) {
                None => met.looked_at += 1,
                Some(body) => {
                    reservoirs.push((body, met.sharings.len()));
                    let member = member(machine, point, &shelf, &mut met.unknown);
                    met.sharings.push(Sharing { members: vec![member] });
                }
            }
        }
    }
    met
}

/// The reservoir whose oil a point gets.
pub(super) fn body<'c>(chart: &'c Chart, point: &'c Point) -> Option<&'c Id> {
    let of_circuit = || {
        let circuits = point.circuit.iter().chain(&point.feeds).filter_map(|id| chart.circuit(id));
        circuits.filter_map(|circuit| circuit.from.as_ref()).next()
    };
    point.reservoir.as_ref().or_else(of_circuit)
}

fn member(machine: &MachineSnapshot, point: &Point, shelf: &Shelf, unknown: &mut Vec<PointAt>) -> Member {
    let need = need(&machine.chart, point);
    let at = PointAt { machine: machine.id.clone(), point: point.id.clone() };
    if need.pairs.iter().all(|(place, _)| place.pair.is_none()) {
        unknown.push(at.clone());
    }
    let takes_grease = need.pairs.iter().any(|(place, _)| place.takes_grease());
    let judged = judge(&machine.chart, point, shelf);
    let held = shelf.oils.iter().map(|oil| {
        let place = judged.iter().position(|judged| judged.oil == oil.id).expect("every oil of a shelf is judged");
        Held { verdict: judged[place].verdict, place, reasons: judged[place].reasons.clone() }
    });
    Member {
        at,
        name: point.name.clone(),
        weight: weight(&need),
        held: held.collect(),
        wants: if takes_grease { Wants::Grease } else { Wants::Oil },
    }
}

impl Sharing {
    /// The harm that a candidate does here; nothing where it may not be given.
    pub(super) fn harm(&self, candidate: usize) -> Option<u32> {
        self.members.iter().map(|member| Some(member.weight * harm(member.held[candidate].verdict)?)).sum()
    }

    /// How far back a candidate stands among those that do as little harm.
    pub(super) fn place(&self, candidate: usize) -> usize {
        self.members.iter().map(|member| member.held[candidate].place).sum()
    }

    /// Whether it is planned among what takes grease: where it is made for grease; but where no grease does and an oil does, or the other way
    /// round, among those that do.
    pub(super) fn takes_grease(&self, candidates: &[Candidate]) -> bool {
        let is_made_for = self.members.iter().any(|member| member.wants == Wants::Grease);
        let does = |grease: bool| {
            let own = |(_, candidate): &(usize, &Candidate)| candidate.is_grease() == grease;
            candidates.iter().enumerate().filter(own).any(|(at, _)| self.harm(at).is_some())
        };
        if does(is_made_for) || !does(!is_made_for) { is_made_for } else { !is_made_for }
    }
}
