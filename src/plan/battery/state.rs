//! What is known of the battery, its place and its season, and what is counted where the owner does not know.

use super::season_of;
use crate::battery::freezing::NEAR;
use crate::battery::voltage::{Rest, rested};
use crate::battery::{
    self, Battery, BatteryError, Chemistry, FAST, Forecast, Parameters, RechargePlan, Roughly,
    gravity,
};
use crate::facts::{self, BatteryKept, Capacity, Facts, Lacks, Place, Recharge, Told, both};
use crate::season::{Season, Temperatures};
use crate::words::notes;
use crate::working::{Answer, Parts, Quantity};
use chrono::NaiveDate;
use uom::si::f64::{
    ElectricCharge, ElectricCurrent, ElectricPotential, Ratio, TemperatureInterval,
    ThermodynamicTemperature,
};

/// A battery put away, with its days worked out.
pub(super) struct Parked {
    pub forecast: Forecast,
    pub place: Temperatures,
    /// What the charge was read from, where it was measured.
    pub read: Option<ChargeFrom>,
    /// Charge when put on the maintainer, where it is on one and that is known.
    pub put_on: Option<Roughly<Ratio>>,
    /// Whether charge or draw were counted without being known.
    pub unknown: [bool; 2],
}

impl Parked {
    /// The coldest night; where none is known the coldest day, than which some night is surely no warmer.
    pub fn night_or_day(
        &self,
        night: Option<Roughly<ThermodynamicTemperature>>,
    ) -> Roughly<ThermodynamicTemperature> {
        let season = self.forecast.season();
        night.unwrap_or_else(|| Roughly::exactly(self.place.coldest_of(season)))
    }
}

/// A charge that was measured.
#[derive(Debug, Clone)]
pub(super) enum ChargeFrom {
    /// Lead-acid.
    Number(Answer<Ratio>),
    /// LiFePO4: its range.
    Range(Answer<Ratio>),
}

/// How the battery is kept; in the bike and connected where nothing is said.
pub(in crate::plan) fn kept(from: &dyn Facts) -> Told<BatteryKept> {
    Ok(facts::BATTERY_KEPT.maybe(from)?.unwrap_or(BatteryKept::InBike))
}

/// Whether a fact has an entry that can be read.
pub(super) fn given<T>(fact: &facts::Fact<T>, from: &dyn Facts) -> bool {
    fact.known(from).is_some()
}

pub(super) fn parked(from: &dyn Facts) -> Told<Parked> {
    let ((parameters, capacity), (season, place)) =
        both(both(parameters(from), capacity(from)), both(season_of(from), place(from)))?;
    if let Some(volts) = facts::EARLIER_READING.maybe(from)? {
        sound(&facts::EARLIER_READING, &parameters, volts)?;
    }
    let kept = kept(from);
    let (charge, draw) = both(
        charge(from, &parameters, &season, &place),
        kept.clone().and_then(|it| draw(from, it)),
    )?;
    let unknown = [charge.is_none(), draw.is_none()];
    let known = charge.as_ref().map(|it| it.1);
    let (read, charge) = charge.unwrap_or_else(|| (None, battery::charged_by_riding()));
    let draw = draw.unwrap_or_else(battery::draw_not_measured);
    let battery = Battery::new(parameters, capacity, charge, draw).map_err(|why| match why {
        BatteryError::NoCapacity => facts::CAPACITY.not_together(why),
        BatteryError::ChargeOutOfRange => facts::CHARGE_WHEN_PARKED.not_together(why),
        BatteryError::NegativeDraw => facts::KEY_OFF_DRAW.not_together(why),
    })?;
    let maintained = kept == Ok(BatteryKept::Maintainer);
    let battery = if maintained { battery.on_a_maintainer() } else { battery };
    let unknown = if maintained { [false; 2] } else { unknown };
    let put_on = known.filter(|_| maintained);
    let forecast = Forecast::new(&battery, &season, &place);
    Ok(Parked { forecast, place, read, put_on, unknown })
}

/// The chemistry's parameters, with the acid of its scale.
pub(super) fn parameters(from: &dyn Facts) -> Told<Parameters> {
    let chemistry = facts::CHEMISTRY.of(from)?;
    let scale = match chemistry.has_filler_caps() {
        true => facts::ACID_SCALE.maybe(from)?,
        false => None,
    };
    let parameters = chemistry.parameters();
    Ok(scale.map_or(parameters, |it| parameters.on_scale(it)))
}

fn capacity(from: &dyn Facts) -> Told<Roughly<ElectricCharge>> {
    let capacity = facts::CAPACITY.of(from);
    let Ok(chemistry) = facts::CHEMISTRY.of(from) else {
        // Its lack is told with the parameters.
        return capacity.and(Err(Lacks::none()));
    };
    match (chemistry, capacity?) {
        (Chemistry::LiFePO4, Capacity::Energy(energy)) => {
            Ok(battery::labelled(battery::lithium(energy)))
        }
        (Chemistry::LiFePO4, Capacity::Charge(_)) => {
            Err(facts::CAPACITY.not_together(notes::ENERGY_WANTED))
        }
        (_, Capacity::Energy(_)) => Err(facts::CAPACITY.not_together(notes::CHARGE_WANTED)),
        (_, Capacity::Charge(charge)) => Ok(battery::labelled(charge)),
    }
}

/// Key-off draw; none where nobody knows it.
fn draw(from: &dyn Facts, kept: BatteryKept) -> Told<Option<Roughly<ElectricCurrent>>> {
    if kept != BatteryKept::InBike {
        return Ok(Some(Roughly::exactly(ElectricCurrent::of_base(0.0))));
    }
    let draw = facts::KEY_OFF_DRAW.maybe(from)?;
    Ok(draw.map(|draw| match draw.bounds {
        Some([low, high]) => Roughly { low, typical: draw.value, high },
        // "About 1 mA" is 0.5 to 1.5; a bare number is no better known.
        None if draw.value.base() > 0.0 => battery::drawing_about(draw.value),
        None => Roughly::exactly(ElectricCurrent::of_base(0.0)),
    }))
}

/// A 12 V lead battery that rests below this has a dead cell, or is a 6 V one: half a volt under empty, in any
/// temperature of the table. Common practice, no source.
const DEAD_CELL: f64 = 11.3;
/// Four LiFePO4 cells that rest below this are ruined, or their protector is open, V: 2.5 V a cell. Common practice, no
/// source.
const LITHIUM_DEAD: f64 = 10.0;

/// That a resting voltage is none of a battery which must not be charged.
pub(super) fn sound<T>(
    fact: &facts::Fact<T>,
    parameters: &Parameters,
    volts: ElectricPotential,
) -> Told<()> {
    let (least, why) = match parameters.chemistry.is_lead_acid() {
        true => (DEAD_CELL, notes::DEAD_CELL),
        false => (LITHIUM_DEAD, notes::LITHIUM_DEAD),
    };
    if volts.base() < least { Err(fact.not_together(why)) } else { Ok(()) }
}

type Charged = Option<(Option<ChargeFrom>, Roughly<Ratio>)>;

/// Charge when parked: by the hydrometer, else by the resting voltage, else as typed; none where nobody knows it.
fn charge(
    from: &dyn Facts,
    parameters: &Parameters,
    season: &Season,
    place: &Temperatures,
) -> Told<Charged> {
    let read_at =
        || -> Told<_> { Ok(facts::READ_AT.maybe(from)?.unwrap_or(place.on(season.park()))) };
    let reading = match parameters.chemistry.has_filler_caps() {
        true => facts::SPECIFIC_GRAVITY.maybe(from)?,
        false => None,
    };
    if let Some(reading) = reading {
        let answer = parameters
            .charge_from_gravity(reading, read_at()?)
            .map_err(|why| facts::SPECIFIC_GRAVITY.not_together(why))?;
        let charge = gravity::roughly(&answer);
        return Ok(Some((Some(ChargeFrom::Number(answer)), charge)));
    }
    let typed = || -> Told<Option<Roughly<Ratio>>> {
        let typed = facts::CHARGE_WHEN_PARKED.maybe(from)?;
        Ok(typed.map(|typed| match typed.bounds {
            Some([low, high]) => Roughly { low, typical: typed.value, high },
            None => battery::charged_about(typed.value),
        }))
    };
    let Some(voltage) = facts::RESTING_VOLTAGE.maybe(from)? else {
        return Ok(typed()?.map(|it| (None, it)));
    };
    if facts::RESTED.maybe(from)?.is_some_and(|it| rested(it) == Rest::TooShort) {
        return Err(facts::RESTED.not_together(notes::NOT_RESTED));
    }
    let ends = voltage.bounds.unwrap_or([voltage.value; 2]);
    let charge = charge_from(
        &facts::RESTING_VOLTAGE,
        parameters,
        [ends[0], voltage.value, ends[1]],
        read_at()?,
    )?;
    // Surface charge tells nothing of what is under it: only what was typed as lower than anybody's is believed.
    if parameters.is_surface_charge(voltage.value) {
        let least = battery::charged_by_riding().low;
        return Ok(typed()?.filter(|it| it.low < least).map(|it| (None, it)));
    }
    Ok(Some(charge).map(|(read, charge)| (Some(read), charge)))
}

/// Charge from a voltage: lowest, typical and highest reading.
pub(super) fn charge_from<T>(
    fact: &facts::Fact<T>,
    parameters: &Parameters,
    [low, typical, high]: [ElectricPotential; 3],
    temperature: ThermodynamicTemperature,
) -> Told<(ChargeFrom, Roughly<Ratio>)> {
    sound(fact, parameters, typical)?;
    let read = |volts| {
        let read = parameters.charge_from_voltage(volts, temperature);
        read.map_err(|why| fact.not_together(why))
    };
    let [least, middle, most] = [read(low)?, read(typical)?, read(high)?];
    let charge = Roughly {
        low: least.roughly().low,
        typical: middle.roughly().typical,
        high: most.roughly().high,
    };
    let bounds = Some([charge.low, charge.high]);
    Ok(match middle {
        battery::ChargeRead::Number(answer) => (ChargeFrom::Number(answer.bounded(bounds)), charge),
        battery::ChargeRead::Range { law, .. } => {
            let answer =
                Answer::of(Parts { value: charge.typical, bounds, law, terms: Vec::new() });
            (ChargeFrom::Range(answer), charge)
        }
    })
}

/// How warm the battery stands.
pub(super) fn place(from: &dyn Facts) -> Told<Temperatures> {
    if kept(from)? == BatteryKept::Elsewhere {
        return facts::KEPT_AT.of(from);
    }
    bikes_place(from)
}

/// How warm the bike stands, wherever its battery is.
pub(in crate::plan) fn bikes_place(from: &dyn Facts) -> Told<Temperatures> {
    let stands = facts::WHERE_IT_STANDS.maybe(from)?;
    if stands == Some(Place::Heated) {
        return facts::MONTHLY_MEANS.of(from);
    }
    let climate = climate(from)?;
    let own = facts::MONTHLY_MEANS.of(from);
    let mut place = match climate {
        Some(it) => Temperatures::of(it),
        None => own?,
    };
    if stands == Some(Place::Unheated) {
        place = facts::WARMER_BY.maybe(from)?.map_or(place, |it| place.warmer_by(it));
    }
    let own_swing = climate.filter(|_| stands == Some(Place::Outdoors)).map(|it| it.swing());
    let half = |it: TemperatureInterval| it / 2.0;
    let swing = match stands {
        None => None,
        Some(_) => facts::DAY_AND_NIGHT.maybe(from)?.map(half).or(own_swing),
    };
    match swing {
        Some(half) => place.swinging(half).map_err(|why| facts::DAY_AND_NIGHT.not_together(why)),
        None => Ok(place),
    }
}

/// The station that is taken for the place: where no means were typed, which count before it.
pub(in crate::plan) fn climate(from: &dyn Facts) -> Told<Option<&'static crate::season::Place>> {
    if facts::MONTHLY_MEANS.maybe(from)?.is_some() {
        return Ok(None);
    }
    Ok(facts::CLIMATE.maybe(from)?.map(|it| it.0))
}

/// The day of the meter check; none where it has to be charged before that, or is ridden.
pub(super) fn look(
    parked: &Parked,
    plan: Option<&RechargePlan>,
    coldest: Option<Roughly<ThermodynamicTemperature>>,
) -> Option<Answer<NaiveDate>> {
    let forecast = &parked.forecast;
    let days = plan.map_or(&[][..], |it| &it.days);
    // What a planned charge keeps from freezing needs none before it.
    let frost = || {
        let margins = forecast.margins(&forecast.charged_on(days), coldest?)?;
        let near = margins.iter().skip(1).position(|it| it[FAST] < NEAR)?;
        Some(forecast.season().day(near + 1))
    };
    let park = forecast.season().park();
    let first = days.iter().copied().filter(|it| *it > park).chain(frost()).min();
    forecast.look_before(first.as_slice())
}

/// Charge to recharge below.
pub(super) fn threshold(from: &dyn Facts) -> Told<Answer<Ratio>> {
    let (parameters, below) = both(parameters(from), facts::CHARGE_BELOW.maybe(from))?;
    let volts = match below {
        Some(Recharge::Share(share)) => {
            return Ok(Answer::exact(share, &battery::voltage::THRESHOLD_TYPED, vec![]));
        }
        Some(Recharge::Voltage(volts)) => Some(volts),
        None => None,
    };
    parameters.threshold(volts).map_err(|why| facts::CHARGE_BELOW.not_together(why))
}
