//! The few files that pages load: part of the binary, named by their contents, compressed once.

use std::sync::LazyLock;

use actix_web::http::header::{CACHE_CONTROL, CONTENT_ENCODING, CONTENT_TYPE, VARY};
use actix_web::web::{Bytes, Path};
use actix_web::{HttpRequest, HttpResponse, get};
use sha2::{Digest, Sha256};

use super::answer::PageAnswer;
use super::coding::Coding;
use crate::problem::{Problem, WireFault};

/// The stylesheet.
pub static STYLE: LazyLock<Asset> = LazyLock::new(|| {
    let bytes = include_bytes!("../../static/tallyhost.css");
    Asset::new("tallyhost", "css", "text/css; charset=utf-8", bytes)
});
/// The script; every page works without it.
pub static SCRIPT: LazyLock<Asset> = LazyLock::new(|| {
    let bytes = include_bytes!("../../static/tallyhost.js");
    Asset::new("tallyhost", "js", "text/javascript; charset=utf-8", bytes)
});
/// The mark.
pub static ICON: LazyLock<Asset> = LazyLock::new(|| {
    let bytes = include_bytes!("../../static/mark.svg");
    Asset::new("mark", "svg", "image/svg+xml", bytes)
});

/// One file.
pub struct Asset {
    address: String,
    kind: &'static str,
    bytes: &'static [u8],
    gzip: Option<Bytes>,
    brotli: Option<Bytes>,
}

impl Asset {
    fn new(name: &str, ending: &str, kind: &'static str, bytes: &'static [u8]) -> Self {
        let digest = document::hex(&Sha256::digest(bytes));
        let digest = digest.get(..12).unwrap_or_default();
        Self {
            address: format!("/static/{name}.{digest}.{ending}"),
            kind,
            bytes,
            gzip: Coding::Gzip.encode(bytes).map(Bytes::from),
            brotli: Coding::Brotli.encode(bytes).map(Bytes::from),
        }
    }

    /// Where it is found; another address whenever its contents change.
    pub fn address(&'static self) -> &'static str {
        &self.address
    }

    fn small(&self, coding: Coding) -> Option<Bytes> {
        match coding {
            Coding::Gzip => self.gzip.clone(),
            Coding::Brotli => self.brotli.clone(),
        }
    }
}

/// A file of the pages.
#[get("/static/{file}")]
pub async fn find_asset(request: HttpRequest, file: Path<String>) -> PageAnswer {
    let address = format!("/static/{file}");
    let known = [&*STYLE, &*SCRIPT, &*ICON];
    let asset = known
        .into_iter()
        .find(|asset| asset.address == address)
        .ok_or_else(|| Problem::wire(WireFault::NotFound))?;
    let coding = Coding::taken_by(&request);
    let small = coding.and_then(|coding| Some((coding, asset.small(coding)?)));
    let mut response = HttpResponse::Ok();
    response
        .insert_header((CONTENT_TYPE, asset.kind))
        .insert_header((VARY, "accept-encoding"))
        .insert_header((CACHE_CONTROL, "public, max-age=31536000, immutable"));
    Ok(match small {
        Some((coding, small)) => response
            .insert_header((CONTENT_ENCODING, coding.name()))
            .body(small),
        None => response.body(asset.bytes),
    })
}
