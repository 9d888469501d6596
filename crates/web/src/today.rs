//! `GET /`: what is to be oiled before today's job, stand by stand in the order in which one walks, and the way to write it down.
//!
//! The answer comes first, then the caution, then the acts; why and how it was worked out unfold below. One machine or several,
//! for all the time that it takes or for what matters most.

mod choice;
mod run;
mod sheet;
mod stand_card;
mod why;

pub(crate) use choice::{Asked, Choice, no_such_job};
pub(crate) use run::{Ran, form as run_form};
pub(crate) use stand_card::is_given;

use advice::round::{round, shared, within};
use axum::extract::{Query, State};
use maud::{Markup, Render, html};
use shop::id::Id;

use crate::hand::Hand;
use crate::parts::{Empty, Filter, Fold, Link, Page, Section, TitleBlock};
use crate::shop_state::{Shop, View};
use crate::{Error, address, phrase};
use sheet::{Company, Sheet};

/// The page of today's round.
struct Today {
    machines: String,
    machine_page: String,
    job: String,
    hours: String,
    by: String,
    hand: String,
    today: String,
    choose: Fold,
    short: Fold,
    sheets: Vec<Sheet>,
}

/// `GET /`
pub(crate) async fn show(
    State(shop): State<Shop>,
    hand: Hand,
    Query(pairs): Query<Vec<(String, String)>>,
) -> Result<Markup, Error> {
    let asked = Asked::of(pairs);
    let views = shop.views(&asked.machines().collect::<Vec<_>>()).await?;
    let Some(first) = views.iter().find(|view| view.machine.id.as_str() == asked.machine).or(views.first()) else {
        return Ok(no_machine(&hand).render());
    };
    let ids: Vec<&Id> = views.iter().map(|view| &view.machine.id).collect();
    let asked = asked.seen_from(&first.machine.id, &ids);
    let choices: Vec<Choice> = views
        .iter()
        .map(|view| {
            let choice = Choice::settled(view, &asked.seen_from(&view.machine.id, &ids));
            // Of several machines the job counts for those that have it.
            if views.len() > 1 { choice.without_job_fault() } else { choice }
        })
        .collect();
    let company = if views.len() > 1 { Company::Among } else { Company::Alone };
    let rounds = rounds(&views, &choices);
    let sheets = views.iter().zip(&choices).zip(rounds);
    let sheets = sheets.map(|((view, choice), round)| Sheet::of(view, choice, round, company));
    let sheets = sheets.collect::<Result<Vec<_>, _>>()?;
    let choice = Choice::settled(first, &asked);
    let short = match choice.minutes {
        Some(minutes) => format!("Short of time? {} chosen", advice::words::count(minutes as usize, "minute")),
        None => "Short of time?".to_owned(),
    };
    let names: Vec<&str> = views.iter().map(View::name).collect();
    let today = Today {
        machines: advice::words::join(&names),
        machine_page: address::machine(&choice.machine),
        job: choice.job_name.clone(),
        hours: advice::words::hours(choice.hours),
        by: hand.name().to_owned(),
        hand: choice.hand(),
        today: choice.today(),
        choose: fold("Another machine, job or hours", &choice.filter(first), choice.is_faulty()),
        short: fold(&short, &choice.short_of_time(), choice.is_time_faulty()),
        sheets,
    };
    Ok(today.page().render())
}

/// The rounds, for all the time that they take or for the minutes that there are for all of them.
fn rounds(views: &[View], choices: &[Choice]) -> Vec<advice::Reasoned<advice::Round>> {
    let (Some(view), Some(minutes)) = (views.first(), choices.first().map(|choice| choice.minutes)) else {
        return Vec::new();
    };
    let plans = views.iter().zip(choices).map(|(view, choice)| (&view.machine, choice.plan()));
    let plans: Vec<_> = plans.collect();
    let (shelf, moment) = (&view.shelf, &view.moment);
    match (plans.as_slice(), minutes) {
        ([(machine, plan)], Some(minutes)) => vec![within(machine, shelf, moment, plan, minutes)],
        (several, Some(minutes)) => shared(several, shelf, moment, minutes),
        (all, None) => all.iter().map(|(machine, plan)| round(machine, shelf, moment, plan)).collect(),
    }
}

/// A form in a fold: open where something in it was asked or is to be mended.
fn fold(line: &str, filter: &Filter, is_wanted: bool) -> Fold {
    if is_wanted { Fold::open(line, filter.render()) } else { Fold::shut(line, filter.render()) }
}

impl Today {
    fn page(self) -> Page {
        Page {
            title: format!("Today: {}", self.machines),
            section: Some(Section::Today),
            today: self.today,
            block: TitleBlock::default()
                .and_link("Machine", Link::new(self.machine_page, self.machines))
                .and("Today's job", self.job)
                .and("Hours", self.hours)
                .and_link("By", Link::new(self.hand, self.by)),
            body: html! {
                div { (self.choose) (self.short) }
                h1 { "Before you start" }
                @for sheet in &self.sheets { (sheet) }
            },
        }
    }
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
