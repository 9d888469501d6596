//! The body at 40 °C that a pair wants, as a band between two viscosities, by its kind, its speed and how it lies. The numbers are those of
//! trade practice; where speed decides, the band moves smoothly with it, for no bearing knows of a threshold.

use shop::amount::Speed;
use shop::chart::{Pair, PairKind};
use tribology::contact::rolling;
use tribology::math;
use tribology::oil::{USUAL_INDEX, ViscosityLine};
use tribology::quantity::{KinematicViscosity, Length, Quantity as _, Temperature};
use tribology::{Standing, Step, Symbol};

use super::place::{Place, Range, Way, gone};

/// A band of viscosity at 40 °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The thinnest that is wanted, mm²/s at 40 °C.
    pub low: f64,
    /// The thickest.
    pub high: f64,
    /// How far it is to be trusted.
    pub standing: Standing,
    /// Where it is from, in a few words.
    pub source: &'static str,
}

/// ISO grades lie this far apart, on the whole (ISO 3448).
const STEP: f64 = 1.47;

impl Band {
    const fn practice(low: f64, high: f64, source: &'static str) -> Self {
        Self { low, high, standing: Standing::CommonPractice, source }
    }

    /// How many grades a body lies outside: nothing inside, above nothing when it is too thick. The ± 10 % of a grade are let through.
    #[must_use]
    pub fn steps(&self, v40: KinematicViscosity) -> f64 {
        let v40 = v40.mm2_s();
        let (low, high) = (self.low * 0.9, self.high * 1.1);
        if v40 < low {
            -math::ln(low / v40) / math::ln(STEP)
        } else if v40 > high {
            math::ln(v40 / high) / math::ln(STEP)
        } else {
            0.0
        }
    }

    /// The working of [`Self::steps`].
    #[must_use]
    pub fn step(&self, v40: KinematicViscosity) -> Step {
        let si = |mm2_s| KinematicViscosity::from_mm2_s(mm2_s).si();
        let symbol = |symbol, si| Symbol { symbol, si, unit: "m²/s" };
        Step {
            name: "Body against what is wanted, both at 40 °C",
            formula: "n = ln(ν / edge) / ln 1.47 beyond an edge less or more a tenth, nothing between them",
            symbols: vec![symbol("ν", v40.si()), symbol("thinnest", si(self.low)), symbol("thickest", si(self.high))],
            result: Symbol { symbol: "grades outside", si: self.steps(v40), unit: "" },
            source: "iso-3448",
            standing: self.standing,
        }
    }

    /// What both want; nothing where they want nothing in common.
    #[must_use]
    pub fn and(&self, other: &Self) -> Option<Self> {
        let (low, high) = (self.low.max(other.low), self.high.min(other.high));
        let softer = if (self.standing as u8) > (other.standing as u8) { self.standing } else { other.standing };
        (low <= high * 1.0001).then_some(Self { low, high, standing: softer, source: self.source })
    }

    /// This band on its way to another: `part` of nothing is this one, of one the other, by the logarithm between. Where it is from is said of
    /// the nearer.
    #[must_use]
    pub fn toward(self, other: Self, part: f64) -> Self {
        let between = |a: f64, b: f64| math::exp(math::ln(a) + part * (math::ln(b) - math::ln(a)));
        let nearer = if part < 0.5 { self } else { other };
        Self { low: between(self.low, other.low), high: between(self.high, other.high), ..nearer }
    }

    /// The middle, by ratio.
    #[must_use]
    pub fn middle(&self) -> KinematicViscosity {
        KinematicViscosity::from_mm2_s(math::sqrt(self.low * self.high))
    }
}

/// A plain bearing by the speed of its surface: m/s, thinnest, thickest (section 2 of trade practice, joined by straight lines in logarithms).
const JOURNAL: [(f64, f64, f64); 8] = [
    (0.02, 68.0, 220.0),
    (0.1, 68.0, 150.0),
    (0.3, 68.0, 110.0),
    (1.0, 46.0, 100.0),
    (2.5, 22.0, 68.0),
    (6.0, 10.0, 46.0),
    (12.0, 5.0, 22.0),
    (30.0, 2.0, 10.0),
];
/// A close spindle is oiled thinner: its plate or, where that is silent, class F oils of these bodies (from memory).
const CLOSE_AND_FAST: Band = Band {
    low: 2.0,
    high: 10.0,
    standing: Standing::FromMemory,
    source: "close, fast plain spindles want class F oil of grade 2 to 10",
};

/// The band that a pair wants at a place.
#[must_use]
pub fn band(place: &Place<'_>) -> Option<Band> {
    let pair = place.pair?;
    let wide = place.way == Way::Hand;
    Some(match pair.kind {
        PairKind::Journal if place.close_and_fast > 0.0 => journal(place).toward(CLOSE_AND_FAST, place.close_and_fast),
        PairKind::Journal => journal(place),
        PairKind::RollingBearing => rolling_bearing(pair),
        // Open teeth fling oil off; closed ones share it with bearings; a few drops in a hole want a body that stays.
        PairKind::GearMesh if place.is_open() => {
            Band::practice(150.0, 460.0, "open gears: tacky or way oil of grade 150 to 320, to 460 for the largest")
        }
        PairKind::GearMesh => {
            let slow = if wide {
                Band::practice(68.0, 320.0, "slow gears oiled by hand: grade 68 to 320")
            } else {
                Band::practice(46.0, 150.0, "slow, loaded boxes: grade 68 to 150")
            };
            let fast = Band::practice(32.0, 68.0, "closed boxes: grade 32 to 68");
            slow.toward(fast, place.faster_than(FAST_GEARS_M_S))
        }
        PairKind::Worm if place.is_irreplaceable || pair.torque.is_some() || place.way == Way::Bath => {
            Band::practice(460.0, 680.0, "loaded worms on bronze: compounded oil of grade 460 to 680")
        }
        PairKind::Worm => Band::practice(68.0, 220.0, "light worms of a feed share the oil of the box or the ways"),
        PairKind::Slideway => slideway(place, pair),
        PairKind::ScrewAndNut => Band::practice(46.0, 150.0, "screws and nuts: way oil of grade 68 to 150"),
        PairKind::SlidingCollar => {
            Band::practice(32.0, 150.0, "collars and forks: the oil of the box, or a few drops of grade 68")
        }
        PairKind::Cam => Band::practice(46.0, 150.0, "cams: grade 68 to 150"),
        PairKind::FrictionClutch => {
            Band::practice(32.0, 68.0, "wet friction clutches: grade 32 to 68 without friction modifier")
        }
        PairKind::Chain => {
            Band { standing: Standing::FromMemory, ..Band::practice(100.0, 220.0, "chains: grade 100 to 220") }
        }
    })
}

fn journal(place: &Place<'_>) -> Band {
    let source = "plain bearings by the speed of their surface: grade 68 to 150 and more when slow, 22 to 46 when fast";
    let Some(fastest) = place.fastest.map(|fastest| fastest.m_s()) else {
        return Band::practice(32.0, 150.0, "plain bearings of which nobody says how fast they turn: grade 32 to 150");
    };
    let [(first, ..), .., (last, ..)] = JOURNAL;
    let speed = math::ln(fastest.clamp(first, last));
    let row = JOURNAL.iter().skip(1).position(|(at, ..)| math::ln(*at) >= speed).unwrap_or(JOURNAL.len() - 2);
    let ((from, low_1, high_1), (to, low_2, high_2)) = (JOURNAL[row], JOURNAL[row + 1]);
    let part = (speed - math::ln(from)) / (math::ln(to) - math::ln(from));
    Band::practice(low_1, high_1, source).toward(Band::practice(low_2, high_2, source), part)
}

/// By ISO 281's reference viscosity where size and speed are known, a ratio of 1 to 4 at a bearing that is hand-warm, within what the trade
/// uses; else by the trade alone.
fn rolling_bearing(pair: &Pair) -> Band {
    const SOURCE: &str =
        "rolling bearings in oil: one to four times ISO 281's reference viscosity, within grade 15 to 220";
    let fastest = pair.speeds.iter().filter_map(|speed| match speed {
        Speed::Turning(turning) => Some(*turning),
        Speed::Sliding(_) => None,
    });
    let fastest = fastest.max_by(|a, b| a.per_second().total_cmp(&b.per_second()));
    // The mean of bore and outside; where only the bore is known, usual bearings are half as large again there.
    let mean = match (pair.bore.as_ref().or(pair.diameter.as_ref()), &pair.outside) {
        (Some(bore), Some(outside)) => Some(0.5 * (bore.value.m() + outside.value.m())),
        (Some(bore), None) => Some(1.5 * bore.value.m()),
        _ => None,
    };
    let reference =
        fastest.zip(mean).and_then(|(fastest, mean)| rolling::reference_viscosity(fastest, Length::from_m(mean)).ok());
    let Some(reference) = reference.map(|answer| answer.value) else {
        return Band::practice(32.0, 68.0, "rolling bearings in oil: grade 32 to 68");
    };
    let warm = Temperature::from_celsius(HAND_WARM_C);
    let at_40 = |ratio: f64| {
        let line = ViscosityLine::through_with_index(
            (warm, KinematicViscosity::from_m2_s(ratio * reference.m2_s())),
            USUAL_INDEX,
        );
        line.map_or(reference.mm2_s() * ratio, |line| line.value.at(Temperature::from_celsius(40.0)).mm2_s())
    };
    Band {
        low: at_40(1.0).clamp(15.0, 68.0),
        high: at_40(4.0).clamp(46.0, 220.0),
        standing: Standing::Standard,
        source: SOURCE,
    }
}

/// A bearing of an old machine that has run an hour (common practice).
const HAND_WARM_C: f64 = 35.0;

fn slideway(place: &Place<'_>, pair: &Pair) -> Band {
    let large = pair.area.as_ref().map_or(0.0, |area| gone(area.value.m2(), LARGE_M2));
    let long = pair.stroke.as_ref().map_or(0.0, |stroke| gone(stroke.value.m(), LONG_M));
    let light = if place.is_level() {
        Band::practice(46.0, 100.0, "level ways: way oil of grade 68, or a grade around")
    } else {
        Band::practice(68.0, 220.0, "upright ways and rams: way oil of grade 150 to 220, 68 at the least")
    };
    let heavy = Band::practice(100.0, 220.0, "long, heavy ways: way oil of grade 150 to 220");
    let quick = Band::practice(68.0, 150.0, "quick slides and rams: way or circulating oil of grade 68 to 150");
    light.toward(heavy, large.max(long)).toward(quick, place.quick())
}

/// Ways from here on are heavy, m² of their face and m of stroke (from memory).
const LARGE_M2: Range = [0.2, 0.4];
const LONG_M: Range = [0.8, 1.2];
/// Gears of a box are slow below the first, at their pitch line in m/s (from memory).
const FAST_GEARS_M_S: Range = [1.0, 2.2];
