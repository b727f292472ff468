//! The owner's own steps: added, ticked, removed, put back; whatever stands in the entry.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use proptest::prelude::*;
use torpor::entry::{Entry, LONGEST};
use torpor::facts;
use torpor::garage::Kept;
use torpor::plan::{OwnSteps, Side};
use torpor::storage::link::{self, Parcel};

fn put(kept: &mut Kept, own: &OwnSteps) {
    for (id, text) in own.written() {
        kept.put(id, Entry::new(text, 0));
    }
}

fn with(side: Side, titles: &[&str]) -> Kept {
    let mut kept = Kept::default();
    let mut own = OwnSteps::of(side, &kept);
    for title in titles {
        assert!(own.add(title), "{title}");
    }
    put(&mut kept, &own);
    kept
}

#[test]
fn each_side_has_its_own() {
    let kept = with(Side::LayUp, &["Grease the center stand", "Camera off"]);
    assert_eq!(OwnSteps::of(Side::LayUp, &kept).titles, ["Grease the center stand", "Camera off"]);
    assert!(OwnSteps::of(Side::WakeUp, &kept).titles.is_empty());
    assert_eq!(
        kept.bike.entries[&facts::OWN_LAY_UP.id()].text,
        "Grease the center stand; Camera off"
    );
    let kept = with(Side::WakeUp, &["Camera on"]);
    assert_eq!(kept.bike.entries[&facts::OWN_WAKE_UP.id()].text, "Camera on");
}

#[test]
fn a_title_is_there_once_and_has_no_semicolon() {
    let mut own = OwnSteps::of(Side::LayUp, &Kept::default());
    assert!(own.add("  Grease the stand; both sides "));
    assert_eq!(own.titles, ["Grease the stand, both sides"]);
    assert!(!own.add("Grease the stand, both sides"), "there already");
    assert!(!own.add(" ") && !own.add(""), "nothing said");
    assert!(own.add(";"), "a comma, if somebody wants it");
    assert_eq!(own.titles.len(), 2);
}

#[test]
fn ticks_belong_to_titles_and_survive_another_ones_removal() {
    let mut kept = with(Side::LayUp, &["One", "Two", "Three"]);
    let mut own = OwnSteps::of(Side::LayUp, &kept);
    own.turn("Two");
    own.turn("Three");
    put(&mut kept, &own);
    let mut own = OwnSteps::of(Side::LayUp, &kept);
    assert!(!own.is_done("One") && own.is_done("Two") && own.is_done("Three"));
    assert_eq!(own.remove("Two"), Some((1, true)));
    put(&mut kept, &own);
    let mut own = OwnSteps::of(Side::LayUp, &kept);
    assert_eq!(own.titles, ["One", "Three"]);
    assert!(own.is_done("Three") && !own.is_done("One"));
    // Another of that name is another one: not ticked.
    assert!(own.add("Two") && !own.is_done("Two"));
    assert_eq!(own.remove("Two"), Some((2, false)));
    own.put_back("Two", (1, true));
    assert_eq!(own.titles, ["One", "Two", "Three"]);
    assert!(own.is_done("Two"));
    assert_eq!(own.remove("Four"), None);
    own.turn("Three");
    put(&mut kept, &own);
    assert!(!OwnSteps::of(Side::LayUp, &kept).is_done("Three"));
}

/// Titles are the bike's, ticks the season's: next year they stand there unticked.
#[test]
fn a_second_season_starts_unticked() {
    let mut kept = with(Side::LayUp, &["One"]);
    let mut own = OwnSteps::of(Side::LayUp, &kept);
    own.turn("One");
    put(&mut kept, &own);
    assert!(OwnSteps::of(Side::LayUp, &kept).is_done("One"));
    kept.season = Default::default();
    let own = OwnSteps::of(Side::LayUp, &kept);
    assert!(own.titles == ["One"] && !own.is_done("One"));
}

#[test]
fn there_is_room_for_so_many_letters() {
    let mut own = OwnSteps::of(Side::LayUp, &Kept::default());
    let room = own.room();
    assert!(!own.add(&"ä".repeat(room + 1)));
    assert!(own.add(&"ä".repeat(room)));
    assert_eq!(own.room(), 0);
    assert!(!own.add("x"));
    let [(_, text), _] = own.written();
    assert!(text.chars().count() <= LONGEST);
    // One that was taken out comes back even where its room was taken since.
    let mut own = OwnSteps::of(Side::LayUp, &Kept::default());
    assert!(own.add("One") && own.add(&"x".repeat(own.room())));
    let was = own.remove("One").unwrap();
    assert!(own.add("Two"));
    own.put_back("One", was);
    assert_eq!(own.titles.first().unwrap(), "One");
    assert_eq!(own.titles.len(), 3);
}

/// Titles are the owner's words: they leave in a link only with the names.
#[test]
fn they_travel_with_names_alone() {
    let mut kept = with(Side::LayUp, &["Call Alder about the key"]);
    let mut own = OwnSteps::of(Side::LayUp, &kept);
    own.turn("Call Alder about the key");
    put(&mut kept, &own);
    kept.put(facts::TANK_VOLUME.id(), Entry::new("16", torpor::units::LITER.code));
    let made = chrono::NaiveDate::from_ymd_opt(2026, 11, 14).unwrap();
    let parcel = Parcel { made, kept: kept.clone() };
    let bare = link::read(&link::written(&parcel, false).unwrap()).unwrap().kept;
    assert!(OwnSteps::of(Side::LayUp, &bare).titles.is_empty());
    assert!(bare.season.entries.is_empty(), "nor do their ticks");
    assert_eq!(bare.bike.entries.len(), 1);
    let named = link::read(&link::written(&parcel, true).unwrap()).unwrap().kept;
    assert_eq!(OwnSteps::of(Side::LayUp, &named), own);
}

proptest! {
    /// Whatever stands in both entries: titles are unique and not blank, ticks are of titles that there are, and what is
    /// written is read again as the same.
    #[test]
    fn any_text_is_read(titles in "[;, a-cä\u{202e}\n]{0,40}|\\PC{0,60}", done in "[;, a-cä\u{202e}\n]{0,40}", more in "\\PC{0,20}") {
        let mut kept = Kept::default();
        kept.put(facts::OWN_WAKE_UP.id(), Entry::new(titles, 0));
        kept.put(facts::OWN_WAKE_UP_DONE.id(), Entry::new(done, 0));
        let mut own = OwnSteps::of(Side::WakeUp, &kept);
        let before = own.titles.len();
        let added = own.add(&more);
        prop_assert_eq!(own.titles.len(), before + usize::from(added));
        for (at, title) in own.titles.iter().enumerate() {
            prop_assert!(!title.trim().is_empty() && !title.contains(';'));
            prop_assert!(!own.titles[..at].contains(title));
        }
        put(&mut kept, &own);
        prop_assert_eq!(OwnSteps::of(Side::WakeUp, &kept), own.clone());
        // A title that is taken out and put back is where it was, ticked as it was.
        for title in own.titles.clone() {
            let mut other = own.clone();
            let was = other.remove(&title).unwrap();
            other.put_back(&title, was);
            prop_assert_eq!(&other.titles, &own.titles);
            prop_assert!(own.titles.iter().all(|it| other.is_done(it) == own.is_done(it)));
        }
    }
}
