#![allow(clippy::unwrap_used)]
use chrono::NaiveDate;
use torpor::garage::example;
use torpor::plan::*;
use torpor::units::UnitSet;
#[test]
fn dump() {
    let kept = example(NaiveDate::from_ymd_opt(2026, 10, 1).unwrap(), UnitSet::Metric);
    for side in Side::ALL { for s in side.steps() { if let Some(l) = s.sum {
        let p = l.panel(&kept, &drawer(&kept.garage), UnitSet::Metric);
        println!("== {} {:?}\n   head {} {:?} {}\n   note {}", s.said.title, l, p.head.label, p.head.figure, p.head.figure_words(), p.note);
        for a in &p.answers { println!("   . {}: {:?}", a.label, a.figure); }
        println!("   warnings {:?}", p.warnings);
        for a in p.worked() { if let Some(w) = &a.working { println!("     src {}: {}", a.label, w.written().source); } }
    }}}
    for e in dates(&kept) { println!("{} {} {}", e.day, e.title, e.key); }
}
