//! How much oil keeps a slideway wet and, when it is told how the way lies, which grade.

use tribology::contact::slideway::{Orientation, Pace, Renewal, Weight, replacement, way_oil};
use tribology::quantity::Area;

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "way-oil",
    title: "Oil of a slideway",
    about: "How much oil an hour renews the film on a face from which it runs off: a thousandth of an inch over the whole face. With how \
            the way lies, what it carries and how fast it moves, the usual grades of way oil too.",
    words: None,
    options: &[
        Topic::once("area", "area of the largest face", "180cm2"),
        Topic::once("service", "service factor, 1 to 8", "1"),
        Topic::once("orientation", "horizontal, inclined or vertical", "horizontal"),
        Topic::once("weight", "light, medium or heavy", "medium"),
        Topic::once("pace", "creeping or moving", "moving"),
    ],
    examples: &["way-oil --area 180cm2", "way-oil --area 180cm2 --orientation vertical --weight light --pace moving"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let area = given.must::<Area>("area", None)?;
    let service = given.number("service")?.unwrap_or_else(|| {
        found.assume("service factor 1: light service; it goes up to 8");
        1.0
    });
    let flow = found.take(replacement(area, Renewal::OnceThrough, service)?);
    found.push(Item::quantity("ml_h", "Oil that renews the film", flow, "mL/h"));
    found.assume("a film of 0.001 in, lost and renewed each hour while the way works");
    if ["orientation", "weight", "pace"].into_iter().any(|name| given.has(name)) {
        let grades = grade(given, &mut found.assumed)?;
        let (thinnest, thickest) = found.take(grades);
        let number = |number: u32| Value::Whole(i64::from(number));
        found.push(Item::new("iso_vg_low", "Thinnest way oil, ISO VG", number(thinnest.number())));
        found.push(Item::new("iso_vg_high", "Thickest way oil, ISO VG", number(thickest.number())));
    }
    Ok(found)
}

type Grades = tribology::Answer<(tribology::oil::IsoGrade, tribology::oil::IsoGrade)>;

fn grade(given: &Given<'_>, assumed: &mut Vec<String>) -> Result<Grades, Refused> {
    use Orientation::{Horizontal, Inclined, Vertical};
    let lies = [("horizontal", Horizontal), ("inclined", Inclined), ("vertical", Vertical)];
    let carries = [("medium", Weight::Medium), ("light", Weight::Light), ("heavy", Weight::Heavy)];
    let moves = [("moving", Pace::Moving), ("creeping", Pace::Creeping)];
    let orientation = chosen(given, "orientation", &lies, assumed)?;
    let weight = chosen(given, "weight", &carries, assumed)?;
    Ok(way_oil(orientation, weight, chosen(given, "pace", &moves, assumed)?))
}

/// The choice that was typed; the first when nothing was, which is then said.
fn chosen<T: Copy>(
    given: &Given<'_>,
    name: &str,
    choices: &[(&'static str, T)],
    assumed: &mut Vec<String>,
) -> Result<T, Refused> {
    let Some(text) = given.text(name) else {
        assumed.push(format!("{name}: {}", choices[0].0));
        return Ok(choices[0].1);
    };
    let wanted = text.trim().to_lowercase();
    choices.iter().find(|(word, _)| *word == wanted).map(|(_, choice)| *choice).ok_or_else(|| {
        let words: Vec<_> = choices.iter().map(|(word, _)| *word).collect();
        Refused::new(format!("--{name} is \"{text}\"; it is one of {}", words.join(", ")))
    })
}
