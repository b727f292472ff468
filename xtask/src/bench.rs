//! How large and how quick the page is, beside the smallest one that Leptos makes, against what the design asks for. Bytes
//! are the same on every machine and are held; times depend on what else the machine does and are told.

use std::collections::BTreeMap;
use std::fs;

use crate::figures::Figures;
use crate::report::step;
use crate::setup::set_up;
use crate::sizes::{self, AIM, BUDGET, Bytes};
use crate::{Outcome, browser, crates, native, page, root};

/// So many crates are told by name.
const CRATES: usize = 12;

/// Builds both pages, measures, prints the table.
pub fn bench() -> Outcome {
    let tools = set_up()?;
    let chromium = browser::chromium()?;
    browser::packages()?;
    step("Building the page", Some("two to three minutes the first time"), || page::build(&tools))?;
    let name = "Building the smallest page";
    let (smallest, _) =
        step(name, Some("a minute the first time"), || page::build_smallest(&tools))?;
    let (native, _) = step("Measuring the library", Some("a minute"), native::measured)?;
    let name = "Measuring the page in Chromium";
    let (told, _) =
        step(name, Some("two to three minutes"), || browser::pace(&chromium, &smallest))?;

    let files = sizes::of(&page::dist()?)?;
    print_bytes(&files, &sizes::of(&smallest)?);
    print_crates()?;
    let figures = Figures::read(&told);
    print_times(&figures)?;
    print_native(&native)?;
    let [before, after] = ["load before", "load after"].map(|it| figures.median(it));
    println!(
        "\n{} visits, {} keystrokes of each sort. Load of the machine {:.1} before and {:.1} after: other work makes times longer.",
        figures.count("torpor cold first answer"),
        figures.count("torpor keystroke one fastener"),
        before?,
        after?
    );
    sizes::hold(&files)
}

fn print_bytes(files: &[(String, Bytes)], smallest: &[(String, Bytes)]) {
    head("Bytes of a first visit", &["raw", "gzip", "brotli"]);
    let show = |name: &str, bytes: Bytes, asked: &str| {
        row(name, &bytes.map(|it| it.to_string()), asked);
    };
    for (name, bytes) in files {
        show(&without_hash(name), *bytes, "");
    }
    let [raw, gzip, brotli] = sizes::sum(files);
    let asked = [("", brotli as f64, BUDGET as f64), ("aim", brotli as f64, AIM as f64)];
    show("all", [raw, gzip, brotli], &verdict(&asked));
    show("the smallest page", sizes::sum(smallest), "");
}

/// "torpor-276b07f461f786a1.js" as "torpor-….js".
fn without_hash(name: &str) -> String {
    let is_hash = |it: &&str| it.len() == 16 && it.chars().all(|it| it.is_ascii_hexdigit());
    let hash = name.split(['-', '.']).find(is_hash);
    hash.map_or(name.to_owned(), |it| name.replace(it, "…"))
}

/// What wasm-bindgen leaves still has the names of functions; Trunk keeps it there.
fn print_crates() -> Outcome {
    let file = root()?.join("target/wasm-bindgen/release/torpor_bg.wasm");
    let Some(crates) = fs::read(file).ok().and_then(|it| crates::by_crate(&it)) else {
        println!("\nCode by crate: not told, as the wasm with names is not where Trunk keeps it.");
        return Ok(());
    };
    let all: usize = crates.iter().map(|(_, bytes)| bytes).sum();
    head("Code by crate, before wasm-opt and packing", &["raw", "%"]);
    let show = |name: &str, bytes: usize| {
        let share = 100.0 * bytes as f64 / all as f64;
        row(name, &[bytes.to_string(), format!("{share:.1}")], "");
    };
    for (name, bytes) in crates.iter().take(CRATES) {
        show(name, *bytes);
    }
    show("all others", crates.iter().skip(CRATES).map(|(_, bytes)| bytes).sum());
    Ok(())
}

fn print_times(of: &Figures) -> Outcome {
    head("In Chromium, ms", &["median", "95 of 100", "smallest"]);
    let show = |what: &str, name: &str, beside: &str, asked: &str| -> Outcome {
        let beside = match beside {
            "" => String::new(),
            beside => ms(of.median(beside)?),
        };
        row(what, &[ms(of.median(name)?), ms(of.p95(name)?), beside], asked);
        Ok(())
    };
    let times = |name: &str, beside: &str| -> Outcome<String> {
        let times = of.median(name)? / of.median(beside)?;
        Ok(format!("{times:.2} times; {}", verdict(&[("", times, 1.5)])))
    };
    let [cold, its] = ["torpor cold first answer", "smallest cold first answer"];
    show("first paint, cold", "torpor cold first paint", "smallest cold first paint", "")?;
    show("first answer, cold", cold, its, &times(cold, its)?)?;
    show("all answers, cold", "torpor cold whole", "smallest cold whole", "")?;
    show("first paint, from the worker", "torpor worker first paint", "", "")?;
    show("first answer, from the worker", "torpor worker first answer", "", "")?;

    head("Keystroke to all answers, pace quartered, ms", &["median", "95 of 100", "smallest"]);
    for (what, name, rare) in [
        ("one fastener's figure, 12 rows", "torpor keystroke one fastener", true),
        ("the wrench's length, 12 rows", "torpor keystroke wrench length", true),
        ("a battery's season of 400 days", "torpor keystroke battery season", false),
    ] {
        let asked = [("median", of.median(name)?, 8.0), ("95 of 100", of.p95(name)?, 16.0)];
        let asked = if rare { &asked[..] } else { &asked[..1] };
        show(what, name, "smallest keystroke", &verdict(asked))?;
    }

    head("Logbook folded, first answer, ms", &["median", "95 of 100"]);
    let [many, none] = ["torpor many entries first answer", "torpor no entries first answer"];
    show("ten thousand entries", many, "", &times(many, none)?)?;
    show("no entries", none, "", "")?;

    head("Tasks over 50 ms", &["count", "longest"]);
    for (what, name) in [
        ("in a first visit", "torpor cold long tasks"),
        ("in one to the smallest page", "smallest cold long tasks"),
        ("in 500 keys, pace quartered", "torpor keys long tasks"),
    ] {
        let count = of.median(&format!("{name} count"))?;
        row(what, &[count.to_string(), ms(of.most(&format!("{name} longest"))?)], "");
    }

    head("Memory, 500 keys", &["before", "after"]);
    for what in ["wasm kB", "script kB", "elements count"] {
        let [before, after] =
            ["before", "after"].map(|when| of.median(&format!("torpor memory {when} {what}")));
        row(what, &[format!("{:.0}", before?), format!("{:.0}", after?)], "");
    }
    Ok(())
}

fn print_native(all: &[(String, f64)]) -> Outcome {
    head("Natively, release profile, µs", &["median"]);
    let mut budgets = BTreeMap::from([
        ("battery_season", &[("", 50.0)][..]),
        ("whole_plan 12", &[("", 200.0), ("aim", 50.0)][..]),
    ]);
    for (name, micros) in all {
        let budget = budgets.remove(name.as_str()).unwrap_or_default();
        let asked: Vec<_> = budget.iter().map(|(what, most)| (*what, *micros, *most)).collect();
        row(name, &[format!("{micros:.1}")], &verdict(&asked));
    }
    match budgets.keys().next() {
        Some(gone) => Err(format!("tests/pace measures no `{gone}` any more; it has a budget.")),
        None => Ok(()),
    }
}

fn head(what: &str, columns: &[&str]) {
    println!();
    row(what, &columns.iter().map(|it| (*it).to_owned()).collect::<Vec<_>>(), "");
}

fn row(what: &str, cells: &[String], asked: &str) {
    let mut line = format!("{what:<46}");
    for at in 0..3 {
        line.push_str(&format!("{:>11}", cells.get(at).map_or("", String::as_str)));
    }
    line.push_str("   ");
    line.push_str(asked);
    println!("{}", line.trim_end());
}

fn ms(it: f64) -> String {
    format!("{it:.1}")
}

/// What is asked of figures and whether it is so: each with what it is called, what it is, what it may be.
fn verdict(asked: &[(&str, f64, f64)]) -> String {
    let one = |(what, is, most): &(&str, f64, f64)| {
        let met = if is <= most { "met" } else { "NOT MET" };
        let what = if what.is_empty() { String::new() } else { format!("{what} ") };
        format!("{what}≤ {most}: {met}")
    };
    asked.iter().map(one).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_asked_is_met_or_not() {
        assert_eq!(verdict(&[("", 1.5, 1.5)]), "≤ 1.5: met");
        assert_eq!(
            verdict(&[("median", 8.01, 8.0), ("95 of 100", 9.0, 16.0)]),
            "median ≤ 8: NOT MET, 95 of 100 ≤ 16: met"
        );
        assert_eq!(without_hash("torpor-276b07f461f786a1.packed.wasm"), "torpor-….packed.wasm");
        assert_eq!(without_hash("icon-512-a9e0b7055bef529c.png"), "icon-512-….png");
        assert_eq!(without_hash("index.html"), "index.html");
    }
}
