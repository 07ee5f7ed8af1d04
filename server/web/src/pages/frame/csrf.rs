//! CSRF protection: forms that only our own pages can send (OWASP ASVS 5.0, 3.5.1 to 3.5.3; section numbers from
//! memory).
//!
//! A token is a fresh nonce and the HMAC-SHA-256 of it under the browser's secret: no two answers
//! carry the same, so that compression gives nothing away, and nothing need be stored.

use actix_web::HttpRequest;
use actix_web::http::header::ORIGIN;
use hex::FromHex;
use hmac::{Hmac, KeyInit, Mac};
use sha2::Sha256;

use super::cookies;
use crate::problem::{HttpFault, Problem};

/// The name of the field that carries the token.
pub const FIELD: &str = "token";

const NONCE_BYTES: usize = 16;
const MAC_BYTES: usize = 32;

/// 256 random bits as text, or `None` when the system has none to give.
pub fn new_secret() -> Option<String> {
    let mut bytes = [0; 32];
    getrandom::fill(&mut bytes).ok()?;
    Some(hex::encode(bytes))
}

/// A fresh token under a browser's secret.
pub fn new_token(secret: &str) -> Option<String> {
    let mut nonce = [0; NONCE_BYTES];
    getrandom::fill(&mut nonce).ok()?;
    let nonce = hex::encode(nonce);
    let mac = mac(secret, &nonce)?.finalize().into_bytes();
    Some(format!("{nonce}.{}", hex::encode(mac)))
}

/// The secret that a browser's forms are bound to: of its session, or of its visitor cookie.
pub fn browser_secret(request: &HttpRequest) -> Option<String> {
    cookies::value(request, cookies::SESSION).or_else(|| cookies::value(request, cookies::VISIT))
}

/// # Errors
/// 403 `csrf` when a form came from elsewhere or without a genuine token.
pub fn verify(request: &HttpRequest, new_token: &str) -> Result<(), Problem> {
    let genuine = browser_secret(request).is_some_and(|secret| is_genuine(&secret, new_token));
    if genuine && is_same_origin(request) {
        Ok(())
    } else {
        Err(Problem::http(HttpFault::Csrf))
    }
}

fn is_genuine(secret: &str, new_token: &str) -> bool {
    let Some((nonce, sent)) = new_token.split_once('.') else {
        return false;
    };
    let Some(mac) = mac(secret, nonce) else {
        return false;
    };
    <[u8; MAC_BYTES]>::from_hex(sent).is_ok_and(|sent| mac.verify_slice(&sent).is_ok())
}

/// By `Sec-Fetch-Site` and `Origin`; of an old browser that sends neither the token alone decides.
fn is_same_origin(request: &HttpRequest) -> bool {
    let header = |name: &str| {
        let value = request.headers().get(name)?;
        // What is no text names no origin, ours least of all.
        Some(value.to_str().unwrap_or("?").to_owned())
    };
    let fetch_site = header("sec-fetch-site");
    if fetch_site.is_some_and(|site| site != "same-origin" && site != "none") {
        return false;
    }
    let Some(origin) = header(ORIGIN.as_str()) else {
        return true;
    };
    let host = origin.split_once("://").map(|(_, host)| host);
    host == Some(request.connection_info().host())
}

fn mac(secret: &str, nonce: &str) -> Option<Hmac<Sha256>> {
    let mut mac = Hmac::<Sha256>::new_from_slice(secret.as_bytes()).ok()?;
    mac.update(b"form ");
    mac.update(nonce.as_bytes());
    Some(mac)
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::*;

    #[test]
    fn a_token_is_good_under_its_own_secret_alone() {
        let mine = new_token("mine").unwrap();
        assert!(is_genuine("mine", &mine));
        assert!(!is_genuine("yours", &mine));
        for forged in ["", ".", "00.", "zz.zz", &mine[1..], &format!("0{mine}")] {
            assert!(!is_genuine("mine", forged), "{forged}");
        }
    }

    #[test]
    fn ten_thousand_tokens_are_all_distinct() {
        let tokens: HashSet<String> = (0..10_000).filter_map(|_| new_token("mine")).collect();
        assert_eq!(tokens.len(), 10_000);
    }
}
