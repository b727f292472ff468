//! How long the library takes by itself: `tests/pace/pace.rs`, whose table is read here.

use crate::Outcome;
use crate::program::{ask, cargo};

/// Runs it; gives each subject, `torque_list 12` for one with an argument, with the median in µs.
pub fn measured() -> Outcome<Vec<(String, f64)>> {
    let mut bench = cargo(["bench", "--quiet", "--locked", "--bench", "pace"])?;
    let table = ask(bench.env("DIVAN_COLOR", "never"))?;
    let all = medians(&table);
    if all.is_empty() {
        return Err(format!("`cargo bench` printed no table that is known here:\n{table}"));
    }
    Ok(all)
}

/// The medians in µs out of divan's table, a tree with five columns behind its names.
fn medians(table: &str) -> Vec<(String, f64)> {
    let mut all = Vec::new();
    let mut above = "";
    for line in table.lines() {
        let columns: Vec<&str> = line.split('│').collect();
        let Some(at) = line.find(['├', '╰']) else { continue };
        let leaf = line[at..].trim_start_matches(['├', '╰', '─', ' ']);
        let Some(name) = leaf.split_whitespace().next() else { continue };
        // What has arguments has its figures in the rows below, each a step further in.
        if at == 0 {
            above = name;
        }
        let median = columns.iter().rev().nth(3).and_then(|it| micros(it.trim()));
        if let Some(median) = median {
            let full = if at == 0 { name.to_owned() } else { format!("{above} {name}") };
            all.push((full, median));
        }
    }
    all
}

/// "12.24 µs" in µs.
fn micros(text: &str) -> Option<f64> {
    let (number, unit) = text.split_once(' ')?;
    let scale = match unit {
        "ns" => 1e-3,
        "µs" => 1.0,
        "ms" => 1e3,
        "s" => 1e6,
        _ => return None,
    };
    number.parse::<f64>().ok().map(|it| it * scale)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_read() {
        let table = "\
Timer precision: 20 ns
pace               fastest       │ slowest       │ median        │ mean          │ samples │ iters
├─ link_read       11.54 µs      │ 44.95 µs      │ 12.24 µs      │ 12.64 µs      │ 100     │ 100
├─ torque_list                   │               │               │               │         │
│  ├─ 12           25.33 µs      │ 44.57 µs      │ 25.59 µs      │ 25.82 µs      │ 100     │ 100
│  ╰─ 200          406.4 µs      │ 453.3 µs      │ 0.4097 ms     │ 413.7 µs      │ 100     │ 100
╰─ whole_plan                    │               │               │               │         │
   ╰─ 12           141.5 µs      │ 184.1 µs      │ 145200 ns     │ 146.8 µs      │ 100     │ 100
";
        let expected = [
            ("link_read", 12.24),
            ("torque_list 12", 25.59),
            ("torque_list 200", 409.7),
            ("whole_plan 12", 145.2),
        ];
        let read = medians(table);
        assert_eq!(read.len(), expected.len(), "{read:?}");
        for ((name, median), (expected_name, expected)) in read.iter().zip(expected) {
            assert_eq!(name, expected_name);
            assert!((median - expected).abs() < 1e-9, "{name}: {median}");
        }
        assert!(medians("error: no such thing").is_empty());
    }
}
