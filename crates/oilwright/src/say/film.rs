//! What is known of the films of a point's bearings, as lines for people and as an object for programs.

use advice::film::{Assumed, Film, InRoom, Reached, Span, Swing, TooTight, What};
use advice::words;
use serde_json::{Value as Json, json};
use tribology::Answer;
use tribology::quantity::Units;

use crate::failure::Failure;

/// A bearing's film on a usual day in a line, what is worth measuring first and, when asked, the working.
pub(crate) fn film(found: &Answer<Film>, usual: &InRoom, oil: &str, how: super::How) -> Result<(), Failure> {
    let (film, units) = (&found.value, how.units);
    super::line(&format!(
        "       with {oil}, at {} and given all the oil it wants: {}; it runs at {}",
        words::degrees(usual.room.air, units),
        words::regimes(usual, film.kind),
        words::warmth(usual, units),
    ))?;
    if let Some(worth) = words::worth_measuring(&film.swing, film.kind, units) {
        super::line(&format!("       worth measuring: {worth}"))?;
    }
    if how.working {
        for swing in &film.swing {
            super::line(&format!("       not known: {}", words::film_swing(swing, film.kind, units)))?;
        }
        for assumed in &film.assumed {
            super::line(&format!("       taken as usual: {}", words::film_assumed(assumed, units)))?;
        }
        for step in &found.steps {
            super::line(&format!("         {}", words::step(step, units)))?;
        }
    }
    Ok(())
}

/// A warning with what to do.
pub(crate) fn too_tight(found: &TooTight, units: Units) -> Result<(), Failure> {
    super::line(&format!("     warning: {}. {}", words::too_tight(found, units), words::too_tight_remedy()))
}

/// What `--json` says of a bearing's film.
pub(crate) fn film_json(found: &Answer<Film>, oil: &str, units: Units) -> Json {
    let film = &found.value;
    let room = |one: &InRoom| {
        let speeds = one.at.iter().map(|(speed, state)| {
            json!({
                "rpm": speed.rpm(),
                "regime": state.map(|state| words::regime(state.regime, film.kind)),
                "temperature_c": state.map(|state| state.temperature.celsius()),
                "film_ratio": state.map(|state| state.film_ratio),
                "viscosity_ratio": state.and_then(|state| state.viscosity_ratio),
            })
        });
        let changes = one
            .changes
            .iter()
            .map(|change| json!({ "from_rpm": change.from.rpm(), "to": words::regime(change.to, film.kind) }));
        json!({
            "day": one.room.day.word(),
            "air_c": one.room.air.celsius(),
            "air_assumed": one.room.is_assumed,
            "says": words::regimes(one, film.kind),
            "speeds": speeds.collect::<Vec<_>>(),
            "changes": changes.collect::<Vec<_>>(),
        })
    };
    json!({
        "oil": oil,
        "regimes": film.rooms.iter().map(room).collect::<Vec<_>>(),
        "assumed": film.assumed.iter().map(|one| assumed(one, units)).collect::<Vec<_>>(),
        "swing": film.swing.iter().map(|one| swing(one, found, units)).collect::<Vec<_>>(),
        "mind": found.warnings.iter().map(words::warning).collect::<Vec<_>>(),
        "working": found.steps.iter().map(|step| words::step(step, units)).collect::<Vec<_>>(),
    })
}

/// What `--json` says of a warning.
pub(crate) fn too_tight_json(found: &TooTight, units: Units) -> Json {
    json!({
        "pair": found.pair.as_str(),
        "oil": found.oil,
        "rpm": found.speed.rpm(),
        "air_c": found.air.celsius(),
        "temperature_c_at_least": found.at_least.map(|at_least| at_least.celsius()),
        "says": format!("{}. {}", words::too_tight(found, units), words::too_tight_remedy()),
    })
}

fn assumed(one: &Assumed, units: Units) -> Json {
    let (what, [low, usual, high]) = figures(&one.what);
    json!({
        "what": what,
        "low": low,
        "usual": usual,
        "high": high,
        "standing": one.standing.words(),
        "says": words::film_assumed(one, units),
    })
}

fn swing(one: &Swing, found: &Answer<Film>, units: Units) -> Json {
    let from = one.reached.map(|reached| match reached {
        Reached::Always => json!("always"),
        Reached::From(speed) => json!(speed.rpm()),
        Reached::Never => json!("never"),
    });
    json!({
        "what": figures(&one.assumed.what).0,
        "top_speed_temperature_c": one.top.map(|top| top.map(|top| top.celsius())),
        "good_film_from_rpm": from,
        "says": words::film_swing(one, found.value.kind, units),
    })
}

/// A key that ends in its unit, with the least, the usual and the most.
fn figures(what: &What) -> (&'static str, [Json; 3]) {
    fn each<T: Copy>(span: &Span<T>, said: impl Fn(T) -> Json) -> [Json; 3] {
        [span.low, span.usual, span.high].map(said)
    }
    match what {
        What::Clearance(span) => ("clearance_mm", each(span, |one| json!(one.mm()))),
        What::Length(span) => ("length_mm", each(span, |one| json!(one.mm()))),
        What::Outside(span) => ("outside_mm", each(span, |one| json!(one.mm()))),
        What::Width(span) => ("width_mm", each(span, |one| json!(one.mm()))),
        What::Load(span) => ("load_mpa", each(span, |one| json!(one.mpa()))),
        What::Roughness(span) => ("roughness_um", each(span, |both| json!(both.map(|one| one.um())))),
        What::Surface(span) => ("surface_cm2", each(span, |one| json!(one.cm2()))),
        What::Coefficient(span) => ("coefficient_w_m2_k", each(span, |one| json!(one.w_m2_k()))),
        What::Drag(span) => ("drag_f0", each(span, |one| json!(one))),
        What::Washed(span) => ("washed_part", each(span, |one| json!(one))),
        What::Index(span) => ("viscosity_index", each(span, |one| json!(one))),
    }
}
