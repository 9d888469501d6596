//! The pages, asked like a browser asks them: a request in, a parsed page out.
//!
//! [`routes`] follows the addresses; [`sheet`] checks the stylesheet against the pages that use it.

mod ask;
mod routes;
mod sheet;
