//! How long the library takes, natively and in the release profile: `cargo bench`. `cargo xtask bench` reads this table and
//! holds it against what the design asks for.
#![allow(missing_docs)] // The attribute makes items that nobody can document.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::{Days, NaiveDate};
use divan::{Bencher, black_box};
use torpor::battery::{Battery, Chemistry, Forecast};
use torpor::entry::Entry;
use torpor::facts::{self, Id};
use torpor::garage::{Entries, Kept, Subject, example};
use torpor::plan::{self, Asked, Line, OwnSteps, Side};
use torpor::season::{Season, Temperatures};
use torpor::storage::link::{self, Parcel};
use torpor::units::UnitSet;
use torpor::{battery, drawing};
use uom::si::{
    electric_charge::ampere_hour, electric_current::milliampere, f64::*, ratio::percent,
    thermodynamic_temperature::degree_celsius,
};

fn main() {
    divan::main();
}

const SET: UnitSet = UnitSet::Metric;

fn autumn() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, 14).unwrap()
}

/// The invented bike with so many fasteners kept.
fn bike(fasteners: usize) -> Kept {
    let mut kept = example(autumn(), SET);
    let own = |at: usize| -> Entries {
        let torque = format!("{} ({}–{})", 10 + at % 30, 8 + at % 30, 12 + at % 30);
        let texts: [(Id, String); 4] = [
            (facts::FASTENER_NAME.id(), format!("Nut {}", at + 1)),
            (facts::TORQUE.id(), torque),
            (facts::ADAPTER.id(), "in_line".to_owned()),
            (facts::ADAPTER_LENGTH.id(), "40 mm".to_owned()),
        ];
        texts.into_iter().map(|(id, text)| (id, Entry::new(text, 0))).collect()
    };
    kept.bike.fasteners = (0..fasteners).map(own).collect();
    kept
}

/// The invented bike parked for four hundred days, in the temperatures of its twelve months.
fn long_parked() -> Kept {
    let mut kept = bike(0);
    let day = |it: NaiveDate| Entry::new(it.to_string(), 0);
    kept.put(facts::PARK_DATE.id(), day(autumn()));
    kept.put(facts::RIDE_DATE.id(), day(autumn() + Days::new(400)));
    kept
}

/// All that the sheet says of one bike: every step of both sides with its calculator, the torque list, the season, what is
/// needed, the days.
#[divan::bench(args = [0, 12])]
fn whole_plan(bencher: Bencher<'_, '_>, fasteners: usize) {
    let kept = bike(fasteners);
    bencher.bench_local(|| {
        let kept = black_box(&kept);
        let drawer = plan::drawer(&kept.garage);
        for side in Side::ALL {
            for step in side.steps().iter().filter(|it| it.is_asked(kept)) {
                black_box((step.is_done(kept), step.left_out(kept), step.waits_for(kept)));
            }
            black_box(OwnSteps::of(side, kept));
        }
        for line in Line::ALL {
            black_box(line.panel(kept, &drawer, SET));
        }
        rows(kept);
        black_box((plan::season(kept, SET), plan::needs(kept, SET), plan::dates(kept)));
    });
}

/// The same laid out for the printer, with every source.
#[divan::bench]
fn paper(bencher: Bencher<'_, '_>) {
    let kept = bike(12);
    bencher.bench_local(|| plan::paper(black_box(&kept), &[], SET));
}

/// What the torque list shows, as `view/torque_list.rs` asks for it after a letter typed at a wrench.
fn rows(kept: &Kept) {
    let drawer = plan::drawer(&kept.garage);
    for own in &kept.bike.fasteners {
        let asked = Asked::of(&Subject { own, rest: kept });
        black_box(plan::row(&asked, &drawer, SET));
    }
}

#[divan::bench(args = [12, 200])]
fn torque_list(bencher: Bencher<'_, '_>, fasteners: usize) {
    let kept = bike(fasteners);
    bencher.bench_local(|| rows(black_box(&kept)));
}

/// The three edges of four hundred days, and nothing else.
#[divan::bench]
fn battery_season(bencher: Bencher<'_, '_>) {
    let battery = Battery::new(
        Chemistry::Agm.parameters(),
        battery::labelled(ElectricCharge::new::<ampere_hour>(10.0)),
        battery::charged_about(Ratio::new::<percent>(100.0)),
        battery::drawing_about(ElectricCurrent::new::<milliampere>(1.0)),
    )
    .unwrap();
    let season = Season::new(autumn(), Some(autumn() + Days::new(400))).unwrap();
    let means = [-6.0, -5.0, 0.0, 6.0, 13.0, 18.0, 21.0, 20.0, 15.0, 9.0, 3.0, -3.0];
    let shed =
        Temperatures::monthly(means.map(ThermodynamicTemperature::new::<degree_celsius>)).unwrap();
    let forecast = || Forecast::new(black_box(&battery), black_box(&season), black_box(&shed));
    assert_eq!(forecast().days().len(), 401);
    bencher.bench_local(forecast);
}

/// The battery's calculator on four hundred days, from its entries to its answers, and the season's picture.
#[divan::bench]
fn battery_line(bencher: Bencher<'_, '_>) {
    let kept = long_parked();
    let redrawn = || {
        let panel = plan::battery_in_season(black_box(&kept), SET);
        let picture = panel.course.as_ref().map(|it| drawing::season_line(it, true, SET));
        (panel, picture)
    };
    assert!(redrawn().1.is_some());
    bencher.bench_local(redrawn);
}

fn parcel() -> Parcel {
    Parcel { made: autumn(), kept: bike(12) }
}

#[divan::bench]
fn link_written(bencher: Bencher<'_, '_>) {
    let parcel = parcel();
    bencher.bench_local(|| link::written(black_box(&parcel), true));
}

#[divan::bench]
fn link_read(bencher: Bencher<'_, '_>) {
    let written = link::written(&parcel(), true).unwrap();
    assert!(link::read(&written).is_ok());
    bencher.bench_local(|| link::read(black_box(&written)));
}
