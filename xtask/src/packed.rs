//! The page's wasm in its packed form (`pack.rs`), in the place of the plain one.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::files::{bytes, read, scratch, write};
use crate::pack::pack;
use crate::program::run;
use crate::{Outcome, root};

/// Undoes it with the script that the page has, and compares.
const CHECK: &str = "
const { readFileSync } = require('node:fs');
const [script, packed, plain] = process.argv.slice(1).map((file) => readFileSync(file));
import('data:text/javascript;base64,' + script.toString('base64')).then(({ unpack }) => {
  if (!plain.equals(unpack(new Uint8Array(packed)))) throw new Error('The wasm comes out different.');
}).catch((failure) => { console.error(failure); process.exitCode = 1; });
";

/// Asks an engine whether it takes the wasm: what was done to it last (`order.rs`) nobody else looks at.
const TAKEN: &str = "
const wasm = require('node:fs').readFileSync(process.argv[1]);
if (!WebAssembly.validate(wasm)) throw new Error('An engine does not take the wasm.');
";

/// How what reads the codes is made of its text: small, as all visitors fetch it.
const READER: [&str; 2] = ["-Oz", "--enable-bulk-memory"];

/// A page whose wasm is packed.
pub struct Packed {
    /// What the page fetches.
    pub file: PathBuf,
    plain: PathBuf,
}

impl Packed {
    /// Packs the wasm of a built page and lets its script undo that; none, and a sentence why, where it cannot be done. The
    /// name still ends like a wasm's: by that hosts tell what they compress.
    pub fn instead_of(
        wasm_opt: &Path,
        wasm: &Path,
        script: &Path,
        dist: &Path,
    ) -> Outcome<Option<Self>> {
        let whole = bytes(wasm)?;
        let packed = match pack(&whole, &reader(wasm_opt)?) {
            Ok(packed) => packed,
            Err(why) => {
                println!("   The wasm stays as it is, which is larger on the wire: {why}.");
                return Ok(None);
            }
        };
        let (long, short) = ("_bg.wasm", ".packed.wasm");
        let file = PathBuf::from(wasm.to_string_lossy().replace(long, short));
        let plain = scratch("plain.wasm")?;
        write(&plain, &whole)?;
        write(&file, &packed)?;
        fs::remove_file(wasm)
            .map_err(|why| format!("{} cannot be removed ({why}).", wasm.display()))?;
        // In one file with what it belongs to, so that no cache holds one of them without the other.
        let both = format!("{}\n{}", read(script)?, read(&root()?.join("src/unpack.js"))?);
        write(script, both.replace(long, short))?;
        let index = dist.join("index.html");
        write(&index, read(&index)?.replace(long, short))?;
        Ok(Some(Self { file, plain }))
    }

    /// Whether an engine takes the wasm.
    pub fn is_taken(&self) -> Outcome {
        run(Command::new("node").args(["-e", TAKEN, "--"]).arg(&self.plain))
            .map_err(|why| format!("{why} The page's wasm does not run."))
    }

    /// Holds what the script makes of the packed form against the wasm.
    pub fn check(&self, script: &Path) -> Outcome {
        let files = [script, &self.file, &self.plain];
        run(Command::new("node").args(["-e", CHECK, "--"]).args(files))
            .map_err(|why| format!("{why} The page's wasm cannot be unpacked."))
    }
}

/// What reads the codes, from its text. Where wasm-opt makes nothing of it the build ends, on purpose: that wasm-opt runs was
/// tried before (`lean.rs`), so the fault is in our text, and going on with the plain wasm would only hide it.
fn reader(wasm_opt: &Path) -> Outcome<Vec<u8>> {
    let wasm = scratch("unpack.wasm")?;
    let text = root()?.join("src/unpack.wat");
    run(Command::new(wasm_opt).args(READER).arg(text).arg("-o").arg(&wasm))
        .map_err(|why| format!("{why} No wasm can be made of src/unpack.wat."))?;
    bytes(&wasm)
}

#[cfg(test)]
mod tests {
    use std::sync::LazyLock;

    use super::*;
    use crate::setup::wasm_opt;
    use crate::wasm::put_sized;

    /// What reads the codes, made once for all tests.
    static READ: LazyLock<Outcome<Vec<u8>>> = LazyLock::new(|| {
        reader(&wasm_opt().map_err(|why| format!("{why} Without wasm-opt nothing is packed."))?)
    });

    /// A module of one function without parameters, whose body has these bytes; not one that runs.
    fn module(body: &[u8]) -> Vec<u8> {
        with_data(body, b"\x01\x01x")
    }

    /// The same with this inside of its section of data.
    fn with_data(body: &[u8], data: &[u8]) -> Vec<u8> {
        let mut code = vec![1];
        put_sized(&mut code, body);
        let mut out = b"\0asm\x01\0\0\0\x01\x04\x01\x60\0\0\x03\x02\x01\0".to_vec();
        out.push(10);
        put_sized(&mut out, &code);
        out.push(11);
        put_sized(&mut out, data);
        out
    }

    /// Whether `src/unpack.js` makes of its packed form what it was.
    fn comes_back(name: &str, wasm: &[u8]) -> Outcome {
        let (file, plain) =
            (scratch(&format!("{name}.packed"))?, scratch(&format!("{name}.plain"))?);
        write(&file, &pack(wasm, READ.as_ref().map_err(Clone::clone)?)?)?;
        write(&plain, wasm)?;
        Packed { file, plain }.check(&root()?.join("src/unpack.js"))
    }

    #[test]
    fn every_sort_of_instruction_comes_back() -> Outcome {
        let mut body = vec![0];
        body.extend((0x00..=0x01).chain([0x05, 0x0f, 0x1a, 0x1b, 0xd1]).chain(0x45..=0xc4));
        // Blocks of nothing, of a type, of a type by its number; numbers of all sizes; ways out; calls.
        body.extend(
            b"\x02\x40\x03\x7f\x04\x80\x01\x0c\0\x0d\x80\x01\x0e\x02\0\x80\x02\x01\x0e\0\0",
        );
        body.extend(b"\x10\xff\xff\x03\x11\x05\0\x11\x80\x01\x01\xd2\x07\xd0\x70\x1c\x01\x7f");
        for code in 0x20..=0x26 {
            body.extend([code, 0, code, 0x80, 0x01]);
        }
        for code in 0x28..=0x3e {
            body.extend([code, 0, 0, code, 2, 0xff, 0xff, 0xff, 0xff, 0x0f]);
        }
        body.extend(b"\x3f\0\x40\0\x41\x7f\x41\x80\x80\x80\x80\x78\x42\0");
        body.extend(b"\x42\x80\x80\x80\x80\x80\x80\x80\x80\x80\x7f\x43\x01\x80\xff\x3f\x44\x01\x02\x80\x04\xff\x06\x07\x40");
        for code in 0..=7 {
            body.extend([0xfc, code]);
        }
        body.extend(b"\xfc\x08\x01\0\xfc\x09\x01\xfc\x0a\0\0\xfc\x0b\0\xfc\x0c\x01\0\xfc\x0d\x01\xfc\x0e\0\0\xfc\x0f\0\xfc\x10\0\xfc\x11\0\x0b\x0b");
        comes_back("instructions", &module(&body))
    }

    #[test]
    fn functions_of_every_size_come_back() -> Outcome {
        // Sizes of one, two and three bytes, and locals of none, one and many types.
        for (locals, long) in
            [(&b"\0"[..], 0), (b"\x01\x80\x01\x7f", 200), (b"\x03\x01\x7f\x02\x7e\x01\x7c", 20_000)]
        {
            let mut body = locals.to_vec();
            body.resize(body.len() + long, 0x01);
            body.push(0x0b);
            comes_back("functions", &module(&body))?;
        }
        Ok(())
    }

    /// Text, a pointer among it, a length behind a pointer; from every place of a word on, and with ends of every length.
    #[test]
    fn data_comes_back() -> Outcome {
        for (shift, rest) in (0..4).flat_map(|shift| (0..4).map(move |rest| (shift, rest))) {
            let segment = |address: u32, bytes: &[u8]| {
                // An active segment at an address that is told in three bytes.
                let mut out = vec![0, 0x41];
                out.extend([
                    address as u8 | 0x80,
                    (address >> 7) as u8 | 0x80,
                    (address >> 14) as u8,
                ]);
                out.push(0x0b);
                put_sized(&mut out, bytes);
                out
            };
            let at = 0x10_0000 + shift;
            let mut bytes = vec![b'a'; (4 - shift as usize) % 4];
            for word in [at + 8, 12, at, 0xffff, at + 1, 0x1_0000, 0x4142_4344, 7, u32::MAX] {
                bytes.extend(word.to_le_bytes());
            }
            // Tables of two traits, and functions that come next.
            for word in [311, 12, 4, 312, 313, 0, 8, 8, 314, 311, 0, 1, 700, 701] {
                bytes.extend(u32::to_le_bytes(word));
            }
            bytes.extend(vec![b'z'; rest]);
            let mut data = vec![2];
            data.extend(segment(at, &bytes));
            data.extend(segment(at + 0x1000, b"short"));
            comes_back("data", &with_data(b"\0\x0b", &data))?;
        }
        Ok(())
    }

    #[test]
    fn what_is_not_known_is_said() {
        assert!(pack(&module(b"\0\xfe\0\0\x0b"), &[]).is_err());
        assert!(pack(&module(b"\0\x01"), &[]).is_err());
        assert!(pack(b"\0asm\x01\0\0\0", &[]).is_err());
    }
}
