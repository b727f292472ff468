//! Drain and refill: only what runs out can be exchanged.

use super::CoolantError;
use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, Quantity, Term, term};
use uom::si::f64::{Ratio, Volume};

/// Glycol in the usual bottle, by volume. Common practice, no source; the blank says so.
pub const READY_MIXED: f64 = 0.5;

/// What to drain, and to fill up again straight from the bottle.
pub const EXCHANGE: Law = Law {
    formula: "d = V · (w − p) / (b − p)",
    gives: Measure::Oil,
    source: source::MIXING,
    holds: "the circuit is well mixed before it is drained; the reserve tank is left out",
};

/// Of the bottle into what is mixed before it goes in.
pub const PREMIX: Law = Law {
    formula: "B = (w · V − p · (V − D)) / b",
    gives: Measure::Oil,
    source: source::MIXING,
    holds: "all that runs out is exchanged, mixed before it goes in; the reserve tank is left out",
};

/// Water into it.
pub const WATER: Law = Law {
    formula: "W = D − B",
    gives: Measure::Oil,
    source: source::MIXING,
    holds: "distilled water; the little that a mixture shrinks is left out",
};

/// What goes in for all that runs out.
#[derive(Debug, Clone, PartialEq)]
pub struct Premix {
    /// From the bottle.
    pub bottle: Answer<Volume>,
    /// Distilled water.
    pub water: Answer<Volume>,
}

/// A circuit with its coolant, and what it is to have.
///
/// Invariant: volumes above zero, no more runs out than there is; shares from 0 to 100 %.
struct Job {
    circuit: f64,
    drains: f64,
    present: f64,
    ends: [f64; 2],
    wanted: f64,
    bottle: f64,
}

impl Job {
    fn new(
        [circuit, drains]: [Volume; 2],
        present: Ratio,
        bounds: [Ratio; 2],
        [wanted, bottle]: [Ratio; 2],
    ) -> Result<Self, CoolantError> {
        let [circuit, drains] = [circuit, drains].map(Quantity::base);
        if !(circuit.is_finite() && circuit > 0.0) {
            return Err(CoolantError::Circuit);
        }
        if !(drains > 0.0 && drains <= circuit * (1.0 + 1e-9)) {
            return Err(CoolantError::Drains);
        }
        let [present, wanted, bottle] = [present, wanted, bottle].map(Quantity::base);
        let [low, high] = bounds.map(Quantity::base);
        if !(0.0 <= low && low <= present && present <= high && high <= 1.0) {
            return Err(CoolantError::Concentration);
        }
        if !(bottle > 0.0 && bottle <= 1.0) {
            return Err(CoolantError::Bottle);
        }
        Ok(Self { circuit, drains, present, ends: [low, high], wanted, bottle })
    }

    /// Water alone for what runs out, or the bottle alone, or less than all of it.
    fn in_reach(self) -> Result<Self, CoolantError> {
        let [least, most] = self.mixed();
        let reach = [least, most.max(self.present)];
        let inside = reach[0] - 1e-9 <= self.wanted && self.wanted <= reach[1] + 1e-9;
        inside.then_some(self).ok_or(CoolantError::OutOfReach(reach))
    }

    /// With water alone for all that runs out, and with the bottle alone.
    fn mixed(&self) -> [f64; 2] {
        let exchanged = self.drains / self.circuit;
        let stays = self.present * (1.0 - exchanged);
        [stays, stays + self.bottle * exchanged]
    }

    fn terms(&self) -> Vec<Term> {
        let share = |symbol, name, it| term(symbol, name, Measure::Share, Ratio::of_base(it));
        vec![
            term("V", "coolant circuit", Measure::Oil, Volume::of_base(self.circuit)),
            share("w", "wanted concentration", self.wanted),
            share("p", "concentration now", self.present),
            share("b", "glycol in the bottle", self.bottle),
        ]
    }

    /// An answer with its ends in order, between nothing and all that runs out.
    fn answer(
        &self,
        of: impl Fn(f64) -> f64,
        law: &'static Law,
        terms: Vec<Term>,
    ) -> Answer<Volume> {
        let held = |present: f64| of(present).max(0.0).min(self.drains) + 0.0;
        let value = Volume::of_base(held(self.present));
        let [one, other] = self.ends.map(held);
        let ends = [one.min(other), one.max(other)].map(Volume::of_base);
        if ends[0] == ends[1] {
            return Answer::exact(value, law, terms);
        }
        Answer::within(value, ends, law, terms)
    }
}

/// What to drain of a `circuit` of which at most `drains` runs out, and to fill up from the bottle as it is.
///
/// `present` is what is in it now, within `bounds`; a bottle's share is [`READY_MIXED`] where it is ready-mixed.
///
/// # Errors
/// All but [`CoolantError::OverSixty`]; [`CoolantError::NotWithBottle`] where only water or [`premix`] gets there.
pub fn exchange(
    volumes: [Volume; 2],
    present: Ratio,
    bounds: [Ratio; 2],
    wanted_bottle: [Ratio; 2],
) -> Result<Answer<Volume>, CoolantError> {
    let job = Job::new(volumes, present, bounds, wanted_bottle)?.in_reach()?;
    let of = |present: f64| {
        if (job.wanted - present).abs() < 1e-9 {
            return 0.0;
        }
        job.circuit * (job.wanted - present) / (job.bottle - present)
    };
    let value = of(job.present);
    if !(0.0..=job.drains * (1.0 + 1e-9)).contains(&value) {
        return Err(CoolantError::NotWithBottle);
    }
    let terms = job.terms();
    Ok(job.answer(of, &EXCHANGE, terms))
}

/// What to mix for all that runs out, so that the circuit gets the concentration `wanted`.
///
/// # Errors
/// As [`exchange`]; [`CoolantError::NotWithBottle`] where less than all is to be exchanged for a weaker bottle.
pub fn premix(
    volumes: [Volume; 2],
    present: Ratio,
    bounds: [Ratio; 2],
    wanted_bottle: [Ratio; 2],
) -> Result<Premix, CoolantError> {
    let job = Job::new(volumes, present, bounds, wanted_bottle)?.in_reach()?;
    // A bottle weaker than what is in the bike may want less exchanged than all.
    if job.wanted > job.mixed()[1] + 1e-9 {
        return Err(CoolantError::NotWithBottle);
    }
    let of = |present: f64| {
        (job.wanted * job.circuit - present * (job.circuit - job.drains)) / job.bottle
    };
    let mut terms = job.terms();
    terms.push(term("D", "runs out at the drain", Measure::Oil, Volume::of_base(job.drains)));
    let bottle = job.answer(of, &PREMIX, terms);
    let terms = vec![
        term("D", "runs out at the drain", Measure::Oil, Volume::of_base(job.drains)),
        term("B", "from the bottle", Measure::Oil, bottle.value),
    ];
    let water = job.answer(|present| job.drains - of(present), &WATER, terms);
    Ok(Premix { bottle, water })
}
