//! The checks of `advice`, in one binary.

mod change_kinds;
mod entry_filters;
mod field_forecasts;
mod finding_field_cases;
mod finding_kinds;
mod house_laws;
mod level_bands;
mod level_readings;
mod level_wiring;
mod level_worked;
mod levels_when_done;
mod measured_parts;
mod modem_drops;
mod not_known;
mod passing_box;
mod prior;
mod services_on_the_wire;
mod strong_leg;
mod version_limit;
mod work_answers;
mod work_done;
mod work_failed;
mod work_order;
mod work_stake;
mod work_worth;
mod written;
