// Made from look/signs.toml by `cargo run -p look`.

pub(super) const BACK: (&str, bool) = ("M15 4 L7 12 L15 20", true);
pub(super) const BOX: (&str, bool) = ("M3.5 3.5 L20.5 3.5 L20.5 20.5 L3.5 20.5 Z", false);
pub(super) const BOX_TICKED: (&str, bool) = ("M3.5 3.5 L20.5 3.5 L20.5 20.5 L3.5 20.5 Z M7.5 12 L10.7 15.5 L16.7 8", false);
pub(super) const CAMERA: (&str, bool) = ("M2.5 7 L21.5 7 L21.5 20 L2.5 20 Z M8 13.5 C8 15.71 9.79 17.5 12 17.5 C14.21 17.5 16 15.71 16 13.5 C16 11.29 14.21 9.5 12 9.5 C9.79 9.5 8 11.29 8 13.5 Z M8 7 L9.5 4 L14.5 4 L16 7", false);
pub(super) const CARE: (&str, bool) = ("M12 2.8 L22 20.5 L2 20.5 Z M12 9 L12 15 M12 17.2 L12 18.2", false);
pub(super) const CROSS: (&str, bool) = ("M5 5 L19 19 M19 5 L5 19", false);
pub(super) const DOUBT: (&str, bool) = ("M8.3 9 C8.28 7.14 9.61 5.53 11.45 5.21 C13.28 4.89 15.08 5.95 15.69 7.71 C16.3 9.47 15.54 11.42 13.9 12.3 C12.6 13.1 12 13.8 12 15.3 M12 18.4 L12 19.6", false);
pub(super) const FILE: (&str, bool) = ("M6 2.5 L14 2.5 L18.5 7 L18.5 21.5 L6 21.5 Z M14 2.5 L14 7 L18.5 7 M12 10 L12 17 M9 14 L12 17 L15 14", false);
pub(super) const FLAG: (&str, bool) = ("M6 3 L6 21 M6 3 L18 7.5 L6 12", false);
pub(super) const FOLD: (&str, bool) = ("M5 9 L12 16 L19 9", false);
pub(super) const LIGHT: (&str, bool) = ("M8 2.5 L16 2.5 L16 5.5 L14 9.5 L14 21.5 L10 21.5 L10 9.5 L8 5.5 Z M12 12 L12 14.5 M8 5.5 L16 5.5", false);
pub(super) const LIGHT_ON: (&str, bool) = ("M8 9.5 L16 9.5 L16 11.5 L14 14.5 L14 21.5 L10 21.5 L10 14.5 L8 11.5 Z M12 2 L12 6 M4.5 4.5 L7.5 7.5 M19.5 4.5 L16.5 7.5 M12 16 L12 18", false);
pub(super) const ON: (&str, bool) = ("M9 5 L16 12 L9 19", true);
pub(super) const PEN: (&str, bool) = ("M4 20 L5 16 L16 5 L19 8 L8 19 Z", false);
pub(super) const PICTURES: (&str, bool) = ("M2.5 5 L17.5 5 L17.5 20 L2.5 20 Z M6 5 L6 2.5 L21.5 2.5 L21.5 17.5 L17.5 17.5 M2.5 16 L7.5 11 L11.5 15 L13.5 13 L17.5 17", false);
pub(super) const TICK: (&str, bool) = ("M4 12.5 L9.5 18 L20 6", false);
pub(super) const UNFOLD: (&str, bool) = ("M5 16 L12 9 L19 16", false);
