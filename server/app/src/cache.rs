//! An in-memory cache with a limit on the total weight of its values.

use std::collections::HashMap;
use std::hash::Hash;
use std::sync::{Arc, Mutex, PoisonError};

/// Values by their keys. Clones share them.
#[derive(Clone, Debug)]
pub(crate) struct Cache<K, V> {
    capacity: usize,
    weight: fn(&V) -> usize,
    entries: Arc<Mutex<HashMap<K, V>>>,
}

impl<K: Eq + Hash, V: Clone> Cache<K, V> {
    /// An empty one for values that weigh at most `capacity` together.
    pub fn new(capacity: usize, weight: fn(&V) -> usize) -> Self {
        Self {
            capacity,
            weight,
            entries: Arc::default(),
        }
    }

    pub fn get(&self, key: &K) -> Option<V> {
        let entries = self.entries.lock().unwrap_or_else(PoisonError::into_inner);
        entries.get(key).cloned()
    }

    /// Keeps a value. Where it does not fit beside the others, evicts all of them.
    pub fn insert(&self, key: K, value: V) {
        let mut entries = self.entries.lock().unwrap_or_else(PoisonError::into_inner);
        let total: usize = entries.values().map(self.weight).sum();
        if total + (self.weight)(&value) > self.capacity {
            entries.clear();
        }
        entries.insert(key, value);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_too_heavy_for_the_capacity_that_is_left_evicts_all_others() {
        let cache = Cache::new(5, |value: &usize| *value);
        cache.insert("a", 2);
        cache.insert("b", 3);
        assert_eq!((cache.get(&"a"), cache.get(&"b")), (Some(2), Some(3)));
        cache.insert("c", 1);
        let found = ["a", "b", "c"].map(|key| cache.get(&key));
        assert_eq!(found, [None, None, Some(1)]);
    }
}
