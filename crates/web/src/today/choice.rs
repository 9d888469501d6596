//! What today's round is for: a machine, a job and hours. The choice travels with every form and link of the page.

use advice::round::Plan;
use serde::Deserialize;
use shop::id::Id;
use tribology::quantity::Time;

use crate::parts::{Choice as Answer, Entry, Field, Filter};
use crate::shop_state::View;
use crate::{address, hours, phrase};

/// The choice as an address or a form carries it. What is left empty is the usual: the first machine, ordinary work, the
/// shop's own hours.
#[derive(Clone, Debug, Default, Deserialize)]
pub(crate) struct Asked {
    #[serde(default)]
    pub(crate) machine: String,
    #[serde(default)]
    pub(crate) job: String,
    #[serde(default)]
    pub(crate) hours: String,
}

/// The choice, held against the chart.
pub(crate) struct Choice {
    /// As it was asked.
    asked: Asked,
    pub(crate) machine: Id,
    pub(crate) job: Option<Id>,
    pub(crate) job_name: String,
    pub(crate) hours: Time,
    job_fault: Option<String>,
    hours_fault: Option<String>,
}

/// What ordinary work is called: work that wakes no sleeping point.
const ORDINARY: &str = "Ordinary work";

impl Asked {
    /// The address of today's round for this choice.
    pub(crate) fn today(&self) -> String {
        address::with_query("/", &[("machine", &self.machine), ("job", &self.job), ("hours", &self.hours)])
    }

    /// The choice as names and values that a form carries.
    pub(crate) fn pairs(&self) -> Vec<(String, String)> {
        let pairs = [("machine", &self.machine), ("job", &self.job), ("hours", &self.hours)];
        let said = pairs.into_iter().filter(|(_, value)| !value.is_empty());
        said.map(|(name, value)| (name.to_owned(), value.clone())).collect()
    }
}

impl Choice {
    /// Holds what was asked against the chart. What cannot be is told beside its field, and the usual is taken.
    pub(crate) fn settled(view: &View, asked: &Asked) -> Self {
        let chart = &view.machine.chart;
        let job = chart.jobs.iter().find(|job| job.id.as_str() == asked.job);
        let job_fault = (job.is_none() && !asked.job.is_empty()).then(|| no_such_job(&asked.job));
        let hours = if asked.hours.trim().is_empty() { Ok(view.settings.hours) } else { hours::read(&asked.hours) };
        let (hours, hours_fault) = match hours {
            Ok(hours) => (hours, None),
            Err(fault) => (view.settings.hours, Some(fault)),
        };
        Self {
            asked: Asked { machine: view.machine.id.to_string(), ..asked.clone() },
            machine: view.machine.id.clone(),
            job: job.map(|job| job.id.clone()),
            job_name: job.map_or_else(|| ORDINARY.to_owned(), |job| job.name.clone()),
            hours,
            job_fault,
            hours_fault,
        }
    }

    /// The planned hours as they were asked for; empty for the usual ones.
    pub(crate) fn typed_hours(&self) -> &str {
        &self.asked.hours
    }

    pub(crate) fn plan(&self) -> Plan {
        Plan { job: self.job.clone(), hours: self.hours }
    }

    /// The address of today's round for this choice.
    pub(crate) fn today(&self) -> String {
        self.asked.today()
    }

    /// The page of a point, with the choice to come back to.
    pub(crate) fn point(&self, point: &Id) -> String {
        let page = address::point(&self.machine, point);
        address::with_query(&page, &[("job", &self.asked.job), ("hours", &self.asked.hours)])
    }

    /// Where to say who is at work, and come back.
    pub(crate) fn hand(&self) -> String {
        let Asked { machine, job, hours } = &self.asked;
        address::with_query("/hand", &[("machine", machine), ("job", job), ("hours", hours)])
    }

    /// The choice as names and values that a form carries.
    pub(crate) fn pairs(&self) -> Vec<(String, String)> {
        self.asked.pairs()
    }

    pub(crate) fn is_faulty(&self) -> bool {
        self.job_fault.is_some() || self.hours_fault.is_some()
    }

    /// The form that chooses anew.
    pub(crate) fn filter(&self, view: &View) -> Filter {
        let machines = view.all.iter().map(|row| Answer::new(row.id.as_str(), &row.name)).collect();
        let hours =
            if self.asked.hours.is_empty() { advice::words::hours(self.hours) } else { self.asked.hours.clone() };
        let field = |name: &str, label: &str, entry, value: &str, fault: &Option<String>| Field {
            name: name.to_owned(),
            form: "choose".to_owned(),
            label: label.to_owned(),
            entry,
            value: value.to_owned(),
            fault: fault.clone(),
            ..Field::default()
        };
        Filter {
            to: "/".to_owned(),
            fields: vec![
                field("machine", "Machine", Entry::List(machines), self.machine.as_str(), &None),
                field("job", "Today's job", Entry::List(jobs(view)), &self.asked.job, &self.job_fault),
                field("hours", "Hours, like 3 h or 90 min", Entry::Quantity, &hours, &self.hours_fault),
            ],
            words: "Show this round".to_owned(),
        }
    }
}

/// What is wrong with a job that the machine does not have.
pub(crate) fn no_such_job(asked: &str) -> String {
    format!("This machine has no job \"{asked}\". Choose one from the list, or \"{ORDINARY}\".")
}

/// The jobs of a machine to choose from, ordinary work first.
pub(crate) fn jobs(view: &View) -> Vec<Answer> {
    let jobs = view.machine.chart.jobs.iter().map(|job| Answer::new(job.id.as_str(), phrase::capital(&job.name)));
    [Answer::new("", ORDINARY)].into_iter().chain(jobs).collect()
}
