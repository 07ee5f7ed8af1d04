//! Army lists: drafted, checked, sealed before the deadline, opened all at once.

mod check_list;
mod find_army;
mod find_changes;
mod find_collection;
mod find_fits;
mod find_list_editor;
mod find_own_list;
mod grant_late_leave;
mod list_lists;
mod open_lists;
mod opened;
mod read_list;
mod save_draft;
mod seal_list;
mod terms;

pub use check_list::{CheckedList, check_list};
pub use find_army::{ArmyWeek, Fielded, PaintedEntry, find_army};
pub use find_changes::{ListChanges, find_changes};
pub use find_collection::find_collection;
pub(crate) use find_collection::load_collection;
pub use find_fits::find_fits;
pub use find_list_editor::{ListEditor, ListOrigin, find_list_editor};
pub use find_own_list::find_own_list;
pub use grant_late_leave::grant_late_leave;
pub use list_lists::{ListState, WeekLists, list_lists};
pub use open_lists::{open_due_lists, open_lists};
pub(crate) use opened::{is_list_open, list_opened_lists};
pub use read_list::read_list;
pub use save_draft::save_draft;
pub use seal_list::{Receipt, seal_list};
pub use store::lists::{PlayerList, SealedListRow};
pub use terms::VersionChange;
