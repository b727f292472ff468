#![allow(clippy::unwrap_used)]
use chrono::NaiveDate;
use torpor::garage::{Kept, example};
use torpor::plan::*;
use torpor::units::UnitSet;
#[test]
fn dump() {
    let kept = example(NaiveDate::from_ymd_opt(2026, 10, 1).unwrap(), UnitSet::Metric);
    println!("{:#?}", Paper::of(&kept, UnitSet::Metric));
    println!("{:#?}", Paper::of(&Kept::default(), UnitSet::Us).sides[0]);
}
