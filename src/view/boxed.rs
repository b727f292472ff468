//! What closures are in a box. A `Box<dyn Fn()>` can be called in three ways, and every closure in one brings code for all
//! three; these can be called in one.

/// Does something.
pub trait Does {
    /// Does it.
    fn does(&mut self);
}

impl<F: FnMut()> Does for F {
    fn does(&mut self) {
        self();
    }
}

/// Takes something.
pub trait Takes<T> {
    /// Takes it.
    fn take(&mut self, it: T);
}

impl<T, F: FnMut(T)> Takes<T> for F {
    fn take(&mut self, it: T) {
        self(it);
    }
}

/// Gives something, whenever it is asked.
pub trait Gives<T> {
    /// Gives it.
    fn give(&self) -> T;
}

impl<T, F: Fn() -> T> Gives<T> for F {
    fn give(&self) -> T {
        self()
    }
}

/// Changes something.
pub trait Changes<T> {
    /// Changes it.
    fn change(&mut self, it: &mut T);
}

impl<T, F: FnMut(&mut T)> Changes<T> for F {
    fn change(&mut self, it: &mut T) {
        self(it);
    }
}
