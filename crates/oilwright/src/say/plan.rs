//! The fewest oils, as lines for people and as one object for programs.

use advice::Reasoned;
use advice::shelf_plan::{
    Asked, Choice, Fate, Given, MixUp, Purchase, ShelfPlan, Side, Year, fates, mix_ups, shelf_plan, shopping,
};
use advice::verdict::Verdict;
use advice::words;
use serde_json::{Value as Json, json};
use shop::id::Id;
use shop::shelf::Amount;
use tribology::quantity::Units;

use crate::failure::Failure;

/// A plan with what follows from the choices that it advises.
pub(crate) struct Planned {
    pub(crate) reasoned: Reasoned<ShelfPlan>,
    shopping: Reasoned<Vec<Purchase>>,
    mix_ups: Vec<MixUp>,
    fates: Vec<(Id, Fate)>,
}

impl Planned {
    pub(crate) fn of(asked: &Asked<'_>, year: &Year) -> Self {
        let reasoned = shelf_plan(asked);
        let plan = reasoned.value();
        let advised: Vec<&Choice> = [&plan.oils, &plan.greases].into_iter().filter_map(Side::advice).collect();
        let shopping = shopping(asked, plan, &advised, year);
        let mix_ups = advised.iter().flat_map(|choice| mix_ups(asked, plan, choice)).collect();
        let fates = fates(asked, plan, &advised);
        Self { reasoned, shopping, mix_ups, fates }
    }

    /// What was assumed, each once.
    fn assumed(&self) -> Vec<String> {
        self.reasoned.assumed.iter().chain(&self.shopping.assumed).map(words::assumption).collect()
    }

    fn working(&self, units: Units) -> Vec<String> {
        self.reasoned.steps().iter().chain(self.shopping.steps()).map(|step| words::step(step, units)).collect()
    }
}

/// Prints the answer, the choices, who suffers by the one that is advised, what to buy, and what was assumed.
pub(crate) fn plan(planned: &Planned, units: Units, working: bool) -> Result<(), Failure> {
    let plan = planned.reasoned.value();
    super::line(&words::plan_answer(plan))?;
    for (side, thing) in [(&plan.oils, "oil"), (&plan.greases, "grease")] {
        if side.points > 0 {
            super::line("")?;
            choices(side, thing)?;
            if let Some(choice) = side.advice() {
                super::line(&format!("Advised: {}", words::names(plan, &choice.oils)))?;
                suffering(plan, choice)?;
            }
        }
    }
    if !plan.without_candidate.is_empty() {
        let points: Vec<String> = plan.without_candidate.iter().map(|at| words::point_at(plan, at)).collect();
        super::line(&format!("\nNothing that may be chosen does for: {}", points.join(", ")))?;
    }
    let name = |oil: &Id| words::names(plan, std::slice::from_ref(oil));
    if !planned.shopping.value().is_empty() {
        super::line("\nFor a year:")?;
        for one in planned.shopping.value() {
            let taken = words::taken(one, units);
            super::line(&format!("  {}: {taken}. To buy: {}.", name(&one.oil), words::purchase(one, units)))?;
        }
    }
    if !planned.fates.is_empty() {
        super::line("\nWhat becomes of each can:")?;
        for (oil, fate) in &planned.fates {
            super::line(&format!("  {}: {}.", name(oil), words::fate(plan, fate)))?;
        }
    }
    for mix_up in &planned.mix_ups {
        super::line(&format!("\nMind: {}.", words::mix_up(plan, mix_up)))?;
    }
    super::line("")?;
    for assumed in planned.assumed() {
        super::line(&format!("Assumed: {assumed}."))?;
    }
    if working {
        super::line("\nHow this was worked out:")?;
        for step in planned.working(units) {
            super::line(&format!("  {step}"))?;
        }
    }
    Ok(())
}

fn choices(side: &Side, thing: &str) -> Result<(), Failure> {
    let too_few = side.too_few.iter().map(|few| [words::count(few.k, thing), String::new(), words::too_few(few)]);
    let choices = side.choices.iter().map(|choice| {
        let ids: Vec<&str> = choice.oils.iter().map(|id| id.as_str()).collect();
        let says = format!("{} ({})", ids.join(", "), words::proof(choice));
        [words::count(choice.oils.len(), thing), format!("harm {}", choice.harm), says]
    });
    super::table(&too_few.chain(choices).collect::<Vec<_>>())
}

/// Those that get along with a stopgap, each with its reason, and how many are only served.
fn suffering(plan: &ShelfPlan, choice: &Choice) -> Result<(), Failure> {
    for given in choice.suffers().filter(|given| given.verdict == Verdict::Stopgap) {
        super::line(&format!("  {}: {}", called(plan, given), words::suffers(plan, given)))?;
    }
    let served = choice.suffers().filter(|given| given.verdict == Verdict::Serves).count();
    if served > 0 {
        super::line(&format!("  {} served, not suited; --json tells which", words::count(served, "point")))?;
    }
    Ok(())
}

fn called(plan: &ShelfPlan, given: &Given) -> String {
    format!("({}) {}", words::point_at(plan, &given.at), given.name)
}

/// The object that `--json` prints.
pub(crate) fn plan_json(planned: &Planned, units: Units) -> Json {
    let plan = planned.reasoned.value();
    let oils = side_json(plan, &plan.oils);
    json!({
        "answer": words::plan_answer(plan),
        "frontier": oils["frontier"],
        "advised": oils["advised"],
        "too_few": oils["too_few"],
        "without_candidate": plan.without_candidate.iter().map(|at| words::point_at(plan, at)).collect::<Vec<_>>(),
        "greases": side_json(plan, &plan.greases),
        "unknown": plan.unknown.iter().map(|at| words::point_at(plan, at)).collect::<Vec<_>>(),
        "shopping": planned.shopping.value().iter().map(purchase_json).collect::<Vec<_>>(),
        "confusions": planned.mix_ups.iter().map(|one| json!({
            "right": one.right.as_str(),
            "wrong": one.wrong.as_str(),
            "harmed": one.harmed.iter().map(|at| words::point_at(plan, at)).collect::<Vec<_>>(),
            "says": words::mix_up(plan, one),
        })).collect::<Vec<_>>(),
        "cans": planned.fates.iter().map(|(oil, fate)| json!({
            "oil": oil.as_str(),
            "becomes": words::fate(plan, fate),
        })).collect::<Vec<_>>(),
        "assumed": planned.assumed(),
        "working": planned.working(units),
    })
}

fn purchase_json(purchase: &Purchase) -> Json {
    let amount = |amount: Option<Amount>| match amount {
        Some(Amount::Volume(volume)) => json!({ "litres": volume.litres() }),
        Some(Amount::Mass(mass)) => json!({ "kg": mass.kg() }),
        None => Json::Null,
    };
    json!({
        "oil": purchase.oil.as_str(),
        "takes": amount(Some(purchase.takes)),
        "baths_litres": purchase.needed.baths.litres(),
        "by_hand_litres": purchase.needed.hand.litres(),
        "left": amount(purchase.left),
        "lacks": amount(purchase.lacks),
        "buy": purchase.packs.as_ref().map(|packs| json!({
            "count": packs.count,
            "pack": packs.pack.text,
            "price": packs.price.as_ref().map(|price| price.number),
            "currency": packs.price.as_ref().map(|price| &price.currency),
        })),
        "not_counted": purchase.needed.uncounted.len(),
    })
}

fn side_json(plan: &ShelfPlan, side: &Side) -> Json {
    json!({
        "frontier": side.choices.iter().map(|choice| choice_json(plan, choice)).collect::<Vec<_>>(),
        "advised": side.advice().map(|choice| choice.oils.len()),
        "too_few": side.too_few.iter().map(|few| json!({ "k": few.k, "proven": few.is_proven })).collect::<Vec<_>>(),
    })
}

fn choice_json(plan: &ShelfPlan, choice: &Choice) -> Json {
    json!({
        "k": choice.oils.len(),
        "oils": choice.oils.iter().map(|id| id.as_str()).collect::<Vec<_>>(),
        "harm": choice.harm,
        "proven": choice.is_proven(),
        "gap": choice.harm - choice.bound,
        "suffers": choice.suffers().map(|given| json!({
            "machine": given.at.machine.as_str(),
            "point": words::point_at(plan, &given.at),
            "oil": given.oil.as_str(),
            "verdict": given.verdict.to_string(),
            "best": given.best.to_string(),
            "weight": given.weight,
            "why": given.reasons.first().map(words::reason),
        })).collect::<Vec<_>>(),
    })
}
