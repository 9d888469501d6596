//! A tour written out as stands with their points: what is set at each on the way, and what is put back before the start.

use shop::chart::{Chart, State};

use super::phase::Phase;
use super::setup::{Reading, SetUp};
use super::tour::{Ground, Task, Tour};
use super::{AtStand, Caution, RoundPoint, WipeAt};

/// The name of the place for points whose stand is not charted.
const NOT_CHARTED: &str = "Where it says";

/// The stands of a tour, each point with what is set before it and not before any other, and with the cautions that were not said
/// at the same stand already.
pub(super) fn stands(
    chart: &Chart,
    ground: &Ground,
    tasks: &[Task],
    tour: &Tour,
    points: &[RoundPoint],
) -> Vec<AtStand> {
    let mut made: Vec<usize> = Vec::new();
    let mut stands: Vec<AtStand> = Vec::new();
    for (phase, visit) in &tour.visits {
        let place = visit.first().and_then(|task| tasks[*task].place);
        let mut at = AtStand {
            stand: place.map(|place| ground.stands[place].clone()),
            name: name_of(chart, ground, place),
            phase: *phase,
            state: if *phase == Phase::Running { State::Running } else { State::Stopped },
            still: still(ground, tasks, visit, &made),
            points: Vec::new(),
        };
        // What only holds for a while is said again at each stand.
        made.retain(|setup| ground.setups[*setup].reading.is_act());
        let mut said: Vec<Caution> = Vec::new();
        for task in visit {
            let mut point = points[*task].clone();
            for &setup in &tasks[*task].setups {
                if made.contains(&setup) {
                    continue;
                }
                let this = &ground.setups[setup];
                point.first.push(this.clone());
                // A slide that goes elsewhere has left where it was.
                made.retain(|other| {
                    let other = &ground.setups[*other];
                    this.reading != Reading::Slide || other.reading != Reading::Slide || other.what != this.what
                });
                made.push(setup);
            }
            let is_turned = point.first.iter().any(SetUp::is_turned);
            point
                .cautions
                .retain(|caution| !said.contains(caution) && (is_turned || *caution != Caution::TurnedByHand));
            said.extend(&point.cautions);
            at.points.push(point);
        }
        stands.push(at);
    }
    stands
}

/// What was set at an earlier stand and is needed here as it stands.
fn still(ground: &Ground, tasks: &[Task], visit: &[usize], made: &[usize]) -> Vec<String> {
    let is_needed = |setup: &&usize| {
        ground.setups[**setup].reading.sets_machine() && visit.iter().any(|task| tasks[*task].setups.contains(setup))
    };
    made.iter().filter(is_needed).map(|setup| ground.setups[*setup].text.clone()).collect()
}

/// What is wiped, from which stand.
pub(super) fn wipes(chart: &Chart, ground: &Ground, tour: &Tour) -> Vec<WipeAt> {
    let wipe = |(place, wipes): &(Option<usize>, Vec<usize>)| WipeAt {
        stand: place.map(|place| ground.stands[place].clone()),
        name: name_of(chart, ground, *place),
        what: wipes.iter().map(|wipe| ground.wipes[*wipe].0.clone()).collect(),
    };
    tour.wipes.iter().map(wipe).collect()
}

/// The covers that are open when the last stopped point is done.
pub(super) fn open_covers(stands: &[AtStand]) -> Vec<String> {
    let first = stands.iter().flat_map(|at| &at.points).flat_map(|point| &point.first);
    first.filter(|setup| setup.reading == Reading::Cover).map(|setup| setup.what.clone()).collect()
}

fn name_of(chart: &Chart, ground: &Ground, place: Option<usize>) -> String {
    place
        .and_then(|place| chart.stands.iter().find(|known| known.id == ground.stands[place]))
        .map_or_else(|| NOT_CHARTED.to_owned(), |stand| stand.name.clone())
}
