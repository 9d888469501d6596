//! `GET /shelf/plan`: the fewest oils for the shop. The answer first, then how many oils do how much harm, what follows from the number
//! that is looked at, and how it was found.

mod chosen;
mod frontier;

use advice::need::need;
use advice::shelf_plan::fewest::Effort;
use advice::shelf_plan::{
    Asked as Question, Buying, Choice as Chosen, PointAt, Purchase, ShelfPlan, Whence, Year, shelf_plan,
};
use advice::words;
use advice::working::{Assumption, Reasoned};
use axum::extract::{Query, State};
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::id::Id;
use shop::logbook::Movement;
use shop::snapshot::ShopSnapshot;
use store::Settings;
use tribology::Step;

use crate::parts::{Choice, Entry, Field, Filter, Fold, Link, Note, Page, Section, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::Shop;
use crate::{Error, address, hours, rules};

/// Where it is.
pub(crate) const ADDRESS: &str = "/shelf/plan";

/// What is looked at.
#[derive(Debug, Default, Deserialize)]
pub(crate) struct Asked {
    /// How many oils; what is advised when left out.
    #[serde(default)]
    oils: String,
    /// `yes` when oils may be bought that are not on the shelf.
    #[serde(default)]
    buy: String,
    /// How often each machine is used in a year.
    #[serde(default)]
    uses: String,
    /// How long each time.
    #[serde(default)]
    hours: String,
}

/// The year that was asked for, and what was wrong with it.
struct Typed {
    year: Year,
    uses: Option<String>,
    hours: Option<String>,
}

/// A plan with all that is looked at of it.
struct View<'a> {
    question: &'a Question<'a>,
    snapshot: &'a ShopSnapshot,
    settings: &'a Settings,
    plan: &'a ShelfPlan,
    /// The choice of oils, and that of greases.
    chosen: Vec<&'a Chosen>,
    asked: &'a Asked,
}

/// `GET /shelf/plan`
pub(crate) async fn show(State(shop): State<Shop>, Query(asked): Query<Asked>) -> Result<Markup, Error> {
    let settings = shop.store.settings().await?;
    let now = shop.clock.now();
    let snapshot = shop.store.snapshot(now).await?;
    let movements = shop.store.movements(now).await?;
    // The search may take seconds; other pages are answered meanwhile.
    let page = tokio::task::spawn_blocking(move || page(&settings, &snapshot, &movements, &asked));
    let page = page.await.map_err(|_| Error::broken("the search for the fewest oils broke off"))?;
    Ok(page.render())
}

fn page(settings: &Settings, snapshot: &ShopSnapshot, movements: &[Movement], asked: &Asked) -> Page {
    let question = Question {
        machines: &snapshot.machines,
        shelf: &snapshot.shelf,
        movements,
        buying: if asked.buy == "yes" { Buying::Catalogue } else { Buying::ShelfOnly },
        most: None,
        effort: Effort::USUAL,
    };
    let reasoned = shelf_plan(&question);
    let plan = reasoned.value();
    let looked_at = asked.oils.parse().ok().and_then(|k| plan.oils.of(k)).or_else(|| plan.oils.advice());
    let chosen: Vec<&Chosen> = looked_at.into_iter().chain(plan.greases.advice()).collect();
    let view = View { question: &question, snapshot, settings, plan, chosen, asked };
    let typed = Typed::of(asked, settings);
    let bought = advice::shelf_plan::shopping(&question, plan, &view.chosen, &typed.year);
    let counted =
        format!("{} and {}", words::count(plan.oils.present, "oil"), words::count(plan.greases.present, "grease"));
    Page {
        title: "Fewest oils".into(),
        section: Some(Section::Shelf),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Shelf", "Fewest oils".to_owned()), ("There now", counted)]),
        body: html! {
            h1 { "Fewest oils" }
            p { strong { (words::plan_answer(plan)) } @if let Some(buy) = to_buy(plan, bought.value(), settings) { " " (buy) } }
            (view.without())
            @if plan.oils.points > 0 { (frontier::section(&view)) }
            @if !view.chosen.is_empty() { (chosen::section(&view, bought.value())) }
            (form(asked, &typed))
            (working(&reasoned, &bought.assumed, bought.steps(), settings))
            p.quiet { "Trade practice and sums, no permission: the maker's word where there is one, the data sheet and local rules come first." }
            (Link::new(Section::Shelf.path(), "The whole shelf"))
        },
    }
}

/// What is lacking for a year, in a sentence.
fn to_buy(plan: &ShelfPlan, bought: &[Purchase], settings: &Settings) -> Option<String> {
    let lacking = bought.iter().filter(|purchase| purchase.lacks.is_some());
    let each = lacking.map(|purchase| {
        let name = words::names(plan, std::slice::from_ref(&purchase.oil));
        format!("{} ({})", name, words::purchase(purchase, settings.units))
    });
    let each: Vec<String> = each.collect();
    (!each.is_empty()).then(|| format!("To buy for a year: {}.", each.join("; ")))
}

impl View<'_> {
    /// The name of a lubricant; a link where it stands on the shelf.
    fn name(&self, oil: &Id) -> Markup {
        match self.plan.candidate(oil) {
            Some(one) if one.whence == Whence::Shelf => html! { a href=(address::oil(oil)) { (one.oil.name) } },
            Some(one) => html! { (one.oil.name) " (to buy)" },
            None => html! { (oil) },
        }
    }

    /// The name of a machine.
    fn machine<'i>(&'i self, id: &'i Id) -> &'i str {
        self.snapshot.machine(id).map_or(id.as_str(), |machine| &machine.chart.machine.name)
    }

    /// This page with another number of oils.
    fn with(&self, oils: usize) -> String {
        let asked = self.asked;
        let oils = oils.to_string();
        address::with_query(
            ADDRESS,
            &[("oils", &oils), ("buy", &asked.buy), ("uses", &asked.uses), ("hours", &asked.hours)],
        )
    }

    /// What a label has to say for a point.
    fn label(&self, at: &PointAt) -> Option<String> {
        let chart = &self.snapshot.machine(&at.machine)?.chart;
        words::to_buy(&need(chart, chart.point(&at.point)?))
    }

    /// The points for which nothing will do.
    fn without(&self) -> Markup {
        html! {
            @if !self.plan.without_candidate.is_empty() {
                (Note {
                    caution: "Do not run what nothing here may be given to.".into(),
                    rest: "Everything that may be chosen would do harm there, and standing still harms nothing.".into(),
                    ..Note::default()
                })
                ul {
                    @for at in &self.plan.without_candidate {
                        li {
                            (self.machine(&at.machine)) ": " a href=(address::point(&at.machine, &at.point)) { "point " (at.point) }
                            @if let Some(label) = self.label(at) { ". To buy: " (label) "." }
                        }
                    }
                }
            }
        }
    }
}

impl Typed {
    fn of(asked: &Asked, settings: &Settings) -> Self {
        let mut typed = Self { year: Year { hours: settings.hours, ..Year::USUAL }, uses: None, hours: None };
        if !asked.uses.trim().is_empty() {
            let uses = asked.uses.trim().parse().ok().filter(|uses| (1..=10_000).contains(uses));
            typed.year.uses = uses.unwrap_or(typed.year.uses);
            let says = || format!("\"{}\" is no number of days; write a whole one from 1 on, like 100.", asked.uses);
            typed.uses = uses.is_none().then(says);
        }
        if !asked.hours.trim().is_empty() {
            match hours::read(&asked.hours) {
                Ok(hours) => typed.year.hours = hours,
                Err(says) => typed.hours = Some(says),
            }
        }
        typed
    }
}

fn form(asked: &Asked, typed: &Typed) -> Markup {
    let or = |text: &str, usual: String| if text.trim().is_empty() { usual } else { text.to_owned() };
    let field = |name: &str, label: &str, value: String, fault: &Option<String>| Field {
        name: name.into(),
        label: label.into(),
        entry: Entry::Quantity,
        value,
        fault: fault.clone(),
        ..Field::default()
    };
    html! {
        h2 { "Otherwise" }
        (Filter {
            to: ADDRESS.into(),
            hidden: Vec::new(),
            fields: vec![
                Field {
                    name: "buy".into(),
                    label: "Choose from".into(),
                    entry: Entry::Pick(vec![
                        Choice::new("", "the shelf alone"),
                        Choice::new("yes", "the shelf and what can be bought").noted("Oils as open standards name them: class and grade, no product."),
                    ]),
                    value: asked.buy.clone(),
                    ..Field::default()
                },
                field("uses", "Days in a year on which each machine is used", or(&asked.uses, typed.year.uses.to_string()), &typed.uses),
                field("hours", "Hours each day", or(&asked.hours, words::hours(typed.year.hours)), &typed.hours),
            ],
            words: "Show that".into(),
        })
    }
}

/// How it was found: what was assumed, the sums, and how far the search went.
fn working(reasoned: &Reasoned<ShelfPlan>, bought: &[Assumption], sums: &[Step], settings: &Settings) -> Markup {
    Fold::shut(
        "How this was worked out",
        html! {
            p {
                "Every oil is held against every point by "
                a href=(rules::ADDRESS) { "the rules by which oils are judged" }
                ". For one oil, two, three and so on those are found which do the least harm when each point takes the best of them. Points that \
                 share a reservoir get one oil; greases are planned apart. Proven means that no choice of so many does less harm. Of choices that do equally little harm the one that is in stock is \
                 taken, then the one with a known price, then the first by name."
            }
            ul { @for assumed in reasoned.assumed.iter().chain(bought) { li { (capital(&words::assumption(assumed))) "." } } }
            ol { @for step in reasoned.steps().iter().chain(sums) { li { (words::step(step, settings.units)) } } }
        },
    )
    .render()
}
