//! A journal bearing: its film from numbers without units, from measures of the workshop, or with the oil warmed by its own friction.

use tribology::Error;
use tribology::contact::journal::{
    Arc, Bearing, JournalState, Method, Oil, Running, STILL_AIR, Surroundings, eccentricity_of, equilibrium, journal,
    journal_reynolds,
};
use tribology::oil::{USUAL_DENSITY_KG_M3, USUAL_INDEX, ViscosityLine};
use tribology::quantity::{
    Angle, Area, Density, DynamicViscosity, Force, HeatTransfer, KinematicViscosity, Length, Rotation, Temperature,
    digits_of,
};

use super::given::{Given, Refused};
use super::{Calculated, Item, Sketch, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "journal",
    title: "Journal bearing",
    about: "The film in a plain bearing that is given all the oil it wants: from length/diameter and eccentricity or Sommerfeld number; or \
            from its measures, load and speed with the viscosity of the warm oil; or with an oil and the air about the housing, and then \
            how warm it runs. Whether a film thicker than the finish remains is for the reader: an oil-can bearing has less.",
    words: None,
    options: &[
        Topic::once("ratio", "length/diameter, or inf", "0.5"),
        Topic::once("eccentricity", "eccentricity over radial clearance", "0.6"),
        Topic::once("sommerfeld", "Sommerfeld number S = (R/C)² μN/P", "0.45"),
        Topic::once("diameter", "diameter of the journal", "50mm"),
        Topic::once("length", "length of the bearing", "50mm"),
        Topic::once("clearance", "clearance on the diameter", "0.05mm"),
        Topic::once("load", "load on the bearing", "2kN"),
        Topic::once("speed", "speed of the journal", "1800rpm"),
        Topic::once("viscosity", "dynamic viscosity of the oil when warm", "25mPa.s"),
        Topic::once("v40", "viscosity of the oil at 40 °C", "32"),
        Topic::once("v100", "its viscosity at 100 °C", "5.4"),
        Topic::once("index", "or its viscosity index", "95"),
        Topic::once("density", "its density when warm", "870"),
        Topic::once("ambient", "temperature of the air", "22C"),
        Topic::once("area", "surface of the housing that gives off heat", "0.12m2"),
        Topic::once("coefficient", "heat given off, W/m²K", "18"),
        Topic::once("arc", "part of the circle that the bearing wraps, load on its middle", "180deg"),
        Topic::once("method", "fast, reynolds, short or approximation", "fast"),
    ],
    examples: &[
        "journal --ratio 0.5 --eccentricity 0.6",
        "journal --ratio 1 --sommerfeld 0.45",
        "journal --ratio 1 --eccentricity 0.6 --arc 180deg",
        "journal --diameter 50mm --length 50mm --clearance 0.05mm --load 2kN --speed 1800rpm --viscosity 25mPa.s",
        "journal --diameter 50mm --length 50mm --clearance 0.05mm --load 2kN --speed 1800rpm --v40 32 --v100 5.4 --density 870 \
         --ambient 22C --area 0.12m2 --coefficient 18",
    ],
    answer,
};

/// What is given when the bearing is described in measures.
const MEASURES: [&str; 5] = ["diameter", "length", "clearance", "load", "speed"];
/// What is given when the oil warms itself.
const WARMING: [&str; 7] = ["v40", "v100", "index", "density", "ambient", "area", "coefficient"];
/// What is given when the bearing is described in numbers.
const NUMBERS: [&str; 3] = ["ratio", "eccentricity", "sommerfeld"];
/// Surface that gives off heat over diameter times length, where nobody has measured it.
///
/// Source: `iso-7902`, from memory: 15 to 20 inside the frame of a machine.
const HOUSING: f64 = 17.5;

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let method = method(given, &mut found)?;
    let any = |names: &[&str]| names.iter().any(|name| given.has(name));
    match (any(&NUMBERS), any(&MEASURES) || any(&WARMING) || given.has("viscosity")) {
        (true, false) => by_numbers(given, method, &mut found)?,
        (false, true) => by_measures(given, method, &mut found)?,
        (false, false) => {
            return Err(Refused::new(
                "nothing is asked; give --ratio with --eccentricity or --sommerfeld, or the bearing's --diameter, --length, --clearance, \
                 --load and --speed with the oil's --viscosity",
            ));
        }
        (true, true) => {
            return Err(Refused::new(
                "numbers and measures do not go together; give either --ratio with --eccentricity or --sommerfeld, or diameter, length, \
                 clearance, load, speed and oil",
            ));
        }
    }
    found.assume("steady load, all the oil that the film wants, one viscosity throughout; what lies behind the film is sheared too");
    Ok(found)
}

fn by_numbers(given: &Given<'_>, method: Method, found: &mut Calculated) -> Result<(), Refused> {
    let ratio = ratio(given)?;
    let state = match (given.number("eccentricity")?, given.number("sommerfeld")?) {
        (Some(eccentricity), None) => found.take(journal(ratio, eccentricity, method)?),
        (None, Some(sommerfeld)) => {
            let state = found.take(eccentricity_of(ratio, sommerfeld, method)?);
            found.push(Item::new("eccentricity", "Eccentricity over clearance", Value::Number(state.eccentricity)));
            state
        }
        (Some(_), Some(_)) => {
            return Err(Refused::new("--eccentricity and --sommerfeld follow from one another; leave one out"));
        }
        (None, None) => return Err(given.missing("eccentricity")),
    };
    if let Method::Reynolds(arc) = method {
        found.plots.extend(pressure_plot(ratio, state.eccentricity, arc));
    }
    show(&state, found);
    Ok(())
}

/// The pressure round the middle of the bearing.
fn pressure_plot(ratio: f64, eccentricity: f64, arc: Arc) -> Option<Sketch> {
    let solved = journal_reynolds(ratio, eccentricity, arc).ok()?.value;
    let round = solved.middle.iter().map(|(theta, pressure)| (theta.to_degrees(), *pressure)).collect();
    let says = "From the widest gap at 0 degrees the oil is dragged into the narrowing one; behind the thinnest film, at 180, it breaks.";
    Sketch::of(
        "Pressure round the bearing, over the mean pressure".to_owned(),
        says,
        "degrees",
        "p/P",
        ("pressure", round),
    )
}

fn by_measures(given: &Given<'_>, method: Method, found: &mut Calculated) -> Result<(), Refused> {
    let bearing = Bearing {
        diameter: given.must::<Length>("diameter", None)?,
        length: given.must::<Length>("length", None)?,
        clearance: given.must::<Length>("clearance", None)?,
        load: given.must::<Force>("load", None)?,
        speed: given.must::<Rotation>("speed", Some("rpm"))?,
    };
    let warms_itself = WARMING.iter().any(|name| given.has(name));
    let running = match given.quantity::<DynamicViscosity>("viscosity", Some("mPa.s"))? {
        Some(viscosity) if !warms_itself => {
            let film = |bearing: Bearing| Some(bearing.running(viscosity, Method::Fast).ok()?.value.min_film);
            found.plots.extend(film_plot(bearing, film));
            found.take(bearing.running(viscosity, method)?)
        }
        Some(_) => {
            return Err(Refused::new(
                "--viscosity says how thick the warm oil is, --v40 and the rest ask how warm it becomes; give one of them",
            ));
        }
        None if !warms_itself => return Err(given.missing("viscosity")),
        None => warmed(given, bearing, method, found)?,
    };
    show_measures(&running, found);
    show(&running.state, found);
    Ok(())
}

/// The bearing with its oil warmed by friction.
fn warmed(given: &Given<'_>, bearing: Bearing, method: Method, found: &mut Calculated) -> Result<Running, Refused> {
    let line = line(given, found)?;
    let density = given.quantity::<Density>("density", Some("kg/m3"))?.unwrap_or_else(|| {
        found.assume(format!("density {USUAL_DENSITY_KG_M3} kg/m³ (common practice, no source)"));
        Density::from_kg_m3(USUAL_DENSITY_KG_M3)
    });
    let ambient = given.must::<Temperature>("ambient", None)?;
    let area = given.quantity::<Area>("area", None)?.unwrap_or_else(|| {
        let area = bearing.diameter * bearing.length * HOUSING;
        let cm2 = digits_of(area.cm2(), 3);
        found
            .assume(format!("{cm2} cm² of housing give off heat, {HOUSING} times diameter times length (from memory)"));
        area
    });
    let coefficient = given.quantity::<HeatTransfer>("coefficient", Some("W/m2K"))?.unwrap_or_else(|| {
        let [low, high] = STILL_AIR;
        let middle = (low + high) / 2.0;
        found.assume(format!(
            "still air: {} W/m²K, between {} and {} (from memory)",
            middle.w_m2_k(),
            low.w_m2_k(),
            high.w_m2_k()
        ));
        middle
    });
    let surroundings = Surroundings { ambient, area, coefficient };
    let warm = equilibrium(bearing, Oil { line, density }, surroundings, method).map_err(too_hot)?;
    let warm = found.take(warm);
    let at =
        |bearing: Bearing| Some(equilibrium(bearing, Oil { line, density }, surroundings, Method::Fast).ok()?.value);
    found.plots.extend(film_plot(bearing, |bearing| at(bearing).map(|warm| warm.running.min_film)));
    let temperatures = over_speeds(bearing, |bearing| at(bearing).map(|warm| warm.temperature.celsius()));
    let says = "The faster, the warmer; the curve ends where no temperature is in balance any more.";
    found.plots.extend(Sketch::of("Temperature and speed".to_owned(), says, "rpm", "°C", ("film", temperatures)));
    found.oils.push(("this oil".to_owned(), line));
    found.push(Item::quantity("temperature_c", "Temperature of film and housing", warm.temperature, "C"));
    found.assume("no oil carries heat away; the density is taken as the same at every temperature");
    Ok(warm.running)
}

/// How thick the thinnest film is from a tenth of the speed to twice as fast.
fn film_plot(bearing: Bearing, film: impl Fn(Bearing) -> Option<Length>) -> Option<Sketch> {
    let films = over_speeds(bearing, |bearing| film(bearing).map(Length::um));
    let says = "The faster, the thicker, as long as the oil does not warm more than the speed helps.";
    Sketch::of("Thinnest film and speed".to_owned(), says, "rpm", "µm", ("film", films))
}

/// Something of the bearing at forty speeds from a tenth of its own to twice that, as far as there is an answer.
fn over_speeds(bearing: Bearing, of: impl Fn(Bearing) -> Option<f64>) -> Vec<(f64, f64)> {
    let speeds = (2..=40).map(|step| Rotation::from_rpm(bearing.speed.rpm() * f64::from(step) / 20.0));
    speeds.filter_map(|speed| Some((speed.rpm(), of(Bearing { speed, ..bearing })?))).collect()
}

fn too_hot(error: Error) -> Refused {
    match error {
        Error::NotBracketed { name: "film temperature", low, high } => {
            let [low, high] = [low, high].map(|kelvin| digits_of(Temperature::from_kelvin(kelvin).celsius(), 3));
            Refused::new(format!(
                "friction makes more heat than the housing gives off at any temperature from {low} °C to {high} °C; look at speed, clearance \
                 and area, or cool it with oil"
            ))
        }
        other => other.into(),
    }
}

/// The line of the oil, from two viscosities or from one and an index.
fn line(given: &Given<'_>, found: &mut Calculated) -> Result<ViscosityLine, Refused> {
    let v40 = given.must::<KinematicViscosity>("v40", Some("mm2/s"))?;
    let v100 = given.quantity::<KinematicViscosity>("v100", Some("mm2/s"))?;
    let [forty, hundred] = [40.0, 100.0].map(Temperature::from_celsius);
    let line = match (v100, given.number("index")?) {
        (Some(v100), None) => ViscosityLine::through((forty, v40), (hundred, v100))?,
        (None, Some(index)) => ViscosityLine::with_index(v40, index)?,
        (None, None) => {
            found.assume(format!("viscosity index {USUAL_INDEX} (common practice, no source)"));
            ViscosityLine::with_index(v40, USUAL_INDEX)?
        }
        (Some(_), Some(_)) => return Err(Refused::new("--v100 and --index say the same thing twice; leave one out")),
    };
    Ok(found.take(line))
}

fn ratio(given: &Given<'_>) -> Result<f64, Refused> {
    match given.text("ratio").map(|text| text.trim().to_lowercase()).as_deref() {
        Some("inf" | "infinite" | "infinity") => Ok(f64::INFINITY),
        _ => given.number("ratio")?.ok_or_else(|| given.missing("ratio")),
    }
}

fn method(given: &Given<'_>, found: &mut Calculated) -> Result<Method, Refused> {
    let whole = Angle::from_degrees(360.0);
    let arc = match given.quantity::<Angle>("arc", Some("deg"))? {
        None => Arc::Whole,
        Some(arc) if arc == whole => Arc::Whole,
        Some(arc) => Arc::Part(arc),
    };
    let text = given.text("method").map(|text| text.trim().to_lowercase());
    match (text.as_deref(), arc) {
        (Some("reynolds"), arc) => Ok(Method::Reynolds(arc)),
        (None | Some("fast"), Arc::Whole) => Ok(Method::Fast),
        (None, arc @ Arc::Part(_)) => {
            found.assume("an arc is solved for by Reynolds' equation, since the fast method knows whole bearings only");
            Ok(Method::Reynolds(arc))
        }
        (Some("short"), Arc::Whole) => Ok(Method::Short),
        (Some("approximation"), Arc::Whole) => Ok(Method::Approximation),
        (Some(name @ ("fast" | "short" | "approximation")), Arc::Part(_)) => Err(Refused::new(format!(
            "--method {name} knows whole bearings only; leave out --arc, or use --method reynolds"
        ))),
        (Some(other), _) => {
            Err(Refused::new(format!("--method is \"{other}\"; it is fast, reynolds, short or approximation")))
        }
    }
}

fn show_measures(running: &Running, found: &mut Calculated) {
    let film = &running.state;
    found.push(Item::new("eccentricity", "Eccentricity over clearance", Value::Number(film.eccentricity)));
    found.push(Item::quantity("min_film_um", "Thinnest film", running.min_film, "um"));
    found.push(Item::new(
        "friction_coefficient",
        "Coefficient of friction",
        Value::Number(running.friction_coefficient),
    ));
    found.push(Item::quantity("friction_torque_n_m", "Torque of friction", running.friction_torque, "N.m"));
    found.push(Item::quantity("power_loss_w", "Power lost to friction", running.power_loss, "W"));
    found.push(Item::quantity("side_flow_ml_s", "Oil that leaves by the ends", running.side_flow, "mL/s"));
    found.push(Item::maybe("peak_pressure_mpa", "Highest pressure", running.peak_pressure, "MPa"));
}

fn show(film: &JournalState, found: &mut Calculated) {
    let number = |key, label, value: Option<f64>| Item::new(key, label, value.map_or(Value::Nothing, Value::Number));
    found.items.extend([
        number("sommerfeld", "Sommerfeld number S = (R/C)² μN/P", Some(film.sommerfeld)),
        number("load_number", "Load number So = 1/(2πS)", Some(film.load_number)),
        number("film_ratio", "Thinnest film over radial clearance", Some(film.film_ratio)),
        Item::quantity("attitude_deg", "Attitude", film.attitude, "deg"),
        number("friction_variable", "Friction (R/C) f", Some(film.friction_variable)),
        number("flow_variable", "Flow in over RCNL", film.flow_variable),
        number("side_flow_ratio", "Part of it that leaves by the ends", film.side_flow_ratio),
        number("pressure_ratio", "Mean over highest pressure", film.pressure_ratio),
        Item::new("regime", "Surfaces", Value::Text(film.regime.words().to_owned())),
    ]);
}
