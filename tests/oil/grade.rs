//! What an oil's label promises.

use super::*;
use torpor::oil::{Grade, Jaso, hot_grade};
use uom::si::thermodynamic_temperature::degree_celsius;

/// Source: j300.csv, SAE J300 of January 2015 as two independent pages reproduce it.
#[test]
fn winter_grades_crank_and_pump_down_to_their_limits() {
    let (mut winter, mut hot) = (0, 0);
    for row in rows("j300.csv") {
        let grade = Grade::read(&row[0]).unwrap();
        if &row[1] == "winter" {
            let limits = grade.cold_limits().unwrap();
            let limits = limits.map(|it| it.value.get::<degree_celsius>());
            let expected: [f64; 2] = [row[3].parse().unwrap(), row[5].parse().unwrap()];
            assert!((limits[0] - expected[0]).abs() < 1e-9, "{}", &row[0]);
            assert!((limits[1] - expected[1]).abs() < 1e-9, "{}", &row[0]);
            winter += 1;
            continue;
        }
        assert_eq!(grade.cold_limits(), None);
        let number = |column: usize| row[column].parse::<f64>().unwrap();
        let with = (&row[9] == "with 0W/5W/10W").then_some(10);
        let (own, low, high, shear) = (grade.hot, number(6), number(7), number(8));
        // The least is taken, the most is not: there the next grade begins, or none.
        assert_eq!(hot_grade(with, low, shear), own, "{}", &row[0]);
        assert_eq!(hot_grade(with, high - 1e-9, shear).filter(|it| Some(*it) == own), own);
        assert_ne!(hot_grade(with, high, 9.0), own, "{}", &row[0]);
        assert_ne!(hot_grade(with, low, shear - 0.01), own, "{}", &row[0]);
        hot += 1;
    }
    assert_eq!((winter, hot), (6, 9));
}

/// Source: j300_classify.csv, read from the table by hand; upper limits are exclusive, and 2.9 is no 40 since 1999.
#[test]
fn data_sheets_are_classified() {
    let rows = rows("j300_classify.csv");
    assert_eq!(rows.len(), 7);
    for row in rows {
        let expected = row[2].parse::<u8>().ok();
        for winter in [None, Some(10)] {
            let found = hot_grade(winter, row[0].parse().unwrap(), row[1].parse().unwrap());
            assert_eq!(found, expected, "{} mm²/s", &row[0]);
        }
    }
    // 12.5 is a 40, and 3.6 at high shear is one only with a light winter grade.
    assert_eq!(hot_grade(Some(5), 12.5, 3.6), Some(40));
    assert_eq!(hot_grade(Some(15), 12.5, 3.6), None);
}

/// Source: SAE J300 grades; a gear oil's 75W-90 is of another standard, SAE J306.
#[test]
fn grades_as_bottles_print_them() {
    for (text, winter, hot) in [
        ("10W-40", Some(10), Some(40)),
        ("10w40", Some(10), Some(40)),
        (" SAE 15W/50 ", Some(15), Some(50)),
        ("5 W – 30", Some(5), Some(30)),
        ("0W-8", Some(0), Some(8)),
        ("20W", Some(20), None),
        ("SAE 30", None, Some(30)),
        ("50", None, Some(50)),
    ] {
        assert_eq!(Grade::read(text), Ok(Grade { winter, hot }), "{text}");
    }
    for text in ["75W-90", "10W-45", "30W", "W40", "10W-W", "4T", "", "10-40", "-5W-30x", "999W"] {
        let refused = Grade::read(text).unwrap_err().to_string();
        assert!(refused.contains("write for example 10W-40"), "{text}: {refused}");
    }
}

/// Source: jaso_t903.csv; the class decides, its numbers differ between editions.
#[test]
fn classes_for_wet_clutches() {
    for row in rows("jaso_t903.csv") {
        let class = match &row[0] {
            "MA" => Jaso::Ma,
            "MA1" => Jaso::Ma1,
            "MA2" => Jaso::Ma2,
            "MB" => Jaso::Mb,
            other => panic!("{other}"),
        };
        assert_eq!(class.suits_wet_clutch(), Some(&row[8] == "1"), "{}", &row[0]);
    }
    assert_eq!(Jaso::None.suits_wet_clutch(), None);
}
