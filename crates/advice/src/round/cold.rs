//! Ways of oiling that will not deliver in a cold shop, with what to do. Judged by rough limits until the oils are worked out: the
//! wick, the hand pump, the meter unit, the ring and the strainer give up long before the bearing does.

use shop::chart::Method;
use shop::id::Id;
use shop::shelf::{Oil, Shelf};
use shop::snapshot::MachineSnapshot;
use tribology::math;
use tribology::quantity::{Quantity as _, Temperature};
use tribology::{Standing, Step, Symbol};

use super::Chosen;
use super::serving::serving;
use super::tour::counted;
use crate::working::{Assumption, Reasoned};

/// Below this, feeds fail with an oil of grade 68 (common practice, no source).
const LIMIT_C: f64 = 10.0;
/// So much warmer for each grade that an oil is thicker, and colder for each that it is thinner: what keeps its body the same
/// (own calculation: near 10 °C an oil of index 95 thickens by half in some 5 °C, and a grade is half as thick again).
const GRADE_C: f64 = 5.0;
/// The grade for which the limit holds, and the factor from grade to grade (ISO 3448).
const GRADE: f64 = 68.0;
const STEP: f64 = 1.5;

/// A way of oiling that will not deliver.
#[derive(Clone, Debug, PartialEq)]
pub struct Cold {
    /// The point.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// How oil should get there.
    pub method: Method,
    /// The oil from the shelf.
    pub oil: Option<Chosen>,
    /// Why it will not.
    pub why: WhyCold,
}

/// Why oil does not come in the cold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WhyCold {
    /// The oil is too thick for this way of oiling below so many degrees.
    TooThick {
        /// The limit.
        below: Temperature,
    },
    /// The oil does not even pour.
    NotPouring {
        /// The coldest at which it does.
        pours: Temperature,
    },
}

/// The points of a machine whose way of oiling will not deliver at a temperature of the shop.
#[must_use]
pub fn cold(machine: &MachineSnapshot, shelf: &Shelf, temperature: Temperature) -> Reasoned<Vec<Cold>> {
    let mut found = Vec::new();
    let mut steps: Vec<Step> = Vec::new();
    let mut unknown = Vec::new();
    for point in machine.chart.points_here() {
        let chosen = serving(&machine.chart, point, shelf).oil;
        let oil = chosen.as_ref().and_then(|oil| shelf.oil(&oil.id));
        let pours = oil.and_then(|oil| oil.pour_point.as_ref()).map(|typed| typed.value);
        let why = match pours.filter(|pours| temperature <= *pours) {
            Some(pours) => Some(WhyCold::NotPouring { pours }),
            None if gives_up(point.method) => {
                let body = oil.and_then(body);
                if body.is_none() {
                    unknown.push(point.id.clone());
                }
                let below = limit(body.unwrap_or(GRADE));
                steps.push(step(body.unwrap_or(GRADE), below, temperature));
                (temperature < below).then_some(WhyCold::TooThick { below })
            }
            None => None,
        };
        let (id, name, method) = (point.id.clone(), point.name.clone(), point.method);
        found.extend(why.map(|why| Cold { id, name, method, oil: chosen, why }));
    }
    found.sort_by_key(|cold| counted(&cold.id));
    let mut reasoned = Reasoned::new(found);
    reasoned.answer.steps = steps;
    reasoned.assumed.push(Assumption::ColdByRuleOfThumb);
    if !unknown.is_empty() {
        reasoned.assumed.push(Assumption::BodyUnknown(unknown));
    }
    reasoned
}

/// Whether a way of oiling gives up in the cold before the bearing does (common practice, no source). By hand, bath and splash
/// oil still comes.
fn gives_up(method: Method) -> bool {
    match method {
        Method::Drip
        | Method::Wick
        | Method::Felt
        | Method::Bottle
        | Method::Ring
        | Method::OneShot
        | Method::TotalLossPump
        | Method::CirculatingPump => true,
        Method::OilHole
        | Method::BallOiler
        | Method::Cup
        | Method::GreaseCup
        | Method::Nipple
        | Method::Splash
        | Method::Bath
        | Method::Tray
        | Method::Brush => false,
    }
}

fn body(oil: &Oil) -> Option<f64> {
    oil.v40.as_ref().map(|typed| typed.value.mm2_s())
}

fn limit(body: f64) -> Temperature {
    let grades = (math::ln(body / GRADE) / math::ln(STEP)).round();
    Temperature::from_celsius(LIMIT_C + GRADE_C * grades)
}

fn step(body: f64, below: Temperature, temperature: Temperature) -> Step {
    Step {
        name: "Coldest shop in which the way of oiling still delivers",
        formula: "10 °C + 5 K for each grade above 68",
        symbols: vec![
            Symbol { symbol: "viscosity at 40 °C", si: body * 1e-6, unit: "m²/s" },
            Symbol { symbol: "shop", si: temperature.si(), unit: "K" },
        ],
        result: Symbol { symbol: "limit", si: below.si(), unit: "K" },
        source: "common-practice",
        standing: Standing::CommonPractice,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The trade's own rule is 10 °C, given for the oils that slow machines are fed with. At one limit of body the grades 32, 68 and
    /// 100 must lie where their body is alike: at 5 °C they have 240, 690 and 1 150 mm²/s (ASTM D341 for an index of 95), and
    /// 690 / 240 is 2.6 grades of a factor 1.5.
    #[test]
    fn a_thinner_oil_may_be_colder_by_five_degrees_a_grade() {
        let celsius = |body| limit(body).celsius().round();
        assert_eq!([22.0, 32.0, 46.0, 68.0, 100.0, 220.0].map(celsius), [-5.0, 0.0, 5.0, 10.0, 15.0, 25.0]);
    }
}
