//! What a torque does to a steel bolt in a steel nut, and an estimate of one where the manual has no figure.
//!
//! The estimate goes by the least friction of its class, so that the bolt stays within its proof load and its yield
//! however slippery it is. What is left of the preload where friction is the most comes with it.

use super::{FrictionClass, PropertyClass, Thread, positive};
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Parts, Quantity, Term, term},
};
use std::fmt;
use uom::si::f64::{Force, Length, Ratio, Torque};

pub(super) const SQRT_3: f64 = 1.732_050_807_568_877_2;

const STEEL: &str = "steel bolt in a steel nut or thread, hexagon head as ISO 4014 on steel without gasket, medium hole, the same friction in the thread \
     and under the head; a smaller head or a self-locking nut is another joint";

/// What a bolt holds without stretching for good.
pub const PROOF_LOAD: Law = Law {
    formula: "Fp = As · Sp",
    gives: Measure::Force,
    source: source::PROOF_STRESS,
    holds: "a bolt of its property class, new and whole",
};

/// The torque that gives a preload.
pub const TORQUE_FOR: Law = Law {
    formula: "T = F · (P / (2π) + μ · (d2 / (2 · cos 30°) + DKm / 2))",
    gives: Measure::Torque,
    source: source::FRICTION_FORM,
    holds: STEEL,
};

/// The preload that a torque gives.
pub const PRELOAD: Law = Law {
    formula: "F = T / (P / (2π) + μ · (d2 / (2 · cos 30°) + DKm / 2))",
    gives: Measure::Force,
    source: source::FRICTION_FORM,
    holds: STEEL,
};

/// The preload at which tension and twist together are 90 % of yield.
pub const AT_YIELD: Law = Law {
    formula: "F = 0.9 · Re · As / √(1 + 3 · (1.5 · d2 / ds · (2 · P / (2π · d2) + μ / cos 30°))²)",
    gives: Measure::Force,
    source: source::YIELD_USED,
    holds: STEEL,
};

/// The estimate.
pub const ESTIMATE: Law = Law {
    formula: "T = s · As · Sp · (P / (2π) + μ · (d2 / (2 · cos 30°) + DKm / 2))",
    gives: Measure::Torque,
    source: source::ESTIMATE,
    holds: STEEL,
};

/// Preload as a share of the proof load.
pub const SHARE_OF_PROOF: Law = Law {
    formula: "s = F / Fp",
    gives: Measure::Share,
    source: source::PROOF_STRESS,
    holds: STEEL,
};

/// The one factor of the short form, T = K · F · d.
pub const EQUIVALENT_K: Law = Law {
    formula: "K = T / (F · d)",
    gives: Measure::Factor,
    source: source::ARITHMETIC,
    holds: STEEL,
};

/// How much preload rises at the same torque where friction falls.
pub const PRELOAD_RISE: Law = Law {
    formula: "e = (p + μ1 · r) / (p + μ2 · r) − 1",
    gives: Measure::Share,
    source: source::FRICTION_FORM,
    holds: STEEL,
};

/// How far apart preloads come out at the same click.
pub const SCATTER: Law = Law {
    formula: "s = (Fmax − Fmin) / (Fmax + Fmin)",
    gives: Measure::Share,
    source: source::SCATTER,
    holds: "torque wrench, friction not tested but estimated by what is on the threads; higher with a click wrench",
};

/// Torque for each newton of preload, millimeters.
fn arm(thread: Thread, mu: f64) -> f64 {
    let [pitch, rub] = arms(thread);
    pitch + mu * rub
}

/// Its part from the pitch, and what friction multiplies: thread with 60° flanks, and face.
fn arms(thread: Thread) -> [f64; 2] {
    let pitch = thread.pitch_mm() / std::f64::consts::TAU;
    [pitch, thread.pitch_diameter_mm() / SQRT_3 + thread.bearing_mm() / 2.0]
}

fn mm(symbol: &'static str, name: &'static str, millimeters: f64) -> Term {
    Term { symbol, name, amount: Amount::Of(millimeters, "mm") }
}

fn number(symbol: &'static str, name: &'static str, number: f64) -> Term {
    Term { symbol, name, amount: Amount::Number(number) }
}

/// Terms of [`arm`].
fn arm_terms(thread: Thread, mu: f64) -> [Term; 4] {
    [
        mm("P", "pitch", thread.pitch_mm()),
        number("μ", "coefficient of friction", mu),
        mm("d2", "pitch diameter", thread.pitch_diameter_mm()),
        mm("DKm", "mean diameter under the head", thread.bearing_mm()),
    ]
}

fn strength_terms(thread: Thread, proof: f64) -> [Term; 2] {
    [
        Term {
            symbol: "As",
            name: "stress area of the thread",
            amount: Amount::Of(thread.stress_area_mm2(), "mm²"),
        },
        Term { symbol: "Sp", name: "proof stress", amount: Amount::Of(proof, "N/mm²") },
    ]
}

/// Newton millimeters as a torque.
fn newton_mm(torque: f64) -> Torque {
    Torque::of_base(torque / 1e3)
}

fn friction(mu: f64) -> Result<f64, JointError> {
    if mu > 0.0 && mu <= 1.0 { Ok(mu) } else { Err(JointError::Friction) }
}

/// What a bolt holds without stretching for good.
///
/// # Errors
/// [`JointError::ClassSize`].
pub fn proof_load(thread: Thread, class: PropertyClass) -> Result<Answer<Force>, JointError> {
    let [proof, _] = class.stresses(thread).ok_or(JointError::ClassSize)?;
    let load = Force::of_base(thread.stress_area_mm2() * proof);
    Ok(Answer::exact(load, &PROOF_LOAD, strength_terms(thread, proof).into()))
}

/// The torque that gives a preload at a coefficient of friction.
///
/// # Errors
/// [`JointError::Preload`], [`JointError::Friction`].
///
/// ```
/// use torpor::torque::{Thread, torque_for};
/// use uom::si::{f64::Force, force::kilonewton, torque::newton_meter};
/// let fine = Thread::read("M10×1.25").unwrap();
/// let torque = torque_for(fine, Force::new::<kilonewton>(30.8), 0.14).unwrap().value;
/// // VDI 2230:2001 as a fastener distributor prints it: 30.8 kN, 57 N·m.
/// assert!((torque.get::<newton_meter>() - 57.0).abs() < 0.5);
/// ```
pub fn torque_for(thread: Thread, preload: Force, mu: f64) -> Result<Answer<Torque>, JointError> {
    let mu = friction(mu)?;
    if !positive(preload) {
        return Err(JointError::Preload);
    }
    let mut terms = vec![term("F", "preload", Measure::Force, preload)];
    terms.extend(arm_terms(thread, mu));
    let torque = newton_mm(preload.base() * arm(thread, mu));
    Ok(Answer::exact(torque, &TORQUE_FOR, terms))
}

/// The preload that a torque gives at a coefficient of friction.
///
/// # Errors
/// [`JointError::Torque`], [`JointError::Friction`].
pub fn preload_from(thread: Thread, torque: Torque, mu: f64) -> Result<Answer<Force>, JointError> {
    let mu = friction(mu)?;
    if !positive(torque) {
        return Err(JointError::Torque);
    }
    let mut terms = vec![term("T", "torque", Measure::Torque, torque)];
    terms.extend(arm_terms(thread, mu));
    let preload = Force::of_base(torque.base() * 1e3 / arm(thread, mu));
    Ok(Answer::exact(preload, &PRELOAD, terms))
}

/// The preload at which tension and twist together are 90 % of yield, while the bolt is tightened.
///
/// # Errors
/// [`JointError::ClassSize`], [`JointError::Friction`].
pub fn at_yield(
    thread: Thread,
    class: PropertyClass,
    mu: f64,
) -> Result<Answer<Force>, JointError> {
    let mu = friction(mu)?;
    let [_, least] = class.stresses(thread).ok_or(JointError::ClassSize)?;
    let terms = vec![
        Term { symbol: "Re", name: "least yield stress", amount: Amount::Of(least, "N/mm²") },
        Term {
            symbol: "As",
            name: "stress area of the thread",
            amount: Amount::Of(thread.stress_area_mm2(), "mm²"),
        },
        mm("P", "pitch", thread.pitch_mm()),
        mm("d2", "pitch diameter", thread.pitch_diameter_mm()),
        mm("ds", "diameter of the stress area", thread.stress_diameter_mm()),
        number("μ", "coefficient of friction", mu),
    ];
    let preload = Force::of_base(at_yield_newtons(thread, least, mu));
    Ok(Answer::exact(preload, &AT_YIELD, terms))
}

fn at_yield_newtons(thread: Thread, least: f64, mu: f64) -> f64 {
    let d2 = thread.pitch_diameter_mm();
    let slope = thread.pitch_mm() / (std::f64::consts::PI * d2) + mu * 2.0 / SQRT_3;
    let twist = 1.5 * d2 / thread.stress_diameter_mm() * slope;
    0.9 * least * thread.stress_area_mm2() / (1.0 + 3.0 * twist * twist).sqrt()
}

/// How much the preload rises at the same torque where friction falls from one coefficient to another; under zero where
/// it rises. Oil on a thread that is to be dry does that.
///
/// # Errors
/// [`JointError::Friction`].
pub fn preload_rise(thread: Thread, from: f64, to: f64) -> Result<Answer<Ratio>, JointError> {
    let [from, to] = [friction(from)?, friction(to)?];
    let [pitch, rub] = arms(thread);
    let terms = vec![
        mm("p", "pitch / (2π)", pitch),
        mm("r", "d2 / (2 · cos 30°) + DKm / 2", rub),
        number("μ1", "friction counted on", from),
        number("μ2", "friction with oil", to),
    ];
    let rise = (pitch + from * rub) / (pitch + to * rub) - 1.0;
    Ok(Answer::exact(Ratio::of_base(rise), &PRELOAD_RISE, terms))
}

/// The one factor K of T = K · F · d. `None` where a number is not above zero.
pub fn equivalent_k(torque: Torque, preload: Force, diameter: Length) -> Option<Answer<f64>> {
    let sound = positive(torque) && positive(preload) && positive(diameter);
    sound.then(|| {
        let terms = vec![
            term("T", "torque", Measure::Torque, torque),
            term("F", "preload", Measure::Force, preload),
            mm("d", "nominal diameter", diameter.base() * 1e3),
        ];
        let factor = torque.base() / (preload.base() * diameter.base());
        Answer::exact(factor, &EQUIVALENT_K, terms)
    })
}

/// Whether a torque is over what even the strongest bolt of a thread bears on its roughest: a slip of the unit, most likely.
pub fn over_any_bolt(thread: Thread, torque: Torque) -> bool {
    let strongest = Joint::new(thread, PropertyClass::P12_9, FrictionClass::D);
    let most = strongest.ok().and_then(|it| it.torque().bounds);
    most.is_some_and(|[_, most]| torque > most)
}

/// How far preloads scatter about their mean at the same click: ±23 to 28 %.
pub fn scatter() -> Answer<Ratio> {
    let [least, most] = [0.23, 0.28];
    let middle = (least + most) / 2.0;
    let terms = vec![
        number("Fmax", "highest preload, the mean being 1", 1.0 + middle),
        number("Fmin", "lowest preload, the mean being 1", 1.0 - middle),
    ];
    Answer::within(Ratio::of_base(middle), [least, most].map(Ratio::of_base), &SCATTER, terms)
}

/// A steel bolt in a steel nut, for which a torque is estimated.
///
/// The highest torque gives, at the least friction of the class, 90 % of the proof load, or less where tension and twist
/// together would pass 90 % of yield; the lowest is 5/6 of it. A torque set by the most friction instead would stretch
/// the bolt wherever friction is less.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Joint {
    thread: Thread,
    friction: FrictionClass,
    /// N/mm²
    proof: f64,
    /// Highest share of the proof load, at the least friction.
    highest: f64,
}

/// Lowest torque of the estimate for the highest: 75 % of proof load for 90 %.
const LOWEST: f64 = 5.0 / 6.0;

impl Joint {
    /// A bolt of its thread and class, with what is on it.
    ///
    /// # Errors
    /// [`JointError::ClassSize`].
    pub fn new(
        thread: Thread,
        class: PropertyClass,
        friction: FrictionClass,
    ) -> Result<Self, JointError> {
        let [proof, least] = class.stresses(thread).ok_or(JointError::ClassSize)?;
        let load = proof * thread.stress_area_mm2();
        let highest = (at_yield_newtons(thread, least, friction.range()[0]) / load).min(0.9);
        Ok(Self { thread, friction, proof, highest })
    }

    /// The estimate: lowest and highest torque, and their middle.
    pub fn torque(&self) -> Answer<Torque> {
        let least = self.friction.range()[0];
        let middle = self.highest * (1.0 + LOWEST) / 2.0;
        let share = Ratio::of_base(middle);
        let mut terms =
            vec![term("s", "share of the proof load, middle of the range", Measure::Share, share)];
        terms.extend(strength_terms(self.thread, self.proof));
        terms.extend(arm_terms(self.thread, least));
        let of = |share: f64| newton_mm(share * self.load() * arm(self.thread, least));
        let bounds = [of(self.highest * LOWEST), of(self.highest)];
        Answer::within(of(middle), bounds, &ESTIMATE, terms)
    }

    /// The preload that the middle torque gives at middling friction; from the lowest torque at the most friction to the
    /// highest at the least.
    pub fn preload(&self) -> Answer<Force> {
        let torque = self.torque().value;
        let [least, most] = self.friction.range();
        let middle = (least + most) / 2.0;
        let mut terms = vec![term("T", "torque, middle of the range", Measure::Torque, torque)];
        terms.extend(arm_terms(self.thread, middle));
        let highest = self.highest * self.load();
        let at = |torque: f64, mu| torque * arm(self.thread, least) / arm(self.thread, mu);
        let value = at(highest * (1.0 + LOWEST) / 2.0, middle);
        let bounds = [at(highest * LOWEST, most), highest];
        Answer::within(Force::of_base(value), bounds.map(Force::of_base), &PRELOAD, terms)
    }

    /// That preload as a share of the proof load.
    pub fn share_of_proof(&self) -> Answer<Ratio> {
        let Parts { value, bounds, .. } = self.preload().parts();
        let load = Force::of_base(self.load());
        let terms = vec![
            term("F", "preload", Measure::Force, value),
            term("Fp", "proof load", Measure::Force, load),
        ];
        let bounds = bounds.map(|it| it.map(|it| it / load));
        Answer::of(Parts { value: value / load, bounds, law: &SHARE_OF_PROOF, terms })
    }

    /// The one factor K that would give the same, over the friction of the class.
    pub fn equivalent_k(&self) -> Option<Answer<f64>> {
        let diameter = self.thread.diameter();
        let answer = equivalent_k(self.torque().value, self.preload().value, diameter)?;
        let of = |mu| arm(self.thread, mu) / self.thread.diameter_mm();
        Some(answer.bounded(Some(self.friction.range().map(of))))
    }

    /// How much oil raises the preload at the same torque, where the thread was counted on as dry or nearly so; least
    /// friction against least. `None` where it is lubricated as it is.
    pub fn oiled(&self) -> Option<Answer<Ratio>> {
        let [dry, oiled] = [self.friction, FrictionClass::B].map(|it| it.range()[0]);
        (dry > oiled).then(|| preload_rise(self.thread, dry, oiled).ok()).flatten()
    }

    /// Proof load, newtons.
    fn load(&self) -> f64 {
        self.proof * self.thread.stress_area_mm2()
    }
}

/// Why a joint is not reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JointError {
    /// No such bolt in this size.
    ClassSize,
    /// A coefficient of friction that no thread has.
    Friction,
    /// Preload of zero or less.
    Preload,
    /// Torque of zero or less.
    Torque,
}

impl fmt::Display for JointError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::ClassSize => {
                "has to be a class of this size: 9.8 goes up to M16, A2-70 and A4-80 up to M18"
            }
            Self::Friction => "coefficient of friction has to be more than 0 and at most 1",
            Self::Preload => "preload has to be more than 0",
            Self::Torque => "torque has to be more than 0",
        })
    }
}

impl std::error::Error for JointError {}
