//! Nested odd cycles of tight edges, each of which acts as one place.

use crate::pairing::round::certificate::Place;

use super::laminar::Nest;
use super::node_id::{Item, NONE};

/// All blossoms and which is inside which.
#[derive(Clone, Debug)]
pub struct Blossoms {
    places: usize,
    /// Number of the crowd of each place: of all that share its outermost item. A crowd has the
    /// number of a place of its largest part, and grows by the smaller ones, so that a nest of many
    /// levels is not walked again for each.
    crowd: Vec<Place>,
    /// Outermost item of each crowd.
    top: Vec<Item>,
    /// Places of each crowd that has several. Those of the largest child of a blossom come first, so
    /// that they need not be collected again when it is dissolved.
    roster: Vec<Vec<Place>>,
    all: Vec<Place>,
    /// The place of each item that is matched outwards, or to nothing.
    base: Vec<Place>,
    parent: Vec<Item>,
    /// The dual value of each blossom; even.
    pub depth: Vec<i128>,
    /// The child of each blossom that has the most places.
    largest: Vec<Item>,
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
            crowd: all[..places].to_vec(),
            roster: vec![Vec::new(); places],
            top: all[..places].to_vec(),
            base: all[..places]
                .iter()
                .copied()
                .chain((places..items).map(|_| NONE))
                .collect(),
            parent: vec![NONE; items],
            depth: vec![0; items],
            largest: vec![NONE; items],
            children: vec![Vec::new(); items],
            links: vec![Vec::new(); items],
            spare: all[places..].iter().rev().copied().collect(),
            all: all[..places].to_vec(),
        }
    }

    pub fn top(&self, place: Place) -> Item {
        self.top[self.crowd[place as usize] as usize]
    }

    /// Places inside an outermost item.
    pub fn crowd(&self, top: Item) -> &[Place] {
        if self.is_blossom(top) {
            &self.roster[self.crowd[self.base[top as usize] as usize] as usize]
        } else {
            &self.all[top as usize..=top as usize]
        }
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

    /// The child of a blossom that holds a place.
    fn child_of(&self, blossom: Item, place: Place) -> Item {
        let mut item = place;
        while self.parent[item as usize] != blossom {
            item = self.parent[item as usize];
        }
        item
    }

    /// The blossoms around a place, innermost first.
    fn around(&self, place: Place) -> Vec<Item> {
        let outwards = |&item: &Item| {
            let around = self.parent[item as usize];
            (around != NONE).then_some(around)
        };
        std::iter::successors(outwards(&place), outwards).collect()
    }

    /// The blossoms that hold both places, innermost first.
    fn around_both(&self, a: Place, b: Place) -> Vec<Item> {
        let (mut one, other) = (self.around(a), self.around(b));
        let inwards = one.iter().rev().zip(other.iter().rev());
        let both = inwards.take_while(|(one, other)| one == other).count();
        one.split_off(one.len() - both)
    }

    /// Is this edge one of the cycle of a blossom?
    pub fn links(&self, a: Place, b: Place) -> bool {
        let innermost = self.around_both(a, b).into_iter().next();
        let mut links = innermost
            .iter()
            .flat_map(|&item| &self.links[item as usize]);
        links.any(|&link| link == [a, b] || link == [b, a])
    }

    /// The depth of all blossoms that hold both places.
    pub fn shared_depth(&self, a: Place, b: Place) -> i128 {
        let both = self.around_both(a, b).into_iter();
        both.map(|item| self.depth[item as usize]).sum()
    }

    /// Places inside an item, first those of its largest child, and so on inwards.
    fn members(&self, item: Item) -> Vec<Place> {
        let mut members = Vec::new();
        let mut open = vec![item];
        while let Some(item) = open.pop() {
            if self.is_blossom(item) {
                let largest = self.largest[item as usize];
                let children = self.children[item as usize].iter().copied();
                open.extend(children.filter(|&child| child != largest));
                open.push(largest);
            } else {
                members.push(item);
            }
        }
        members
    }

    /// How the blossoms lie in each other.
    pub fn nest(&self) -> Nest {
        let mut order: Vec<Item> = (0..self.base.len() as Item)
            .filter(|&item| self.is_top(item))
            .collect();
        let mut at = 0;
        while at < order.len() {
            order.extend(&self.children[order[at] as usize]);
            at += 1;
        }
        Nest::new(&order, &self.parent, &self.depth)
    }

    /// Every blossom with a positive depth, as a set of places.
    pub fn deep_sets(&self) -> Vec<(Vec<Place>, i128)> {
        let deep = (self.places..self.base.len()).filter(|&item| self.depth[item] > 0);
        deep.map(|item| (self.members(item as Item), self.depth[item]))
            .collect()
    }

    /// Makes a blossom of a cycle of outermost items, the base's first, and returns it.
    pub fn shrink(&mut self, cycle: Vec<Item>, links: Vec<[Place; 2]>) -> Option<Item> {
        let blossom = self.spare.pop()?;
        let crowd_of = |item: Item| self.crowd[self.base[item as usize] as usize] as usize;
        let crowds: Vec<usize> = cycle.iter().map(|&item| crowd_of(item)).collect();
        let size = |&item: &Item| self.roster[crowd_of(item)].len();
        let largest_child = cycle.iter().copied().max_by_key(size)?;
        let largest = crowd_of(largest_child);
        self.largest[blossom as usize] = largest_child;
        let mut united = std::mem::take(&mut self.roster[largest]);
        for (&child, &crowd) in cycle.iter().zip(&crowds) {
            self.parent[child as usize] = blossom;
            if !self.is_blossom(child) {
                united.push(child);
                self.crowd[child as usize] = largest as Place;
            } else if crowd != largest {
                let joining = std::mem::take(&mut self.roster[crowd]);
                for &place in &joining {
                    self.crowd[place as usize] = largest as Place;
                }
                united.extend(joining);
            }
        }
        self.roster[largest] = united;
        self.top[largest] = blossom;
        self.base[blossom as usize] = self.base[cycle[0] as usize];
        self.depth[blossom as usize] = 0;
        self.children[blossom as usize] = cycle;
        self.links[blossom as usize] = links;
        Some(blossom)
    }

    /// Dissolves an outermost blossom and returns its cycle.
    pub fn expand(&mut self, blossom: Item) -> (Vec<Item>, Vec<[Place; 2]>) {
        let children = std::mem::take(&mut self.children[blossom as usize]);
        let links = std::mem::take(&mut self.links[blossom as usize]);
        let dissolved = self.crowd[self.base[blossom as usize] as usize];
        let largest = self.largest[blossom as usize];
        for &child in &children {
            self.parent[child as usize] = NONE;
            if child != largest {
                self.gather(child);
            }
        }
        let gathered = children.iter().filter(|&&child| child != largest);
        let gone: usize = gathered.map(|&child| self.crowd(child).len()).sum();
        let is_several = self.is_blossom(largest);
        let roster = &mut self.roster[dissolved as usize];
        roster.truncate(if is_several { roster.len() - gone } else { 0 });
        self.top[dissolved as usize] = largest;
        self.base[blossom as usize] = NONE;
        self.depth[blossom as usize] = 0;
        self.spare.push(blossom);
        (children, links)
    }

    /// Makes a crowd of the places of an item that has become outermost.
    fn gather(&mut self, item: Item) {
        let members = self.members(item);
        let crowd = members[0];
        for &place in &members {
            self.crowd[place as usize] = crowd;
        }
        self.top[crowd as usize] = item;
        if self.is_blossom(item) {
            self.roster[crowd as usize] = members;
        }
    }

    /// Rearranges the pairs inside an item so that `place` becomes its base.
    pub fn rotate(&mut self, item: Item, place: Place, mate: &mut [Place]) {
        let mut open = vec![(item, place)];
        while let Some((item, place)) = open.pop() {
            if self.is_blossom(item) {
                self.turn(item, place, mate, &mut open);
            }
        }
    }

    /// Turns the cycle of a blossom and leaves what is inside its children in `open`.
    fn turn(
        &mut self,
        item: Item,
        place: Place,
        mate: &mut [Place],
        open: &mut Vec<(Item, Place)>,
    ) {
        let (at, child) = (item as usize, self.child_of(item, place));
        open.push((child, place));
        let (children, links) = (&mut self.children[at], &mut self.links[at]);
        let from = children.iter().position(|&c| c == child).unwrap_or(0);
        let fresh = if from % 2 == 0 {
            0..from
        } else {
            from + 1..children.len()
        };
        for link in fresh.step_by(2) {
            let ([a, b], next) = (links[link], (link + 1) % children.len());
            open.extend([(children[link], a), (children[next], b)]);
            mate[a as usize] = b;
            mate[b as usize] = a;
        }
        children.rotate_left(from);
        links.rotate_left(from);
        self.base[at] = place;
    }

    /// The child of a dissolved blossom's cycle that now holds this place.
    pub fn position(&self, cycle: &[Item], place: Place) -> usize {
        let top = self.top(place);
        cycle.iter().position(|&child| child == top).unwrap_or(0)
    }
}
