//! `GET /log`: what was done, seen and run, newest first. The acts that write into it are one file each.

mod back;
pub(crate) mod corrections;
pub(crate) mod csv;
pub(crate) mod dosings;
pub(crate) mod obstacles;
mod pen;
mod points;
pub(crate) mod reservoirs;
pub(crate) mod runs;
mod said;
pub(crate) mod signs;
pub(crate) mod stock;
pub(crate) mod withdrawals;
mod writing;

pub(crate) use said::{Names, Told, rows};

use axum::extract::{Query, State};
use jiff::civil::Date;
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::choice::Choice as _;
use shop::logbook::{Entry, EntryId, Kind};
use shop::snapshot::Moment;
use store::{About, Superseded, Wanted};

use crate::hand::Hand;
use crate::parts::{Choice, Empty, Entry as Answer, Field, Filter, Fold, Link, Page, Section, Table, TitleBlock};
use crate::shop_state::Shop;
use crate::{Error, address};

/// How many entries a page shows.
const PAGE: usize = 30;

/// What the log shows, as its address carries it.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
pub(crate) struct Chosen {
    #[serde(default)]
    machine: String,
    #[serde(default)]
    kind: String,
    /// `yes` when entries that were taken back are shown too.
    #[serde(default)]
    withdrawn: String,
    /// The first and the last day that are shown; empty for all.
    #[serde(default)]
    from_day: String,
    #[serde(default)]
    to_day: String,
    /// The number of the last entry of the page before.
    #[serde(default)]
    before: String,
}

impl Chosen {
    pub(crate) fn new(machine: &str, kind: &str) -> Self {
        Self { machine: machine.to_owned(), kind: kind.to_owned(), ..Self::default() }
    }

    /// The entries of this choice.
    ///
    /// # Errors
    /// [`Error::Unknown`] when it names a machine that the shop does not have.
    fn wanted(&self, names: &Names, moment: &Moment) -> Result<Wanted, Error> {
        let machine = Some(self.machine.as_str()).filter(|asked| !asked.is_empty());
        let machine = machine.map(|asked| names.machine(asked)).transpose()?;
        // What is no day cannot come from the form, and chooses nothing.
        let day = |text: &str| text.parse::<Date>().ok();
        let begins = |day: Date| day.to_zoned_datetime(moment.zone.clone()).ok().map(|begin| begin.timestamp());
        Ok(Wanted {
            about: machine.map_or(About::Shop, |machine| About::Machine(machine.clone())),
            kind: Kind::from_word(&self.kind),
            from: day(&self.from_day).and_then(begins),
            to: day(&self.to_day).and_then(|day| day.tomorrow().ok()).and_then(begins),
            superseded: if self.shows_withdrawn() { Superseded::Shown } else { Superseded::LeftOut },
            ..Wanted::default()
        })
    }

    fn shows_withdrawn(&self) -> bool {
        self.withdrawn == "yes"
    }
}

/// The address of the log for a choice.
pub(crate) fn address_of(chosen: &Chosen) -> String {
    at("/log", chosen)
}

fn at(path: &str, chosen: &Chosen) -> String {
    let Chosen { machine, kind, withdrawn, from_day, to_day, before } = chosen;
    let pairs = [
        ("machine", machine),
        ("kind", kind),
        ("withdrawn", withdrawn),
        ("from_day", from_day),
        ("to_day", to_day),
        ("before", before),
    ];
    address::with_query(path, &pairs.map(|(name, value)| (name, value.as_str())))
}

/// The page of the log.
struct Log {
    machine: String,
    kind: String,
    filter: Filter,
    table: Option<Table>,
    older: Option<Link>,
    newest: Option<Link>,
    csv: Link,
    chosen: bool,
}

/// `GET /log`
pub(crate) async fn show(State(shop): State<Shop>, _: Hand, Query(chosen): Query<Chosen>) -> Result<Markup, Error> {
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let moment = snapshot.moment.clone();
    let names = Names::of(snapshot);
    let wanted = chosen.wanted(&names, &moment)?;
    let (machine, kind) = (names.machine(&chosen.machine).ok(), wanted.kind);
    let (entries, older) = page_of(&shop, &chosen, wanted).await?;
    let table = if entries.is_empty() {
        None
    } else {
        Some(rows(&shop, &names, &entries, Told::WhereAndWhat, &hidden(&chosen)).await?)
    };
    let log = Log {
        machine: machine.map_or_else(|| "All machines".to_owned(), |id| names.machine_name(id)),
        kind: kind.map_or("Everything", said::kind).to_owned(),
        filter: filter(&names, &chosen),
        table,
        older: older.map(|id| {
            let before = Chosen { before: id.to_string(), ..chosen.clone() };
            Link::new(address_of(&before), "Older entries")
        }),
        newest: (!chosen.before.is_empty())
            .then(|| Link::new(address_of(&Chosen { before: String::new(), ..chosen.clone() }), "Back to the newest")),
        csv: Link::new(
            at("/log/csv", &Chosen { before: String::new(), ..chosen.clone() }),
            "These entries as a table (CSV)",
        ),
        chosen: Chosen { before: String::new(), ..chosen } != Chosen::default(),
    };
    Ok(log.page().render())
}

impl Log {
    fn page(self) -> Page {
        let fold = if self.chosen { Fold::open } else { Fold::shut };
        Page {
            title: "Log".into(),
            section: Some(Section::Log),
            today: Section::Today.path().into(),
            block: TitleBlock::new([("Log of", self.machine), ("Shown", self.kind)]),
            body: html! {
                h1 { "Log" }
                (fold("Show only some", self.filter.render()))
                @match self.table {
                    Some(table) => (table),
                    None => (Empty { says: "Nothing of this kind is in the log.".into(), first: None }),
                }
                @if self.older.is_some() || self.newest.is_some() {
                    div.row { @for link in [self.newest, self.older].into_iter().flatten() { (link.as_box()) } }
                }
                (self.csv)
            },
        }
    }
}

/// One page of entries, and the last of them when there are more behind it. An entry that takes another back is shown with the
/// entry that it took back, or when it is asked for.
async fn page_of(shop: &Shop, chosen: &Chosen, wanted: Wanted) -> Result<(Vec<Entry>, Option<EntryId>), Error> {
    let kind = wanted.kind;
    let mut wanted = Wanted { before: chosen.before.parse().ok().map(EntryId), most: PAGE + 1, ..wanted };
    let mut shown: Vec<Entry> = Vec::new();
    loop {
        let entries = match shop.store.entries(&wanted).await {
            Err(store::Error::NotFound(_)) => {
                return Err(Error::Unknown { what: "entry", asked: chosen.before.clone(), near: None });
            }
            other => other?,
        };
        let is_last = entries.len() <= PAGE;
        wanted.before = entries.last().map(|entry| entry.id);
        let is_shown = |entry: &Entry| kind == Some(Kind::Withdrawn) || entry.said.body.kind() != Kind::Withdrawn;
        shown.extend(entries.into_iter().filter(is_shown));
        if is_last || shown.len() > PAGE {
            break;
        }
    }
    let more = shown.len() > PAGE;
    shown.truncate(PAGE);
    let last = shown.last().map(|entry| entry.id).filter(|_| more);
    Ok((shown, last))
}

/// What a form on this page carries so that its answer comes back to it.
fn hidden(chosen: &Chosen) -> Vec<(String, String)> {
    let pairs = [("from", "log"), ("machine", &chosen.machine), ("kind", &chosen.kind)];
    pairs.iter().filter(|(_, value)| !value.is_empty()).map(|(n, v)| ((*n).to_owned(), (*v).to_owned())).collect()
}

fn filter(names: &Names, chosen: &Chosen) -> Filter {
    let field = |name: &str, label: &str, choices: Vec<Choice>, value: &str| Field {
        name: name.to_owned(),
        label: label.to_owned(),
        entry: Answer::List(choices),
        value: value.to_owned(),
        ..Field::default()
    };
    let day =
        |name: &str, label: &str, value: &str| Field { entry: Answer::Day, ..field(name, label, Vec::new(), value) };
    let machines = names.machines().map(|(id, name)| Choice::new(id.as_str(), name));
    let kinds =
        Kind::words().into_iter().filter_map(|word| Some(Choice::new(word, said::kind(Kind::from_word(word)?))));
    let withdrawn = vec![Choice::new("", "Leave them out"), Choice::new("yes", "Show them struck through")];
    Filter {
        to: "/log".to_owned(),
        hidden: Vec::new(),
        fields: vec![
            field(
                "machine",
                "Machine",
                [Choice::new("", "All machines")].into_iter().chain(machines).collect(),
                &chosen.machine,
            ),
            field("kind", "What", [Choice::new("", "Everything")].into_iter().chain(kinds).collect(), &chosen.kind),
            day("from_day", "From which day?", &chosen.from_day),
            day("to_day", "To which day?", &chosen.to_day),
            field("withdrawn", "Entries that count no more", withdrawn, &chosen.withdrawn),
        ],
        words: "Show these".to_owned(),
    }
}
