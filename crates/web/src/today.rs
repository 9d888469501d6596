//! `GET /`: what is to be oiled before today's job, stand by stand, and the way to write it down.
//!
//! The answer comes first, then the caution, then the acts; why and how it was worked out unfold below.

mod choice;
mod run;
mod stand_card;
mod why;

pub(crate) use choice::{Asked, Choice, no_such_job};
pub(crate) use run::{Ran, form as run_form};
pub(crate) use stand_card::is_given;

use advice::round::Round;
use advice::words;
use axum::extract::{Query, State};
use maud::{Markup, Render, html};
use shop::chart;

use crate::hand::Hand;
use crate::parts::{Empty, Filter, Fold, Form, Link, Note, Page, Section, Stand, TitleBlock};
use crate::shop_state::Shop;
use crate::{Error, FormKey, address, phrase};

/// The page of today's round.
struct Today {
    machine: String,
    machine_page: String,
    job: String,
    hours: String,
    by: String,
    hand: String,
    today: String,
    choose: Choosing,
    summary: String,
    signs: Option<String>,
    asleep: Option<String>,
    groups: Vec<Group>,
    run: Form,
    why: Markup,
    working: Markup,
}

/// The form that chooses another round.
enum Choosing {
    /// In a fold, because it is seldom wanted.
    Folded(Filter),
    /// In sight, because something in it is to be mended.
    ToMend(Filter),
}

/// The stands of one state of the machine, under the caution that goes with it.
struct Group {
    heading: Option<&'static str>,
    caution: Note,
    stands: Vec<Stand>,
}

/// `GET /`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand, Query(asked): Query<Asked>) -> Result<Markup, Error> {
    let Some(view) = shop.view_or_first(&asked.machine).await? else { return Ok(no_machine(&hand).render()) };
    let choice = Choice::settled(&view, &asked);
    let reasoned = view.round(&choice.plan());
    let round = reasoned.value();
    let mut groups = Vec::new();
    let anchors = stand_card::anchors(&round.stands);
    for (state, heading) in [(chart::State::Stopped, None), (chart::State::Running, Some("Then start it slowly"))] {
        let stands = round.stands.iter().zip(&anchors).filter(|(at, _)| at.state == state);
        let stands = stands.map(|(at, anchor)| stand_card::card(at, anchor, &view, &choice));
        let stands = stands.collect::<Result<Vec<_>, _>>()?;
        if !stands.is_empty() {
            groups.push(Group { heading, caution: caution(state), stands });
        }
    }
    let filter = choice.filter(&view);
    let today = Today {
        machine: view.name().to_owned(),
        machine_page: address::machine(&choice.machine),
        job: choice.job_name.clone(),
        hours: words::hours(choice.hours),
        by: hand.name().to_owned(),
        hand: choice.hand(),
        today: choice.today(),
        choose: if choice.is_faulty() { Choosing::ToMend(filter) } else { Choosing::Folded(filter) },
        summary: words::summary(round),
        signs: signs_left(round),
        asleep: asleep(round),
        groups,
        run: run::form(&view, Ran::planned(&choice), FormKey::fresh()?),
        why: why::points(round),
        working: why::working(&reasoned, view.settings.units),
    };
    Ok(today.page().render())
}

impl Today {
    fn page(self) -> Page {
        Page {
            title: format!("Today: {}", self.machine),
            section: Some(Section::Today),
            today: self.today,
            block: TitleBlock::default()
                .and_link("Machine", Link::new(self.machine_page, self.machine))
                .and("Today's job", self.job)
                .and("Hours", self.hours)
                .and_link("By", Link::new(self.hand, self.by)),
            body: html! {
                @match self.choose {
                    Choosing::ToMend(filter) => (Fold::open("Another machine, job or hours", filter.render())),
                    Choosing::Folded(filter) => (Fold::shut("Another machine, job or hours", filter.render())),
                }
                h1 { "Before you start" }
                p { (self.summary) }
                @if let Some(signs) = self.signs { p.quiet { (signs) } }
                @for group in self.groups {
                    @if let Some(heading) = group.heading { h2 { (heading) } }
                    (group.caution)
                    div.two {
                        @for column in in_columns(group.stands) { div.stack { @for stand in column { (stand) } } }
                    }
                }
                h2 #run { "After the work" }
                p.quiet { "The next round counts from the hours that the machine ran." }
                (self.run)
                div {
                    (Fold::shut("Why these points", self.why))
                    (Fold::shut("How this was worked out", self.working))
                }
                @if let Some(asleep) = self.asleep { p.quiet { (asleep) } }
            },
        }
    }
}

/// The stands in two columns of about as many rows, each walked from top to bottom.
fn in_columns(mut stands: Vec<Stand>) -> [Vec<Stand>; 2] {
    let rows: Vec<usize> = stands.iter().map(|stand| stand.points.len()).collect();
    let all: usize = rows.iter().sum();
    let cut = (1..=rows.len()).min_by_key(|cut| (2 * rows[..*cut].iter().sum::<usize>()).abs_diff(all));
    let second = stands.split_off(cut.unwrap_or(0));
    [stands, second]
}

/// The caution of a state: its first sentence strong.
fn caution(state: chart::State) -> Note {
    let said = words::caution(state);
    let (caution, rest) = said.split_once(". ").map_or((said.to_owned(), ""), |(a, b)| (format!("{a}."), b));
    Note { caution, rest: rest.to_owned(), more: None }
}

/// Signs of points that have their oil and were not looked at yet: oil given is not oil arrived.
fn signs_left(round: &Round) -> Option<String> {
    let points = round.stands.iter().flat_map(|at| &at.points);
    let open = points.filter(|point| is_given(point) && stand_card::wants_look(point)).count();
    (open > 0).then(|| format!("{} still to look for where oil was given.", words::count(open, "sign")))
}

fn asleep(round: &Round) -> Option<String> {
    (round.asleep > 0).then(|| {
        let only = if round.asleep == 1 { "that only another job needs" } else { "that only other jobs need" };
        format!("Asleep: {} {only}.", words::count(round.asleep, "point"))
    })
}

fn no_machine(hand: &Hand) -> Page {
    Page {
        title: "Today".into(),
        section: Some(Section::Today),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Shop", "No machine yet")]).and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { "Before you start" }
            (Empty {
                says: "No machine is in this shop yet. Take in its oiling chart first: oilwright chart import FILE".into(),
                first: None,
            })
        },
    }
}

/// The beginning of a sentence about a stand, in the middle of one: `the left side`, where its name can stand there.
fn in_words(stand: Option<&str>) -> Option<String> {
    let built_in = [("left", "Left side"), ("right", "Right side"), ("front", "Front"), ("rear", "Rear")];
    let (_, name) = built_in.into_iter().find(|(id, _)| Some(*id) == stand)?;
    Some(format!("the {}", phrase::small(name)))
}
