//! Nested odd cycles of tight edges, each of which acts as one place.

use super::NONE;
use crate::pairing::certificate::Place;

/// A place, or from the number of places on a blossom.
pub type Item = u32;

/// All blossoms and which is inside which.
#[derive(Clone, Debug)]
pub struct Blossoms {
    places: usize,
    /// Outermost item of each place.
    top: Vec<Item>,
    /// The place of each item that is matched outwards, or to nothing.
    base: Vec<Place>,
    parent: Vec<Item>,
    /// The dual value of each blossom; even.
    pub depth: Vec<i128>,
    /// Around the cycle, the one with the base first.
    children: Vec<Vec<Item>>,
    /// Edge from each child to the next, each end inside its child.
    links: Vec<Vec<[Place; 2]>>,
    spare: Vec<Item>,
}

impl Blossoms {
    /// Places only.
    pub fn new(places: usize) -> Self {
        let items = places + places / 2;
        let all: Vec<Item> = (0..items as Item).collect();
        Self {
            places,
            top: all[..places].to_vec(),
            base: all[..places]
                .iter()
                .copied()
                .chain((places..items).map(|_| NONE))
                .collect(),
            parent: vec![NONE; items],
            depth: vec![0; items],
            children: vec![Vec::new(); items],
            links: vec![Vec::new(); items],
            spare: all[places..].iter().rev().copied().collect(),
        }
    }

    pub fn top(&self, place: Place) -> Item {
        self.top[place as usize]
    }

    pub fn base(&self, item: Item) -> Place {
        self.base[item as usize]
    }

    pub fn is_blossom(&self, item: Item) -> bool {
        item as usize >= self.places
    }

    pub fn is_top(&self, item: Item) -> bool {
        self.parent[item as usize] == NONE && self.base[item as usize] != NONE
    }

    /// The blossoms around a place and the place itself, innermost first.
    fn child_of(&self, blossom: Item, place: Place) -> Item {
        let mut item = place;
        while self.parent[item as usize] != blossom {
            item = self.parent[item as usize];
        }
        item
    }

    /// Places inside an item.
    pub fn members(&self, item: Item) -> Vec<Place> {
        let mut members = Vec::new();
        let mut open = vec![item];
        while let Some(item) = open.pop() {
            if self.is_blossom(item) {
                open.extend(self.children[item as usize].iter().rev());
            } else {
                members.push(item);
            }
        }
        members
    }

    /// Every blossom with a positive depth, as a set of places.
    pub fn deep_sets(&self) -> Vec<(Vec<Place>, i128)> {
        let deep = (self.places..self.base.len()).filter(|&item| self.depth[item] > 0);
        deep.map(|item| (self.members(item as Item), self.depth[item]))
            .collect()
    }

    /// For each place the odd sets of positive depth around it.
    pub fn nest(&self) -> Nest {
        let chain = |place: Place| {
            let mut around = Vec::new();
            let mut item = self.parent[place as usize];
            while item != NONE {
                if self.depth[item as usize] > 0 {
                    around.push((item, self.depth[item as usize]));
                }
                item = self.parent[item as usize];
            }
            around.reverse();
            around
        };
        Nest((0..self.places as Place).map(chain).collect())
    }

    /// Makes a blossom of a cycle of outermost items, the base's first, and returns it.
    pub fn shrink(&mut self, cycle: Vec<Item>, links: Vec<[Place; 2]>) -> Option<Item> {
        let blossom = self.spare.pop()?;
        for &child in &cycle {
            self.parent[child as usize] = blossom;
        }
        self.base[blossom as usize] = self.base[cycle[0] as usize];
        self.depth[blossom as usize] = 0;
        self.children[blossom as usize] = cycle;
        self.links[blossom as usize] = links;
        for place in self.members(blossom) {
            self.top[place as usize] = blossom;
        }
        Some(blossom)
    }

    /// Dissolves an outermost blossom and returns its cycle.
    pub fn expand(&mut self, blossom: Item) -> (Vec<Item>, Vec<[Place; 2]>) {
        let children = std::mem::take(&mut self.children[blossom as usize]);
        let links = std::mem::take(&mut self.links[blossom as usize]);
        for &child in &children {
            self.parent[child as usize] = NONE;
            for place in self.members(child) {
                self.top[place as usize] = child;
            }
        }
        self.base[blossom as usize] = NONE;
        self.depth[blossom as usize] = 0;
        self.spare.push(blossom);
        (children, links)
    }

    /// Rearranges the pairs inside an item so that `place` becomes its base.
    pub fn rotate(&mut self, item: Item, place: Place, mate: &mut [Place]) {
        if !self.is_blossom(item) {
            return;
        }
        let child = self.child_of(item, place);
        self.rotate(child, place, mate);
        let at = item as usize;
        let length = self.children[at].len();
        let from = self.children[at]
            .iter()
            .position(|&c| c == child)
            .unwrap_or(0);
        let fresh: Vec<usize> = if from % 2 == 0 {
            (0..from).step_by(2).collect()
        } else {
            (from + 1..length).step_by(2).collect()
        };
        for link in fresh {
            let [a, b] = self.links[at][link];
            let next = (link + 1) % length;
            let (here, there) = (self.children[at][link], self.children[at][next]);
            self.rotate(here, a, mate);
            self.rotate(there, b, mate);
            mate[a as usize] = b;
            mate[b as usize] = a;
        }
        self.children[at].rotate_left(from);
        self.links[at].rotate_left(from);
        self.base[at] = place;
    }

    /// The child of a dissolved blossom's cycle that now holds this place.
    pub fn position(&self, cycle: &[Item], place: Place) -> usize {
        let top = self.top(place);
        cycle.iter().position(|&child| child == top).unwrap_or(0)
    }
}

/// The odd sets of positive depth around each place, outermost first.
#[derive(Clone, Debug)]
pub struct Nest(Vec<Vec<(Item, i128)>>);

impl Nest {
    /// Sum of the depths of all odd sets that hold both places. The sets are nested, so those in
    /// common stand first in both lists.
    pub fn depth(&self, a: usize, b: usize) -> i128 {
        let both = self.0[a].iter().zip(&self.0[b]);
        both.take_while(|(one, other)| one.0 == other.0)
            .map(|(one, _)| one.1)
            .sum()
    }
}
