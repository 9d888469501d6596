//! One stand of the round as a card: what to move, which cans to take, the points with the next word to press, and the one
//! large button. That button writes down oil given and nothing else; signs are seen one by one.

use advice::round::{Act, AtStand, Chosen, Phase, Round, RoundPoint};
use advice::words;
use maud::Render as _;
use shop::chart::State;
use shop::logbook::BatchKey;
use shop::snapshot::Mark;

use super::sheet::Company;
use super::{Choice, in_words};
use crate::log::obstacles;
use crate::machines::sides;
use crate::parts::{Action, Balloon, Fold, Link, PointRow, Press, Stand};
use crate::phrase::capital;
use crate::shop_state::{View, on_clock};
use crate::{Error, FormKey};

/// The anchors of the cards, in their order: one stand may be there once in each phase, and more often where a slide is moved on.
/// `before` goes before each, where several machines are on the page.
pub(super) fn anchors(stands: &[AtStand], before: &str) -> Vec<String> {
    let mut anchors: Vec<String> = Vec::with_capacity(stands.len());
    for at in stands {
        let phase = match at.phase {
            Phase::Wipe | Phase::Stopped => "stand",
            Phase::Set => "set",
            Phase::Running => "running",
        };
        let first = format!("{before}{phase}-{}", at.stand.as_ref().map_or("anywhere", |stand| stand.as_str()));
        let mut anchor = first.clone();
        for number in 2.. {
            if !anchors.contains(&anchor) {
                break;
            }
            anchor = format!("{first}-{number}");
        }
        anchors.push(anchor);
    }
    anchors
}

/// Whether oil was given in this round.
pub(crate) fn is_given(point: &RoundPoint) -> bool {
    point.act != Act::Look && point.progress.dosed.is_some()
}

/// Whether its sign is still to be looked for: nothing was said of it since the oil was given.
pub(super) fn wants_look(point: &RoundPoint) -> bool {
    point.sign.is_some() && sign(point).is_none()
}

/// The card.
pub(super) fn card(at: &AtStand, anchor: &str, view: &View, choice: &Choice, company: Company) -> Result<Stand, Error> {
    let act = |to: &str, words: &str, about: String, more: &[(&str, String)]| -> Result<Action, Error> {
        let mut hidden = choice.pairs();
        hidden.push(("stand".to_owned(), anchor.to_owned()));
        hidden.extend(more.iter().map(|(name, value)| ((*name).to_owned(), value.clone())));
        Ok(Action { hidden, about: Some(about), ..Action::new(to, FormKey::fresh()?, words) })
    };
    let supplies = Supplies::of(at);
    let mut points = Vec::new();
    for (number, point) in at.points.iter().enumerate() {
        let about = format!("point {}, {}", point.id, point.name);
        let press = |to: &str, words: &str, more: &[(&str, String)]| {
            let more: Vec<_> = more.iter().cloned().chain([("points", point.id.to_string())]).collect();
            act(to, words, about.clone(), &more)
        };
        let looks = point.act == Act::Look || (is_given(point) && point.sign.is_some());
        let (next, other) = if point.act != Act::Look && !is_given(point) {
            let word = if point.act == Act::TopUp { "Topped up" } else { "Oiled" };
            (Some(press("/log/dosings", word, &[])?), None)
        } else if !looks || matches!(sign(point), Some(Sign::Seen(_))) {
            (None, None)
        } else {
            // What was looked for and missing may still come; that it is missing is not said twice.
            let other = match sign(point) {
                None => Some(press("/log/signs", "Not seen", &[("sign", "missing".to_owned())])?),
                Some(_) => None,
            };
            (Some(press("/log/signs", "Seen", &[("sign", "seen".to_owned())])?), other)
        };
        // What is set before the first point stands above the whole list.
        let first =
            words::first(point).filter(|_| number > 0 && next.is_some() && !is_given(point)).unwrap_or_default();
        points.push(PointRow {
            first,
            cautions: cautions(point).into_iter().map(str::to_owned).collect(),
            number: Balloon(point.id.to_string()),
            name: point.name.clone(),
            to: Some(choice.point(&point.id)),
            dose: if is_given(point) { String::new() } else { point.dose.clone().unwrap_or_default() },
            can: if is_given(point) { String::new() } else { can(point, &supplies) },
            small: if is_given(point) { String::new() } else { small(point) },
            sign: point.sign.clone().unwrap_or_default(),
            done: done(point, view),
            hindered: hindered(point, view),
            next,
            other,
        });
    }
    let open: Vec<&RoundPoint> = at.points.iter().filter(|p| p.act != Act::Look && !is_given(p)).collect();
    let whole = if open.is_empty() || at.state == State::Running {
        None
    } else {
        let ids: Vec<String> = open.iter().map(|point| point.id.to_string()).collect();
        let words = match in_words(at.stand.as_ref().map(|stand| stand.as_str())) {
            Some(stand) => format!("{} is oiled", capital(&stand)),
            None => "All of these are oiled".to_owned(),
        };
        Some(act("/log/dosings", &words, words::count(open.len(), "point"), &[("points", ids.join(","))])?)
    };
    let undo = last_act(at).map(|mark| {
        let batch = BatchKey::of(&mark.key).as_str().to_owned();
        act("/log/withdrawals", "Undo", format!("the last act, {}", at.name), &[("batch", batch)])
    });
    let left: Vec<_> = at.points.iter().filter(|point| !point.is_done()).map(|point| &point.id).collect();
    let fold = if left.is_empty() {
        None
    } else {
        let of = at.points.iter().filter(|point| left.contains(&&point.id)).map(|p| (&p.id, p.name.as_str())).collect();
        let form = obstacles::form(choice.pairs(), anchor, of, FormKey::fresh()?);
        Some(Fold::shut("Could not reach one", form.render()))
    };
    Ok(Stand {
        id: anchor.to_owned(),
        name: at.name.clone(),
        spoken: spoken(at, anchor, view, company),
        count: count(at),
        setup: setup(at, &supplies),
        points,
        whole,
        fold,
        under: place(at, view).map(Press::Link).into_iter().chain(undo.transpose()?.map(Press::Action)).collect(),
    })
}

/// The stand's name for a reader who does not see what stands above it: one stand may be on the page in several phases, for several
/// machines, and twice in one phase.
fn spoken(at: &AtStand, anchor: &str, view: &View, company: Company) -> Option<String> {
    let phase = match at.phase {
        Phase::Wipe | Phase::Stopped => None,
        Phase::Set => Some("machine set for it".to_owned()),
        Phase::Running => Some("machine running".to_owned()),
    };
    let stand = at.stand.as_ref().map_or("anywhere", |stand| stand.as_str());
    let again = anchor.rsplit_once('-').filter(|_| !anchor.ends_with(stand));
    let again = again.map(|(_, number)| format!("visit {number}"));
    let machine = (company == Company::Among).then(|| view.name().to_owned());
    let more: Vec<String> = phase.into_iter().chain(again).chain(machine).collect();
    (!more.is_empty()).then(|| format!("{}, {}", at.name, more.join(", ")))
}

/// The way to the drawing on which the first of the points has its place.
fn place(at: &AtStand, view: &View) -> Option<Link> {
    let chart = &view.machine.chart;
    let shown = at.points.iter().find_map(|point| {
        let point = chart.point(&point.id)?;
        point.picture.as_ref().filter(|_| point.at.is_some())
    });
    shown.map(|picture| Link::new(sides::address(&view.machine.id, picture), "Show where"))
}

/// What to take care of, while the point is still to be done.
fn cautions(point: &RoundPoint) -> Vec<&'static str> {
    let open = point.cautions.iter().filter(|_| !point.is_done());
    open.map(|caution| words::caution_at(*caution)).collect()
}

/// The button that writes down all that is still to be oiled on the stopped machine; nothing where one stand is left.
pub(super) fn all_oiled(round: &Round, choice: &Choice, anchor: &str) -> Result<Option<Action>, Error> {
    let open =
        |at: &&AtStand| at.state == State::Stopped && at.points.iter().any(|p| p.act != Act::Look && !is_given(p));
    let stands: Vec<&AtStand> = round.stands.iter().filter(open).collect();
    if stands.len() < 2 {
        return Ok(None);
    }
    let points = stands.iter().flat_map(|at| &at.points).filter(|point| point.act != Act::Look && !is_given(point));
    let ids: Vec<String> = points.map(|point| point.id.to_string()).collect();
    let mut hidden = choice.pairs();
    hidden.push(("stand".to_owned(), anchor.to_owned()));
    hidden.push(("points".to_owned(), ids.join(",")));
    let about = Some(words::count(ids.len(), "point"));
    Ok(Some(Action {
        hidden,
        about,
        ..Action::new("/log/dosings", FormKey::fresh()?, "All of these places are oiled")
    }))
}

/// What was last said of the sign, since the oil was given.
enum Sign<'a> {
    Seen(&'a Mark),
    Missing(&'a Mark),
}

fn sign(point: &RoundPoint) -> Option<Sign<'_>> {
    let progress = &point.progress;
    let given = progress.dosed.as_ref().filter(|_| point.act != Act::Look);
    let fresh = |mark: &&Mark| given.is_none_or(|given| mark.happened >= given.happened);
    let seen = progress.sign_seen.as_ref().filter(fresh);
    let missing = progress.sign_missing.as_ref().filter(fresh);
    match (seen, missing) {
        (Some(seen), Some(missing)) if (missing.happened, missing.entry) > (seen.happened, seen.entry) => {
            Some(Sign::Missing(missing))
        }
        (Some(seen), _) => Some(Sign::Seen(seen)),
        (None, missing) => missing.map(Sign::Missing),
    }
}

/// What was written down: `Oiled at 9:12, seen at 9:14`.
fn done(point: &RoundPoint, view: &View) -> Option<String> {
    let at = |mark: &Mark| on_clock(&view.moment, mark.happened).strftime("%-H:%M").to_string();
    let given = point.progress.dosed.as_ref().filter(|_| point.act != Act::Look).map(|mark| {
        let word = if point.act == Act::TopUp { "topped up" } else { "oiled" };
        format!("{word} at {}", at(mark))
    });
    let sign = match sign(point) {
        Some(Sign::Seen(mark)) => Some(format!("seen at {}", at(mark))),
        Some(Sign::Missing(mark)) => Some(format!("not seen at {}", at(mark))),
        None => None,
    };
    // A sign that was seen before any oil was given in this round says nothing of the oil to come.
    let sign = sign.filter(|_| point.act == Act::Look || given.is_some());
    let said: Vec<String> = given.into_iter().chain(sign).collect();
    (!said.is_empty()).then(|| capital(&said.join(", ")))
}

/// Why it was not reached, while it is still to be done.
fn hindered(point: &RoundPoint, view: &View) -> Option<String> {
    let (mark, reason) = point.progress.not_reached.as_ref().filter(|_| !point.is_done())?;
    Some(format!("Not reached at {}: {reason}", on_clock(&view.moment, mark.happened).strftime("%-H:%M")))
}

/// The act that an undo takes back: the last that was written down here in this round.
fn last_act(at: &AtStand) -> Option<&Mark> {
    let marks = at.points.iter().flat_map(|point| {
        let progress = &point.progress;
        let hindered = progress.not_reached.as_ref().map(|(mark, _)| mark);
        [&progress.dosed, &progress.sign_seen, &progress.sign_missing].into_iter().flatten().chain(hindered)
    });
    marks.max_by_key(|mark| mark.entry)
}

fn count(at: &AtStand) -> String {
    let noun = if at.points.iter().all(|point| point.act == Act::Look) { "sign" } else { "point" };
    let left = at.points.iter().filter(|point| !point.is_done()).count();
    match (left, at.points.len()) {
        (0, _) => "done".to_owned(),
        (left, all) if left == all => words::count(all, noun),
        (left, all) => format!("{left} of {all} left"),
    }
}

/// The cans with their oils that a stand needs, each once.
struct Supplies(Vec<String>);

impl Supplies {
    fn of(at: &AtStand) -> Self {
        let open = || at.points.iter().filter(|point| !point.is_done());
        let in_can = |oil: &Chosen| open().any(|other| other.can.is_some() && other.oil.as_ref() == Some(oil));
        let mut said = Vec::new();
        for point in open() {
            // Where a can holds the oil it is named with the can, and not a second time without.
            let is_named = point.can.is_none() && point.oil.as_ref().is_some_and(in_can);
            if let Some(supply) = supply(point).filter(|supply| !is_named && !said.contains(supply)) {
                said.push(supply);
            }
        }
        Self(said)
    }

    fn is_mixed(&self) -> bool {
        self.0.len() > 1
    }
}

/// `Short can: Way oil 68`, or the oil alone where no can holds it.
fn supply(point: &RoundPoint) -> Option<String> {
    let oil = point.oil.as_ref().filter(|_| point.act != Act::Look)?;
    Some(match &point.can {
        Some(can) => format!("{}: {}", capital(&can.name), oil.name),
        None => oil.name.clone(),
    })
}

/// What is set before the first point, what still stands as it was set before, and which cans to take.
fn setup(at: &AtStand, supplies: &Supplies) -> String {
    let is_set = |point: &RoundPoint| point.first.iter().any(|setup| setup.reading.is_act());
    let first = at.points.first().and_then(|point| {
        let lead = if is_set(point) { "Set the machine" } else { "First" };
        words::first(point).map(|first| format!("{lead}: {first}"))
    });
    let still: Vec<&str> = at.still.iter().map(String::as_str).collect();
    let still = (!still.is_empty()).then(|| format!("Still: {}", words::join(&still)));
    let said = first.iter().chain(&still).chain(&supplies.0).map(|said| format!("{said}."));
    said.collect::<Vec<_>>().join(" ")
}

/// Which can to take for the point, where the stand needs more than one.
fn can(point: &RoundPoint, supplies: &Supplies) -> String {
    let named = supply(point).filter(|_| supplies.is_mixed());
    named.and_then(|_| point.can.as_ref().or(point.oil.as_ref())).map_or_else(String::new, |one| one.name.clone())
}

/// How it is oiled and where it hides.
fn small(point: &RoundPoint) -> String {
    let method = (point.act != Act::Look).then(|| point.method.to_string());
    capital(&method.into_iter().chain(point.place.clone()).collect::<Vec<_>>().join(": "))
}
