//! What an oil's label promises.

use super::*;
use torpor::oil::{Grade, Jaso, TooCold};
use uom::si::{f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius};

/// Source: j300.csv, SAE J300 of January 2015 as two independent pages reproduce it.
#[test]
fn winter_grades_crank_and_pump_down_to_their_limits() {
    let (mut winter, mut hot) = (0, 0);
    for row in rows("j300.csv") {
        if &row[1] == "winter" {
            let limits = Grade::read(&row[0]).unwrap().cold_limits().unwrap();
            let limits = limits.map(|it| it.value.get::<degree_celsius>());
            let expected: [f64; 2] = [row[3].parse().unwrap(), row[5].parse().unwrap()];
            assert!((limits[0] - expected[0]).abs() < 1e-9, "{}", &row[0]);
            assert!((limits[1] - expected[1]).abs() < 1e-9, "{}", &row[0]);
            winter += 1;
            continue;
        }
        // Each hot grade is known behind a winter grade; alone from 20 on.
        let number = row[0].trim_start_matches("SAE").trim().split(' ').next().unwrap();
        let behind = Grade::read(&format!("0W-{number}")).unwrap();
        assert_eq!(behind.hot, number.parse().ok(), "{}", &row[0]);
        let alone = Grade::read(number);
        assert_eq!(alone.is_ok(), behind.hot >= Some(20), "{}", &row[0]);
        assert!(alone.is_err() || alone.unwrap().cold_limits().is_none());
        hot += 1;
    }
    assert_eq!((winter, hot), (6, 9));
}

/// Source: SAE J300 for winter grades; without a W nothing is promised, and freezing is where that is said: common practice.
#[test]
fn a_start_is_too_cold_for_some_grades() {
    for (grade, start, expected) in [
        ("10W-40", -25.0, None),
        ("10W-40", -26.0, Some(TooCold::ToCrank)),
        ("10W-40", -31.0, Some(TooCold::ToPump)),
        ("SAE 30", 0.0, None),
        ("SAE 30", -1.0, Some(TooCold::ToPump)),
    ] {
        let start = ThermodynamicTemperature::new::<degree_celsius>(start);
        assert_eq!(Grade::read(grade).unwrap().too_cold(start), expected, "{grade}");
    }
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
    for text in [
        "75W-90", "10W-45", "30W", "W40", "10W-W", "4T", "", "10-40", "-5W-30x", "999W", "0-40",
        "5.0", "+30", "0-8", "10W/4-0", "10W--40", "1 0W-40", "05W-30", "10W-", "8", "SAE 16",
        "-30", "+5W-30",
    ] {
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
