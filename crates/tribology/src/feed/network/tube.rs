//! What joins nodes: tubes, which pass the more the steeper the fall, and pumps, which pass a fixed flow less their slip.

use super::{Fault, Network};
use crate::Error;
use crate::math::pow;
use crate::quantity::{Length, Quantity as _, VolumeFlow};
use std::f64::consts::PI;

/// A round tube between two nodes.
#[derive(Clone, Debug, PartialEq)]
pub struct Tube {
    /// Its name.
    pub name: String,
    /// The node where it begins.
    pub from: String,
    /// The node where it ends.
    pub to: String,
    /// Its length.
    pub length: Length,
    /// Its inner diameter.
    pub bore: Length,
    /// What is left of its flow at a given fall: one when clean, less when narrowed, zero when blocked.
    pub passes: f64,
    /// Which ways oil may run.
    pub way: Way,
}

/// Which ways oil may run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Both.
    Both,
    /// From where the tube begins to where it ends: it holds a check valve without a spring.
    Forward,
}

/// A pump that gives a fixed flow less what slips back through it.
#[derive(Clone, Debug, PartialEq)]
pub struct Pump {
    /// Its name.
    pub name: String,
    /// The node that it draws from.
    pub from: String,
    /// The node that it feeds.
    pub to: String,
    /// What it gives when both heads are equal.
    pub flow: VolumeFlow,
    /// What slips back.
    pub slip: Option<Slip>,
}

/// How much slips back through a pump: in proportion to the head that it works against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slip {
    /// The flow that slips back.
    pub flow: VolumeFlow,
    /// The head at which it was measured, with this oil.
    pub at: Length,
}

impl Tube {
    /// A clean tube that oil may run through both ways.
    ///
    /// - `name`: its name.
    /// - `from`, `to`: the nodes where it begins and ends.
    /// - `length`, `bore`: its length and inner diameter.
    /// - returns: the tube.
    #[must_use]
    pub fn new(
        name: impl Into<String>,
        from: impl Into<String>,
        to: impl Into<String>,
        length: Length,
        bore: Length,
    ) -> Self {
        let (name, from, to) = (name.into(), from.into(), to.into());
        Self { name, from, to, length, bore, passes: 1.0, way: Way::Both }
    }

    /// Flow in m³/s for a metre of fall.
    pub(super) fn conductance(&self, network: &Network) -> Result<f64, Fault> {
        let clean = self.clean_conductance(network);
        clean.map_err(|error| Fault::Size { of: "tube", name: self.name.clone(), error })
    }

    fn clean_conductance(&self, network: &Network) -> Result<f64, Error> {
        let (bore, length) =
            (Error::quantity_positive("bore", self.bore)?, Error::quantity_positive("length", self.length)?);
        let passes = Error::unless_within("part that passes", self.passes, 0.0, 1.0)?;
        let clean = network.gravity.m_s2() * PI * pow(bore.m(), 4.0) / (128.0 * network.viscosity.m2_s() * length.m());
        // A bore of no life can leave the range of numbers though each size is one.
        Error::unless_positive("flow for a metre of fall", clean)?;
        Ok(passes * clean)
    }

    /// The Reynolds number of a flow.
    pub(super) fn reynolds(&self, network: &Network, m3_s: f64) -> f64 {
        4.0 * m3_s.abs() / (PI * self.bore.m() * network.viscosity.m2_s())
    }
}

impl Pump {
    /// Flow in m³/s that slips back for a metre of head.
    pub(super) fn slip_for_a_metre(&self) -> Result<f64, Fault> {
        let fault = |error| Fault::Size { of: "pump", name: self.name.clone(), error };
        let none = VolumeFlow::from_si(0.0);
        let most = VolumeFlow::from_si(f64::MAX);
        Error::quantity_within("flow", self.flow, none, most).map_err(fault)?;
        let Some(slip) = self.slip else { return Ok(0.0) };
        let flow = Error::quantity_within("slip", slip.flow, none, most).map_err(fault)?;
        let at = Error::quantity_positive("head of the slip", slip.at).map_err(fault)?;
        Error::unless_within("slip for a metre of head", flow.m3_s() / at.m(), 0.0, f64::MAX).map_err(fault)
    }
}
