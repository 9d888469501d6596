//! Oil that came and went, gathered from the logbook: every entry that counts and names an oil of the shelf.

use jiff::Timestamp;
use shop::logbook::{Body, Kind, Movement, Subject, Way};

use super::read_entry;
use super::row::SELECT;
use crate::db::{micros, values};
use crate::error::Result;
use crate::store::Store;

/// The kinds of entries that move oil.
const KINDS: [Kind; 7] =
    [Kind::Opening, Kind::Counted, Kind::Bought, Kind::Used, Kind::ThrownAway, Kind::Filled, Kind::Dosed];

impl Store {
    /// What came to the shelf and went from it, as recorded by an instant, oldest first. It reads each entry that moved oil, so its cost
    /// grows with the logbook: only what shows the stock asks for it.
    ///
    /// # Errors
    /// [`Error::Corrupt`](crate::Error::Corrupt) or [`Error::Io`](crate::Error::Io).
    pub async fn movements(&self, at: Timestamp) -> Result<Vec<Movement>> {
        let kinds = KINDS.map(|kind| format!("'{kind}'")).join(", ");
        let sql = format!(
            "{SELECT} WHERE e.kind IN ({kinds}) AND e.recorded <= $1 \
             AND NOT EXISTS (SELECT 1 FROM entry s WHERE s.supersedes = e.id AND s.recorded <= $1) ORDER BY e.happened, e.id"
        );
        let tx = self.db.read().await?;
        let rows = tx.all(&sql, values![micros(at)]).await?;
        tx.commit().await?;
        let mut movements = Vec::with_capacity(rows.len());
        for row in &rows {
            let said = read_entry(row)?.said;
            let (way, oil, amount, can) = match (said.body, said.subject) {
                (Body::Dosed { oil, can, amount }, _) => (Way::Given, oil, amount, can),
                (Body::Filled { oil, amount }, _) => (Way::Given, oil, amount, None),
                (Body::Opening { amount }, Subject::Oil(oil)) => (Way::Opening, Some(oil), Some(amount), None),
                (Body::Counted { amount }, Subject::Oil(oil)) => (Way::Counted, Some(oil), Some(amount), None),
                (Body::Bought { amount, .. }, Subject::Oil(oil)) => (Way::Bought, Some(oil), Some(amount), None),
                (Body::Used { amount, .. }, Subject::Oil(oil)) => (Way::Used, Some(oil), Some(amount), None),
                (Body::ThrownAway { amount, .. }, Subject::Oil(oil)) => {
                    (Way::ThrownAway, Some(oil), Some(amount), None)
                }
                _ => continue,
            };
            if let Some(oil) = oil {
                movements.push(Movement { oil, happened: said.happened, way, amount, can });
            }
        }
        Ok(movements)
    }
}
