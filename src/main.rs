//! Lays the page out.

/// Smaller than the one that Rust brings for WebAssembly.
#[cfg(target_family = "wasm")]
#[global_allocator]
static MEMORY: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();

fn main() {
    std::panic::set_hook(Box::new(|panic| torpor::view::say(&panic.to_string())));
    let owner = leptos::prelude::Owner::new();
    owner.with(torpor::view::lay_out);
    // The page lives until it is left.
    std::mem::forget(owner);
}
