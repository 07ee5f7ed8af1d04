//! The certificate of a pairing (its proof of optimality) as JSON.
//!
//! Dual values exceed what JSON numbers carry exactly (RFC 8259, section 6), so they are decimal
//! strings.

use league::ids::PlayerId;
use league::pairing::NightSet;
use league::pairing::round::certificate::{Certificate, Choice, Dual, Node};
use messages::{Message, pairing_faults};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// Proof that no pairing gives up less.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CertificateDocument {
    /// The player at each place; byes have the places after them.
    pub players: Vec<Uuid>,
    /// Number of byes.
    pub byes: u32,
    /// Proof that two byes fewer are not enough; empty where counting shows it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fewer: Vec<NodeDocument>,
    /// Nodes of the proof, the root first.
    pub tree: Vec<NodeDocument>,
}

/// A node of the proof: all pairings that respect the choices above it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum NodeDocument {
    /// They all cost at least what this dual solution says.
    Bound {
        /// One potential for each place, as a decimal integer in halves of a unit of cost.
        potentials: Vec<String>,
        /// Odd sets of places with their depths.
        odd_sets: Vec<OddSetDocument>,
    },
    /// There are none: without these places more odd sets are left than places taken.
    Barrier {
        /// Places taken out.
        places: Vec<u32>,
    },
    /// There are none: more players are tied to these nights than their tables seat.
    Crowded {
        /// Nights, as a bit mask.
        nights: u8,
    },
    /// There is one, and after it the rounds to come cannot be played.
    DeadEnd,
    /// A place plays on one of these nights, or on none of them.
    Nights {
        /// Which place.
        place: u32,
        /// Nights, as a bit mask.
        nights: u8,
        /// Node in which it does.
        inside: usize,
        /// Node in which it does not.
        outside: usize,
    },
    /// Two places are paired, or they are not.
    Paired {
        /// Which places.
        places: [u32; 2],
        /// Node in which they are.
        with: usize,
        /// Node in which they are not.
        without: usize,
    },
}

/// An odd set of a dual solution.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct OddSetDocument {
    /// Places inside.
    pub places: Vec<u32>,
    /// Its depth, as a decimal integer.
    pub depth: String,
}

impl From<&Certificate> for CertificateDocument {
    fn from(certificate: &Certificate) -> Self {
        Self {
            players: certificate.players.iter().map(|player| player.0).collect(),
            byes: certificate.byes,
            fewer: certificate.fewer.iter().map(NodeDocument::from).collect(),
            tree: certificate.tree.iter().map(NodeDocument::from).collect(),
        }
    }
}

impl CertificateDocument {
    /// The certificate.
    ///
    /// # Errors
    /// A dual value that is not an integer of at most 128 bits.
    pub fn to_certificate(&self) -> Result<Certificate, Message> {
        Ok(Certificate {
            players: self.players.iter().copied().map(PlayerId).collect(),
            byes: self.byes,
            fewer: self
                .fewer
                .iter()
                .map(NodeDocument::to_node)
                .collect::<Result<_, _>>()?,
            tree: self
                .tree
                .iter()
                .map(NodeDocument::to_node)
                .collect::<Result<_, _>>()?,
        })
    }
}

impl From<&Node> for NodeDocument {
    fn from(node: &Node) -> Self {
        match node {
            Node::Bound(dual) => Self::Bound {
                potentials: dual.potentials.iter().map(i128::to_string).collect(),
                odd_sets: dual.odd_sets.iter().map(odd_set_document).collect(),
            },
            Node::Barrier(places) => Self::Barrier {
                places: places.clone(),
            },
            Node::Crowded(nights) => Self::Crowded {
                nights: nights.bits(),
            },
            Node::DeadEnd => Self::DeadEnd,
            &Node::Split { choice, yes, no } => match choice {
                Choice::Nights(place, nights) => Self::Nights {
                    place,
                    nights: nights.bits(),
                    inside: yes,
                    outside: no,
                },
                Choice::Paired(places) => Self::Paired {
                    places,
                    with: yes,
                    without: no,
                },
            },
        }
    }
}

impl NodeDocument {
    fn to_node(&self) -> Result<Node, Message> {
        Ok(match self {
            Self::Bound {
                potentials,
                odd_sets,
            } => Node::Bound(Dual {
                potentials: potentials
                    .iter()
                    .map(|text| parse_integer(text))
                    .collect::<Result<_, _>>()?,
                odd_sets: odd_sets.iter().map(odd_set).collect::<Result<_, _>>()?,
            }),
            Self::Barrier { places } => Node::Barrier(places.clone()),
            Self::Crowded { nights } => Node::Crowded(NightSet::from_bits(*nights)),
            Self::DeadEnd => Node::DeadEnd,
            &Self::Nights {
                place,
                nights,
                inside,
                outside,
            } => Node::Split {
                choice: Choice::Nights(place, NightSet::from_bits(nights)),
                yes: inside,
                no: outside,
            },
            &Self::Paired {
                places,
                with,
                without,
            } => Node::Split {
                choice: Choice::Paired(places),
                yes: with,
                no: without,
            },
        })
    }
}

fn odd_set_document((places, depth): &(Vec<u32>, i128)) -> OddSetDocument {
    OddSetDocument {
        places: places.clone(),
        depth: depth.to_string(),
    }
}

fn odd_set(document: &OddSetDocument) -> Result<(Vec<u32>, i128), Message> {
    Ok((document.places.clone(), parse_integer(&document.depth)?))
}

fn parse_integer(text: &str) -> Result<i128, Message> {
    text.parse()
        .map_err(|_| pairing_faults::round_fault_integer(format!("{text:?}")))
}
