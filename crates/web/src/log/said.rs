//! Entries in words: when, of what, what, by whom; and the button that takes one back.

use advice::round::{Act, act, serving};
use maud::{Markup, Render, html};
use shop::chart::{Chart, Point};
use shop::fault::nearest;
use shop::id::Id;
use shop::logbook::{Body, Entry, Kind, Subject};
use shop::snapshot::ShopSnapshot;

use super::corrections;
use crate::parts::{Cell, Column, Facts, Link, Style, Table};
use crate::phrase::{called, capital, small};
use crate::shop_state::{Shop, when};
use crate::{Error, address};

/// What the things of a shop are called.
pub(crate) struct Names(ShopSnapshot);

/// The column that says where.
const WHERE: usize = 1;

/// What a kind of entry is called.
pub(super) fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Dosed => "Oiled",
        Kind::SignSeen => "Sign seen",
        Kind::SignMissing => "Sign not seen",
        Kind::NotReached => "Not reached",
        Kind::Ran => "Ran",
        Kind::Level => "Level read",
        Kind::Filled => "Filled",
        Kind::Drained => "Drained",
        Kind::Opening => "Opening stock",
        Kind::Counted => "Counted",
        Kind::Bought => "Bought",
        Kind::Used => "Used",
        Kind::ThrownAway => "Thrown away",
        Kind::Note => "Note",
        Kind::Withdrawn => "Taken back",
    }
}

/// How much of an entry is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Told {
    /// Where it was and what was done.
    WhereAndWhat,
    /// What was done, on a page that says where.
    What,
}

/// The entries as a table. `hidden` goes with each button.
pub(crate) async fn rows(
    shop: &Shop,
    names: &Names,
    entries: &[Entry],
    told: Told,
    hidden: &[(String, String)],
) -> Result<Table, Error> {
    let mut rows = Vec::new();
    for entry in entries {
        let mut what = names.what(entry);
        if let (Body::Withdrawn, Some(of)) = (&entry.said.body, entry.said.supersedes) {
            what = format!("Taken back: {}", small(&names.what(&shop.store.entry(of).await?)));
        }
        let gone = match entry.superseded_by {
            Some(by) if shop.store.entry(by).await?.said.body.kind() == Kind::Withdrawn => Some("taken back"),
            Some(_) => Some("put right"),
            None => None,
        };
        let mut row = names.row(entry, &what, gone, hidden);
        if told == Told::What {
            row.remove(WHERE);
        }
        rows.push(row);
    }
    let mut columns = ["When", "Where", "What", "By"].map(|heading| Column::Words(heading.into())).to_vec();
    columns.push(Column::Acts("Mistake?".into()));
    if told == Told::What {
        columns.remove(WHERE);
    }
    Ok(Table { caption: "Newest first".into(), columns, rows, style: Style::Wide })
}

impl Names {
    pub(crate) fn of(snapshot: ShopSnapshot) -> Self {
        Self(snapshot)
    }

    /// The machine of this id.
    ///
    /// # Errors
    /// [`Error::Unknown`] with the nearest id.
    pub(super) fn machine(&self, asked: &str) -> Result<&Id, Error> {
        let ids = || self.0.machines.iter().map(|machine| &machine.id);
        ids().find(|id| id.as_str() == asked).ok_or_else(|| {
            let near = nearest(asked, ids().map(Id::as_str)).and_then(|near| Id::new(near).ok());
            let near = near.map(|id| (address::machine(&id), self.machine_name(&id)));
            Error::Unknown { what: "machine", asked: asked.to_owned(), near }
        })
    }

    pub(super) fn machines(&self) -> impl Iterator<Item = (&Id, &str)> {
        self.0.machines.iter().map(|machine| (&machine.id, machine.chart.machine.name.as_str()))
    }

    pub(super) fn machine_name(&self, id: &Id) -> String {
        self.chart(id).map_or_else(|| id.to_string(), |chart| chart.machine.name.clone())
    }

    fn chart(&self, machine: &Id) -> Option<&Chart> {
        self.0.machine(machine).map(|machine| &machine.chart)
    }

    /// An entry by itself.
    pub(super) fn told(&self, entry: &Entry) -> Facts {
        Facts::new()
            .say("When", Some(capital(&when(&self.0.moment, entry.said.happened))))
            .say("Where", Some(self.subject(&entry.said.subject)))
            .say("What", Some(self.what(entry)))
            .say("By", Some(entry.said.by.clone()))
    }

    /// The cells of an entry; `gone` says what became of it when it counts no more.
    fn row(&self, entry: &Entry, what: &str, gone: Option<&str>, hidden: &[(String, String)]) -> Vec<Cell> {
        let struck = |text: Markup| {
            if gone.is_some() {
                html! { s { (text) } }
            } else {
                text
            }
        };
        let mistake = if let Some(gone) = gone {
            html! { (gone) }
        } else if entry.said.body.kind() == Kind::Withdrawn {
            html! {}
        } else {
            let about = format!("entry {}, {what}", entry.id);
            Link::new(corrections::address(hidden, entry.id), "Put right").about(&about)
        };
        vec![
            Cell::Part(struck(capital(&when(&self.0.moment, entry.said.happened)).render())),
            Cell::Part(struck(self.subject(&entry.said.subject))),
            Cell::Part(struck(what.render())),
            Cell::Text(entry.said.by.clone()),
            Cell::Part(mistake),
        ]
    }

    /// What an entry is about, with the way to its page.
    fn subject(&self, subject: &Subject) -> Markup {
        match subject {
            Subject::Machine(machine) => self.link(machine),
            Subject::Point(machine, point) => {
                let name = self.chart(machine).and_then(|chart| chart.points_here().find(|known| known.id == *point));
                html! {
                    (self.link(machine)) ", "
                    @match name {
                        Some(known) => a href=(address::point(machine, point)) { (point) "\u{a0}" (known.name) },
                        None => { "point " (point) ", no longer on the chart" },
                    }
                }
            }
            Subject::Reservoir(machine, reservoir) => {
                let known = self.chart(machine).and_then(|chart| chart.reservoir(reservoir));
                html! { (self.link(machine)) ", " (called(known.and_then(|known| known.name.as_ref()), reservoir)) }
            }
            Subject::Oil(oil) => html! { (self.oil(oil)) },
            Subject::Can(can) => html! { (self.can(can)) },
        }
    }

    fn link(&self, machine: &Id) -> Markup {
        match self.chart(machine) {
            Some(chart) => html! { a href=(address::machine(machine)) { (chart.machine.name) } },
            None => html! { (machine) },
        }
    }

    /// What an entry says: `Oiled: 2 strokes, short can; Way oil 68`.
    pub(super) fn what(&self, entry: &Entry) -> String {
        let with = |word: &str, more: &Option<String>| match more {
            Some(more) => format!("{word}: {more}"),
            None => word.to_owned(),
        };
        match &entry.said.body {
            Body::Dosed { oil, can, amount } => {
                let point = self.point(&entry.said.subject);
                let amount = amount.as_ref().filter(|amount| point.is_none_or(|point| self.is_measured(amount, point)));
                let oil = oil.as_ref().map(|oil| self.oil(oil));
                let can = can.as_ref().map(|can| self.can(can));
                let given: Vec<String> = amount.cloned().into_iter().chain(can).collect();
                let given = Some(given.join(", ")).filter(|given| !given.is_empty());
                let said: Vec<String> = given.into_iter().chain(oil).collect();
                let is_level = point.is_some_and(|(_, point)| act(point) == Act::TopUp);
                with(
                    if is_level { "Topped up" } else { "Oiled" },
                    &Some(said.join("; ")).filter(|said| !said.is_empty()),
                )
            }
            Body::SignSeen { note } => with("Sign seen", note),
            Body::SignMissing { note } => with("Sign looked for and not seen", note),
            Body::NotReached { reason } => format!("Not reached: {reason}"),
            Body::Ran { hours: time, job } => {
                let machine = entry.said.subject.machine();
                let job = job.as_ref().map(|job| {
                    let known = machine.and_then(|machine| self.chart(machine)?.job(job));
                    known.map_or_else(|| job.to_string(), |known| known.name.clone())
                });
                with(&format!("Ran {}", advice::words::hours(*time)), &job)
            }
            Body::Level { reading } => format!("Level read: {reading}"),
            Body::Filled { oil, amount } => {
                let oil = oil.as_ref().map(|oil| self.oil(oil));
                let said: Vec<String> = amount.clone().into_iter().chain(oil).collect();
                with("Filled", &Some(said.join(", ")).filter(|said| !said.is_empty()))
            }
            Body::Drained { note } => with("Drained", note),
            Body::Opening { amount } => format!("On the shelf when it was written down: {amount}"),
            Body::Counted { amount } => format!("Counted on the shelf: {amount}"),
            Body::Bought { amount, price: more }
            | Body::Used { amount, note: more }
            | Body::ThrownAway { amount, note: more } => {
                let said: Vec<&str> = std::iter::once(amount.as_str()).chain(more.as_deref()).collect();
                format!("{}: {}", kind(entry.said.body.kind()), said.join(", "))
            }
            Body::Note { text } => text.clone(),
            Body::Withdrawn => "Took an entry back".to_owned(),
        }
    }

    fn point(&self, subject: &Subject) -> Option<(&Chart, &Point)> {
        let (machine, point) = subject.machine().zip(subject.point())?;
        let chart = self.chart(machine)?;
        Some((chart, chart.point(point)?))
    }

    /// Whether the amount says how much it was, and does not only repeat that a level is topped up.
    fn is_measured(&self, amount: &str, (chart, point): (&Chart, &Point)) -> bool {
        act(point) == Act::Give || serving(chart, point, &self.0.shelf).dose.said.as_deref() != Some(amount)
    }

    fn oil(&self, id: &Id) -> String {
        self.0.shelf.oil(id).map_or_else(|| id.to_string(), |oil| oil.name.clone())
    }

    fn can(&self, id: &Id) -> String {
        self.0.shelf.cans.iter().find(|can| can.id == *id).map_or_else(|| id.to_string(), |can| small(&can.called()))
    }
}
