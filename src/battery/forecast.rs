//! The season day by day, and the answers that follow from it.

use super::decay::{Decay, after_a_day};
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
    pub(crate) decay: Decay,
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
        let mut means = Vec::with_capacity(nights);
        let mut charge = battery.charge;
        days.push(charge);
        let (mut celsius, mut rates) = (f64::NAN, [0.0; 3]);
        for night in season.nights() {
            let now = temperatures.celsius_on(night);
            if now != celsius {
                (celsius, rates) = (now, decay.rates(now));
            }
            means.push(celsius);
            charge = std::array::from_fn(|it| after_a_day(charge[it], rates[it], drawn[it]));
            days.push(charge);
        }
        let mean = match nights {
            0 => temperatures.celsius_on(season.park()),
            _ => means.iter().sum::<f64>() / nights as f64,
        };
        Self { battery: *battery, season: *season, decay, days, celsius: means, mean }
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
        Answer::within(typical, [low, high], &CHARGE, self.terms())
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

    fn at_the_end(&self) -> Roughly<Ratio> {
        let last = self.days.last().copied().unwrap_or(self.battery.charge);
        let [high, typical, low] = last.map(Ratio::new::<ratio>);
        Roughly { low, typical, high }
    }

    /// What went into the typical edge.
    pub(crate) fn terms(&self) -> Vec<Term> {
        let Battery { parameters, capacity, charge, draw } = &self.battery;
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
