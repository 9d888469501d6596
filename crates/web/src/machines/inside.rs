//! What is in a reservoir or a greased point: the answer in a sentence, why, and how that was decided. The pages of both show it.

use advice::contents::{Act, Fit, Inside, STANDING, TABLE, before_topping_up, in_greased_point, in_reservoir};
use advice::judge::Judged;
use advice::verdict::Verdict;
use advice::words;
use maud::{Markup, Render, html};
use shop::chart::{Point, Reservoir};
use shop::contents::Contents;
use shop::shelf::Shelf;

use super::point::judged::word;
use crate::parts::{Cell, Column, Fold, Note, Style, Table};
use crate::phrase::capital;
use crate::rules;
use crate::shop_state::{View, on_clock};

/// What is in a reservoir of this example.
pub(super) fn of_reservoir(view: &View, reservoir: &Reservoir) -> Inside {
    in_reservoir(&view.machine.chart, reservoir, &view.machine.contents(&reservoir.id), &view.shelf)
}

/// The answer: what is in and what to do, with the reasons under it.
pub(super) fn answer(view: &View, inside: &Inside) -> Markup {
    let since = inside.since.map(|since| on_clock(&view.moment, since).date().strftime("%-d %B %Y").to_string());
    let what = words::contents(inside, &view.shelf, since.as_deref());
    let act = words::contents_act(inside);
    html! {
        @if inside.act == Act::DoNotRun {
            p { (what) }
            (Note { caution: act, ..Note::default() })
        } @else {
            p { (what) " " (act) }
        }
        @if let Some(replaced) = words::contents_replaced(inside) { p.quiet { (replaced) } }
        @if !inside.harms.is_empty() {
            (Fold::shut("Why", html! {
                ul.judged {
                    @for harm in &inside.harms {
                        li { (word(harm.reason.cap)) " " (words::contents_harm(harm, &view.machine.chart, &view.shelf)) ". " (words::reason(&harm.reason)) "." }
                    }
                }
                (table())
            }))
        }
    }
}

/// A sentence for the page of a point: what is in its reservoir, or in the point itself where it takes grease, when that is wrong or not
/// known. Nothing where all is well.
pub(super) fn doubt(view: &View, point: &Point) -> Option<Markup> {
    let chart = &view.machine.chart;
    let reservoir = point.reservoir.as_ref().and_then(|id| chart.reservoir(id));
    let inside = match reservoir {
        Some(reservoir) => of_reservoir(view, reservoir),
        None if point.takes_grease() => in_greased_point(chart, point, &view.machine.contents(&point.id), &view.shelf),
        None => return None,
    };
    if matches!(inside.fit(), Fit::Right | Fit::Serves) {
        return None;
    }
    Some(answer(view, &inside))
}

/// What to be wary of before each oil that does no harm is put in on top of what is in.
pub(super) fn before(inside: &Inside, contents: &Contents, judged: &[Judged], shelf: &Shelf) -> Markup {
    let usable = judged.iter().filter(|one| one.verdict > Verdict::Never).filter_map(|one| shelf.oil(&one.oil));
    let warned: Vec<_> = usable.map(|oil| (oil, before_topping_up(inside, contents, oil, shelf))).collect();
    html! {
        @if !warned.is_empty() {
            (Fold::shut("Before it is put in on top of what is there", html! {
                ul {
                    @for (oil, warnings) in &warned {
                        li {
                            (oil.name) ": "
                            @if warnings.is_empty() { "nothing known speaks against it." }
                            @for warning in warnings { (words::reason(warning)) ". " }
                        }
                    }
                }
            }))
        }
    }
}

/// How it is decided what to do about what is in.
fn table() -> Markup {
    let rows = TABLE.iter().map(|row| {
        vec![capital(row.verdict).into(), capital(row.place).into(), Cell::from(capital(&row.act.to_string()))]
    });
    let table = Table {
        caption: format!(
            "What is done about an oil that is in already ({})",
            words::known(STANDING, "common practice, no source")
        ),
        columns: ["How it does", "Where", "What to do"].map(|heading| Column::Words(heading.into())).into(),
        rows: rows.collect(),
        style: Style::Working,
    };
    html! { (table.render()) p { a href=(rules::ADDRESS) { "The rules by their numbers" } } }
}
