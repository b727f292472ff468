//! Oil: fill for the job, filter allowance, first pour, bottles.
