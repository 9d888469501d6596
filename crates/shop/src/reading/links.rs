//! Ids and the links between them: gathered while the elements are read, held against each other once all are known, so that a
//! link may point forward and a misspelt id is told with the nearest one that exists.

use std::collections::BTreeMap;
use std::ops::Range;

use crate::chart::When;
use crate::fault::nearest;
use crate::id::Id;

use super::key::Sort;
use super::log::Log;

/// An id as it was made by an element.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Made {
    /// What it names.
    pub sort: Sort,
    /// Where it stands.
    pub span: Option<Range<usize>>,
    /// The examples that have it.
    pub when: When,
}

#[derive(Debug, Default)]
pub(super) struct Links {
    made: BTreeMap<Id, Made>,
    built_in: BTreeMap<Id, Sort>,
    retired: Vec<(Id, Option<Range<usize>>)>,
    uses: Vec<Use>,
}

/// A link as an element writes it.
#[derive(Debug)]
pub(super) struct Use {
    pub(super) id: String,
    pub(super) sorts: &'static [Sort],
    pub(super) span: Option<Range<usize>>,
    /// `feeds of the point "9"`, for the sentence.
    pub(super) what: String,
    /// The examples that have the element which links.
    pub(super) when: When,
    /// Whether the link must lead somewhere on every example that has it.
    pub(super) on_every_example: bool,
}

impl Log {
    /// Notes that an element made this id. A second element of the same id is a fault, told at the second.
    pub(super) fn made(&self, id: &Id, sort: Sort, span: Option<Range<usize>>, when: &When) {
        let mut links = self.links.borrow_mut();
        match links.made.get(id) {
            Some(first) => {
                let says = format!(
                    "the id \"{id}\" is already taken by {} further up; ids are unique in the file, so give this one another, such \
                     as \"{id}a\"",
                    first.sort.name()
                );
                drop(links);
                self.fault(span, says);
            }
            None => {
                links.made.insert(id.clone(), Made { sort, span, when: when.clone() });
            }
        }
    }

    /// Notes an id that every chart has without writing it. An element of another sort may bear it too: a picture called `left`
    /// does not take the stand away.
    pub(crate) fn built_in(&self, id: &Id, sort: Sort) {
        self.links.borrow_mut().built_in.insert(id.clone(), sort);
    }

    /// Notes an id that was used once and may never be used again.
    pub(crate) fn retired(&self, id: Id, span: Option<Range<usize>>) {
        self.links.borrow_mut().retired.push((id, span));
    }

    pub(super) fn link(&self, link: Use) {
        self.links.borrow_mut().uses.push(link);
    }

    /// Holds every link against the ids that were made.
    pub(super) fn check_links(&self) {
        let links = self.links.take();
        for Use { id, sorts, span, what, when, on_every_example } in &links.uses {
            let found = Id::new(id).ok().and_then(|id| links.made.get(&id));
            match found {
                Some(made) if sorts.contains(&made.sort) => {
                    if let Some(example) = when.without(&made.when, &self.options()).filter(|_| *on_every_example) {
                        let says = format!(
                            "{what} names \"{id}\", which is not there when {}; give this element the same `when`, or take the link out",
                            said(&example)
                        );
                        self.fault(span.clone(), says);
                    }
                }
                _ if Id::new(id).is_ok_and(|id| links.built_in.get(&id).is_some_and(|sort| sorts.contains(sort))) => {}
                Some(made) => self.fault(
                    span.clone(),
                    format!("{what} names \"{id}\", which is {}, where {} is wanted", made.sort.name(), wanted(sorts)),
                ),
                None => {
                    let of_sort = links.made.iter().filter(|(_, made)| sorts.contains(&made.sort));
                    let built_in =
                        links.built_in.iter().filter(|(_, sort)| sorts.contains(sort)).map(|(id, _)| id.as_str());
                    let hint = match nearest(id, of_sort.map(|(id, _)| id.as_str()).chain(built_in)) {
                        Some(near) => format!("did you mean \"{near}\"?"),
                        None => format!("write the id of {} that the file holds", wanted(sorts)),
                    };
                    self.unknown(span.clone(), format!("{what} names \"{id}\", which is not in the file: {hint}"));
                }
            }
        }
        for (id, _) in &links.retired {
            if let Some(Made { span: Some(span), .. }) = links.made.get(id) {
                self.fault(
                    Some(span.clone()),
                    format!("the id \"{id}\" was retired and is never used again; give this element a new one"),
                );
            }
        }
    }
}

/// `"ram-oiling" is "oil holes" and "feed" is "hand"`.
fn said(example: &BTreeMap<Id, String>) -> String {
    let parts: Vec<String> = example.iter().map(|(option, choice)| format!("\"{option}\" is \"{choice}\"")).collect();
    parts.join(" and ")
}

fn wanted(sorts: &[Sort]) -> String {
    let names: Vec<&str> = sorts.iter().map(|sort| sort.name()).collect();
    names.join(" or ")
}
