//! tallyhost
