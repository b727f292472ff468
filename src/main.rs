//! Mounts the page.

fn main() {
    leptos::mount::mount_to_body(|| "The sheet.");
    if let Some(shell) = leptos::prelude::document().get_element_by_id("shell") {
        shell.remove();
    }
}
