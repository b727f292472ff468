//! The smallest page that Torpor could be: one number is typed, one answer follows. `cargo xtask bench` measures it beside
//! Torpor, so that what Leptos and the browser take by themselves is known on the same machine in the same minute.

use leptos::prelude::*;

fn main() {
    mount_to_body(|| {
        let (typed, set_typed) = signal("21".to_owned());
        let twice =
            move || typed.get().parse::<f64>().map_or(String::new(), |it| (it * 2.0).to_string());
        view! {
            <main>
                <label for="number">"A number"</label>
                <input id="number" inputmode="decimal" prop:value=typed on:input=move |it| set_typed.set(event_target_value(&it)) />
                <output>{twice}</output>
            </main>
        }
    });
}
