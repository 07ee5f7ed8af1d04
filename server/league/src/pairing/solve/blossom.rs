//! Nested odd cycles of tight edges, each of which acts as one place.

use super::NONE;
use crate::pairing::certificate::Place;

/// A place, or from the number of places on a blossom.
pub type Item = u32;

/// All blossoms and which is inside which.
#[derive(Clone, Debug)]
pub struct Blossoms {
    places: usize,
    /// Number of the set of places that each place belongs to. A set is the places of one outermost
    /// item; where sets unite the largest keeps its number, so a place changes number seldom.
    set: Vec<u32>,
    /// The outermost item of each set.
    item: Vec<Item>,
    /// The places of each set.
    united: Vec<Vec<Place>>,
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
            set: all[..places].to_vec(),
            item: all[..places].to_vec(),
            united: (0..places as Place).map(|place| vec![place]).collect(),
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
        self.item[self.set[place as usize] as usize]
    }

    fn set_of(&self, item: Item) -> usize {
        self.set[self.base[item as usize] as usize] as usize
    }

    /// The places of an outermost item, in no order.
    pub fn united(&self, item: Item) -> &[Place] {
        &self.united[self.set_of(item)]
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

    /// Depths of all blossoms that hold both places.
    pub fn shared_depth(&self, a: Place, b: Place) -> i128 {
        let around = |place: Place| {
            let up = |item: &Item| Some(self.parent[*item as usize]).filter(|&item| item != NONE);
            std::iter::successors(Some(place), up).skip(1)
        };
        let holds_b: Vec<Item> = around(b).collect();
        around(a)
            .filter(|item| holds_b.contains(item))
            .map(|item| self.depth[item as usize])
            .sum()
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

    /// The item of a cycle with the most places, whose set the others join in [`Self::shrink`].
    pub fn largest(&self, cycle: &[Item]) -> Item {
        let most = cycle.iter().max_by_key(|&&item| self.united(item).len());
        most.copied().unwrap_or(cycle[0])
    }

    /// Makes a blossom of a cycle of outermost items, the base's first, and returns it.
    pub fn shrink(&mut self, cycle: Vec<Item>, links: Vec<[Place; 2]>) -> Option<Item> {
        let blossom = self.spare.pop()?;
        let kept = self.set_of(self.largest(&cycle));
        for &child in &cycle {
            self.parent[child as usize] = blossom;
            let joining = self.set_of(child);
            if joining != kept {
                let places = std::mem::take(&mut self.united[joining]);
                for &place in &places {
                    self.set[place as usize] = kept as u32;
                }
                self.united[kept].extend(places);
            }
        }
        self.item[kept] = blossom;
        self.base[blossom as usize] = self.base[cycle[0] as usize];
        self.depth[blossom as usize] = 0;
        self.children[blossom as usize] = cycle;
        self.links[blossom as usize] = links;
        Some(blossom)
    }

    /// Dissolves an outermost blossom and returns its cycle.
    ///
    /// Each child's set takes the number of its base, which is free: the united set is taken apart
    /// first, and no other set holds the base.
    pub fn expand(&mut self, blossom: Item) -> (Vec<Item>, Vec<[Place; 2]>) {
        let children = std::mem::take(&mut self.children[blossom as usize]);
        let links = std::mem::take(&mut self.links[blossom as usize]);
        let set = self.set_of(blossom);
        self.united[set] = Vec::new();
        for &child in &children {
            self.parent[child as usize] = NONE;
            let (places, number) = (self.members(child), self.base[child as usize]);
            for &place in &places {
                self.set[place as usize] = number;
            }
            self.item[number as usize] = child;
            self.united[number as usize] = places;
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

    /// Names the smallest odd set around a place: places of one name share all their sets.
    pub fn innermost(&self, place: usize) -> Option<u32> {
        self.0[place].last().map(|&(set, _)| set)
    }
}
