//! Why a network of tubes has no answer, in a sentence.

use tribology::feed::network::Fault;

use super::no_answer;

/// The reason as a sentence without its full stop: what is wrong, where, and what would be right.
#[must_use]
pub fn no_flow(fault: &Fault) -> String {
    match fault {
        Fault::Size { of, name, error } if name.is_empty() => format!("of the {of} {}", no_answer(error)),
        Fault::Size { of, name, error } => format!("of the {of} \"{name}\" {}", no_answer(error)),
        Fault::Twice { of, name } => format!("two {of}s are called \"{name}\"; give each a name of its own"),
        Fault::UnknownNode { of, name, node } => {
            format!("the {of} \"{name}\" leads to \"{node}\", which is no node; mend its name, or add the node")
        }
        Fault::ToItself { of, name } => {
            format!("the {of} \"{name}\" ends where it begins; let it join two different nodes")
        }
        Fault::NoEnd { node } => format!(
            "nothing settles how high the oil stands at the node \"{node}\": no tube leads from it to a tank, an outlet, a lip or a \
             relief valve; add a head, an outlet, a lip or a relief to a node that it is joined to"
        ),
        Fault::ShutOff { node } => format!(
            "what is drawn or fed at the node \"{node}\" has no way: blocked or one-way tubes shut it off; look which of them is open"
        ),
        Fault::Drained { node } => format!(
            "more is drawn than is fed where the node \"{node}\" is, and no tank is joined to it; draw less, or add a tank with its head"
        ),
        Fault::NotSolved { node, residual, iterations } => format!(
            "no flows were found that balance, after {iterations} steps; at the node \"{node}\" {residual:.1e} of the largest flow is \
             left over; look at lengths and bores that are far from life"
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tribology::Error;
    use tribology::quantity::Length;

    #[test]
    fn a_reason_names_what_is_to_be_mended() {
        let error = Error::quantity_positive("bore", Length::from_mm(0.0)).expect_err("no bore");
        let fault = Fault::Size { of: "tube", name: "a".to_owned(), error };
        assert_eq!(no_flow(&fault), "of the tube \"a\" the bore is 0 µm; it must be above 0 µm");
        assert!(no_flow(&Fault::NoEnd { node: "far".to_owned() }).contains("\"far\""));
    }
}
