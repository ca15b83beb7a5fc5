//! Bringing names in a folder to the disk; files are written by [`whole_file`](crate::whole_file).

pub(crate) use crate::whole_file::sync_folder;
