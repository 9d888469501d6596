//! A reservoir held as one point, so that what it wants is asked as of any other: fed by the way of the point at which it is filled, and
//! feeding all that any of its points feeds.

use shop::chart::{Behaviour, Chart, Method, Point, Reservoir, ReservoirKind, State, When};

use crate::round::{Act, act};

/// The point that stands for a reservoir. Where nothing on the chart fills it, one is made up from the kind of the reservoir.
#[must_use]
pub fn as_point(chart: &Chart, reservoir: &Reservoir) -> Point {
    let own: Vec<&Point> =
        chart.points_here().filter(|point| point.reservoir.as_ref() == Some(&reservoir.id)).collect();
    let filled = own.iter().find(|point| act(point) != Act::Look).or(own.first());
    let mut point = filled.map_or_else(|| made_up(chart, reservoir), |point| Point::clone(point));
    let lines = chart.circuits.iter().filter(|circuit| circuit.from.as_ref() == Some(&reservoir.id));
    let lines = lines.filter(|circuit| chart.applies(&circuit.when)).map(|circuit| &circuit.id);
    for id in own.iter().flat_map(|other| &other.feeds).chain(&reservoir.feeds).chain(lines) {
        if !point.feeds.contains(id) {
            point.feeds.push(id.clone());
        }
    }
    if let Some(oil) = &reservoir.oil {
        point.oil = Some(oil.clone());
    }
    point
}

fn made_up(chart: &Chart, reservoir: &Reservoir) -> Point {
    let is_pumped = chart
        .circuits
        .iter()
        .any(|circuit| circuit.from.as_ref() == Some(&reservoir.id) && chart.applies(&circuit.when));
    let method = match (reservoir.kind, reservoir.behaviour) {
        (_, Some(Behaviour::Uses)) if is_pumped => Method::TotalLossPump,
        _ if is_pumped => Method::CirculatingPump,
        (ReservoirKind::Cup, _) => Method::Cup,
        _ => Method::Bath,
    };
    Point {
        id: reservoir.id.clone(),
        assembly: reservoir.assembly.clone(),
        name: reservoir.name.clone().unwrap_or_default(),
        method,
        reservoir: Some(reservoir.id.clone()),
        circuit: None,
        feeds: Vec::new(),
        stand: None,
        place: None,
        picture: None,
        at: None,
        state: State::Stopped,
        moves: Vec::new(),
        job: Vec::new(),
        dose: None,
        every: Vec::new(),
        oil: None,
        sign: None,
        baseline: None,
        plate: None,
        note: None,
        when: When::default(),
        evidence: Vec::new(),
    }
}
