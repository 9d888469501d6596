//! `GET /machines/{id}/points/{point}/place`: where a point is on a picture, shown by pressing on the picture; `POST` to the same address
//! writes it. The picture is the button itself, so it works without any script: a browser sends where it was pressed, in its own
//! pixels, and the picture is always as wide as the form says.

use axum::extract::{Form, Path, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::chart::{Picture, Point};
use shop::document::{Edit, Target, Value};
use shop::id::Id;

use crate::hand::Hand;
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::Sent;
use crate::parts::{Balloon, Entry, Field, Form as Questions, Link, Page, Section, TitleBlock};
use crate::phrase::called;
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// How wide the picture is shown, in pixels of the page.
const WIDE: f64 = 900.0;

/// Which picture is shown.
#[derive(Debug, Default, Deserialize)]
pub(crate) struct Asked {
    #[serde(default)]
    picture: String,
}

/// The address of the page.
pub(crate) fn address(machine: &Id, point: &Id) -> String {
    format!("{}/place", address::point(machine, point))
}

/// `GET /machines/{machine}/points/{point}/place`
pub(crate) async fn show(
    State(shop): State<Shop>,
    hand: Hand,
    Path((machine, point)): Path<(String, String)>,
    Query(asked): Query<Asked>,
) -> Result<Markup, Error> {
    let view = shop.view(&machine).await?;
    let point = view.point(&point)?;
    let revision = Revision::in_force(&shop, &view.machine.id).await?;
    Ok(page(&shop, &view, &hand, point, &asked.picture, &revision, &[]).await?.render())
}

/// `POST /machines/{machine}/points/{point}/place`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path((machine, asked)): Path<(String, String)>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let turn = Revision::take(&shop, &shop.view(&machine).await?.machine.id).await?;
    let view = shop.view(&machine).await?;
    let point = view.point(&asked)?;
    let picture = sent.typed("picture");
    let outcome = match pressed(&sent) {
        Some(at) => {
            let set = |key: &str, to| Edit::Set { of: Target::Element(point.id.clone()), key: key.to_owned(), to };
            let edits = [set("picture", Value::Text(picture.clone())), set("at", Value::Numbers(at))];
            turn.write(&shop, &view.machine.id, &hand, &sent, &edits).await?
        }
        None => {
            let wrong = "Nothing was pointed at. Press on the picture with a pointer or a finger, or write two numbers from 0 to 100 below it.";
            let page = page(&shop, &view, &hand, point, &picture, &turn.revision, &[wrong.to_owned()]).await?;
            return Ok((StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response());
        }
    };
    if let Outcome::Written = outcome {
        let to = format!("{}#{ANCHOR}", address::point(&view.machine.id, &point.id));
        return Ok(Redirect::to(&to).into_response());
    }
    let status = outcome.status();
    let page = page(&shop, &view, &hand, point, &picture, &turn.revision, &outcome.above()).await?;
    Ok((status, page.render()).into_response())
}

/// The anchor of the drawing on the page of a point.
pub(super) const ANCHOR: &str = "place";

/// Where the picture was pressed, as fractions of its width and height to three places; nothing where that cannot be.
fn pressed(sent: &Sent) -> Option<[f64; 2]> {
    let number =
        |name: &str| sent.typed(name).parse::<f64>().ok().filter(|number| number.is_finite() && *number >= 0.0);
    let (width, height) = (number("wide")?, number("high")?);
    let fraction = |name: &str, of: f64| {
        let fraction = number(name)? / of;
        (fraction <= 1.0).then(|| (fraction * 1000.0).round() / 1000.0)
    };
    let at = [fraction("at.x", width)?, fraction("at.y", height)?];
    // The button pressed by a key and not by a pointer sends its corner, which nobody has pointed at.
    (at != [0.0, 0.0]).then_some(at)
}

async fn page(
    shop: &Shop,
    view: &View,
    hand: &Hand,
    point: &Point,
    asked: &str,
    revision: &Revision,
    wrong: &[String],
) -> Result<Page, Error> {
    let machine = &view.machine.id;
    let pictures = &view.machine.chart.pictures;
    let shown = pictures.iter().find(|picture| picture.id.as_str() == asked);
    let shown = shown.or_else(|| pictures.iter().find(|picture| point.picture.as_ref() == Some(&picture.id)));
    let shown = shown.or(pictures.first());
    let button = match shown {
        Some(picture) => button(shop, machine, point, picture, revision).await?,
        None => None,
    };
    let here = address(machine, &point.id);
    Ok(Page {
        title: format!("Where {} {} is, {}", point.id, point.name, view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", machine.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(machine), view.name()))
            .and_link("Point", Link::new(address::point(machine, &point.id), point.name.clone()))
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1.row { (Balloon(point.id.to_string())) span { "Where is it?" } }
            @if !wrong.is_empty() {
                div.form-mend role="alert" { h2 { "Nothing was written down yet" } @for wrong in wrong { p { (wrong) } } }
            }
            @if pictures.is_empty() {
                p { "There is no picture of this machine yet." }
            } @else {
                nav.side-links aria-label="Pictures of the machine" {
                    @for picture in pictures {
                        @let is_shown = shown.is_some_and(|shown| shown.id == picture.id);
                        a.button href=(address::with_query(&here, &[("picture", picture.id.as_str())])) aria-current=[is_shown.then_some("true")] {
                            (called(picture.caption.as_ref(), &picture.id))
                        }
                    }
                }
            }
            @match button {
                Some(button) => {
                    p { "Press on the picture just where the point is." }
                    (button)
                }
                None => p.quiet { "Its file has not been taken in." },
            }
            div.row {
                (Link::new(address::pictures(machine), "Take in another picture"))
                (Link::new(address::point(machine, &point.id), "Leave it as it is"))
            }
        },
    })
}

/// The picture as the button of its form; nothing where its file has not been taken in.
async fn button(
    shop: &Shop,
    machine: &Id,
    point: &Point,
    picture: &Picture,
    revision: &Revision,
) -> Result<Option<Markup>, Error> {
    let number = match shop.store.picture_named(machine, &picture.file).await {
        Err(store::Error::NotFound(_)) => return Ok(None),
        other => other?,
    };
    let [width, height] = match shop.store.proportions(number).await {
        Err(store::Error::Picture { .. }) => return Ok(None),
        other => other?,
    };
    let high = (WIDE * height / width).round();
    let name = called(picture.caption.as_ref(), &picture.id);
    // For a hand at the keys: the same, in hundredths of the picture.
    let field = |name: &str, label: &str| Field {
        name: name.into(),
        label: label.into(),
        entry: Entry::Quantity,
        ..Field::default()
    };
    let mut hidden = revision.hidden(&[]);
    hidden.extend(
        [("picture", picture.id.to_string()), ("wide", "100".into()), ("high", "100".into())]
            .map(|(name, value)| (name.to_owned(), value)),
    );
    let typed = Questions {
        to: address(machine, &point.id),
        key: FormKey::fresh()?,
        hidden,
        fields: vec![
            field("at.x", "How far across, from 0 at the left to 100 at the right?"),
            field("at.y", "How far down, from 0 at the top to 100 at the foot?"),
        ],
        wrong: Vec::new(),
        words: "It is there".to_owned(),
        back: None,
    };
    Ok(Some(html! {
        form.side-window method="post" action=(address(machine, &point.id)) {
            (FormKey::fresh()?)
            @for (name, value) in revision.hidden(&[]) { input type="hidden" name=(name) value=(value); }
            input type="hidden" name="picture" value=(picture.id);
            input type="hidden" name="wide" value=(WIDE);
            input type="hidden" name="high" value=(high);
            input.side-press type="image" name="at" src=(address::picture(machine, number.0)) width=(WIDE) height=(high)
                alt={ (name) ": press where point " (point.id) " is" };
        }
        (typed)
    }))
}
