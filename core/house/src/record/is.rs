//! Which kind of record a subject is.

use super::closed_list::closed_list;

closed_list! {
    /// What kind of record a subject is.
    pub enum Is {
        /// The survey itself.
        Survey = "survey",
        /// A part.
        Part = "part",
        /// A run.
        Run = "run",
        /// A room.
        Room = "room",
        /// A service.
        Service = "service",
        /// A reading.
        Reading = "reading",
        /// A note.
        Note = "note",
        /// A photo.
        Photo = "photo",
        /// A measurement by an instrument.
        Measurement = "measurement",
        /// A piece of work.
        Work = "work",
    }
}
