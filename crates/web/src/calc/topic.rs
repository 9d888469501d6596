//! `GET /calc/{topic}`: one sum. What is asked stands in the address, so that an answer can be kept and sent; the form and the answer are
//! made from the topic, and nothing is worked out here.

use advice::topic::{Asked, Calculated, Form, Given, Item, Sketch, Times, Topic, Value, YES};
use advice::words;
use axum::extract::{Path, Query, State};
use draw::{Axis, Band, Curve, Oil, Plot, viscosity_chart};
use maud::{Markup, PreEscaped, Render, html};
use store::Settings;
use tribology::feed::{FEEDS, Feed, limit};
use tribology::quantity::{Kind, Quantity as _, Temperature, Unit, Units, digits_of, said, usual_unit};

use crate::parts::{Cell, Choice, Column, Entry, Field, Figure, Fold, Page, Section, Style, Table, TitleBlock};
use crate::shop_state::Shop;
use crate::{Error, address, phrase};

/// What stands in the address behind the question mark.
type Pairs = Vec<(String, String)>;

/// The name of what is typed without an option.
const WORDS: &str = "words";
/// Temperatures at which the table under a chart says how thick an oil is, °C.
const TABLE: [f64; 7] = [0.0, 10.0, 20.0, 30.0, 40.0, 60.0, 100.0];

/// `GET /calc/{topic}`
pub(crate) async fn show(
    State(shop): State<Shop>,
    Path(name): Path<String>,
    Query(pairs): Query<Pairs>,
) -> Result<Markup, Error> {
    let topic = Topic::named(&name).ok_or(Error::Unknown { what: "sum", asked: name, near: None })?;
    let settings = shop.store.settings().await?;
    Ok(page(topic, &settings, &pairs).render())
}

fn page(topic: &'static Topic, settings: &Settings, pairs: &Pairs) -> Page {
    let given = given(topic, pairs);
    let asked = pairs.iter().any(|(_, value)| !value.trim().is_empty());
    let answer = asked.then(|| given.answer());
    let state = match &answer {
        None => "nothing asked yet",
        Some(Ok(_)) => "answered",
        Some(Err(_)) => "to be mended",
    };
    Page {
        title: topic.title.into(),
        section: Some(Section::Shelf),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Work it out", topic.title.to_owned()), ("State", state.to_owned())]),
        body: html! {
            h1 { (topic.title) }
            @match &answer {
                Some(Ok(found)) => (answered(found, settings)),
                Some(Err(refused)) => {
                    div.form-mend role="alert" { h2 { "No answer yet" } p { (phrase::capital(&refused.to_string())) "." } }
                }
                None => {}
            }
            p.quiet { (topic.about) }
            form.form method="get" action=(super::address(topic.name)) {
                @if let Some(words) = topic.words { (line(&words, WORDS, 1, &typed(pairs, WORDS).join(" "))) }
                @for option in topic.options { (lines(option, pairs)) }
                div.form-acts { button.button.button-main { "Work it out" } }
            }
            (Fold::shut("Examples", examples(topic)))
        },
    }
}

fn given(topic: &'static Topic, pairs: &Pairs) -> Given<'static> {
    let mut given = Given::new(topic);
    for (name, value) in pairs {
        if name == WORDS {
            given.add_words(value);
        } else if let Some(asked) = topic.options.iter().find(|asked| asked.name == name) {
            given.add(asked.name, value);
        }
    }
    given
}

fn typed<'p>(pairs: &'p Pairs, name: &str) -> Vec<&'p str> {
    pairs
        .iter()
        .filter(|(own, value)| own == name && !value.trim().is_empty())
        .map(|(_, value)| value.as_str())
        .collect()
}

/// The lines of an option: one, or as many as were typed and one more, two at least.
fn lines(asked: &Asked, pairs: &Pairs) -> Markup {
    let typed = typed(pairs, asked.name);
    let count = if asked.times == Times::Once { 1 } else { (typed.len() + 1).max(2) };
    html! { @for number in 0..count { (line(asked, asked.name, number + 1, typed.get(number).unwrap_or(&""))) } }
}

fn line(asked: &Asked, name: &str, number: usize, value: &str) -> Field {
    let label = if number > 1 { format!("{}, {number}", asked.label) } else { asked.label.to_owned() };
    let (hint, entry) = match asked.form {
        Form::File(_) => ("as in the example below".to_owned(), Entry::Text),
        Form::Flag => (String::new(), Entry::Several(vec![Choice::new(YES, "Yes")])),
        Form::Typed => {
            (format!("such as {}", asked.example), if name == WORDS { Entry::Line } else { Entry::Quantity })
        }
    };
    Field {
        name: name.to_owned(),
        form: if number > 1 { format!("n{number}") } else { String::new() },
        label: phrase::capital(&label),
        hint,
        entry,
        value: value.to_owned(),
        fault: None,
    }
}

fn examples(topic: &Topic) -> Markup {
    html! { ul { @for example in topic.examples { li { a href=(of_example(topic, example)) { (example) } } } } }
}

/// The address that asks what a line of the command line asks; in place of a file's name stands a content.
fn of_example(topic: &Topic, example: &str) -> String {
    if let Some(Form::File(content)) = topic.words.map(|asked| asked.form) {
        return address::with_query(&super::address(topic.name), &[(WORDS, content)]);
    }
    let is_flag = |name: &str| topic.options.iter().any(|asked| asked.name == name && asked.form == Form::Flag);
    let mut pairs: Vec<(&str, String)> = Vec::new();
    let mut words = example.split(' ').skip(1);
    while let Some(word) = words.next() {
        match (word.strip_prefix("--"), pairs.last_mut()) {
            (Some(option), _) if is_flag(option) => pairs.push((option, YES.to_owned())),
            (Some(option), _) => pairs.push((option, words.next().unwrap_or_default().to_owned())),
            (None, Some((WORDS, said))) => {
                said.push(' ');
                said.push_str(word);
            }
            (None, _) => pairs.push((WORDS, word.to_owned())),
        }
    }
    let pairs: Vec<(&str, &str)> = pairs.iter().map(|(name, value)| (*name, value.as_str())).collect();
    address::with_query(&super::address(topic.name), &pairs)
}

fn answered(found: &Calculated, settings: &Settings) -> Markup {
    let units = settings.units;
    html! {
        (results(&found.items, units))
        @for warning in &found.warnings { p.note { "Mind: " (words::warning(warning)) "." } }
        @if !found.oils.is_empty() { (chart(found, settings)) }
        @for (number, sketch) in found.plots.iter().enumerate() { (plot(sketch, number)) }
        @if !found.assumed.is_empty() {
            h2 { "Assumed" }
            ul { @for assumed in &found.assumed { li { (phrase::capital(assumed)) "." } } }
        }
        (Fold::shut("How this was worked out", html! {
            ol { @for step in &found.steps { li { (words::step(step, units)) } } }
        }))
    }
}

fn results(items: &[Item], units: Units) -> Table {
    let row = |[label, value]: [String; 2]| vec![Cell::from(phrase::capital(&label)), Cell::from(value)];
    Table {
        caption: "The answer".into(),
        columns: ["What", "Found"].map(|heading| Column::Words(heading.into())).into(),
        rows: words::lines(&shown(items), units).into_iter().map(row).collect(),
        style: Style::Answer,
    }
}

/// Results without those of which there is none.
fn shown(items: &[Item]) -> Vec<Item> {
    let empty = |value: &Value| {
        matches!(value, Value::Texts(texts) if texts.is_empty())
            || matches!(value, Value::Rows(rows) if rows.is_empty())
            || matches!(value, Value::Named(named) if named.is_empty())
    };
    items.iter().filter(|item| !empty(&item.value)).cloned().collect()
}

/// A plot of the answer, and a few of its points as a table.
fn plot(sketch: &Sketch, number: usize) -> Markup {
    let plot = Plot {
        title: sketch.title.clone(),
        description: sketch.says.to_owned(),
        across: Axis::even(sketch.across.0, sketch.across.1, 4),
        up: Axis::even(sketch.up.0, sketch.up.1, 5),
        bands: Vec::new(),
        marks: Vec::new(),
        curves: sketch
            .curves
            .iter()
            .map(|(name, points)| Curve { name: (*name).to_owned(), points: points.clone() })
            .collect(),
    };
    let columns = std::iter::once(Column::Figures(sketch.across.0.to_owned())).chain(
        sketch.curves.iter().map(|(name, _)| Column::Figures(format!("{}, {}", phrase::capital(name), sketch.up.0))),
    );
    let shown = sketch.curves.first().map_or(&[][..], |(_, points)| points);
    // Ten rows or so say what a curve does.
    let step = (shown.len() / 10).max(1);
    let rows = shown.iter().step_by(step).enumerate().map(|(at, (x, _))| {
        let of = |points: &Vec<(f64, f64)>| points.get(step * at).map_or_else(String::new, |(_, y)| digits_of(*y, 3));
        let figures = sketch.curves.iter().map(|(_, points)| Cell::from(of(points)));
        std::iter::once(Cell::from(digits_of(*x, 3))).chain(figures).collect()
    });
    html! {
        h2 { (sketch.title) }
        (Figure { drawing: PreEscaped(plot.svg(&format!("plot-{number}"))), caption: sketch.says.to_owned() })
        (Table { caption: "The same as figures".into(), columns: columns.collect(), rows: rows.collect(), style: Style::Working })
    }
}

/// The chart of the oils with the shop's temperatures, and the same as a table.
fn chart(found: &Calculated, settings: &Settings) -> Markup {
    let oils: Vec<Oil> = found.oils.iter().map(|(name, line)| Oil { name: name.clone(), line: *line }).collect();
    html! {
            (Figure {
                drawing: PreEscaped(viscosity_chart(&oils, &marks(settings), &bands()).svg("chart")),
                caption: "The warmer, the thinner. Grey: what a wick still lifts, and where can, starting pump and splash begin to fail.".into(),
            })
            (thickness(&oils, settings.units))
    (coldest(&oils, settings.units))
        }
}

/// The shop's temperatures.
pub(crate) fn marks(settings: &Settings) -> Vec<(String, Temperature)> {
    let conditions = settings.conditions;
    let all = [("cold", conditions.cold), ("usual", conditions.usual), ("warm", conditions.warm)];
    all.into_iter()
        .filter_map(|(name, at)| at.map(|at| (format!("{name} {}", degrees(at, settings.units)), at)))
        .collect()
}

/// What ways of feeding can do.
pub(crate) fn bands() -> Vec<Band> {
    let failing =
        |name: &str, feed: Feed| Band { name: name.into(), ends: [limit(feed).easy.mm2_s(), limit(feed).most.mm2_s()] };
    vec![
        Band { name: "a wick lifts it".into(), ends: [0.0, limit(Feed::Wick).most.mm2_s()] },
        failing("can", Feed::Can),
        failing("pump", Feed::PumpStart),
        failing("splash", Feed::Splash),
    ]
}

/// How thick oils are at temperatures of the year.
pub(crate) fn thickness(oils: &[Oil], units: Units) -> Markup {
    let heading = |oil: &Oil| Column::Figures(format!("{}, mm²/s", phrase::capital(&oil.name)));
    let at = |celsius: f64| {
        let at = Temperature::from_celsius(celsius);
        let cells = oils.iter().map(|oil| {
            let unit = Unit::find(Kind::KinematicViscosity, "mm2/s").expect("the table of units has it");
            Cell::from(said(oil.line.at(at), unit, 3).trim_end_matches(" mm²/s").to_owned())
        });
        std::iter::once(Cell::from(degrees(at, units).replace(' ', "\u{a0}"))).chain(cells).collect::<Vec<_>>()
    };
    let table = Table {
        caption: "How thick at which temperature".into(),
        columns: std::iter::once(Column::Words("At".into())).chain(oils.iter().map(heading)).collect(),
        rows: TABLE.into_iter().map(at).collect(),
        style: Style::Working,
    };
    table.render()
}

/// The coldest at which each way of feeding still gives oils.
pub(crate) fn coldest(oils: &[Oil], units: Units) -> Markup {
    let coldest = |feed: Feed| {
        let cells = oils.iter().map(|oil| {
            let at = oil.line.temperature(limit(feed).most);
            Cell::from(at.map_or_else(|_| "not known".to_owned(), |at| degrees(at.value, units)))
        });
        std::iter::once(Cell::from(feed_name(feed))).chain(cells).collect::<Vec<_>>()
    };
    let table = Table {
        caption: "Too cold below, by common practice and memory".into(),
        columns: std::iter::once(Column::Words("Fed by".into()))
            .chain(oils.iter().map(|oil| Column::Figures(phrase::capital(&oil.name))))
            .collect(),
        rows: FEEDS.into_iter().map(coldest).collect(),
        style: Style::Working,
    };
    table.render()
}

fn feed_name(feed: Feed) -> &'static str {
    match feed {
        Feed::Can => "Hand can",
        Feed::Wick => "Wick",
        Feed::Felt => "Felt",
        Feed::Drip => "Drip",
        Feed::Ring => "Ring",
        Feed::Splash => "Splash",
        Feed::Plunger => "Plunger pump",
        Feed::MeterUnit => "Meter unit",
        Feed::Suction => "Strainer and suction line",
        Feed::PumpStart => "Gear pump, for a start",
        Feed::Pump => "Running pump",
    }
}

fn degrees(at: Temperature, units: Units) -> String {
    let unit = usual_unit(Kind::Temperature, units, at.si());
    let number = format!("{:.0}", unit.from_si(at.si())).replace('-', "−");
    let number = if number == "−0" { "0".to_owned() } else { number };
    format!("{number} {}", unit.symbol)
}
