//! `GET /log/corrections`: an entry with its answers, to be put right; `POST` to the same address writes the right one, which supersedes
//! it. The wrong one stays in the log, struck through.

use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use jiff::civil::{Date, Time};
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::chart::Chart;
use shop::logbook::{Entry, EntryId, NewEntry};
use shop::shelf::Shelf;
use shop::snapshot::{Moment, ShopSnapshot};

use super::pen::Pen;
use super::withdrawals::{self, Asked};
use super::writing::{self, Answers};
use super::{Names, pen};
use crate::hand::Hand;
use crate::parts::{Empty, Entry as Answer, Field, Form as Questions, Link, Page, Press, Section, TitleBlock};
use crate::shop_state::{Shop, on_clock};
use crate::{Error, FormKey, address};

/// The form: the number of the entry, where it was pressed, and the answers.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    #[serde(flatten)]
    asked: Asked,
    #[serde(flatten)]
    answers: Answers,
}

/// The page that puts an entry right, with what its form carries.
pub(super) fn address(hidden: &[(String, String)], entry: EntryId) -> String {
    let number = entry.to_string();
    let pairs = hidden.iter().map(|(name, value)| (name.as_str(), value.as_str()));
    address::with_query("/log/corrections", &pairs.chain([("entry", number.as_str())]).collect::<Vec<_>>())
}

/// `GET /log/corrections`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand, Query(asked): Query<Asked>) -> Result<Markup, Error> {
    let entry = withdrawals::numbered(&shop, asked.entry()).await?;
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let fields = questions(&snapshot, &entry);
    Ok(page(&hand, snapshot, &entry, &asked, fields, FormKey::fresh()?).render())
}

/// `POST /log/corrections`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Response, Error> {
    let to = Redirect::to(&sent.asked.came_from()).into_response();
    if !shop.store.batch(&pen::batch(&sent.key)).await?.is_empty() {
        return Ok(to);
    }
    let entry = withdrawals::numbered(&shop, sent.asked.entry()).await?;
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let Some(fields) = questions(&snapshot, &entry) else { return Err(Error::WrongForm) };
    let (chart, shelf) = about(&snapshot, &entry);
    let body = writing::read(entry.said.body.kind(), &sent.answers, chart, shelf);
    let happened = happened(&snapshot.moment, &sent.answers);
    match (body, happened) {
        (Ok(body), Ok(happened)) => {
            let pen = Pen::new(&sent.key, &hand, &snapshot.moment);
            let right = pen.entry(0, entry.said.subject.clone(), body);
            let right = NewEntry { happened, supersedes: Some(entry.id), ..right };
            shop.store.record(&[right]).await?;
            Ok(to)
        }
        (body, happened) => {
            let wrong: Vec<_> = body.err().unwrap_or_default().into_iter().chain(happened.err()).collect();
            let fields = writing::answered(fields, &sent.answers, &wrong);
            let page = page(&hand, snapshot, &entry, &sent.asked, Some(fields), sent.key);
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response())
        }
    }
}

fn about<'s>(snapshot: &'s ShopSnapshot, entry: &Entry) -> (Option<&'s Chart>, &'s Shelf) {
    let machine = entry.said.subject.machine().and_then(|machine| snapshot.machine(machine));
    (machine.map(|machine| &machine.chart), &snapshot.shelf)
}

/// What is asked; nothing for an entry that counts no more or that says nothing of its own.
fn questions(snapshot: &ShopSnapshot, entry: &Entry) -> Option<Vec<Field>> {
    if entry.superseded_by.is_some() {
        return None;
    }
    let (chart, shelf) = about(snapshot, entry);
    let mut fields = writing::questions(&entry.said.body, chart, shelf)?;
    let clock = on_clock(&snapshot.moment, entry.said.happened);
    fields.push(Field {
        name: "day".into(),
        label: "On which day?".into(),
        entry: Answer::Day,
        value: clock.date().to_string(),
        ..Field::default()
    });
    fields.push(Field {
        name: "clock".into(),
        label: "At what time?".into(),
        hint: "By the shop's clock, such as 9:15.".into(),
        entry: Answer::Quantity,
        value: clock.strftime("%-H:%M").to_string(),
        ..Field::default()
    });
    Some(fields)
}

/// When it happened, on the shop's clock.
fn happened(moment: &Moment, answers: &Answers) -> Result<jiff::Timestamp, (&'static str, String)> {
    let said = |name: &str| answers.get(name).map_or("", |text| text.trim());
    let day: Date =
        said("day").parse().map_err(|_| ("day", "This is no day. Write one like 2026-11-25.".to_owned()))?;
    let no_time = || ("clock", "This is no time of day. Write one like 9:15.".to_owned());
    let clock = Time::strptime("%H:%M", said("clock")).map_err(|_| no_time())?;
    let at = day.to_datetime(clock).to_zoned_datetime(moment.zone.clone()).map_err(|_| no_time())?;
    if at.timestamp() > moment.instant {
        return Err(("day", "This is still to come. Write when it happened.".to_owned()));
    }
    Ok(at.timestamp())
}

fn page(
    hand: &Hand,
    snapshot: ShopSnapshot,
    entry: &Entry,
    asked: &Asked,
    fields: Option<Vec<Field>>,
    key: FormKey,
) -> Page {
    let names = Names::of(snapshot);
    let back = Link::new(asked.came_from(), "Leave it as it is");
    let form = fields.map(|fields| Questions {
        to: "/log/corrections".to_owned(),
        key,
        hidden: asked.pairs(),
        fields,
        wrong: Vec::new(),
        words: "Put it right".to_owned(),
        back: Some(back.clone()),
    });
    Page {
        title: "Put an entry right".to_owned(),
        section: Some(Section::Log),
        today: Section::Today.path().to_owned(),
        block: TitleBlock::new([("Sheet", "Put an entry right")]).and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { "Put this right" }
            (names.told(entry))
            @match form {
                Some(form) => {
                    p { "The right entry counts in its place. What stands here now stays in the log, struck through." }
                    (form)
                    (Link::new(withdrawals::address(&asked.carried(), entry.id), "It never happened: take it back"))
                }
                None => (Empty { says: "This entry counts no more already.".to_owned(), first: Some(Press::Link(back)) }),
            }
        },
    }
}
