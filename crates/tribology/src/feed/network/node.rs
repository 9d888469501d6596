//! A node: where tubes begin, meet or end, and what settles its head.

use super::Fault;
use crate::Error;
use crate::quantity::{Length, Quantity as _, VolumeFlow};

/// Where tubes meet or end.
#[derive(Clone, Debug, PartialEq)]
pub struct Node {
    /// Its name.
    pub name: String,
    /// What is here besides tubes.
    pub end: End,
    /// What is drawn here whatever the head; below zero what is fed in.
    pub draw: VolumeFlow,
}

/// What settles the head of a node. Heights and heads are counted from one level for the whole network.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum End {
    /// Nothing: tubes meet, or one ends dead.
    Closed,
    /// A tank so large that its level stays: oil comes and goes at this head.
    Head(Length),
    /// An open end at this height: oil leaves freely, none comes in, and below this head nothing leaves.
    Outlet(Length),
    /// A standpipe: the oil rises in it and runs over its lip at this height.
    Standpipe(Length),
    /// A relief valve that lets off at this head, as much as it must to hold it.
    Relief(Length),
}

impl Node {
    /// A node where nothing is drawn.
    ///
    /// - `name`: its name.
    /// - `end`: what settles its head.
    /// - returns: the node.
    #[must_use]
    pub fn new(name: impl Into<String>, end: End) -> Self {
        Self { name: name.into(), end, draw: VolumeFlow::from_m3_s(0.0) }
    }

    /// The same node with a fixed flow drawn.
    ///
    /// - `draw`: what is drawn; below zero what is fed in.
    /// - returns: the node.
    #[must_use]
    pub fn with_draw(self, draw: VolumeFlow) -> Self {
        Self { draw, ..self }
    }

    pub(super) fn check(&self) -> Result<(), Fault> {
        let fault = |error| Fault::Size { of: "node", name: self.name.clone(), error };
        let (least, most) = (VolumeFlow::from_si(f64::MIN), VolumeFlow::from_si(f64::MAX));
        Error::quantity_within("draw", self.draw, least, most).map_err(fault)?;
        if let Some((name, height)) = self.end.height() {
            let [least, most] = [-1e6, 1e6].map(Length::from_m);
            Error::quantity_within(name, height, least, most).map_err(fault)?;
        }
        Ok(())
    }
}

impl End {
    fn height(self) -> Option<(&'static str, Length)> {
        match self {
            End::Closed => None,
            End::Head(head) => Some(("head", head)),
            End::Outlet(height) => Some(("height of the outlet", height)),
            End::Standpipe(lip) => Some(("height of the lip", lip)),
            End::Relief(head) => Some(("head of the relief valve", head)),
        }
    }

    /// The head in metres, for a tank.
    pub(super) fn fixed(self) -> Option<f64> {
        if let End::Head(head) = self { Some(head.m()) } else { None }
    }

    /// The head in metres above which oil leaves, for an end that only lets out.
    pub(super) fn ceiling(self) -> Option<f64> {
        match self {
            End::Outlet(at) | End::Standpipe(at) | End::Relief(at) => Some(at.m()),
            End::Closed | End::Head(_) => None,
        }
    }
}
