//! The round of one machine on the page: what comes first, the stands phase by phase with their cautions, and what comes after.

use advice::round::{Cans, Phase, Round, WipeAt, after_use, cans, cold};
use advice::words;
use advice::working::Reasoned;
use maud::{Markup, Render, html};
use shop::chart::State;
use tribology::quantity::Units;

use super::{Choice, Ran, run, stand_card, why};
use crate::parts::{Action, Fold, Form, Note, Stand, Steps};
use crate::phrase::capital;
use crate::shop_state::View;
use crate::{Error, FormKey};

/// The round of one machine.
pub(super) struct Sheet {
    /// The machine's name, where several are on the page.
    name: Option<String>,
    anchor: String,
    said: Vec<String>,
    signs: Option<String>,
    stop: Option<Note>,
    before: Vec<Steps>,
    groups: Vec<Group>,
    after: Vec<Steps>,
    run: Form,
    after_use: Markup,
    why: Markup,
    working: Markup,
    asleep: Option<String>,
}

/// The stands of one phase.
struct Group {
    heading: Option<&'static str>,
    /// What is put back before this phase.
    back: Option<String>,
    /// The caution, before the first stand that it concerns.
    caution: Option<Note>,
    stands: Vec<Stand>,
    /// The button for all that is left, after the last stopped stand.
    all: Option<Action>,
}

/// How many machines are on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Company {
    Alone,
    Among,
}

impl Sheet {
    pub(super) fn of(
        view: &View,
        choice: &Choice,
        mut reasoned: Reasoned<Round>,
        company: Company,
    ) -> Result<Self, Error> {
        let cans = cans(&view.machine, &view.shelf, &mut reasoned.answer.value);
        let round = reasoned.value();
        let before = match company {
            Company::Alone => String::new(),
            Company::Among => format!("{}-", view.machine.id),
        };
        let units = view.settings.units;
        Ok(Self {
            name: (company == Company::Among).then(|| view.name().to_owned()),
            anchor: format!("{before}run"),
            said: [words::summary(round)].into_iter().chain(words::within(round)).collect(),
            signs: signs_left(round),
            stop: stop(&cans, view),
            before: [cans_to_look_at(&cans), cold_ways(view, choice), wipes(round)].into_iter().flatten().collect(),
            groups: groups(view, choice, round, &before, company)?,
            after: [later(round), left_undone(round)].into_iter().flatten().collect(),
            run: run::form(view, Ran::planned(choice), &before, FormKey::fresh()?),
            after_use: after_work(view),
            why: why::points(round),
            working: why::working(&reasoned, units),
            asleep: asleep(round),
        })
    }
}

impl Render for Sheet {
    fn render(&self) -> Markup {
        html! {
            @if let Some(name) = &self.name { h2 { (name) } }
            @if let Some(stop) = &self.stop { (stop) }
            @for said in &self.said { p { (said) } }
            @if let Some(signs) = &self.signs { p.quiet { (signs) } }
            @for steps in &self.before { (steps) }
            @for group in &self.groups {
                @if let Some(heading) = group.heading { h2 { (heading) } }
                @if let Some(back) = &group.back { p { b { (back) } } }
                @if let Some(caution) = &group.caution { (caution) }
                div.two {
                    @for column in in_columns(&group.stands) { div.stack { @for stand in column { (stand) } } }
                }
                @if let Some(all) = &group.all { div { (all) } }
            }
            @for steps in &self.after { (steps) }
            h2 id=(self.anchor) { "After the work" }
            div { (Fold::shut("What to do when the work is done", self.after_use.clone())) }
            p.quiet { "The next round counts from the hours that the machine ran." }
            (self.run)
            div {
                (Fold::shut("Why these points", self.why.clone()))
                (Fold::shut("How this was worked out", self.working.clone()))
            }
            @if let Some(asleep) = &self.asleep { p.quiet { (asleep) } }
        }
    }
}

fn groups(view: &View, choice: &Choice, round: &Round, before: &str, company: Company) -> Result<Vec<Group>, Error> {
    let anchors = stand_card::anchors(&round.stands, before);
    let mut groups: Vec<Group> = Vec::new();
    let mut cautioned = None;
    for (phase, heading) in [
        (Phase::Stopped, None),
        (Phase::Set, Some("Now set the machine")),
        (Phase::Running, Some("Then start it slowly")),
    ] {
        let stands = round.stands.iter().zip(&anchors).filter(|(at, _)| at.phase == phase);
        let stands = stands.map(|(at, anchor)| stand_card::card(at, anchor, view, choice, company));
        let stands = stands.collect::<Result<Vec<_>, _>>()?;
        if stands.is_empty() {
            continue;
        }
        let state = if phase == Phase::Running { State::Running } else { State::Stopped };
        let caution = (cautioned != Some(state)).then(|| caution(state));
        cautioned = Some(state);
        let back = words::covers_back(round).filter(|_| phase == Phase::Running);
        groups.push(Group { heading, back, caution, stands, all: None });
    }
    let stopped = groups.iter().filter(|group| group.heading != Some("Then start it slowly")).count();
    if let Some(last) = stopped.checked_sub(1) {
        let anchor = groups[last].stands.last().map_or_else(String::new, |stand| stand.id.clone());
        groups[last].all = stand_card::all_oiled(round, choice, &anchor)?;
    }
    Ok(groups)
}

/// The stands in two columns of about as many rows, each walked from top to bottom.
fn in_columns(stands: &[Stand]) -> [&[Stand]; 2] {
    let rows: Vec<usize> = stands.iter().map(|stand| stand.points.len()).collect();
    let all: usize = rows.iter().sum();
    let cut = (1..=rows.len()).min_by_key(|cut| (2 * rows[..*cut].iter().sum::<usize>()).abs_diff(all));
    let (first, second) = stands.split_at(cut.unwrap_or(0));
    [first, second]
}

/// The caution of a state: its first sentence strong.
fn caution(state: State) -> Note {
    let said = words::caution(state);
    let (caution, rest) = said.split_once(". ").map_or((said.to_owned(), ""), |(a, b)| (format!("{a}."), b));
    Note { caution, rest: rest.to_owned(), more: None }
}

/// Signs of points that have their oil and were not looked at yet: oil given is not oil arrived.
fn signs_left(round: &Round) -> Option<String> {
    let points = round.stands.iter().flat_map(|at| &at.points);
    let open = points.filter(|point| stand_card::is_given(point) && stand_card::wants_look(point)).count();
    (open > 0).then(|| format!("{} still to look for where oil was given.", words::count(open, "sign")))
}

fn asleep(round: &Round) -> Option<String> {
    (round.asleep > 0).then(|| {
        let only = if round.asleep == 1 { "that only another job needs" } else { "that only other jobs need" };
        format!("Asleep: {} {only}.", words::count(round.asleep, "point"))
    })
}

fn wipes(round: &Round) -> Option<Steps> {
    let line = |at: &WipeAt| (format!("{}:", at.name), words::wipe(at));
    let lines: Vec<(String, String)> = round.wipe.iter().map(line).collect();
    (!lines.is_empty()).then(|| Steps {
        heading: "First wipe".to_owned(),
        says: "Chips under fresh oil lap the ways.".to_owned(),
        lines,
    })
}

fn later(round: &Round) -> Option<Steps> {
    let lines: Vec<_> = round.later.iter().map(|later| (String::new(), capital(&words::later(later)))).collect();
    (!lines.is_empty()).then(|| Steps {
        heading: "In the middle of the job".to_owned(),
        says: "Stop the machine for these.".to_owned(),
        lines,
    })
}

fn left_undone(round: &Round) -> Option<Steps> {
    let lines: Vec<_> = round.left_undone.iter().map(|left| (String::new(), words::left_undone(left))).collect();
    (!lines.is_empty()).then(|| Steps {
        heading: "Left undone".to_owned(),
        says: "What matters most comes first. It stays due.".to_owned(),
        lines,
    })
}

/// Boxes with an oil in them that does harm.
fn stop(cans: &Cans, view: &View) -> Option<Note> {
    let told = cans.stops.iter().map(|(name, inside)| words::stop(name, inside, &view.shelf));
    let rest = told.collect::<Vec<_>>().join(" ");
    (!rest.is_empty()).then(|| Note { caution: "Do not run it yet.".to_owned(), rest, more: None })
}

/// Cans that do not do, and where each can must never be set.
fn cans_to_look_at(cans: &Cans) -> Option<Steps> {
    let unsuited = cans.unsuited.iter().map(|found| (String::new(), words::unsuited(found)));
    let apart = cans.keep_apart.iter().map(|found| (String::new(), format!("{}.", words::kept_apart(found))));
    let lines: Vec<_> = unsuited.chain(apart).collect();
    (!lines.is_empty()).then(|| Steps {
        heading: "Look at the cans".to_owned(),
        says: "What is in a can counts, not its shape.".to_owned(),
        lines,
    })
}

fn cold_ways(view: &View, choice: &Choice) -> Option<Steps> {
    let found = cold(&view.machine, &view.shelf, choice.temperature?);
    let units: Units = view.settings.units;
    // What is done about several points in the same way is said once.
    let mut lines: Vec<(String, String)> = Vec::new();
    for cold in found.value() {
        let (why, remedy) = (words::cold(cold, units), words::cold_remedy(cold));
        match lines.iter_mut().find(|(_, known)| known == remedy) {
            Some((all, _)) => *all = format!("{all} {why}."),
            None => lines.push((format!("{why}."), remedy.to_owned())),
        }
    }
    Some(Steps {
        heading: if lines.is_empty() { "Not too cold".to_owned() } else { "Too cold for these".to_owned() },
        says: if lines.is_empty() {
            "Every way of oiling delivers at this temperature, by rough limits (common practice and memory, no source)."
                .to_owned()
        } else {
            "By rough limits (common practice and memory, no source); what you see and feel goes before.".to_owned()
        },
        lines,
    })
}

/// What is done after the work, act by act.
fn after_work(view: &View) -> Markup {
    let acts = after_use(&view.machine);
    html! {
        p { "Machine stopped, switched off and held off." }
        ol {
            @for act in &acts {
                li {
                    (words::after_use(act))
                    @if !act.to.is_empty() { ul { @for at in &act.to { li { (capital(&words::after_at(act, at))) } } } }
                }
            }
        }
    }
}
