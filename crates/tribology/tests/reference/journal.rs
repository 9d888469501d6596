//! Journal bearings held against the rows `d-journal` and `d-heat` of `reference/contacts-and-circuits.csv`, where each row names its
//! source and how far to trust it, and against a table of films worked out before this program and apart from it.
//!
//! A row about a film is asked of Reynolds' equation and, for a whole bearing, of the fit as well.

use tribology::contact::journal::{
    Arc, Bearing, JournalState, Method, Oil, STILL_AIR, Surroundings, cone_drag, eccentricity_of, equilibrium, journal,
    journal_reynolds, petroff,
};
use tribology::oil::ViscosityLine;
use tribology::quantity::{
    Angle, Area, Density, DynamicViscosity, Force, HeatTransfer, KinematicViscosity, Length, Pressure, Rotation,
    Temperature,
};
use tribology::{Answer, Error};

use super::Row;

/// Both ways to the film of a whole bearing.
const WHOLE: [Method; 2] = [Method::Reynolds(Arc::Whole), Method::Fast];

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("a row asks what can be answered").value
}

/// The inputs of a row.
struct Inputs<'a>(&'a str);

impl Inputs<'_> {
    fn maybe(&self, name: &str) -> Option<f64> {
        let mut parts = self.0.split(';').flat_map(|part| {
            part.split('=')
                .map(str::trim)
                .collect::<Vec<_>>()
                .windows(2)
                .map(|pair| (pair[0].to_owned(), pair[1].to_owned()))
                .collect::<Vec<_>>()
        });
        let (_, text) = parts.find(|(key, _)| key.split(' ').next_back() == Some(name))?;
        let text = text.split(' ').next().unwrap_or_default();
        match text.split_once('/') {
            Some((above, below)) => Some(above.parse::<f64>().ok()? / below.parse::<f64>().ok()?),
            None if text == "inf" => Some(f64::INFINITY),
            None => text.parse().ok(),
        }
    }

    fn number(&self, name: &str) -> f64 {
        self.maybe(name).unwrap_or_else(|| panic!("no number {name} in {}", self.0))
    }

    fn ratio(&self) -> f64 {
        self.maybe("L/D").unwrap_or_else(|| self.number("B/D"))
    }
}

#[track_caller]
fn check(row: &Row, found: f64) {
    let expected: f64 = row.expected.parse().expect("a row gives a number");
    let allowed = match row.tolerance.split_once(' ') {
        Some(("abs", size)) => size.parse().expect("a size is a number"),
        Some(("rel", size)) => size.parse::<f64>().expect("a size is a number") * expected.abs(),
        _ => panic!("{}: a tolerance is abs or rel, not {}", row.id, row.tolerance),
    };
    let off = (found - expected).abs();
    assert!(off <= allowed, "{} ({}): {} is {found} {}, not {expected}", row.id, row.kind, row.inputs, row.unit);
}

/// What a row asks of a film.
fn of_film(row: &Row, state: &JournalState) -> f64 {
    let asked = row.quantity.as_str();
    let known = |number: Option<f64>| number.unwrap_or_else(|| panic!("{}: the method does not give it", row.id));
    match asked {
        _ if asked.starts_with("attitude angle") => state.attitude.degrees(),
        _ if asked.starts_with("load number So") => state.load_number,
        _ if asked.starts_with("Sommerfeld number") || asked == "S" || asked.starts_with("S of") => state.sommerfeld,
        "short-bearing S" => state.sommerfeld,
        _ if asked.starts_with("friction variable") || asked.starts_with("(R/C) f") => state.friction_variable,
        "flow variable Q/(R C N L)" => known(state.flow_variable),
        "side-flow ratio Qs/Q" | "Qs/Q" => known(state.side_flow_ratio),
        "pressure ratio P/p_max" => known(state.pressure_ratio),
        // Q₁ / (D³ ψ ω) = (Qs / (R C N L)) (L/D) / (8 π).
        "side flow Q1/(D^3 psi omega)" => state.side_flow_variable * state.ratio / (8.0 * std::f64::consts::PI),
        "eccentricity ratio from S" => state.eccentricity,
        other => panic!("{}: nothing here answers {other}", row.id),
    }
}

fn film(row: &Row) {
    let of = Inputs(&row.inputs);
    let methods: Vec<Method> = if row.quantity.contains("closed approximation") {
        vec![Method::Approximation]
    } else if row.quantity.starts_with("short") {
        vec![Method::Short]
    } else if let Some((_, arc)) = row.quantity.split_once("centrally loaded ") {
        let degrees = arc.split(' ').next().and_then(|text| text.parse().ok()).expect("an arc has degrees");
        vec![Method::Reynolds(Arc::Part(Angle::from_degrees(degrees)))]
    } else {
        WHOLE.to_vec()
    };
    for method in methods {
        let state = match of.maybe("eps") {
            Some(epsilon) => value(journal(of.ratio(), epsilon, method)),
            None => value(eccentricity_of(of.ratio(), of.number("S"), method)),
        };
        check(row, of_film(row, &state));
    }
}

/// Pascal-seconds in a reyn, a pound-force second to the square inch.
fn reyns(number: f64) -> DynamicViscosity {
    DynamicViscosity::from_pa_s(number * Pressure::from_psi(1.0).pa())
}

/// The textbook example with inches and reyns.
fn in_inches(row: &Row) {
    let of = Inputs(&row.inputs);
    let bearing = Bearing {
        diameter: Length::from_inches(2.0 * of.number("r")),
        length: Length::from_inches(of.number("l")),
        clearance: Length::from_inches(2.0 * of.number("c")),
        load: lbf(of.number("W")),
        speed: Rotation::from_per_second(of.number("N")),
    };
    for method in WHOLE {
        let running = value(bearing.running(reyns(of.number("mu")), method));
        let found = match row.quantity.as_str() {
            "S" => running.state.sommerfeld,
            "h0" => running.min_film.inches(),
            "friction torque" => running.friction_torque.n_m() / (lbf(1.0) * Length::from_inches(1.0)).n_m(),
            "side flow Qs" => running.side_flow.m3_s() / (Length::from_inches(1.0).m() * Area::from_in2(1.0).m2()),
            "p_max" => running.peak_pressure.expect("both methods give it").psi(),
            other => panic!("{}: nothing here answers {other}", row.id),
        };
        check(row, found);
    }
}

/// The textbook example whose Sommerfeld number is given and whose viscosity follows from it.
fn by_charts(row: &Row) {
    let of = Inputs(&row.inputs);
    let (d, l) = (Length::from_inches(of.number("D")), Length::from_inches(of.number("L")));
    let (load, speed) = (lbf(of.number("W")), Rotation::from_rpm(of.number("n")));
    let clearance = Length::from_inches(2.0 * of.number("Cr"));
    let psi = clearance / d;
    let mean = load.n() / (d * l).m2();
    let viscosity = DynamicViscosity::from_pa_s(of.number("S") * mean * psi * psi / speed.per_second());
    for method in WHOLE {
        let running = value(Bearing { diameter: d, length: l, clearance, load, speed }.running(viscosity, method));
        check(row, running.friction_torque.n_m() / (lbf(1.0) * Length::from_inches(1.0)).n_m());
    }
}

fn lbf(number: f64) -> Force {
    Force::from_n(number * 4.448_221_615_260_5)
}

fn drag(row: &Row, petroffs: &str) -> f64 {
    let here = if row.inputs.starts_with("as above") { petroffs } else { &row.inputs };
    let of = Inputs(here);
    let inches = |name| Length::from_inches(of.number(name));
    let rpm = here.split(';').find_map(|part| part.trim().strip_suffix(" rpm")).expect("a speed");
    let speed = Rotation::from_rpm(rpm.parse().expect("a number"));
    let gap = here.split(';').find_map(|part| part.trim().strip_prefix("diametral clearance ")).expect("a clearance");
    let gap = Length::from_inches(gap.split(' ').next().and_then(|text| text.parse().ok()).expect("a number"));
    value(petroff(inches("D"), inches("L"), gap, speed, reyns(of.number("mu")))).force / lbf(1.0)
}

fn cone(row: &Row) -> f64 {
    let of = Inputs(&row.inputs);
    let after = |words: &str| {
        let text = row.inputs.split(';').find_map(|part| part.trim().strip_prefix(words)).expect("it is said");
        text.trim().split(' ').next().and_then(|text| text.parse::<f64>().ok()).expect("a number")
    };
    let drag = cone_drag(
        Length::from_mm(of.number("r0")),
        Length::from_mm(after("face length")),
        Angle::from_degrees(after("cone angle")),
        Length::from_um(after("gap")),
        Rotation::from_per_second(of.number("omega") / std::f64::consts::TAU),
        DynamicViscosity::from_mpa_s(of.number("mu")),
    );
    value(drag).n_m()
}

fn heat(row: &Row) -> f64 {
    let of = Inputs(&row.inputs);
    let at = |celsius, name| (Temperature::from_celsius(celsius), KinematicViscosity::from_mm2_s(of.number(name)));
    let line = value(ViscosityLine::through(at(40.0, "nu40"), at(100.0, "nu100")));
    let (diameter, load) = (Length::from_mm(of.number("B")), Force::from_n(of.number("F")));
    let bearing = Bearing {
        diameter,
        length: diameter,
        clearance: diameter * of.number("psi"),
        load,
        speed: Rotation::from_rpm(of.number("n")),
    };
    let oil = Oil { line, density: Density::from_kg_m3(of.number("rho")) };
    let surroundings = Surroundings {
        ambient: Temperature::from_celsius(of.number("Tamb")),
        area: Area::from_m2(of.number("A")),
        coefficient: HeatTransfer::from_w_m2_k(of.number("kA")),
    };
    let warm = value(equilibrium(bearing, oil, surroundings, Method::Approximation));
    match row.quantity.as_str() {
        "equilibrium film temperature" => warm.temperature.celsius(),
        "eccentricity ratio at equilibrium" => warm.running.state.eccentricity,
        "minimum film" => warm.running.min_film.um(),
        other => panic!("{}: nothing here answers {other}", row.id),
    }
}

#[test]
fn journal_bearings_agree_with_their_sources() {
    let rows = super::rows("contacts-and-circuits.csv");
    let rows: Vec<&Row> =
        rows.iter().filter(|row| ["d-journal-", "d-heat-"].iter().any(|of| row.id.starts_with(of))).collect();
    assert_eq!(rows.len(), 49, "the table has lost rows, or has new ones");
    let of_petroff = rows.iter().find(|row| row.quantity == "Petroff friction force").expect("a row");
    for row in &rows {
        match row.quantity.as_str() {
            "outer heat-transfer coefficient, still air" => {
                let [low, high] = STILL_AIR.map(HeatTransfer::w_m2_k);
                assert_eq!(row.expected, format!("{low} to {high}"), "{}", row.id);
            }
            _ if row.id.starts_with("d-heat") => check(row, heat(row)),
            "Petroff friction force" => check(row, drag(row, "")),
            "Petroff friction coefficient" => {
                check(row, drag(row, &of_petroff.inputs) / Inputs(&row.inputs).number("W"));
            }
            "viscous torque of a cone seat" => check(row, cone(row)),
            "friction torque, charts" => by_charts(row),
            _ if row.inputs.contains("reyn") => in_inches(row),
            _ => film(row),
        }
    }
}

/// Films of whole bearings from a finite-volume solution made before this program: `L/D, ε, S, φ°, (R/C) f, Q/(R C N L), Qs/Q, P/p_max`.
/// Own solutions both, so that they guard against change and prove nothing of the equation.
#[expect(clippy::approx_constant, reason = "a flow that happens to lie near 1/π")]
const CONVERGED: [[f64; 8]; 19] = [
    [f64::INFINITY, 0.2, 0.12373, 66.90, 2.585, 2.840, 0.0, 0.8132],
    [f64::INFINITY, 0.4, 0.062891, 61.64, 1.531, 2.278, 0.0, 0.7623],
    [f64::INFINITY, 0.6, 0.038949, 54.23, 1.205, 1.562, 0.0, 0.6670],
    [f64::INFINITY, 0.8, 0.021103, 42.18, 0.963, 0.783, 0.0, 0.4983],
    [f64::INFINITY, 0.9, 0.011511, 31.67, 0.758, 0.389, 0.0, 0.3585],
    [1.0, 0.1, 1.3298, 79.41, 26.43, 3.374, 0.150, 0.5400],
    [1.0, 0.2, 0.63178, 73.86, 12.82, 3.592, 0.280, 0.5281],
    [1.0, 0.4, 0.26040, 62.57, 5.786, 3.988, 0.498, 0.4824],
    [1.0, 0.6, 0.12094, 50.53, 3.216, 4.329, 0.681, 0.4145],
    [1.0, 0.8, 0.044558, 36.23, 1.702, 4.615, 0.8445, 0.3197],
    [1.0, 0.9, 0.018820, 26.47, 1.053, 4.737, 0.922, 0.2481],
    [1.0, 0.97, 0.0047875, 15.47, 0.518, 4.815, 0.977, 0.1575],
    [0.5, 0.2, 2.0318, 75.13, 41.03, 3.719, 0.318, 0.5036],
    [0.5, 0.4, 0.78543, 61.78, 17.09, 4.289, 0.550, 0.4423],
    [0.5, 0.6, 0.31929, 48.05, 8.101, 4.853, 0.730, 0.3664],
    [0.5, 0.8, 0.091716, 32.93, 3.235, 5.411, 0.8745, 0.2737],
    [0.25, 0.2, 7.5782, 75.38, 152.8, 3.757, 0.329, 0.4901],
    [0.25, 0.4, 2.8412, 61.20, 61.37, 4.372, 0.566, 0.4171],
    [0.25, 0.8, 0.26329, 31.25, 8.869, 5.600, 0.884, 0.2409],
];

#[test]
fn the_solver_meets_a_table_made_before_it() {
    for [ratio, epsilon, sommerfeld, attitude, friction, flow, side, pressure] in CONVERGED {
        let state = value(journal_reynolds(ratio, epsilon, Arc::Whole)).state;
        let near = |found: f64, wanted: f64, part: f64, what: &str| {
            let off = (found - wanted).abs();
            assert!(off <= part * wanted.abs(), "{what} at L/D {ratio}, ε {epsilon}: {found}, not {wanted}");
        };
        near(state.sommerfeld, sommerfeld, 1e-3, "S");
        near(state.attitude.degrees(), attitude, 1e-3, "φ");
        near(state.friction_variable, friction, 1e-3, "(R/C) f");
        near(state.flow_variable.expect("given"), flow, 1e-3, "Q");
        near(state.side_flow_ratio.expect("given"), side, 2e-3, "Qs/Q");
        near(state.pressure_ratio.expect("given"), pressure, 1e-3, "P/pmax");
    }
}
