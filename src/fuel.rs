//! Fuel: how much to add, how much stabilizer, and how far to run it through.
