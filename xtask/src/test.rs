//! Everything that must hold before a change is good.

use std::time::{Duration, Instant};

use crate::program::{cargo, run};
use crate::release::release;
use crate::report::{Shown, step};
use crate::setup::set_up;
use crate::{Outcome, browser, deny, page, sizes};

/// Sets up, then checks everything; the first failure ends it.
pub fn test() -> Outcome {
    let start = Instant::now();
    let tools = set_up()?;
    let chromium = browser::chromium()?;
    browser::packages()?;
    let set_up_took = start.elapsed();

    let mut summary = vec![("Set-up", set_up_took)];
    let mut check = |name: &'static str, work: &dyn Fn() -> Outcome| -> Outcome {
        let ((), took): ((), Duration) = step(name, None, work)?;
        summary.push((name, took));
        Ok(())
    };
    let strict = ["-D", "warnings"];
    check("Format", &|| {
        run(&mut cargo(["fmt", "--all", "--check"])?)
            .map_err(|why| format!("{why} `cargo fmt --all` puts it right."))
    })?;
    // Three calls, since the page's features only make sense for the browser and the chores only for this machine.
    check("Lints of the library", &|| {
        run(cargo(["clippy", "--quiet", "--locked", "--all-targets", "--"])?.args(strict))
    })?;
    check("Lints of the page", &|| {
        let page =
            ["--target", "wasm32-unknown-unknown", "--features", "page", "--lib", "--bins", "--"];
        run(cargo(["clippy", "--quiet", "--locked"])?.args(page).args(strict))
    })?;
    check("Lints of the chores", &|| {
        run(cargo(["clippy", "--quiet", "--locked", "--package", "xtask", "--all-targets", "--"])?
            .args(strict))
    })?;
    if deny::at_hand() {
        check("Crates from outside", &deny::deny)?;
    }
    check("Tests of the library", &|| run(&mut cargo(["test", "--locked"])?))?;
    check("Tests of the chores", &|| {
        run(&mut cargo(["test", "--quiet", "--locked", "--package", "xtask"])?)
    })?;
    check("Page", &|| page::build(&tools))?;
    check("Size of the page", &|| sizes::check(&page::dist()?))?;
    check("Zip of the page", &|| release(&page::dist()?))?;
    check("Tests in the browser", &|| browser::tests(&chromium))?;

    println!("\nAll good:");
    for (name, took) in &summary {
        println!("  {:<24} {:>12}", name, Shown(*took).to_string());
    }
    println!("  {:<24} {:>12}", "All", Shown(start.elapsed()).to_string());
    Ok(())
}
