//! How warm a bearing runs that nothing cools but the air about it.

use super::bearing::{Bearing, Running};
use super::method::Method;
use super::symbol;
use crate::oil::{ViscosityLine, dynamic_viscosity};
use crate::quantity::{Area, Density, HeatTransfer, KinematicViscosity, Temperature};
use crate::root::root;
use crate::working::Step;
use crate::{Answer, Error, Standing};

/// The thinnest viscosity for which the chart of viscosity and temperature is drawn, mm²/s.
///
/// Source: `astm-d341`.
pub(super) const THINNEST: f64 = 0.21;
/// Heat that housings give off in still air, from the least to the most.
///
/// Source: `iso-7902`, from memory.
pub const STILL_AIR: [HeatTransfer; 2] = [HeatTransfer::from_w_m2_k(15.0), HeatTransfer::from_w_m2_k(20.0)];

/// How many temperatures are tried for the upper end.
const TRIES: u32 = 16;

/// The oil of a bearing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Oil {
    /// Its viscosity and temperature.
    pub line: ViscosityLine,
    /// Its density, taken as the same at every temperature: between 20 and 80 °C it falls by 4 %, and the answer by a degree at most.
    pub density: Density,
}

/// What takes the heat of a bearing away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surroundings {
    /// Temperature of the air.
    pub ambient: Temperature,
    /// Surface of the housing that gives off heat.
    pub area: Area,
    /// Heat given off by each part of it: 15 to 20 W/(m² K) in still air.
    pub coefficient: HeatTransfer,
}

/// A bearing that has warmed up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Equilibrium {
    /// Temperature of the film and of the housing.
    pub temperature: Temperature,
    /// How the bearing runs at it.
    pub running: Running,
}

/// The temperature at which a bearing gives off as much heat by its housing as friction makes.
///
/// `f W U = k A (T − T_amb)`, the film as warm as the housing
///
/// Friction falls as the oil warms and the heat given off rises, so that there is one such temperature; it is found between that of
/// the air and the one at which the chart of the oil ends.
///
/// - `bearing`: with its load and speed.
/// - `oil`: what is in it.
/// - `surroundings`: what takes the heat away.
/// - `method`: how the film is found.
/// - returns: temperature of the film, and how the bearing runs.
///
/// # Range
/// Bearings that no flow of oil cools. The coefficient is a guide value, good to a quarter, and the film is warmer than the housing by
/// an amount that is left out.
///
/// # Errors
/// [`Error::NotBracketed`], with both temperatures in kelvins, when friction makes more heat than the housing gives off up to the end
/// of the chart; [`Error::OutOfRange`] when area or coefficient is not above zero; others as [`Bearing::running`].
///
/// # Source
/// `iso-7902`
///
/// # Example
/// ```
/// use tribology::contact::journal::{Bearing, Method, Oil, Surroundings, equilibrium};
/// use tribology::oil::ViscosityLine;
/// use tribology::quantity::{Area, Density, Force, HeatTransfer, KinematicViscosity, Length, Rotation, Temperature};
/// let at = |celsius, mm2_s| (Temperature::from_celsius(celsius), KinematicViscosity::from_mm2_s(mm2_s));
/// let line = ViscosityLine::through(at(40.0, 32.0), at(100.0, 5.4)).map(|line| line.value);
/// let bearing = Bearing {
///     diameter: Length::from_mm(50.0),
///     length: Length::from_mm(50.0),
///     clearance: Length::from_mm(0.05),
///     load: Force::from_kn(2.0),
///     speed: Rotation::from_rpm(600.0),
/// };
/// let surroundings = Surroundings {
///     ambient: Temperature::from_celsius(22.0),
///     area: Area::from_m2(0.12),
///     coefficient: HeatTransfer::from_w_m2_k(18.0),
/// };
/// let warm = line.and_then(|line| {
///     equilibrium(bearing, Oil { line, density: Density::from_kg_m3(870.0) }, surroundings, Method::Fast)
/// });
/// assert!(warm.is_ok_and(|warm| (25.0..60.0).contains(&warm.value.temperature.celsius())));
/// ```
pub fn equilibrium(
    bearing: Bearing,
    oil: Oil,
    surroundings: Surroundings,
    method: Method,
) -> Result<Answer<Equilibrium>, Error> {
    let area = Error::quantity_positive("area", surroundings.area)?.m2();
    let coefficient = Error::quantity_positive("heat transfer coefficient", surroundings.coefficient)?.w_m2_k();
    let ambient = Error::quantity_positive("ambient temperature", surroundings.ambient)?.kelvin();
    let running = |kelvin: f64| {
        let kinematic = oil.line.viscosity(Temperature::from_kelvin(kelvin))?;
        let dynamic = dynamic_viscosity(kinematic.value, oil.density)?;
        let running = bearing.running(dynamic.value, method)?;
        Ok(running.after(dynamic).after(kinematic))
    };
    // What is wrong with the bearing itself is said as it is.
    let cold: Answer<Running> = running(ambient)?;
    let last = oil.line.temperature(KinematicViscosity::from_mm2_s(THINNEST))?.value.kelvin();
    let hot = (1..=TRIES).rev().map(|part| ambient + (last - ambient) * f64::from(part) / f64::from(TRIES));
    let hot = hot.into_iter().find(|kelvin| running(*kelvin).is_ok()).unwrap_or(ambient);
    let given_off = |kelvin: f64| coefficient * area * (kelvin - ambient);
    let excess = |kelvin: f64| {
        running(kelvin).map_or(f64::NAN, |found: Answer<Running>| found.value.power_loss.w() - given_off(kelvin))
    };
    debug_assert!(cold.value.power_loss.w() > 0.0, "a turning journal drags");
    let found = root("film temperature", [ambient, hot], 1e-7, excess)?;
    let warm = running(found.at)?;
    let step = Step {
        name: "Film temperature",
        formula: "f W U = k A (T − Tamb)",
        symbols: vec![
            symbol("f W U", warm.value.power_loss.w(), "W"),
            symbol("U", super::bearing::surface_speed(&bearing), "m/s"),
            symbol("k", coefficient, "W/(m²·K)"),
            symbol("A", area, "m²"),
            symbol("Tamb", ambient, "K"),
        ],
        result: symbol("T", found.at, "K"),
        source: "iso-7902",
        standing: Standing::Standard,
    };
    let value = Equilibrium { temperature: Temperature::from_kelvin(found.at), running: warm.value };
    Ok(warm.map(|_| value).after(Answer::of((), step)))
}
