//! Will it do? Every oil of the shelf held against a point: the answer in a sentence, then each oil with its word, unfolding into why.

use advice::film::{Filling, Film, Room, at_work, rooms};
use advice::judge::{Judged, judge};
use advice::need::{Need, cold_feed, feed, movable, need, plate, unwanted, wants};
use advice::verdict::Verdict as Word;
use advice::words;
use maud::{Markup, html};
use shop::chart::{Chart, Point};
use shop::shelf::Shelf;
use store::Settings;
use tribology::Answer;

use super::{body, film};
use crate::parts::{Fold, Verdict};
use crate::phrase::{called, capital};
use crate::{address, rules};

/// A shelf held against a point, worked out once for all that the page says of it.
pub(super) struct Held<'a> {
    pub(super) chart: &'a Chart,
    pub(super) point: &'a Point,
    pub(super) shelf: &'a Shelf,
    pub(super) settings: &'a Settings,
    pub(super) need: Need<'a>,
    pub(super) judged: Vec<Judged>,
    /// The oil with which films are told.
    pub(super) filling: Option<Filling>,
    pub(super) rooms: [Room; 3],
    /// One for each pair.
    pub(super) films: Vec<Option<Answer<Film>>>,
}

impl<'a> Held<'a> {
    fn of(chart: &'a Chart, point: &'a Point, shelf: &'a Shelf, settings: &'a Settings) -> Self {
        let need = need(chart, point);
        let judged = judge(chart, point, shelf);
        let filling = Filling::best(chart, point, shelf, &judged);
        let rooms = rooms(&settings.conditions);
        let films = need.pairs.iter().map(|(place, _)| advice::film::film(place, filling.as_ref()?, &rooms)).collect();
        Self { chart, point, shelf, settings, need, judged, filling, rooms, films }
    }
}

/// What a page says of the oils of a shelf at a point.
pub(crate) fn section(chart: &Chart, point: &Point, shelf: &Shelf, settings: &Settings) -> Markup {
    let held = Held::of(chart, point, shelf, settings);
    let Held { need, judged, .. } = &held;
    let moved = settings
        .conditions
        .cold
        .and_then(|cold| Some(words::movable(movable(feed(chart, point)?, cold)?, point.method, cold, settings.units)));
    let unwanted = unwanted(need);
    html! {
        p { (words::answer(need, judged, shelf)) }
        (film::cautions(&held))
        @if let Some(band) = &need.band {
            p.quiet {
                "It wants " (words::band(band)) "."
                @if !need.suffer.is_empty() {
                    " That is a compromise: what it feeds wants nothing in common, and " (words::list(&need.suffer)) " would want another."
                }
            }
        }
        @if let Some(plate) = plate(chart, point) { p.quiet { (words::plate(&plate, need.band.as_ref())) } }
        @if let Some(moved) = moved { p.quiet { (moved) } }
        @for care in words::care(need) { p { b { "Take care. " } (care) } }
        ul.judged { @for one in judged { li { (line(one, shelf, (chart, point), settings)) } } }
        (Fold::shut("What each moving pair wants", html! {
            ul {
                @for ((place, band), film) in need.pairs.iter().zip(&held.films) {
                    @let name = place.pair.map_or_else(|| "What it feeds, which nobody knows".to_owned(), |pair| called(pair.name.as_ref(), &pair.id));
                    li {
                        b { (name) } ": "
                        @if let Some(wants) = wants(place) { (wants) "; " }
                        @match band {
                            Some(band) => {
                                (words::band(band)) "; " (band.source) " (" (band.standing.words()) ")"
                                @let work = at_work(place, film.as_ref().map(|film| &film.value), held.rooms[1]);
                                @if let Some(says) = words::at_work(&work, band, settings.units) { ". At work " (says) }
                                @if place.is_by_kind_alone() { ". By its kind alone, for nobody has written down size, speed or load" }
                            }
                            None => "not judged by body",
                        }
                    }
                }
            }
        }))
        @if !unwanted.is_empty() {
            (Fold::shut("What must not be in it", html! { ul { @for one in &unwanted { li { (capital(&words::unwanted(one))) "." } } } }))
        }
        (film::section(&held))
        @if let Some(body) = body::section(&held) { (body) }
        p { a href=(rules::ADDRESS) { "All rules by which oils are judged" } }
        p.quiet { "Trade practice and sums, no permission: the maker's word where there is one, the data sheet and local rules come first." }
    }
}

fn line(one: &Judged, shelf: &Shelf, (chart, point): (&Chart, &Point), settings: &Settings) -> Markup {
    let oil = shelf.oil(&one.oil);
    let name = oil.map_or(one.oil.as_str(), |oil| oil.name.as_str());
    let cold = settings.conditions.cold.filter(|_| one.verdict > Word::Never);
    let moved = cold.and_then(|cold| cold_feed(feed(chart, point)?, oil?, cold));
    let cold = moved.and_then(|moved| words::cold_feed(moved.value, point.method, settings.units));
    html! {
        (word(one.verdict)) " " a href=(address::oil(&one.oil)) { (name) }
        @if let Some(cold) = cold { p.quiet { "On a cold morning: " (cold) "." } }
        (Fold::shut("Why", why(one, settings)))
    }
}

/// What made a verdict: each reason with what was seen, and how the body was held against what each pair wants.
fn why(one: &Judged, settings: &Settings) -> Markup {
    html! {
        ul {
            @if one.reasons.is_empty() { li { "Nothing speaks against it." } }
            @for reason in &one.reasons {
                li {
                    b { (capital(&reason.cap.to_string())) @if reason.cap > Word::Never { " at best" } ". " }
                    (words::reason(reason)) "."
                    @if !reason.seen.is_empty() {
                        small { (reason.seen.iter().map(|seen| words::seen(seen, settings.units)).collect::<Vec<_>>().join("; ")) }
                    }
                }
            }
            @for (pair, step) in &one.steps { li { (called(None, pair)) ": " (words::step(step, settings.units)) } }
        }
    }
}

pub(crate) fn word(verdict: Word) -> Verdict {
    match verdict {
        Word::Suits => Verdict::Suits,
        Word::Serves => Verdict::Serves,
        Word::Stopgap => Verdict::Stopgap,
        Word::Never => Verdict::Never,
    }
}
