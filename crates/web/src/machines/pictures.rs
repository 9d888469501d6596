//! `GET /machines/{id}/pictures`: the photographs and drawings of a machine, and the form that takes in another.

pub(crate) mod file;
pub(crate) mod upload;

use axum::extract::{Path, State};
use maud::{Markup, Render, html};
use shop::chart::{Chart, Picture};
use shop::id::Id;
use store::PictureRow;

use crate::parts::{Empty, Figure, Link, Page, Section, TitleBlock};
use crate::phrase::called;
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// The line above the form.
const NEW: &str = "Take in a picture";

/// What goes back to the form after an upload that was refused.
#[derive(Default)]
struct Refused {
    caption: String,
    says: String,
}

/// `GET /machines/{machine}/pictures`
pub(crate) async fn show(State(shop): State<Shop>, Path(id): Path<String>) -> Result<Markup, Error> {
    let view = shop.view(&id).await?;
    Ok(page(&shop, &view, FormKey::fresh()?, None).await?.render())
}

async fn page(shop: &Shop, view: &View, key: FormKey, refused: Option<&Refused>) -> Result<Page, Error> {
    let machine = &view.machine.id;
    let chart = &view.machine.chart;
    let kept = shop.store.pictures(machine).await?;
    Ok(Page {
        title: format!("Pictures of {}", view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", machine.as_str())]),
        block: TitleBlock::new([("Machine", view.name().to_owned()), ("Pictures", chart.pictures.len().to_string())]),
        body: html! {
            h1 { "Pictures" }
            @if let Some(refused) = refused {
                div.form-mend role="alert" { h2 { "Nothing was written down yet" } p { (refused.says) } }
            }
            @if chart.pictures.is_empty() {
                (Empty { says: "No picture of this machine is here yet. One of each side, and one of each hidden point, helps the next hand most.".into(), first: None })
            }
            div.two { @for picture in &chart.pictures { (shown(machine, chart, picture, &kept)) } }
            h2 #new { (NEW) }
            (form(view, &key, refused))
            (Link::new(address::machine(machine), "The oiling chart"))
        },
    })
}

/// A picture with what it shows and the points that stand on it.
fn shown(machine: &Id, chart: &Chart, picture: &Picture, kept: &[PictureRow]) -> Markup {
    let row = kept.iter().find(|row| row.name == picture.file);
    let caption = called(picture.caption.as_ref(), &picture.id);
    let points = chart.points_here().filter(|point| point.picture.as_ref() == Some(&picture.id));
    html! {
        section.stack id=(picture.id.as_str()) {
            h2 { (caption) }
            @match row {
                Some(row) => {
                    a href=(address::picture(machine, row.id.0)) {
                        (Figure {
                            drawing: html! { img src={ (address::picture(machine, row.id.0)) "?small" } alt=(caption) loading="lazy"; },
                            caption: String::new(),
                        })
                    }
                }
                None => p.quiet { "Its file " (picture.file) " has not been taken in. Choose it below." },
            }
            @if let Some(taken) = picture.taken { p.quiet { "Taken " (taken.strftime("%-d %B %Y").to_string()) } }
            p { @for point in points { a href=(address::point(machine, &point.id)) { (point.id) " " (point.name) } " " } }
        }
    }
}

/// A form of its own, for only here a file goes with it.
fn form(view: &View, key: &FormKey, refused: Option<&Refused>) -> Markup {
    let caption = refused.map_or("", |refused| refused.caption.as_str());
    html! {
        form.form method="post" action=(address::pictures(&view.machine.id)) enctype="multipart/form-data" {
            (key)
            input type="hidden" name="revision" value=(view.machine.revision);
            div.field {
                label.field-label for="caption" { "What does it show?" }
                p.field-hint id="caption-hint" { "Such as left side, with the cover off." }
                input.field-entry type="text" id="caption" name="caption" value=(caption) autocomplete="off" aria-describedby="caption-hint";
            }
            div.field {
                label.field-label for="picture" { "The picture" }
                p.field-hint id="picture-hint" {
                    "A JPEG, PNG or WebP photograph up to 20 MB, or a plain SVG drawing. Where it was taken is left out."
                }
                input.field-entry type="file" id="picture" name="picture" accept="image/jpeg,image/png,image/webp,image/svg+xml"
                    required aria-describedby="picture-hint";
            }
            div.form-acts { button.button.button-main { "Take it in" } }
        }
    }
}
