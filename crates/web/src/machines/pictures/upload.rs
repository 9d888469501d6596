//! `POST /machines/{id}/pictures`: a picture is taken in, and the chart speaks of it from then on: both or neither. However much is sent,
//! no more is held than the largest picture that is taken: what comes behind is let run out unread, so that the browser shows our
//! answer and not a broken connection.

use std::future::ready;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use axum::body::Body;
use axum::extract::multipart::Field;
use axum::extract::{FromRequest as _, Multipart, Path, Request, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use futures_util::StreamExt as _;
use maud::Render;
use shop::chart::Chart;
use shop::document::{Edit, Value};
use store::{LARGEST_PICTURE, NewPicture};

use super::{Refused, page};
use crate::hand::Hand;
use crate::machines::ids::next_picture;
use crate::machines::revision::Revision;
use crate::phrase::capital;
use crate::shop_state::Shop;
use crate::{Error, FormKey, address};

/// The longest answer to a question of the form, in bytes.
const LONGEST_TEXT: usize = 2_000;
/// What a form with the largest picture holds, in bytes.
const LARGEST_FORM: usize = LARGEST_PICTURE + 50_000;
/// When this much was sent we stop listening.
const MOST_SENT: usize = 512_000_000;
/// The longest name of a file that is kept, in letters.
const LONGEST_NAME: usize = 60;

/// The form as it is sent.
#[derive(Default)]
struct Sent {
    key: Option<FormKey>,
    revision: String,
    caption: String,
    picture: Option<(String, Taken)>,
}

/// What came of a part of the form.
enum Taken {
    Whole(Vec<u8>),
    TooLarge,
}

/// `POST /machines/{machine}/pictures`
pub(crate) async fn write(
    State(shop): State<Shop>,
    Path(id): Path<String>,
    hand: Hand,
    request: Request,
) -> Result<Response, Error> {
    let view = shop.view(&id).await?;
    let machine = &view.machine.id;
    let (request, overfull) = bounded(request);
    let parts = Multipart::from_request(request, &()).await.map_err(|_| Error::WrongForm)?;
    let sent = Sent::read(parts, &overfull).await?;
    let key = match (&sent.key, overfull.load(Ordering::SeqCst)) {
        (Some(key), _) => key.clone(),
        (None, true) => FormKey::fresh()?,
        (None, false) => return Err(Error::WrongForm),
    };
    let refused = match sent.taken_in(&shop, &view.machine.id, &hand).await? {
        Ok(new) => {
            let to = format!("{}#{}", address::pictures(machine), address::escaped(&new));
            return Ok(Redirect::to(&to).into_response());
        }
        Err(says) => Refused { caption: sent.caption, says },
    };
    let page = page(&shop, &view, key, Some(&refused)).await?;
    Ok((StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response())
}

impl Sent {
    async fn read(mut parts: Multipart, overfull: &AtomicBool) -> Result<Self, Error> {
        let mut sent = Self::default();
        loop {
            let mut field = match parts.next_field().await {
                Ok(Some(field)) => field,
                Ok(None) => return Ok(sent),
                // So much came at once that nothing of it was told apart.
                Err(_) if overfull.load(Ordering::SeqCst) => {
                    sent.picture.get_or_insert_with(|| ("the picture".to_owned(), Taken::TooLarge));
                    return Ok(sent);
                }
                Err(_) => return Err(Error::WrongForm),
            };
            let name = field.name().unwrap_or_default().to_owned();
            if name == "picture" {
                let file = field.file_name().unwrap_or_default().to_owned();
                let taken = take(&mut field, LARGEST_PICTURE, overfull).await?;
                let ends = matches!(taken, Taken::TooLarge);
                // A browser sends a part without a name when no file was chosen.
                sent.picture = (!file.is_empty()).then_some((file, taken));
                if ends {
                    return Ok(sent);
                }
                continue;
            }
            let text = match take(&mut field, LONGEST_TEXT, overfull).await? {
                Taken::Whole(text) => String::from_utf8(text).map_err(|_| Error::WrongForm)?.trim().to_owned(),
                Taken::TooLarge => return Err(Error::TooLarge),
            };
            match name.as_str() {
                FormKey::FIELD => sent.key = FormKey::try_from(text).ok(),
                "revision" => sent.revision = text,
                "caption" => sent.caption = text,
                _ => {}
            }
        }
    }

    /// Takes the picture in, and gives the id that it bears in the chart; else what is wrong.
    async fn taken_in(
        &self,
        shop: &Shop,
        machine: &shop::id::Id,
        hand: &Hand,
    ) -> Result<Result<String, String>, Error> {
        let Some((file, taken)) = &self.picture else {
            return Ok(Err("No picture was chosen. Choose one and send it again.".to_owned()));
        };
        let Taken::Whole(bytes) = taken else {
            let most = LARGEST_PICTURE / 1_000_000;
            return Ok(Err(format!("{} has more than {most} MB. Make it smaller and send it again.", capital(file))));
        };
        let turn = Revision::take(shop, machine).await?;
        let chart = turn.revision.chart();
        let (new, name) = (next_picture(chart), free_name(file, chart));
        let mut keys =
            vec![("id".to_owned(), Value::Text(new.to_string())), ("file".to_owned(), Value::Text(name.clone()))];
        if !self.caption.is_empty() {
            keys.push(("caption".to_owned(), Value::Text(self.caption.clone())));
        }
        let picture = NewPicture { machine: machine.clone(), name, taken: None, bytes: bytes.clone() };
        let add = Edit::Add { list: "picture".to_owned(), within: None, keys };
        let said = |says: String| Err(format!("{}. Nothing was kept.", capital(says.trim_end_matches('.'))));
        let added = turn.write_with_picture(shop, machine, hand, &self.revision, &add, picture).await;
        Ok(match added? {
            Ok(()) => Ok(new.to_string()),
            Err(says) => said(says),
        })
    }
}

/// The request with a body that ends where the largest form ends, and whether it was cut off there; the rest runs out unread.
fn bounded(request: Request) -> (Request, Arc<AtomicBool>) {
    let overfull = Arc::new(AtomicBool::new(false));
    let told = Arc::clone(&overfull);
    let (head, body) = request.into_parts();
    let mut came = 0;
    let pieces = body.into_data_stream().filter_map(move |piece| {
        let Ok(bytes) = piece else { return ready(Some(piece)) };
        came += bytes.len();
        if came <= LARGEST_FORM {
            return ready(Some(Ok(bytes)));
        }
        told.store(true, Ordering::SeqCst);
        ready((came > MOST_SENT).then(|| Err(axum::Error::new("far more was sent than a picture has"))))
    });
    (Request::from_parts(head, Body::from_stream(pieces)), overfull)
}

/// Reads a part of the form, and holds no more of it than may be taken.
async fn take(field: &mut Field<'_>, most: usize, overfull: &AtomicBool) -> Result<Taken, Error> {
    let mut held = Vec::new();
    loop {
        match field.chunk().await {
            Ok(None) => return Ok(Taken::Whole(held)),
            Ok(Some(piece)) if held.len() + piece.len() <= most => held.extend_from_slice(&piece),
            Ok(Some(_)) => return Ok(Taken::TooLarge),
            Err(_) if overfull.load(Ordering::SeqCst) => return Ok(Taken::TooLarge),
            Err(_) => return Err(Error::WrongForm),
        }
    }
}

/// The name of a file as the chart may bear it, and that no picture of the chart bears.
fn free_name(file: &str, chart: &Chart) -> String {
    let last = file.rsplit(['/', '\\']).next().unwrap_or_default();
    let plain = |sign: char| if sign.is_alphanumeric() || "-_.".contains(sign) { sign } else { '-' };
    let name: String = last.chars().map(plain).collect();
    let name = name.trim_start_matches(['.', '-']);
    let (stem, end) = name.rsplit_once('.').unwrap_or((name, ""));
    let stem: String = stem.chars().take(LONGEST_NAME).collect();
    let stem = if stem.is_empty() { "picture".to_owned() } else { stem };
    let named = |number: u32| {
        let number = if number == 1 { String::new() } else { format!("-{number}") };
        if end.is_empty() { format!("{stem}{number}") } else { format!("{stem}{number}.{end}") }
    };
    let is_free = |name: &String| chart.pictures.iter().all(|picture| picture.file != *name);
    (1..).map(named).find(is_free).expect("a chart has an end and the numbers have none")
}
