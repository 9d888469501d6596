//! The film of each bearing that a point feeds, and its warmth, over its speeds and at the shop's temperatures: a sentence, a plot, the same as
//! a table, and what would be worth measuring. No verdict hangs on it.

use advice::film::{Contact, Day, Filling, Film, InRoom, Kind, Room, STOP_C, warnings};
use advice::need::Place;
use advice::words;
use draw::{Across, Axis, Curve, Mark, Plot};
use maud::{Markup, PreEscaped, Render as _, html};
use tribology::Answer;
use tribology::math;
use tribology::quantity::{Rotation, Units, digits_of};

use super::judged::Held;
use crate::parts::{Cell, Column, Figure, Fold, Note, Style, Table};
use crate::phrase::{called, capital};

/// A bearing of which nobody measured the clearance, or that is oiled by hand, is never warned of.
pub(super) fn cautions(held: &Held<'_>) -> Markup {
    let [_, usual, _] = held.rooms;
    let found = warnings(held.chart, held.point, &held.need, held.shelf, &held.judged, usual);
    html! {
        @for one in &found {
            (Note {
                caution: format!("{}.", capital(&words::too_tight(one, held.settings.units))),
                rest: words::too_tight_remedy().to_owned(),
                ..Note::default()
            })
        }
    }
}

/// The films of the bearings that a point feeds, with the oil on hand that does best, each to unfold.
pub(super) fn section(held: &Held<'_>) -> Markup {
    let films = held.need.pairs.iter().zip(&held.films).filter_map(|((place, _), film)| Some((place, film.as_ref()?)));
    html! {
        @if let Some(filling) = &held.filling {
            @for (place, found) in films {
                @let name = place.pair.map_or_else(String::new, |pair| called(pair.name.as_ref(), &pair.id));
                (Fold::shut(
                    format!("{name}: film and warmth over its speeds"),
                    one(place, found, filling, &held.rooms, held.settings.units),
                ))
            }
        }
    }
}

fn one(place: &Place<'_>, found: &Answer<Film>, filling: &Filling, rooms: &[Room], units: Units) -> Markup {
    let film = &found.value;
    let usual = film.rooms.iter().find(|one| one.room.day == Day::Usual);
    html! {
        @if let Some(usual) = usual {
            p {
                "With " (filling.name) " on " (usual.room.day.words()) ", " (words::degrees(usual.room.air, units))
                ", and given all the oil it wants: " (words::regimes(usual, film.kind)) "; it runs at " (words::warmth(usual, units)) "."
                @if place.is_starved_by_design() { " Oiled as it is here it has less by design, and lives: no oil is judged by this." }
            }
        }
        @if rooms.iter().any(|room| room.is_assumed) {
            p.quiet { "How warm the shop is on such days nobody has said in the settings; it is taken as usual." }
        }
        @if let Some(plot) = plot(place, film, filling, rooms) { (plot) }
        (table(film, units))
        @if let Some(worth) = words::worth_measuring(&film.swing, film.kind, units) { p { "Worth measuring: " (worth) "." } }
        @if !film.swing.is_empty() {
            h3 { "How far what nobody measured moves it" }
            ul { @for one in &film.swing { li { (capital(&words::film_swing(one, film.kind, units))) "." } } }
        }
        h3 { "Taken as usual" }
        ul { @for one in &film.assumed { li { (capital(&words::film_assumed(one, units))) "." } } }
        @if film.kind == Kind::Rolling { p.quiet { "What its load adds to the warmth is left out." } }
        @for warning in &found.warnings { p.quiet { "Mind: " (words::warning(warning)) "." } }
        (Fold::shut("How its top speed was worked out", html! { ol { @for step in &found.steps { li { (words::step(step, units)) } } } }))
    }
}

/// Warmth against speed in each room, with the speeds at which the film changes on a usual day. Nothing for a bearing of one speed.
fn plot(place: &Place<'_>, film: &Film, filling: &Filling, rooms: &[Room]) -> Option<Markup> {
    let contact = Contact::of(place)?;
    let [slow, .., fast] = contact.speeds() else { return None };
    let curve = |room: &Room| Curve {
        name: room.day.word().to_owned(),
        points: contact.warmth(filling, *room).iter().map(|(speed, at)| (speed.rpm(), at.celsius())).collect(),
    };
    let curves: Vec<Curve> = rooms.iter().map(curve).filter(|curve| curve.points.len() > 1).collect();
    let all = || curves.iter().flat_map(|curve| curve.points.iter().map(|(_, celsius)| *celsius));
    let (low, high) = (all().fold(f64::INFINITY, f64::min), all().fold(f64::NEG_INFINITY, f64::max));
    let ends = [5.0 * (low / 5.0).floor(), (5.0 * (high / 5.0).ceil()).max(5.0 * (low / 5.0).floor() + 20.0)];
    let usual = film.rooms.iter().find(|one| one.room.day == Day::Usual)?;
    let mut marks: Vec<Mark> = words::film_spans(usual, film.kind)
        .into_iter()
        .map(|(word, from)| Mark { name: word.to_owned(), at: Across::At(from.rpm()) })
        .collect();
    if film.kind == Kind::Plain && ends[1] > STOP_C {
        marks.push(Mark { name: format!("stop at {STOP_C} °C"), at: Across::Level(STOP_C) });
    }
    let plot = Plot {
        title: "Warmth and film against speed".into(),
        description: format!(
            "The faster, the warmer, on a cold morning, a usual and a warm day. On a usual day the film is: {}.",
            words::regimes(usual, film.kind)
        ),
        across: Axis::by("rpm", [slow.rpm(), fast.rpm()], named(contact.speeds()), math::log10),
        up: Axis::even("°C", ends, 5),
        bands: Vec::new(),
        marks,
        curves,
    };
    let id = format!("film-{}", place.pair?.id);
    let caption = "Dashed across: from there on the film is so on a usual day. The table has the same figures.";
    Some(Figure { drawing: PreEscaped(plot.svg(&id)), caption: caption.into() }.render())
}

/// Speeds that are named along the axis: the slowest and the fastest, and those between that stand clear of their neighbours.
fn named(speeds: &[Rotation]) -> Vec<(f64, String)> {
    let [slow, .., fast] = speeds else { return Vec::new() };
    let all = math::ln(fast.per_second() / slow.per_second());
    let apart = |a: &Rotation, b: &Rotation| math::ln(b.per_second() / a.per_second()) > CLEAR * all;
    let mut named = vec![*slow];
    for speed in speeds {
        if named.last().is_some_and(|last| apart(last, speed)) && apart(speed, fast) {
            named.push(*speed);
        }
    }
    named.push(*fast);
    named.into_iter().map(|speed| (speed.rpm(), digits_of(speed.rpm(), 3))).collect()
}

/// So much of the axis stands between named speeds.
const CLEAR: f64 = 0.15;

/// The film and the warmth at each speed in each room.
fn table(film: &Film, units: Units) -> Table {
    let heading = |one: &InRoom| {
        Column::Words(capital(&format!("{}, {}", one.room.day.words(), words::degrees(one.room.air, units))))
    };
    let mut speeds: Vec<Rotation> = film.rooms.iter().flat_map(|one| one.at.iter().map(|(speed, _)| *speed)).collect();
    speeds.sort_by(|a, b| a.per_second().total_cmp(&b.per_second()));
    speeds.dedup();
    let cell = |one: &InRoom, speed: Rotation| {
        let found = one.at.iter().find(|(own, _)| *own == speed).map(|(_, state)| state);
        Cell::from(match found {
            Some(Some(state)) => {
                format!("{}, {}", words::regime(state.regime, film.kind), words::degrees(state.temperature, units))
            }
            Some(None) => "hotter and hotter".to_owned(),
            None => "not known".to_owned(),
        })
    };
    let row = |speed: &Rotation| {
        let first = Cell::from(format!("{} rpm", digits_of(speed.rpm(), 3)));
        std::iter::once(first).chain(film.rooms.iter().map(|one| cell(one, *speed))).collect()
    };
    Table {
        caption: "The same at each speed".into(),
        columns: std::iter::once(Column::Words("Speed".into())).chain(film.rooms.iter().map(heading)).collect(),
        rows: speeds.iter().map(row).collect(),
        style: Style::Wide,
    }
}
