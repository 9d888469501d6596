//! Where a form about points was pressed, and so where its answer leads.

use axum::response::Redirect;
use serde::Deserialize;
use shop::id::Id;

use crate::address;
use crate::today::Asked;

/// The choice of today's round, and the stand or the page on which the form was pressed.
#[derive(Debug, Deserialize)]
pub(super) struct Back {
    #[serde(flatten)]
    pub(super) asked: Asked,
    /// The stand's anchor; empty when it was not pressed on today's page.
    #[serde(default)]
    stand: String,
    /// The point whose page it was pressed on; empty when it was not.
    #[serde(default)]
    page: String,
}

impl Back {
    /// Whether it was pressed on today's page, which asks for each thing once a round.
    pub(super) fn is_today(&self) -> bool {
        self.page.is_empty()
    }

    /// The address, without its anchor.
    pub(super) fn address(&self) -> String {
        match (Id::new(&self.asked.machine), Id::new(&self.page)) {
            (Ok(machine), Ok(point)) => self.asked.with_page(&address::point(&machine, &point)),
            _ => self.asked.today(),
        }
    }

    /// The address, with the place on the page where the hand was.
    pub(super) fn place(&self) -> String {
        let anchor = if self.is_today() { &self.stand } else { "history" };
        let to = self.address();
        if anchor.is_empty() { to } else { format!("{to}#{}", address::escaped(anchor)) }
    }

    /// 303: the page comes back where the hand was.
    pub(super) fn redirect(&self) -> Redirect {
        Redirect::to(&self.place())
    }

    /// What a form carries so that its answer finds back.
    pub(super) fn pairs(&self) -> Vec<(String, String)> {
        let mut pairs = self.asked.pairs();
        let more = [("stand", &self.stand), ("page", &self.page)];
        pairs.extend(more.iter().filter(|(_, v)| !v.is_empty()).map(|(n, v)| ((*n).to_owned(), (*v).clone())));
        pairs
    }
}
