//! What can be pressed: a link that only leads somewhere, and an act that writes something down.

use maud::{Markup, Render, html};

use crate::FormKey;

/// A line of text that leads to another page.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Link {
    /// Where to.
    pub to: String,
    /// The words to press.
    pub words: String,
}

/// A form of one button, with a key of its own. The page comes back when it is done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Action {
    /// Where the form is sent.
    pub to: String,
    /// Makes the act count once.
    pub key: FormKey,
    /// What goes with it unseen: names and values.
    pub hidden: Vec<(String, String)>,
    /// The words on the button.
    pub words: String,
    /// What the button is about, for a reader who does not see what stands beside it: "point 4, ram way".
    pub about: Option<String>,
}

/// Either of the two, where a row may hold both.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Press {
    /// Leads somewhere.
    Link(Link),
    /// Writes something down.
    Action(Action),
}

impl Link {
    /// A link with these words.
    pub fn new(to: impl Into<String>, words: impl Into<String>) -> Self {
        Self { to: to.into(), words: words.into() }
    }

    /// The link, with what it is about for a reader who does not see what stands beside it.
    pub fn about(&self, about: &str) -> Markup {
        html! { a.button-line href=(self.to) aria-label={ (self.words) ": " (about) } { (self.words) } }
    }

    /// The link as a box, where it is the next thing to do.
    pub fn as_box(&self) -> Markup {
        html! { a.button href=(self.to) { (self.words) } }
    }
}

impl Action {
    /// An act with nothing but its key.
    pub fn new(to: impl Into<String>, key: FormKey, words: impl Into<String>) -> Self {
        Self { to: to.into(), key, hidden: Vec::new(), words: words.into(), about: None }
    }

    /// The act as one large button over the whole width.
    pub fn as_whole(&self) -> Markup {
        self.with_class("button button-whole")
    }

    /// The act as the main button of a page.
    pub fn as_main(&self) -> Markup {
        self.with_class("button button-main")
    }

    /// The act as a line of text, for undoing and for what is seldom wanted.
    pub fn as_line(&self) -> Markup {
        self.with_class("button-line")
    }

    fn with_class(&self, class: &str) -> Markup {
        let spoken = self.about.as_ref().map(|about| format!("{}: {about}", self.words));
        html! {
            form method="post" action=(self.to) {
                (self.key)
                @for (name, value) in &self.hidden { input type="hidden" name=(name) value=(value); }
                button class=(class) aria-label=[spoken] { (self.words) }
            }
        }
    }
}

impl Render for Link {
    fn render(&self) -> Markup {
        html! { a.button-line href=(self.to) { (self.words) } }
    }
}

impl Render for Action {
    fn render(&self) -> Markup {
        self.with_class("button")
    }
}

impl Press {
    /// As a line of text.
    pub fn as_line(&self) -> Markup {
        match self {
            Self::Link(link) => link.render(),
            Self::Action(action) => action.as_line(),
        }
    }
}

impl Render for Press {
    fn render(&self) -> Markup {
        match self {
            Self::Link(link) => link.as_box(),
            Self::Action(action) => action.render(),
        }
    }
}
