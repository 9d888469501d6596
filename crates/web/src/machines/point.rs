//! `GET /machines/{id}/points/{point}`: all that is known of one oiling point, its history, and the acts that can be written down.

mod acts;
pub(crate) mod edit;
pub(crate) mod evidence;
pub(crate) mod feeds;
pub(crate) mod fresh;
pub(crate) mod judged;
pub(crate) mod place;
mod questions;
pub(crate) mod removal;

use advice::round::{Act, act, serving};
use advice::words;
use axum::extract::{Path, Query, State};
use maud::{Markup, Render, html};
use shop::chart::{Chart, Point};
use shop::id::Id;
use shop::logbook::Kind;
use store::{About, Superseded, Wanted};

use super::element::Element;
use super::findings::Finding;
use super::{inside, sides};
use crate::hand::Hand;
use crate::log::{self, Names, Told};
use crate::parts::{Balloon, Facts, Link, Note, Page, Quote, Section, Side, Table, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::{Shop, View};
use crate::today::{Asked, Choice};
use crate::{Error, address};

/// How much of its history a point shows.
const LAST: usize = 10;

/// The page of a point.
struct PointPage {
    title: String,
    today: String,
    block: TitleBlock,
    number: Balloon,
    name: String,
    reach: Facts,
    facts: Facts,
    plate: Option<Quote>,
    caution: Note,
    acts: Markup,
    inside: Option<Markup>,
    side: Option<Side>,
    place: Link,
    judged: Option<Markup>,
    feeds: Option<Table>,
    evidence: Option<Table>,
    known: Link,
    findings: Vec<Finding>,
    mend: Link,
    found: Link,
    history: Option<Table>,
}

/// `GET /machines/{machine}/points/{point}`
pub(crate) async fn show(
    State(shop): State<Shop>,
    hand: Hand,
    Path((machine, point)): Path<(String, String)>,
    Query(asked): Query<Asked>,
) -> Result<Markup, Error> {
    let view = shop.view(&machine).await?;
    let point = view.point(&point)?;
    let choice = Choice::settled(&view, &asked);
    let wanted = Wanted {
        about: About::Point(view.machine.id.clone(), point.id.clone()),
        most: LAST,
        superseded: Superseded::LeftOut,
        ..Wanted::default()
    };
    let mut entries = shop.store.entries(&wanted).await?;
    entries.retain(|entry| entry.said.body.kind() != Kind::Withdrawn);
    let names = Names::of(shop.store.snapshot(shop.clock.now()).await?);
    let carried = acts::carried(&choice, point);
    let history =
        if entries.is_empty() { None } else { Some(log::rows(&shop, &names, &entries, Told::What, &carried).await?) };
    let page = PointPage {
        title: format!("{} {}, {}", point.id, point.name, view.name()),
        today: choice.today(),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(&view.machine.id), view.name()))
            .and("How oiled", capital(&point.method.to_string()))
            .and_link("By", Link::new(choice.hand(), hand.name())),
        number: Balloon(point.id.to_string()),
        name: point.name.clone(),
        reach: reach(&view.machine.chart, point),
        facts: facts(&view, point),
        plate: point.plate.clone().map(|words| Quote { words, stands: "on the plate, letter for letter".into() }),
        caution: Note { caution: words::caution(point.state).to_owned(), ..Note::default() },
        acts: acts::forms(point, &carried)?,
        inside: inside::doubt(&view, point),
        side: sides::of_point(&shop, &view, point).await?,
        judged: (act(point) != Act::Look)
            .then(|| judged::section(&view.machine.chart, point, &view.shelf, &view.settings)),
        place: Link::new(place::address(&view.machine.id, &point.id), "Show its place on a picture"),
        feeds: feeds::table(&view.machine.chart, point),
        evidence: evidence::table(&point.evidence),
        known: Link::new(evidence::fresh::address(&view.machine.id, &point.id), "Write down how something is known"),
        findings: findings(&view, point),
        mend: Link::new(edit::address(&view.machine.id, &point.id), "Mend what the chart says"),
        found: Link::new(
            format!(
                "{}#new",
                address::with_query(&address::findings(&view.machine.id), &[("about", point.id.as_str())])
            ),
            "Write down something wrong here",
        ),
        history,
    };
    Ok(page.page().render())
}

impl PointPage {
    fn page(self) -> Page {
        Page {
            title: self.title,
            section: Some(Section::Machines),
            today: self.today.clone(),
            block: self.block,
            body: html! {
                h1.row { (self.number) span { (self.name) } }
                div.two {
                    div.stack {
                        (self.facts)
                        (self.reach)
                        @if let Some(plate) = self.plate { (plate) }
                    }
                    div.stack {
                        (self.caution)
                        (self.acts)
                        div.row { (Link::new(self.today, "Go to today's round")) (self.mend) (self.found) }
                    }
                }
                @if let Some(inside) = self.inside { h2 { "What is in it" } (inside) }
                @if let Some(judged) = self.judged { h2 #oils { "Will it do?" } (judged) }
                h2 id=(place::ANCHOR) { "Where it is" }
                @if let Some(side) = self.side { (side) }
                (self.place)
                @if let Some(feeds) = self.feeds { h2 { "What it feeds" } (feeds) }
                @if !self.findings.is_empty() { h2 { "To settle" } div.two { @for one in &self.findings { (one.section("")) } } }
                h2 #evidence { "How we know" }
                @match self.evidence {
                    Some(evidence) => (evidence),
                    None => p.quiet { "Nobody has said yet how any of this is known." },
                }
                (self.known)
                h2 #history { "Last entries" }
                @match self.history {
                    Some(history) => (history),
                    None => p.quiet { "Nothing was ever written down of this point." },
                }
            },
        }
    }
}

fn reach(chart: &Chart, point: &Point) -> Facts {
    let stand = point.stand.as_ref().and_then(|id| chart.stands.iter().find(|stand| stand.id == *id));
    let moves: Vec<&str> = point.moves.iter().map(String::as_str).collect();
    let jobs = chart.jobs.iter().filter(|job| {
        let assembly = point.assembly.as_ref();
        point.job.contains(&job.id)
            || job.wakes.contains(&point.id)
            || assembly.is_some_and(|id| job.wakes.contains(id))
    });
    let jobs: Vec<&str> = jobs.map(|job| job.name.as_str()).collect();
    let assembly = point.assembly.as_ref().and_then(|id| chart.assembly(id));
    Facts::new()
        .say("Part", assembly.map(|assembly| assembly.name.clone()))
        .say("Stand here", stand.map(|stand| stand.name.clone()))
        .say("Where", point.place.as_deref().map(capital))
        .say("Set the machine", Some(capital(&point.state.to_string())))
        .say("First", (!moves.is_empty()).then(|| capital(&words::join(&moves))))
        .say("Only for", (!jobs.is_empty()).then(|| words::join(&jobs)))
}

fn facts(view: &View, point: &Point) -> Facts {
    let serving = serving(&view.machine.chart, point, &view.shelf);
    let dose = serving.dose.said.filter(|_| act(point) != Act::Look);
    let charted = point.dose.as_ref().map(|dose| dose.typed.clone()).filter(|typed| Some(typed) != dose.as_ref());
    let chart = &view.machine.chart;
    let reservoir = point.reservoir.as_ref().and_then(|id| chart.reservoir(id));
    let kind = reservoir.map_or_else(String::new, |one| capital(&one.kind.to_string()));
    Facts::new()
        .say(&kind, reservoir.map(|one| Element::of(&view.machine.id, chart, &one.id)))
        .say("How much", dose)
        .say("As charted", charted)
        .say("How often", words::short_interval(&point.every))
        .say("Oil as charted", serving.asked)
        .say("Nearest on the shelf", serving.oil.map(|oil| oil.name))
        .say("Can or gun", serving.can.map(|can| capital(&can.name)))
        .say("Look for", point.sign.clone())
        .say("When all was well", point.baseline.clone())
        .say("Note", point.note.clone())
}

/// The findings that name the point, or what it feeds and fills.
fn findings(view: &View, point: &Point) -> Vec<Finding> {
    let chart = &view.machine.chart;
    let about = |id: &Id| *id == point.id || point.feeds.contains(id) || point.reservoir.as_ref() == Some(id);
    let named = chart.findings.iter().filter(|finding| finding.of.iter().any(about));
    named.map(|finding| Finding::of(&view.machine.id, chart, finding)).collect()
}
