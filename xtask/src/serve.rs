//! The page on this machine, built again on every change.

use std::net::{Ipv4Addr, TcpListener};

use crate::Outcome;
use crate::page::trunk;
use crate::setup::set_up;

/// Where the page is served unless told otherwise.
pub const PORT: u16 = 8087;

/// Reads the port of `--port`.
pub fn port(text: &str) -> Outcome<u16> {
    let port = text.parse().ok().filter(|port| *port > 0);
    port.ok_or_else(|| {
        format!(
            "`{text}` is no port: give a whole number from 1 to 65535, such as `--port {PORT}`."
        )
    })
}

/// Sets up and serves until stopped.
pub fn serve(wanted: u16) -> Outcome {
    let tools = set_up()?;
    let free = |port: &u16| TcpListener::bind((Ipv4Addr::LOCALHOST, *port)).is_ok();
    let port = (wanted..=u16::MAX).find(free);
    let port = port.ok_or_else(|| {
        format!("No port from {wanted} up is free: give a lower one with `--port`.")
    })?;
    if port != wanted {
        println!("Port {wanted} is taken; serving on {port}.");
    }
    println!(
        "\nTorpor will be at http://127.0.0.1:{port}/ once the page is built (two to three minutes the first time)."
    );
    println!("It is built again on every change: reload to see it. Stop with Ctrl-C.\n");

    let mut trunk = trunk(&tools, "serve")?;
    trunk.args(["--address", "127.0.0.1", "--port", &port.to_string()]);
    become_it(&mut trunk)
}

/// Trunk takes this process's place, so that whoever stops the chore stops the server.
#[cfg(unix)]
fn become_it(trunk: &mut std::process::Command) -> Outcome {
    use std::os::unix::process::CommandExt;
    Err(format!("Trunk could not be started ({}).", trunk.exec()))
}

#[cfg(not(unix))]
fn become_it(trunk: &mut std::process::Command) -> Outcome {
    crate::program::run(trunk)
}
