//! What a person sees when something cannot be answered: a status, one plain sentence and a way onward.
//!
//! This file alone turns errors into pages. Handlers return [`Error`]; answers that the framework makes by itself (a
//! form it cannot read, a method it does not know) are given a page by `dress`.

use axum::http::header::{ALLOW, CONTENT_TYPE};
use axum::http::{HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};
use maud::html;

use crate::parts::{Fold, Link, Page, Section, TitleBlock};
use crate::phrase::capital;

/// Why a page could not be given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Error {
    /// There is no such thing under this address.
    NotFound {
        /// The word for what was looked for: "page", "machine", "oiling point".
        what: &'static str,
    },
    /// There is none of this name.
    Unknown {
        /// The word for what was looked for.
        what: &'static str,
        /// The name that was asked for.
        asked: String,
        /// The nearest there is: its address and what it is called.
        near: Option<(String, String)>,
    },
    /// Somebody else was quicker, and what was asked no longer goes.
    Overtaken {
        /// What is so already.
        said: String,
    },
    /// The request came under a name that this server does not answer to.
    ForeignHost {
        /// The port, for telling the right address.
        port: u16,
    },
    /// A form was sent from a page that is not ours.
    ForeignForm,
    /// The request lacks something that our own pages and every browser send, or cannot be read at all.
    WrongForm,
    /// The address does not take this kind of request.
    WrongMethod,
    /// More was sent than this form may hold.
    TooLarge,
    /// Something failed inside; what it said, for whoever mends it.
    Broken {
        /// The message of the failure.
        said: String,
    },
}

impl Error {
    /// The failure of something inside, with its own words kept for the page.
    pub fn broken(cause: impl std::fmt::Display) -> Self {
        Self::Broken { said: cause.to_string() }
    }

    fn status(&self) -> StatusCode {
        match self {
            Self::NotFound { .. } | Self::Unknown { .. } => StatusCode::NOT_FOUND,
            Self::Overtaken { .. } => StatusCode::CONFLICT,
            Self::ForeignHost { .. } | Self::ForeignForm => StatusCode::FORBIDDEN,
            Self::WrongForm => StatusCode::BAD_REQUEST,
            Self::WrongMethod => StatusCode::METHOD_NOT_ALLOWED,
            Self::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Self::Broken { .. } => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    /// What is wrong, and what to do about it.
    fn sentences(&self) -> (String, String) {
        let (wrong, onward) = match self {
            Self::NotFound { what } => {
                return (
                    format!("There is no such {what} here."),
                    "The address may be mistyped, or what it named was renamed or taken out.".to_owned(),
                );
            }
            Self::Unknown { what, asked, .. } => {
                return (
                    format!("There is no {what} \"{asked}\" here."),
                    "The address may be mistyped, or what it named was renamed or taken out. Nothing was changed."
                        .to_owned(),
                );
            }
            Self::Overtaken { said } => {
                return (
                    "This was changed meanwhile, so nothing was written down.".to_owned(),
                    format!("{}. Look in the log for how it stands now.", capital(said)),
                );
            }
            Self::ForeignHost { port } => {
                return (
                    "The shop does not answer under this address.".to_owned(),
                    format!(
                        "Use the address that was shown when the program started. \
                         On the computer that it runs on, that is http://localhost:{port}/"
                    ),
                );
            }
            Self::ForeignForm => (
                "This did not come from the shop's own page, so it was not written down.",
                "Open the page here and enter it again.",
            ),
            Self::WrongForm => (
                "What was sent could not be read, so nothing was written down.",
                "Go back, load the page anew and send it again.",
            ),
            Self::WrongMethod => {
                ("This address cannot be used in that way.", "Go to a page and press its button instead.")
            }
            Self::TooLarge => (
                "This is more than the form can hold, so nothing was written down.",
                "Go back and shorten the text, or choose a smaller picture.",
            ),
            Self::Broken { .. } => (
                "Something in the program failed.",
                "What you sent last may not have been written down: look in the log before you enter it again.",
            ),
        };
        (wrong.to_owned(), onward.to_owned())
    }

    fn page(&self) -> Page {
        let (wrong, onward) = self.sentences();
        let near = match self {
            Self::Unknown { near: Some((to, words)), .. } => Some(Link::new(to, format!("Did you mean {words}?"))),
            _ => None,
        };
        let list =
            matches!(self, Self::Unknown { .. }).then(|| Link::new(Section::Machines.path(), "See all machines"));
        let links = near.into_iter().chain(list).chain([
            Link::new(Section::Today.path(), "Go to today's round"),
            Link::new(Section::Log.path(), "Look in the log"),
        ]);
        let said = match self {
            Self::Broken { said } if !said.is_empty() => Some(said),
            _ => None,
        };
        Page {
            title: wrong.clone(),
            section: None,
            today: Section::Today.path().to_owned(),
            block: TitleBlock::new([("Shop", "No answer"), ("Number", self.status().as_str())]),
            body: html! {
                h1 { (wrong) }
                p { (onward) }
                // A page under a foreign name must not lead further into it.
                @if !matches!(self, Self::ForeignHost { .. }) {
                    div.row { @for link in links { (link) } }
                }
                @if let Some(said) = said {
                    (Fold::shut("What the program said", html! { p { (said) } }))
                }
            },
        }
    }
}

impl IntoResponse for Error {
    fn into_response(self) -> Response {
        (self.status(), maud::Render::render(&self.page())).into_response()
    }
}

impl From<store::Error> for Error {
    fn from(cause: store::Error) -> Self {
        match cause {
            store::Error::Conflict(said) => Self::Overtaken { said },
            other => Self::broken(other),
        }
    }
}

impl From<getrandom::Error> for Error {
    fn from(cause: getrandom::Error) -> Self {
        Self::broken(cause)
    }
}

/// The answer to every address that no route knows.
pub(crate) async fn no_such_page() -> Error {
    Error::NotFound { what: "page" }
}

/// Puts a page in place of an error that has none of its own.
pub(crate) async fn dress(bare: Response) -> Response {
    let status = bare.status();
    let has_page = bare.headers().get(CONTENT_TYPE).is_some_and(is_page);
    if has_page || !(status.is_client_error() || status.is_server_error()) {
        return bare;
    }
    let error = match status {
        StatusCode::NOT_FOUND => Error::NotFound { what: "page" },
        StatusCode::FORBIDDEN => Error::ForeignForm,
        StatusCode::METHOD_NOT_ALLOWED => Error::WrongMethod,
        StatusCode::PAYLOAD_TOO_LARGE => Error::TooLarge,
        _ if status.is_client_error() => Error::WrongForm,
        _ => Error::broken(status),
    };
    let mut dressed = error.into_response();
    if let Some(allow) = bare.headers().get(ALLOW) {
        dressed.headers_mut().insert(ALLOW, allow.clone());
    }
    dressed
}

fn is_page(content_type: &HeaderValue) -> bool {
    content_type.as_bytes().starts_with(b"text/html")
}
