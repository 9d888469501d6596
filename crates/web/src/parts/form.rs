//! Questions one under another with the act at the end. When something is to be mended, all of it is told first.

use maud::{Markup, Render, html};

use super::{Field, Link};
use crate::FormKey;

/// The form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Form {
    /// Where it is sent.
    pub to: String,
    /// Makes it count once.
    pub key: FormKey,
    /// What goes with it unseen: names and values.
    pub hidden: Vec<(String, String)>,
    /// The questions.
    pub fields: Vec<Field>,
    /// What is wrong with the whole, or with nothing that is asked here.
    pub wrong: Vec<String>,
    /// The words on the button.
    pub words: String,
    /// The way out without writing anything down.
    pub back: Option<Link>,
}

impl Render for Form {
    fn render(&self) -> Markup {
        let faults: Vec<(&Field, &String)> =
            self.fields.iter().filter_map(|field| field.fault.as_ref().map(|fault| (field, fault))).collect();
        html! {
            form.form method="post" action=(self.to) {
                (self.key)
                @if !faults.is_empty() || !self.wrong.is_empty() {
                    div.form-mend role="alert" {
                        h2 { "Nothing was written down yet" }
                        @for wrong in &self.wrong { p { (wrong) } }
                        ul {
                            @for (field, fault) in &faults {
                                li { a href={ "#" (field.anchor()) } { (field.label) } " " (fault) }
                            }
                        }
                    }
                }
                @for (name, value) in &self.hidden { input type="hidden" name=(name) value=(value); }
                @for field in &self.fields { (field) }
                div.form-acts {
                    button.button.button-main { (self.words) }
                    @if let Some(back) = &self.back { (back) }
                }
            }
        }
    }
}
