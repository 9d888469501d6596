//! A good route where the shortest is out of reach: always to the nearest stop, then bettered as long as that helps.

use super::{Layout, Route, Stop, along};

/// The walk of somebody who always goes to the nearest stop, begun where that comes out shortest; of equally near ones to the first.
#[must_use]
pub fn nearest(layout: &Layout) -> Route {
    let first = layout.phases.iter().find(|stops| stops.iter().any(|stop| stop.place.is_some()));
    let starts: Vec<usize> = first.map_or(Vec::new(), |stops| known(stops));
    let routes = starts.into_iter().map(|start| along(layout, &from(layout, start)));
    let best = routes.min_by_key(|route| layout.seconds(&route.cost));
    best.unwrap_or_else(|| along(layout, &vec![Vec::new(); layout.phases.len()]))
}

/// The nearest walk, bettered: stretches of it are turned around or moved as long as that makes it shorter.
pub(super) fn route(layout: &Layout) -> Route {
    let mut best = nearest(layout);
    let mut order: Vec<Vec<usize>> = best
        .phases
        .iter()
        .zip(&layout.phases)
        .map(|(visits, stops)| {
            visits.iter().map(|visit| visit.stop).filter(|stop| stops[*stop].place.is_some()).collect()
        })
        .collect();
    while let Some((shorter, route)) = bettered(layout, &order, layout.seconds(&best.cost)) {
        (order, best) = (shorter, route);
    }
    best
}

fn bettered(layout: &Layout, order: &[Vec<usize>], seconds: u32) -> Option<(Vec<Vec<usize>>, Route)> {
    for phase in 0..order.len() {
        let count = order[phase].len();
        for from in 0..count {
            for to in from + 1..count {
                let mut turned = order.to_vec();
                turned[phase][from..=to].reverse();
                let mut on = order.to_vec();
                on[phase][from..=to].rotate_left(1);
                let mut back = order.to_vec();
                back[phase][from..=to].rotate_right(1);
                for tried in [turned, on, back] {
                    let route = along(layout, &tried);
                    if layout.seconds(&route.cost) < seconds {
                        return Some((tried, route));
                    }
                }
            }
        }
    }
    None
}

fn from(layout: &Layout, start: usize) -> Vec<Vec<usize>> {
    let mut at: Option<usize> = None;
    let mut order = Vec::with_capacity(layout.phases.len());
    for stops in &layout.phases {
        let mut left = known(stops);
        let mut visits = Vec::with_capacity(left.len());
        while !left.is_empty() {
            let far = |stop: &usize| {
                let place = stops[*stop].place;
                at.map_or(u32::from(*stop != start), |at| place.map_or(0, |to| layout.walk[at][to]))
            };
            let next = left.iter().copied().min_by_key(|stop| (far(stop), *stop)).expect("some are left");
            left.retain(|stop| *stop != next);
            at = stops[next].place;
            visits.push(next);
        }
        order.push(visits);
    }
    order
}

fn known(stops: &[Stop]) -> Vec<usize> {
    (0..stops.len()).filter(|stop| stops[*stop].place.is_some()).collect()
}
