//! Charts that were read before, by the fingerprint of their text: a revision never changes, so neither does what it says. Reading
//! ten thousand charts is most of the work of a large shop's round.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};

use shop::chart::Chart;

use super::sha256;

/// How many bytes of text the remembered charts may have had. The demo's shaper has about thirty thousand.
const MOST: usize = 150_000_000;

/// Charts that were read before. Clones share it.
#[derive(Clone, Debug)]
pub(crate) struct Memory {
    kept: Arc<Mutex<Kept>>,
    most: usize,
}

#[derive(Debug, Default)]
struct Kept {
    charts: HashMap<String, Arc<Chart>>,
    bytes: usize,
}

impl Default for Memory {
    fn default() -> Self {
        Self { kept: Arc::default(), most: MOST }
    }
}

impl Memory {
    /// The chart whose text has this fingerprint, if it was read before.
    pub(crate) fn chart(&self, print: &str) -> Option<Arc<Chart>> {
        self.with(|kept| kept.charts.get(print).map(Arc::clone))
    }

    /// Reads a text and remembers its chart. Nothing comes of a text that is not the one of the fingerprint, or that has faults.
    pub(crate) fn read(&self, print: &str, text: &str) -> Option<Arc<Chart>> {
        if sha256(text.as_bytes()) != print {
            return None;
        }
        let chart = Arc::new(Chart::read(text).value?);
        self.with(|kept| {
            // Forgetting everything costs one slow round; asking which is the oldest would cost something on every one.
            if kept.bytes + text.len() > self.most {
                *kept = Kept::default();
            }
            if kept.charts.insert(print.to_owned(), Arc::clone(&chart)).is_none() {
                kept.bytes += text.len();
            }
        });
        Some(chart)
    }

    fn with<T>(&self, what: impl FnOnce(&mut Kept) -> T) -> T {
        // A panic elsewhere cannot have left half a chart here: each is put in whole.
        what(&mut self.kept.lock().unwrap_or_else(PoisonError::into_inner))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const CHART: &str = "chart = 1\n[machine]\nname = \"M\"\n";

    #[test]
    fn a_chart_is_read_once_and_only_under_its_own_fingerprint() {
        let memory = Memory::default();
        let print = sha256(CHART.as_bytes());
        assert!(memory.chart(&print).is_none());
        let read = memory.read(&print, CHART).expect("a chart without faults");
        assert!(memory.chart(&print).is_some_and(|kept| Arc::ptr_eq(&kept, &read)));
        assert!(memory.read(&print, &CHART.replace('M', "N")).is_none(), "another text than the one that was kept");
        let faulty = "chart = 1\n";
        assert!(memory.read(&sha256(faulty.as_bytes()), faulty).is_none());
    }

    #[test]
    fn it_never_grows_beyond_its_bound() {
        let memory = Memory { most: 3 * CHART.len(), ..Memory::default() };
        for number in 0..10 {
            let text = format!("{CHART}# {number}\n");
            assert!(memory.read(&sha256(text.as_bytes()), &text).is_some());
            memory.with(|kept| {
                assert_eq!(kept.bytes, kept.charts.len() * text.len());
                assert!((1..=2).contains(&kept.charts.len()), "two fit and three do not");
            });
        }
    }
}
