//! A form that only chooses what is shown: it is sent with the address, and writes nothing down.

use maud::{Markup, Render, html};

use super::Field;

/// The form.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Filter {
    /// The page that it chooses for.
    pub to: String,
    /// What goes with it unseen: names and values.
    pub hidden: Vec<(String, String)>,
    /// The questions.
    pub fields: Vec<Field>,
    /// The words on the button.
    pub words: String,
}

impl Render for Filter {
    fn render(&self) -> Markup {
        html! {
            form.filter method="get" action=(self.to) {
                @for (name, value) in &self.hidden { input type="hidden" name=(name) value=(value); }
                @for field in &self.fields { (field) }
                button.button { (self.words) }
            }
        }
    }
}
