//! What an old plate asked for, in oils sold today.

use shop::choice::Choice as _;
use tribology::oil::{USUAL_INDEX, ViscosityLine};
use tribology::quantity::digits_of;

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};
use crate::old_name::{Country, Known, meaning};
use crate::words;

pub(super) const TOPIC: Topic = Topic {
    name: "old-name",
    title: "What an old plate asked for",
    about: "The words of an old plate or book as a band of viscosity at 40 °C and the grades sold today. What the words leave open is \
            asked for, and until it is told the answer spreads over all that they may mean.",
    words: Some(Topic::once("words", "what the plate says", "300 SUS at 100 F")),
    options: &[
        Topic::once("year", "year of the plate or book", "1946"),
        Topic::once("country", "where it was written: us, uk, de, ru or cn", "us"),
        Topic::once("index", "viscosity index to be taken", "95"),
    ],
    examples: &[
        "old-name 300 SUS at 100 F --year 1946 --country us --index 95",
        "old-name SAE 20 --year 1934",
        "old-name medium machine oil",
    ],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let text = given.words()?;
    let known = Known { year: year(given)?, country: country(given)?, index: given.number("index")? };
    if let Some(index) = known.index {
        tribology::Error::unless_within("viscosity index", index, -200.0, 500.0)?;
    }
    let Some(found) = meaning(&text, &known) else {
        return Err(Refused::new(format!(
            "nothing in \"{text}\" says a viscosity or a name that is known here; write it like \"300 SUS at 100 F\", \"SAE 20\" or \
             \"medium machine oil\""
        )));
    };
    let end = |end: Option<_>, key, label| Item::maybe(key, label, end, "mm2/s");
    let grades = found.grades.iter().map(|one| {
        let grade = Value::Whole(i64::from(one.grade.number()));
        vec![Item::new("iso_vg", "ISO VG", grade), Item::new("fit", "fits", Value::Part(one.fit))]
    });
    let texts = |texts: Vec<String>| Value::Texts(texts);
    let name = found.name;
    let items = vec![
        end(found.band.map(|band| band.0), "v40_low", "Lowest at 40 °C"),
        end(found.band.map(|band| band.1), "v40_high", "Highest at 40 °C"),
        Item::new("grades", "ISO VG", Value::Rows(grades.collect())),
        Item::new("asks", "Still to be asked", texts(found.asks.iter().map(|ask| ask.question().to_owned()).collect())),
        Item::new("standing", "Standing of the weakest step", Value::Text(found.standing.words().to_owned())),
        Item::new("plate", "The words", Value::Text(found.words.clone())),
        Item::new("possible", "May mean", texts(found.possible.iter().map(possibility).collect())),
        Item::new("sort", "Sort", name.map_or(Value::Nothing, |name| Value::Text(name.says.to_owned()))),
        Item::new(
            "look_for",
            "On a label look for",
            texts(name.map_or(Vec::new(), |name| name.look_for.iter().map(|&word| word.to_owned()).collect())),
        ),
        Item::new("cautions", "Do not", texts(found.cautions.iter().map(words::old_remedy).collect())),
    ];
    let mut out = Calculated { items, steps: found.steps, ..Calculated::default() };
    if let Some((low, high)) = found.band {
        let index = known.index.unwrap_or(USUAL_INDEX);
        for (name, v40) in [("thinnest", low), ("thickest", high)] {
            out.oils.extend(ViscosityLine::with_index(v40, index).ok().map(|line| (name.to_owned(), line.value)));
        }
        out.assume("a translation and no order: what the machine shows and what is known of it come first");
    }
    Ok(out)
}

fn possibility(one: &crate::old_name::Possibility) -> String {
    let [low, high] = [one.low, one.high].map(|end| digits_of(end.mm2_s(), 3));
    format!("{}: {low} to {high} mm²/s at 40 °C", one.says)
}

fn year(given: &Given<'_>) -> Result<Option<i32>, Refused> {
    let Some(year) = given.number("year")? else { return Ok(None) };
    if year.fract() == 0.0 && (1850.0..2100.0).contains(&year) {
        Ok(Some(year as i32))
    } else {
        Err(Refused::new(format!("--year is \"{year}\", which is no year of a plate; write it like 1946")))
    }
}

fn country(given: &Given<'_>) -> Result<Option<Country>, Refused> {
    let Some(text) = given.text("country") else { return Ok(None) };
    let known = Country::from_word(&text.trim().to_lowercase());
    known.map(Some).ok_or_else(|| Refused::new(format!("--country is \"{text}\"; it is one of us, uk, de, ru and cn")))
}
