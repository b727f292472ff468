//! Readings of the meter, at the check or in spring: against the band, and the draw that two of them imply.

use super::season_of;
use super::state::{Parked, charge_from, kept, parameters, sound};
use crate::battery::charging::ChargingError;
use crate::battery::freezing::NEAR;
use crate::battery::{Battery, Forecast, Reading, ReadingError, Roughly, Verdict, implied_draw};
use crate::digits;
use crate::entry::Entry;
use crate::facts::{self, BatteryKept, Facts, Lacks, Told};
use crate::plan::Accept;
use crate::season::Season;
use crate::show::{self, Shown};
use crate::units::{MILLIAMPERE, Measure, UnitSet};
use crate::words::{labels, notes};
use crate::working::{Answer, Quantity};
use uom::si::f64::{ElectricCurrent, ElectricPotential, Ratio, ThermodynamicTemperature};

/// What the readings tell.
#[derive(Default)]
pub(super) struct Judged {
    pub answers: Vec<Shown>,
    pub warnings: Vec<String>,
    pub note: Option<&'static str>,
    pub accept: Option<Accept>,
    /// Whether it must not be charged, at such a reading.
    pub dead: bool,
}

/// Nothing where no reading is typed.
pub(super) fn judged(
    from: &dyn Facts,
    parked: &Told<Parked>,
    threshold: &Told<Answer<Ratio>>,
    coldest: Option<Roughly<ThermodynamicTemperature>>,
    set: UnitSet,
) -> Judged {
    let reading = facts::METER_READS.maybe(from);
    if reading == Ok(None) {
        return Judged::default();
    }
    let lacking = |lacks: Lacks| Judged {
        answers: vec![Shown::lacking(labels::SHOULD_READ, lacks)],
        ..Judged::default()
    };
    let parked = match parked {
        Ok(parked) => parked,
        Err(lacks) => return lacking(lacks.clone()),
    };
    let parameters = parked.forecast.battery().parameters();
    if let Ok(Some(volts)) = reading
        && let Err(lacks) = sound(&facts::METER_READS, parameters, volts)
    {
        let lead = parameters.chemistry.is_lead_acid();
        let warnings = lead.then(|| notes::DRAINED_FLAT.to_owned()).into_iter().collect();
        return Judged { warnings, dead: true, ..lacking(lacks) };
    }
    let (later, earlier) = match readings(from, parked) {
        Ok(readings) => readings,
        Err(lacks) => return lacking(lacks),
    };
    let (expected, verdict) = match against(from, parked, &later, earlier.as_ref()) {
        Ok(both) => both,
        Err(lacks) => return lacking(lacks),
    };
    let warnings = match itself(from, parked, threshold, coldest, &later, set) {
        Ok(warning) => Vec::from_iter(warning),
        Err(lacks) => return lacking(lacks),
    };
    let mut judged = Judged {
        answers: vec![Shown::quantity(labels::SHOULD_READ, Ok(expected), set)],
        warnings,
        ..Judged::default()
    };
    match verdict {
        // A flat battery may be foretold, and is none the less flat.
        Verdict::Inside if judged.warnings.is_empty() => judged.note = Some(notes::AS_FORETOLD),
        Verdict::Inside => {}
        Verdict::Below => {
            let maintained = parked.forecast.battery().is_maintained();
            judged.warnings.push(notes::under_the_band(maintained));
        }
        Verdict::Above => judged.warnings.push(notes::OVER_THE_BAND.to_owned()),
    }
    let kept = kept(from);
    let first = earlier.or_else(|| first_reading(from, parked));
    if let (Some(first), Ok(BatteryKept::InBike)) = (first, kept) {
        let draw = implied_draw(parked.forecast.battery(), [first, later], &parked.place);
        match draw {
            Ok(draw) => {
                // What reads over the band was charged or has not rested: no draw to keep.
                judged.accept = accept(&draw).filter(|_| verdict != Verdict::Above);
                judged.answers.push(Shown::quantity(labels::IMPLIED_DRAW, Ok(draw), set));
            }
            Err(ReadingError::NotLater) => {
                let why = facts::METER_READ_ON.not_together(ReadingError::NotLater);
                judged.answers.push(Shown::lacking(labels::IMPLIED_DRAW, why));
            }
            Err(why) => judged.answers.push(Shown::words(labels::IMPLIED_DRAW, why.to_string())),
        }
    }
    judged
}

/// What the reading says without any forecast: that it freezes at such a charge, else that it has to be charged.
fn itself(
    from: &dyn Facts,
    parked: &Parked,
    threshold: &Told<Answer<Ratio>>,
    coldest: Option<Roughly<ThermodynamicTemperature>>,
    later: &Reading,
    set: UnitSet,
) -> Told<Option<String>> {
    let parameters = parked.forecast.battery().parameters();
    let (_, charge) =
        charge_from(&facts::METER_READS, parameters, [later.voltage; 3], later.temperature)?;
    let season = parked.forecast.season();
    // Where nobody said when it was read, every night may be to come.
    let from = facts::METER_READ_ON.maybe(from)?.unwrap_or(season.park());
    let coldest = parked.night_or_day(coldest);
    let near = parked.forecast.margin_from(from, charge, coldest).is_some_and(|it| it < NEAR);
    let frozen = parameters.charges_at(charge.low, later.temperature);
    if near || frozen == Err(ChargingError::Frozen) {
        return Ok(Some(notes::READING_FREEZES.to_owned()));
    }
    let line = threshold.as_ref().ok();
    let line = line.map(|it| parameters.meter_line(it.value, later.temperature));
    let under = line.filter(|it| later.voltage < *it);
    Ok(under.map(|it| notes::under_the_line(&show::rounded(Measure::Voltage, it, set))))
}

/// The later reading, and the earlier one where one was typed.
fn readings(from: &dyn Facts, parked: &Parked) -> Told<(Reading, Option<Reading>)> {
    let voltage = facts::METER_READS.of(from)?;
    let season = season_of(from)?;
    let day = match facts::METER_READ_ON.maybe(from)?.or(season.ride()) {
        Some(day) => day,
        None => facts::METER_READ_ON.of(from)?,
    };
    let at = |day| -> ThermodynamicTemperature { parked.place.on(day) };
    let later = Reading { day, voltage, temperature: at(day) };
    let Some(voltage) = facts::EARLIER_READING.maybe(from)? else { return Ok((later, None)) };
    let day = facts::EARLIER_READ_ON.maybe(from)?.unwrap_or(season.park());
    Ok((later, Some(Reading { day, voltage, temperature: at(day) })))
}

/// The reading when it was parked.
fn first_reading(from: &dyn Facts, parked: &Parked) -> Option<Reading> {
    let voltage = facts::RESTING_VOLTAGE.maybe(from).ok()??;
    if parked.forecast.battery().parameters().is_surface_charge(voltage.value) {
        return None;
    }
    let day = parked.forecast.season().park();
    let temperature = facts::READ_AT.maybe(from).ok()?.unwrap_or(parked.place.on(day));
    Some(Reading { day, voltage: voltage.value, temperature })
}

/// What the later reading should be, from the earlier one where there is one, and how it is.
fn against(
    from: &dyn Facts,
    parked: &Parked,
    later: &Reading,
    earlier: Option<&Reading>,
) -> Told<(Answer<ElectricPotential>, Verdict)> {
    let told = |forecast: &Forecast| {
        let expected = forecast.resting_voltage_on(later.day, later.temperature);
        let both = expected.zip(forecast.verdict(later));
        both.ok_or_else(|| facts::METER_READ_ON.not_together(notes::READ_IN_SEASON))
    };
    let Some(earlier) = earlier else { return told(&parked.forecast) };
    let parameters = parameters(from)?;
    let volts = [earlier.voltage; 3];
    let (_, charge) =
        charge_from(&facts::EARLIER_READING, &parameters, volts, earlier.temperature)?;
    let season = Season::new(earlier.day, Some(later.day))
        .map_err(|_| facts::METER_READ_ON.not_together(ReadingError::NotLater))?;
    let battery: Battery = parked.forecast.battery().charged(charge);
    told(&Forecast::new(&battery, &season, &parked.place))
}

/// The implied draw as an entry, for next year's forecast.
fn accept(draw: &Answer<ElectricCurrent>) -> Option<Accept> {
    let [low, high] = draw.bounds?;
    let tenths = |it: ElectricCurrent| {
        digits::shortest((MILLIAMPERE.of_base(it.base()) * 10.0).round() / 10.0)
    };
    let [value, low, high] = [draw.value, low, high].map(tenths);
    let text = if low == high { value } else { format!("{value} ({low}–{high})") };
    let words = notes::keep_draw(&text, MILLIAMPERE.symbol);
    let entry = Entry::new(text, MILLIAMPERE.code);
    Some(Accept { id: facts::KEY_OFF_DRAW.id(), entry, words })
}
