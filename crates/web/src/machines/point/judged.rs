//! Will it do? Every oil of the shelf held against a point: the answer in a sentence, then each oil with its word, unfolding into why.

use advice::judge::{Judged, judge};
use advice::need::need;
use advice::verdict::Verdict as Word;
use advice::words;
use maud::{Markup, html};
use shop::chart::{Chart, Point};
use shop::shelf::Shelf;

use crate::parts::{Fold, Verdict};
use crate::{address, rules};

/// What a page says of the oils of a shelf at a point.
pub(super) fn section(chart: &Chart, point: &Point, shelf: &Shelf) -> Markup {
    let need = need(chart, point);
    let judged = judge(chart, point, shelf);
    html! {
        p { (words::answer(&need, &judged, shelf)) }
        @if let Some(band) = &need.band {
            p.quiet {
                "It wants " (words::band(band)) "."
                @if !need.suffer.is_empty() {
                    " That is a compromise: what it feeds wants nothing in common, and " (words::list(&need.suffer)) " would want another."
                }
            }
        }
        ul.judged { @for one in &judged { li { (line(one, shelf)) } } }
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
        p { a href=(rules::ADDRESS) { "All rules by which oils are judged" } }
        p.quiet { "Trade practice and sums, no permission: the maker's word where there is one, the data sheet and local rules come first." }
    }
}

fn line(one: &Judged, shelf: &Shelf) -> Markup {
    let name = shelf.oil(&one.oil).map_or(one.oil.as_str(), |oil| oil.name.as_str());
    html! {
        (word(one.verdict)) " " a href=(address::oil(&one.oil)) { (name) }
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
