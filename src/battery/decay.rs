//! Loss of charge in a day: to the battery itself, faster when warm, and to the key-off draw.

use super::{Edges, FAST, Parameters, SLOW, TYPICAL};
use crate::maths::{exp, exp_m1, ln, ln_1p};

/// Temperature that the loss in 30 days is stated for, °C.
pub(crate) const STATED_AT: f64 = 25.0;
/// Days that the loss is stated over.
const STATED_OVER: f64 = 30.0;

/// Self-discharge along the three edges, with what does not change from day to day worked out once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Decay {
    edges: [Edge; 3],
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Edge {
    /// Per day at 25 °C, with the day-night swing: below 25 °C and from 25 °C on.
    rate: [f64; 2],
    /// ln(Q)/10, likewise.
    per_kelvin: [f64; 2],
}

impl Decay {
    /// `swing`: half of the difference between day and night, K.
    pub(crate) fn new(parameters: &Parameters, swing: f64) -> Self {
        let [low, typical, high] = parameters.q10.map(|it| ln(it) / 10.0);
        let edge = |index: usize, per_kelvin: [f64; 2]| {
            let at_25 = -ln_1p(-parameters.lost[index]) / STATED_OVER;
            // Warm hours speed the loss up more than cold ones slow it down; over a sine that makes I0.
            Edge { rate: per_kelvin.map(|it| at_25 * bessel_i0(it * swing)), per_kelvin }
        };
        // In the cold, it is the small Q that leaves the loss high.
        let edges = [edge(SLOW, [high, low]), edge(TYPICAL, [typical; 2]), edge(FAST, [low, high])];
        Self { edges }
    }

    /// Rate of self-discharge, per day, at a mean temperature of the day in °C.
    pub(crate) fn rates(&self, celsius: f64) -> Edges {
        self.edges.map(|it| it.rate_at(celsius))
    }
}

impl Edge {
    fn rate_at(&self, celsius: f64) -> f64 {
        let above = celsius - STATED_AT;
        let side = usize::from(above >= 0.0);
        self.rate[side] * exp(self.per_kelvin[side] * above)
    }
}

/// One day of constant temperature as a map of the charge, exact within the day: the solution of ds/dt = −k·s − p.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Step {
    /// Share of the charge that is left: e^−k.
    pub left: f64,
    /// Taken by the key-off draw, share of the capacity.
    pub taken: f64,
}

impl Step {
    /// `rate`: k, per day. `drawn`: p, share of the capacity that the key-off draw takes in a day.
    pub fn new(rate: f64, drawn: f64) -> Self {
        let held = held_over_a_day(rate);
        Self { left: 1.0 - rate * held, taken: drawn * held }
    }

    /// Charge at the end of the day.
    pub fn after(self, charge: f64) -> f64 {
        (charge * self.left - self.taken).max(0.0)
    }
}

/// (1 − e^−k)/k, which is 1 where k is nothing: a loss that shrinks with the charge takes this share of k in a day.
fn held_over_a_day(k: f64) -> f64 {
    if k > 0.1 {
        return -exp_m1(-k) / k;
    }
    // Its series 1 − k/2 (1 − k/3 (1 − …)): as exact for the small k of a battery, and the bulk of a forecast's time.
    let mut sum = 1.0;
    for n in [9.0, 8.0, 7.0, 6.0, 5.0, 4.0, 3.0, 2.0] {
        sum = 1.0 - k * sum * (1.0 / n);
    }
    sum
}

/// Modified Bessel function of the first kind, order 0, by its series Σ (x/2)²ⁿ/(n!)².
fn bessel_i0(x: f64) -> f64 {
    let quarter = x * x / 4.0;
    let (mut sum, mut part, mut n) = (1.0, 1.0, 1.0);
    while part > sum * f64::EPSILON {
        part *= quarter / (n * n);
        sum += part;
        n += 1.0;
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: the definition, (1 − e^−k)/k, by the standard library; 1 at k = 0.
    #[test]
    fn series_is_exact() {
        assert_eq!(held_over_a_day(0.0), 1.0);
        for k in [1e-15, 1e-9, 1e-4, 0.003, 0.02, 0.0999, 0.1001, 0.5, 3.0] {
            let k: f64 = k;
            assert!((held_over_a_day(k) + (-k).exp_m1() / k).abs() < 4e-16, "{k}");
        }
    }

    /// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.8 (from memory): I0(1), I0(2);
    /// and the mean of e^(x·cos t) over a turn, which is what the swing stands for.
    #[test]
    fn bessel_is_the_mean_over_a_day() {
        assert_eq!(bessel_i0(0.0), 1.0);
        assert!((bessel_i0(1.0) - 1.266_065_877_7).abs() < 1e-9);
        assert!((bessel_i0(2.0) - 2.279_585_302_3).abs() < 1e-9);
        for x in [0.1, 0.5, 1.5] {
            let turn = |i: i32| (x * (f64::from(i) * std::f64::consts::TAU / 64.0).cos()).exp();
            let mean = (0..64).map(turn).sum::<f64>() / 64.0;
            assert!((bessel_i0(x) - mean).abs() < 1e-13, "{x}");
        }
    }
}
