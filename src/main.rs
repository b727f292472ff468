//! Mounts the page.

use leptos::prelude::*;

fn main() {
    std::panic::set_hook(Box::new(|panic| {
        console_error_panic_hook::hook(panic);
        // The rescue panel of index.html takes over: it needs none of this program.
        if let Ok(event) = web_sys::Event::new("torpor-stopped") {
            let _ = window().dispatch_event(&event);
        }
    }));
    mount_to_body(torpor::view::App);
    if let Some(shell) = document().get_element_by_id("shell") {
        shell.remove();
    }
}
