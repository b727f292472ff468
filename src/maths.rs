//! Powers of e and their inverses. On the page the browser's own, which is there already: brought along they are a
//! kilobyte on the wire. Elsewhere those of the standard library. They may differ in the last of sixteen digits, far below
//! all that is shown.
//!
//! The one place of the library besides the store and the view that knows the browser.

#[cfg(not(all(feature = "page", target_arch = "wasm32")))]
mod here {
    pub fn exp(x: f64) -> f64 {
        x.exp()
    }
    pub fn exp_m1(x: f64) -> f64 {
        x.exp_m1()
    }
    pub fn ln(x: f64) -> f64 {
        x.ln()
    }
    pub fn ln_1p(x: f64) -> f64 {
        x.ln_1p()
    }
}

#[cfg(all(feature = "page", target_arch = "wasm32"))]
mod here {
    use js_sys::Math;

    pub fn exp(x: f64) -> f64 {
        Math::exp(x)
    }
    pub fn exp_m1(x: f64) -> f64 {
        Math::expm1(x)
    }
    pub fn ln(x: f64) -> f64 {
        Math::log(x)
    }
    pub fn ln_1p(x: f64) -> f64 {
        Math::log1p(x)
    }
}

pub(crate) use here::{exp, exp_m1, ln, ln_1p};
