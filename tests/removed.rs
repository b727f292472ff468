//! Keys of removed records: they say when it was, and until when there is a way back.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::NaiveDate;
use proptest::prelude::*;
use torpor::storage::removed::{on, read, until};

fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

#[test]
fn thirty_days_and_not_one_less() {
    // December has 31 days: counted on a calendar.
    assert_eq!(until(day(2026, 11, 30)), day(2026, 12, 30));
    assert_eq!(until(NaiveDate::MAX), NaiveDate::MAX);
}

#[test]
fn only_keys_of_this_sort_are_read() {
    for wrong in ["removed.", "removed.a1", "removed.2026-13-01.a1", "removed..a1", "bike.a1", ""] {
        assert_eq!(read(wrong), None, "{wrong}");
    }
}

proptest! {
    #[test]
    fn any_day_is_read_again(after in 0u64..20_000, own in "(bike|season)\\.[a-z0-9.]{1,20}") {
        let day = day(2000, 1, 1) + chrono::Days::new(after);
        let key = on(day) + &own;
        prop_assert_eq!(read(&key), Some((day, own.as_str())));
    }
}
