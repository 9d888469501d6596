//! What matters of a point and of one pair that it feeds, whichever oil is held against it: how oil gets there, of what the surfaces are,
//! how fast, how warm, how loaded. Numbers from memory are ranges, so that nothing falls off a cliff.

use shop::amount::Speed;
use shop::chart::{Chart, Method, Orientation, Pair, PairKind, Point};
use shop::id::Id;
use tribology::quantity::{Length, Velocity};

/// Something that may be so, may not be so, or of which nobody says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// It is so.
    Yes,
    /// It is not so.
    No,
    /// Nobody says.
    Unsaid,
}

/// How oil gets to the pair, as far as rules care.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// A few drops by hand: can, cup, ball oiler, nipple for oil, brush.
    Hand,
    /// Lifted or fed through threads: wick, felt.
    Thread,
    /// Let fall drop by drop: drip, bottle with a pin.
    Drip,
    /// A body of oil in which parts dip: splash, bath, ring, tray.
    Bath,
    /// Shared out by meter units.
    Meter,
    /// A pump that throws it once over the pair.
    Once,
    /// A pump that sends it round.
    Round,
    /// Grease: cup or gun.
    Grease,
}

/// A pair as a point feeds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Place<'c> {
    /// The point.
    pub point: &'c Point,
    /// The pair; nothing where it is not known what the point feeds.
    pub pair: Option<&'c Pair>,
    /// How oil gets there.
    pub way: Way,
    /// Bronze, brass or copper.
    pub yellow: Known,
    /// White metal.
    pub white: Known,
    /// It runs above 60 °C, or is a loaded worm.
    pub hot: Known,
    /// A body of oil without a strainer.
    pub is_unfiltered: bool,
    /// A friction clutch that must grip stands in the same oil.
    pub clutch: bool,
    /// A friction clutch that must stay dry.
    pub is_dry_clutch: bool,
    /// A close spindle that runs fast.
    pub is_close_and_fast: bool,
    /// Such a spindle has its oil in common with this pair, which then does with what the spindle wants.
    pub is_with_close_spindle: bool,
    /// Rolling elements.
    pub is_rolling: bool,
    /// It cannot be bought again.
    pub is_irreplaceable: bool,
    /// The fastest that its surfaces rub.
    pub fastest: Option<Velocity>,
}

/// From here on a surface is not slow, m/s (from memory).
const QUICK_M_S: f64 = 0.5;
/// From here a plain spindle counts as fast, m/s at its surface (from memory; its edge is told with each answer that hangs on it).
pub const FAST_M_S: f64 = 4.0;
/// Up to here its clearance counts as close, in parts of the diameter (from memory).
pub const CLOSE: f64 = 0.0008;

impl<'c> Place<'c> {
    /// The places of a point: one for each pair that it feeds, through oil lines and reservoirs too; one without a pair where none is
    /// known.
    #[must_use]
    pub fn all(chart: &'c Chart, point: &'c Point) -> Vec<Self> {
        let pairs = pairs_of(chart, point);
        if pairs.is_empty() {
            return vec![Self::of(chart, point, None)];
        }
        pairs.into_iter().map(|pair| Self::of(chart, point, Some(pair))).collect()
    }

    fn of(chart: &'c Chart, point: &'c Point, pair: Option<&'c Pair>) -> Self {
        let way = way(point);
        let reservoir = point.reservoir.as_ref().and_then(|id| chart.reservoir(id));
        let circuit = point.circuit.iter().chain(&point.feeds).find_map(|id| chart.circuit(id));
        let strains = circuit
            .is_some_and(|circuit| circuit.nodes.iter().any(|node| node.kind == shop::chart::NodeKind::Strainer));
        let fastest = pair.and_then(fastest);
        let close = pair.is_some_and(|pair| match (&pair.clearance, &pair.diameter) {
            (Some(clearance), Some(diameter)) => clearance.value.m() <= CLOSE * diameter.value.m(),
            _ => false,
        });
        let is_journal = pair.is_some_and(|pair| pair.kind == PairKind::Journal);
        let is_worm = pair.is_some_and(|pair| pair.kind == PairKind::Worm);
        let others = || pairs_of(chart, point).into_iter();
        Self {
            point,
            pair,
            way,
            yellow: pair.map_or(Known::Unsaid, |pair| made_of(pair, &["bronze", "brass", "copper", "gunmetal"])),
            white: pair.map_or(Known::Unsaid, |pair| made_of(pair, &["white metal", "babbitt"])),
            hot: match pair.and_then(|pair| pair.temperature.as_ref()) {
                Some(at) if at.value.celsius() > 60.0 => Known::Yes,
                Some(_) => Known::No,
                // A worm heats itself by sliding; whether it is loaded enough for that, nobody says.
                None if is_worm && pair.is_some_and(|pair| pair.irreplaceable || pair.torque.is_some()) => Known::Yes,
                None if is_worm => Known::Unsaid,
                None => Known::No,
            },
            is_unfiltered: way == Way::Bath && reservoir.is_none_or(|one| one.strainer.is_none()) && !strains,
            clutch: others().any(|other| other.kind == PairKind::FrictionClutch && !is_dry(other)),
            is_dry_clutch: pair.is_some_and(|pair| pair.kind == PairKind::FrictionClutch && is_dry(pair)),
            is_close_and_fast: is_journal && close && fastest.is_some_and(|fastest| fastest.m_s() >= FAST_M_S),
            is_with_close_spindle: false,
            is_rolling: pair.is_some_and(|pair| pair.kind == PairKind::RollingBearing),
            is_irreplaceable: pair.is_some_and(|pair| pair.irreplaceable),
            fastest,
        }
    }

    /// Whether bronze, brass, copper or white metal is in it.
    #[must_use]
    pub fn soft_metal(&self) -> Known {
        match (self.yellow, self.white) {
            (Known::Yes, _) | (_, Known::Yes) => Known::Yes,
            (Known::No, Known::No) => Known::No,
            _ => Known::Unsaid,
        }
    }

    /// Whether the point takes grease.
    #[must_use]
    pub fn takes_grease(&self) -> bool {
        self.way == Way::Grease
    }

    /// Whether the pair is a slide on its way.
    #[must_use]
    pub fn is_way(&self) -> bool {
        self.pair.is_some_and(|pair| pair.kind == PairKind::Slideway)
    }

    /// Whether oil only comes by hand, so that the film is starved by design.
    #[must_use]
    pub fn is_starved_by_design(&self) -> bool {
        matches!(self.way, Way::Hand | Way::Thread | Way::Drip)
    }

    /// Whether teeth or threads lie open and are brushed.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.point.method == Method::Brush
    }

    /// Whether its surfaces rub faster than slow ones do; not so where nobody says how fast.
    #[must_use]
    pub fn is_quick(&self) -> bool {
        self.fastest.is_some_and(|fastest| fastest.m_s() > QUICK_M_S)
    }

    /// Whether its surfaces never rub faster than this, in m/s; not so where nobody says how fast they do.
    #[must_use]
    pub fn is_slower_than(&self, m_s: f64) -> bool {
        self.fastest.is_some_and(|fastest| fastest.m_s() < m_s)
    }

    /// Whether a way lies level.
    #[must_use]
    pub fn is_level(&self) -> bool {
        self.pair.is_some_and(|pair| pair.orientation.is_none_or(|lies| lies == Orientation::Horizontal))
    }
}

/// The pairs that a point feeds on this example, each once: straight, through oil lines, and through its reservoir.
pub fn pairs_of<'c>(chart: &'c Chart, point: &'c Point) -> Vec<&'c Pair> {
    let circuit = |id: &Id| chart.circuit(id).filter(|circuit| chart.applies(&circuit.when));
    let mut ids: Vec<&Id> = point.feeds.iter().collect();
    let reservoir = point.reservoir.as_ref().and_then(|id| chart.reservoir(id));
    if let Some(reservoir) = reservoir {
        ids.extend(&reservoir.feeds);
    }
    let mut lines: Vec<_> = point.feeds.iter().chain(&point.circuit).filter_map(circuit).collect();
    if let Some(reservoir) = reservoir {
        lines.extend(
            chart
                .circuits
                .iter()
                .filter(|circuit| circuit.from.as_ref() == Some(&reservoir.id) && chart.applies(&circuit.when)),
        );
    }
    ids.extend(lines.iter().flat_map(|circuit| circuit.nodes.iter().flat_map(|node| &node.feeds)));
    let mut pairs: Vec<&Pair> = Vec::new();
    for id in ids {
        if let Some(pair) = chart.pair(id).filter(|pair| chart.applies(&pair.when))
            && pairs.iter().all(|known| known.id != pair.id)
        {
            pairs.push(pair);
        }
    }
    pairs
}

/// How oil gets there by this method.
fn way(point: &Point) -> Way {
    match point.method {
        Method::OilHole | Method::BallOiler | Method::Cup | Method::Brush => Way::Hand,
        Method::Nipple if point.oil.as_deref().is_some_and(|oil| !oil.starts_with("grease")) => Way::Hand,
        Method::GreaseCup | Method::Nipple => Way::Grease,
        Method::Drip | Method::Bottle => Way::Drip,
        Method::Wick | Method::Felt => Way::Thread,
        Method::Ring | Method::Splash | Method::Bath | Method::Tray => Way::Bath,
        Method::OneShot => Way::Meter,
        Method::TotalLossPump => Way::Once,
        Method::CirculatingPump => Way::Round,
    }
}

/// Whether a clutch is meant to run dry, by its surfaces and by what is said of it.
fn is_dry(pair: &Pair) -> bool {
    let leather =
        pair.surfaces.iter().any(|surface| ["leather", "fibre", "cork"].iter().any(|word| surface.contains(word)));
    let said = pair.note.as_deref().unwrap_or("").to_lowercase();
    leather || said.starts_with("dry") || said.contains("must stay dry")
}

fn made_of(pair: &Pair, metals: &[&str]) -> Known {
    if pair.surfaces.is_empty() {
        return Known::Unsaid;
    }
    let is_one = |surface: &String| metals.iter().any(|metal| surface.to_lowercase().contains(metal));
    if pair.surfaces.iter().any(is_one) { Known::Yes } else { Known::No }
}

/// The fastest that the surfaces rub: of a turning pair by its diameter, of a slide by its stroke, there and back.
fn fastest(pair: &Pair) -> Option<Velocity> {
    let stroke = pair.stroke.as_ref().filter(|_| pair.kind == PairKind::Slideway).map(|typed| typed.value);
    let diameter = pair.diameter.as_ref().or(pair.bore.as_ref()).map(|typed| typed.value);
    let of = |speed: &Speed| match speed {
        Speed::Sliding(velocity) => Some(*velocity),
        Speed::Turning(turning) if stroke.is_some() => {
            stroke.map(|stroke| Velocity::from_m_s(2.0 * stroke.m() * turning.per_second()))
        }
        Speed::Turning(turning) => diameter
            .map(|diameter: Length| Velocity::from_m_s(std::f64::consts::PI * diameter.m() * turning.per_second())),
    };
    pair.speeds.iter().filter_map(of).max_by(|a, b| a.m_s().total_cmp(&b.m_s()))
}
