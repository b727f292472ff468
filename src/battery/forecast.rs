//! The season day by day, and the answers that follow from it.

use super::decay::{Decay, Step};
use super::{Battery, Edges, FAST, Roughly, SLOW, TYPICAL};
use crate::season::{Season, Temperatures};
use crate::source;
use crate::units::Measure;
use crate::working::{Amount, Answer, Law, Term, term};
use chrono::{Days, NaiveDate};
use uom::si::{
    electric_charge::ampere_hour,
    electric_current::ampere,
    f64::{ElectricCharge, ElectricCurrent, ElectricPotential, Ratio, ThermodynamicTemperature},
    ratio::ratio,
    thermodynamic_temperature::degree_celsius,
};

/// Charge from day to day.
pub static CHARGE: Law = Law {
    formula: "each day s → s · e^(−k) − p · (1 − e^(−k)) / k; k = −ln(1 − r) / 30 · Q^((T − 25 °C) / 10 K); p = I · 24 h / C",
    gives: Measure::Share,
    source: source::SELF_DISCHARGE,
    holds: "a sound battery, fully charged at some time, with a constant draw; a shorted cell or an aged battery loses two to \
        three times as much. Harm done by standing flat is not counted",
};

/// Charge on a maintainer.
pub static MAINTAINED: Law = Law {
    formula: "s = 100 %",
    gives: Measure::Share,
    source: source::MAINTAINED,
    holds: "a maintainer made for this chemistry that stays plugged in; 95 to 100 % where it has done its work",
};

/// Day to act by.
pub static FIRST_DAY_BELOW: Law = Law {
    formula: "first day with s < threshold, on the fast edge",
    gives: Measure::Days,
    source: source::SELF_DISCHARGE,
    holds: CHARGE.holds,
};

/// First look at the meter.
pub static LOOK_AT_THE_METER: Law = Law {
    formula: "park date + 28 days",
    gives: Measure::Days,
    source: source::METER_CHECK,
    holds: "any battery off the charger; sooner where the forecast says so",
};

/// Days from parking to the first look at the meter: earliest and latest.
const LOOK: [u64; 2] = [21, 28];

/// A battery's season, computed once. Day 0 is the park date, the last day the ride date.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    pub(crate) battery: Battery,
    pub(crate) season: Season,
    /// What each night does to the charge, by edge.
    pub(crate) steps: Vec<[Step; 3]>,
    pub(crate) days: Vec<Edges>,
    /// Mean of the day on which each night begins, °C.
    pub(crate) celsius: Vec<f64>,
    /// Mean over the season, °C; on the park date where nothing is stored.
    mean: f64,
}

/// The first day on which the charge is below a threshold.
#[derive(Debug, Clone, PartialEq)]
pub struct FirstDayBelow {
    /// Value: the fast edge's day, the one to act by. Bounds: from there to the slow edge's day, or to the end of the
    /// season where the slow edge stays above.
    pub act_by: Answer<NaiveDate>,
    /// The day by edge; none where that edge stays above.
    pub by_edge: [Option<NaiveDate>; 3],
}

impl Forecast {
    /// Runs the three edges through the season, one exact step a day.
    pub fn new(battery: &Battery, season: &Season, temperatures: &Temperatures) -> Self {
        let decay = Decay::new(&battery.parameters, temperatures.swing());
        let drawn = battery.drawn_in_a_day();
        let nights = season.days().max(0) as usize;
        let mut days = Vec::with_capacity(nights + 1);
        let mut steps = Vec::with_capacity(nights);
        let mut means = Vec::with_capacity(nights);
        let mut charge = battery.charge;
        days.push(charge);
        let mut celsius = f64::NAN;
        let mut step = [Step { left: 1.0, taken: 0.0 }; 3];
        for night in season.nights() {
            let now = temperatures.celsius_on(night);
            if now != celsius {
                celsius = now;
                let rates = decay.rates(now);
                step = std::array::from_fn(|edge| Step::new(rates[edge], drawn[edge]));
            }
            means.push(celsius);
            steps.push(step);
            charge = after(&step, charge);
            days.push(charge);
        }
        let mean = match nights {
            0 => temperatures.celsius_on(season.park()),
            _ => means.iter().sum::<f64>() / nights as f64,
        };
        Self { battery: *battery, season: *season, steps, days, celsius: means, mean }
    }

    /// Charge at the start of every day where the battery is charged to full on some days. That of such a day is the
    /// charge before it; the day after begins with what a full battery keeps. Days outside of the season do nothing.
    pub fn charged_on(&self, full: &[NaiveDate]) -> Vec<Edges> {
        let park = self.season.park();
        let mut full = full.iter().map(|it| (*it - park).num_days()).peekable();
        let mut days = Vec::with_capacity(self.days.len());
        let mut charge = self.battery.charge;
        days.push(charge);
        for (night, step) in self.steps.iter().enumerate() {
            while full.next_if(|it| *it < night as i64).is_some() {}
            if full.next_if_eq(&(night as i64)).is_some() {
                charge = [1.0; 3];
            }
            charge = after(step, charge);
            days.push(charge);
        }
        days
    }

    /// The battery as parked.
    pub fn battery(&self) -> &Battery {
        &self.battery
    }

    /// Its dates.
    pub fn season(&self) -> &Season {
        &self.season
    }

    /// Mean temperature of the day on which each night begins, °C.
    pub fn celsius(&self) -> &[f64] {
        &self.celsius
    }

    /// Charge (0 to 1) at the start of every day by edge: slow, typical, fast. The park date is first, the ride date last.
    pub fn days(&self) -> &[Edges] {
        &self.days
    }

    /// Charge on the ride date, or at the end of the twelve months where that is not known.
    pub fn charge_on_ride_date(&self) -> Answer<Ratio> {
        let Roughly { low, typical, high } = self.at_the_end();
        let law = if self.battery.maintained { &MAINTAINED } else { &CHARGE };
        Answer::within(typical, [low, high], law, self.terms())
    }

    /// Charge at the start of a day by edge, as a band; none outside of the season.
    pub fn charge_on(&self, day: NaiveDate) -> Option<Roughly<Ratio>> {
        let index = usize::try_from((day - self.season.park()).num_days()).ok()?;
        self.days.get(index).map(|it| as_band(*it))
    }

    /// Voltage to expect on the meter on the ride date, at a temperature of the battery.
    pub fn resting_voltage_on_ride_date(
        &self,
        temperature: ThermodynamicTemperature,
    ) -> Answer<ElectricPotential> {
        self.battery.parameters.resting_voltage(self.at_the_end(), temperature)
    }

    /// The first day, before the ride date, that begins with less charge than `threshold`. None where even the fast edge
    /// stays at or above it.
    pub fn first_day_below(&self, threshold: Ratio) -> Option<FirstDayBelow> {
        let line = threshold.get::<ratio>();
        let before_end = self.days.len().saturating_sub(1);
        let first = |edge: usize| {
            let index = self.days.iter().take(before_end).position(|it| it[edge] < line)?;
            Some(self.season.day(index))
        };
        let by_edge = [SLOW, TYPICAL, FAST].map(first);
        let fast = by_edge[FAST]?;
        let bounds = [fast, by_edge[SLOW].unwrap_or(self.season.end())];
        let mut terms = self.terms();
        terms.insert(0, term("threshold", "charge to recharge below", Measure::Share, threshold));
        let act_by = Answer::within(fast, bounds, &FIRST_DAY_BELOW, terms);
        Some(FirstDayBelow { act_by, by_edge })
    }

    /// The day to look at the meter by for the first time: four weeks after parking, three at the earliest. None where the
    /// bike is ridden before that.
    pub fn look_at_the_meter_by(&self) -> Option<Answer<NaiveDate>> {
        let park = self.season.park();
        let [from, to] = LOOK.map(|it| park.checked_add_days(Days::new(it)));
        let (from, to) = (from?, to?.min(self.season.end()));
        let terms =
            vec![Term { symbol: "park date", name: "park date", amount: Amount::Day(park) }];
        (from < self.season.end())
            .then(|| Answer::within(to, [from, to], &LOOK_AT_THE_METER, terms))
    }

    /// The same where the battery is charged on some days: before the first of them after parking, as a check behind it
    /// would check nothing. None where that one comes before three weeks are gone.
    pub fn look_before(&self, charges: &[NaiveDate]) -> Option<Answer<NaiveDate>> {
        let look = self.look_at_the_meter_by()?;
        let first = charges.iter().find(|it| **it > self.season.park());
        let latest = first.and_then(|it| it.pred_opt()).map_or(look.value, |it| it.min(look.value));
        let [from, _] = look.bounds?;
        (latest >= from)
            .then(|| Answer::within(latest, [from, latest], look.law, look.terms.clone()))
    }

    /// The day for the next look, where the first found nothing to do: four weeks on. None where the battery is charged
    /// or the bike ridden before that.
    pub fn look_again_by(&self, first: NaiveDate, charges: &[NaiveDate]) -> Option<NaiveDate> {
        let next = first.checked_add_days(Days::new(LOOK[1]))?;
        let charged = charges.iter().any(|it| *it > first && *it <= next);
        (!charged && next < self.season.end()).then_some(next)
    }

    fn at_the_end(&self) -> Roughly<Ratio> {
        as_band(self.days.last().copied().unwrap_or(self.battery.charge))
    }

    /// What went into the typical edge.
    pub(crate) fn terms(&self) -> Vec<Term> {
        let Battery { parameters, capacity, charge, draw, .. } = &self.battery;
        let share = |it: f64| Ratio::new::<ratio>(it);
        let mean = ThermodynamicTemperature::new::<degree_celsius>(self.mean);
        let drawn = ElectricCurrent::new::<ampere>(draw[TYPICAL]);
        let holds = ElectricCharge::new::<ampere_hour>(capacity[TYPICAL]);
        let nights = Amount::Days(self.season.days());
        let q = Amount::Number(parameters.q10[TYPICAL]);
        vec![
            term("s", "charge when parked", Measure::Share, share(charge[TYPICAL])),
            Term { symbol: "N", name: "days stored", amount: nights },
            term("r", "lost in 30 days at 25 °C", Measure::Share, share(parameters.lost[TYPICAL])),
            Term { symbol: "Q", name: "factor for 10 °C (18 °F) more", amount: q },
            term("T", "temperature, mean of the season", Measure::Temperature, mean),
            term("I", "key-off draw", Measure::Draw, drawn),
            term("C", "real capacity", Measure::Charge, holds),
        ]
    }
}

fn after(step: &[Step; 3], charge: Edges) -> Edges {
    std::array::from_fn(|edge| step[edge].after(charge[edge]))
}

/// Edges as a band: the fast one is the low end.
pub(crate) fn as_band(edges: Edges) -> Roughly<Ratio> {
    let [high, typical, low] = edges.map(Ratio::new::<ratio>);
    Roughly { low, typical, high }
}
