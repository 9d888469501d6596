//! A film held against the roughness of the two faces.

use tribology::contact::{FULL_IN_EVERY_TEXT, Regime, film_ratio};
use tribology::quantity::Length;

use super::given::{Given, Refused, read};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "film-ratio",
    title: "Film against roughness",
    about: "How many times thicker the film is than the roughness of both faces together, and whether they touch: boundary below 1, \
            mixed from 1 to 3, full above.",
    words: None,
    options: &[
        Topic::once("film", "film at its thinnest place", "1.2um"),
        Topic::often("rq", "root-mean-square roughness of a face, once for each of the two", "0.3um"),
    ],
    examples: &["film-ratio --film 1.2um --rq 0.3um --rq 0.4um"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let film = given.must::<Length>("film", None)?;
    let faces = given.all("rq").map(|text| read("--rq", text, None)).collect::<Result<Vec<Length>, _>>()?;
    let [first, second] = faces[..] else {
        return Err(match faces.len() {
            0 => given.missing("rq"),
            _ => Refused::new("two faces rub: give --rq twice, such as --rq 0.3um --rq 0.4um"),
        });
    };
    let ratio = found.take(film_ratio(film, first, second)?);
    found.push(Item::new("lambda", "Film ratio", Value::Number(ratio.lambda)));
    found.push(Item::new("regime", "Lubrication", Value::Text(ratio.regime.word().to_owned())));
    found.assume("both roughnesses are Rq (root mean square) and not Ra");
    if ratio.regime == Regime::Full && ratio.lambda < FULL_IN_EVERY_TEXT {
        found.assume("full from 3 on; some texts call a film full from 4 on only");
    }
    Ok(found)
}
