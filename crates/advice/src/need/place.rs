//! What matters of a point and of one pair that it feeds, whichever oil is held against it: how oil gets there, of what the surfaces are,
//! how fast, how warm, how loaded. Numbers from memory are ranges, so that nothing falls off a cliff.

use shop::chart::{Chart, Method, Orientation, Pair, PairKind, Point};
use shop::id::Id;
use tribology::quantity::Velocity;

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
    /// It runs above about 60 °C, or is a loaded worm; between two edges nobody can say.
    pub hot: Known,
    /// A body of oil without a strainer.
    pub is_unfiltered: bool,
    /// A friction clutch that must grip stands in the same oil.
    pub clutch: bool,
    /// A friction clutch that must stay dry.
    pub is_dry_clutch: bool,
    /// A close spindle that runs fast.
    pub is_close_and_fast: bool,
    /// How far it is one: nothing for a wide or slow one, one for one that is close and fast, parts between the edges of both.
    pub close_and_fast: f64,
    /// Such a spindle has its oil in common with this pair, which then does with what the spindle wants.
    pub is_with_close_spindle: bool,
    /// Rolling elements.
    pub is_rolling: bool,
    /// It cannot be bought again.
    pub is_irreplaceable: bool,
    /// The fastest that its surfaces rub.
    pub fastest: Option<Velocity>,
}

/// Thresholds from memory are ranges: below the first a thing is not so, above the second it is, and between them it becomes so by the
/// logarithm, so that no verdict falls off a cliff.
pub type Range = [f64; 2];

/// From where on a surface is not slow, m/s (from memory).
pub const QUICK_M_S: Range = [0.35, 0.7];
/// From where on a plain spindle counts as fast, m/s at its surface (from memory).
pub const FAST_M_S: Range = [3.2, 5.0];
/// How much clearance in parts of the diameter is close, and how much is not (from memory).
pub const CLOSE: Range = [0.0007, 0.0009];
/// How warm is hot to active sulphur, °C (trade practice says about 60 °C, from memory).
pub const HOT_C: Range = [55.0, 65.0];

/// How far a value has gone through a range: nothing below it, one above.
#[must_use]
pub fn gone(value: f64, range: Range) -> f64 {
    let [from, to] = range.map(tribology::math::ln);
    ((tribology::math::ln(value) - from) / (to - from)).clamp(0.0, 1.0)
}

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
        let fastest = pair.and_then(Pair::fastest);
        let close_and_fast = pair.map_or(0.0, |pair| close_and_fast(pair, fastest));
        let is_worm = pair.is_some_and(|pair| pair.kind == PairKind::Worm);
        let others = || pairs_of(chart, point).into_iter();
        Self {
            point,
            pair,
            way,
            yellow: pair.map_or(Known::Unsaid, |pair| made_of(pair, &["bronze", "brass", "copper", "gunmetal"])),
            white: pair.map_or(Known::Unsaid, |pair| made_of(pair, &["white metal", "babbitt"])),
            hot: match pair.and_then(|pair| pair.temperature.as_ref()) {
                Some(at) if at.value.celsius() >= HOT_C[1] => Known::Yes,
                Some(at) if at.value.celsius() > HOT_C[0] => Known::Unsaid,
                Some(_) => Known::No,
                // A worm heats itself by sliding; whether it is loaded enough for that, nobody says.
                None if is_worm && pair.is_some_and(|pair| pair.irreplaceable || pair.torque.is_some()) => Known::Yes,
                None if is_worm => Known::Unsaid,
                None => Known::No,
            },
            is_unfiltered: way == Way::Bath && reservoir.is_none_or(|one| one.strainer.is_none()) && !strains,
            clutch: others().any(|other| other.kind == PairKind::FrictionClutch && !is_dry(other)),
            is_dry_clutch: pair.is_some_and(|pair| pair.kind == PairKind::FrictionClutch && is_dry(pair)),
            is_close_and_fast: close_and_fast >= 1.0,
            close_and_fast,
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

    /// Whether nothing is known of the pair but its kind, so that all that is said of it is by table.
    #[must_use]
    pub fn is_by_kind_alone(&self) -> bool {
        self.pair.is_some_and(|pair| {
            let sizes = [&pair.diameter, &pair.length, &pair.clearance, &pair.bore, &pair.outside, &pair.stroke];
            sizes.iter().all(|size| size.is_none())
                && pair.speeds.is_empty()
                && pair.load.is_none()
                && pair.torque.is_none()
                && pair.area.is_none()
                && pair.temperature.is_none()
        })
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

    /// How far its surfaces rub faster than slow ones do: nothing where they are slow or nobody says how fast, one where they are not.
    #[must_use]
    pub fn quick(&self) -> f64 {
        self.fastest.map_or(0.0, |fastest| gone(fastest.m_s(), QUICK_M_S))
    }

    /// How far its surfaces rub faster than a range in m/s; nothing said of the speed counts as fast.
    #[must_use]
    pub fn faster_than(&self, range: Range) -> f64 {
        self.fastest.map_or(1.0, |fastest| gone(fastest.m_s(), range))
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

/// How far a plain bearing is a close spindle that runs fast; nothing where its clearance was never measured.
fn close_and_fast(pair: &Pair, fastest: Option<Velocity>) -> f64 {
    match (pair.kind, &pair.clearance, &pair.diameter, fastest) {
        (PairKind::Journal, Some(clearance), Some(diameter), Some(fastest)) => {
            let close = 1.0 - gone(clearance.value.m() / diameter.value.m(), CLOSE);
            close.min(gone(fastest.m_s(), FAST_M_S))
        }
        _ => 0.0,
    }
}

/// How oil gets there by this method.
pub(super) fn way(point: &Point) -> Way {
    match point.method {
        Method::GreaseCup | Method::Nipple if point.takes_grease() => Way::Grease,
        Method::OilHole | Method::BallOiler | Method::Cup | Method::Brush | Method::Nipple | Method::GreaseCup => {
            Way::Hand
        }
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
