//! Files that are cut, bent or meant to harm: what is whole is taken, the rest is said, nothing panics.

#[path = "../hostile_inputs/mod.rs"]
mod hostile_inputs;

use super::samples::*;
use hostile_inputs::{Dice, SEEDS};
use std::time::Instant;
use torpor::storage::backup::{self, File};
use torpor::storage::restore;
use torpor::words::backup as words;

/// Every record of it is one of the sample's as it was saved, or it is said that it is not.
fn honest(file: &File) {
    let sample = sample();
    for it in file.records.iter().filter(|it| !it.changed) {
        let kept = (it.key.clone(), it.stored().unwrap());
        assert!(sample.contains(&kept), "{kept:?}");
    }
}

#[test]
fn cut_at_every_byte_the_whole_records_come_back_and_the_others_are_named() {
    let text = sample_text();
    let keys: Vec<String> = sample().into_iter().map(|it| it.0).collect();
    // Where each record ends: at the brace before the next one's beginning, or the list's end.
    let starts: Vec<usize> = text.match_indices("\"record\": ").map(|it| it.0).collect();
    assert_eq!(starts.len(), keys.len());
    let ends: Vec<usize> = starts
        .iter()
        .skip(1)
        .copied()
        .chain([text.rfind(']').unwrap()])
        .map(|it| text[..it].rfind('}').unwrap() + 1)
        .collect();
    let listed = text.find("\"records\"").unwrap();
    for end in (0..text.len()).filter(|it| text.is_char_boundary(*it)) {
        let file = match backup::read(&text[..end]) {
            Ok(file) => file,
            Err(why) => {
                assert!(end < starts[0] + 10, "{end}: {why}");
                continue;
            }
        };
        let whole = ends.iter().filter(|it| **it <= end).count();
        let got: Vec<&str> = file.records.iter().map(|it| it.key.as_str()).collect();
        assert_eq!(got, keys[..whole], "cut at {end}");
        honest(&file);
        if end > listed {
            // The last two bytes close list and file: then all of it is there.
            let mut wrong = file.wrong.clone();
            wrong.retain(|it| *it != words::damaged(words::NAMELESS));
            assert_eq!(wrong.len(), keys.len() - whole, "{end}: {wrong:?}");
            assert!(
                wrong.iter().all(|it| it.contains("Rowan")
                    || it.contains("the page noted")
                    || it.contains("Garage")),
                "{:?}",
                wrong
            );
        }
    }
}

#[test]
fn a_broken_record_is_named_and_stops_no_other() {
    let text = sample_text();
    for (broken, name) in [
        ("Nov 14 2026\"", "Rowan: season: damaged"),
        ("US qt\",", "Garage, shelf and wrenches: damaged"),
    ] {
        let bent = text.replacen(broken, "", 1);
        assert_ne!(bent, text);
        let file = backup::read(&bent).unwrap();
        assert_eq!(file.wrong, [name]);
        assert_eq!(file.records.len(), sample().len() - 1);
    }
    // A text that is kept as it is shows no damage of its own.
    let file = backup::read(&text.replacen("\"stored\": \"1.AAAA\"", "\"stored\": \"1.AAAB\"", 1))
        .unwrap();
    assert_eq!(file.wrong, ["Rowan: what the page noted: damaged"]);
}

#[test]
fn facts_of_other_types_are_named_and_the_rest_of_the_record_is_taken() {
    let text = r#"{"torpor_backup": 1, "records": [
        {"record": "bike.a", "name": "Rowan", "lists": [{"facts": {"tank_volume": {"text": [15]}, "bike_name": {"text": "Rowan"},
            "consumption": {"text": "5", "unit": "furlong"}, "torque": null, "none_of_ours": "x"}}, {"fastener": 3}, {"kind_x": {}}, 4]},
        {"record": "season.a", "lists": {}}, {"record": 5}, {"record": "other.x", "lists": []}, {"record": "bike.a"}, 7, null,
        {"record": "calendar.a", "lists": []}
    ]}"#;
    let file = backup::read(text).unwrap();
    assert_eq!(file.records.len(), 1);
    assert_eq!(file.records[0].own().len(), 1);
    let said = file.wrong.join("\n");
    for it in [
        "Rowan, tank_volume",
        "Rowan, consumption",
        "Rowan, torque",
        "Rowan, none_of_ours",
        "Rowan, lists",
        "season.a: damaged",
        "other.x: no record",
        "bike.a: there twice",
        "calendar.a: damaged",
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
    let text = serde_json::to_string_pretty(&all).unwrap();
    let file = backup::read(&text).unwrap();
    assert!(file.wrong.is_empty());
    let mut kept = stored(&file);
    kept.sort();
    let mut sample = sample();
    sample.sort();
    assert_eq!(kept, sample);
    // Cut off, it still gives what is whole.
    assert_eq!(backup::read(&text[..text.len() - 30]).unwrap().records.len(), sample.len() - 1);
    let newer = backup::read(r#"{"torpor.bike.a": "2.AAAA", "torpor.garage": "1.AAAA"}"#).unwrap();
    assert_eq!(newer.wrong, ["bike.a: written by a newer Torpor", "garage: damaged"]);
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
        "{\"torpor_backup\": \"1\"}",
        "{\"torpor_backup\": 0}",
        "{\"torpor_backup\": -1}",
        "{\"torpor_backup\": 1.5}",
    ] {
        assert_eq!(backup::read(text), Err(words::NO_BACKUP), "{text}");
    }
    let text = sample_text();
    for newer in ["2", "4294967295"] {
        let whole =
            text.replacen("\"torpor_backup\": 1", &format!("\"torpor_backup\": {newer}"), 1);
        assert_eq!(backup::read(&whole), Err(words::NEWER));
        assert_eq!(backup::read(&whole[..whole.len() - 9]), Err(words::NEWER));
    }
    let book = torpor::storage::log_file::json(&[entry("2026-11-14", "Oil")]);
    assert_eq!(backup::read(&book), Err(words::A_LOGBOOK));
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
            let bent = torpor::storage::text::of_file(&bytes);
            if let Ok(file) = backup::read(&bent) {
                // Without its sum a record is taken as it is: somebody wrote it by hand.
                if bent.matches("\"sum\": \"").count() == sample.len() {
                    honest(&file);
                }
                for part in restore::parts(&sample, &file.records) {
                    for choice in [restore::Choice::Merge, restore::Choice::Take] {
                        part.write(choice, &mut Vec::new());
                    }
                }
            }
        }
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
    let file = backup::read(&format!("{{\"torpor_backup\":1,\"records\":[{many}0]}}")).unwrap();
    assert_eq!(file.records.len(), 1);
    assert!(start.elapsed().as_secs() < 60, "{:?}", start.elapsed());
}

#[test]
fn hidden_characters_and_endless_texts_stay_out() {
    let name = format!("Ro\\u202ewan\\u0000\\u200b{}", "x".repeat(7000));
    let text = format!(
        r#"{{"torpor_backup": 1, "records": [
        {{"record": "bike.a", "name": "\u202e{name}", "lists": [{{"facts": {{"bike_name": {{"text": "Ro\u202ewan\u0007\n2"}}, "fastener_note": {{"text": "{name}"}}}}}}]}}]}}"#
    );
    let file = backup::read(&text).unwrap();
    assert_eq!(file.records[0].own()[&torpor::facts::BIKE_NAME.id()].text, "Rowan\n2");
    assert_eq!(file.records[0].own().len(), 1);
    assert!(
        file.wrong[0].chars().count() < 200 && !file.wrong[0].contains('\u{202e}'),
        "{}",
        file.wrong[0]
    );
}
