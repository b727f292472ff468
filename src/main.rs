fn main() {
    leptos::mount::mount_to_body(|| "hello");
}
