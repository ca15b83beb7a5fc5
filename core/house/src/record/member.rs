//! How a value lies in its record: always there, or only once somebody said it.

/// A member that holds a value of type `T`.
pub(super) trait Member<T: ?Sized + ToOwned> {
    /// Takes what was said.
    fn put(&mut self, value: T::Owned);

    /// What it holds; `None` while nobody said.
    fn told(&self) -> Option<&T>;
}

impl<T: Clone> Member<T> for T {
    fn put(&mut self, value: T) {
        *self = value;
    }

    fn told(&self) -> Option<&T> {
        Some(self)
    }
}

impl<T: Clone> Member<T> for Option<T> {
    fn put(&mut self, value: T) {
        *self = Some(value);
    }

    fn told(&self) -> Option<&T> {
        self.as_ref()
    }
}

impl Member<str> for String {
    fn put(&mut self, value: String) {
        *self = value;
    }

    fn told(&self) -> Option<&str> {
        Some(self)
    }
}

impl Member<str> for Option<String> {
    fn put(&mut self, value: String) {
        *self = Some(value);
    }

    fn told(&self) -> Option<&str> {
        self.as_deref()
    }
}

impl<T: Clone> Member<[T]> for Option<Vec<T>> {
    fn put(&mut self, value: Vec<T>) {
        *self = Some(value);
    }

    fn told(&self) -> Option<&[T]> {
        self.as_deref()
    }
}
