//! What was read or reckoned before, for as long as there is room for it.

use std::collections::HashMap;
use std::hash::Hash;
use std::sync::{Arc, Mutex, PoisonError};

/// Values by their keys, for all threads of a process.
#[derive(Clone, Debug)]
pub(crate) struct Keeper<K, V> {
    room: usize,
    weigh: fn(&V) -> usize,
    all: Arc<Mutex<HashMap<K, V>>>,
}

impl<K: Eq + Hash, V: Clone> Keeper<K, V> {
    /// An empty one for values that weigh at most `room` together.
    pub fn new(room: usize, weigh: fn(&V) -> usize) -> Self {
        Self {
            room,
            weigh,
            all: Arc::default(),
        }
    }

    /// The value under a key.
    pub fn find(&self, key: &K) -> Option<V> {
        let all = self.all.lock().unwrap_or_else(PoisonError::into_inner);
        all.get(key).cloned()
    }

    /// The value under a key, kept no more.
    pub fn take(&self, key: &K) -> Option<V> {
        let mut all = self.all.lock().unwrap_or_else(PoisonError::into_inner);
        all.remove(key)
    }

    /// Keeps a value. Where there is no room for it, makes room by forgetting all others.
    pub fn keep(&self, key: K, value: V) {
        let mut all = self.all.lock().unwrap_or_else(PoisonError::into_inner);
        let taken: usize = all.values().map(self.weigh).sum();
        if taken + (self.weigh)(&value) > self.room {
            all.clear();
        }
        all.insert(key, value);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_too_heavy_for_the_room_that_is_left_has_it_alone() {
        let keeper = Keeper::new(5, |value: &usize| *value);
        keeper.keep("a", 2);
        keeper.keep("b", 3);
        assert_eq!((keeper.find(&"a"), keeper.find(&"b")), (Some(2), Some(3)));
        keeper.keep("c", 1);
        let found = ["a", "b", "c"].map(|key| keeper.find(&key));
        assert_eq!(found, [None, None, Some(1)]);
    }
}
