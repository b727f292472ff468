//! Dates of a season and the temperature of the place where the bike stands.
