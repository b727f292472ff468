//! Files and what is in them, with sentences for what cannot be read or written.

use std::fs;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::{Path, PathBuf};

use crate::{Outcome, root};

/// A file's text.
pub fn read(file: &Path) -> Outcome<String> {
    fs::read_to_string(file).map_err(|why| unread(file, &why))
}

/// A file's bytes.
pub fn bytes(file: &Path) -> Outcome<Vec<u8>> {
    fs::read(file).map_err(|why| unread(file, &why))
}

/// Writes a file, text or bytes.
pub fn write(file: &Path, what: impl AsRef<[u8]>) -> Outcome {
    fs::write(file, what).map_err(|why| unwritten(file, &why))
}

/// Gives a file or a folder another name.
pub fn rename(before: &Path, after: &Path) -> Outcome {
    fs::rename(before, after).map_err(|why| unwritten(after, &why))
}

/// A file that only the build needs.
pub fn scratch(name: &str) -> Outcome<PathBuf> {
    Ok(root()?.join("target").join(name))
}

/// What stands in files, as 16 hex digits for a name.
pub fn content(files: &[&Path]) -> Outcome<String> {
    let mut hasher = DefaultHasher::new();
    for file in files {
        bytes(file)?.hash(&mut hasher);
    }
    Ok(format!("{:016x}", hasher.finish()))
}

/// All files of a built page, in the order of their paths.
pub fn files(folder: &Path) -> Outcome<Vec<PathBuf>> {
    let mut files = Vec::new();
    collect(folder, &mut files)
        .map_err(|why| format!("The built page in {} cannot be read ({why}).", folder.display()))?;
    files.sort();
    Ok(files)
}

/// A file's name as seen from a folder it is in, with slashes everywhere.
pub fn name_in(folder: &Path, file: &Path) -> String {
    let parts = file.strip_prefix(folder).unwrap_or(file).components();
    parts.map(|it| it.as_os_str().to_string_lossy()).collect::<Vec<_>>().join("/")
}

fn collect(folder: &Path, files: &mut Vec<PathBuf>) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let kind = entry.file_type()?;
        // Trunk keeps its half-built page in a hidden folder of dist/.
        let hidden = entry.file_name().to_string_lossy().starts_with('.');
        if kind.is_dir() && !hidden {
            collect(&entry.path(), files)?;
        } else if kind.is_file() {
            files.push(entry.path());
        }
    }
    Ok(())
}

fn unread(file: &Path, why: &std::io::Error) -> String {
    format!("{} cannot be read ({why}).", file.display())
}

fn unwritten(file: &Path, why: &std::io::Error) -> String {
    format!("{} cannot be written ({why}).", file.display())
}
