//! Which frozen tables a change of the season can make others.

use crate::week::WeekNo;

/// Whether a change may have altered the table of a week. Of open weeks any change may, a name, a rule, a
/// result, up to the last paired one; of closed weeks only one that says from which week on it does.
pub fn may_table_differ(
    week: WeekNo,
    is_closed: bool,
    last_paired: WeekNo,
    changes_closed_from: Option<WeekNo>,
) -> bool {
    if is_closed {
        changes_closed_from.is_some_and(|first| week >= first)
    } else {
        week <= last_paired
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn open_weeks_may_differ_up_to_the_last_paired_and_closed_ones_from_where_the_change_says() {
        let weeks = [1, 2, 3].map(|number| WeekNo::new(number).unwrap());
        let [_, second, _] = weeks;
        let open = weeks.map(|week| may_table_differ(week, false, second, None));
        assert_eq!(open, [true, true, false]);
        let closed = |from| weeks.map(|week| may_table_differ(week, true, second, from));
        assert_eq!(closed(None), [false; 3]);
        assert_eq!(closed(Some(second)), [false, true, true]);
    }
}
