//! An undirected graph whose edges lie in one list, those of a place side by side.

use crate::pairing::round::certificate::Place;

/// The doubled cost of each edge, stored at both ends.
#[derive(Clone, Debug)]
pub struct Graph {
    rows: Vec<Row>,
    to: Vec<Place>,
    cost: Vec<i128>,
}

/// Where the edges of a place lie, how many they are, and for how many there is room.
#[derive(Clone, Copy, Debug)]
struct Row {
    from: usize,
    len: u32,
    room: u32,
}

impl Graph {
    /// The graph of these edges; one that is named twice counts once.
    pub fn of(places: usize, edges: &[(Place, Place, i128)]) -> Self {
        let mut degrees = vec![0; places];
        for &(a, b, _) in edges {
            degrees[a as usize] += 1;
            degrees[b as usize] += 1;
        }
        let mut graph = Self::with_room(degrees.into_iter());
        for &(a, b, cost) in edges {
            if !graph.joins(a, b) {
                graph.join(a, b, cost);
            }
        }
        graph
    }

    /// The graph of all pairs that have a price.
    pub fn complete(places: usize, price: impl Fn(usize, usize) -> Option<i128>) -> Self {
        let room = places.saturating_sub(1) as u32;
        let mut graph = Self::with_room((0..places).map(|_| room));
        for a in 0..places {
            for b in a + 1..places {
                if let Some(cost) = price(a, b) {
                    graph.join(a as Place, b as Place, cost);
                }
            }
        }
        graph
    }

    /// No edges, with room for so many at each place.
    fn with_room(rooms: impl Iterator<Item = u32>) -> Self {
        let mut end = 0;
        let row = |room: u32| {
            let from = end;
            end += room as usize;
            Row { from, len: 0, room }
        };
        Self {
            rows: rooms.map(row).collect(),
            to: vec![0; end],
            cost: vec![0; end],
        }
    }

    /// Adds an edge. Two edges between the same places are the caller's mistake.
    pub fn join(&mut self, a: Place, b: Place, cost: i128) {
        self.put(a, b, 2 * cost);
        self.put(b, a, 2 * cost);
    }

    fn put(&mut self, from: Place, to: Place, cost: i128) {
        if self.rows[from as usize].len == self.rows[from as usize].room {
            self.widen(from);
        }
        let row = &mut self.rows[from as usize];
        let at = row.from + row.len as usize;
        row.len += 1;
        (self.to[at], self.cost[at]) = (to, cost);
    }

    /// Moves the edges of a place to the end, where there is room for as many again.
    fn widen(&mut self, place: Place) {
        let row = &mut self.rows[place as usize];
        let old = row.from..row.from + row.len as usize;
        row.room = 2 * row.len.max(1);
        row.from = self.to.len();
        let end = row.from + row.room as usize;
        self.to.extend_from_within(old.clone());
        self.cost.extend_from_within(old);
        self.to.resize(end, 0);
        self.cost.resize(end, 0);
    }

    /// Number of places.
    pub(super) fn places(&self) -> usize {
        self.rows.len()
    }

    /// The edges of a place: the other end and the doubled cost.
    pub(super) fn edges(&self, place: Place) -> impl Iterator<Item = (Place, i128)> + '_ {
        let row = self.rows[place as usize];
        let lies = row.from..row.from + row.len as usize;
        let costs = self.cost[lies.clone()].iter();
        self.to[lies].iter().copied().zip(costs.copied())
    }

    /// Is there an edge between these places? The one with fewer edges is asked.
    fn joins(&self, a: Place, b: Place) -> bool {
        let degree = |place: Place| self.rows[place as usize].len;
        let (few, other) = if degree(a) < degree(b) {
            (a, b)
        } else {
            (b, a)
        };
        self.edges(few).any(|(to, _)| to == other)
    }

    /// Takes an edge away; false when there was none.
    pub(super) fn part(&mut self, a: Place, b: Place) -> bool {
        self.take(a, b) && self.take(b, a)
    }

    fn take(&mut self, from: Place, to: Place) -> bool {
        let Some(at) = self.edges(from).position(|(other, _)| other == to) else {
            return false;
        };
        let row = &mut self.rows[from as usize];
        row.len -= 1;
        let (at, last) = (row.from + at, row.from + row.len as usize);
        self.to.swap(at, last);
        self.cost.swap(at, last);
        true
    }
}
