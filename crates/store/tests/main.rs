//! The data file, tried from outside.
