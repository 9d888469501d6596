//! The sheet itself: head, title block, body, and the foot with the four places of the shop.

use maud::{DOCTYPE, Markup, Render, html};

use super::TitleBlock;
use crate::assets;

/// One whole page.
#[derive(Debug)]
pub struct Page {
    /// What the browser's tab says.
    pub title: String,
    /// The place in the foot that this page belongs to, when it belongs to one.
    pub section: Option<Section>,
    /// Where the foot's first place leads: today's round of the machine at hand, or of any.
    pub today: String,
    /// The cells at the top.
    pub block: TitleBlock,
    /// Everything below them, beginning with the one `h1`.
    pub body: Markup,
}

/// The four places that the foot leads to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// What is to be oiled now.
    Today,
    /// The machines and their charts.
    Machines,
    /// The oils, and the cans.
    Shelf,
    /// What was done and seen.
    Log,
}

impl Section {
    /// In the order of the foot.
    pub const ALL: [Self; 4] = [Self::Today, Self::Machines, Self::Shelf, Self::Log];

    /// Where the section begins.
    pub fn path(self) -> &'static str {
        match self {
            Self::Today => "/",
            Self::Machines => "/machines",
            Self::Shelf => "/shelf",
            Self::Log => "/log",
        }
    }

    /// Its name in the foot.
    pub fn name(self) -> &'static str {
        match self {
            Self::Today => "Today",
            Self::Machines => "Machines",
            Self::Shelf => "Shelf",
            Self::Log => "Log",
        }
    }
}

impl Render for Page {
    fn render(&self) -> Markup {
        html! {
            (DOCTYPE)
            html lang="en" {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="color-scheme" content="light dark";
                    title { (self.title) }
                    link rel="stylesheet" href=(assets::SHEET.href());
                    link rel="icon" type="image/svg+xml" href=(assets::ICON.href());
                }
                body.page {
                    a.page-skip href="#sheet" { "To the sheet" }
                    main.page-sheet #sheet tabindex="-1" { (self.block) (self.body) }
                    nav.page-foot aria-label="Shop" {
                        @for section in Section::ALL {
                            @let to = if section == Section::Today { &self.today } else { section.path() };
                            a href=(to) aria-current=[(self.section == Some(section)).then_some("page")] {
                                (section.name())
                            }
                        }
                    }
                }
            }
        }
    }
}
