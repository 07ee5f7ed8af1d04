//! The uniqueness constraints of the schema, and the names under which a database tells of them.

macro_rules! unique_constraints {
    ($($(#[$doc:meta])* $name:ident = $constraint:literal $(or $derived:literal)?),+ $(,)?) => {
        /// The uniqueness constraints of the schema, each by its meaning.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum UniqueConstraint {$($(#[$doc])* $name),+}

        impl UniqueConstraint {
            fn in_schema(constraint: &str) -> Option<Self> {
                match constraint {$($constraint $(| $derived)? => Some(Self::$name),)+ _ => None}
            }
        }
    };
}

// Each is called as in the migrations, or as PostgreSQL calls it in a partition: there every constraint
// but a primary key has the name that it makes of table and columns.
unique_constraints! {
    /// A club with this short name exists.
    ClubSlug = "clubs_slug_taken" or "clubs_slug_key",
    /// This account is a member of the club.
    Membership = "memberships_pkey",
    /// The club has a catalogue of this name.
    CatalogueName = "catalogues_name_taken" or "catalogues_club_id_name_key",
    /// Another import made this version number at the same moment.
    CatalogueVersion = "catalogue_versions_pkey",
    /// This account plays in the season.
    PlayerAccount = "players_account_taken" or "players_club_id_season_id_account_id_key",
    /// The handle is used in the season.
    PlayerHandle = "players_handle_taken" or "players_club_id_season_id_handle_key",
    /// The week has this version of this round.
    Round = "rounds_version_taken" or "rounds_club_id_season_id_week_no_round_no_version_key",
    /// The game has a slip.
    Slip = "slips_pkey",
    /// The player has leave already.
    LateLeave = "late_leaves_pkey",
}

impl UniqueConstraint {
    /// The constraint that an error names, in its field for that or, as a distributed engine passes it on,
    /// in its message alone.
    pub(super) fn of_error(name: Option<&str>, message: &str) -> Option<Self> {
        let name = name.or_else(|| message.split('"').nth(1))?;
        Self::in_schema(&without_numbers(name))
    }
}

/// A name as it would be without partitions and shards: a partition is called like its table with `_p` and
/// a number, a shard adds `_` and a number, and no name of the schema has such a part.
fn without_numbers(name: &str) -> String {
    let is_number = |part: &str| {
        let digits = part.strip_prefix('p').unwrap_or(part);
        !digits.is_empty() && digits.bytes().all(|byte| byte.is_ascii_digit())
    };
    let parts: Vec<&str> = name.split('_').filter(|part| !is_number(part)).collect();
    parts.join("_")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_constraint_is_known_in_the_schema_in_a_partition_and_in_a_shard() {
        use UniqueConstraint as U;
        for (name, meant) in [
            ("memberships_pkey", U::Membership),
            ("memberships_p0_pkey", U::Membership),
            ("memberships_pkey_102040", U::Membership),
            ("memberships_p12_pkey_102040", U::Membership),
            ("clubs_slug_taken", U::ClubSlug),
            ("clubs_slug_taken_102008", U::ClubSlug),
            ("catalogues_p3_club_id_name_key", U::CatalogueName),
            ("catalogue_versions_p3_pkey", U::CatalogueVersion),
            ("players_account_taken_102113", U::PlayerAccount),
            ("players_p0_club_id_season_id_handle_key", U::PlayerHandle),
            (
                "players_p0_club_id_season_id_account_id_key",
                U::PlayerAccount,
            ),
            ("rounds_version_taken_102300", U::Round),
            (
                "rounds_p0_club_id_season_id_week_no_round_no_version_key",
                U::Round,
            ),
            ("late_leaves_p1_pkey", U::LateLeave),
            ("slips_pkey_102271", U::Slip),
        ] {
            assert_eq!(U::of_error(Some(name), ""), Some(meant), "{name}");
            let message = format!("duplicate key value violates unique constraint \"{name}\"");
            assert_eq!(U::of_error(None, &message), Some(meant), "{message}");
        }
    }

    #[test]
    fn a_constraint_without_a_meaning_is_none_of_these() {
        for name in [
            "lists_pkey",
            "lists_p3_pkey",
            "lists_pkey_102008",
            "slips_p_pkey",
        ] {
            assert_eq!(UniqueConstraint::of_error(Some(name), ""), None, "{name}");
        }
        assert_eq!(UniqueConstraint::of_error(None, "no name in here"), None);
    }
}
