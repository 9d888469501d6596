//! What follows from the choice that is looked at: who suffers, what becomes of each can, what to buy, and what is easily mixed up.

use advice::shelf_plan::{Choice, Fate, Given, Purchase, fates, mix_ups};
use advice::verdict::Verdict;
use advice::words;
use maud::{Markup, Render, html};

use super::View;
use crate::address;
use crate::machines::point::judged::word;
use crate::parts::{Cell, Column, Fold, Note, Style, Table};
use crate::phrase::capital;

pub(super) fn section(view: &View<'_>, bought: &[Purchase]) -> Markup {
    let oils = view.chosen.iter().flat_map(|choice| &choice.oils);
    html! {
        h2 { "With these" }
        ul { @for oil in oils { li { (view.name(oil)) ", " (words::count(points(view, oil), "point")) } } }
        @for mix_up in view.chosen.iter().flat_map(|choice| mix_ups(view.question, view.plan, choice)) {
            (Note { caution: "Easily mixed up.".into(), rest: format!("{}.", words::mix_up(view.plan, &mix_up)), ..Note::default() })
        }
        (suffering(view))
        (cans(view))
        (to_buy(view, bought))
    }
}

fn points(view: &View<'_>, oil: &shop::id::Id) -> usize {
    view.chosen.iter().flat_map(|choice| &choice.given).filter(|given| given.oil == *oil).count()
}

fn suffering(view: &View<'_>) -> Markup {
    let of = |verdict: Verdict| -> Vec<&Given> {
        view.chosen
            .iter()
            .flat_map(|choice: &&Choice| choice.suffers())
            .filter(|given| given.verdict == verdict)
            .collect()
    };
    let (stopgaps, served) = (of(Verdict::Stopgap), of(Verdict::Serves));
    html! {
        h3 { "Who suffers" }
        @if stopgaps.is_empty() {
            p { "Nobody gets along with a stopgap." }
        } @else {
            (table(view, "Points that get along with a stopgap", &stopgaps))
        }
        @if !served.is_empty() {
            (Fold::shut(
                format!("{} served, though another oil would suit better", words::count(served.len(), "point")),
                table(view, "Points that are served", &served),
            ))
        }
    }
}

fn table(view: &View<'_>, caption: &str, given: &[&Given]) -> Markup {
    let row = |given: &&Given| {
        let why = given.reasons.first().map(words::reason).unwrap_or_default();
        let better = if given.best > given.verdict { "" } else { "Nothing that may be chosen does more." };
        vec![
            Cell::Part(html! {
                a href=(address::point(&given.at.machine, &given.at.point)) { "(" (given.at.point) ") " (given.name) }
                small { (view.machine(&given.at.machine)) }
            }),
            Cell::Part(html! { (word(given.verdict)) " " (view.name(&given.oil)) }),
            Cell::Note(why, better.to_owned()),
        ]
    };
    Table {
        caption: caption.into(),
        columns: ["Point", "Gets", "Why no better"].map(|heading| Column::Words(heading.into())).into(),
        rows: given.iter().map(row).collect(),
        style: Style::Wide,
    }
    .render()
}

fn cans(view: &View<'_>) -> Markup {
    let fates = fates(view.question, view.plan, &view.chosen);
    let row = |(oil, fate): &(shop::id::Id, Fate)| {
        vec![Cell::Part(view.name(oil)), capital(&words::fate(view.plan, fate)).into()]
    };
    html! {
        @if !fates.is_empty() {
            h3 { "What becomes of each can" }
            (Table {
                caption: "What stands on the shelf now".into(),
                columns: ["On the shelf", "Becomes"].map(|heading| Column::Words(heading.into())).into(),
                rows: fates.iter().map(row).collect(),
                style: Style::Wide,
            })
            p.quiet { "Not needed is no reason to pour it away: use it up where it suits, or keep it closed for what is to come." }
        }
    }
}

fn to_buy(view: &View<'_>, bought: &[Purchase]) -> Markup {
    let units = view.settings.units;
    let row = |purchase: &Purchase| {
        let is_there = view.question.shelf.oil(&purchase.oil).is_some();
        let none = if is_there { "never counted" } else { "none" };
        let left =
            purchase.left.map_or_else(|| none.to_owned(), |left| words::amount(left, units).replace(' ', "\u{a0}"));
        vec![
            Cell::Part(view.name(&purchase.oil)),
            Cell::Note(words::amount(purchase.takes, units), words::taken(purchase, units)),
            left.into(),
            capital(&words::purchase(purchase, units)).into(),
        ]
    };
    html! {
        h3 { "To buy for a year" }
        (Table {
            caption: "What a year takes of each, less what is there, in whole packs".into(),
            columns: ["Oil", "A year takes", "There", "To buy"].map(|heading| Column::Words(heading.into())).into(),
            rows: bought.iter().map(row).collect(),
            style: Style::Wide,
        })
    }
}
