//! The usual cautions, each with the act that it concerns and only where it concerns one (common practice).

use jiff::SignedDuration;
use shop::chart::{Chart, Method, Point, State};
use shop::snapshot::{MachineSnapshot, Moment};

use super::act::Act;
use super::setup::SetUp;

/// What to take care of at a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    /// The chart asks for oil on the running machine where the point is not made for it.
    CanIntoRunning,
    /// A shaft, pulley or crank is turned by hand.
    TurnedByHand,
    /// The oil may be hot from a run that is not long over.
    HotOil,
    /// The point is high up.
    HighUp,
    /// A gun can drive grease through the skin.
    Gun,
    /// The oil that the chart leads to does harm here.
    HarmfulOil,
}

/// For so long after a run its oil may be hot (own choice).
const HOT: SignedDuration = SignedDuration::from_hours(1);

/// Words that say that a place is high up.
const HIGH: [&str; 5] = ["ladder", "overhead", "countershaft", "line shaft", "ceiling"];

/// The cautions of a point.
pub(super) fn cautions(machine: &MachineSnapshot, point: &Point, act: Act, moment: &Moment) -> Vec<Caution> {
    let all = [
        (
            Caution::CanIntoRunning,
            point.state == State::Running && act != Act::Look && !is_fed_from_outside(point.method),
        ),
        (
            Caution::TurnedByHand,
            point.state == State::Stopped && point.moves.iter().any(|text| SetUp::read(text).is_turned()),
        ),
        (Caution::HotOil, act == Act::TopUp && ran_just_now(machine, moment)),
        (Caution::HighUp, is_high(&machine.chart, point)),
        (Caution::Gun, act == Act::Give && point.method == Method::Nipple),
    ];
    all.into_iter().filter(|(_, holds)| *holds).map(|(caution, _)| caution).collect()
}

/// Whether a way of oiling is made to be filled or worked while the machine runs.
fn is_fed_from_outside(method: Method) -> bool {
    match method {
        Method::Drip
        | Method::Wick
        | Method::Bottle
        | Method::OneShot
        | Method::TotalLossPump
        | Method::CirculatingPump => true,
        Method::OilHole
        | Method::BallOiler
        | Method::Cup
        | Method::GreaseCup
        | Method::Nipple
        | Method::Felt
        | Method::Ring
        | Method::Splash
        | Method::Bath
        | Method::Tray
        | Method::Brush => false,
    }
}

fn ran_just_now(machine: &MachineSnapshot, moment: &Moment) -> bool {
    machine.runs.last().is_some_and(|run| moment.instant.duration_since(run.happened) < HOT)
}

fn is_high(chart: &Chart, point: &Point) -> bool {
    let stand = chart.stands.iter().find(|stand| Some(&stand.id) == point.stand.as_ref()).map(|stand| &stand.name);
    stand.into_iter().chain(&point.place).any(|text| {
        let text = text.to_lowercase();
        HIGH.iter().any(|word| text.contains(word))
    })
}
