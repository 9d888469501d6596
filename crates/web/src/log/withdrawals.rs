//! `GET /log/withdrawals`: asks before an entry is taken back; `POST` to the same address does it. Entries that were a mistake count no
//! more and stay in the log, superseded.

use axum::extract::{Form, Query, State};
use axum::response::Redirect;
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::logbook::{BatchKey, Entry, EntryId, Kind};
use shop::snapshot::Moment;

use super::back::Back;
use super::pen::{self, Pen};
use super::{Chosen, Names, address_of};
use crate::hand::Hand;
use crate::parts::{Empty, Facts, Form as Questions, Link, Page, Press, Section, TitleBlock};
use crate::shop_state::Shop;
use crate::{Error, FormKey, address};

/// The form: a whole act by its batch, or one entry by its number.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    #[serde(default)]
    batch: String,
    #[serde(flatten)]
    asked: Asked,
}

/// One entry by its number, and where it was pressed.
#[derive(Deserialize)]
pub(crate) struct Asked {
    #[serde(default)]
    entry: String,
    #[serde(default)]
    from: From,
    /// The kind that the log was showing.
    #[serde(default)]
    kind: String,
    #[serde(flatten)]
    back: Back,
}

/// Where it was pressed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
enum From {
    #[default]
    Round,
    Log,
}

/// The page that asks, with what its form carries.
pub(super) fn address(hidden: &[(String, String)], entry: EntryId) -> String {
    let number = entry.to_string();
    let pairs = hidden.iter().map(|(name, value)| (name.as_str(), value.as_str()));
    address::with_query("/log/withdrawals", &pairs.chain([("entry", number.as_str())]).collect::<Vec<_>>())
}

/// `GET /log/withdrawals`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand, Query(asked): Query<Asked>) -> Result<Markup, Error> {
    let entry = numbered(&shop, &asked.entry).await?;
    let names = Names::of(shop.store.snapshot(shop.clock.now()).await?);
    let back = Link::new(asked.came_from(), "Leave it as it is");
    let form = Questions {
        to: "/log/withdrawals".to_owned(),
        key: FormKey::fresh()?,
        hidden: asked.pairs(),
        fields: Vec::new(),
        wrong: Vec::new(),
        words: "Take it back".to_owned(),
        back: Some(back.clone()),
    };
    let is_gone = entry.superseded_by.is_some() || entry.said.body.kind() == Kind::Withdrawn;
    Ok(page(&hand, &names.told(&entry), &form, is_gone.then_some(back)).render())
}

/// `POST /log/withdrawals`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Redirect, Error> {
    if shop.store.batch(&pen::batch(&sent.key)).await?.is_empty() {
        let moment = Moment { instant: shop.clock.now(), zone: shop.store.settings().await?.zone };
        let pen = Pen::new(&sent.key, &hand, &moment);
        let entries = named(&shop, &sent).await?;
        let living = entries
            .iter()
            .enumerate()
            .filter(|(_, entry)| entry.superseded_by.is_none() && entry.said.body.kind() != Kind::Withdrawn);
        let withdrawals: Vec<_> =
            living.map(|(number, entry)| pen.withdrawal(number, entry.said.subject.clone(), entry.id)).collect();
        shop.store.record(&withdrawals).await?;
    }
    Ok(Redirect::to(&sent.asked.came_from()))
}

impl Asked {
    /// The page on which it was pressed.
    pub(super) fn came_from(&self) -> String {
        match self.from {
            From::Round => self.back.place(),
            From::Log => address_of(&Chosen::new(&self.back.asked.machine, &self.kind)),
        }
    }

    /// The number of the entry, as it was sent.
    pub(super) fn entry(&self) -> &str {
        &self.entry
    }

    /// What a link to another page about the same entry carries.
    pub(super) fn carried(&self) -> Vec<(String, String)> {
        self.pairs().into_iter().filter(|(name, _)| name != "entry").collect()
    }

    /// What the form carries.
    pub(super) fn pairs(&self) -> Vec<(String, String)> {
        let from = if self.from == From::Log { "log" } else { "" };
        let own = [("entry", self.entry.as_str()), ("from", from), ("kind", &self.kind)];
        let own = own.into_iter().filter(|(_, value)| !value.is_empty());
        own.map(|(name, value)| (name.to_owned(), value.to_owned())).chain(self.back.pairs()).collect()
    }
}

/// `gone` is the way back from an entry that counts no more.
fn page(hand: &Hand, told: &Facts, form: &Questions, gone: Option<Link>) -> Page {
    Page {
        title: "Take an entry back?".to_owned(),
        section: Some(Section::Log),
        today: Section::Today.path().to_owned(),
        block: TitleBlock::new([("Sheet", "Take an entry back")]).and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { "Take this back?" }
            (told)
            @match gone {
                Some(back) => (Empty { says: "This entry counts no more already.".to_owned(), first: Some(Press::Link(back)) }),
                None => {
                    p { "Then it counts no more: what it is about is due as if it had never been written down. It stays in the log, struck through." }
                    (form)
                }
            }
        },
    }
}

/// The entries that are to be taken back.
async fn named(shop: &Shop, sent: &Sent) -> Result<Vec<Entry>, Error> {
    if let Some(batch) = BatchKey::new(&sent.batch) {
        let entries = shop.store.batch(&batch).await?;
        return if entries.is_empty() { Err(unknown(&sent.batch)) } else { Ok(entries) };
    }
    Ok(vec![numbered(shop, &sent.asked.entry).await?])
}

pub(super) async fn numbered(shop: &Shop, asked: &str) -> Result<Entry, Error> {
    let id: i64 = asked.parse().map_err(|_| Error::WrongForm)?;
    match shop.store.entry(EntryId(id)).await {
        Err(store::Error::NotFound(_)) => Err(unknown(asked)),
        other => Ok(other?),
    }
}

fn unknown(asked: &str) -> Error {
    Error::Unknown { what: "entry", asked: asked.to_owned(), near: None }
}
