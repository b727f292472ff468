//! What is given to others: the built page in one zip, with the SHA-256 of every file in it and that of the zip beside it.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::Outcome;
use crate::files::{bytes, files, name_in, scratch, write};
use crate::program::ask;
use crate::setup::locked_version;
use crate::zip::zip;

/// As `sha256sum --check` and `shasum --check` read them.
const SUMS: &str = "SHA256SUMS";

/// Node.js has SHA-256 built in; the library of Rust has not.
const DIGESTS: &str = "
const { readFileSync } = require('node:fs');
const { createHash } = require('node:crypto');
for (const file of process.argv.slice(1)) console.log(createHash('sha256').update(readFileSync(file)).digest('hex'));
";

/// Writes target/torpor-<version>.zip of the page in `dist` and its checksum beside it.
pub fn release(dist: &Path) -> Outcome {
    let name = format!("torpor-{}", locked_version("torpor")?);
    let file = scratch(&format!("{name}.zip"))?;
    write(&file, &packed(dist, &name)?)?;
    let sum = sums(std::slice::from_ref(&file), &[format!("{name}.zip")])?;
    write(&scratch(&format!("{name}.zip.sha256"))?, sum)?;
    println!("\nFor others: target/{name}.zip, its checksum in target/{name}.zip.sha256.");
    Ok(())
}

/// The zip: all in one folder, so that unpacking it litters nowhere.
fn packed(dist: &Path, folder: &str) -> Outcome<Vec<u8>> {
    let paths = files(dist)?;
    let names: Vec<String> = paths.iter().map(|it| name_in(dist, it)).collect();
    let mut files = vec![(format!("{folder}/{SUMS}"), sums(&paths, &names)?.into_bytes())];
    for (path, name) in paths.iter().zip(&names) {
        files.push((format!("{folder}/{name}"), bytes(path)?));
    }
    zip(&files).ok_or_else(|| format!("The page in {} is too large for a zip.", dist.display()))
}

/// A line for each file: its SHA-256, and its name.
fn sums(files: &[PathBuf], names: &[String]) -> Outcome<String> {
    let told = ask(Command::new("node").args(["-e", DIGESTS, "--"]).args(files))
        .map_err(|why| format!("{why} Checksums are made with Node.js."))?;
    let all: Vec<&str> = told.lines().collect();
    if all.len() != names.len() {
        return Err("Node.js did not give one checksum for each file.".to_owned());
    }
    Ok(all.iter().zip(names).map(|(sum, name)| format!("{sum}  {name}\n")).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeMap;
    use std::fs;
    use std::io::Read;

    const NAME: &str = "torpor-1.2.3";

    /// What the rawzip crate finds in a zip; it holds every file's CRC-32 against its bytes.
    fn read_by_another(
        zip: &[u8],
    ) -> Result<BTreeMap<String, Vec<u8>>, Box<dyn std::error::Error>> {
        let archive = rawzip::ZipArchive::from_slice(zip)?;
        let mut found = BTreeMap::new();
        let mut entries = archive.entries();
        while let Some(entry) = entries.next_entry()? {
            let name = entry.file_path().try_normalize()?.as_ref().to_owned();
            let (inside, mode) = (archive.get_entry(entry.wayfinder())?, entry.mode().value());
            let mut bytes = Vec::new();
            inside.verifying_reader(inside.data()).read_to_end(&mut bytes)?;
            assert_eq!(mode, 0o100_644, "{name}");
            found.insert(name, bytes);
        }
        Ok(found)
    }

    /// The checksums are those that FIPS 180-4's example has for "abc", and the well-known one of nothing.
    #[test]
    fn another_reader_finds_every_file_and_its_checksum() -> Result<(), Box<dyn std::error::Error>>
    {
        let dist = scratch("zip-test")?;
        fs::create_dir_all(dist.join("in"))?;
        let long: Vec<u8> = (0..70_000_u32).map(|it| (it % 251) as u8).collect();
        let files: [(&str, &[u8]); 3] =
            [("in/long.bin", &long), ("index.html", b"abc"), ("nothing", b"")];
        for (name, bytes) in files {
            write(&dist.join(name), bytes)?;
        }
        let made = packed(&dist, NAME)?;
        let mut found = read_by_another(&made)?;
        for (name, bytes) in files {
            assert!(
                found.remove(&format!("{NAME}/{name}")).is_some_and(|it| it == bytes),
                "{name}"
            );
        }
        let sums = String::from_utf8(found.remove(&format!("{NAME}/{SUMS}")).ok_or("no sums")?)?;
        assert!(found.is_empty(), "{:?}", found.keys());
        let sums: Vec<&str> = sums.lines().collect();
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        let nothing = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
        assert!(sums[0].ends_with("  in/long.bin"), "{sums:?}");
        assert_eq!(sums[1..], [format!("{abc}  index.html"), format!("{nothing}  nothing")]);

        // The hour of the build leaves no trace.
        write(&dist.join("index.html"), b"abc")?;
        assert!(packed(&dist, NAME)? == made);
        // A bit that turned over is found, so the reader does look.
        let mut broken = made.clone();
        let at = broken.windows(3).position(|it| it == b"abc").ok_or("no file")?;
        broken[at] ^= 1;
        assert!(read_by_another(&broken).is_err());
        Ok(())
    }
}
