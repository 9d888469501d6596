//! Blends: the viscosity of several oils mixed, and how much of the thicker of two reaches a target.

use tribology::oil::{Part, blend_d7152, blend_refutas, share_d7152, share_refutas};
use tribology::quantity::{KinematicViscosity, digits_of};

use super::given::{Given, Refused, read, share};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "blend",
    title: "Blending oils",
    about: "The viscosity of a mixture, or the share of the thicker of two oils that reaches a target, all at one temperature. Only \
            for plain oils of one kind: unlike additives can spoil a mixture whose number is right.",
    words: None,
    options: &[
        Topic::often("part", "viscosity=share of one part", "22=25%"),
        Topic::once("thin", "viscosity of the thin oil", "68"),
        Topic::once("thick", "viscosity of the thick oil", "220"),
        Topic::once("target", "viscosity wanted", "100"),
        Topic::once("method", "d7152 (shares by volume) or refutas (shares by mass)", "d7152"),
    ],
    examples: &[
        "blend --part 22=25% --part 100=75% --method refutas",
        "blend --thin 68 --thick 220 --target 100 --method d7152",
    ],
    answer,
};

/// How the numbers of the parts mix.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Method {
    D7152,
    Refutas,
}

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let method = method(given)?;
    let parts = given.all("part").map(part).collect::<Result<Vec<_>, _>>()?;
    let ends = ["thin", "thick", "target"].into_iter().filter(|name| given.has(name)).count();
    match (parts.as_slice(), ends) {
        ([], 0) => {
            return Err(Refused::new(
                "nothing is asked; give the parts (--part 22=25% --part 100=75%), or two oils and a target (--thin 68 --thick 220 --target 100)",
            ));
        }
        ([], _) => {
            let viscosity = |name| given.must::<KinematicViscosity>(name, Some("mm2/s"));
            let (thin, thick, target) = (viscosity("thin")?, viscosity("thick")?, viscosity("target")?);
            let share = found.take(match method {
                Method::D7152 => share_d7152(thin, thick, target)?,
                Method::Refutas => share_refutas(thin, thick, target)?,
            });
            found.push(Item::new("thick_percent", "Share of the thick oil, %", Value::Number(100.0 * share)));
        }
        (_, 0) => {
            let percent: f64 = parts.iter().map(|part| 100.0 * part.share).sum();
            if (percent - 100.0).abs() > 0.1 {
                return Err(Refused::new(format!(
                    "the shares make {} % together; they must make 100 %",
                    digits_of(percent, 4)
                )));
            }
            let blend = found.take(match method {
                Method::D7152 => blend_d7152(&parts)?,
                Method::Refutas => blend_refutas(&parts)?,
            });
            found.push(Item::quantity("mm2_s", "Viscosity of the blend", blend, "mm2/s"));
        }
        _ => {
            return Err(Refused::new(
                "parts and a target do not go together; give either --part, or --thin, --thick and --target",
            ));
        }
    }
    found.assume(match method {
        Method::D7152 => "all viscosities at one temperature, shares by volume; take the answer as ±6 %",
        Method::Refutas => "all viscosities at one temperature, shares by mass; take the answer as ±6 %",
    });
    found.assume("plain oils of one kind without viscosity improvers; stir a little in a glass first and let it stand for a week");
    Ok(found)
}

fn method(given: &Given<'_>) -> Result<Method, Refused> {
    match given.text("method").map(|text| text.trim().to_lowercase()).as_deref() {
        None | Some("d7152") => Ok(Method::D7152),
        Some("refutas") => Ok(Method::Refutas),
        Some(other) => Err(Refused::new(format!("--method is \"{other}\"; it is d7152 or refutas"))),
    }
}

/// `22=25%`: a viscosity and its share.
fn part(text: &str) -> Result<Part<KinematicViscosity>, Refused> {
    let Some((viscosity, portion)) = text.split_once('=') else {
        return Err(Refused::new(format!(
            "--part is \"{text}\"; write the viscosity, an equals sign and the share, such as 22=25%"
        )));
    };
    Ok(Part {
        share: share("the share of --part", portion)?,
        oil: read("the viscosity of --part", viscosity, Some("mm2/s"))?,
    })
}
