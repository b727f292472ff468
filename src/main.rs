//! Mounts the page.

fn main() {
    std::panic::set_hook(Box::new(|panic| {
        torpor::view::stopped(&panic.to_string());
    }));
    leptos::mount::mount_to_body(torpor::view::lay_out);
}
