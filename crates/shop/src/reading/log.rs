//! What is noted while a file is read: faults, ids and links.

use std::cell::{Cell, Ref, RefCell};
use std::ops::Range;

use crate::chart::ChartOption;
use crate::fault::{Fault, Severity};

use super::links::Links;

/// The notebook of one reading.
#[derive(Debug)]
pub struct Log {
    faults: RefCell<Vec<Fault>>,
    pub(super) links: RefCell<Links>,
    options: RefCell<Vec<ChartOption>>,
    newer: Cell<bool>,
    length: usize,
}

impl Log {
    /// An empty notebook for this text.
    #[must_use]
    pub fn new(text: &str) -> Self {
        Self {
            faults: RefCell::default(),
            links: RefCell::default(),
            options: RefCell::default(),
            newer: Cell::new(false),
            length: text.len(),
        }
    }

    /// Notes a fault at a place.
    pub fn fault(&self, span: Option<Range<usize>>, says: String) {
        self.note(Severity::Fault, span, says);
    }

    /// Notes something worth a look at a place.
    pub fn warn(&self, span: Option<Range<usize>>, says: String) {
        self.note(Severity::Warning, span, says);
    }

    /// Notes what this program does not understand: a fault in a file of our own format, a warning in a newer one.
    pub fn unknown(&self, span: Option<Range<usize>>, says: String) {
        let severity = if self.newer.get() { Severity::Warning } else { Severity::Fault };
        self.note(severity, span, says);
    }

    /// The options of the chart, once they are read.
    pub(crate) fn options(&self) -> Ref<'_, Vec<ChartOption>> {
        self.options.borrow()
    }

    pub(crate) fn set_options(&self, options: Vec<ChartOption>) {
        self.options.replace(options);
    }

    pub(super) fn is_newer(&self) -> bool {
        self.newer.get()
    }

    pub(super) fn set_newer(&self) {
        self.newer.set(true);
    }

    pub(super) fn into_faults(self) -> Vec<Fault> {
        let mut faults = self.faults.into_inner();
        faults.sort_by_key(|fault| fault.span.start);
        faults
    }

    fn note(&self, severity: Severity, span: Option<Range<usize>>, says: String) {
        let span = span.unwrap_or(0..self.length.min(1));
        self.faults.borrow_mut().push(Fault { severity, span, says });
    }
}
