//! The film between teeth, rollers or balls: a contact along a line or at a point.

use tribology::contact::gear::{Film, LineContact, PointContact, line_film, point_film};
use tribology::quantity::{DynamicViscosity, Force, Length, LineLoad, Pressure, PressureViscosity, Velocity};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic};

pub(super) const TOPIC: Topic = Topic {
    name: "film",
    title: "Film of a hard contact",
    about: "The oil film between two hard bodies that roll on one another: teeth and rollers touch along a line, balls at a point. The \
            speed is the mean of both surfaces, radii and modulus are the reduced ones of both bodies.",
    words: None,
    options: &[
        Topic::once("contact", "line or point", "point"),
        Topic::once("speed", "mean speed of both surfaces", "2.5m/s"),
        Topic::once("viscosity", "dynamic viscosity at the inlet's temperature", "20mPa.s"),
        Topic::once("pressure-viscosity", "pressure-viscosity coefficient", "18/GPa"),
        Topic::once("modulus", "reduced modulus; 230.77 GPa for steel on steel", "230.77GPa"),
        Topic::once("radius-x", "reduced radius along the motion", "6mm"),
        Topic::once("radius-y", "reduced radius across the motion, for a point; the same when left out", "30mm"),
        Topic::once("load", "load; for a line the load over its length, such as 100N/mm", "120N"),
    ],
    examples: &[
        "film --contact point --speed 2.5m/s --viscosity 20mPa.s --pressure-viscosity 18/GPa --modulus 230.77GPa --radius-x 6mm --radius-y 30mm --load 120N",
        "film --contact line --speed 1m/s --viscosity 40mPa.s --pressure-viscosity 20/GPa --modulus 230.77GPa --radius-x 10mm --load 100N/mm",
    ],
    answer,
};

/// How two bodies touch.
enum Touch {
    Line,
    Point,
}

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let touch = touch(given)?;
    let speed = given.must::<Velocity>("speed", None)?;
    let viscosity = given.must::<DynamicViscosity>("viscosity", None)?;
    let pressure_viscosity = given.must::<PressureViscosity>("pressure-viscosity", None)?;
    let modulus = given.must::<Pressure>("modulus", None)?;
    let radius_x = given.must::<Length>("radius-x", None)?;
    let radius_y = given.quantity::<Length>("radius-y", None)?;
    let Film { minimum, central } = match (touch, radius_y) {
        (Touch::Line, None) => {
            let load = given.must::<LineLoad>("load", None)?;
            let contact = LineContact { speed, viscosity, pressure_viscosity, modulus, radius: radius_x, load };
            found.take(line_film(&contact)?)
        }
        (Touch::Line, Some(_)) => {
            return Err(Refused::new("--radius-y has no meaning for a line; leave it out, or say --contact point"));
        }
        (Touch::Point, across) => {
            if across.is_none() {
                found.assume("the same radius across the motion as along it: a ball");
            }
            let (radius_y, load) = (across.unwrap_or(radius_x), given.must::<Force>("load", None)?);
            let contact = PointContact { speed, viscosity, pressure_viscosity, modulus, radius_x, radius_y, load };
            found.take(point_film(&contact)?)
        }
    };
    found.push(Item::quantity("minimum_um", "Film at its thinnest place", minimum, "um"));
    found.push(Item::quantity("central_um", "Film in the middle", central, "um"));
    found.assume("smooth faces, steady motion, and oil enough at the inlet; what a can feeds has less");
    Ok(found)
}

fn touch(given: &Given<'_>) -> Result<Touch, Refused> {
    let text = given.text("contact").ok_or_else(|| given.missing("contact"))?;
    match text.trim().to_lowercase().as_str() {
        "line" => Ok(Touch::Line),
        "point" => Ok(Touch::Point),
        _ => Err(Refused::new(format!("--contact is \"{text}\"; it is line or point"))),
    }
}
