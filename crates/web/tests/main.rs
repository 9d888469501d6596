//! The pages, asked like a browser asks them: a request in, a parsed page out.
//!
//! [`bench`] is a small shop in a folder of its own; [`routes`] follows the addresses; [`sheet`] checks the stylesheet against the pages that use it.

mod ask;
mod bench;
mod routes;
mod sheet;
