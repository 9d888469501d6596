//! Every oil held against a point: how far each does, and why no further. Start at [`judge`]. Sort, body and rules each cap the verdict, and
//! the strictest wins; of several pairs the worst off decides.

use shop::chart::{Chart, Point};
use shop::id::Id;
use shop::shelf::{Asked, Family, Oil, Shelf};
use tribology::quantity::KinematicViscosity;
use tribology::{Standing, Step};

use crate::need::{Band, Need, Place, need, sort};
use crate::rules::{Case, Holds, Look, RULES, Seen};
use crate::verdict::{Reason, Verdict};

/// An oil held against a point.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// The oil.
    pub oil: Id,
    /// How far it does.
    pub verdict: Verdict,
    /// Why no further, the strictest first; of one strictness in the order of the pairs.
    pub reasons: Vec<Reason>,
    /// How its body was held against what each pair wants, in the order of the pairs.
    pub steps: Vec<(Id, Step)>,
}

/// Every oil of a shelf held against a point, the best first; of those that do alike the nearest in body first, where no body is known the
/// one that the chart states, then by id.
#[must_use]
pub fn judge(chart: &Chart, point: &Point, shelf: &Shelf) -> Vec<Judged> {
    let need = need(chart, point);
    let charted = point.oil.as_deref().and_then(Asked::read).and_then(|asked| shelf.nearest(&asked)).map(|oil| &oil.id);
    let far = |oil: &Oil| match need.band {
        None if charted == Some(&oil.id) => 0.0,
        _ => distance(&need, oil),
    };
    let mut judged: Vec<(f64, Judged)> = shelf.oils.iter().map(|oil| (far(oil), judged(&need, oil))).collect();
    judged.sort_by(|(near, a), (far, b)| {
        b.verdict.cmp(&a.verdict).then(near.total_cmp(far)).then_with(|| a.oil.cmp(&b.oil))
    });
    judged.into_iter().map(|(_, judged)| judged).collect()
}

/// How far from the middle of what is wanted, by ratio.
fn distance(need: &Need<'_>, oil: &Oil) -> f64 {
    match (need.band, &oil.v40) {
        (Some(band), Some(v40)) => tribology::math::ln(v40.value.mm2_s() / band.middle().mm2_s()).abs(),
        _ => f64::MAX,
    }
}

/// An oil held against what a point wants.
#[must_use]
pub fn judged(need: &Need<'_>, oil: &Oil) -> Judged {
    let mut reasons: Vec<Reason> = Vec::new();
    let mut steps = Vec::new();
    for (place, band) in &need.pairs {
        for reason in caps(place, band.as_ref(), oil) {
            if reasons.iter().all(|known| (known.rule, &known.says) != (reason.rule, &reason.says)) {
                reasons.push(reason);
            }
        }
        let body = band.as_ref().zip(v40_of(oil)).map(|(band, v40)| band.step(v40));
        steps.extend(place.pair.map(|pair| pair.id.clone()).zip(body));
    }
    reasons.sort_by_key(|reason| reason.cap);
    let verdict = reasons.first().map_or(Verdict::Suits, |reason| reason.cap);
    Judged { oil: oil.id.clone(), verdict, reasons, steps }
}

/// What caps an oil at one pair.
fn caps(place: &Place<'_>, band: Option<&Band>, oil: &Oil) -> Vec<Reason> {
    let mut caps = Vec::new();
    let steps = band.zip(v40_of(oil)).map(|(band, v40)| band.steps(v40));
    let saw = |looks: &[Look]| {
        let case = Case { oil, place, steps };
        looks.iter().map(|look| case.seen(*look)).collect::<Vec<_>>()
    };
    let practice = |rule, cap, says: String, looks: &[Look]| Reason {
        rule,
        cap,
        says,
        standing: Standing::CommonPractice,
        source: "trade practice",
        seen: saw(looks),
    };
    match sort(place, oil.family) {
        Some((cap, says)) if cap < Verdict::Suits => {
            caps.push(practice("sort", cap, says.to_owned(), &[Look::Family, Look::Kind]));
        }
        Some(_) => {}
        None => caps.push(practice(
            "sort",
            Verdict::Serves,
            "nobody knows what this point feeds; a little clean mineral oil is better than none".to_owned(),
            &[Look::Family],
        )),
    }
    if place.takes_grease() && oil.family == Family::Grease {
        caps.extend(grease(oil, saw));
    }
    if oil.family != Family::Grease && band.is_some() && steps.is_none() {
        caps.push(practice("body", Verdict::Serves, "nobody has written down how thick this oil is".to_owned(), &[]));
    }
    let case = Case { oil, place, steps };
    for rule in RULES {
        let (cap, says) = match (rule.holds)(&case) {
            Holds::No => continue,
            Holds::Yes => (rule.cap, rule.says.to_owned()),
            Holds::Capped(cap, says) => (cap, says.to_owned()),
            Holds::Unsaid => match rule.not_stated {
                Some(cap) => (cap, format!("nobody states it of this oil: {}", rule.says)),
                None => continue,
            },
        };
        let seen = rule.seen(&case);
        caps.push(Reason { rule: rule.id, cap, says, standing: rule.standing, source: rule.source, seen });
    }
    caps
}

/// The body of an oil at 40 °C; nothing for a grease, whose oil is not what flows.
fn v40_of(oil: &Oil) -> Option<KinematicViscosity> {
    oil.v40.as_ref().filter(|_| oil.family != Family::Grease).map(|typed| typed.value)
}

/// How far a grease does where grease belongs: by its stiffness.
fn grease(oil: &Oil, saw: impl Fn(&[Look]) -> Vec<Seen>) -> Option<Reason> {
    let stiff = oil.grease.nlgi.as_deref().and_then(|nlgi| nlgi.parse::<f64>().ok());
    let (cap, says) = match stiff {
        Some(2.0) => return None,
        Some(1.0 | 3.0) => (Verdict::Serves, "grease of NLGI 2 is usual; this is a grade off"),
        Some(_) => (Verdict::Stopgap, "grease of NLGI 2 is usual; this is far off"),
        None => (Verdict::Serves, "nobody has written down how stiff this grease is"),
    };
    Some(Reason {
        rule: "body",
        cap,
        says: says.to_owned(),
        standing: Standing::CommonPractice,
        source: "trade practice",
        seen: saw(&[Look::Stiffness]),
    })
}
