//! Drops a minute and what they come to: from a rate to a flow and back, and how opening, head and viscosity set the rate.
//!
//! Start at [`drip_flow`]. How large one drop is stands in `drop.rs`.

use super::{Liquid, Tube, counted, flow_with_losses, not_negative, pressure_of_head, sized, step};
use crate::quantity::{KinematicViscosity, Length, Rotation, Volume, VolumeFlow};
use crate::{Answer, Error, Standing};

/// More drops than this in a second run together into a stream.
///
/// Source: `common-practice`.
const COUNTABLE: Rotation = Rotation::from_per_second(5.0);

/// The flow that drops come to.
///
/// `Q = n V`
///
/// - `rate`: drops in a time, `n`.
/// - `drop`: volume of one, `V`.
/// - returns: the flow.
///
/// # Range
/// Up to some five drops a second, which can still be told apart; a warning beyond.
///
/// # Errors
/// [`Error::OutOfRange`] when the rate is below zero or the drop not above it.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::feed::drip_flow;
/// use tribology::quantity::{Rotation, Volume};
/// let found = drip_flow(Rotation::from_per_minute(10.0), Volume::from_ul(33.0));
/// assert!(found.is_ok_and(|found| (found.value.ml_h() - 19.8).abs() < 1e-9));
/// ```
pub fn drip_flow(rate: Rotation, drop: Volume) -> Result<Answer<VolumeFlow>, Error> {
    let n = not_negative("rate", rate)?;
    let v = Error::quantity_positive("drop", drop)?;
    let flow = not_negative("flow", VolumeFlow::from_m3_s(n.per_second() * v.m3()))?;
    let inputs = vec![counted("n", n), sized("V", v)];
    let name = "Flow of a drip";
    let found = step(name, "Q = n V", inputs, sized("Q", flow), "own-calculation", Standing::OwnCalculation);
    Ok(countable(Answer::of(flow, found), n))
}

/// The rate at which a flow comes in drops.
///
/// `n = Q / V`
///
/// - `flow`: the flow, `Q`.
/// - `drop`: volume of one, `V`.
/// - returns: drops in a time.
///
/// # Range
/// As [`drip_flow`].
///
/// # Errors
/// [`Error::OutOfRange`] when the flow is below zero or the drop not above it.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::feed::drip_rate;
/// use tribology::quantity::{Volume, VolumeFlow};
/// let found = drip_rate(VolumeFlow::from_ml_h(19.8), Volume::from_ul(33.0));
/// assert!(found.is_ok_and(|found| (found.value.per_minute() - 10.0).abs() < 1e-9));
/// ```
pub fn drip_rate(flow: VolumeFlow, drop: Volume) -> Result<Answer<Rotation>, Error> {
    let q = not_negative("flow", flow)?;
    let v = Error::quantity_positive("drop", drop)?;
    let rate = not_negative("rate", Rotation::from_per_second(q.m3_s() / v.m3()))?;
    let inputs = vec![sized("Q", q), sized("V", v)];
    let name = "Rate of a drip";
    let found = step(name, "n = Q / V", inputs, counted("n", rate), "own-calculation", Standing::OwnCalculation);
    Ok(countable(Answer::of(rate, found), rate))
}

/// The rate at which a head of oil drips through an opening.
///
/// `n = Q(ρ g h) / V`
///
/// - `opening`: the narrowest way, as a round hole of this bore and length; for a needle, the hole of the same area.
/// - `head`: height of the oil in the glass over the tip, `h`.
/// - `liquid`: the oil.
/// - `drop`: volume of one drop, `V`.
/// - returns: drops in a time.
///
/// # Range
/// The ends are counted as in [`flow_with_losses`]. A needle's ring-shaped gap passes less than a hole of its area, so that the rate is a
/// first setting only: count the drops.
///
/// # Errors
/// [`Error::OutOfRange`] when the head is below zero or the drop not above it.
///
/// # Source
/// `hagen-poiseuille`, `dagan-1982`
///
/// # Example
/// ```
/// use tribology::feed::{Liquid, Tube, drip_rate_through};
/// use tribology::quantity::{Density, KinematicViscosity, Length, Volume};
/// let opening = Tube::new(Length::from_mm(0.8), Length::from_mm(3.0)).expect("an opening");
/// let oil = Liquid::from_kinematic(KinematicViscosity::from_mm2_s(150.0), Density::from_kg_m3(880.0)).expect("an oil");
/// let found = drip_rate_through(opening, Length::from_mm(40.0), oil, Volume::from_ul(33.0));
/// assert!(found.is_ok_and(|found| (10.0..20.0).contains(&found.value.per_minute())));
/// ```
pub fn drip_rate_through(opening: Tube, head: Length, liquid: Liquid, drop: Volume) -> Result<Answer<Rotation>, Error> {
    let pressure = pressure_of_head(head, liquid.density())?;
    let flow = flow_with_losses(opening, 0, liquid, pressure.value)?;
    let rate = drip_rate(flow.value, drop)?;
    Ok(rate.after(flow.after(pressure)))
}

/// The rate at which the same opening drips when head or viscosity has changed.
///
/// `n₂ = n₁ (h₂ / h₁) (ν₁ / ν₂)`
///
/// - `rate`: drops in a time as counted, `n₁`.
/// - `then`: head over the tip and viscosity when they were counted, `h₁` and `ν₁`.
/// - `now`: the same now, `h₂` and `ν₂`.
/// - returns: drops in a time now.
///
/// # Range
/// An opening so narrow that the oil creeps through it, untouched since the drops were counted, and drops of one size.
///
/// # Errors
/// [`Error::OutOfRange`] when the rate or the head now is below zero, or another input not above it.
///
/// # Source
/// `hagen-poiseuille`
///
/// # Example
/// ```
/// use tribology::feed::drip_rate_changed;
/// use tribology::quantity::{KinematicViscosity, Length, Rotation};
/// let at = |head, viscosity| (Length::from_mm(head), KinematicViscosity::from_mm2_s(viscosity));
/// let cold = drip_rate_changed(Rotation::from_per_minute(12.0), at(40.0, 110.0), at(40.0, 440.0));
/// assert!(cold.is_ok_and(|cold| (cold.value.per_minute() - 3.0).abs() < 1e-9));
/// ```
pub fn drip_rate_changed(
    rate: Rotation,
    then: (Length, KinematicViscosity),
    now: (Length, KinematicViscosity),
) -> Result<Answer<Rotation>, Error> {
    let n = not_negative("rate", rate)?;
    let h1 = Error::quantity_positive("head then", then.0)?;
    let nu1 = Error::quantity_positive("viscosity then", then.1)?;
    let h2 = not_negative("head now", now.0)?;
    let nu2 = Error::quantity_positive("viscosity now", now.1)?;
    let changed = not_negative("rate", n * ((h2 / h1) * (nu1 / nu2)))?;
    let inputs = vec![counted("n₁", n), sized("h₂", h2), sized("h₁", h1), sized("ν₁", nu1), sized("ν₂", nu2)];
    let (name, formula) = ("Rate of a drip after a change", "n₂ = n₁ (h₂ / h₁) (ν₁ / ν₂)");
    let found = step(name, formula, inputs, counted("n₂", changed), "hagen-poiseuille", Standing::Handbook);
    Ok(countable(Answer::of(changed, found), changed))
}

fn countable<T>(answer: Answer<T>, rate: Rotation) -> Answer<T> {
    answer.quantity_vouched_within("rate of drops", rate, Rotation::from_per_second(0.0), COUNTABLE)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_is_named() {
        let (rate, drop) = (Rotation::from_per_minute, Volume::from_ul);
        let refused = drip_flow(rate(-1.0), drop(33.0));
        assert!(matches!(refused, Err(Error::OutOfRange { name: "rate", .. })), "{refused:?}");
        let refused = drip_flow(rate(10.0), drop(0.0));
        assert!(matches!(refused, Err(Error::OutOfRange { name: "drop", .. })), "{refused:?}");
        assert!(drip_rate(VolumeFlow::from_ml_h(f64::NAN), drop(33.0)).is_err());
        assert_eq!(drip_flow(rate(400.0), drop(33.0)).expect("a stream").warnings.len(), 1);
    }
}
