//! The laws can be broken: a fault planted in a sound list is found.
