//! Army lists: drafted, checked, sealed before the deadline, opened all at once.

mod check_list;
mod find_army;
mod find_changes;
mod find_collection;
mod find_fits;
mod find_list_desk;
mod find_own_list;
mod grant_late_leave;
mod list_lists;
mod open_lists;
mod opened;
mod read_list;
mod save_draft;
mod seal_list;
mod terms;

pub use check_list::{Checked, check_list};
pub use find_army::{ArmyWeek, Fielded, PaintedEntry, find_army};
pub use find_changes::{ListChanges, VersionChange, find_changes};
pub(crate) use find_collection::collected;
pub use find_collection::find_collection;
pub use find_fits::find_fits;
pub use find_list_desk::{Begun, ListDesk, find_list_desk};
pub use find_own_list::find_own_list;
pub use grant_late_leave::grant_late_leave;
pub use list_lists::{ListState, WeekLists, list_lists};
pub use open_lists::{open_due_lists, open_lists};
pub(crate) use opened::{is_open, list_opened};
pub use read_list::read_list;
pub use save_draft::save_draft;
pub use seal_list::{Receipt, seal_list};
pub use store::lists::{PlayerList, SealedList};
