//! What follows from the answers, worked out once for each change of them.

use super::App;
use std::cell::RefCell;
use std::rc::Rc;

/// Worked out when it is first asked for after a change, then kept.
pub struct Kept<T> {
    /// The page's state.
    pub app: App,
    make: fn(App) -> Option<T>,
    last: Rc<RefCell<(String, Option<Rc<T>>)>>,
}

impl<T> Kept<T> {
    /// Nothing yet; `make` works it out.
    #[must_use]
    pub fn new(app: App, make: fn(App) -> Option<T>) -> Self {
        Self { app, make, last: Rc::default() }
    }

    /// As it is now; tracked.
    #[must_use]
    pub fn get(&self) -> Option<Rc<T>> {
        let key = self.app.key();
        if self.last.borrow().0 != key {
            let made = (self.make)(self.app).map(Rc::new);
            self.last.replace((key, made));
        }
        self.last.borrow().1.clone()
    }
}

impl<T> Clone for Kept<T> {
    fn clone(&self) -> Self {
        Self { app: self.app, make: self.make, last: self.last.clone() }
    }
}
