//! Files that are cut, bent or meant to harm: what is whole is taken, the rest is said, nothing panics.

#[path = "../hostile_inputs/mod.rs"]
mod hostile_inputs;

use super::samples::*;
use hostile_inputs::{Dice, SEEDS};
use std::time::Instant;
use torpor::facts::{self, Id};
use torpor::garage::Bike;
use torpor::storage::backup;
use torpor::storage::restore;
use torpor::words::backup as words;

#[test]
fn cut_at_every_byte_the_whole_records_come_back_and_the_others_are_named() {
    let text = sample_text();
    let all = backup::read(&text).records;
    // Where each record ends: at the brace before the next one's beginning, or the list's end.
    let starts: Vec<usize> = text.match_indices("\"record\": ").map(|it| it.0).collect();
    assert_eq!((starts.len(), all.len()), (5, 5));
    let ends: Vec<usize> = starts
        .iter()
        .skip(1)
        .copied()
        .chain([text.rfind(']').unwrap()])
        .map(|it| text[..it].rfind('}').unwrap() + 1)
        .collect();
    for end in (0..text.len()).filter(|it| text.is_char_boundary(*it)) {
        let file = backup::read(&text[..end]);
        let whole = ends.iter().filter(|it| **it <= end).count();
        assert_eq!(file.records, all[..whole], "cut at {end}");
        if file.wrong == [words::NO_BACKUP] {
            assert!(end < starts[0] + 9, "{end}");
            continue;
        }
        assert_eq!(file.wrong.len(), all.len() - whole, "{end}: {:?}", file.wrong);
        for (lost, it) in all[whole..].iter().zip(&file.wrong) {
            assert_eq!(*it, words::lost(&lost.name), "{end}");
        }
    }
}

#[test]
fn a_broken_record_is_named_and_stops_no_other() {
    let text = sample_text();
    let all = backup::read(&text).records;
    for (broken, place) in [("Nov 14 2026\"", 1), ("US qt\",", 2)] {
        let bent = text.replacen(broken, "", 1);
        assert_ne!(bent, text);
        let file = backup::read(&bent);
        assert_eq!(file.wrong, [words::lost(&all[place].name)]);
        let mut others = all.clone();
        others.remove(place);
        assert_eq!(file.records, others);
        // Where contents and head are broken, too, it is at least said that there was one.
        let file = backup::read(&bent.replacen("\"contents\"", "contents", 1));
        assert_eq!(file.wrong, [words::lost(words::NAMELESS)]);
        assert_eq!(file.records, others);
    }
    // One that somebody took out is missed.
    let start = text.find("\"record\": \"garage\"").unwrap();
    let start = text[..start].rfind('{').unwrap();
    let end = text.find("\"record\": \"log.a1\"").unwrap();
    let end = text[..end].rfind('{').unwrap();
    let file = backup::read(&format!("{}{}", &text[..start], &text[end..]));
    assert_eq!(file.wrong, [words::lost(&all[2].name)]);
}

#[test]
fn facts_of_other_types_are_named_and_the_rest_of_the_record_is_taken() {
    let text = r#"{"torpor_backup": 1, "records": [
        {"record": "bike.a", "name": "Rowan", "lists": [{"facts": {"tank_volume": {"text": [15]}, "bike_name": {"text": "Rowan"},
            "consumption": {"text": "5", "unit": "furlong"}, "torque": null, "none_of_ours": "x"}}, {"fastener": 3}, {"kind_x": {}}, 4]},
        {"record": "season.a", "lists": {}}, {"record": 5}, {"record": "other.x", "lists": []}, {"record": "bike.a"}, 7, null
    ]}"#;
    let file = backup::read(text);
    assert_eq!(file.records.len(), 1);
    let own = &file.records[0].held.entries;
    let known: Vec<_> = own.iter().filter(|it| !it.1.is_blank()).map(|it| it.0).collect();
    assert_eq!(known, [&torpor::facts::BIKE_NAME.id()]);
    assert_eq!(file.records[0].held.fasteners, [torpor::garage::Entries::new()]);
    let said = file.wrong.join("\n");
    for it in [
        "Rowan, facts: tank_volume",
        "Rowan, facts: consumption",
        "Rowan, facts: torque",
        "Rowan, facts: none_of_ours",
        "Rowan, fastener: wants facts",
        "Rowan, lists: wants facts",
        "Rowan, kind_x",
        "season.a: damaged",
        "other.x: no record",
        "bike.a: no record of Torpor’s, or there twice",
    ] {
        assert!(said.contains(it), "{it} in {said}");
    }
    assert!(said.contains(r#"{"text": "15", "unit": "L"}"#), "what would be taken");
}

#[test]
fn what_the_rescue_panel_copied_is_the_same() {
    let pairs = sample().into_iter().map(|(key, text)| (format!("torpor.{key}"), text.into()));
    let mut all: serde_json::Map<_, _> = pairs.collect();
    all.insert("torpor.backup".into(), "2026-11-14".into());
    let file = backup::read(&serde_json::to_string_pretty(&all).unwrap());
    assert!(file.wrong.is_empty());
    let mut kept = again(&stored(&file));
    kept.sort_by(|one, other| one.key.cmp(&other.key));
    let mut sample = again(&sample());
    sample.sort_by(|one, other| one.key.cmp(&other.key));
    assert_eq!(kept, sample);
    let copied = |text: &str| {
        backup::read(&format!("{{\"torpor.bike.a\": \"{text}\", \"torpor.calendar.a\": \"x\"}}"))
            .wrong
    };
    assert_eq!(copied("2.AAAA"), [words::newer("bike.a")]);
    assert_eq!(copied("1.AAAA"), [words::lost("bike.a")]);
}

#[test]
fn what_is_no_backup_is_told_what_would_be() {
    for text in [
        "",
        "hello",
        "[]",
        "{}",
        "{\"records\": []}",
        "\u{feff}",
        "{\"torpor_logbook\": 1, \"entries\": []}",
        "{\"neighbor.bike.a\": \"1.AAAA\"}",
    ] {
        assert_eq!(only_said(text), words::NO_BACKUP, "{text}");
    }
    let text = sample_text();
    for newer in ["2", "4294967295", "0", "-1", "1.5", "\"x\""] {
        let whole =
            text.replacen("\"torpor_backup\": 1", &format!("\"torpor_backup\": {newer}"), 1);
        assert_ne!(whole, text);
        assert_eq!(only_said(&whole), words::NEWER, "{newer}");
        assert_eq!(only_said(&whole[..whole.len() - 9]), words::NEWER, "{newer}");
    }
}

/// What is said of a file of which nothing is taken.
fn only_said(text: &str) -> String {
    let mut file = backup::read(text);
    assert!(file.records.is_empty() && file.wrong.len() == 1, "{file:?}");
    file.wrong.remove(0)
}

#[test]
fn bent_twenty_thousand_times() {
    let sample = backup::found(&sample());
    let text = sample_text();
    for seed in SEEDS {
        let mut dice = Dice::of(seed);
        for _ in 0..10_000 {
            let mut bytes = text.clone().into_bytes();
            dice.bend(&mut bytes);
            let bent = torpor::storage::text::of_backup(&bytes);
            let file = backup::read(&bent);
            figures_are_told(&file, &sample);
            for it in &file.records {
                let part = restore::part(&sample, it, 1);
                for choice in [restore::Choice::Merge, restore::Choice::Take] {
                    let mut writes = Vec::new();
                    part.clone().write(choice, &mut writes);
                    let ours = |it: &restore::Write| backup::Shape::of(&it.0).is_some();
                    assert!(writes.iter().all(ours), "{writes:?}");
                }
            }
        }
    }
}

/// Each figure of the sample either comes as it was, or the file says that something was wrong. Texts have no second
/// spelling, and neither has the time at which something was typed.
fn figures_are_told(file: &backup::File, sample: &[backup::Found]) {
    let figures = |held: &Bike| -> Vec<(Id, u64, String)> {
        let lists = [&held.entries, &held.scratch].into_iter().chain(&held.fasteners);
        let of = |(id, it): (&Id, &torpor::entry::Entry)| {
            let (value, unit) = facts::value(facts::about(*id)?, it)?;
            Some((*id, value.to_bits(), unit.symbol.to_owned()))
        };
        lists.flat_map(|it| it.iter().filter_map(of)).collect()
    };
    if !file.wrong.is_empty() {
        return;
    }
    for was in sample {
        let came = file.records.iter().find(|it| it.key == was.key);
        let came = came.unwrap_or_else(|| panic!("{} is gone and nothing is said", was.key));
        assert_eq!(figures(&came.held), figures(&was.held), "{}", was.key);
    }
}

/// Nothing grows faster than the file. Unoptimized, on a machine with other work, seconds.
#[test]
fn long_and_deep_files_end() {
    let long = 400 * 1024;
    let start = Instant::now();
    for piece in [
        "[",
        "{\"record\":",
        "{\"record\":[",
        "{\"record\":\"",
        "{\"record\":0,\"a\":[0,",
        "{\"record\":\"bike.a\",",
        "{ \"record\" ",
        "\"record\"",
        "\"torpor.bike.a\":\"1.A\",",
        "\"torpor_backup\":",
        "\\",
        "{\"record\":{\"record\":0},",
        "\u{202e}",
        "{\"",
        " ",
    ] {
        let text = piece.repeat(long / piece.len());
        let _ = backup::read(&text);
        let _ = backup::read(&format!("{{\"torpor_backup\":1,\"records\":[{text}"));
    }
    let many = r#"{"record":"bike.a","lists":[]},"#.repeat(long / 31);
    let file = backup::read(&format!("{{\"torpor_backup\":1,\"records\":[{many}0]}}"));
    assert_eq!(file.records.len(), 1);
    assert!(start.elapsed().as_secs() < 60, "{:?}", start.elapsed());
}

#[test]
fn hidden_characters_and_endless_texts_stay_out() {
    let name = format!("Ro\\u202ewan\\u0000\\u200b{}", "x".repeat(30_000));
    let text = format!(
        r#"{{"torpor_backup": 1, "records": [
        {{"record": "bike.a", "name": "\u202e{name}", "lists": [{{"facts": {{"bike_name": {{"text": "Ro\u202ewan\u0007\n2"}}, "fastener_note": {{"text": "{name}"}}}}}}]}}]}}"#
    );
    let file = backup::read(&text);
    assert_eq!(file.records[0].held.entries[&torpor::facts::BIKE_NAME.id()].text, "Rowan\n2");
    assert!(file.records[0].held.entries[&facts::FASTENER_NOTE.id()].is_blank());
    assert_eq!(file.wrong.len(), 2);
    assert!(
        file.wrong[0].chars().count() < 200 && !file.wrong[0].contains('\u{202e}'),
        "{}",
        file.wrong[0]
    );
}
