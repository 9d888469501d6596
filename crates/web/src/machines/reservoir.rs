//! `GET /machines/{machine}/reservoirs/{reservoir}`: what is in a sump, cup, tank or box and whether it will do; its facts, what it feeds, and
//! what can be written down of it.

use advice::contents::as_point;
use advice::judge::judge;
use advice::words;
use axum::extract::{Path, State};
use maud::{Markup, Render, html};
use shop::chart::{Behaviour, Reservoir, State as Set};
use shop::fault::nearest;
use shop::id::Id;
use shop::logbook::{Entry, Kind};
use store::{About, Wanted};
use tribology::quantity::Units;

use super::element::Element;
use super::findings::Finding;
use super::inside;
use super::point::{evidence, feeds, judged};
use crate::hand::Hand;
use crate::log::{self, Names, Told, reservoirs as form};
use crate::parts::{Facts, Link, Note, Page, Quote, Section, Table, TitleBlock};
use crate::phrase::{called, capital};
use crate::shop_state::{Shop, View};
use crate::{Error, address};

/// How much of its history a reservoir shows.
const LAST: usize = 10;

/// What is written down of a reservoir.
const KINDS: [Kind; 4] = [Kind::Filled, Kind::Level, Kind::Drained, Kind::Note];

/// The page of a reservoir.
struct ReservoirPage {
    title: String,
    today: String,
    block: TitleBlock,
    name: String,
    inside: Markup,
    facts: Facts,
    plate: Option<Quote>,
    caution: Note,
    acts: [Link; 4],
    judged: Markup,
    before: Markup,
    feeds: Option<Table>,
    points: Vec<Element>,
    evidence: Option<Table>,
    findings: Vec<Finding>,
    history: Option<Table>,
}

/// `GET /machines/{machine}/reservoirs/{reservoir}`
pub(crate) async fn show(
    State(shop): State<Shop>,
    hand: Hand,
    Path((machine, reservoir)): Path<(String, String)>,
) -> Result<Markup, Error> {
    let view = shop.view(&machine).await?;
    let reservoir = known(&view, &reservoir)?;
    let (chart, id) = (&view.machine.chart, &view.machine.id);
    let entries = last_entries(&shop, id, &reservoir.id).await?;
    let history = if entries.is_empty() {
        None
    } else {
        let names = Names::of(shop.store.snapshot(shop.clock.now()).await?);
        let carried = [("from".to_owned(), "log".to_owned()), ("machine".to_owned(), id.to_string())];
        Some(log::rows(&shop, &names, &entries, Told::What, &carried).await?)
    };
    let point = as_point(chart, reservoir);
    let contents = view.machine.contents(&reservoir.id);
    let inside = inside::of_reservoir(&view, reservoir);
    let own = chart.points_here().filter(|point| point.reservoir.as_ref() == Some(&reservoir.id));
    let name = called(reservoir.name.as_ref(), &reservoir.id);
    let write = |kind: Kind, words: &str| Link::new(form::address_for(id, &reservoir.id, kind), words);
    let about = |of: &Id| *of == reservoir.id || reservoir.feeds.contains(of);
    let findings = chart.findings.iter().filter(|finding| finding.of.iter().any(about));
    let page = ReservoirPage {
        title: format!("{name}, {}", view.name()),
        today: address::with_query("/", &[("machine", id.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(id), view.name()))
            .and("Kind", capital(&reservoir.kind.to_string()))
            .and_link("By", Link::new("/hand", hand.name())),
        name,
        inside: inside::answer(&view, &inside),
        facts: facts(&view, reservoir, view.settings.units),
        plate: reservoir.plate.clone().map(|words| Quote { words, stands: "on the plate, letter for letter".into() }),
        caution: Note {
            caution: words::caution(Set::Stopped).to_owned(),
            rest: words::draining().to_owned(),
            ..Note::default()
        },
        acts: [
            write(Kind::Filled, "Filled or topped up"),
            write(Kind::Level, "Level read"),
            write(Kind::Drained, "Drained"),
            write(Kind::Note, "Noticed something"),
        ],
        judged: judged::section(chart, &point, &view.shelf, &view.settings),
        before: inside::before(&inside, &contents, &judge(chart, &point, &view.shelf), &view.shelf),
        feeds: feeds::table(chart, &point),
        points: own.map(|point| Element::of(id, chart, &point.id)).collect(),
        evidence: evidence::table(&reservoir.evidence),
        findings: findings.map(|finding| Finding::of(id, chart, finding)).collect(),
        history,
    };
    Ok(page.page().render())
}

/// The reservoir of this id on this example.
fn known<'v>(view: &'v View, asked: &str) -> Result<&'v Reservoir, Error> {
    let chart = &view.machine.chart;
    let here = || chart.reservoirs.iter().filter(|one| chart.applies(&one.when));
    here().find(|one| one.id.as_str() == asked).ok_or_else(|| {
        let near = nearest(asked, here().map(|one| one.id.as_str())).and_then(|near| Id::new(near).ok());
        let near = near.map(|near| (address::reservoir(&view.machine.id, &near), capital(near.as_str())));
        Error::Unknown { what: "reservoir", asked: asked.to_owned(), near }
    })
}

/// The last entries of a reservoir, newest first: of each kind by itself, so that none has to look through the machine's rounds.
async fn last_entries(shop: &Shop, machine: &Id, reservoir: &Id) -> Result<Vec<Entry>, Error> {
    let mut entries = Vec::new();
    for kind in KINDS {
        let about = About::Reservoir(machine.clone(), reservoir.clone());
        let wanted = Wanted { about, kind: Some(kind), most: LAST, ..Wanted::default() };
        entries.extend(shop.store.entries(&wanted).await?);
    }
    entries.sort_by_key(|entry| std::cmp::Reverse((entry.said.happened, entry.id)));
    entries.truncate(LAST);
    Ok(entries)
}

fn facts(view: &View, reservoir: &Reservoir, units: Units) -> Facts {
    let chart = &view.machine.chart;
    let several = |all: &[String]| (!all.is_empty()).then(|| capital(&all.join("; ")));
    let beside: Vec<Element> = reservoir.beside.iter().map(|id| Element::of(&view.machine.id, chart, id)).collect();
    let beside = (!beside.is_empty()).then(|| html! { @for one in &beside { p { (one) } } });
    let assembly = reservoir.assembly.as_ref().and_then(|id| chart.assembly(id));
    let behaviour = reservoir.behaviour.map(|behaviour| match behaviour {
        Behaviour::Holds => "Should stay; a falling level is a leak",
        Behaviour::Uses => "Should fall as the machine runs; one that stays is a passage that starves",
    });
    Facts::new()
        .say("Part", assembly.map(|assembly| assembly.name.clone()))
        .say("Drains and is refilled", reservoir.capacity.as_ref().map(|one| words::typed(one, units)))
        .say("Fills it when dry", reservoir.dry_fill.as_ref().map(|one| words::typed(one, units)))
        .say("Its level", behaviour)
        .say("Right level", reservoir.level.as_deref().map(capital))
        .say("Lowest level", reservoir.low.as_deref().map(capital))
        .say("Oil as charted", reservoir.oil.clone())
        .say("Fill", several(&reservoir.fill))
        .say("Drain", several(&reservoir.drain))
        .say("Vent", reservoir.vent.as_deref().map(capital))
        .say("Strainer", reservoir.strainer.as_deref().map(capital))
        .say("Shares a wall with", beside)
        .say("Note", reservoir.note.clone())
}

impl ReservoirPage {
    fn page(self) -> Page {
        Page {
            title: self.title,
            section: Some(Section::Machines),
            today: self.today.clone(),
            block: self.block,
            body: html! {
                h1 { (self.name) }
                (self.inside)
                div.two {
                    div.stack {
                        (self.facts)
                        @if let Some(plate) = self.plate { (plate) }
                    }
                    div.stack {
                        (self.caution)
                        h2 { "Write down" }
                        div.row { @for link in &self.acts { (link.as_box()) } }
                        (Link::new(self.today, "Go to today's round"))
                    }
                }
                h2 #oils { "Will it do?" }
                (self.judged)
                (self.before)
                h2 { "What it feeds" }
                @match self.feeds {
                    Some(feeds) => (feeds),
                    None => p.quiet { "Nobody has written down yet what runs in this oil." },
                }
                @if !self.points.is_empty() {
                    h2 { "Where it is filled or looked at" }
                    @for point in &self.points { p { (point.as_line()) } }
                }
                @if !self.findings.is_empty() { h2 { "To settle" } div.two { @for one in &self.findings { (one.section("")) } } }
                h2 #evidence { "How we know" }
                @match self.evidence {
                    Some(evidence) => (evidence),
                    None => p.quiet { "Nobody has said yet how any of this is known." },
                }
                h2 #history { "Last entries" }
                @match self.history {
                    Some(history) => (history),
                    None => p.quiet { "Nothing was ever written down of it. Topping up at its points stands with them." },
                }
            },
        }
    }
}
