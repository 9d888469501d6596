//! The sides of a machine: the pictures of the chart on which points of this example have their place, as drawings with balloons.

use draw::{Ground, Place};
use maud::PreEscaped;
use shop::chart::{Picture, Point};
use shop::id::Id;
use store::{Drawing, PictureId, PictureKind};

use crate::parts::Side;
use crate::phrase::called;
use crate::shop_state::{Shop, View};
use crate::{Error, address};

/// Radius of the balloons where all of a side are shown, and where one stands alone and the drawing is small.
const MANY: f64 = 38.0;
const ALONE: f64 = 64.0;

/// The anchor of the drawings on the page of a machine.
pub(super) const ANCHOR: &str = "sides";

/// The page of the machine at the drawing that has this picture.
pub(crate) fn address(machine: &Id, picture: &Id) -> String {
    format!("{}#{ANCHOR}", address::with_query(&address::machine(machine), &[("side", picture.as_str())]))
}

/// The pictures that show points of this example, in the order of the chart, with the points on each.
pub(super) fn pictures(view: &View) -> Vec<(&Picture, Vec<&Point>)> {
    let chart = &view.machine.chart;
    let with_points = chart.pictures.iter().map(|picture| {
        let shown =
            chart.points_here().filter(|point| point.picture.as_ref() == Some(&picture.id) && point.at.is_some());
        (picture, shown.collect::<Vec<_>>())
    });
    with_points.filter(|(_, points)| !points.is_empty()).collect()
}

/// A side with all its points; nothing where the picture's file has not been taken in.
pub(super) async fn side(
    shop: &Shop,
    view: &View,
    picture: &Picture,
    points: &[&Point],
) -> Result<Option<Side>, Error> {
    drawn(shop, view, picture, points, MANY).await
}

/// The picture of one point with its place; nothing where it has none.
pub(super) async fn of_point(shop: &Shop, view: &View, point: &Point) -> Result<Option<Side>, Error> {
    let picture = point.picture.as_ref().and_then(|id| view.machine.chart.pictures.iter().find(|one| one.id == *id));
    match picture.filter(|_| point.at.is_some()) {
        Some(picture) => drawn(shop, view, picture, &[point], ALONE).await,
        None => Ok(None),
    }
}

async fn drawn(
    shop: &Shop,
    view: &View,
    picture: &Picture,
    points: &[&Point],
    radius: f64,
) -> Result<Option<Side>, Error> {
    let machine = &view.machine.id;
    let number = match shop.store.picture_named(machine, &picture.file).await {
        Err(store::Error::NotFound(_)) => return Ok(None),
        other => other?,
    };
    let Some((size, ground)) = ground(shop, machine, number).await? else { return Ok(None) };
    let name = called(picture.caption.as_ref(), &picture.id);
    let place = |point: &&Point| {
        Some(Place {
            number: point.id.to_string(),
            name: point.name.clone(),
            to: address::point(machine, &point.id),
            at: point.at?,
        })
    };
    let places = points.iter().filter_map(place).collect();
    let id = format!("side-{}", picture.id);
    let drawing = draw::Side { title: name.clone(), size, ground, places, radius }.svg(&format!("{id}-drawing"));
    Ok(Some(Side { id, name, drawing: PreEscaped(drawing) }))
}

/// What lies under the balloons. A drawing goes into the page itself, so that its ink follows day and night.
async fn ground(shop: &Shop, machine: &Id, number: PictureId) -> Result<Option<([f64; 2], Ground)>, Error> {
    let bytes = shop.store.picture(number).await?.given.bytes;
    if PictureKind::of(&bytes) == Some(PictureKind::Drawing) {
        // One that an older program kept unread may hold more than lines.
        let Ok(drawing) = Drawing::read(&bytes) else { return Ok(None) };
        let (attributes, inside) = (drawing.attributes().to_owned(), drawing.inside().to_owned());
        return Ok(Some((drawing.size(), Ground::Lines { attributes, inside })));
    }
    let size = match shop.store.proportions(number).await {
        Err(store::Error::Picture { .. }) => return Ok(None),
        other => other?,
    };
    Ok(Some((size, Ground::Photo { address: address::picture(machine, number.0) })))
}
