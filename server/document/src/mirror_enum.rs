//! `mirror_enum!`: a JSON enum that mirrors an enum of the league, variant by variant.

/// An enum of snake_case words that mirrors a league enum variant by variant.
macro_rules! mirror_enum {
    ($(#[$doc:meta])* $name:ident is $league:path { $($(#[$variant_doc:meta])* $variant:ident),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(
            Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord,
            serde::Serialize, serde::Deserialize, utoipa::ToSchema,
        )]
        #[serde(rename_all = "snake_case")]
        pub enum $name {
            $($(#[$variant_doc])* $variant,)+
        }

        impl From<$league> for $name {
            fn from(league: $league) -> Self {
                use $league as League;
                match league {
                    $(League::$variant => Self::$variant,)+
                }
            }
        }

        impl From<$name> for $league {
            fn from(document: $name) -> Self {
                use $league as League;
                match document {
                    $($name::$variant => League::$variant,)+
                }
            }
        }
    };
}

pub(crate) use mirror_enum;
