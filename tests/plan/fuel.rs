//! Fuel panels.
