//! Why a network has no answer, as data, with the name of the node or tube that is to be mended.

use crate::Error;

/// What is wrong with a network.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// A size that cannot be.
    Size {
        /// What has it: `tube`, `pump`, `node` or `network`.
        of: &'static str,
        /// Its name; empty for the network.
        name: String,
        /// The size and its limits.
        error: Error,
    },
    /// A name that two of one kind bear.
    Twice {
        /// What they are.
        of: &'static str,
        /// The name.
        name: String,
    },
    /// A tube or pump that leads to a node that is not there.
    UnknownNode {
        /// What leads there: `tube` or `pump`.
        of: &'static str,
        /// Its name.
        name: String,
        /// The node that it names.
        node: String,
    },
    /// A tube or pump that ends where it begins.
    ToItself {
        /// What does.
        of: &'static str,
        /// Its name.
        name: String,
    },
    /// A node that no tube joins to a tank, an outlet, a lip or a relief valve, so that nothing settles its head.
    NoEnd {
        /// The first such node.
        node: String,
    },
    /// A node of a part that is shut off by what is blocked or one-way, and yet draws or is fed.
    ShutOff {
        /// The node that draws or is fed.
        node: String,
    },
    /// A node of a part from which more is drawn than is fed into it, while all its ends only let out.
    Drained {
        /// The node that draws most.
        node: String,
    },
    /// The flows do not balance as they must, or the search for what is open did not end.
    NotSolved {
        /// The node with the worst imbalance.
        node: String,
        /// The imbalance as a part of the largest flow.
        residual: f64,
        /// Factorizations made.
        iterations: u32,
    },
}
