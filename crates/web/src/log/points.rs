//! The points that a form names, behind one another: `3,4,7`.

use serde::Deserialize;
use shop::chart::Point;

use crate::Error;
use crate::shop_state::View;

/// The ids as they were sent.
#[derive(Debug, Deserialize)]
#[serde(transparent)]
pub(super) struct Points(String);

impl Points {
    /// The points, each once, in the order in which they were sent.
    ///
    /// # Errors
    /// [`Error::Unknown`] when one is not on the chart of this example; [`Error::WrongForm`] when none is named.
    pub(super) fn on<'v>(&self, view: &'v View) -> Result<Vec<&'v Point>, Error> {
        let mut points: Vec<&Point> = Vec::new();
        for id in self.0.split(',').map(str::trim).filter(|id| !id.is_empty()) {
            let point = view.point(id)?;
            if points.iter().all(|known| known.id != point.id) {
                points.push(point);
            }
        }
        if points.is_empty() { Err(Error::WrongForm) } else { Ok(points) }
    }
}
