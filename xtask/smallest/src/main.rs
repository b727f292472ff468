//! The smallest page that Torpor could be: one number is typed, one answer follows. `cargo xtask bench` measures it beside
//! Torpor, so that what Leptos and the browser take by themselves is known on the same machine in the same minute.

use leptos::prelude::*;

fn main() {
    mount_to_body(|| {
        let (typed, type_in) = signal("21".to_owned());
        // A whole number, as the standard library's reading and printing of others is half as large as all of this page.
        let twice = move || {
            let number = typed.get().parse::<i32>().ok();
            number.and_then(|it| it.checked_mul(2)).map(|it| it.to_string())
        };
        view! {
            <main>
                <label for="number">"A whole number"</label>
                <input
                    id="number"
                    inputmode="numeric"
                    prop:value=typed
                    on:input=move |it| type_in.set(event_target_value(&it))
                />
                <output>{twice}</output>
            </main>
        }
    });
}
