//! Will it do? Every oil of the shelf held against a point: the answer in a sentence, then each oil with its word, unfolding into why.

use advice::judge::{Judged, judge};
use advice::need::{cold_feed, need};
use advice::verdict::Verdict as Word;
use advice::words;
use maud::{Markup, html};
use shop::chart::{Chart, Point};
use shop::shelf::Shelf;
use store::Settings;

use super::{body, film};
use crate::parts::{Fold, Verdict};
use crate::{address, rules};

/// What a page says of the oils of a shelf at a point.
pub(super) fn section(chart: &Chart, point: &Point, shelf: &Shelf, settings: &Settings) -> Markup {
    let need = need(chart, point);
    let judged = judge(chart, point, shelf);
    html! {
        p { (words::answer(&need, &judged, shelf)) }
        (film::cautions(chart, point, &need, shelf, &judged, settings))
        @if let Some(band) = &need.band {
            p.quiet {
                "It wants " (words::band(band)) "."
                @if !need.suffer.is_empty() {
                    " That is a compromise: what it feeds wants nothing in common, and " (words::list(&need.suffer)) " would want another."
                }
            }
        }
        ul.judged { @for one in &judged { li { (line(one, shelf, point, settings)) } } }
        (Fold::shut("What each moving pair wants", html! {
            ul {
                @for (place, band) in &need.pairs {
                    @let name = place.pair.map_or("What it feeds, which nobody knows", |pair| pair.name.as_deref().unwrap_or(pair.id.as_str()));
                    li {
                        (name) ": "
                        @match band {
                            Some(band) => { (words::band(band)) "; " (band.source) " (" (band.standing.words()) ")" }
                            None => "not judged by body",
                        }
                    }
                }
            }
        }))
        (film::section(chart, point, &need, shelf, &judged, settings))
        @if let Some(body) = body::section(point, &need, shelf, &judged, settings) { (body) }
        p { a href=(rules::ADDRESS) { "All rules by which oils are judged" } }
        p.quiet { "Trade practice and sums, no permission: the maker's word where there is one, the data sheet and local rules come first." }
    }
}

fn line(one: &Judged, shelf: &Shelf, point: &Point, settings: &Settings) -> Markup {
    let oil = shelf.oil(&one.oil);
    let name = oil.map_or(one.oil.as_str(), |oil| oil.name.as_str());
    let cold = settings.conditions.cold.filter(|_| one.verdict > Word::Never);
    let feed = cold.and_then(|cold| cold_feed(point, oil?, cold));
    let cold = feed.and_then(|feed| words::cold_feed(feed, &point.method.to_string(), settings.units));
    html! {
        (word(one.verdict)) " " a href=(address::oil(&one.oil)) { (name) }
        @if let Some(cold) = cold { p.quiet { "On a cold morning: " (cold) "." } }
        @if !one.reasons.is_empty() {
            (Fold::shut("Why", html! { ul { @for reason in &one.reasons { li { (words::reason(reason)) "." } } } }))
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
