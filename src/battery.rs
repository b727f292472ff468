//! The battery over the season: charge, resting voltage, days to act.
