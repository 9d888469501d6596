//! The chart in force as the text that people own, with the number of its revision. Start at [`Revision::take`]. An edit that would break the chart, and one made from an older revision, write nothing.

use axum::http::StatusCode;
use shop::chart::Chart;
use shop::document::{Document, Edit};
use shop::id::Id;
use store::NewPicture;
use tokio::sync::{Mutex, MutexGuard};

use super::sent::{Answer, Sent, shown};
use super::wrong::Wrong;
use crate::Error;
use crate::hand::Hand;
use crate::parts::Field;
use crate::shop_state::Shop;

/// One form at a time holds its revision against the one in force and writes the next, so that none slips in between.
static TURN: Mutex<()> = Mutex::const_new(());

/// The chart in force.
pub(crate) struct Revision {
    pub(crate) number: i64,
    document: Document,
}

/// What became of the edits of a form.
pub(crate) enum Outcome {
    /// They are in the chart.
    Written,
    /// Nothing was written, for the chart is another one by now.
    Overtaken,
    /// Nothing was written, for the chart would have faults.
    Refused(Wrong),
}

/// The turn to write, held until the answer is made.
pub(crate) struct Turn {
    pub(crate) revision: Revision,
    _held: MutexGuard<'static, ()>,
}

impl Revision {
    /// The chart of this machine in force now.
    pub(crate) async fn in_force(shop: &Shop, machine: &Id) -> Result<Self, Error> {
        let (number, text) = shop.store.chart(machine, shop.clock.now()).await?;
        let read = Document::read(text);
        let document = read.map_err(|_| Error::broken("the machine's chart in the data file has faults"))?;
        Ok(Self { number, document })
    }

    /// The same, with the turn to write the next.
    pub(crate) async fn take(shop: &Shop, machine: &Id) -> Result<Turn, Error> {
        let held = TURN.lock().await;
        Ok(Turn { revision: Self::in_force(shop, machine).await?, _held: held })
    }

    pub(crate) fn chart(&self) -> &Chart {
        self.document.chart()
    }

    /// What a form carries so that its answer can be held against the chart in force by then.
    pub(crate) fn hidden(&self, fields: &[Field]) -> Vec<(String, String)> {
        std::iter::once(("revision".to_owned(), self.number.to_string())).chain(shown(fields)).collect()
    }
}

impl Turn {
    /// Makes the edits of a form a new revision. No edits at all are done already: a second press of the same button, say.
    pub(crate) async fn write(
        &self,
        shop: &Shop,
        machine: &Id,
        hand: &Hand,
        sent: &Sent,
        edits: &[Edit],
    ) -> Result<Outcome, Error> {
        if edits.is_empty() {
            return Ok(Outcome::Written);
        }
        if sent.revision != self.revision.number.to_string() {
            return Ok(Outcome::Overtaken);
        }
        match self.revision.document.edited(edits) {
            Ok(edited) => {
                let (text, from) = (edited.document.text(), self.revision.number);
                match shop.store.change_chart(machine, text, from, shop.clock.now(), hand.name()).await {
                    Ok(_) => Ok(Outcome::Written),
                    // Another program was quicker, of which our turn knows nothing.
                    Err(store::Error::Conflict(_)) => Ok(Outcome::Overtaken),
                    Err(other) => Err(other.into()),
                }
            }
            Err(refused) => Ok(Outcome::Refused(Wrong::of(&refused))),
        }
    }
}

impl Turn {
    /// Makes an edit a new revision together with the picture that it speaks of: both or neither. Else what is wrong, for whoever sent it.
    pub(crate) async fn write_with_picture(
        &self,
        shop: &Shop,
        machine: &Id,
        hand: &Hand,
        from: &str,
        edit: &Edit,
        picture: NewPicture,
    ) -> Result<Result<(), String>, Error> {
        const OVERTAKEN: &str =
            "the chart was changed after you opened this page; choose the picture once more and send it again";
        if from != self.revision.number.to_string() {
            return Ok(Err(OVERTAKEN.to_owned()));
        }
        let edited = match self.revision.document.edited(std::slice::from_ref(edit)) {
            Ok(edited) => edited,
            Err(refused) => return Ok(Err(Wrong::of(&refused).rest().join(" "))),
        };
        let chart = (edited.document.text(), self.revision.number);
        let (at, by) = (shop.clock.now(), hand.name());
        match shop.store.change_chart_with(machine, chart, vec![picture], at, by).await {
            Ok(_) => Ok(Ok(())),
            Err(store::Error::Conflict(_)) => Ok(Err(OVERTAKEN.to_owned())),
            Err(unfit @ (store::Error::Picture { .. } | store::Error::TooLarge { .. })) => Ok(Err(unfit.to_string())),
            Err(other) => Err(other.into()),
        }
    }
}

impl Outcome {
    /// The status of the page that comes back with the form.
    pub(crate) fn status(&self) -> StatusCode {
        match self {
            Self::Written => StatusCode::OK,
            Self::Overtaken => StatusCode::CONFLICT,
            Self::Refused(_) => StatusCode::UNPROCESSABLE_ENTITY,
        }
    }

    /// What is wrong beside the field that bears this key of this element.
    pub(crate) fn beside(&mut self, id: &Id, key: &str, answer: &Answer) -> Option<String> {
        match self {
            Self::Overtaken => answer.overtaken(),
            Self::Refused(wrong) => wrong.beside(id, key),
            Self::Written => None,
        }
    }

    /// What is wrong with the whole.
    pub(crate) fn above(self) -> Vec<String> {
        match self {
            Self::Written => Vec::new(),
            Self::Overtaken => vec![
                "The chart was changed after you opened this form. What you typed is kept below: look at it once more, then \
                 send it again."
                    .to_owned(),
            ],
            Self::Refused(wrong) => wrong.rest(),
        }
    }
}
