//! Two surfaces with oil between them: how thick the film is, what it carries, what it drags and how warm it runs.
//!
//! Start at [`journal`], the plain bearing. How oil gets there is for [`crate::feed`]; what follows for a machine is for the reasoning.

pub mod journal;
