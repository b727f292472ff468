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

/// A circuit with its coolant, and what it is to have.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Job {
    /// All that is in it, without the reserve tank.
    pub circuit: Volume,
    /// What of it runs out at the drain.
    pub drains: Volume,
    /// Glycol in what is there now.
    pub present: Ratio,
    /// Lowest and highest that it may be.
    pub bounds: [Ratio; 2],
    /// Glycol that is wanted.
    pub wanted: Ratio,
    /// Glycol in the bottle; [`READY_MIXED`] where it is ready-mixed.
    pub bottle: Ratio,
}

/// What to do, one way or the other.
#[derive(Debug, Clone, PartialEq)]
pub struct Refill {
    /// Drained, and filled up from the bottle as it is: one answer, the first. For all that runs out, from the bottle, and
    /// distilled water: two, the last. Either, both or none.
    pub ways: Vec<Answer<Volume>>,
    /// What the circuit has then: what is wanted, or the nearest to it.
    pub gets: Ratio,
    /// Why it is not all that is wanted.
    pub short: Option<Short>,
}

/// Why one drain and this bottle do not get there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Short {
    /// It has no more glycol than is wanted: no number of drains gets there.
    WeakBottle,
    /// A part stays in the engine; a second time gets there.
    Twice,
    /// A part stays in the engine.
    PartStays,
}

/// How to get from what is in the circuit to what is wanted. No way is given where it is there already, where
/// water alone would leave less than [`super::WEAK`] and still not get there, and where the present concentration is known
/// so roughly that no one way is right for all of it.
///
/// # Errors
/// [`CoolantError::Impossible`]; [`CoolantError::Drains`] where more runs out than there is.
pub fn refill(job: &Job) -> Result<Refill, CoolantError> {
    let [circuit, drains] = [job.circuit, job.drains].map(Quantity::base);
    let [present, low, high, wanted, bottle] =
        [job.present, job.bounds[0], job.bounds[1], job.wanted, job.bottle].map(Quantity::base);
    let sound = circuit > 0.0
        && circuit.is_finite()
        && drains > 0.0
        && (0.0 <= low && low <= present && present <= high && high <= 1.0)
        && (0.0..=1.0).contains(&wanted)
        && (bottle > 0.0 && bottle <= 1.0);
    if !sound {
        return Err(CoolantError::Impossible);
    }
    if drains > circuit * (1.0 + 1e-9) {
        return Err(CoolantError::Drains);
    }
    let mut refill = Refill { ways: Vec::new(), gets: job.wanted, short: None };
    if (wanted - present).abs() < 1e-9 {
        return Ok(refill);
    }
    let stays = 1.0 - drains / circuit;
    // With the bottle alone, or nothing done; with water alone.
    let best = |before: f64| (before * stays + bottle * (1.0 - stays)).max(before);
    let weakest = present * stays;
    let mut ends = [low, high];
    let mut gets = wanted;
    if wanted > best(present) + 1e-9 {
        refill.short = Some(if bottle <= wanted + 1e-9 {
            Short::WeakBottle
        } else if best(best(present)) >= wanted {
            Short::Twice
        } else {
            Short::PartStays
        });
        gets = best(present);
    } else if wanted < weakest - 1e-9 {
        let twice = weakest * stays <= wanted;
        refill.short = Some(if twice { Short::Twice } else { Short::PartStays });
        gets = weakest;
    }
    if refill.short.is_some() {
        // All that runs out is exchanged, whatever is in it.
        ends = [present; 2];
        refill.gets = Ratio::of_base(gets);
        if gets == present || (wanted < present && gets < super::WEAK) {
            return Ok(refill);
        }
    }
    // An amount for what may be in it; none where an end would take less than nothing or more than runs out.
    let way = |of: &dyn Fn(f64) -> f64, law: &'static Law, terms: Vec<Term>| {
        let slack = drains * 1e-9;
        let held = [present, ends[0], ends[1]].map(|it| {
            let amount = of(it);
            let fits = -slack <= amount && amount <= drains + slack;
            fits.then(|| Volume::of_base(amount.max(0.0).min(drains)))
        });
        let [Some(value), Some(one), Some(other)] = held else { return None };
        let answer = Answer::exact(value, law, terms);
        let bounds = if one < other { [one, other] } else { [other, one] };
        Some(answer.bounded((one != other).then_some(bounds)))
    };
    let share = |symbol, name, it| term(symbol, name, Measure::Share, Ratio::of_base(it));
    let mut terms = vec![
        term("V", "coolant circuit", Measure::Oil, job.circuit),
        share("w", "concentration afterwards", gets),
        share("p", "concentration now", present),
        share("b", "glycol in the bottle", bottle),
    ];
    let exchanged = |before: f64| circuit * (gets - before) / (bottle - before);
    refill.ways.extend(way(&exchanged, &EXCHANGE, terms.clone()));
    let runs_out = term("D", "runs out at the drain", Measure::Oil, job.drains);
    terms.push(runs_out.clone());
    let own = |before: f64| (gets * circuit - before * (circuit - drains)) / bottle;
    if let Some(bottle) = way(&own, &PREMIX, terms) {
        let terms = vec![runs_out, term("B", "from the bottle", Measure::Oil, bottle.value)];
        if let Some(water) = way(&|before| drains - own(before), &WATER, terms) {
            // Without any water it is the first way.
            if refill.ways.is_empty() || water.value.base() > drains * 1e-9 {
                refill.ways.extend([bottle, water]);
            }
        }
    }
    Ok(refill)
}
